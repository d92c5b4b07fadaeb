"""Halves among the counts: '4.5' in a laboratory that counts half a grain, which is four and a piece."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.counts import Count
from narrate.model.grids import Grid
from narrate.model.layouts import Role
from narrate.reading.intake.cell_marks import Found, Quirk, Reading, number_of

_FRACTIONS = {
    "1/2": 0.5, "½": 0.5, "1/4": 0.25, "¼": 0.25, "3/4": 0.75, "¾": 0.75, "1/3": 1 / 3, "⅓": 1 / 3,
    "2/3": 2 / 3, "⅔": 2 / 3,
}  # fmt: skip
_SIGN, _STROKED = r"[½¼¾⅓⅔]", r"(?:1\s*/\s*[234]|3\s*/\s*4|2\s*/\s*3)"
PARTS = rf"(?P<whole>\d{{0,6}})(?P<part>\s*{_SIGN}|(?<=\d)\s+{_STROKED})"
"""'6 1/2', '6½' and '½': wholes, if any, and a part of one."""
_MIXED = re.compile(rf"(?=\d){PARTS}")
_A_PIECE = "write 'halves: fragment' under cells in the layout if a half is a piece; "


def halves_of(grid: Grid, rows: Mapping[int, Role], columns: Mapping[int, Role], decimal: str) -> str:
    """
    'fragment' where numbers that are no whole ones are halves in more lines of counts than not; '' elsewhere.

    '6 1/2' and '6½' are halves too, and beside one of them '1/2' is no count of wholes and pieces.

    Weights, shares and densities end in any digit; what is counted by halves does not. A line is a row or a column.
    """
    counted = [r for r, role in rows.items() if role.name in ("counts", "finds")]
    across = [c for c, role in columns.items() if role.name in ("counts", "count")]
    broken: dict[tuple[int, int], float] = {}
    for row in counted:
        for column in across:
            cell = grid.cells.get((row, column))
            number = None if cell is None else cell.number if cell.number is not None else number_of(cell.text, decimal)
            if cell is not None and number is None and (mixed := _MIXED.fullmatch(cell.text.strip())):
                broken[row, column] = share_of_one(mixed["part"])
            if number is not None and number % 1:
                broken[row, column] = number % 1
    of_halves, of_others = set[int](), set[int]()
    for (row, _), rest in broken.items():
        (of_halves if rest == 0.5 else of_others).add(row)
    return "fragment" if len(of_halves - of_others) > len(of_others) else ""


def share_of_one(part: str) -> float:
    """The part of one item that a sign or two numbers with a stroke say."""
    return _FRACTIONS[re.sub(r"\s", "", part)]


def half_written(text: str, decimal: str, *, has_halves: bool = False) -> float | None:
    """
    A count with a part of an item as the sheet adds it up, whatever finds are made of it.

    has_halves:  whether the sheet counts halves, so that '1/2' is one and no count of wholes and pieces.

    >>> half_written("4.5", "."), half_written("4,5", ","), half_written("6 1/2", ".")
    (4.5, 4.5, 6.5)
    >>> half_written("x", "."), half_written("100+", ".")
    (None, None)
    >>> half_written("1/2", "."), half_written("1/2", ".", has_halves=True)
    (None, 0.5)
    """
    flat = text.strip()
    if re.fullmatch(r"\d+[.,]\d+", flat):
        return number_of(text, decimal)
    if mixed := _MIXED.fullmatch(flat):
        return int(mixed["whole"]) + share_of_one(mixed["part"])
    return _FRACTIONS.get(flat) if has_halves else None


def read_half(written: str, whole: int, halves: str) -> Reading:
    """What a number with a half gives: whole ones and a piece by the layout's word, else presence."""
    if not halves:
        quirk = Quirk(
            kind="part of an item",
            message=f"'{written}' is no whole number of items; it is kept as presence and is in no sum, expected a "
            "whole number",
            help=f"{_A_PIECE if re.search('[.,]50*$|½', written) else ''}say 'mass' for the row or column if it was "
            "weighed, or 'density' or 'percent' if these are densities (items or grams a litre) or shares, and give "
            "the counts that they are of; or say under 'mend' what was counted",
        )
        count = Count(written=written, amount="noted as present", at_least=whole or None, at_most=whole + 1)
        return Reading(found=(Found(count=count),), quirks=(quirk,))
    said = f"{whole} whole and a piece" if whole else "a piece"
    quirk = Quirk(
        kind="half",
        message=f"'{written}' is taken as {said}, expected a whole number",
        help="write 'halves: \"\"' under cells in the layout if a half is no piece; it is then kept as presence",
    )
    piece = Found(
        count=Count(written=written, amount="counted", number=1), completeness="fragment", note=f"written {written}"
    )
    rest = Found(count=Count(written=written, amount="counted", number=whole), note=f"written {written}")
    return Reading(found=(rest, piece) if whole else (piece,), quirks=(quirk,))
