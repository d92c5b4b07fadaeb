"""A work as one line of the references, the titles of books and journals in italics."""

from __future__ import annotations

import re
from collections.abc import Collection

from narrate.documents.inline import literal
from narrate.documents.latin import with_latin
from narrate.model.packs import Source

_EDITORS = re.compile(r"(?P<editors>.+?\(eds?\.?\)), (?P<book>.+)")
_SERIES = re.compile(r"(?P<book>.+), (?P<series>[^,]*\b(?:Bulletin|Series|Papers|Monographs?|Reports?)\b[^,]*)")
_NUMBERED = re.compile(r"(?P<name>[^:]+?) (?P<number>\d+(?:\(\d+\))?)")
_PLACE = re.compile(r"[^,:]+: [^:]+")
_ALONE = re.compile(
    r"thesis|dissertation|\breports?\b|handbook|monographs?|bulletin \d|papers \d|extension|studies|\bguide\b|"
    r"university",
    re.IGNORECASE,
)
_EDITION = re.compile(r"(?P<title>.+), (?P<edition>\d+(?:st|nd|rd|th) ed\w*\.?)")
_UNCHECKED = re.compile(r"\[[a-z, ]+ not checked; (?P<what>.+)\]")


def work_line(source: Source, genera: Collection[str]) -> str:
    """
    Author, year, title, where it came out, pages.

    >>> from narrate.problems import Place
    >>> def line(**data):
    ...     return work_line(Source(key="k", authors="Roe, A.", year="2001", place=Place(path="x"), **data), {"Zea"})
    >>> line(title="Cobs of Zea mays", container="Maize Papers Quarterly 7(2)", pages="1–9")
    'Roe, A. 2001. Cobs of *Zea mays*. __Maize Papers Quarterly__ 7(2), 1–9.'
    >>> line(title="Shells", container="Doe, B. (ed.), Nuts, Museum Papers 3", pages="10–12")
    'Roe, A. 2001. Shells. In Doe, B. (ed.), __Nuts__, Museum Papers 3, 10–12.'
    >>> line(title="All of Zea mays, 3rd ed.", container="Westbank: North Press")
    'Roe, A. 2001. __All of__ Zea mays, 3rd ed. Westbank: North Press.'
    """
    title, container, pages = source.title, source.container.strip().rstrip("."), source.pages
    unchecked = _UNCHECKED.fullmatch(title)
    if unchecked is not None:
        title = f"[{unchecked['what'][:1].upper()}{unchecked['what'][1:]}]"
    edited, numbered = _EDITORS.fullmatch(container), _NUMBERED.fullmatch(container)
    if edited is not None:
        series = _SERIES.fullmatch(edited["book"])
        book, after = (series["book"], f", {literal(series['series'])}") if series else (edited["book"], "")
        parts = [with_latin(title, genera), f"In {literal(edited['editors'])}, {_titled(book, genera)}{after}"]
    elif not container or _PLACE.fullmatch(container) or (not pages and _ALONE.search(container)):
        parts = [_titled(title, genera), literal(container)]
    elif numbered is not None:
        parts = [with_latin(title, genera), f"{_titled(numbered['name'], genera)} {numbered['number']}"]
    else:
        book, comma, after = container.partition(", ")
        within = "In " if book.startswith(("A ", "An ", "The ")) else ""
        parts = [with_latin(title, genera), f"{within}{_titled(book, genera)}{literal(comma + after)}"]
    who = literal(f"{source.authors} {source.year}".strip())
    text = ". ".join(part.rstrip(".") for part in (who, *parts) if part)
    text = re.sub(r"([?.])(__)?\.", r"\1\2", text) + (f", {literal(pages)}" if pages else "")
    return text if text.endswith(("?", "?__")) else f"{text}."


def is_entry_read(source: Source) -> bool:
    """Whether the entry itself, and not only what the work says, was held against print."""
    return source.entry == "read" or (source.known == "read" and " not checked" not in source.title)


def _titled(title: str, genera: Collection[str]) -> str:
    """The title of a book or journal in italics; Latin names in it stand upright, the number of the edition too."""
    edition = _EDITION.fullmatch(title)
    title, after = (edition["title"], f", {edition['edition']}") if edition else (title, "")
    pieces = re.split(r"\*([^*]+)\*", with_latin(title, genera))
    shown = []
    for number, piece in enumerate(pieces):
        bare = piece.strip()
        if number % 2 or not bare:
            shown.append(piece)
        else:
            before, behind = piece[: len(piece) - len(piece.lstrip())], piece[len(piece.rstrip()) :]
            shown.append(f"{before}__{bare}__{behind}")
    return "".join(shown) + after
