"""Numbers that the analyst typed, held against the figures behind her sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

_NUMBER = re.compile(r"(?<![\w.,–-])(\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?)(?![\w]|[.,]\d)")
_YEARS = range(500, 2101)


def numbers_in(text: str) -> tuple[str, ...]:
    """
    Numbers written in digits, without marks between thousands; parts of ids and of ranges of years are not numbers.

    >>> numbers_in("In C12 were 1,204 cupules and 12.5 g of wood (S014), about AD 950–1050.")
    ('1204', '12.5', '950')
    """
    return tuple(found.replace(",", "") for found in _NUMBER.findall(text))


def strange_numbers(text: str, drafted: str, figures: Mapping[str, str]) -> tuple[str, ...]:
    """
    Numbers of edited text that neither the draft nor any figure behind it has; years are let pass.

    >>> strange_numbers("There were 15 cupules, against 3 kernels.", "12 cupules to 3 kernels.", {"cupules": "12"})
    ('15',)
    """
    known = set(numbers_in(drafted)) | set(_digits(figures.values()))
    return tuple(
        dict.fromkeys(n for n in numbers_in(text) if n not in known and not ("." not in n and int(n) in _YEARS))
    )


def _digits(values: Iterable[str]) -> Iterable[str]:
    for value in values:
        yield from re.findall(r"\d+(?:\.\d+)?", value.replace(",", ""))
