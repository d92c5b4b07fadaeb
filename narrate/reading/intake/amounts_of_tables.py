"""The counts of a whole table by sample and name, so that tables of one file can be held against each other."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from narrate.model.grids import Grid, column_number
from narrate.model.layouts import Table
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.sums_of_lines import amount

At = tuple[int, int]
NAMES = ("taxon", "genus", "epithet", "code", "common name", "part")
"""Roles of lines that together name a find."""
_COUNTED = ("counts", "count")


@dataclass(slots=True)
class Cells:
    """What stands under one sample and one name."""

    value: float | None = 0.0
    """The sum of its cells; None: a sign that is no number is among them."""
    at: list[At] = field(default_factory=list)


@dataclass(frozen=True, slots=True, kw_only=True)
class TableAmounts:
    """The counts of a table: sample -> name -> cells; ids and names in lower case."""

    table: Table
    grid: Grid
    samples: Mapping[str, Mapping[str, Cells]]
    written: Mapping[str, str]
    """Id in lower case -> as it is written."""

    @property
    def names(self) -> frozenset[str]:
        return frozenset(name for cells in self.samples.values() for name in cells)

    @property
    def where(self) -> str:
        rows = f"rows {min(self.table.rows) + 1} to {max(self.table.rows) + 1}"
        return f"sheet {self.table.sheet}" if self.table.sheet else rows


def amounts_of(table: Table, grid: Grid | None) -> TableAmounts | None:
    """The counts of a table; None where no sample or no name stands beside them."""
    if grid is None or table.shape == "records":
        return None
    samples: dict[str, dict[str, Cells]] = {}
    written: dict[str, str] = {}
    for at, id, name in _crossed(table, grid) if table.shape == "crossed" else _listed(table, grid):
        if not id or not name:
            continue
        cells = samples.setdefault(_flat(id), {}).setdefault(_flat(name), Cells())
        written.setdefault(_flat(id), id)
        number = amount(grid.text(*at), table.marks.decimal)
        cells.value = None if number is None or cells.value is None else cells.value + number
        cells.at.append(at)
    return TableAmounts(table=table, grid=grid, samples=samples, written=written) if samples else None


def _crossed(table: Table, grid: Grid) -> Iterator[tuple[At, str, str]]:
    """(cell, sample, name) of each cell of counts."""
    across = table.has_samples_across
    cells = grid.spread()
    of_ids, of_names = (table.rows, table.columns) if across else (table.columns, table.rows)
    ids_at = [n for n, role in of_ids.items() if "sample" in role.names]
    names_at = [n for n, role in of_names.items() if set(role.names) & set(NAMES)]
    filled = {n for n, role in (*of_ids.items(), *of_names.items()) if role.filled}
    smalls = [("row", n) for n, role in table.rows.items() if "quantity" in role.names]
    smalls += [("column", n) for n, role in table.columns.items() if "quantity" in role.names]
    rows = [r for r, role in table.rows.items() if role.name in _COUNTED]
    columns = [c for c, role in table.columns.items() if role.name in _COUNTED]

    def text(at: At) -> str:
        cell = cells.get(at)
        return cell.text if cell is not None else ""

    def said(at: list[int], line: int, is_row: bool) -> str:
        found = []
        for n in at:
            k = line
            while n in filled and k > 0 and not text((k, n) if is_row else (n, k)):
                k -= 1
            found.append(text((k, n) if is_row else (n, k)))
        return " ".join(filter(None, found))

    ids = {n: said(ids_at, n, not across) for n in (columns if across else rows)}
    names = {n: said(names_at, n, across) for n in (rows if across else columns)}
    for r in rows:
        for c in columns:
            heads = (quantity(text((n, c) if kind == "row" else (r, n))) for kind, n in smalls)
            if not set(heads) & {"mass", "percent", "density"}:
                yield (r, c), ids[c if across else r], names[r if across else c]


def _listed(table: Table, grid: Grid) -> Iterator[tuple[At, str, str]]:
    ids_at = [c for c, role in table.columns.items() if "sample" in role.names]
    names_at = [c for c, role in table.columns.items() if set(role.names) & set(NAMES)]
    counted = [c for c, role in table.columns.items() if role.name == "count"]
    about = _said_about(table, grid)
    sample = ""
    for r in [r for r, role in table.rows.items() if role.name == "finds"]:
        own = " ".join(filter(None, (grid.text(r, c) for c in ids_at)))
        sample = own or (sample if any(table.columns[c].filled for c in ids_at) else about)
        name = " ".join(filter(None, (grid.text(r, c) for c in names_at)))
        for c in counted:
            yield (r, c), sample, name


def _said_about(table: Table, grid: Grid) -> str:
    """The sample of a form, from the cell that says it."""
    match = re.fullmatch(r"([A-Z]+)(\d+)", table.about.get("sample", ""))
    return grid.text(int(match[2]) - 1, column_number(match[1])) if match else ""


def _flat(text: str) -> str:
    return " ".join(text.lower().split())
