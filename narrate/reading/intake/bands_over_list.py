"""Heads of a list in two rows: sieve classes or states over 'Ct' and 'Wt (g)', each over columns of its own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from narrate.model.grids import Area
from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import flat_heading, heading, quantity
from narrate.reading.intake.heads_by_content import COMPLETE, content_role
from narrate.reading.intake.shares_in_heads import size_and_share

_SAY = ("size class", "condition", "completeness", "fraction")


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """The upper row of such heads."""

    row: int
    role: Role
    totals: frozenset[int]
    """Columns under 'Total': worked out from those beside them."""


def band_over(look: Look, area: Area, row: int, known: Sequence[int]) -> Band | None:
    """The row of sieve classes or states over the heads of amounts; None where none stands there."""
    smalls = [quantity(look.text(row, c)) for c in known]
    if row <= area.top or len(known) < 3 or not all(smalls) or len(set(smalls)) == len(smalls):
        return None
    over = _filled(look, row - 1, known)
    totals = frozenset(c for c, text in over.items() if heading(text) == "total")
    said = [text for c, text in over.items() if c not in totals]
    are_pieces = all(flat_heading(text) in COMPLETE for text in said)
    role = "completeness" if are_pieces else content_role(list(dict.fromkeys(said)), look)
    if role not in _SAY or not all(said) or len(set(said)) < 2 or any(size_and_share(text)[1] for text in said):
        return None
    return Band(row=row - 1, role=Role(name=role, filled=True), totals=totals)


def with_heads_filled(look: Look, area: Area, row: int, heads: Mapping[int, str]) -> Look | None:
    """
    The look with the heads of a row standing also in the next one, where that one holds only 'Ct' and 'Wt' under some.

    None where the next row is another.
    """
    below = [c for c in range(area.left, area.right + 1) if (row + 1, c) in look.own]
    if row >= area.bottom or len(below) < 3 or not all(quantity(look.text(row + 1, c)) for c in below):
        return None
    if not any(c not in below and role in ("taxon", "genus", "common name") for c, role in heads.items()):
        return None
    cells = dict(look.cells)
    for c in heads:
        if c not in below and (row + 1, c) not in cells:
            cells[row + 1, c] = look.cells[row, c]
    return replace(look, cells=cells)


def _filled(look: Look, row: int, columns: Sequence[int]) -> dict[int, str]:
    """What stands over each column; a blank means what stands before it."""
    found: dict[int, str] = {}
    before = ""
    for c in range(columns[0], columns[-1] + 1):
        before = look.text(row, c) or before
        if c in columns:
            found[c] = before
    return found
