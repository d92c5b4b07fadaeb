"""What a page in a language of its own owes: finds that it must name, warnings, and what a plant means to people."""

from __future__ import annotations

import re

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.languages import Noun
from narrate.model.narrative import Section, Sentence
from narrate.model.plants import Taxon
from narrate.telling import english, old_finds
from narrate.telling.cautions import POISONS, is_cautioned, poisonous_finds, standings
from narrate.telling.first_use import terms_explained
from narrate.telling.owed import at_the_foot, finds_owed, with_standing
from narrate.telling.page import Page
from narrate.telling.translated_finds import finds_told, is_named
from narrate.telling.translated_words import grammar_of, places_told, say, worded, years_of


def smaller_finds(page: Page) -> list[Sentence]:
    """A sacred plant, poisonous ones and crops that lay here, where the page has not named them."""
    sacred, others = finds_owed(page, is_told)
    found = [t for t in (*sacred, *others) if is_named(page, t)]
    if not found:
        return []
    return say(page, [t.ref for t in found], "smaller finds", list=finds_told(page, found, at_most=len(found)))


def is_told(page: Page, tally: Tally) -> bool:
    """Whether a sentence of the page names the plant of a find, in the language's words or by its Latin name."""
    language = grammar_of(page).language
    plant = language.plants.get(tally.taxon) if tally.taxon is not None else None
    own = language.parts.get(f"{tally.taxon} {tally.part}")  # type: ignore[call-overload]
    names = [form for noun in (plant, own) if noun is not None for form in (noun.one, noun.many) if form]
    names += [str(tally.taxon)] if tally.taxon is not None and plant is None else []
    pattern = "|".join(re.escape(name) for name in names)
    return bool(names) and any(re.search(rf"\b(?:{pattern})\b", text, re.IGNORECASE) for text in page.said)


def closed(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """A text with its terms explained, with what a plant means to people, and with its warnings at the foot."""
    if not sections:
        return sections
    sections = terms_explained(page, sections)
    plant, standing = _standing(page)
    owed = [*_poisons(page), *_look_alikes(page), *_caution(page)]
    return at_the_foot(page, with_standing(sections, standing, plant), owed)


def _caution(page: Page) -> list[Sentence]:
    refs = [t.ref for t in old_finds.plant_tallies(page) if t.ref and is_cautioned(page, t)][:3]
    return say(page, refs, "caution", place=_place(page)) if refs else []


def _place(page: Page) -> str:
    """'el fogón C12', 'la época de hacia 950–1050 d. C.', 'esta excavación': what the page is about."""
    if page.subject.level == "context":
        return places_told(page, [page.subject.id])
    phase = next((p for p in page.dig.project.phases if page.subject == Subject(level="phase", id=p.id)), None)
    if phase is None:
        return (worded(page, "this dig") or [""])[0]
    return (worded(page, "phase title", years=years_of(page, phase)) or [""])[0]


def _poisons(page: Page) -> list[Sentence]:
    """That plants can poison: those that the page names and, on the page of one place, all that were found there."""
    found: dict[str, Tally] = {}
    for tally in poisonous_finds(page):
        if page.subject.level == "context" or is_told(page, tally):
            found.setdefault(str(tally.taxon), tally)
    shown = list(found.values())[:POISONS]
    if not shown:
        return []
    # Two kinds of tobacco may go by one name.
    names = list(dict.fromkeys(_named(page, page.dig.packs.taxa[t.taxon]) for t in shown))  # type: ignore[index]
    plants = grammar_of(page).listed(names)
    return say(page, [t.ref for t in shown], "poison one" if len(names) == 1 else "poison", plants=plants)


def _look_alikes(page: Page) -> list[Sentence]:
    """That a plant which the page names is easily taken for a poisonous one, where the language knows both."""
    language = grammar_of(page).language
    for tally in old_finds.plant_tallies(page):
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        plant = language.plants.get(taxon.id) if taxon is not None else None
        if taxon is None or plant is None or not tally.ref or not is_told(page, tally):
            continue
        known = [page.dig.packs.taxa[id] for id in taxon.look_alikes if id in page.dig.packs.taxa]  # type: ignore[index]
        others = [t for t in known if "toxic" in t.tags and (t.id in language.plants or t.id in language.described)]
        if others:
            name = grammar_of(page).the(plant)
            return say(page, [tally.ref], "look-alike", the_plant=name, other=_named(page, others[0]))
    return []


def _named(page: Page, taxon: Taxon) -> str:
    """A plant with its article, or in Latin with what it is, where nothing has said that."""
    language = grammar_of(page).language
    noun: Noun | None = language.plants.get(taxon.id)
    if noun is not None:
        return grammar_of(page).the(noun)
    said = language.described.get(taxon.id, "")
    return english.italic(taxon.id) + (f" ({said})" if said and not page.has_told(said) else "")


def living_told(page: Page) -> list[Sentence]:
    """A crop or nut of the dig that lives on, in the present tense, by region and tag."""
    grammar = grammar_of(page)
    for tally in old_finds.plant_tallies(page):
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        plant = grammar.language.plants.get(taxon.id) if taxon is not None else None
        tags = sorted(taxon.tags, reverse=True) if taxon is not None else []
        names = [f"living {region} {tag}" for region in page.dig.packs.regions for tag in tags]
        name = next((name for name in names if name in page.audience.words), "")
        if plant is not None and name:
            turns = page.turns(name, plant=grammar.the(plant))
            return page.say([tally.ref or page.ref("items")], *map(grammar.finished, turns))
    return []


def _standing(page: Page) -> tuple[str, list[Sentence]]:
    """What a plant that the page names means to people today, where the audience has words for it, and its name."""
    grammar = grammar_of(page)
    for tally in old_finds.plant_tallies(page):
        plant = grammar.language.plants.get(tally.taxon) if tally.taxon is not None else None
        if plant is not None and tally.ref and page.has_told(plant.one):
            for name in standings(page, tally):
                turns = page.turns(name, plant=grammar.the(plant))
                return plant.one, page.say([tally.ref], *map(grammar.finished, turns))
    return "", []
