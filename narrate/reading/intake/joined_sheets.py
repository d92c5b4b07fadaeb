"""Sheets of a database joined by numbers: finds that name their taxon, part and sample by a key of another sheet."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from narrate.model.grids import Cell, Grid
from narrate.reading.intake.code_columns import words_beside_key
from narrate.reading.intake.evidence import Look, looks_like_id
from narrate.reading.intake.header_words import heading, sample_rank

_LEAST_KNOWN = 0.8
"""Share of the keys of the finds that must stand in the list of them."""


@dataclass(slots=True)
class Joined:
    """What lists say of the keys of a sheet of finds."""

    finds: str = ""
    """The sheet of the finds."""
    grid: Grid | None = None
    """That sheet with words for keys, in which a guess can be made."""
    names: dict[str, str] = field(default_factory=dict)
    parts: dict[str, str] = field(default_factory=dict)
    ids: dict[str, str] = field(default_factory=dict)
    lists: set[str] = field(default_factory=set)
    """Sheets that say what keys mean and hold nothing else."""
    doubts: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class _List:
    sheet: str
    role: str
    key: str
    meant: dict[str, str]


@dataclass(frozen=True, slots=True)
class _Headed:
    """A sheet with its row of heads."""

    look: Look
    row: int
    heads: dict[int, str]

    @property
    def columns(self) -> dict[str, int]:
        """Head in lower case -> the first column under it."""
        return {text.lower(): column for column, text in reversed(self.heads.items())}


def joined_sheets(looks: Sequence[Look]) -> Joined | None:
    """The finds of a workbook whose taxa are numbers of another of its sheets; None where no sheet is such a one."""
    if len(looks) < 2:
        return None
    headed = [_Headed(look, _head_row(look), _heads(look)) for look in looks]
    columns = [one.columns for one in headed]
    for n, of_finds in enumerate(headed):
        finds, heads, head_row = of_finds.look, of_finds.heads, of_finds.row
        lists: list[_List] = []
        for column, head in heads.items():
            others = [(one, at[head.lower()]) for one, at in zip(headed, columns, strict=True) if head.lower() in at]
            others += [(one, key) for one in headed if (key := _key_named_in(head, one)) is not None]
            lists += _lists_of(of_finds, column, head, [other for other in others if other[0] is not headed[n]])
        if not any(one.role == "taxon" for one in lists):
            continue
        found = Joined(finds=finds.grid.sheet)
        cells = dict(finds.grid.cells)
        for one in lists:
            column = next(c for c, head in heads.items() if head.lower() == one.key.lower())
            cells[head_row, column] = Cell(one.role)
            unknown = []
            for row in range(head_row + 1, finds.rows):
                text = finds.text(row, column)
                if text:
                    cells[row, column] = Cell(one.meant.get(text, text))
                    unknown += [] if text in one.meant else [text]
            {"taxon": found.names, "part": found.parts, "sample": found.ids}[one.role].update(one.meant)
            if one.role != "sample":
                found.lists.add(one.sheet)
            where = {"taxon": "'names'", "part": "'parts'", "sample": "'ids'"}[one.role]
            sort = "numbers" if all(map(str.isdecimal, one.meant)) else "codes"
            found.doubts.append(
                f"sheet {one.sheet} says what the {len(one.meant)} {sort} under '{one.key}' mean; they stand under "
                f"{where} in the layout"
            )
            if unknown:
                listed = ", ".join(dict.fromkeys(unknown))
                found.doubts.append(f"DOUBTFUL: {one.key} {listed} stands in no line of sheet {one.sheet}")
        found.grid = replace(finds.grid, cells=cells)
        return found
    return None


def _key_named_in(head: str, of_list: _Headed) -> int | None:
    """The column of codes of a list that a head elsewhere names: 'TaxonCode' names 'Code' of a sheet 'lkpTaxon'."""
    keys = [c for c, text in of_list.heads.items() if text and not words_beside_key(text)]
    named = words_beside_key(head)
    if len(keys) != 1 or not named:
        return None
    others = [of_list.look.grid.sheet, *(text for c, text in of_list.heads.items() if c != keys[0])]
    is_said = any(set(named) <= set(words_beside_key(text)) for text in others)
    role = heading(" ".join(named))
    return keys[0] if is_said or (role in _OF_FINDS and role in map(heading, others)) else None


_OF_FINDS = ("taxon", "part")


def without_key(look: Look, joined: Joined) -> Look:
    """The list of samples with its key called a key, so that the ids are those of the laboratory."""
    row = _head_row(look)
    keys = [c for c in _heads(look) if {look.text(r, c) for r in range(row + 1, look.rows)} - {""} == set(joined.ids)]
    if row < 0 or not keys or not joined.ids:
        return look
    cells = {**look.grid.cells, (row, keys[0]): Cell("key")}
    return Look.of(replace(look.grid, cells=cells), look.names, look.signs)


def _head_row(look: Look) -> int:
    """The first row with several words and no number; -1 for none."""
    for row in range(min(look.rows, 10)):
        texts = [c for c in range(look.columns) if look.text(row, c)]
        if len(texts) >= 2 and all(any(letter.isalpha() for letter in look.text(row, c)) for c in texts):
            return row
    return -1


def _heads(look: Look) -> dict[int, str]:
    row = _head_row(look)
    return {c: look.text(row, c) for c in range(look.columns) if look.text(row, c)} if row >= 0 else {}


def _lists_of(finds: _Headed, column: int, head: str, others: Sequence[tuple[_Headed, int]]) -> list[_List]:
    """What another sheet with the same head, in the column given, says of the keys in a column; at most one."""
    rows_below = range(finds.row + 1, finds.look.rows) if others else ()
    keys = [text for r in rows_below if (text := finds.look.text(r, column))]
    are_letters = all(map(_LETTERS.fullmatch, keys))
    if len(keys) < 3 or len(set(keys)) == len(keys) or not (are_letters or all(_is_key(text) for text in keys)):
        return []
    for other, own in others:
        look = other.look
        rows = [r for r in range(other.row + 1, look.rows) if look.text(r, own)]
        texts = [look.text(r, own) for r in rows]
        known = sum(key in texts for key in keys)
        if len(set(texts)) < len(texts) or len(texts) < 2 or known < _LEAST_KNOWN * len(keys):
            continue
        made = _made(look, own, rows, head)
        if made is not None and (made.role == "part" or not are_letters):
            return [made]  # names behind letters are read with all else that their list says
    return []


_LETTERS = re.compile(r"[^\W\d_]{1,5}")
"""Codes of letters alone, such as 'GR' for a grain."""


def _is_key(text: str) -> bool:
    return text.isdecimal() or (looks_like_id(text) and " " not in text)


def _made(look: Look, key: int, rows: list[int], head: str) -> _List | None:
    """A list of taxa, of parts or of samples, by what stands beside its keys."""
    others = [c for c in _heads(look) if c != key]
    sheet = look.grid.sheet

    def listed(role: str, column: int) -> _List:
        return _List(sheet, role, head, {look.text(r, key): look.text(r, column) for r in rows if look.text(r, column)})

    def share(of: list[bool]) -> float:
        return sum(of) / len(of) if of else 0.0

    if any(look.is_amount(r, c) for r in rows for c in others) or len(others) > 3:
        # A list with numbers in it, such as litres, is of samples.
        ids = [c for c in others if heading(look.text(_head_row(look), c)) == "sample"]
        ids = [c for c in ids if len({look.text(r, c) for r in rows} - {""}) == len(rows)]
        best = max(ids, key=lambda c: sample_rank(look.text(_head_row(look), c)), default=None)
        return listed("sample", best) if best is not None else None
    named = {c: share([look.name_score(r, c) >= 0.45 for r in rows]) for c in others}
    parts = {c: share([bool(look.names.part_of(look.text(r, c))) for r in rows]) for c in others}
    of_parts = max(parts, key=lambda c: parts[c], default=None)
    if of_parts is not None and parts[of_parts] >= 0.6:
        return listed("part", of_parts)
    headed = next((c for c in others if heading(look.text(_head_row(look), c)) == "taxon"), None)
    if headed is not None and named[headed] < 0.5:
        return listed("taxon", headed)  # names that no pack knows, under a head that says what they are
    best = max(named, key=lambda c: (sum(look.name_score(r, c) for r in rows), -c), default=None)
    return listed("taxon", best) if best is not None and named[best] >= 0.5 else None
