"""Columns that nobody reads and that tell lines of one name apart: their finds would be added, and that must be told."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import chain

from narrate.model.grids import Cell, Grid
from narrate.model.layouts import Table
from narrate.reading.intake.left_over import lines_named

_NAMING = (
    "taxon", "genus", "epithet", "cf", "family", "common name", "code", "part", "condition", "completeness",
    "size class", "fraction", "quantity", "section", "group",
)  # fmt: skip
_UNREAD = ("taxon note", "note", "ignored")
_LEAST = 3
"""Names whose lines a column must tell apart (judgement)."""
_MOST = 6
"""Words of a column that are states or parts and no remarks (judgement)."""


def tell_notes_that_part(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Tells of each column beside the names of a crossed table that parts lines alike in all that is read of them."""
    for table in tables:
        if table.shape != "crossed":
            continue
        across = table.has_samples_across
        along, beside = (table.rows, table.columns) if across else (table.columns, table.rows)
        lines = [n for n, role in along.items() if role.name == "counts"]
        naming = [n for n, role in beside.items() if set(role.names) & set(_NAMING)]
        cells = grids[table.sheet].spread()
        for n in (n for n, role in beside.items() if role.name in _UNREAD):
            words = _parting(cells, lines, naming, n, across=across)
            if words:
                what = lines_named("column" if across else "row", [n])
                where = f"sheet {table.sheet}: " if table.sheet else ""
                doubts.append(
                    f"DOUBTFUL: {where}{what} ({words[:60]}) tells lines of the same name apart and is not understood; "
                    "what they hold is added up: give it the role of what it says, such as part, condition or "
                    "completeness"
                )


def _parting(cells: Mapping[tuple[int, int], Cell], lines: list[int], naming: list[int], at: int, *, across: bool) -> str:
    """The words of a column, where they differ in most lines of a name that stands several times; empty where not."""

    def text(line: int, other: int) -> str:
        cell = cells.get((line, other) if across else (other, line))
        return cell.text if cell is not None else ""

    alike: dict[tuple[str, ...], list[str]] = {}
    for line in lines:
        alike.setdefault(tuple(text(line, n) for n in naming), []).append(text(line, at))
    several = [said for name, said in alike.items() if len(said) > 1 and any(name)]
    parted = [said for said in several if all(said) and len(set(said)) == len(said)]
    words = list(dict.fromkeys(chain.from_iterable(parted)))
    if len(parted) < max(_LEAST, 0.8 * len(several)) or not 1 < len(words) <= _MOST:
        return ""
    return ", ".join(f"'{word}'" for word in words)
