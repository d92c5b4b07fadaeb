"""Tables that give in how many samples each taxon was found, by site or phase: they are told, and not read as counts."""

# ruff: noqa: E501

from __future__ import annotations

import re

from narrate.model.grids import Area, address
from narrate.reading.intake.crossed_guess import Crossed
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.long_table import Long

# Common practice, no source: how tables of ubiquity are headed and explained, in the languages of the other words.
_OF = r"(?:\w+ ){0,3}?(?:samples|contexts|features|loci|proben|befunde\w*|échantillons|prélèvements|muestras|campioni|monsters)"
_SAID = re.compile(
    rf"(?:the )?(?:(?:number|no\.?|#|count) of {_OF} (?:in which|with|where|containing|that (?:contain|hold|yielded))\b"
    rf"|(?:zahl|anzahl) der {_OF}[, ]+(?:in denen|mit)\b"
    rf"|nombre d['e’] ?{_OF} (?:où|dans lesquels|avec|contenant)\b"
    rf"|número de {_OF} (?:en (?:las|los)? ?que|con)\b|numero di {_OF} (?:in cui|con)\b).*",
    re.IGNORECASE,
)
_TITLE = re.compile(
    r"(?:(?:table|tab\.?|tabelle|tableau|tabla|tabella|appendix|fig(?:ure)?)\s*[\w.-]*\d[\w.-]*\s*[.:,–-]*\s*)?"
    r"(?:ubiquit(?:y|ies)|ubiquität|stetigkeit(?:en)?|ubiquité|ubicuidad|ubiquità|frequency of occurrence)\b(?!.*\b(?:counts?|numbers? of (?:seeds|items|remains)|abundance|densit|anzahl|nombre|restes)).*",
    re.IGNORECASE,
)
_KEY = r"\s*(?:=|:|–|is|means)\s*"
_LONGEST_WAY = 12
"""Columns over which a head that is written once is taken to reach."""


def gives_ubiquity(look: Look, guess: Crossed | Long, used: Area) -> str:
    """What is told of a table all of whose amounts are numbers of samples; '' for any other."""
    if isinstance(guess, Long):
        return ""
    lines = [row for row, role in guess.rows.items() if role.name == "counts"]
    columns = [column for column, role in guess.columns.items() if role.name == "counts"]
    over = range(guess.area.top, min(lines, default=0))
    where = _said_over(guess.look, over, columns) or _said_by_title(guess.look, over) or _said_by_key(guess.look, over, columns)
    if where is None or not _are_whole(guess.look, lines, columns):
        return ""
    row, column = (where[1], where[0]) if guess.look.is_turned else where
    before = f"sheet {look.grid.sheet}: " if look.grid.sheet else ""
    return (
        f"{before}rows {used.top + 1} to {used.bottom + 1} give in how many samples each taxon was found "
        f"('{look.text(row, column)[:60]}' in {address(row, column)}), and no counts: numbers of samples cannot be "
        "added or compared with counts, so nothing is read; the counts of each sample are needed"
    )


def _said_over(look: Look, over: range, columns: list[int]) -> tuple[int, int] | None:
    """The cell over the counts that says so for all of them, written once for each or for several side by side."""
    for row in over:
        found = {c for c in columns if (at := _head_of(look, row, c)) is not None and _SAID.fullmatch(look.text(row, at).strip())}
        if columns and found == set(columns):
            at = _head_of(look, row, min(columns))
            return None if at is None else (row, at)
    return None


def _head_of(look: Look, row: int, column: int) -> int | None:
    """The column of the nearest text in a row at a column or before it."""
    return next((c for c in range(column, max(-1, column - _LONGEST_WAY), -1) if look.text(row, c)), None)


def _said_by_title(look: Look, over: range) -> tuple[int, int] | None:
    """The title, where it stands alone in its line and begins with the word."""
    for row in over:
        own = [c for c in range(look.columns) if (row, c) in look.own]
        if len(own) == 1 and len(look.text(row, own[0])) > 12 and _TITLE.fullmatch(look.text(row, own[0]).strip()):
            return row, own[0]
    return None


def _said_by_key(look: Look, over: range, columns: list[int]) -> tuple[int, int] | None:
    """The note that explains the small head of all the counts: 'N = number of samples in which ...'."""
    for row in over:
        heads = {look.text(row, c) for c in columns}
        if len(heads) != 1 or heading(sign := heads.pop()) != "count":
            continue
        for at, cell in look.cells.items():
            key = re.match(re.escape(sign) + _KEY, cell.text)
            if key and _SAID.fullmatch(cell.text[key.end():].strip()):
                return at
    return None


def _are_whole(look: Look, lines: list[int], columns: list[int]) -> bool:
    texts = [look.text(row, c) for row in lines for c in columns if look.text(row, c)]
    return bool(texts) and all(text.isdecimal() or not re.search(r"\d", text) for text in texts)
