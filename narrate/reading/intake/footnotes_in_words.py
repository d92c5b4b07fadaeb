"""Footnotes that say in words what no field of a find holds: kept with the cells that carry their sign."""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.model.grids import Grid
from narrate.reading.intake.cell_marks import NUMBER
from narrate.reading.intake.keys import Entry

RAISED = "ᵃᵇᶜᵈᵉᶠᵍʰⁱʲᵏˡᵐⁿᵒᵖʳˢᵗᵘᵛʷˣʸᶻ"
SMALL_LETTERS = str.maketrans(RAISED, "abcdefghijklmnoprstuvwxyz")
"""Letters set above the line."""
_MARKED = re.compile(rf"{NUMBER}\s*[(\[]?([a-z]{{1,2}}|[*†‡§]{{1,3}})[)\]]?")
_NO_SIGNS = frozenset(
    ("g", "gr", "gm", "mg", "kg", "l", "ml", "cc", "mm", "cm", "f", "fr", "w", "x", "p", "cf", "ca", "c", "n")
)
"""Letters behind a number that have a meaning of their own."""


def signs_beside_amounts(grids: Iterable[Grid]) -> frozenset[str]:
    """Letters and signs that stand behind numbers in cells of their own."""
    found = set()
    for grid in grids:
        for cell in grid.cells.values():
            if cell.kind == "text" and len(cell.text) <= 12:
                match = _MARKED.fullmatch(cell.text.strip().translate(SMALL_LETTERS))
                found |= {match[1]} if match and match[1] not in _NO_SIGNS else set()
    return frozenset(found)


def footnotes_in_words(grid: Grid, signs: frozenset[str]) -> list[Entry]:
    """What the texts of a sheet say of such signs: 'a = from the fine sieve', '(b) counted twice', words beside one."""
    if not signs:
        return []
    anyone = "|".join(re.escape(sign) for sign in sorted(signs, key=len, reverse=True))
    entry = re.compile(
        rf"(?:^|(?<=[;,.:\s]))[(\[]?(?P<sign>{anyone})[)\]]?\s*(?:=|:|\bmeans\b|\bindicates\b)\s*(?P<words>.+?)"
        r"(?=[;,.]?\s+[(\[]?(?:[a-z]{1,2}|[^\w\s]{1,3})[)\]]?\s*(?:=|:|means|indicates)|$)"
    )
    bare = re.compile(
        rf"(?:[(\[](?P<sign>{anyone})[)\]]|(?P<sign2>{anyone})\)|(?P<sign3>[*†‡§]{{1,3}}))\s*(?P<words>\w.{{3,}})"
    )
    found = []
    for at, cell in sorted(grid.cells.items()):
        text = cell.text.translate(SMALL_LETTERS)
        if cell.kind != "text" or len(text) > 400:
            continue
        beside = grid.text(at[0], at[1] + 1)
        text = f"({text[0]}) {text[1:].strip()}" if cell.text[:1] in RAISED else text
        match = bare.fullmatch(text)
        if text.strip(" =:()[]") in signs and re.match(r"[=:\s]*[^\W\d_]{3,}", beside) and " " in beside.strip():
            found.append(Entry(text.strip(" =:()[]"), beside.strip(" =:"), at))
        elif match and (sign := match["sign"] or match["sign2"] or match["sign3"]) in signs:
            found.append(Entry(sign, match["words"].strip(), at))
        else:
            found += [Entry(one["sign"], one["words"].strip(" ;,"), at) for one in entry.finditer(text)]
    return [one for one in found if re.search(r"[^\W\d_]{3}", one.meaning)]
