"""Columns behind the samples without an id, under a small head where no sample has one: 'Whole', 'Fragments'."""

from __future__ import annotations

from collections.abc import Mapping

from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading, quantity

_SMALL = ("quantity", "completeness", "condition", "part", "size class", "fraction", "header")
_LEAST_SAMPLES = 3
"""Samples that must have an id and one column each (judgement)."""


def heads_behind_samples(
    look: Look, rows: Mapping[int, Role], columns: Mapping[int, Role], sample_row: int
) -> dict[int, tuple[str, Role]]:
    """
    Column -> its head and its role, of columns of amounts without an id that the last sample does not go on into.

    Whoever has several columns a sample heads each of them: a small head over the last ones alone is of all samples.
    """
    counts = sorted(c for c, role in columns.items() if role.name == "counts")
    own = [c for c in counts if (sample_row, c) in look.cells]
    behind = [c for c in counts if not own or c > own[-1]]
    if len(own) < _LEAST_SAMPLES or not behind or len(own) + len(behind) < len(counts):
        return {}
    small = [r for r, role in rows.items() if role.name in _SMALL and r > sample_row]
    heads = {c: next((look.text(r, c) for r in small if look.text(r, c)), "") for c in counts}
    if not all(heads[c] for c in behind) or any(heads[c] for c in own):
        return {}
    kinds = {c: quantity(heads[c]) or heading(heads[c]) for c in behind}
    return {c: (heads[c], Role(name="total" if _is_sum(kinds[c]) else "derived")) for c in behind}


def _is_sum(kind: str) -> bool:
    return kind.startswith("count") or kind in ("", "total")
