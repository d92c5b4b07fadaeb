"""A sheet as it lies on the screen: cells with what was written, before anything is made of it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal, NamedTuple

from narrate.problems import Place

CellKind = Literal["text", "number", "date", "truth", "fault", "no result"]
"""'fault' is an error value of the spreadsheet (#REF!); 'no result' is a formula without a saved value."""


class Cell(NamedTuple):
    """One cell that is not empty."""

    text: str
    """What is shown in it, as far as the number format is understood."""
    number: float | None = None
    """The value of a cell that the spreadsheet stores as a number."""
    kind: CellKind = "text"
    format: str = ""
    """The number format, empty where it is the general one."""
    formula: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """A rectangle of cells, counted from 0, both ends within."""

    top: int
    left: int
    bottom: int
    right: int

    def holds(self, row: int, column: int) -> bool:
        return self.top <= row <= self.bottom and self.left <= column <= self.right


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """One sheet of a workbook, or one text file. Rows and columns are counted from 0."""

    path: str
    sheet: str = ""
    """Name of the sheet; empty for text files."""
    cells: Mapping[tuple[int, int], Cell]
    """(row, column) -> cell; empty cells are not there."""
    rows: int
    columns: int
    merged: tuple[Area, ...] = ()
    hidden_rows: frozenset[int] = frozenset()
    hidden_columns: frozenset[int] = frozenset()
    is_hidden: bool = False
    lines: tuple[int, ...] = field(default=())
    """For text files: the line on which each row begins."""

    def text(self, row: int, column: int) -> str:
        cell = self.cells.get((row, column))
        return cell.text if cell is not None else ""

    def place(self, row: int, column: int) -> Place:
        line = self.lines[row] if self.lines and row < len(self.lines) else row + 1
        return Place(path=self.path, line=line, column=column + 1, sheet=self.sheet, cell=address(row, column))

    def spread(self) -> Mapping[tuple[int, int], Cell]:
        """The cells, with each merged cell standing in every place that it covers."""
        if not self.merged:
            return self.cells
        found = dict(self.cells)
        for area in self.merged:
            cell = self.cells.get((area.top, area.left))
            if cell is not None:
                for row in range(area.top, min(area.bottom, self.rows - 1) + 1):
                    for column in range(area.left, min(area.right, self.columns - 1) + 1):
                        found.setdefault((row, column), cell)
        return found

    def row_cells(self, row: int) -> Iterator[tuple[int, Cell]]:
        for column in range(self.columns):
            cell = self.cells.get((row, column))
            if cell is not None:
                yield column, cell


@lru_cache(maxsize=4096)
def column_name(column: int) -> str:
    """
    The letters of a column counted from 0.

    >>> column_name(0), column_name(27)
    ('A', 'AB')
    """
    name = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        name = chr(65 + rest) + name
    return name


def column_number(name: str) -> int:
    """
    The column of letters, counted from 0.

    >>> column_number("A"), column_number("AB")
    (0, 27)
    """
    number = 0
    for letter in name.upper():
        number = number * 26 + ord(letter) - 64
    return number - 1


def address(row: int, column: int) -> str:
    """
    How a spreadsheet names a cell.

    >>> address(3, 7)
    'H4'
    """
    return f"{column_name(column)}{row + 1}"


def at_of(place: Place) -> tuple[int, int]:
    """
    Row and column of a place that names a cell, counted from 0; the row is -1 for others.

    >>> at_of(Place(path="lab.xlsx", column=8, cell="H4"))
    (3, 7)
    """
    digits = re.sub(r"\D", "", place.cell)
    return (int(digits) if digits else 0) - 1, place.column - 1
