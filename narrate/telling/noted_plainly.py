"""A note of the field or the laboratory in plain words: of which finds, of how many of them, and who saw it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from narrate.model.findings import Tally
from narrate.telling.page import Page

if TYPE_CHECKING:
    from narrate.telling.observations import Noted


def said_plainly(page: Page, note: Noted) -> str:
    """'Most of the seed coats were thin', 'they also saw a fallen roof': the words of the pack for visitors."""
    return they_also(page, _of_which(page, note))


def seen_of(plain: str) -> str:
    """
    What was seen, without who saw it.

    >>> seen_of("the diggers saw ears of corn lying here"), seen_of("a plough had once turned this soil")
    ('ears of corn lying here', 'a plough had once turned this soil')
    """
    return _DIGGERS.sub("", plain)


def _of_which(page: Page, note: Noted) -> str:
    """'The laboratory took the pieces of grass stem for thatch': the finds that a note is of, by their name."""
    of = [tally for tally in page.found.tallies if tally.ref == note.ref]
    named = f"the {page.names.remains(of[0], with_number=False, latin=False)}" if of else SOME
    plain, many = note.observation.plain.replace(SOME, named), _MANY.match(note.observation.plain.replace(SOME, named))
    part = _how_many(page, note, of) if many and note.observation.noted_of == "find" else ""
    return f"{part} {'of the ' if many[1] else ''}{plain[len(many[1] or ''):]}" if many and part else plain


def _how_many(page: Page, note: Noted, of: Sequence[Tally]) -> str:
    """
    'many' of the seed coats, where the laboratory noted it of most or some of them; empty where of all.

    A note holds for the items of its own row: 'free of husk' on the 42 grains of one sample says nothing of others.
    """
    rows = sum(n.items for n in page.noted if (n.observation.id, n.ref) == (note.observation.id, note.ref))
    counted = of[0].counted if of else rows
    if _NOT_ALL.search(note.quote) is not None:
        is_many = re.search(r"\b(?:most|mostly|many)\b", note.quote, re.IGNORECASE) and rows * 2 > counted
        return "many" if is_many else "some"
    return "" if rows >= counted else "most" if rows * 2 > counted else "some"


_NOT_ALL = re.compile(r"\b(?:most|mostly|many|some|several|half|a few)\b", re.IGNORECASE)
_MANY = re.compile(
    r"(?!some |many )(the )?(?:[\w-]+ ){0,3}?(?:seed coats|seeds|grains|kernels|shells) (?:were|had|still)\b"
)


SOME = "some of these finds"


def they_also(page: Page, text: str) -> str:
    """'They also saw …' behind a sentence that tells what the diggers saw."""
    seen = _DIGGERS.match(text)
    if seen is None or not page.last.startswith("The diggers "):
        return text
    return f"they {'also saw' if seen[1] == 'saw' else 'could also see'} {text[seen.end() :]}"


_DIGGERS = re.compile(r"^the diggers (saw|could see) ")
