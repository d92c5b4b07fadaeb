"""Weights of all seeds together, beside those of charcoal, over a list that weighs the same seeds by name."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look

_LEAST_WEIGHED = 3
# Common practice, no source: how tables call the seeds of a sample together.
_ALL_SEEDS = re.compile(
    r"(?:all |total )?(?:seeds?|seeds? (?:and|&) fruits?|fruits? (?:and|&) seeds?|samen|graines?|semillas?|semi|zaden)"
    r"(?:\s*[<>≥≤]\s*\d+(?:[.,]\d+)?\s*mm)?\s*[(\[](?:weight,? ?|wt\.?,? ?)?m?g[)\]]",
    re.IGNORECASE,
)
_SEEDS = re.compile(r"seed|samen|graine|semill|semi\b|zaden", re.IGNORECASE)


def without_bulk_weights(look: Look, rows: Mapping[int, Role], names: int) -> tuple[dict[int, Role], list[str]]:
    """
    The rows of a crossed table with such a weight as a result, and what is told of it.

    It is taken for one only where the weight of the charcoal stands at once beside it and at least three lines weigh
    what they name: with the names added, everything would be weighed twice.
    """
    found, doubts = dict(rows), []
    counted = [r for r, role in rows.items() if role.name == "counts"]
    for row in counted:
        label = look.text(row, names).strip()
        if not _ALL_SEEDS.fullmatch(label) or not any(_is_charcoal(look, r, names) for r in (row - 1, row + 1)):
            continue
        if len(_weighed(look, rows, names)) >= _LEAST_WEIGHED:
            found[row] = Role(name="derived")
            doubts.append(
                f"row {row + 1} ('{label}') is taken for the weight of all seeds, which other lines give by name, and "
                "is left out; write counts for it under rows in the layout if it is of other seeds"
            )
    for row, role in rows.items() if doubts else ():
        if role.name == "density" and _SEEDS.search(look.text(row, names)):
            found[row] = Role(name="derived")  # of the weight of all seeds, which is in no sum
    return found, doubts


def _is_charcoal(look: Look, row: int, names: int) -> bool:
    read = look.names.read(look.text(row, names)) if look.text(row, names) else None
    return read is not None and read.part in ("charcoal", "wood") and read.quantity == "mass"


def _weighed(look: Look, rows: Mapping[int, Role], names: int) -> list[int]:
    """Lines that name a plant and are weighed, by the unit behind their name or in the head of their section."""
    found, unit = [], ""
    for row in sorted(rows):
        text = look.text(row, names)
        if rows[row].name == "section":
            unit = look.names.read(text).quantity
        elif rows[row].name == "counts" and not _ALL_SEEDS.fullmatch(text.strip()):
            read = look.names.read(text)
            if "mass" in (read.quantity, unit) and read.part not in ("charcoal", "wood"):
                found.append(row)
    return found
