"""Where a file gives no table: how far its sheets came, so that what is wanting can be written in."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.grids import Grid
from narrate.reading.intake.evidence import NAMED, Look
from narrate.reading.intake.left_over import lines_named
from narrate.reading.intake.written_names import NameReader

_LEAST = 3
"""Names that make a list of names (judgement)."""


def what_is_wanting(grids: Iterable[Grid], names: NameReader) -> str:
    """What a sheet holds of a table of counts, and what it lacks; empty where it holds no list of names at all."""
    for grid in grids:
        look = Look.of(grid, names)
        for way in (look, look.turned()):
            said = _wanting(way)
            if said:
                return f"sheet {grid.sheet}: {said}" if grid.sheet else said
    return ""


def _wanting(look: Look) -> str:
    """The same of a sheet in which names run down one of the columns."""
    listed: dict[int, list[int]] = {}
    for row, column in sorted(look.own):
        if look.name_score(row, column) >= NAMED:
            listed.setdefault(column, []).append(row)
    column, rows = max(listed.items(), key=lambda item: len(item[1]), default=(0, []))
    if len(rows) < _LEAST:
        return ""
    along, across = ("column", "row") if look.is_turned else ("row", "column")
    amounts, _ = look.in_columns(rows)
    beside = sorted(c for c in amounts if c != column)
    where = f"{len(rows)} names of plants stand in {lines_named(across, [column])}, {lines_named(along, rows)}"
    if not beside:
        return f"{where}, and no amount stands beside any of them"
    return f"{where}, amounts in {lines_named(across, beside)}, and nothing there says of which samples they are"
