"""Weeds weighed one by one: which may have come in with the crop, which were of use, which grew about the place."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.ids import ContextId, Subject
from narrate.model.narrative import Sentence
from narrate.model.plants import Taxon
from narrate.telling import english, numbers
from narrate.telling.cautions import is_poisonous
from narrate.telling.finds import total, within
from narrate.telling.page import Page

OF_WEEDS = ("field.weeds-with-crop", "field.disturbed-ground")
"""Readings that speak of weeds as a whole."""

ENOUGH = 40
"""Seeds of weeds below which they are not weighed one by one (judgement of the makers)."""

NAMED = 4
"""Weeds of one sort that are named."""

GATHERED = ("food", "greens")
"""Uses for which a weed is picked to be eaten."""


def weed_sentences(page: Page) -> list[Sentence]:
    """
    The weeds of a deposit by what is known of each, where some reading of the page speaks of weeds as a whole.

    How firmly a plant speaks of tilled ground, and whether it can be eaten, is what the packs say of it. A use that is
    known with little confidence does not count, and none is told of a plant that is poisonous.
    """
    refs = [f"{page.dig.ref_of(page.subject)}/{statement}" for statement in OF_WEEDS]
    refs = [ref for ref in refs if ref in page.told]
    weeds = _weeds(page)
    if not refs or page.subject.level != "context" or total(t for t, _ in weeds) < ENOUGH:
        return []
    fields = [(t, x) for t, x in weeds if x.ecology.field_weed == "strong"]
    eaten = [(t, x) for t, x in fields if _is_gathered(x)]
    bare = [(t, x) for t, x in fields if not _is_gathered(x)]
    fruit = [(t, x) for t, x in weeds if "fruit" in x.tags]
    rest = [(t, x) for t, x in weeds if x.ecology.field_weed != "strong" and "fruit" not in x.tags]
    if page.is_plain:
        return _for_visitors(page, refs, eaten)
    aside = {t.taxon for t, _ in (*rest, *fruit)}
    left = total(t for t, _ in fields if t.taxon not in aside)
    return _of_fields(page, refs, eaten, bare) + _of_edges(page, refs, rest, fruit, left)


def weeds_of_phase(page: Page, theme: str) -> list[Sentence]:
    """'Maypop (21) is counted among the weeds and the fruits alike': of a phase whose weeds are read as a whole."""
    refs = [f"{page.dig.ref_of(page.subject)}/{statement}" for statement in OF_WEEDS]
    refs = [ref for ref in refs if ref in page.told]
    if theme != "field" or page.is_plain or page.subject.level != "phase" or not refs:
        return []
    weeds = _weeds(page)
    fruit = [(t, x) for t, x in weeds if "fruit" in x.tags]
    if len(weeds) <= NAMED:
        # Of so few kinds each may have come otherwise: what else is known of them is told one by one.
        fields = [(t, x) for t, x in weeds if x.ecology.field_weed == "strong"]
        rest = [(t, x) for t, x in weeds if x.ecology.field_weed != "strong" and "fruit" not in x.tags]
        eaten = _of_fields(page, refs, [pair for pair in fields if _is_gathered(pair[1])], [])
        return eaten + _of_edges(page, refs, rest, fruit, 0)
    are = english.agreed(len(fruit), "is", "are")
    alike = f"{_listed(page, fruit)} {are} counted among the weeds and the fruits alike"
    return page.say([*refs, *_refs(fruit)], alike) if fruit else []


Weeds = Sequence[tuple[Tally, Taxon]]


def _of_fields(page: Page, refs: Sequence[str], eaten: Weeds, bare: Weeds) -> list[Sentence]:
    sentences: list[Sentence] = []
    if eaten:
        weed = english.agreed(len(eaten), "a weed", "weeds")
        listed = _listed(page, eaten)
        sentences += page.say(
            [*refs, *_refs(eaten)],
            f"taken one by one, {listed}, {weed} of fields and gardens, can also be eaten, so that harvest, gathering, "
            "and growth on the spot may each have brought them",
            f"of the single weeds {listed} could have come in with the harvest, been gathered to be eaten, or grown on "
            "the spot",
        )
    if bare:
        speak = english.agreed(len(bare), "speaks", "speak")
        have = english.agreed(len(bare), "has", "have")
        listed = _listed(page, bare)
        sentences += page.say(
            [*refs, *_refs(bare)],
            f"{listed}, of the same ground, {have} no use as food on record and {speak} for the crop or the yard alone",
            f"no use as food is on record for {listed}, so that {english.agreed(len(bare), 'it', 'they')} {speak} for "
            "the crop or the yard alone",
        )
    recur = [(t, x) for t, x in (*eaten, *bare) if t.samples == page.found.samples]
    if page.found.samples > 2 and len(recur) > 1 and _crops_in_every_sample(page):
        names = page.listed([page.names.plant(t.taxon, t.written) for t, _ in recur[:NAMED]])
        every = page.count(page.found.samples)
        sentences += page.say([*refs, *_refs(recur)], f"{names} recur in all {every} samples, as the crop remains do")
    return sentences


def _of_edges(page: Page, refs: Sequence[str], rest: Weeds, fruit: Weeds, sure: int) -> list[Sentence]:
    sentences: list[Sentence] = []
    if rest:
        belong = english.agreed(len(rest), "belongs", "belong")
        listed = _listed(page, rest)
        sentences += page.say(
            [*refs, *_refs(rest)],
            f"{listed} {belong} to waste ground and edges as much as to fields, and may have grown about the place",
        )
    if fruit:
        are = english.agreed(len(fruit), "is", "are")
        sentences += page.say(
            [*refs, *_refs(fruit)],
            f"{_listed(page, fruit)} {are} counted among the weeds and the fruits alike",
        )
    if sentences and sure:
        seeds = english.agreed(sure, "seed is", "seeds are")
        aside = len({t.taxon for t, _ in (*rest, *fruit)})
        these = f"these {numbers.count(aside)}" if aside > 1 else "it"
        sentences += page.say(refs, f"without {these}, {page.count(sure)} {seeds} left, of plants of fields and gardens")
    return sentences


def _for_visitors(page: Page, refs: Sequence[str], eaten: Weeds) -> list[Sentence]:
    if not eaten:
        return []
    names = page.listed([page.names.plant(t.taxon, t.written, plural=True) for t, _ in eaten[:2]])
    return page.say(
        [*refs, *_refs(eaten[:2])],
        f"people may also have picked {names} on purpose: {ELSEWHERE}",
        f"it may be that people picked {names} too: {ELSEWHERE}",
    ) + _look_alikes(page, eaten[:2])


def _look_alikes(page: Page, eaten: Weeds) -> list[Sentence]:
    """That a plant which people ate elsewhere looks much like a poisonous one that lay here too."""
    for tally, taxon in eaten:
        alike = [t for t in page.found.tallies if t.taxon in taxon.look_alikes and t.counted and not t.only_cf]
        alike = [t for t in alike if t.condition in page.dig.ancient and t.ref and is_poisonous(page, t)]
        if alike and tally.ref:
            eaten_one, other = page.names.plant(tally.taxon, tally.written), page.names.plant(alike[0].taxon)
            return page.say(
                [tally.ref, alike[0].ref or ""],
                f"{other}, a poisonous plant that looks much like {eaten_one}, lay here too",
            )
    return []


ELSEWHERE = "people in other places are known to have eaten them, but that does not show it here"


def _weeds(page: Page) -> list[tuple[Tally, Taxon]]:
    """Seeds of weeds, the commonest first, without those that are or may be crops."""
    packs, found = page.dig.packs, []
    for tally in page.found.tallies:
        taxon = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        part = packs.words.parts.get(tally.part)
        if taxon is None or part is None or "propagule" not in part.roles or tally.only_cf or not tally.counted:
            continue
        is_weed = taxon.tags & {"field-weed", "ruderal"} or taxon.ecology.field_weed in ("strong", "moderate")
        if tally.condition in page.dig.ancient and is_weed and taxon.rank in ("species", "genus"):
            found += [] if taxon.tags & {"crop", "native-crop"} else [(tally, taxon)]
    return sorted(found, key=lambda pair: (-pair[0].counted, pair[1].id))


def _is_gathered(taxon: Taxon) -> bool:
    known = [use for use in taxon.uses if use.use in GATHERED and use.known != "memory-L"]
    return bool(known) and "toxic" not in taxon.tags


def _crops_in_every_sample(page: Page) -> bool:
    dig = page.dig
    for sample in dig.project.samples_of(ContextId(page.subject.id)):
        held = dig.found(Subject(level="sample", id=sample.id))
        tallies = [t for t in held.tallies if t.condition in dig.ancient and t.counted] if held is not None else []
        if not any(_is_crop(page, t) for t in tallies):
            return False
    return True


def _is_crop(page: Page, tally: Tally) -> bool:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return taxon is not None and taxon.status == "crop"


def _listed(page: Page, weeds: Weeds) -> str:
    texts = []
    for tally, taxon in weeds[:NAMED]:
        name = page.names.plant(tally.taxon, tally.written)
        texts.append(f"{name}{within(page.names.latin_once(taxon.id), str(tally.counted))}")
    if len(weeds) > NAMED:
        texts.append(page.count(len(weeds) - NAMED, "other", "others"))
    return page.listed(texts)


def _refs(weeds: Weeds) -> list[str]:
    return [tally.ref for tally, _ in weeds if tally.ref]
