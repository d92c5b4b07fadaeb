"""Items that a reason counts and that the laboratory took for part of a building or pit, told beside their number."""

from __future__ import annotations

import re

from narrate.model.claims import Argument
from narrate.telling import english
from narrate.telling.behind import remains_counted
from narrate.telling.page import Page

STRUCTURE = ("lining", "thatch")
"""Ids of the observations that a find was put there as a part of what was built."""

_IN_BRACKETS = re.compile(r"\((\d[^()]* items\b[^()]*)\)")


def structure_among(page: Page, argument: Argument, text: str) -> str:
    """'(95% of 566 items of food, its waste, and seeds, three of them noted as “lining”)'."""
    notes = [note for note in page.noted if note.observation.id in STRUCTURE and note.items]
    if page.is_plain or not notes or not _IN_BRACKETS.search(text):
        return text
    counted = {t.ref for t in remains_counted(argument, page.dig.packs, page.found.tallies)}
    among = [note for note in notes if note.ref in counted]
    if not among:
        return text
    number = page.count(sum(note.items for note in among))
    quoted = page.listed([f"“{english.literal(quote)}”" for quote in dict.fromkeys(note.quote for note in among)])
    return _IN_BRACKETS.sub(rf"(\1, {number} of them noted as {quoted})", text, count=1)
