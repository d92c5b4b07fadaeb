"""Columns that say how many of the counts beside them are something: they are in those counts, and are not added."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Role, Table
from narrate.reading.intake.left_over import lines_named
from narrate.reading.intake.subset_words import is_subset, without_inclusion


def with_subsets(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Tells rows and columns of such numbers; in lists they are kept in the notes of the finds."""
    for n, table in enumerate(tables):
        grid, columns = grids[table.sheet], dict(table.columns)
        for roles, others, what in ((table.rows, table.columns, "row"), (table.columns, table.rows, "column")):
            heads = {at: _head(grid, at, others, what) for at, role in roles.items() if role.name == "derived"}
            heads |= _pieces_included(grid, roles) if what == "column" else {}
            found = {at: head for at, head in heads.items() if head}
            if not found:
                continue
            is_list = table.shape == "long" and what == "column"
            columns.update({at: _as_note(head) for at, head in found.items()} if is_list else {})
            doubts.append(
                f"{lines_named(what, list(found))} ('{next(iter(found.values()))}') "
                f"{'say' if len(found) > 1 else 'says'} how many of the counts beside it are meant; they are in those "
                f"counts and are not added{', and are kept in the notes of the finds' if is_list else ''}: write "
                "counts for it in the layout if they are finds of their own"
            )
        tables[n] = replace(table, columns=columns)


def _pieces_included(grid: Grid, columns: Mapping[int, Role]) -> dict[int, str]:
    """Columns of fragments beside one whose head says that the fragments are in its counts."""
    said = {c for (_, c), cell in grid.cells.items() if without_inclusion(cell.text) != cell.text}
    is_included = any(columns[c].name == "count" for c in said if c in columns)
    return {
        c: next((grid.text(r, c) for r in range(grid.rows) if grid.text(r, c)), "")
        for c, role in columns.items()
        if is_included and role.name == "count" and "fragment" in " ".join(role.qualifiers)
    }  # fmt: skip


def _as_note(head: str) -> Role:
    return Role(name="note", qualifiers=(head.replace(",", " "),))


def _head(grid: Grid, at: int, others: Mapping[int, Role], what: str) -> str:
    """The words of a line that speak of a subset; empty for other results."""
    first = sorted(others)[:1]
    lines = [*range(first[0] + 1), *sorted(others)] if first else []
    texts = (grid.text(at, n) if what == "row" else grid.text(n, at) for n in lines)
    return next((text for text in texts if is_subset(text)), "")
