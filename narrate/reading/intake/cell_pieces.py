"""Cells of counts that tell whole items from pieces: '4f', '12+4f', '12 ganze + 4 Fragmente', '12 + frags', 'frags'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.counts import Count
from narrate.reading.count_cells import read_count
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


def class_and_pieces(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'>50+12f', and '>50 (12)' where brackets are pieces: so many whole ones as the class says, and twelve pieces."""
    classed = read_count(match[1])
    other = _pieces_beside(match, written, by)
    if other is None or not isinstance(classed, Count) or classed.amount != "noted as present":
        return None
    count = replace(classed, written=written)
    return Reading(found=(Found(count=count), other))


def estimate_and_pieces(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'c. 200+12f', and 'c. 200 (12)' where brackets are pieces."""
    one, other = counted(written, match[1], by, note=f"estimated: {written}"), _pieces_beside(match, written, by)
    if one is None or one.count is None or other is None or by.estimates == "present":
        return None
    quirk = Quirk(
        kind="estimate",
        message=f"'{written}' holds an estimate, taken as {one.count.number} with a note, expected a count",
        help="write 'estimates: present' under cells in the layout to take no estimate as a count",
    )
    return Reading(found=(one, other), quirks=(quirk,))


def _pieces_beside(match: re.Match[str], written: str, by: Meanings) -> Found | None:
    if match[2] is None and by.brackets != "fragment":
        return None
    return counted(written, match[2] or match[3], by, completeness="fragment")


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
