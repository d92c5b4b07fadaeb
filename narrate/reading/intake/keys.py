"""The key of signs that a sheet itself gives: '+ = 1-5, ++ = 6-20', 'x: present', '- absent'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from dataclasses import dataclass

from narrate.model.grids import Grid
from narrate.model.layouts import Marks

_ENTRY = re.compile(
    r"(?<![\w+])(?P<sign>\++|\*{1,5}|#{1,5}|x{1,5}|X{1,5}|[•●○◦■□▪▫◆◇★☆✔√]{1,5}|[-–—?]|\b(?:VA|VR|VF|[A-Z])(?:\*|\+|\b))\s*(?:=|:|\s[-–]\s|\bis\b|\bmeans\b)\s*"
    r"(?P<meaning>(?:[<>≤≥]\s*)?\d+\s*(?:[-–]|to)\s*\d+|[<>≤≥]=?\s*\d+|\d+\s*\+|\d+|[a-z][a-z /-]*)\s*(?P<more>\((?:[^()]*)\))?",
)
_PLAIN_ENTRY = re.compile(
    r"(?:^|[;,:.]\s*|key:?\s+)(?P<sign>\++|\*{1,5}|#{1,5}|x{1,5}|[-–—])\s+"
    r"(?P<meaning>[<>]\s*\d+|\d+\s*(?:[-–]|to)\s*\d+|absent|present|rare|occasional|common|frequent|abundant|few|some|many|moderate|very [a-z]+)\s*(?P<more>\((?:[^()]*)\))?",
    re.IGNORECASE,
)
"""'+ rare (1-5); ++ common': a sign and its word without a sign between them."""
_RANGE = re.compile(r"(?:[<>≤≥]=?\s*\d+|\d+\s*(?:[-–]|to)\s*\d+|\d+\s*\+)")
_LETTERS = re.compile(
    r"present|absent|rare|occasional|common|frequent|abundant|dominant|few|some|many|moderate|trace|\d", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Entry:
    """One sign and its meaning, with the cell that says so."""

    sign: str
    meaning: str
    at: tuple[int, int]


def find_marks(grid: Grid) -> Marks:
    """What the notes and titles of a sheet say of its slashes, brackets, blanks and decimal mark, and of its signs."""
    slash = ""
    brackets = "note"
    blank = "absent"
    for cell in grid.cells.values():
        if cell.kind != "text" or len(cell.text) < 4:
            continue
        lower = cell.text.lower()
        if len(lower) > 12 or "/" in lower:
            if re.search(r"whole(?:s| grains?| seeds?)?\s*/\s*frag", lower):
                slash = "whole/fragment"
            elif re.search(r"frag(?:ment)?s?\s*/\s*whole", lower):
                slash = "fragment/whole"
        if re.search(r"(?:brackets|parenthes[ei]s).{0,40}frag|frag.{0,40}(?:brackets|parenthes[ei]s)", lower):
            brackets = "fragment"
        if re.search(r"blank.{0,30}not (?:looked|sorted|analysed|examined|counted)", lower):
            blank = "not looked for"
    key: dict[str, str] = {}
    for entry in key_entries(grid):
        key.setdefault(entry.sign, entry.meaning)
    return Marks(key=key, slash=slash, brackets=brackets, blank=blank, decimal=_decimal(grid))  # type: ignore[arg-type]


def key_entries(grid: Grid) -> list[Entry]:
    """Every sign of abundance that a text of the sheet explains: '+ = 1-5', 'x: present', '- absent'."""
    found = []
    for at, cell in grid.cells.items():
        if cell.kind != "text" or len(cell.text) < 4:
            continue
        text = cell.text
        for match in _PLAIN_ENTRY.finditer(text):
            meaning = meaning_of(match["meaning"], match["more"] or "")
            if meaning:
                found.append(Entry(match["sign"], meaning, at))
        if "=" in text or ":" in text or re.search(r"\s[-–]\s", text):
            for match in _ENTRY.finditer(text):
                meaning = meaning_of(match["meaning"], match["more"] or "")
                if meaning and (
                    not match["sign"].isalpha()
                    or match["sign"].lower().startswith("x")
                    or _LETTERS.search(match["meaning"])
                ):
                    found.append(Entry(match["sign"], meaning, at))
    return found


def meaning_of(meaning: str, more: str = "") -> str:
    """A range where the entry gives one, else present, absent or not looked for; empty for a word that says neither."""
    found = _RANGE.search(meaning) or _RANGE.search(more)
    if found:
        return re.sub(r"\s*(?:[-–]|to)\s*", "-", re.sub(r"\s+", " ", found[0])).replace(" ", "")
    word = meaning.strip().lower()
    if re.match(r"absent|not present|none|not found|nil", word):
        return "absent"
    if re.match(r"not (?:looked|sorted|examined|analysed|counted|recorded)|no data", word):
        return "not looked for"
    if re.match(
        r"(?:present|presence|rare|occasional|common|frequent|abundant|dominant|few|some|many|moderate|trace|very|numerous|uncertain|possible|low|medium|high)",
        word,
    ):
        return "present"
    if word.isdigit():
        return word
    return ""


def _decimal(grid: Grid) -> str:
    """The decimal mark: a comma where numbers carry commas that part no thousands, and no number carries a point."""
    commas = points = 0
    for cell in grid.cells.values():
        if cell.kind == "text" and len(cell.text) < 16:
            if re.fullmatch(r"\d+,\d{1,2}|\d+,\d{4,}|0,\d+", cell.text):
                commas += 1
            elif re.fullmatch(r"\d+\.\d{1,2}|\d+\.\d{4,}|0\.\d+", cell.text):
                points += 1
    return "," if commas > points else "."
