"""Sheets of a workbook that say what the codes of the counts mean: 'HORVUL, Hordeum vulgare, grain'."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.layouts import Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading

_LEAST = 0.5
"""Share of the codes in use that a list must explain before it is taken for the key of them."""


def codes_of(look: Look, labels: set[str]) -> dict[str, str]:
    """Code -> name (and part) for the codes in use; empty where the sheet is no such list."""
    best: dict[str, str] = {}
    for column in range(min(look.columns, 8)):
        rows = [r for r in range(look.rows) if look.text(r, column) in labels and len(look.text(r, column)) > 1]
        if len(rows) < 2 or len({look.text(r, column) for r in rows}) < len(rows):
            continue
        names = _column_of_names(look, column, rows)
        if names is None:
            continue
        part = _column_of_parts(look, rows, {column, names})
        found = {look.text(r, column): _name(look, r, names, part) for r in rows}
        if len(found) > len(best):
            best = found
    return best if len(best) >= _LEAST * len(labels) else {}


def labels_in_use(look: Look, tables: Iterable[Table]) -> set[str]:
    """What stands where the count tables of a sheet have their names."""
    found: set[str] = set()
    for table in tables:
        for at, role in table.columns.items():
            if role.name in ("taxon", "code"):
                found |= {look.text(r, at) for r, own in table.rows.items() if own.name in ("counts", "finds")}
        for at, role in table.rows.items():
            if role.name in ("taxon", "code"):
                found |= {look.text(at, c) for c, own in table.columns.items() if own.name in ("counts", "mass")}
    return found - {""}


def _column_of_names(look: Look, code: int, rows: list[int]) -> int | None:
    scores = {
        column: sum(look.name_score(r, column) for r in rows) / len(rows)
        for column in range(look.columns)
        if column != code
    }
    best = max(scores, key=lambda c: scores[c], default=None)
    return best if best is not None and scores[best] >= _LEAST else None


def _column_of_parts(look: Look, rows: list[int], other: set[int]) -> int | None:
    for column in range(look.columns):
        texts = [look.text(r, column) for r in rows if look.text(r, column)]
        is_part = sum(bool(look.names.part_of(text)) for text in texts) >= 0.6 * len(texts) > 0
        if column not in other and len(texts) >= 0.5 * len(rows) and is_part:
            return column
    return None


def _name(look: Look, row: int, names: int, part: int | None) -> str:
    name = look.text(row, names)
    own = look.text(row, part) if part is not None else ""
    return f"{name} {own}".strip() if own and heading(own) == "" else name
