"""Cells that tell whole items from pieces, as numbers to be added: '5 (2)', '(2)', '12+3f', '3f', '>50+12f'."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

from narrate.reading.intake.cell_marks import ABOUT, AND, NUMBER, PIECES, WHOLES, number_of


class Pieced(NamedTuple):
    """The whole items and the pieces of one cell."""

    whole: float
    pieces: float


_OPEN = rf"(?:[<>≤≥]=?|{ABOUT})?\s*"
_BRACKETED = re.compile(rf"(?:{_OPEN}({NUMBER})|[-–—])?\s*(?:\((\d+)\)|\[(\d+)\])", re.IGNORECASE)
_WORDED = re.compile(
    rf"(?:{_OPEN}({NUMBER}?)\s*(?:{WHOLES})?\s*(?:{AND}|(?<=\d)\s)\s*|\+\s?)?(\d+)\s*{PIECES}", re.IGNORECASE
)


@lru_cache(maxsize=1 << 14)
def pieced(text: str, decimal: str) -> Pieced | None:
    """
    The two numbers of such a cell, that of a class by the number in it; None for every other cell.

    >>> [tuple(pieced(t, ".")) for t in ("5 (2)", "(2)", "12+3f", "3f", ">50+12f", "c. 200 (8)")]
    [(5.0, 2.0), (0.0, 2.0), (12.0, 3.0), (0.0, 3.0), (50.0, 12.0), (200.0, 8.0)]
    >>> pieced("12", "."), pieced("12 (cf.)", "."), pieced("x", ".")
    (None, None, None)
    """
    flat = text.strip()
    match = _BRACKETED.fullmatch(flat) or _WORDED.fullmatch(flat)
    if match is None:
        return None
    whole = number_of(match[1], decimal) if match[1] else 0.0
    pieces = next(group for group in reversed(match.groups()) if group is not None)
    return Pieced(whole, float(pieces)) if whole is not None else None
