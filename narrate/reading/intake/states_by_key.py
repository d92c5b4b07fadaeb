"""Short forms of conditions that the key of a sheet explains, beside parts and names: 'pip w', 'Ficus carica min.'."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.written_names import NameReader


def parts_by_key(table: Table, grid: Grid, names: NameReader) -> tuple[Table, dict[str, str]]:
    """The table with the parts of words such as 'pip w', and the condition that each of them says."""
    parts: dict[str, str] = {}
    conditions: dict[str, str] = {}
    for text in _texts(table, grid, "part") if names.short.conditions else ():
        rest, state = names.condition_behind(text)
        part = names.part_of(rest) if state else ""
        if part and text not in table.parts:
            parts[text], conditions[text] = part, state
    return replace(table, parts={**table.parts, **parts}) if parts else table, conditions


def names_by_key(tables: Iterable[Table], grids: Mapping[str, Grid], names: NameReader) -> dict[str, str]:
    """Names with a short form behind them -> the same with the condition in words, for the names of the layout."""
    found: dict[str, str] = {}
    for table in tables if names.short.conditions else ():
        for text in (*_texts(table, grids[table.sheet], "taxon"), *_texts(table, grids[table.sheet], "genus")):
            rest, state = names.without_state(text)
            if state and rest != text and text not in names.given:
                found[text] = f"{rest} ({state})"
    return found


def _texts(table: Table, grid: Grid, role: str) -> list[str]:
    """The texts in rows and columns of a role, each once."""
    rows = {r for r, one in table.rows.items() if role in one.names}
    columns = {c for c, one in table.columns.items() if role in one.names}
    counted = {r for r, one in table.rows.items() if one.name in ("counts", "finds")}
    across = {c for c, one in table.columns.items() if one.name == "counts"}
    said = [cell.text for (r, c), cell in grid.cells.items() if (r in rows and c in across) or (c in columns and r in counted)]
    return list(dict.fromkeys(filter(None, said)))
