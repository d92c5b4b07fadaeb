"""
What a season is a season of: of gathering soft fruit, where one deposit speaks by it; of work done more than once,
where a phase or dig does.

That chenopod was harvested in autumn is known wherever it lies, so that no reading puts it in doubt. Crops are
harvested and wild plants gathered: the word goes by the plants that a season rests on.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.model.claims import Claim
from narrate.telling.behind import heaviest, remains_counted
from narrate.telling.page import Page
from narrate.telling.seasons_kept import is_led_by_fresh, is_of_fresh, is_of_fresh_alone

MOST, FEW = 0.9, 0.1
"""Share of the items that are of crops from which a season is one of harvest, and below which of gathering alone."""


_AS_FRUIT_ALONE = ("consistent with", "suggests")
"""Grades that the rules on soft fruit, of moderate weight, reach by themselves."""


def in_word_of_season(page: Page, text: str, claims: Iterable[Claim]) -> str:
    """A noun or clause of the packs, which speaks of gathering, with the word that its plants ask for."""
    if not _GATHERED.search(text):
        return text
    claims = [claim for claim in claims if claim.question == "season"]
    if not claims or page.is_plain:
        return _in_word_of_work(page, text, claims)
    if not any(claim.about.level in ("phase", "site") for claim in claims):
        if any(is_of_fresh(page, claim) for claim in claims):
            # What keeps only adds to what soft fruit suggests; more than that needs both, and is of both.
            is_of_fruit = all(is_led_by_fresh(page, claim) and claim.grade in _AS_FRUIT_ALONE for claim in claims)
            return re.sub(r"^gathering in\b", "the gathering of soft fruit in", text) if is_of_fruit else text
        return of_what_keeps(text)
    if all(is_of_fresh_alone(page, claim) for claim in claims):
        return re.sub(r"^gathering in\b", "the repeated gathering of soft fruit in", text)
    return re.sub(r"^(?=gathering|harvesting)", "repeated ", _in_word_of_work(page, text, claims))


def of_what_keeps(noun: str) -> str:
    """
    What plants that keep tell of one deposit: not when they were gathered, which is known, but whose harvest it holds.

    >>> of_what_keeps("gathering in autumn"), of_what_keeps("gathering in more than one season")
    ('use of a harvest of autumn', 'use of more than one harvest')
    """
    if noun == "gathering in more than one season":
        return "use of more than one harvest"
    return re.sub(r"^gathering in\b", "use of a harvest of", noun)


def _in_word_of_work(page: Page, text: str, claims: Iterable[Claim]) -> str:
    share = _of_crops(page, claims)
    if share is None or share < FEW:
        return text
    # Visitors read the plants by name, and the few wild ones among them were never harvested.
    return put(text, is_all=share >= (1 if page.is_plain else MOST))


def put(text: str, *, is_all: bool) -> str:
    """
    The text with harvest for gathering, or beside it.

    >>> put("gathering in autumn", is_all=True), put("people gathered plants that ripen in autumn", is_all=False)
    ('harvesting in autumn', 'people harvested and gathered plants that ripen in autumn')
    >>> put("plants gathered in autumn", is_all=False)
    'plants harvested or gathered in autumn'
    """
    if is_all:
        return re.sub(r"\bgathering\b", "harvesting", re.sub(r"\bgathered\b", "harvested", text))
    text = re.sub(r"\bgathering\b", "harvesting and gathering", text)
    text = _PLANTS.sub("plants harvested or gathered", text)
    return re.sub(r"\bpeople gathered\b", "people harvested and gathered", text)


_PLANTS = re.compile(r"\bplants gathered\b")
_GATHERED = re.compile(r"\bgather(?:ing|ed)\b")


def _of_crops(page: Page, claims: Iterable[Claim]) -> float | None:
    """Share of crops among the items that the chief arguments for some claims counted; None where there are none."""
    crops = items = 0
    for claim in claims:
        found = page.dig.findings.subjects.get(claim.about)
        chief = heaviest(claim) if found is not None else []
        counted = {t.ref: t for a in chief for t in remains_counted(a, page.dig.packs, found.tallies)}  # type: ignore[union-attr]
        for tally in counted.values():
            taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
            items += tally.counted
            crops += tally.counted if taxon is not None and taxon.status == "crop" else 0
    return crops / items if items else None
