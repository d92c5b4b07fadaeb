"""Plants in a language of its own: names, glosses, doubts, and the cautions that they ask for."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.languages import Noun
from narrate.model.narrative import Section, Sentence
from narrate.telling import english, old_finds
from narrate.telling.cautions import is_cautioned
from narrate.telling.page import Page
from narrate.telling.translated_words import grammar_of, remains_noun, say, worded

SHOWN = 4
"""Plants that are listed, as in English."""


def finds_told(page: Page, tallies: Sequence[Tally], *, at_most: int) -> str:
    """'unas 40 semillas de quenopodio, diez granos de alpiste silvestre y …'."""
    named = [t for t in tallies if is_named(page, t)][:at_most] or list(tallies[:1])
    texts: list[str] = []
    for tally in named:
        gloss = _gloss(page, tally)
        told = not gloss or page.has_told(gloss) or gloss in " ".join(texts)
        within = ", ".join(text for text in ("" if told else gloss, _doubtful(page, tally)) if text)
        texts.append(f"{_find(page, tally)}{f' ({within})' if within else ''}")
    return grammar_of(page).listed(texts)


def _doubtful(page: Page, tally: Tally) -> str:
    """'y tres restos más con duda': finds whose name is in doubt, where they are enough to be told of."""
    more = tally.counted - page.names.surely(tally)
    words = grammar_of(page).language.numbers
    count = words[more] if more < len(words) else grammar_of(page).figure(more)
    said = worded(page, "doubtful one" if more == 1 else "doubtful", count=count) if more else []
    return said[0] if said else ""


def _gloss(page: Page, tally: Tally) -> str:
    """
    What the audience's glossary says of a find, by the name of its part or of its plant; of a plant without a name in the
    language, how the language describes it; empty where nothing.
    """
    described = grammar_of(page).language.described.get(tally.taxon) if tally.taxon is not None else None
    if described:
        return described
    plant = grammar_of(page).language.plants.get(tally.taxon) if tally.taxon is not None else None
    nouns = [noun for noun in (_own_noun(page, tally), plant) if noun is not None]
    return next((page.audience.glossary[noun.one] for noun in nouns if noun.one in page.audience.glossary), "")


def _find(page: Page, tally: Tally) -> str:
    grammar = grammar_of(page)
    own = _own_noun(page, tally)
    if own is not None:
        return grammar.quantity(page.names.surely(tally), own)
    part = grammar.language.parts.get(tally.part, remains_noun(page))
    plant = grammar.language.plants.get(tally.taxon) if tally.taxon is not None else None
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    name = plant.one if plant is not None else english.italic(taxon.id) if taxon is not None else ""
    of = f" {grammar.table('of')} {name}" if name and is_named(page, tally) else ""
    return f"{grammar.quantity(page.names.surely(tally), part)}{of}"


def _own_noun(page: Page, tally: Tally) -> Noun | None:
    """The noun of a part of one plant, such as 'pepita de uva': key 'taxon part' of the pack."""
    return grammar_of(page).language.parts.get(f"{tally.taxon} {tally.part}")  # type: ignore[call-overload]


def own_part(page: Page, part: str) -> bool:
    return any(key.endswith(f" {part}") for key in grammar_of(page).language.parts)


def is_named(page: Page, tally: Tally) -> bool:
    return tally.taxon is not None and not old_finds.is_unknown(page, tally)


def living_told(page: Page) -> list[Sentence]:
    """A crop or nut of the dig that lives on, in the present tense."""
    grammar = grammar_of(page)
    for tally in old_finds.plant_tallies(page):
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        plant = grammar.language.plants.get(taxon.id) if taxon is not None else None
        tags = sorted(taxon.tags, reverse=True) if taxon is not None else []
        tag = next((tag for tag in tags if f"living {tag}" in grammar.language.sentences), "")
        if plant is not None and tag:
            refs = [tally.ref or page.ref("items")]
            return say(page, refs, f"living {tag}", plant=plant.one, the_plant=grammar.the(plant))
    return []


def with_caution(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    refs = [t.ref for t in old_finds.plant_tallies(page) if t.ref and is_cautioned(page, t)][:3]
    said = [*_standing(page), *(say(page, refs, "caution") if refs else [])]
    if not said or not sections:
        return sections
    *before, last = sections
    paragraphs = (*last.paragraphs[:-1], (*last.paragraphs[-1], *said))
    return (*before, Section(id=last.id, heading=last.heading, paragraphs=paragraphs))


def _standing(page: Page) -> list[Sentence]:
    """What a plant that the page names means to people today, where the language has words for it."""
    grammar = grammar_of(page)
    for tally in old_finds.plant_tallies(page):
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        plant = grammar.language.plants.get(taxon.id) if taxon is not None else None
        for tag in sorted(taxon.tags) if taxon is not None else ():
            name = f"standing {tag}"
            if plant is not None and tally.ref and name in grammar.language.sentences and page.has_told(plant.one):
                return say(page, [tally.ref], name, plant=plant.one, the_plant=grammar.the(plant))
    return []
