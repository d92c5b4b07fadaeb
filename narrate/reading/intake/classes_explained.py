"""Numbers that a sheet itself explains as classes: 'Key: 1 = 1-5; 2 = 6-20; 3 = >20'. They are no counts."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.keys import meaning_of

_ENTRY = re.compile(
    r"(?<![\w.,<>=-])(?P<sign>[1-9])\s*[=:]\s*(?P<meaning>[^=:;,()]+?)(?=\s*(?:[;,()]|$|\s[1-9]\s*[=:]))"
)
_BEFORE = re.compile(r"(?:|.*[:;,.(\[]|.*\b(?:class|score|scale|key|abundance|categor)\w*)\s*", re.I | re.S)
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


def _meaning(text: str) -> str:
    """The range or presence that an entry gives; empty for a plain number, a size and whatever else it says."""
    found = "" if _UNIT.search(text) else meaning_of(text.strip())
    return "" if found.isdigit() or found in ("absent", "not looked for") else found


def _in_cells(grid: Grid) -> dict[str, str]:
    """The entries of the one text that explains most."""
    best: dict[str, str] = {}
    for cell in grid.cells.values():
        if cell.kind != "text" or not 8 <= len(cell.text) <= 400:
            continue
        entries = list(_ENTRY.finditer(cell.text))
        said = {match["sign"]: _meaning(match["meaning"]) for match in entries}
        gaps = [cell.text[a.end() : b.start()] for a, b in pairwise(entries)]
        is_key = bool(entries) and bool(_BEFORE.fullmatch(cell.text[: entries[0].start()]))
        if is_key and not any(map(str.isalpha, "".join(gaps))) and all(said.values()) and len(said) > len(best):
            best = said
    return best


def _over_cells(grid: Grid, table: Table) -> dict[str, str]:
    """Rows outside the table that hold a number and its class, and nothing else."""
    rows: dict[int, list[str]] = {}
    for (row, _), cell in sorted(grid.cells.items()):
        if row not in table.rows:
            rows.setdefault(row, []).append(cell.text.strip())
    pairs = [texts for texts in rows.values() if len(texts) == 2 and re.fullmatch("[1-9]", texts[0])]
    found = {sign: meaning for sign, text in pairs if (meaning := _meaning(text))}
    return found if len(found) == len(pairs) and len(found) >= _LOWEST else {}
