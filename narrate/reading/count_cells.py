"""Cells of the count column: numbers, presence marks, abundance classes. Nothing is guessed."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from narrate.model.counts import Count

EXPECTED = "a whole number, a presence mark such as x, or an abundance class such as >100"


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Why a cell is not read, and how to mend it."""

    help: str


_PRESENT = ("x", "+", "p", "present", "pres", "pres.", "xx", "xxx", "++", "+++", "++++", "✓")
"""Signs that something is there; without a key they say nothing of how much."""
_DASHES = ("-", "–", "—")
_ABSENT = (*_DASHES, "absent", "looked for and absent")
_NOT_LOOKED_FOR = ("not looked for", "not sorted", "not examined")


def read_count(written: str) -> Count | Refusal:
    """
    What a cell of the count column means; blank cells are left to the caller, who knows the mass.

    >>> read_count("12").number, read_count("x").amount, read_count(">100").at_least, read_count("0").amount
    (12, 'noted as present', 101, 'looked for and absent')
    """
    text = written.strip()
    if re.fullmatch(r"\d{1,9}", text, re.ASCII):
        number = int(text)
        if number:
            return Count(written=text, amount="counted", number=number)
        return Count(written=text, amount="looked for and absent")
    lower = text.lower()
    if lower in _PRESENT:
        return Count(written=text, amount="noted as present")
    if lower in _ABSENT:
        return Count(written=text, amount="looked for and absent")
    if lower in _NOT_LOOKED_FOR:
        return Count(written=text, amount="not looked for")
    return _class(text) or Refusal(help=_help(text))


def is_dash(written: str) -> bool:
    return written.strip() in _DASHES


_Ends = tuple[int | None, int | None]
_CLASSES: tuple[tuple[str, Callable[..., _Ends]], ...] = (
    (r">\s*(\d{1,9})", lambda low: (low + 1, None)),
    (r"(?:>=|≥)\s*(\d{1,9})", lambda low: (low, None)),
    (r"(\d{1,9})\s*\+", lambda low: (low, None)),
    (r"<\s*(\d{1,9})", lambda high: (None, high - 1)),
    (r"(?:<=|≤)\s*(\d{1,9})", lambda high: (None, high)),
    (r"(\d{1,9})\s*[-–]\s*(\d{1,9})", lambda low, high: (low, high)),
)
"""Abundance classes whose sign says where they begin or end."""


def _class(text: str) -> Count | None:
    for pattern, ends in _CLASSES:
        match = re.fullmatch(pattern, text, re.ASCII)
        if match:
            low, high = ends(*(int(n) for n in match.groups()))
            is_empty = (low is not None and high is not None and low >= high) or (high is not None and high < 1)
            if is_empty:
                return None
            return Count(written=text, amount="noted as present", at_least=low, at_most=high, scale="ends as written")
    return None


_HELP: tuple[tuple[str, str], ...] = (
    (r"\d{10,}", "the number is too large to be a count; write how many items there were"),
    (r"(\d+)\.0+", r"write \1"),
    (r"(\d{1,3})[, \u00a0](\d{3})", r"write \1\2"),
    (
        r"\d+[.,]\d+",
        "count whole items; pieces go in rows of their own with 'fragment' under completeness, weights under mass_g",
    ),
    (
        r"(?:c\.?|ca\.?|circa|~|≈|about)\s*(\d+)",
        r"write \1 if it was counted, x if it was noted, and the rest in the note",
    ),
    (r"(\d+)\s*\?", r"write \1 if it was counted, and the doubt in the note"),
    (r"[-–](\d+)", "a count cannot be below 0"),
    (r"(\d+)\s*(?:g|mg|kg)", "weights belong under mass_g"),
    (r"(\d+)\s*[a-z. ]+", r"write \1 alone; words belong in the note"),
    (r"[=@].*", "write the number itself; a formula is not read"),
    (r"\d{1,2}-[a-z]{3}|[a-z]{3}-\d{1,2}", "a spreadsheet has made a date of it; write what was typed, such as 2-5"),
)
_OTHER_HELP = "write the number of items, x if it was only noted, 0 if it was looked for and not found"


def _help(text: str) -> str:
    for pattern, help in _HELP:
        match = re.fullmatch(pattern, text, re.IGNORECASE)
        if match:
            return match.expand(help) if "\\" in help else help
    return _OTHER_HELP
