"""The clause of a rule with its figures: '{name}' and '{name.of}' are slots that evidence fills."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Protocol

import numpy as np

_AS_PERCENT = frozenset(
    {
        "share",
        "dominance",
        "plant_dominance",
        "ubiquity",
        "recovery",
        "richest_share",
        "richest_context_share",
        "ubiquity_change",
        "ubiquity_apart",
        "sorted_share",
    }
)
_SLOT = re.compile(r"\{([a-z_0-9]+)(?:\.(of|to|n|low|high))?\}")


class Quoted(Protocol):
    """Figures that a clause may quote: evidence has them."""

    @property
    def measure(self) -> str: ...
    @property
    def value(self) -> float | None: ...


def filled(text: str, values: Mapping[str, Quoted]) -> str:
    """
    The clause with its figures: '{name}' the value, '{name.of}', '{name.to}', '{name.n}' what it rests on.

    A value that there is none of reads 'no value'. Unknown names stay as written; `check_rules` refuses them.
    """

    def figure(match: re.Match[str]) -> str:
        found = values.get(match[1])
        if found is None:
            return match[0]
        if match[2] is None:
            return in_words(found.measure.split(".")[0], found.value)
        number = getattr(found, match[2])
        return in_words(found.measure.split(".")[0] if match[2] in ("low", "high") else "items", number)

    return _SLOT.sub(figure, text)


def pieces(text: str) -> Iterator[tuple[str, str, str]]:
    """
    A clause in pieces: text, and the name and figure that is quoted behind it ('' at the end and for the value).

    >>> list(pieces("{part} of {all.n} seeds"))
    [('', 'part', ''), (' of ', 'all', 'n'), (' seeds', '', '')]
    """
    begins = 0
    for match in _SLOT.finditer(text):
        yield text[begins : match.start()], match[1], match[2] or ""
        begins = match.end()
    yield text[begins:], "", ""


def slots(text: str) -> tuple[str, ...]:
    """Names that a clause quotes."""
    return tuple(match[1] for match in _SLOT.finditer(text))


def in_words(measure: str, value: float | None) -> str:
    """
    A figure as a clause quotes it.

    >>> in_words("share", 0.625), in_words("ratio", 0.125), in_words("items", 1234.0), in_words("density", 14.26)
    ('63\xa0%', '0.12', '1,234', '14')
    """
    if value is None:
        return "no value"
    if measure in _AS_PERCENT:
        return f"{round_half_up(value * 100)}\u00a0%"
    if abs(value) >= 10 or float(value).is_integer():
        return f"{round_half_up(value):,}"
    return f"{value:.2g}" if abs(value) < 1 else f"{value:.1f}"


def round_half_up(value: float) -> int:
    """
    The nearest whole number, halves away from nought, as printed tables of the trade round.

    >>> round_half_up(12.5), round_half_up(37.5), round_half_up(-2.5)
    (13, 38, -3)
    """
    return int(np.floor(abs(value) + 0.5)) * (1 if value >= 0 else -1)
