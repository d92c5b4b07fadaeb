"""Forms that were printed: the same list of names on every sheet, and blank lines for what was not found."""

from __future__ import annotations

from narrate.model.layouts import Layout, Table


def is_printed_form(table: Table, layout: Layout) -> bool:
    """Whether the same list stands on the same rows of three sheets, a sample each: its blank lines were printed."""
    if "sample" not in table.about:
        return False
    lines = [r for r, role in table.rows.items() if role.name == "finds"]
    same = [one for one in layout.tables if [r for r, role in one.rows.items() if role.name == "finds"] == lines]
    return len({one.sheet for one in same if one.columns == table.columns and "sample" in one.about}) > 2
