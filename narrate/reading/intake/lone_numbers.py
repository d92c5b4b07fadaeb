"""Sheets beside those of the counts with one number a line that counts nothing, such as lists of pictures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.evidence import looks_like_id

_LEAST = 3
"""Samples that the counts must have, and lines that the sheet must have, before they are held against each other."""


def without_lone_numbers(
    tables: Sequence[Table], grids: Mapping[str, Grid], doubts: list[str], left_out: list[str]
) -> list[Table]:
    """
    The tables without those of one 'sample' that has the name of none, where each line names a sample of other sheets.

    'Photo, Sample, Taxon, Magnification' is such a one. Each is told.
    """
    ids = {(table.sheet, id) for table in tables for id in _ids(table, grids)}
    kept = []
    for table in tables:
        others = {id for sheet, id in ids if sheet != table.sheet}
        said = _head_of_number(table, grids, others)
        if not said:
            kept.append(table)
            continue
        left_out.append(f"sheet {table.sheet}: its lines name samples of other sheets, and '{said}' is none")
        doubts.append(
            f"DOUBTFUL: sheet {table.sheet}: each line names a sample of another sheet and gives one number, '{said}', "
            "which is taken for no count; it is not read: give its column the role count in the layout if it is one"
        )
    return kept


def _ids(table: Table, grids: Mapping[str, Grid]) -> list[str]:
    """The ids of the samples of a crossed table that has several."""
    grid = grids.get(table.sheet)
    if grid is None or table.shape != "crossed":
        return []
    across = table.has_samples_across
    heads = [n for n, role in (table.rows if across else table.columns).items() if role.names == ("sample",)]
    lines = [n for n, role in (table.columns if across else table.rows).items() if role.name == "counts"]
    found = [grid.text(n, line) if across else grid.text(line, n) for n in heads for line in lines]
    return [text for text in found if text] if len(lines) >= _LEAST else []


def _head_of_number(table: Table, grids: Mapping[str, Grid], others: set[str]) -> str:
    """What heads the one number of each line, where it is no id and another column names samples of other sheets."""
    grid = grids.get(table.sheet)
    counted = [c for c, role in table.columns.items() if role.name == "counts"]
    heads = [r for r, role in table.rows.items() if "sample" in role.names]
    lines = [r for r, role in table.rows.items() if role.name == "counts"]
    if grid is None or table.shape != "crossed" or len(counted) != 1 or len(heads) != 1 or len(lines) < _LEAST:
        return ""
    said = grid.text(heads[0], counted[0])
    named = any(all(grid.text(r, c) in others for r in lines) for c in table.columns if c not in counted)
    return said if named and said not in others and not looks_like_id(said) else ""
