"""Letters that were broken before a file was saved, and letters that were read in an older encoding: by cell."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.problems import ProblemList

_BROKEN = re.compile("Ã[\x80-¿\u0152\u0153\u0160\u0161\u0178\u0192\u2013-\u2122]|â€|Â[\xa0-¿]|\ufffd")
"""What UTF-8 looks like after it was once read as Windows-1252, and the sign for a letter that was lost."""


def whole_letters(text: str) -> str:
    """
    What a text with broken letters was, for looking words up; the text itself where nothing in it is broken.

    >>> whole_letters("KÃ¶rner"), whole_letters("Körner")
    ('Körner', 'Körner')
    """
    if not _BROKEN.search(text):
        return text
    try:
        return text.encode("cp1252").decode("utf-8")
    except (UnicodeDecodeError, UnicodeEncodeError):
        return text


def tell_broken_letters(grid: Grid, problems: ProblemList) -> None:
    """One warning a sheet, at the first cell, with how many there are and what was probably meant."""
    if not _BROKEN.search("\n".join(cell.text for cell in grid.cells.values())):
        return
    found = [(at, match) for at, cell in sorted(grid.cells.items()) for match in _BROKEN.finditer(cell.text)]
    at, first = found[0]
    word = _word_around(grid.cells[at].text, first.start())
    whole = whole_letters(word)
    mended = whole if whole != word else ""
    places = f"in {len(found)} places, first in" if len(found) > 1 else "in"
    problems.warning(
        grid.place(*at),
        "N312",
        f"letters were broken before the file was saved, {places} '{word}'; they are kept as they are; expected whole "
        "letters",
        help=f"it was probably '{mended}'; mend it at the source" if mended else "mend it at the source",
    )


def _word_around(text: str, at: int) -> str:
    start = max((text.rfind(sign, 0, at) for sign in ' ,;\t"'), default=-1) + 1
    ends = [end for sign in ' ,;\t"' if (end := text.find(sign, at)) >= 0]
    return text[start : min(ends, default=len(text))][:40]


def put_at_cells(grid: Grid, problems: ProblemList, before: int) -> None:
    """Turns lines of a text file into cells in problems of words, told since `before`: 'byte 0xFC is … in 'Möhre''."""
    for n in range(before, len(problems.found)):
        problem = problems.found[n]
        word = re.search(r" in '(.+?)'(?: \(.*\))?; expected UTF-8", problem.message)
        if problem.code != "N312" or word is None or problem.place.cell:
            continue
        rows = [r for r, line in enumerate(grid.lines) if line <= problem.place.line]
        at = next((at for at, cell in sorted(grid.cells.items()) if at[0] in rows[-1:] and word[1] in cell.text), None)
        if at is not None:
            problems.found[n] = replace(problem, place=grid.place(*at))
