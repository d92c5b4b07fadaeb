"""Volumes of remains told apart from those of samples: in lists by their cells, in crossed tables by their heads."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid, column_name
from narrate.model.layouts import Role, Table
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.left_over import lines_named
from narrate.reading.intake.volumes_of_finds import UNIT, volume_behind


def with_volumes_of_finds(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """
    In lists of finds, volumes that differ between the finds of a sample, or stand instead of counts, are of the finds.

    Those whose head says litres are left: they are of soil, and what differs is told.
    """
    for n, table in enumerate(tables):
        columns = [c for c, role in table.columns.items() if role.name == "volume"]
        sample = next((c for c, role in table.columns.items() if "sample" in role.names), None)
        if table.shape != "long" or sample is None:
            continue
        made, grid = dict(table.columns), grids[table.sheet]
        for column in columns:
            head = next((t for r in range(grid.rows) if re.search(r"[^\W\d_]", t := grid.text(r, column))), "")
            unit_said = re.search(rf"\b{UNIT}(?!\w)", head, re.IGNORECASE)
            says = unit_said[0].lower() if unit_said else ""
            is_of_finds = _differs(grid, table, sample, column) or _instead_of_counts(grid, table, column)
            if not is_of_finds or says[:1] == "l":
                continue
            unit = says or "ml"
            made[column] = Role(name="count", qualifiers=(unit,))
            doubts.append(
                f"column {column_name(column)} ('{head}') gives volumes of single finds and not of samples; they are "
                f"taken as {unit} of remains and kept in the notes of the finds, and no soil is made of them: write "
                "'volume, ml' or 'volume, l' for it in the layout if it is soil"
            )
        tables[n] = replace(table, columns=made)


def tell_volumes_of_finds(tables: list[Table], doubts: list[str]) -> None:
    """Rows and columns of volumes of remains that are kept in the notes of samples."""
    for table in tables:
        for roles, what in ((table.rows, "row"), (table.columns, "column")):
            for at, role in roles.items():
                head = " ".join(role.qualifiers)
                is_of_finds = volume_behind(head)[0] and heading(head) not in ("volume", "flot volume", "sorted")
                if role.name == "sample note" and is_of_finds:
                    doubts.append(
                        f"{lines_named(what, [at])} ('{head}') gives volumes of remains, which no field of a find "
                        "holds; they are kept in the notes of the samples, and no count is made of them"
                    )


def _differs(grid: Grid, table: Table, sample: int, column: int) -> bool:
    """Whether most samples with several finds have several volumes."""
    several = [own for own in _by_sample(grid, table, sample, column).values() if len(own) > 1]
    return bool(several) and 2 * sum(len(set(own)) > 1 for own in several) > len(several)


def _instead_of_counts(grid: Grid, table: Table, column: int) -> bool:
    """Whether finds have either an amount or a volume, and some have each."""
    amounts = [c for c, role in table.columns.items() if role.name in ("count", "mass")]
    lines = [row for row, role in table.rows.items() if role.name == "finds"]
    with_volume = {row for row in lines if grid.text(row, column)}
    counted = {row for row in lines if any(grid.text(row, c) for c in amounts)}
    return bool(with_volume and counted) and not with_volume & counted


def _by_sample(grid: Grid, table: Table, sample: int, column: int) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    id = ""
    for row, role in sorted(table.rows.items()):
        id = grid.text(row, sample) or (id if table.columns[sample].filled else "")
        if role.name == "finds" and id and grid.text(row, column):
            found.setdefault(id, []).append(grid.text(row, column))
    return found
