"""Heads in which some columns say 'ct' and 'wt' under a name and others name their plant: read as two tables."""

from __future__ import annotations

from narrate.model.grids import Area
from narrate.reading.intake.evidence import NAMED, Look
from narrate.reading.intake.header_words import heading, quantity

_TOP = 15
"""Rows in which such a head is looked for."""


def with_heads_apart(look: Look, area: Area) -> tuple[Look, ...]:
    """
    The same cells twice, once without the columns that name their plant and once without those of quantities.

    Empty where no row of the head holds both. What stands before them, such as the ids, is in both.
    """
    for row in range(area.top + 1, min(area.top + _TOP, area.bottom) + 1):
        said = {c: quantity(look.text(row, c)) for c in range(area.left, area.right + 1) if look.text(row, c)}
        of_pairs = [c for c, what in said.items() if what and _named_above(look, row, c, area)]
        own = [c for c in said if c not in of_pairs and (row, c) in look.own]  # no name merged down from the row above
        named = [c for c in own if look.name_score(row, c) >= NAMED and not _is_part(look, row, c)]
        if len(of_pairs) < 4 or len(named) < 2 or len({said[c] for c in of_pairs}) < 2:
            continue
        first, last = min(of_pairs), max(of_pairs)
        if any(first < c < last for c in named):
            continue
        while last < area.right and heading(look.text(row, last + 1)) == "total":
            last += 1  # what stands behind the counts adds up those
        before = min([*of_pairs, *named])
        pairs = {c for c in range(first, last + 1)}
        others = {c for c in range(before, area.right + 1) if c not in pairs}
        return _without(look, others), _without(look, pairs)
    return ()


def _named_above(look: Look, row: int, column: int, area: Area) -> bool:
    """Whether the row above names a plant over a column, or over the one before it that has a text."""
    for c in range(column, max(area.left, column - 3) - 1, -1):
        if not quantity(look.text(row, c)):
            return False
        if look.text(row - 1, c):
            return look.name_score(row - 1, c) >= NAMED
    return False


def _is_part(look: Look, row: int, column: int) -> bool:
    """Whether a word is a part of the plant that the row above names there: 'kernel' under a name, beside 'n'."""
    return bool(look.names.part_of(look.text(row, column))) and look.name_score(row - 1, column) >= NAMED


def _without(look: Look, columns: set[int]) -> Look:
    cells = {at: cell for at, cell in look.cells.items() if at[1] not in columns}
    own = frozenset(at for at in look.own if at[1] not in columns)
    return Look(look.grid, look.names, cells, look.rows, look.columns, look.is_turned, own, look.signs)
