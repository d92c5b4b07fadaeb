"""Cells of weights, in grams."""


from __future__ import annotations

import re

from narrate.model.counts import Count
from narrate.model.grids import Cell
from narrate.model.layouts import Marks
from narrate.reading.count_cells import Refusal
from narrate.reading.intake.cell_kinds import not_text
from narrate.reading.intake.cell_marks import (
    ABOUT,
    ABSENT,
    NOT_LOOKED,
    NOTHING,
    NUMBER,
    Found,
    Quirk,
    Reading,
    number_of,
)
from narrate.reading.intake.pending import says_pending

UNIT_GRAMS = {"g": 1.0, "gr": 1.0, "gm": 1.0, "gms": 1.0, "grams": 1.0, "mg": 0.001, "kg": 1000.0}


def read_mass(cell: Cell, marks: Marks, unit: str) -> Reading:
    """A cell of a column of weights, in grams. A blank, a dash or a zero gives nothing."""
    if cell.kind != "text" and cell.kind != "number":
        special = not_text(cell)
        if special is not None:
            return special
    text = cell.text.strip()
    if text.lower() in (*ABSENT, *NOT_LOOKED) or says_pending(text):
        return NOTHING
    factor = UNIT_GRAMS.get(unit or "g", 1.0)
    if cell.number is not None:
        return grams(cell.number * factor, "")
    match = re.fullmatch(rf"({NUMBER})\s*(g|gr|gm|gms|grams|mg|kg)?\s*([*†‡§?]*)", text, re.IGNORECASE)
    if match:
        number = number_of(match[1], marks.decimal)
        if number is not None:
            factor = UNIT_GRAMS[match[2].lower()] if match[2] else factor
            return grams(number * factor, f"written {text}" if match[3] else "")
    if re.match(rf"[<>]|{ABOUT}|tr|trace|\+|x|present|c", text, re.IGNORECASE):
        quirk = Quirk(
            kind="unweighed",
            message=f"the weight is '{text}', kept in the note and as presence, expected a number",
            help="nothing need be done if it was too light to weigh",
        )
        found = Found(count=Count(written=text, amount="noted as present"), note=f"weight written {text}")
        return Reading(found=(found,), quirks=(quirk,))
    return Reading(refusal=Refusal(help="say under 'mend' in the layout what the weight is"))


def grams(amount: float, note: str) -> Reading:
    """A weight as a find; a weight of zero gives nothing."""
    if amount < 0:
        return Reading(refusal=Refusal(help="a weight cannot be below 0"))
    amount = float(f"{amount:.12g}")
    return Reading(found=(Found(mass_g=amount, note=note),)) if amount else NOTHING
