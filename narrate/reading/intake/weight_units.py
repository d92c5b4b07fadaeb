"""Weights whose unit nobody names: they are taken as grams, and that is told."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.header_words import heading, quantity, unit

# Common practice, no source: words of units of weight, in heads, titles and notes.
_UNIT_SAID = re.compile(
    r"(?<![^\W_])(?:mg|kg|gms?|gr|grams?|grammes?|gramm|gramos?|grammi|gramy|gramów|milligram\w*)(?![^\W_])|[(\[]\s*g\s*[)\]]|[\s,/_]g\b\s*$|"
    r"\bin g\b|^g$",
    re.IGNORECASE | re.MULTILINE,
)  # fmt: skip


def tell_grams(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Tells of each file once under which heads weights without a unit stand, where no text of the file names one."""
    texts = (cell.text for grid in grids.values() for cell in grid.cells.values() if cell.kind == "text")
    if any(map(_UNIT_SAID.search, texts)):
        return
    heads = dict.fromkeys(head for table in tables for head in _heads(grids[table.sheet], table))
    if heads:
        said = " and ".join(f"'{head}'" for head in list(heads)[:4])
        doubts.append(
            f"no unit is named of the weights under {said}; they are taken as grams: write 'mass, mg' for the row or "
            "column in the layout, or the unit into the cells under 'mend', if they are not"
        )


def _heads(grid: Grid, table: Table) -> list[str]:
    """The heads of weights that name no unit."""
    weighed = {c for c, role in table.columns.items() if role.name == "mass"}
    small = {r for r, role in table.rows.items() if "quantity" in role.names}
    small_columns = {c for c, role in table.columns.items() if "quantity" in role.names}
    found = []
    for (row, column), cell in sorted(grid.cells.items()) if weighed or small or small_columns else ():
        is_weight = (quantity(cell.text) == "mass" or heading(cell.text) == "mass") and not unit(cell.text)
        is_head = column in weighed or row in small or column in small_columns
        if is_head and is_weight:
            found.append(cell.text)
    return found
