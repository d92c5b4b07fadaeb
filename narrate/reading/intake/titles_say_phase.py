"""Phases that the titles of tables or the names of their sheets say, and nothing else of a file does."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid, address
from narrate.model.layouts import Table
from narrate.reading.intake.period_words import names_a_period, names_a_phase, phase_at_end, phases_in


def tell_phases_of_titles(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Where no row or column of any table says a phase: the one that a title, or the name of a sheet, says of all."""
    if any(_says_phase(table) for table in tables):
        return
    for n, table in enumerate(tables):
        grid = grids[table.sheet]
        said = _of_title(grid, table) or _of_sheet(grid)
        if table.shape == "records" or said is None:
            continue
        place, phase = said
        tables[n] = replace(table, about={**table.about, "phase": f"{place}, {phase}"})
        where = f"sheet {grid.sheet}: " if grid.sheet else ""
        what = "name of the sheet" if place == "sheet" else f"title in {place}"
        doubts.append(
            f"{where}the {what} says '{phase}', which is taken for the phase of all samples under it; see 'about' in "
            "the layout"
        )


def _says_phase(table: Table) -> bool:
    roles = (*table.rows.values(), *table.columns.values())
    return "phase" in table.about or any("phase" in role.names for role in roles)


def _of_title(grid: Grid, table: Table) -> tuple[str, str] | None:
    """The cell and the words of the one phase that the lines of one cell over a table say."""
    counted = [row for row, role in table.rows.items() if role.name in ("counts", "finds")]
    top = min(counted, default=0)
    first = max(0, min(table.rows, default=0) - 3)
    found: dict[str, tuple[str, str]] = {}
    for row in range(first, top):
        cells = [(column, cell.text) for column, cell in grid.row_cells(row) if cell.kind == "text"]
        role = table.rows.get(row)
        if len(cells) != 1 or (role is not None and role.name not in ("title", "ignored", "notes")):
            continue
        for phase in _phases_of(cells[0][1]):
            found.setdefault(phase.lower(), (address(row, cells[0][0]), phase))
    return next(iter(found.values())) if len(found) == 1 else None


def _phases_of(title: str) -> list[str]:
    """
    The phases that a title names by themselves, between commas, points or brackets.

    >>> _phases_of("Table S3a. Charred plant remains from Tepe, Level III. Numbers are counts"), _phases_of("Early Saxon")
    (['Level III'], ['Early Saxon'])
    >>> _phases_of("Charred remains from Roman and medieval ditches"), _phases_of("Seeds (modern)"), _phases_of("Phases 1 and 2")
    ([], [], [])
    >>> _phases_of("Flotation inventory, Phase III data recovery"), _phases_of("Seeds, Phase III")
    ([], ['Phase III'])
    """
    title = _OF_WORK.sub("", title)
    pieces = [piece.strip() for piece in re.split(r"[,.:;()\[\]–—]|\s-\s", title)]
    whole = [p for p in pieces if (names_a_phase(p) or names_a_period(p)) and p.lower() not in ("modern", "recent")]
    return whole or phases_in(title)


_OF_WORK = re.compile(
    r"\bphase (?:i{1,3}|[1-3])(?:[ /](?:and|&|/)? ?(?:i{1,3}|[1-3]))? (?=(?:data recovery|archaeolog\w+|(?:site )?(?:excavations?|examinations?|evaluations?)|"
    r"investigations?|surveys?|testing|mitigation|field ?work|reports?)\b)",
    re.IGNORECASE,
)
"""Stages of contract work in North America, which are no phases of a site. Common practice, no source."""


def _of_sheet(grid: Grid) -> tuple[str, str] | None:
    name = grid.sheet.strip()
    phase = name if names_a_period(name) else phase_at_end(name)
    return ("sheet", phase) if phase and phase in name else None
