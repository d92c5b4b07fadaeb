"""Amounts beside a word that says what they are: a blank beside 'present' is presence, and so is a 1."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.counts import Count
from narrate.model.grids import Cell
from narrate.reading.intake.cell_marks import ABSENT, NOT_LOOKED, SIGNS, Found, Reading
from narrate.reading.intake.kinds_of_amounts import kind_of_amount
from narrate.reading.intake.uncounted import says_uncounted


def instead_of_blank(cell: Cell | None, beside: Cell | None) -> Cell | None:
    """
    The word beside a blank amount, where it says itself what was found: 'present', 'absent', 'abundant'.

    >>> instead_of_blank(None, Cell("present")).text, instead_of_blank(Cell("n/a"), Cell("vorhanden")).text
    ('present', 'vorhanden')
    >>> instead_of_blank(None, Cell("estimate")), instead_of_blank(Cell("3"), Cell("present")).text
    (None, '3')
    """
    if beside is None or (cell is not None and cell.text.strip().lower() not in ("", *NOT_LOOKED, "-", "–", "—")):
        return cell
    word = beside.text.strip()
    says = kind_of_amount(word) == "presence" or says_uncounted(word)
    return beside if says or (len(word) > 2 and (SIGNS.fullmatch(word) or word.lower() in ABSENT)) else cell


def of_presence(reading: Reading, cell: Cell, kind: str) -> Reading:
    """
    What an amount means that a word beside it calls presence: the word alone, or a 1, says that it was there.

    >>> one = Reading(found=(Found(count=Count(written="1", amount="counted", number=1)),))
    >>> of_presence(one, Cell("1"), "present").found[0].count.amount
    'noted as present'
    >>> of_presence(one, Cell("1"), "exact").found[0].count.amount
    'counted'
    """
    if kind_of_amount(kind) != "presence":
        return reading
    if kind_of_amount(cell.text) == "presence":
        return Reading(found=(Found(count=Count(written=cell.text.strip(), amount="noted as present")),))
    found = tuple(
        replace(one, count=Count(written=one.count.written, amount="noted as present"))
        if one.count is not None and one.count.number == 1
        else one
        for one in reading.found
    )
    return replace(reading, found=found)
