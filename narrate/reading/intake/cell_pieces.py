"""Cells of counts that tell whole items from pieces: '4f', '12+4f', '12 ganze + 4 Fragmente', '12 + frags', 'frags'."""

# ruff: noqa: E501

from __future__ import annotations

import re

from narrate.model.counts import Count
from narrate.reading.intake.cell_marks import WHOLES, Found, Meanings, Quirk, Reading
from narrate.reading.intake.cell_signs import counted, one_find, present


def pieces(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    is_whole = bool(re.fullmatch(WHOLES, match[2], re.IGNORECASE))
    return one_find(counted(written, match[1], by, completeness="whole" if is_whole else "fragment"))


def whole_and_pieces(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    one = counted(written, match[1], by)
    is_cf = match[3].lower().startswith("cf")
    other = counted(written, match[2], by, completeness="" if is_cf else "fragment", is_doubtful=is_cf)
    return Reading(found=(one, other)) if one and other else None


def whole_and_some_pieces(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'12 + frags': pieces beside twelve whole ones that nobody counted."""
    one = counted(written, match[1], by)
    quirk = Quirk(
        kind="pieces alone",
        message=f"'{written}' says that pieces were there and not how many; they are kept as presence, expected a number",
        help="say under 'mend' in the layout how many there are, if somebody has counted them",
    )
    return Reading(found=(one, present(written, completeness="fragment")), quirks=(quirk,)) if one else None


def pieces_alone(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'frags' without a number: pieces that nobody counted."""
    quirk = Quirk(
        kind="pieces alone",
        message=f"'{written}' says that pieces were there and not how many; it is kept as presence, expected a number",
        help="say under 'mend' in the layout how many there are, if somebody has counted them",
    )
    count = Count(written=written, amount="noted as present")
    return Reading(found=(Found(count=count, completeness="fragment"),), quirks=(quirk,))
