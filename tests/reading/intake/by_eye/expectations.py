"""What a person reads in a sheet: for each cell with an amount its sample, its name, and what kind of amount it is."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

Grid = list[list[str]]
Expected = dict[str, tuple[str, str, str]]
"""Cell -> (sample, name, kind): kind is n for a count, g for a weight, x for a sign."""
Facts = dict[tuple[str, str], str]
"""(sample, role) -> what is said of the sample."""
Eye = Callable[[Grid], tuple[Expected, Facts]]
Ids = str | int | tuple[str, ...] | tuple[int, ...]

ABSENT = ("", "NULL", "0", "-", "–", "—", ".", "0.0", "0.00")


@dataclass(frozen=True)
class Sheet:
    """An invented sheet with what is to be read in it."""

    name: str
    grid: Grid
    eye: Eye
    merged: tuple[str, ...] = ()


def sheet(name: str, text: str, eye: Eye, sep: str = "|", merge: tuple[str, ...] = ()) -> Sheet:
    grid = [[cell.strip() for cell in line.split(sep)] for line in text.strip("\n").split("\n")]
    return Sheet(name, grid, eye, merge)


def letter(column: int) -> str:
    out = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        out = chr(65 + rest) + out
    return out


def number(letters: str) -> int:
    found = 0
    for sign in letters:
        found = found * 26 + ord(sign) - 64
    return found - 1


def rows_of(text: str) -> list[int]:
    return _span(text, lambda bit: int(bit) - 1)


def columns_of(text: str) -> list[int]:
    return _span(text, number)


def _span(text: str, at: Callable[[str], int]) -> list[int]:
    found: list[int] = []
    for bit in filter(None, (one.strip() for one in text.split(","))):
        first, _, last = bit.partition("-")
        found += range(at(first), at(last or first) + 1)
    return found


def cell(grid: Grid, row: int, column: int) -> str:
    return grid[row][column].strip() if row < len(grid) and column < len(grid[row]) else ""


def before(grid: Grid, row: int, column: int, *, along_row: bool) -> str:
    """The text of a cell, or of the nearest one before it that is not blank."""
    while row >= 0 and column >= 0:
        if cell(grid, row, column):
            return cell(grid, row, column)
        row, column = (row, column - 1) if along_row else (row - 1, column)
    return ""


def kind_of(text: str, is_mass: bool) -> str:
    return "g" if is_mass else "n" if re.match(r"^[c<>~]?\.? ?\d", text) else "x"


def cols_are_samples(
    sample: int | tuple[int, ...], taxon: str, rows: str, cols: str, *, mass: str = "", massrows: str = "",
    fill: bool = False, volume: int | None = None, context: int | None = None, phase: int | None = None,
    cut: str = "",
) -> Eye:  # fmt: skip
    """Samples are columns: their ids in one row or joined from several, names in a column; ids end before `cut`."""

    def eye(grid: Grid) -> tuple[Expected, Facts]:
        found: Expected = {}
        facts: Facts = {}
        id_rows = sample if isinstance(sample, tuple) else (sample,)
        for c in columns_of(cols):
            read = (lambda r, c=c: before(grid, r, c, along_row=True)) if fill else (lambda r, c=c: cell(grid, r, c))
            id = " ".join(read(row - 1) for row in id_rows)
            id = id.rpartition(cut)[0] if cut else id
            for role, row in (("volume", volume), ("context", context), ("phase", phase)):
                if row:
                    text = cell(grid, row - 1, c) if role == "volume" else before(grid, row - 1, c, along_row=True)
                    facts[id, role] = text
            for r in rows_of(rows):
                text = cell(grid, r, c)
                if text not in ABSENT:
                    is_mass = c in columns_of(mass) or r in rows_of(massrows)
                    found[f"{letter(c)}{r + 1}"] = (id, cell(grid, r, number(taxon)), kind_of(text, is_mass))
        return found, facts

    return eye


def rows_are_samples(
    sample: str | tuple[str, ...], taxon: int, rows: str, cols: str, *, mass: str = "", fill: bool = False,
    volume: str | None = None, context: str | None = None, phase: str | None = None,
) -> Eye:  # fmt: skip
    """Samples are rows: their ids in one column or joined from several, names in a row."""

    def eye(grid: Grid) -> tuple[Expected, Facts]:
        found: Expected = {}
        facts: Facts = {}
        id_columns = sample if isinstance(sample, tuple) else (sample,)
        for r in rows_of(rows):
            id = " ".join(cell(grid, r, number(column)) for column in id_columns)
            for role, column in (("volume", volume), ("context", context), ("phase", phase)):
                if column:
                    at = number(column)
                    text = cell(grid, r, at) if role == "volume" else before(grid, r, at, along_row=False)
                    facts[id, role] = text
            for c in columns_of(cols):
                text = cell(grid, r, c)
                if text not in ABSENT:
                    name = before(grid, taxon - 1, c, along_row=True) if fill else cell(grid, taxon - 1, c)
                    found[f"{letter(c)}{r + 1}"] = (id, name, kind_of(text, c in columns_of(mass)))
        return found, facts

    return eye


def long(
    sample: str, taxon: str, rows: str, *, count: str = "", mass: str = "", fills: bool = False,
    volume: str | None = None, context: str | None = None, phase: str | None = None,
) -> Eye:  # fmt: skip
    """One row for each find; blanks mean as above where that is said."""

    def eye(grid: Grid) -> tuple[Expected, Facts]:
        found: Expected = {}
        facts: Facts = {}
        for r in rows_of(rows):
            at = number(sample)
            id = before(grid, r, at, along_row=False) if fills else cell(grid, r, at)
            for role, column in (("volume", volume), ("context", context), ("phase", phase)):
                if column and cell(grid, r, number(column)):
                    facts[id, role] = cell(grid, r, number(column))
            for kind, column in (("n", count), ("g", mass)):
                text = cell(grid, r, number(column)) if column else ""
                if text not in ABSENT:
                    found[f"{column}{r + 1}"] = (id, cell(grid, r, number(taxon)), kind if text[0].isdigit() else "x")
        return found, facts

    return eye


def listed(id: str, taxon: str, rows: str, *, count: str, mass: str = "", volume: str = "") -> Eye:
    """The list of one sample, whose id and litres stand in a heading over it."""

    def eye(grid: Grid) -> tuple[Expected, Facts]:
        found: Expected = {}
        for r in rows_of(rows):
            for kind, column in (("n", count), ("g", mass)):
                text = cell(grid, r, number(column)) if column else ""
                if text not in ABSENT:
                    found[f"{column}{r + 1}"] = (id, cell(grid, r, number(taxon)), kind if text[0].isdigit() else "x")
        return found, {(id, "volume"): volume} if volume else {}

    return eye


def both(*eyes: Eye) -> Eye:
    """Several tables in one sheet."""

    def eye(grid: Grid) -> tuple[Expected, Facts]:
        found: Expected = {}
        facts: Facts = {}
        for one in eyes:
            more, said = one(grid)
            found.update(more)
            facts.update(said)
        return found, facts

    return eye


def cells(**listed: tuple[str, str, str]) -> Eye:
    """Cells written down one by one."""
    return lambda _: (dict(listed), {})


def nothing(_: Grid) -> tuple[Expected, Facts]:
    return {}, {}
