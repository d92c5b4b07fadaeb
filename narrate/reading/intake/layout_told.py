"""What is told of the tables of a file once all are worked out: flots in litres, hidden rows and columns."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.grids import Grid, address, column_name
from narrate.model.layouts import Table


def tell_litres(tables: list[Table], doubts: list[str]) -> None:
    """A flot volume in litres, where nothing else gives a volume, is what was floated: flots are measured in ml."""
    for n, table in enumerate(tables):
        for name in ("rows", "columns"):
            roles = {**getattr(table, name)}
            has_volume = any("volume" in r.names for r in (*table.rows.values(), *table.columns.values()))
            at = next((i for i, r in roles.items() if r.name == "flot volume" and r.qualifiers[:1] == ("l",)), None)
            if at is None or has_volume:
                continue
            roles[at] = replace(roles[at], name="volume")
            table = replace(table, rows=roles) if name == "rows" else replace(table, columns=roles)
            tables[n] = table
            where = f"row {at + 1}" if name == "rows" else f"column {column_name(at)}"
            doubts.append(
                f"{where} is headed as a volume of flots and is in litres; it is taken for the soil that was floated: "
                "write 'flot volume, l' in the layout if it is not"
            )


def tell_hidden(tables: list[Table], doubts: list[str], grids: list[Grid]) -> None:
    """Rows and columns that the workbook hides, and that are read."""
    by_sheet = {grid.sheet: grid for grid in grids}
    for table in tables:
        grid = by_sheet[table.sheet]
        rows = sorted(r + 1 for r in grid.hidden_rows & set(table.rows))
        columns = sorted(grid.hidden_columns & set(table.columns))
        where = f"sheet {grid.sheet}" if grid.sheet else grid.path
        if rows:
            doubts.append(f"{where}: rows {', '.join(map(str, rows[:12]))} are hidden in the workbook, and are read")
        if columns:
            letters = ", ".join(re.sub(r"\d+", "", address(0, c)) for c in columns[:12])
            doubts.append(f"{where}: columns {letters} are hidden in the workbook, and are read")
