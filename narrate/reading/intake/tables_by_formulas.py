"""Tables whose amounts are worked out from those of other sheets, by formulas that name these."""

from __future__ import annotations

import re
from collections.abc import Container, Sequence
from dataclasses import dataclass

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.stored_places import cells_said
from narrate.reading.intake.tables_of_sheet import Found

_SHEET = re.compile(r"(?:'((?:[^']|'')+)'|(?<![\w.\]])([^\W\d][\w.]*))!")
_MOST = 0.8
"""Share of its amounts from which a table is held to be worked out (judgement)."""
_LEAST = 4
"""Amounts that are enough to say so (judgement)."""


def without_worked_out(found: Sequence[tuple[Grid, Found]]) -> list[Found]:
    """What was found in each sheet; of sheets whose tables are all worked out from others, only that they are."""
    counted = {grid.sheet for grid, own in found if any(map(_holds_counts, own.tables))}
    sources: dict[str, frozenset[str]] = {}
    """Sheet that is worked out -> the sheets that it is worked out from."""
    kept: list[Found] = []
    for grid, own in found:
        others = {sheet for sheet in counted - {grid.sheet} if grid.sheet not in sources.get(sheet, ())}
        found_of = [worked_out_from(table, grid, others) for table in own.tables if others]
        if found_of and all(found_of):
            sources[grid.sheet] = frozenset(sheet for one in found_of if one is not None for sheet in one.sheets)
            sheets = sorted(sources[grid.sheet])
            named = " and ".join(f"'{sheet}'" for sheet in sheets)
            why = f"is worked out by formulas from sheet{'s' if len(sheets) > 1 else ''} {named}"
            typed = sorted(at for one in found_of if one is not None for at in one.typed)
            among = f", but for what was typed in {cells_said(typed)}, which is DOUBTFUL" if typed else ""
            doubt = (
                f"sheet {grid.sheet} {why}{among}; it is not read: give its table its roles in the layout if it counts"
            )
            own = Found(doubts=[doubt], left_out=[f"sheet {grid.sheet}: {why}"])
        kept.append(own)
    return kept


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """A table of results: the sheets that they are worked out from, and the cells in which somebody typed a number."""

    sheets: frozenset[str]
    typed: tuple[tuple[int, int], ...]


def worked_out_from(table: Table, grid: Grid, counted: Container[str]) -> WorkedOut | None:
    """
    What a table is worked out from, where most of what it holds comes from counts in other sheets; else None.

    counted:  the names of sheets with counts of their own.
    """
    rows = {row for row, role in table.rows.items() if role.name in ("counts", "finds")}
    columns = {column for column, role in table.columns.items() if role.name in ("counts", "count", "mass")}
    amounts = [at for at in grid.cells if at[0] in rows and at[1] in columns]
    named = {at: sheets_in(grid.cells[at].formula) - {grid.sheet} for at in amounts}
    from_others = [sheets for sheets in named.values() if any(sheet in counted for sheet in sheets)]
    if len(from_others) < max(_LEAST, _MOST * len(amounts)):
        return None
    typed = tuple(at for at in amounts if not grid.cells[at].formula and grid.cells[at].number)
    return WorkedOut(frozenset().union(*from_others), typed)


def _holds_counts(table: Table) -> bool:
    return table.shape != "records" or any(role.name in ("counts", "count", "mass") for role in table.columns.values())


def sheets_in(formula: str) -> set[str]:
    """
    The sheets that a formula names.

    >>> sorted(sheets_in("=SUM('>2mm'!D2:D6)+Seeds!AN2")), sheets_in("=SUM(B2:B4)")
    (['>2mm', 'Seeds'], set())
    >>> sheets_in("=[1]Counts!B2")  # of another workbook
    set()
    """
    return {quoted.replace("''", "'") or plain for quoted, plain in _SHEET.findall(formula)}
