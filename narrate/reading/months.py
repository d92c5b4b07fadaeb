"""Months of a season as packs write them: Aug-Oct, Nov-Jan, or a list."""

from __future__ import annotations

import re

from narrate.reading.asking import Asking, Reads, refuse
from narrate.reading.yaml_nodes import Node, Scalar, Sequence

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
FULL_NAMES = (
    "january", "february", "march", "april", "may", "june",
    "july", "august", "september", "october", "november", "december",
)  # fmt: skip
EXPECTED = "months such as May-Jul, Nov-Jan or [May, Sep]"


def months() -> Reads:
    """Calendar months in the order of the season, each once."""

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[int, ...] | None:
        pieces = node.items if isinstance(node, Sequence) else (node,)
        found: list[int] = []
        for piece in pieces:
            span = month_span(piece.text) if isinstance(piece, Scalar) else None
            if span is None:
                refuse(piece, asking, whose, name, EXPECTED)
                return None
            found.extend(month for month in span if month not in found)
        return tuple(found) or None

    return Reads(EXPECTED, take)


def month_span(written: str) -> tuple[int, ...] | None:
    """
    The months from the first to the last, over the new year if need be; None where it is no month.

    >>> month_span("Aug-Oct"), month_span("Nov-Jan"), month_span("5"), month_span("Mai")
    ((8, 9, 10), (11, 12, 1), (5,), None)
    """
    ends = [_month(piece) for piece in re.split(r"\s*[-–]\s*", written.strip())]
    if len(ends) > 2 or None in ends:
        return None
    first, last = ends[0], ends[-1]
    if first is None or last is None:
        return None
    return tuple((first - 1 + step) % 12 + 1 for step in range((last - first) % 12 + 1))


def _month(written: str) -> int | None:
    word = written.strip().rstrip(".").lower()
    for names in (MONTHS, FULL_NAMES):
        if word in names:
            return names.index(word) + 1
    if word == "sept":
        return 9
    return int(word) if re.fullmatch(r"[1-9]|1[0-2]", word, re.ASCII) else None
