"""What a text for visitors owes its readers about plants: a caution on eating them, and that they live on."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import product

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.narrative import Section, Sentence
from narrate.telling import english, old_finds, setting
from narrate.telling.first_use import GOES_ON
from narrate.telling.page import Page
from narrate.telling.places_named import places_named

TAGS = frozenset(("nut", "fruit", "greens", "root-tuber", "small-seed", "medicine", "toxic", "tobacco"))
USES = frozenset(("food", "medicine", "drink", "flavour"))


def is_cautioned(page: Page, tally: Tally) -> bool:
    """Whether a find is of a plant that somebody might take a text to call safe: edible, medicinal or poisonous."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    if taxon is None or taxon.rank in ("family", "broad"):
        return False
    return bool(taxon.cautions or TAGS & taxon.tags or USES & {use.use for use in taxon.uses})


def caution_sentences(page: Page, wording: str) -> list[Sentence]:
    """
    That no text makes a plant safe to eat, where the page names one that is eaten, heals or harms.

    Those that can harm are named, worst first; nuts and fruit that people gather to this day are not.
    """
    named = [t for t in old_finds.plant_tallies(page) if is_cautioned(page, t) and is_named(page, t)]
    named = [t for t in named if t.ref]
    if wording not in page.audience.words or not named:
        return []
    harmful = sorted((t for t in named if can_harm(page, t)), key=lambda t: _harmlessness(page, t))
    plants: dict[str, Tally] = {}
    for tally in harmful:
        plants.setdefault(page.names.food(tally.taxon, tally.written), tally)
    shown = list(plants)[:SHOWN]
    # Some are named; the caution is of all. A crop that harms is no 'other wild plant'.
    are_wild = bool(shown) and all(_is_wild(page, plants[name]) for name in shown)
    every = [*shown, "any other wild plant" if are_wild else "any wild plant"]
    refs = [plants[name].ref or "" for name in shown] or [named[0].ref or ""]
    return page.say(refs, *page.turns(wording, plants=page.listed(every, word="or"), place=_place(page)))


def _place(page: Page) -> str:
    """'the Late hamlet', 'hearth C12', 'this dig': what a page is about."""
    if page.subject.level == "context":
        return places_named(page, [page.subject.id])
    phase = next((p for p in page.dig.project.phases if page.subject == Subject(level="phase", id=p.id)), None)
    return setting.phase_name(phase) if phase is not None else "this dig"


def poison_sentences(page: Page, wording: str) -> list[Sentence]:
    """That plants can poison: those that a page names and, on the page of one place, all that were found there."""
    found = poisonous_finds(page)
    if wording not in page.audience.words:
        return []
    is_place = page.subject.level == "context" and page.audience.words_at_most is None
    told = [t for t in found if is_place or is_named(page, t)]
    plants: dict[str, str] = {}
    for tally in told:
        plants.setdefault(page.names.food(tally.taxon, tally.written), tally.ref or "")
    shown = list(plants)[:POISONS]
    return page.say([plants[name] for name in shown], *page.turns(wording, plants=page.listed(shown))) if shown else []


def poisonous_finds(page: Page) -> list[Tally]:
    """Old finds of plants that can poison, worst first."""
    found = [t for t in old_finds.plant_tallies(page) if t.ref and t.counted and not t.only_cf]
    found = [t for t in found if is_poisonous(page, t)]
    return sorted(found, key=lambda t: _harmlessness(page, t))


def standing_sentences(page: Page) -> list[Sentence]:
    """What a plant that the page names means to Native people today, where the audience has words for the region."""
    return standing_of(page)[1]


def standing_of(page: Page) -> tuple[str, list[Sentence]]:
    """The plant that people hold sacred by its name, and what is said of it."""
    for tally in old_finds.plant_tallies(page):
        for name in standings(page, tally):
            if tally.ref and is_named(page, tally):
                plant = page.names.food(tally.taxon)
                return plant, page.say([tally.ref], *page.turns(name, plant=plant))
    return "", []


def standings(page: Page, tally: Tally) -> list[str]:
    """The audience's words for what the plant of a find means to people, by region and tag."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    names = product(page.dig.packs.regions, sorted(taxon.tags) if taxon is not None else ())
    return [name for region, tag in names if (name := f"standing {region} {tag}") in page.audience.words]


def living_sentences(page: Page) -> list[Sentence]:
    """A plant of those named that lives on, in the present tense; of one place its chief plant and no other."""
    return living_of(page)[1]


def living_of(page: Page) -> tuple[str, list[Sentence]]:
    """The plant that lives on by its name, and what is said of it."""
    tallies = old_finds.plant_tallies(page)
    if page.subject.level == "context":
        chief = old_finds.by_plant(page, tallies)[:1]
        tallies = [t for group in chief for t in group]
    for tally in tallies:
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        if taxon is None or taxon.rank not in ("species", "genus") or not tally.counted or tally.only_cf:
            continue
        if is_poisonous(page, tally):
            # That people pick it today is no thing to tell of a plant that can poison.
            continue
        for region in page.dig.packs.regions:
            for tag in sorted(taxon.tags, reverse=True):
                name = f"living {region} {tag}"
                if name in page.audience.words and is_named(page, tally):
                    plant = page.names.food(tally.taxon)
                    return plant, page.say([tally.ref or page.ref("items")], *page.turns(name, plant=plant))
    return "", []


def with_living(sections: tuple[Section, ...], living: Sequence[Sentence], plant: str) -> tuple[Section, ...]:
    """That a plant lives on, behind what is told of it as food; behind all else where it is not told as food."""
    named = re.compile(rf"\b{re.escape(plant)}s?\b", re.IGNORECASE)
    for i, j, k in _places(sections):
        paragraph = sections[i].paragraphs[j]
        is_food = sections[i].id in ("food", "all") and "as food" in paragraph[k].text
        if living and is_food and named.search(paragraph[k].text):
            # A reason that stands behind its reading stays there.
            while k + 1 < len(paragraph) and set(paragraph[k].refs) & set(paragraph[k + 1].refs):
                k += 1
            told = (*paragraph[: k + 1], *living, *paragraph[k + 1 :])
            paragraphs = (*sections[i].paragraphs[:j], told, *sections[i].paragraphs[j + 1 :])
            return (*sections[:i], replace(sections[i], paragraphs=paragraphs), *sections[i + 1 :])
    for i, j, k in _places(sections):
        # Else it stands behind the finds that name the plant, and behind nothing that is read of it.
        paragraph = sections[i].paragraphs[j]
        if living and named.search(paragraph[k].text) and _is_of_finds(paragraph[k]):
            while k + 1 < len(paragraph) and GOES_ON.match(paragraph[k + 1].text):
                k += 1
            told = (*paragraph[: k + 1], *living, *paragraph[k + 1 :])
            paragraphs = (*sections[i].paragraphs[:j], told, *sections[i].paragraphs[j + 1 :])
            return (*sections[:i], replace(sections[i], paragraphs=paragraphs), *sections[i + 1 :])
    *before, last = sections[-1].paragraphs or ((),)
    changed = replace(sections[-1], paragraphs=(*before, (*last, *living)))
    return (*sections[:-1], changed if living else sections[-1])


def _is_of_finds(sentence: Sentence) -> bool:
    """Whether it tells what was found and reads nothing from it."""
    return all(re.search(r"/(?:found|measure)\.", ref) for ref in sentence.refs)


def _places(sections: tuple[Section, ...]) -> Iterator[tuple[int, int, int]]:
    """Section, paragraph and sentence of every sentence of a text."""
    for i, section in enumerate(sections):
        for j, paragraph in enumerate(section.paragraphs):
            yield from ((i, j, k) for k in range(len(paragraph)))


SHOWN, POISONS = 2, 5
"""Plants that a caution names, and those that it calls poisonous."""

HARM = ("toxic", "medicine", "tobacco", "greens", "root-tuber", "fruit", "nut")
"""What is warned of first: poisons, then what is most easily mistaken for something else."""


def is_poisonous(page: Page, tally: Tally) -> bool:
    """Whether the plant itself, or a part of a wild one, can poison; a crop poisonous only raw does not count."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    if taxon is None or taxon.rank in ("family", "broad"):
        return False
    own = (text for text in taxon.cautions if "poison" in text.lower() and not _OF_OTHERS.search(text))
    return "toxic" in taxon.tags or (taxon.status != "crop" and any(own))


_OF_OTHERS = re.compile(r"look-alikes|that look like|looks (?:much )?like|relatives|kinds|cattle|confused")
"""Cautions that speak of the poison of another plant, or of beasts."""


def can_harm(page: Page, tally: Tally) -> bool:
    """Whether a plant can poison, or is a wild one that heals or is easily mistaken for one that poisons."""
    return is_poisonous(page, tally) or (_is_wild(page, tally) and _harmlessness(page, tally) < HARM.index("fruit"))


def _harmlessness(page: Page, tally: Tally) -> float:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    tags = taxon.tags if taxon is not None else frozenset()
    place = next((place for place, tag in enumerate(HARM) if tag in tags), len(HARM))
    # What poisons in part comes behind what is poison through and through, before all else.
    return 0.5 if place and is_poisonous(page, tally) else place


def _is_wild(page: Page, tally: Tally) -> bool:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return taxon is not None and taxon.status != "crop"


def is_named(page: Page, tally: Tally) -> bool:
    """Whether a sentence of the page names the plant of a find, in the singular or the plural."""
    names = {page.names.plant(tally.taxon, tally.written, plural=plural) for plural in (False, True)}
    names |= {page.names.food(tally.taxon, tally.written)} | ({"acorn"} if "oak" in names else set())
    words = "|".join(re.escape(english.lowered(name)) for name in sorted(names) if name)
    said = [text for text in page.said if not _OF_TREES.search(text)]
    return any(re.search(rf"\b(?:{words})s?\b", text, re.IGNORECASE) for text in said) if words else False


_OF_TREES = re.compile(r"\bcharcoal\b.* came (?:mostly )?from ")
"""Trees that were firewood: a hickory that burned is not a nut that somebody might eat."""
