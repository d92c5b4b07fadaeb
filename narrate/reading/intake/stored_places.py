"""Cells and lines of a table as messages about stored totals name them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from narrate.model.grids import address, column_name

At = tuple[int, int]
"""Row and column of a cell, counted from 0."""


def cells_said(places: Iterable[At]) -> str:
    """
    Cells by name, neighbours as one.

    >>> cells_said([(1, 1), (2, 1), (3, 1), (7, 1)]), cells_said([(1, 1), (1, 2), (2, 1), (2, 2)]), cells_said([(0, 0)])
    ('B2 to B4 and B8', 'B2 to C3', 'A1')
    """
    in_row: dict[int, set[int]] = {}
    for row, column in places:
        in_row.setdefault(row, set()).add(column)
    by_rows: dict[tuple[int, ...], list[int]] = {}
    for row, found in sorted(in_row.items()):
        by_rows.setdefault(tuple(sorted(found)), []).append(row)
    blocks = []
    for columns, rows in by_rows.items():
        for top, bottom in runs(rows):
            for left, right in runs(columns):
                blocks.append((top, left, bottom, right))
    names = [
        address(t, left) if (t, left) == (b, right) else f"{address(t, left)} to {address(b, right)}"
        for t, left, b, right in sorted(blocks)
    ]
    if len(names) > _NAMED:
        names = [*names[:_NAMED], f"{len(names) - _NAMED} more places"]
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1] if names else ""


@dataclass(frozen=True, slots=True)
class CellsSaid:
    """
    What was added up, in words that are made when somebody reads them.

    >>> f"{CellsSaid('counts', [(1, 1), (2, 1)])} and {CellsSaid('weights', [])}"
    'the counts in B2 to B3 and no weights'
    """

    what: str
    places: Sequence[At]

    def __str__(self) -> str:
        return f"the {self.what} in {cells_said(self.places)}" if self.places else f"no {self.what}"


@dataclass(frozen=True, slots=True)
class Later:
    """
    Words that are made when somebody reads them.

    >>> f"{Later(lambda: 'the counts over 12 litres')}"
    'the counts over 12 litres'
    """

    make: Callable[[], str]

    def __str__(self) -> str:
        return self.make()


_NAMED = 6
"""Runs of cells that a message names."""


def runs(numbers: Iterable[int]) -> list[tuple[int, int]]:
    """
    First and last of each run of neighbours.

    >>> runs([3, 4, 5, 9])
    [(3, 5), (9, 9)]
    """
    found: list[tuple[int, int]] = []
    for n in sorted(numbers):
        if found and found[-1][1] == n - 1:
            found[-1] = (found[-1][0], n)
        else:
            found.append((n, n))
    return found


def line_name(is_row: bool, line: int) -> str:
    return f"row {line + 1}" if is_row else f"column {column_name(line)}"
