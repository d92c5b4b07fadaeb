"""Cells of weights, in grams."""


from __future__ import annotations

import re
from dataclasses import replace

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
    SIGNS,
    Found,
    Meanings,
    Quirk,
    Reading,
    number_of,
)
from narrate.reading.intake.cell_signs import keyed
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
    is_light = re.match(rf"[<>]|{ABOUT}|tr|trace|\+|x|present|c", text, re.IGNORECASE) is not None
    if is_light or text in marks.key or (SIGNS.fullmatch(text) and not re.fullmatch("[a-oq-z]", text, re.IGNORECASE)):
        return _unweighed(text, marks, "too light to weigh" if is_light else "noted and not weighed")
    return Reading(refusal=Refusal(help="say under 'mend' in the layout what the weight is"))


def _unweighed(text: str, marks: Marks, why: str) -> Reading:
    """A word or sign where others have a weight: presence, with the ends that the key of the sheet gives it."""
    count = keyed(text, text, Meanings.of(marks))
    if count is not None and count.amount in ("looked for and absent", "not looked for"):
        return NOTHING
    quirk = Quirk(
        kind="unweighed",
        message=f"the weight is '{text}', kept in the note and as presence, expected a number",
        help=f"nothing need be done if it was {why}",
    )
    found = Count(written=text, amount="noted as present")
    has_ends = count is not None and (count.at_least is not None or count.at_most is not None)
    if count is not None and has_ends and not re.search(r"\d *(?:mg|g|kg)\b", marks.key.get(text, "")):
        found = replace(found, at_least=count.at_least, at_most=count.at_most, scale=count.scale)
    return Reading(found=(Found(count=found, note=f"weight written {text}"),), quirks=(quirk,))


def grams(amount: float, note: str) -> Reading:
    """A weight as a find; a weight of zero gives nothing."""
    if amount < 0:
        return Reading(refusal=Refusal(help="a weight cannot be below 0"))
    amount = float(f"{amount:.12g}")
    return Reading(found=(Found(mass_g=amount, note=note),)) if amount else NOTHING
