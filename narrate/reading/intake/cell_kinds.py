"""Cells that hold neither text nor a number: dates, truths, faults, formulas whose result was not saved."""

from __future__ import annotations

import datetime

from narrate.model.counts import Count
from narrate.model.grids import Cell
from narrate.reading.count_cells import Refusal
from narrate.reading.intake.cell_marks import Found, Reading
from narrate.reading.intake.number_formats import typed_before


def not_text(cell: Cell) -> Reading | None:
    """What such a cell gives; None for text and numbers."""
    if cell.kind == "date":
        typed = _typed(cell.text)
        meant = f"probably {' or '.join(typed)} was typed" if typed else "look what was typed"
        return Reading(
            refusal=Refusal(help=f"a spreadsheet has made a date of it; {meant}; say it under 'mend' in the layout")
        )
    if cell.kind == "no result":
        return Reading(
            refusal=Refusal(
                help=f"the formula {cell.formula[:40]} has no saved result; open and save the workbook in a "
                "spreadsheet program, or say the number under 'mend' in the layout"
            )
        )
    if cell.kind == "fault":
        return Reading(
            refusal=Refusal(help="the spreadsheet shows an error there; say the number under 'mend' in the layout")
        )
    if cell.kind == "truth":
        amount = "noted as present" if cell.text == "TRUE" else "looked for and absent"
        return Reading(found=(Found(count=Count(written=cell.text, amount=amount)),))  # type: ignore[arg-type]
    return None


def _typed(shown: str) -> tuple[str, ...]:
    try:
        return typed_before(datetime.datetime.strptime(shown, "%d %b %Y"))
    except ValueError:
        return ()
