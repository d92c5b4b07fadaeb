"""Cells among the counts, read: numbers, signs, classes. A sign is a number only by a key; the writing is kept."""

from __future__ import annotations

import re
from functools import cache

from narrate.model.counts import Count
from narrate.model.grids import Cell
from narrate.model.layouts import Marks
from narrate.reading.count_cells import Refusal, read_count
from narrate.reading.intake.cell_brackets import state_in_brackets
from narrate.reading.intake.cell_kinds import not_text
from narrate.reading.intake.cell_marks import ABSENT, NOT_LOOKED, SIGNS, Found, Meanings, Quirk, Reading, number_of
from narrate.reading.intake.cell_signs import keyed, unkeyed
from narrate.reading.intake.cell_writings import read_writing
from narrate.reading.intake.footnotes_in_words import SMALL_LETTERS
from narrate.reading.intake.halves import read_half
from narrate.reading.intake.pending import says_pending
from narrate.reading.intake.tallies import strokes
from narrate.reading.intake.thousands import in_two_ways, may_be_thousands
from narrate.reading.intake.uncounted import narrow, says_uncounted


def read_cell(cell: Cell, marks: Marks, *, is_tallied: bool = False, has_decimals: bool = False) -> Reading:
    """
    What a cell of counts means.

    is_tallied:    whether the sheet counts in strokes; elsewhere 'I' and 'l' may be anything.
    has_decimals:  whether its counts are written with three decimals, so that '1.000' is one and no thousand.

    >>> read_cell(Cell("12"), Marks()).found[0].count.number
    12
    >>> read_cell(Cell("+++"), Marks()).found[0].count.amount
    'noted as present'
    >>> [f.count.number for f in read_cell(Cell("1/6"), Marks(slash="whole/fragment")).found]
    [1, 6]
    """
    if cell.kind != "text":
        special = not_text(cell)
        if special is not None:
            return special
    if is_tallied and (cell.kind == "text") and (n := strokes(narrow(cell.text.strip()))):
        return _tallied(narrow(cell.text.strip()), n)
    if cell.number is None and not has_decimals and may_be_thousands(cell.text, marks.decimal):
        return in_two_ways(cell.text.strip(), marks.decimal)
    return _read(cell.text, cell.number, Meanings.of(marks))


@cache
def _read(text: str, number: float | None, by: Meanings) -> Reading:
    written = narrow(text.strip())
    written = written.translate(SMALL_LETTERS) if written[:1].isdecimal() else written
    lower = written.lower()
    count = keyed(written, written, by)
    if count is not None:
        is_doubtful = "in doubt" in dict(by.key).get(written, "")
        return Reading(found=(Found(count=count, is_doubtful=is_doubtful),))
    if number is not None and not re.search(r"[a-z%]", lower):
        return _number(written, number, by)
    plain = number_of(written, by.decimal)
    if plain is not None:
        return _number(written, plain, by)
    if says_uncounted(written):
        return _uncounted(written)
    if lower in ABSENT:
        quirks = () if lower in ("0", "o", "absent", "none", "nil") else (_dash(written),)
        return Reading(found=(Found(count=Count(written=written, amount="looked for and absent")),), quirks=quirks)
    if says_pending(written):
        return _pending(written)
    if lower in NOT_LOOKED:
        return Reading(found=(Found(count=Count(written=written, amount="not looked for")),))
    if lower in ("?", "cf", "cf."):
        return _in_doubt(written)
    if SIGNS.fullmatch(written) and not (written[0] in "([" and state_in_brackets(by)):
        return Reading(found=(Found(count=Count(written=written, amount="noted as present")),), quirks=unkeyed(written))
    beside = read_writing(written, by)
    if beside is not None:
        return beside
    plainly = re.sub(r"(?<=\d)\s*to\s*(?=\d)", "-", re.sub(r"(?<=\d)[, \u00a0](?=\d{3}(?!\d))", "", written))
    classed = read_count(plainly)
    if isinstance(classed, Count) and classed.amount != "counted":
        return Reading(found=(Found(count=Count(
            written=written, amount=classed.amount, at_least=classed.at_least, at_most=classed.at_most,
            scale=classed.scale,
        )),))  # fmt: skip
    if isinstance(classed, Refusal) and "made a date" in classed.help:
        return Reading(refusal=Refusal(help=f"{classed.help}, under 'mend' in the layout"))
    if "%" in written:
        return Reading(
            refusal=Refusal(help="a share is no count; say in the layout that the row or column is 'percent'")
        )
    return Reading(refusal=Refusal(help='say under mend in the layout what is meant, such as mend: {"H4": "3"}'))


def _number(written: str, number: float, by: Meanings) -> Reading:
    if number < 0:
        return Reading(refusal=Refusal(help="a count cannot be below 0"))
    if number == 0:
        return Reading(found=(Found(count=Count(written=written, amount="looked for and absent")),))
    if number >= 1e9:
        return Reading(refusal=Refusal(help="no sample holds so many items; is the row a weight or a code?"))
    if float(number).is_integer():
        return _whole(written, int(number))
    return read_half(written, int(number), by.halves if number % 1 == 0.5 else "")


def _whole(written: str, number: int) -> Reading:
    quirks: tuple[Quirk, ...] = ()
    if "e" in written.lower():
        message = f"'{written}' is a number in short, read as {number}, expected all digits"
        quirks = (Quirk(kind="short number", message=message, help="say the whole number under 'mend' in the layout"),)
    return Reading(found=(Found(count=Count(written=written, amount="counted", number=number)),), quirks=quirks)


def _in_doubt(written: str) -> Reading:
    quirk = Quirk(
        kind="?",
        message=f"'{written}' is kept as presence in doubt, expected a count or a sign with a key",
        help=f"say what '{written}' means under cells, key in the layout",
    )
    found = Found(count=Count(written=written, amount="noted as present"), is_doubtful=True)
    return Reading(found=(found,), quirks=(quirk,))


def _uncounted(written: str) -> Reading:
    quirk = Quirk(
        kind=f"uncounted {written}",
        message=f"'{written}' says that it was there and not how many; it is kept as presence, expected a count",
        help=f'say how many it stands for under cells in the layout: key: {{"{written}": ">100"}}, or under \'mend\'',
    )
    return Reading(found=(Found(count=Count(written=written, amount="noted as present")),), quirks=(quirk,))


def _pending(written: str) -> Reading:
    quirk = Quirk(
        kind=f"pending {written}",
        message=f"'{written}' says that nobody has looked yet; it is kept as not looked for, expected a count",
        help="fill it in once it is sorted, or take the sample out of the counts until then",
    )
    return Reading(found=(Found(count=Count(written=written, amount="not looked for")),), quirks=(quirk,))


def _tallied(written: str, number: int) -> Reading:
    quirk = Quirk(
        kind="tally",
        message=f"'{written}' is read as {number} tally strokes, expected a number",
        help="nothing need be done if they were counted right",
    )
    count = Count(written=written, amount="counted", number=number)
    return Reading(found=(Found(count=count, note=f"tallied {written}"),), quirks=(quirk,))


def _dash(written: str) -> Quirk:
    return Quirk(
        kind="dash",
        message=f"'{written}' is read as looked for and absent, expected 0 or a key",
        help=f'if it means few, write under cells in the layout: key: {{"{written}": present}}',
    )
