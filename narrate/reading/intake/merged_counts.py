"""Counts in cells that are merged over several plants or samples: nobody can tell whose they are."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from narrate.model.grids import Area, Cell, Grid, address

_NOTHING = ("", "0", "-", "–")


def merged_counts(
    grid: Grid, cells: Mapping[tuple[int, int], Cell], rows: Sequence[int], columns: Sequence[int]
) -> dict[Area, tuple[list[tuple[int, int]], bool]]:
    """
    Merged areas with an amount -> the places of counts that they cover, and whether the layout says whose it is.

    cells:  the cells as they were meant: what the layout mends inside such an area is a count of its own.
    """
    found: dict[Area, tuple[list[tuple[int, int]], bool]] = {}
    for area in grid.merged:
        cell = grid.cells.get((area.top, area.left))
        if cell is None or cell.text in _NOTHING:
            continue
        places = [(r, c) for r in _within(rows, area.top, area.bottom) for c in _within(columns, area.left, area.right)]
        if len(places) > 1 and (same := [place for place in places if cells.get(place) is cell]):
            found[area] = (same, len(same) < len(places))
    return found


def _within(lines: Iterable[int], first: int, last: int) -> list[int]:
    return [line for line in lines if first <= line <= last]


def written(area: Area) -> str:
    """
    An area as a spreadsheet writes it.

    >>> written(Area(top=1, left=1, bottom=2, right=1))
    'B2:B3'
    """
    return f"{address(area.top, area.left)}:{address(area.bottom, area.right)}"
