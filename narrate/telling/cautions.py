"""What a text for visitors owes its readers about plants: a caution on eating them, and that they live on."""

from __future__ import annotations

import re

from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling import composition, english
from narrate.telling.page import Page

TAGS = frozenset(("nut", "fruit", "greens", "root-tuber", "small-seed", "medicine", "toxic", "tobacco"))
USES = frozenset(("food", "medicine", "drink", "flavour"))


def is_cautioned(page: Page, tally: Tally) -> bool:
    """Whether a find is of a plant that somebody might take a text to call safe: edible, medicinal or poisonous."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    if taxon is None or taxon.rank in ("family", "broad"):
        return False
    return bool(taxon.cautions or TAGS & taxon.tags or USES & {use.use for use in taxon.uses})


def caution_sentences(page: Page, wording: str) -> list[Sentence]:
    """That no text makes a plant safe to eat, where the page names one that is eaten, heals or harms."""
    named = [t for t in composition.plant_tallies(page) if is_cautioned(page, t) and is_named(page, t)]
    wild = [t for t in named if _is_wild(page, t) or _harmlessness(page, t) < HARM.index("greens")]
    named = sorted(wild or named, key=lambda t: _harmlessness(page, t))
    if wording not in page.audience.words or not any(t.ref for t in named):
        return []
    plants: dict[str, str] = {}
    for tally in named:
        if tally.ref:
            plants.setdefault(page.names.food(tally.taxon, tally.written), tally.ref)
    shown = list(plants)[:2]
    # Two are named; the caution is of all.
    every = [*shown, "any other wild plant" if wild else "any wild plant"]
    return page.say([plants[name] for name in shown], *page.turns(wording, plants=page.listed(every, word="or")))


def living_sentences(page: Page) -> list[Sentence]:
    """A plant of those named that lives on, in the present tense, where the audience has words for the region."""
    for tally in composition.plant_tallies(page):
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        if taxon is None or taxon.rank not in ("species", "genus") or not tally.counted or tally.only_cf:
            continue
        if "toxic" in taxon.tags or any("poison" in text for text in taxon.cautions):
            # That people pick it today is no thing to tell of a plant that can poison.
            continue
        for region in page.dig.packs.regions:
            for tag in sorted(taxon.tags, reverse=True):
                name = f"living {region} {tag}"
                if name in page.audience.words and is_named(page, tally):
                    plant = page.names.food(tally.taxon)
                    return page.say([tally.ref or page.ref("items")], *page.turns(name, plant=plant))
    return []


HARM = ("toxic", "medicine", "tobacco", "greens", "root-tuber", "fruit", "nut")
"""What is warned of first: poisons, then what is most easily mistaken for something else."""


def _harmlessness(page: Page, tally: Tally) -> int:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    tags = taxon.tags if taxon is not None else frozenset()
    return next((place for place, tag in enumerate(HARM) if tag in tags), len(HARM))


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


_OF_TREES = re.compile(r"\bcharcoal\b.* came from ")
"""Trees that were firewood: a hickory that burned is not a nut that somebody might eat."""
