"""Numbers that a sheet itself explains as classes: 'Key: 1 = 1-5; 2 = 6-20; 3 = >20'. They are no counts."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.keys import meaning_of

_ENTRY = re.compile(
    r"(?<![\w.,<>=-])(?P<sign>[1-9])(?P<link>\s*[=:]\s*|\s+[-–]\s+|\s+(?:is|means)\s+|\s*(?=\())"
    r"(?P<meaning>[^=:;,()]*?)\s*(?P<more>\([^()]*\))?(?=\s*(?:[;,()]|\.?$|\.\s|\s[1-9]\s*[=:]))"
)
_KEY_WORD = r"\b(?:class|score|scale|key|abundance|categor|quantit|semi-?quantit)\w*"
_BEFORE = re.compile(rf"(?:|.*[:;,.(\[]|.*{_KEY_WORD})\s*", re.I | re.S)
"""What may stand before the first entry: a word that names something else ('Sample 1: few') makes no key of it."""
_UNIT = re.compile(r"\d\s*(?:mm|cm|m|µm|ml|l|lit(?:re|er)s?|g|kg|%|bc|ad|ce|bce|bp)\b", re.IGNORECASE)
_NO_FIND = ("0", "-", "–", "0.0")
_LOWEST = 3


def classes_explained(grid: Grid, table: Table, texts: Iterable[str]) -> dict[str, str]:
    """
    What the numbers of a table mean, where all of them are of a scale that the sheet explains; empty for counts.

    A number of the scale that is not explained itself says that something was there.
    """
    given = {text for text in texts if text not in _NO_FIND}
    known = _in_cells(grid) or _over_cells(grid, table)
    highest = max(map(int, known), default=0)
    if len(known) < 2 or "1" not in known or highest < _LOWEST or not given:
        return {}
    if not all(re.fullmatch("[1-9]", text) and int(text) <= highest for text in given):
        return {}
    return {str(n): known.get(str(n), "present") for n in range(1, highest + 1)}


def _meaning(text: str, more: str = "") -> str:
    """The range or presence that an entry gives; empty for a plain number, a size and whatever else it says."""
    found = "" if _UNIT.search(f"{text} {more}") else meaning_of(text.strip(), more)
    return "" if found.isdecimal() or found in ("absent", "not looked for") else found


def _in_cells(grid: Grid) -> dict[str, str]:
    """The entries of the one text that explains most, or of neighbours that hold an entry each."""
    best: dict[str, str] = {}
    for text in _texts(grid):
        entries = list(_ENTRY.finditer(text))
        said = {match["sign"]: _meaning(match["meaning"], match["more"] or "") for match in entries}
        gaps = "".join(text[a.end() : b.start()] for a, b in pairwise(entries))
        is_key = len(said) > len(best) and all(said.values()) and not any(map(str.isalpha, gaps))
        if is_key and _is_announced(text[: entries[0].start()], [match["link"].strip() for match in entries], said):
            best = said
    return best


def _is_announced(before: str, links: list[str], said: dict[str, str]) -> bool:
    """Whether a text explains numbers as classes: by what stands before, or by ranges that go on from each other."""
    starts = [int(found[0]) for meaning in said.values() if (found := re.search(r"\d+", meaning))]
    goes_up = len(starts) == len(said) >= _LOWEST and all(a < b for a, b in pairwise(starts))
    if goes_up and re.search(_KEY_WORD, before, re.IGNORECASE):
        return True
    return bool(_BEFORE.fullmatch(before)) and all(link in ("=", ":") for link in links)


def _texts(grid: Grid) -> Iterable[str]:
    """The texts of single cells that may hold a key, and of neighbours that hold an entry of one each."""
    texts = {at: cell.text for at, cell in grid.cells.items() if cell.kind == "text"}
    yield from (text for text in texts.values() if 8 <= len(text) <= 400)
    lines = {at for at, text in texts.items() if any(_is_entry(text, match) for match in _ENTRY.finditer(text))}
    for across, down in ((0, 1), (1, 0)):
        for row, column in sorted(lines):
            if (row - down, column - across) in lines:
                continue
            run = []
            while (row, column) in lines:
                run.append(texts[row, column])
                row, column = row + down, column + across
            yield "; ".join((texts.get((row - down * (len(run) + 1), column - across * (len(run) + 1)), ""), *run))


def _is_entry(text: str, match: re.Match[str]) -> bool:
    """Whether nothing but a word with a colon stands before an entry, and nothing behind it."""
    return bool(re.fullmatch(r"(?:[^\d=:]*:\s*)?", text[: match.start()])) and not text[match.end() :].strip(" .;,")


def _over_cells(grid: Grid, table: Table) -> dict[str, str]:
    """Rows outside the table that hold a number and its class, and nothing else."""
    rows: dict[int, list[str]] = {}
    for (row, _), cell in sorted(grid.cells.items()):
        if row not in table.rows:
            rows.setdefault(row, []).append(cell.text.strip())
    pairs = [texts for texts in rows.values() if len(texts) == 2 and re.fullmatch("[1-9]", texts[0])]
    found = {sign: meaning for sign, text in pairs if (meaning := _meaning(text))}
    return found if len(found) == len(pairs) and len(found) >= _LOWEST else {}
