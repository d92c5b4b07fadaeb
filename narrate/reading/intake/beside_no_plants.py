"""Lines of counts among lines of bones, shells and sherds that nobody knows as plants, and likely are none."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import unit
from narrate.reading.intake.not_plants import not_a_plant

_ENDS = ("section", "total")
"""Roles that part a list into runs."""
_PLAIN = 0.5
"""What everyday words score that name no plant for sure."""
_LEAST = 2
"""Lines that are no plants for sure, where all others of a run are taken for such."""


def with_others_aside(
    look: Look, rows: dict[int, Role], names: int, labels: Sequence[int]
) -> tuple[dict[int, Role], list[str]]:
    """The rows of a table with such lines as no plants, and what is told of them."""
    found = beside_no_plants(look, rows, names, labels)
    if not found:
        return rows, []
    named = ", ".join(f"'{look.text(row, names)}'" for row in found[:4])
    more = f" and {len(found) - 4} more" if len(found) > 4 else ""
    said = (
        f"DOUBTFUL: {named}{more}: among things that are no plants, and no plants that narrate knows, so set aside; write "
        "counts in the layout for what is a find"
    )
    return {**rows, **dict.fromkeys(found, Role(name="not plants"))}, [said]


def beside_no_plants(look: Look, rows: Mapping[int, Role], names: int, labels: Iterable[int]) -> list[int]:
    """
    The lines of counts that stand among what is no plant, and that nothing says are plants.

    They stand behind such a line at the end of a run, or anywhere in a run that names no plant and several such things;
    never are there more of them than of those that are no plants for sure.
    """
    found: list[int] = []
    for head, run in _runs(rows):
        is_headed = bool(not_a_plant(look.text(head, names)))  # under 'Mollusc shells' 'Trichia hispida' is none
        counted = [row for row in run if rows[row].name == "counts"]
        plants = [row for row in counted if _is_plant(look, row, names, labels, is_known=is_headed)]
        last = max(plants, default=-1)
        aside = {row for row in run if rows[row].name == "not plants" and row > last}
        first = run[0] if not plants and len(aside) >= _LEAST else min(aside, default=run[-1] + 1)
        others = [row for row in run if row > last and row >= first and row not in aside]
        found += others if len(others) <= len(aside) and all(look.text(row, names) for row in others) else []
    return found


def _runs(rows: Mapping[int, Role]) -> list[tuple[int, Sequence[int]]]:
    """The lines of counts and of no plants between heads of sections and totals, each run with the line before it."""
    runs: list[tuple[int, list[int]]] = [(-1, [])]
    for row, role in sorted(rows.items()):
        if role.name in _ENDS:
            runs.append((row, []))
        elif role.name in ("counts", "not plants"):
            runs[-1][1].append(row)
    return [(head, run) for head, run in runs if run]


def _is_plant(look: Look, row: int, names: int, labels: Iterable[int], *, is_known: bool) -> bool:
    """Whether the name of a line has the form of a plant's, or a pack or a part beside it knows it; or it alone does."""
    if is_known:
        return look.names.read(look.text(row, names)).is_known
    texts = {c: text for c in {names, *labels} if (text := look.text(row, c))}
    words = [word for text in texts.values() for word in (text, *re.findall(r"[^\W\d_]{3,}", text))]
    return any(map(look.names.part_of, words)) or any(
        look.name_score(row, c) > _PLAIN or look.names.read(text).is_known or unit(text) in ("g", "mg", "kg")
        for c, text in texts.items()
    )
