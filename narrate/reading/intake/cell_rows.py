"""What stands in a cell that a place names, with the words that head its row and column, in one line."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

from narrate.model.grids import Grid
from narrate.model.layouts import Layout, Role, Table
from narrate.problems import Place, ProblemList
from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.grids import grids_of_file
from narrate.reading.intake.take_in import layout_beside
from narrate.reading.layout_beside import layout_path

_MOST_WORDS = 3
_SAYS = frozenset(
    (
        "sample", "context", "feature", "kind", "taxon", "genus", "epithet", "cf", "part", "condition", "completeness",
        "size class", "fraction", "quantity",
    )
)  # fmt: skip
"""Roles whose words say what a cell is of."""


def cell_row(root: Path, place: Place) -> str:
    """
    Such as 'Zea mays | kernel | S4: 12', and in a list 'Sample: S4 | Taxon: Zea mays | Part: kernel | Count: 12'.

    By the layout beside the sheet; empty where the file has gone away in the meantime.
    """
    file = root / place.path
    try:
        state = file.stat()
    except OSError:
        return ""
    for grid in _grids(file, place.path, state.st_mtime_ns, state.st_size):
        if grid.sheet == place.sheet:
            line, column = place.line - 1, place.column - 1
            row = grid.lines.index(line + 1) if grid.lines and line + 1 in grid.lines else line
            table = _table_of(file, grid, row, column)
            return _by_layout(grid, table, row, column) if table is not None else _written(grid, row, column)
    return ""


@lru_cache(maxsize=8)
def _grids(file: Path, path: str, changed: int, size: int) -> tuple[Grid, ...]:
    return grids_of_file(file, path, ProblemList())


@lru_cache(maxsize=8)
def _layout(path: Path, changed: int, size: int) -> Layout | None:
    return layout_beside(path, path.name, ProblemList())


def _table_of(file: Path, grid: Grid, row: int, column: int) -> Table | None:
    """The table of the layout that the cell is in; None where there is none."""
    path = layout_path(file)
    if path is None:
        return None
    try:
        state = path.stat()
    except OSError:
        return None
    layout = _layout(path, state.st_mtime_ns, state.st_size)
    of_sheet = (one for one in (layout.tables if layout else ()) if one.sheet in ("", grid.sheet))
    return next((one for one in of_sheet if row in one.rows and column in one.columns), None)


def _by_layout(grid: Grid, table: Table, row: int, column: int) -> str:
    """The cell under the words that the layout has for its row and its column."""
    along = {c: _text(grid, table, row, c, role, is_row=True) for c, role in table.columns.items() if _says(role)}
    across = {r: _text(grid, table, r, column, role, is_row=False) for r, role in table.rows.items() if _says(role)}
    of_row = {c: text for c, text in along.items() if text and c != column}
    of_column = [text for r, text in across.items() if text and r != row]
    value = grid.text(row, column)
    if table.shape == "crossed":
        words = list(dict.fromkeys([*of_row.values(), *of_column]))
        return f"{' | '.join(words)}: {value}" if words else value
    heads = [r for r, role in sorted(table.rows.items()) if role.name == "header" and r < row]
    named = [f"{_head(grid, heads, c)}: {text}" if _head(grid, heads, c) else text for c, text in of_row.items()]
    own = [" ".join(dict.fromkeys([*of_column, *filter(None, [_head(grid, heads, column)])]))]
    return f"{' | '.join([*named, *filter(None, own)])}: {value}"


def _says(role: Role) -> bool:
    return bool(set(role.names) & _SAYS)


def _head(grid: Grid, heads: list[int], column: int) -> str:
    """The words over a column in the rows of heads that stand before a line, the closest of them."""
    return next((text for r in reversed(heads) if (text := grid.text(r, column))), "")


def _text(grid: Grid, table: Table, row: int, column: int, role: Role, *, is_row: bool) -> str:
    """A cell of labels; where blanks mean the same as before, the one before."""
    cells = grid.spread()
    if (row, column) in cells or not role.filled:
        return cells[row, column].text if (row, column) in cells else ""
    before: Mapping[int, tuple[int, int]] = {
        n: (n, column) if is_row else (row, n)
        for n in (table.rows if is_row else table.columns) if n < (row if is_row else column)
    }  # fmt: skip
    return next((cells[before[n]].text for n in sorted(before, reverse=True) if before[n] in cells), "")


def _written(grid: Grid, row: int, column: int) -> str:
    """The same where no layout says what rows and columns are: words before the cell, and words over it."""
    cells = grid.spread()
    before = [
        cells[row, c].text for c in range(column) if (row, c) in cells and not looks_like_amount(cells[row, c].text)
    ]
    above = [cells[r, column].text for r in range(row) if (r, column) in cells]
    words = [*dict.fromkeys(before[:_MOST_WORDS]), *dict.fromkeys(above[:_MOST_WORDS])]
    return f"{' | '.join(words)}: {grid.text(row, column)}" if words else grid.text(row, column)
