"""Which lines of taxa a stored result adds up, as the formulas of the spreadsheet say."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping

from narrate.model.grids import Cell, column_number
from narrate.reading.intake.stored_places import At

_REFERENCE = r"[A-Z]{1,3}\d{1,7}(?::[A-Z]{1,3}\d{1,7})?"
_ADDED = re.compile(rf"(?:SUM\((?P<listed>{_REFERENCE}(?:[,;]{_REFERENCE})*)\)|(?P<alone>{_REFERENCE}))(?P<rest>\+.+)?")
_DEPTH = 4
"""Sums of sums of sums that are followed."""
_MOST_LINES = 5_000
"""Lines of one range that are looked at."""

Lines = frozenset[int]


def summed_by_formulas(cells: Mapping[At, Cell], targets: list[At], taxa: list[int], *, in_rows: bool) -> list[int]:
    """
    The lines of taxa that most formulas of a line of results add up; none where they do not agree, or say otherwise.

    targets: the cells of the line.
    taxa:    the lines that hold counts.
    in_rows: taxa are rows, so that each cell adds up cells of its own column.

    >>> cells = {(5, 1): Cell("7", formula="=SUM(B2:B4)"), (5, 2): Cell("9", formula="=SUM(C2:C4)/C9")}
    >>> summed_by_formulas(cells, [(5, 1), (5, 2), (5, 3)], [1, 2, 3, 4], in_rows=True)
    [1, 2, 3]
    """
    known = frozenset(taxa)
    said = [lines for at in targets if (lines := _lines(cells, at, known, in_rows, _DEPTH))]
    lines, times = Counter(said).most_common(1)[0] if said else (frozenset[int](), 0)
    return sorted(lines) if times > 1 and 2 * times > len(said) else []


def _lines(cells: Mapping[At, Cell], at: At, taxa: Lines, in_rows: bool, depth: int) -> Lines:
    """The lines that one formula adds up, through other sums; empty where it does anything else or adds one twice."""
    cell = cells.get(at)
    text = re.sub(r"[\s$=]", "", cell.formula).upper() if cell is not None else ""
    added = re.sub(r"/[^/()]+$", "", text)  # a density
    if added.startswith("(") and added.endswith(")"):
        added = added[1:-1]
    found: Counter[int] = Counter()
    while added:
        match = _ADDED.fullmatch(added)
        if match is None:
            return frozenset()
        for reference in re.split("[,;]", match["listed"] or match["alone"]):
            for line in _of_reference(reference, at, in_rows):
                if line in taxa:
                    found[line] += 1
                elif depth:
                    found.update(_lines(cells, (line, at[1]) if in_rows else (at[0], line), taxa, in_rows, depth - 1))
        added = (match["rest"] or "").removeprefix("+")
    return frozenset(found) if found and max(found.values()) == 1 else frozenset()


def _of_reference(reference: str, at: At, in_rows: bool) -> range:
    """The lines of 'E19:E35' in the column, or of 'E19:H19' in the row, of the formula; none of another."""
    ends = [re.fullmatch(r"([A-Z]+)(\d+)", end) for end in reference.split(":")]
    places = [(int(end[2]) - 1, column_number(end[1])) for end in ends if end is not None]
    along, across = (0, 1) if in_rows else (1, 0)
    first, last = places[0][along], places[-1][along]
    if {place[across] for place in places} != {at[across]} or last - first > _MOST_LINES:
        return range(0)
    return range(first, last + 1)
