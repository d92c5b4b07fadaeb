"""Where a page for visitors says what it owes: finds that it must name, what a plant means to people, and the foot."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from narrate.model.findings import Tally
from narrate.model.narrative import Section, Sentence
from narrate.telling import english, old_finds
from narrate.telling.cautions import is_named, is_poisonous, standings
from narrate.telling.composition import LIST
from narrate.telling.page import Page

NAMED = 4
"""Poisonous plants and crops that one sentence names as finds."""


def with_finds_named(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """The sections with plants that a page of a place warns or speaks of told as finds, where nothing named them."""
    if page.subject.level != "context":
        return sections
    sacred, others = finds_owed(page, is_named)
    sections = _behind_finds(page, sections, _also_found(page, others))
    return _ended(sections, "food", _lay_here(page, sacred))


def finds_owed(page: Page, is_named: Callable[[Page, Tally], bool]) -> tuple[list[Tally], list[Tally]]:
    """A plant that people hold sacred, and poisonous plants and crops, that lay here and that no sentence names."""
    unnamed = [t for t in old_finds.plant_tallies(page) if t.counted and t.ref and not is_named(page, t)]
    sacred = [t for t in unnamed if standings(page, t)][:1]
    sure = [t for t in unnamed if not t.only_cf and t not in sacred]
    harmful = [t for t in sure if is_poisonous(page, t)][:NAMED]
    crops = sorted((t for t in sure if _is_crop(page, t)), key=lambda t: not _is_crop(page, t, "tropical-crop"))
    return sacred, [*harmful, *crops[: NAMED - len(harmful)]]


def _is_crop(page: Page, tally: Tally, tag: str = "") -> bool:
    """Whether a find is of a crop, and of one with a tag; small-seeded crops are told of together as food."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    if taxon is None or taxon.status != "crop" or {"native-crop", "small-seed"} & taxon.tags:
        return False
    return not tag or tag in taxon.tags


def _also_found(page: Page, finds: Sequence[Tally]) -> list[Sentence]:
    if not finds:
        return []
    was = english.agreed(sum(t.counted for t in finds), "was", "were")
    named = page.listed([page.names.remains(t, latin=False) for t in finds])
    return page.say([t.ref or "" for t in finds], f"among the smaller finds {was} {named}")


def _lay_here(page: Page, finds: Sequence[Tally]) -> list[Sentence]:
    if not finds:
        return []
    return page.say([finds[0].ref or ""], f"{page.names.remains(finds[0], latin=False)} lay here too")


def _behind_finds(page: Page, sections: tuple[Section, ...], said: Sequence[Sentence]) -> tuple[Section, ...]:
    """The sections with sentences behind the list of finds; at the end of what was found, where there is no list."""
    first = sections[0].paragraphs[0] if sections and sections[0].paragraphs else ()
    listed = [k for k, sentence in enumerate(first) if LIST.match(sentence.text)]
    if not said or not listed:
        return _ended(sections, "deposit", said)
    k = listed[-1] + 1
    paragraphs = ((*first[:k], *said, *first[k:]), *sections[0].paragraphs[1:])
    return (replace(sections[0], paragraphs=paragraphs), *sections[1:])


def _ended(sections: tuple[Section, ...], id: str, said: Sequence[Sentence]) -> tuple[Section, ...]:
    """The sections with sentences at the end of one of them; of the first paragraph of all where it is missing."""
    i = next((i for i, section in enumerate(sections) if section.id == id), 0)
    if not said or not sections[i].paragraphs:
        return sections
    *before, last = sections[i].paragraphs
    changed = replace(sections[i], paragraphs=(*before, (*last, *said)))
    return (*sections[:i], changed, *sections[i + 1 :])


def with_standing(sections: tuple[Section, ...], said: Sequence[Sentence], plant: str) -> tuple[Section, ...]:
    """What a plant means to people, behind the first sentences that name it, and not at the foot with the warnings."""
    named = re.compile(rf"\b{re.escape(plant)}\b", re.IGNORECASE)
    for i, section in enumerate(sections if said else ()):
        for j, paragraph in enumerate(section.paragraphs):
            k = next((k for k, sentence in enumerate(paragraph) if named.search(sentence.text)), None)
            if k is None:
                continue
            while k + 1 < len(paragraph) and named.search(paragraph[k + 1].text):
                k += 1
            told = (*paragraph[: k + 1], *said, *paragraph[k + 1 :])
            paragraphs = (*section.paragraphs[:j], told, *section.paragraphs[j + 1 :])
            return (*sections[:i], replace(section, paragraphs=paragraphs), *sections[i + 1 :])
    return sections


def at_the_foot(page: Page, sections: tuple[Section, ...], owed: Sequence[Sentence]) -> tuple[Section, ...]:
    """The cautions of a page under a heading of their own; where there are no headings, at the end of the text."""
    if not owed:
        return sections
    if any(section.heading for section in sections):
        heading = page.audience.headings.get("care", "")
        return (*sections, Section(id="care", heading=heading, paragraphs=(tuple(owed),)))
    *before, last = sections
    paragraphs = (*last.paragraphs[:-1], (*last.paragraphs[-1], *owed)) if last.paragraphs else (tuple(owed),)
    return (*before, replace(last, paragraphs=paragraphs))
