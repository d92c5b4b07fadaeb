"""What the title of a table, or the name of its sheet, says of the condition of all that is in it."""

# ruff: noqa: E501

from __future__ import annotations

from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.brackets_said import without_brackets_said
from narrate.reading.intake.remarks import conditions_in, telling


def with_condition(grid: Grid, table: Table) -> tuple[Table, str]:
    """
    The table with the condition that its title names as the one of finds that say none, and what is told of it.

    A title that names two, or none, changes nothing.
    """
    if table.shape == "records":
        return table, ""
    titles = (grid.sheet, *titles_of(grid, table))
    found = set(telling(one for text in titles for one in conditions_in(without_brackets_said(text))))
    if len(found) != 1 or table.condition in found:
        return table, ""
    condition = found.pop()
    where = f"sheet {grid.sheet}: " if grid.sheet else ""
    doubt = (
        f"{where}the title says that the remains are {condition}; finds whose condition nothing else says are taken so; "
        "see 'condition' in the layout"
    )
    return replace(table, condition=condition), doubt


def titles_of(grid: Grid, table: Table) -> list[str]:
    """Texts that stand alone in a row over the counts of a table."""
    counted = [r for r, role in table.rows.items() if role.name in ("counts", "finds")]
    top = min(counted, default=0)
    over = [r for r in range(max(0, min(table.rows, default=0) - 3), top) if _is_title(table, r)]
    rows = [[cell.text for _, cell in grid.row_cells(row) if cell.kind == "text"] for row in over]
    return [texts[0] for texts in rows if len(texts) == 1]


def _is_title(table: Table, row: int) -> bool:
    role = table.rows.get(row)
    return role is None or role.name in ("title", "ignored", "notes")
