"""Sheets that say what the values under the heads of other sheets mean: 'preservation, C, charred', line by line."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

from narrate.model.grids import Grid
from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.keys import meaning_of

_SIGN = re.compile(r"[^\W\d_]{1,5}(?:/[^\W\d_]{1,3})?|(?:[^\W\d_]\.){1,3}[^\W\d_]|\++|\*{1,5}|#{1,5}|[-–—.]|\d")
_OF_HEADS = 10
"""Rows in which the heads of a sheet may stand."""
_LEAST = 0.8
"""Share of the lines that must give a short sign."""
_MOST_LINES = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Value:
    """One line: what a sign means in the column under a head."""

    field: str
    sign: str
    meaning: str
    at: tuple[int, int]
    """Where the sign stands."""


def heads_of(grids: Iterable[Grid]) -> frozenset[str]:
    """What stands in the first rows of sheets, in lower case."""
    return frozenset(
        cell.text.strip().lower()
        for grid in grids for (row, _), cell in grid.cells.items() if row < _OF_HEADS and cell.kind == "text"
    )  # fmt: skip


def values_by_field(grid: Grid, grids: Sequence[Grid]) -> list[Value]:
    """The lines of a sheet that is such a list; empty for any other. A head may stand once for the lines under it."""
    if len(grids) < 2:
        return []
    lines: dict[int, dict[int, str]] = {}
    for (row, column), cell in sorted(grid.cells.items()):
        lines.setdefault(row, {})[column] = cell.text.strip()
    columns = sorted({column for own in lines.values() for column in own})
    if not 3 <= len(columns) <= 6 or not 3 <= len(lines) <= _MOST_LINES:
        return []
    heads = heads_of(other for other in grids if other is not grid)
    of_field = next((c for c in columns[:-2] if sum(_at(own, c) in heads for own in lines.values()) >= 2), None)
    if of_field is None:
        return []
    of_sign, of_meaning = columns[columns.index(of_field) + 1 :][:2]
    found: list[Value] = []
    head, signs = "", 0
    for row, own in lines.items():
        head = own.get(of_field, "") or head
        sign, meaning = own.get(of_sign, ""), own.get(of_meaning, "")
        signs += bool(_SIGN.fullmatch(sign) and meaning)
        if head.lower() in heads and _SIGN.fullmatch(sign) and meaning:
            found.append(Value(field=head, sign=sign, meaning=meaning, at=(row, of_sign)))
    return found if signs >= _LEAST * len(lines) else []


def is_list_of_values(grid: Grid, found: Sequence[Value], grids: Sequence[Grid]) -> bool:
    """
    Whether the lines that say what values mean are most of a sheet, which then holds no finds.

    A head is what stands in the row of heads of another sheet: names of plants recur too, one below the other. Numbers
    are signs only where heads recur: 'Rumex, 3, seed' is a find.
    """
    heads = {text for other in grids if other is not grid for text in _row_of_heads(other)}
    own = [one for one in found if one.field.lower() in heads]
    fields = {one.field for one in own}
    if len({(one.field, one.sign) for one in own}) < len(own):
        return False
    if any(one.sign.isdecimal() for one in own) and 2 * len(fields) > len(own):
        return False
    return len(own) >= 3 and 2 * len(own) >= len({row for row, _ in grid.cells})


def _row_of_heads(grid: Grid) -> list[str]:
    """The first row with several words and no amount, in lower case."""
    rows: dict[int, list[str]] = {}
    for (row, _), cell in sorted(grid.cells.items()):
        if row < _OF_HEADS:
            rows.setdefault(row, []).append(cell.text.strip().lower())
    return next((own for own in rows.values() if len(own) >= 3 and not any(map(looks_like_amount, own))), [])


def _at(line: dict[int, str], column: int) -> str:
    return line.get(column, "").lower()


def classes_by_field(found: Sequence[Value], heads: Collection[str]) -> list[Value]:
    """
    The signs of abundance among values: all signs of a field say of how many, and its head speaks for nothing else.

    heads:  the heads of the sheet that is asked about, in lower case; another sheet's fields say nothing of it.
    """
    fields = dict.fromkeys(one.field for one in found)
    several = [one.sign for one in {(one.field, one.sign): one for one in found}.values()]
    classes = []
    for field in fields:
        own = [one for one in found if one.field == field]
        are_classes = len(own) >= 2 and all(meaning_of(one.meaning) for one in own)
        if field.lower() in heads and heading(field) in ("", "count") and are_classes:
            classes += [one for one in own if several.count(one.sign) == 1 and not one.sign.isdecimal()]
    return classes
