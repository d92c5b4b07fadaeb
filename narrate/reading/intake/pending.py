"""Cells that say that the work is not done: 'pend.', 'not sorted', 'en cours', 'noch nicht ausgelesen'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from narrate.model.grids import Cell

# Common practice, no source: how laboratories write that a sample or a class still waits.
_WORDS = re.compile(
    r"pend(?:ing|iente|ente|ant)?(?: (?:de |for )?(?:an[aá]lisis|analysis|sorting|id(?:entification)?|revisi[oó]n))?|awaiting(?: \w+)?|in progress|in process|to (?:do|be (?:done|sorted|counted|identified|analysed))|tbd|tbc|not yet(?: \w+)?|incomplete|unfinished|unsorted|unanalysed"
    r"|(?:not|un)[ -]?(?:sorted|scanned|examined|analy[sz]ed|looked (?:at|for)|processed|identified yet|done|studied)(?: yet)?"
    r"|ausstehend|offen|in (?:arbeit|bearbeitung)|(?:noch )?(?:nicht|un)[ -]?(?:ausgelesen|sortiert|untersucht|bearbeitet|analysiert|durchgesehen)|noch nicht|folgt"
    r"|en (?:cours|attente)(?: de \w+)?|à (?:faire|trier|étudier|déterminer)|non (?:trié|étudié|analysé|traité|observé)e?s?|pas (?:encore )?(?:trié|étudié|analysé)e?s?"
    r"|en (?:curso|proceso)|por (?:hacer|analizar|revisar|separar)|sin (?:analizar|revisar|separar|procesar)|no (?:analizad|revisad|separad|procesad|estudiad)[oa]s?|falta"
    r"|in (?:corso|attesa)|da (?:fare|vagliare|analizzare)|non (?:analizzat|vagliat|selezionat|studiat|esaminat)[oaie]"
    r"|(?:nog )?niet (?:uitgezocht|gesorteerd|onderzocht|geanalyseerd|bekeken)|nog niet|in behandeling|volgt|loopt"
    r"|w toku|w trakcie|nie (?:przebran|przebadan|analizowan|oznaczan)[oaey]|do zrobienia|oczekuje|jeszcze nie",
    re.IGNORECASE,
)


def says_pending(text: str) -> bool:
    """
    Whether a cell says that nobody has looked yet.

    >>> [says_pending(t) for t in ("pend.", "not sorted", "en cours", "noch nicht ausgelesen", "absent", "Pendula")]
    [True, True, True, True, False, False]
    """
    return bool(_WORDS.fullmatch(text.strip().strip("()[].… ").strip()))


def blanks_of_pending(
    cells: Mapping[tuple[int, int], Cell], rows: Iterable[int], columns: Iterable[int], ids: Mapping[tuple[str, int], str]
) -> dict[tuple[int, int], Cell]:
    """
    Blank cells of samples in which nothing stands but that they wait: nothing in them is absent either.

    ids:  'r' or 'c', and the row or column -> the sample that it is of. Of a sample in several lines the first is taken.
    """
    across = any(mark == "c" for mark, _ in ids)
    others = list(rows if across else columns)
    lines: dict[str, list[int]] = {}
    for (mark, at), id in ids.items():
        if mark == ("c" if across else "r"):
            lines.setdefault(id, []).append(at)
    found: dict[tuple[int, int], Cell] = {}
    for of_sample in lines.values():
        places = [(n, at) if across else (at, n) for at in of_sample for n in others]
        said = [cells[place] for place in places if place in cells and cells[place].text.strip()]
        if said and all(says_pending(cell.text) for cell in said):
            first = [(n, of_sample[0]) if across else (of_sample[0], n) for n in others]
            found.update({place: said[0] for place in first if place not in cells})
    return found
