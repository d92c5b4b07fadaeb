"""What of a file is not read, with its words and the reason: rows and columns of its tables, and cells beside them."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.grids import Grid, column_name
from narrate.model.layouts import DERIVED_ROLES, Layout, Role, Table
from narrate.reading.intake.left_over import lines_named

_REASONS = {
    "not plants": "no plant",
    "group": "kept as a word over the names, and not read further",
    "family": "a word beside the names, and not read further",
    "authority": "a word beside the names, and not read further",
    "code": "a number or code beside the names or samples, and not read further",
    "title": "a title; what it says beyond the state, the size and the phase that are told above is not read",
    "notes": "a note beside the counts, of which no more is read than a key",
}
_SHOWN = 220
_MOST = 12
"""So many cells outside the tables are shown of each sheet."""


def left_out_of(grids: Iterable[Grid], layout: Layout) -> tuple[str, ...]:
    """One line for each row and column that is not read, and for the cells of each row that are in no table."""
    found = []
    for grid in grids:
        tables = [table for table in layout.tables if table.sheet == grid.sheet]
        where = f"{grid.sheet}, " if grid.sheet else ""
        for table in tables:
            found += [f"{where}{line}" for line in _of_table(grid, table)]
        if tables:
            found += [f"{where}{line}" for line in _outside(grid, tables)]
    return tuple(dict.fromkeys(found))


def _of_table(grid: Grid, table: Table) -> list[str]:
    lines: dict[tuple[str, str], list[int]] = {}
    for what, roles, others in (("row", table.rows, table.columns), ("column", table.columns, table.rows)):
        for at, role in roles.items():
            if not (reason := _reason(role, table)):
                continue
            cells = [(at, n) if what == "row" else (n, at) for n in others]
            words = _words(grid, cells, whole=role.name in ("title", "notes", "ignored"))
            if words or role.name not in ("title", "notes"):
                lines.setdefault((what, reason + words), []).append(at)
    return [f"{lines_named(what, at)}: {said}" for (what, said), at in lines.items()]


def _reason(role: Role, table: Table) -> str:
    """Why a row or column is not read; empty where it is."""
    if role.name == "ignored":
        return ", ".join(role.qualifiers) or "nothing known of it"
    if role.name == "derived":
        return "worked out (derived); not used, and checked only where the counts give it"
    if role.name in DERIVED_ROLES:
        return f"worked out ({role.name}); not used, and checked against the counts unless said above"
    if role.name in ("family", "code") and not _has_names(table):
        return ""  # the family or the code names the finds
    return _REASONS.get(role.name, "")


def _has_names(table: Table) -> bool:
    return any(set(role.names) & {"taxon", "genus"} for role in (*table.rows.values(), *table.columns.values()))


def _words(grid: Grid, cells: list[tuple[int, int]], *, whole: bool) -> str:
    """The first words of a line, as ': 'Suitable for'…'; empty where it has none."""
    found = [grid.cells[at] for at in cells if at in grid.cells]
    texts = [cell.text for cell in found if cell.kind == "text" and cell.text]
    if not texts:
        return ""
    shown = f"{texts[0][:_SHOWN]}…" if len(texts[0]) > _SHOWN else texts[0]
    more = f" and {len(texts) - 1} more" if whole and len(texts) > 1 else ""
    return f": '{shown}'{more}"


def _outside(grid: Grid, tables: list[Table]) -> list[str]:
    """Words in cells whose row or column belongs to no table of the sheet."""
    rows: dict[int, list[tuple[int, int]]] = {}
    said = {cell for table in tables for cell in table.about.values()}
    words = sorted(at for at, cell in grid.cells.items() if cell.kind == "text" and cell.text.strip())
    for at in words:
        if f"{column_name(at[1])}{at[0] + 1}" in said:
            continue
        if not any(at[0] in table.rows and at[1] in table.columns for table in tables):
            rows.setdefault(at[0], []).append(at)
    lines = [f"row {row + 1}: in no table{_words(grid, cells, whole=True)}" for row, cells in rows.items()]
    more = [f"{len(lines) - _MOST} more rows with words that are in no table"] if len(lines) > _MOST else []
    return [*lines[:_MOST], *more]

