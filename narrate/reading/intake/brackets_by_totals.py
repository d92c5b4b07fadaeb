"""What numbers in brackets are, where no key says it and the totals of the sheet do: added to the others, or left out."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import DERIVED_ROLES, Layout, Table
from narrate.problems import ProblemList
from narrate.reading.intake.cell_marks import PIECES

_BRACKETED = re.compile(r"(?:\d[\d.,]*\s*)?[(\[]\d{1,6}[)\]]")
_LEAST = 2
"""Cells with brackets below which totals decide nothing."""
_SAID = {
    "more": "the totals of the sheet add what stands in brackets, as '3' in '12 (3)', and no key says what it is; it is "
    "taken as more of the same: write 'brackets: fragment' or a condition under cells in the layout if it is that",
    "aside": "DOUBTFUL: the totals of the sheet leave out what stands in brackets, as '3' in '12 (3)', and no key says "
    "what it is; it is kept in the note, and alone as presence: write 'brackets: uncharred', or what it is, under cells "
    "in the layout",
    "fragment": "the totals of the sheet give what stands in brackets, as '3' in '12 (3)', as fragments, and no key says "
    "what it is; it is taken for fragments: write 'brackets: more' or a condition under cells in the layout if it is that",
}
_PIECES = re.compile(rf"(?<![^\W\d_])(?:{PIECES})(?![^\W\d_])", re.IGNORECASE)

Read = Callable[[Layout, ProblemList], object]
"""Reads a file by a layout and tells its problems."""


def with_brackets_by_totals(layout: Layout, grids: tuple[Grid, ...], read: Read) -> tuple[Layout, tuple[str, ...]]:
    """The layout with the meaning of brackets under which fewest stored results disagree, and what is told of it."""
    by_sheet = {grid.sheet: grid for grid in grids}
    asked = [
        table for table in layout.tables
        if table.marks.brackets == "note" and table.sheet in by_sheet and _has_both(by_sheet[table.sheet], table)
    ]  # fmt: skip
    if not asked:
        return layout, ()
    wrong: dict[str, int] = {}
    says_pieces = all(_says_pieces(by_sheet[table.sheet], table) for table in asked)
    for way in ("note", "more", "aside", *(("fragment",) if says_pieces else ())):
        problems = ProblemList()
        read(_with(layout, asked, way), problems)
        wrong[way] = sum(
            1 + problem.message.count(" give ") for problem in problems.sorted() if problem.code == "N317"
        )  # fmt: skip
    best = min(wrong, key=lambda way: wrong[way])
    if wrong[best] >= wrong["note"]:
        return layout, ()
    return _with(layout, asked, best), (_SAID[best],)


def _with(layout: Layout, asked: list[Table], way: str) -> Layout:
    tables = [replace(t, marks=replace(t.marks, brackets=way)) if t in asked else t for t in layout.tables]
    return replace(layout, tables=tuple(tables))


def _says_pieces(grid: Grid, table: Table) -> bool:
    """Whether a stored result is one of fragments."""
    rows = {row for row, role in table.rows.items() if role.name in DERIVED_ROLES}
    columns = {column for column, role in table.columns.items() if role.name in DERIVED_ROLES}
    across, down = set(table.columns), set(table.rows)
    heads = (cell.text for (r, c), cell in grid.cells.items()
             if cell.kind == "text" and ((r in rows and c in across) or (c in columns and r in down)))  # fmt: skip
    return any(len(found[0]) > 1 for text in heads if (found := _PIECES.search(text)))


def _has_both(grid: Grid, table: Table) -> bool:
    """Whether a table has numbers in brackets among its counts, and stored results."""
    if not any(role.name in DERIVED_ROLES for role in (*table.rows.values(), *table.columns.values())):
        return False
    rows = {row for row, role in table.rows.items() if role.name in ("counts", "finds")}
    columns = {column for column, role in table.columns.items() if role.name in ("counts", "count")}
    texts = (cell.text for (r, c), cell in grid.cells.items() if r in rows and c in columns and cell.kind == "text")
    return sum(bool(_BRACKETED.fullmatch(text.strip())) for text in texts) >= _LEAST
