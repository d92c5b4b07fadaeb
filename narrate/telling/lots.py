"""Where the remains behind a food of a phase lie: one rich lot that rules the number, and samples that lack it."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES
from narrate.model.ids import PhaseId, Subject
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantGroup
from narrate.model.stratigraphy import Context
from narrate.telling import english, numbers, setting
from narrate.telling.behind import is_meant
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.spread import is_too_few, name_of, presence
from narrate.telling.unread_crops import unread_crop_sentences

FOOD_GROUPS = {
    "food.maize": "maize", "food.native-seed-crops": "native-crop", "food.nut": "nut", "food.fruit": "fruit",
    "food.pulse": "pulse", "food.cereal": "cereal",
}  # fmt: skip
"""Foods and the groups of plants whose spread over the samples is known."""

LOTS = ("food.burned-store", "food.cooking-accident", "fuel.smudge", "fuel.maize-cob", "deposit.single-event")
"""Readings that say why one deposit is rich, the most telling first."""

RICH, ENOUGH, WIDE = 0.4, 100, 4
"""Share of the items from which one context rules them; items and contexts below which nothing is said of it."""


def lot_sentences(page: Page, contexts: Sequence[Context], held: Sequence[Reading]) -> list[Sentence]:
    """For foods of the phase: a context that holds a large part of their items, and samples that hold none."""
    sentences: list[Sentence] = []
    for reading in held if not page.is_plain else ():
        group = _group(page, FOOD_GROUPS.get(reading.claim.statement, ""))
        if group is not None and reading.rank > 1:
            sentences += _rich(page, contexts, reading, group)
            sentences += _without(page, contexts, reading, group)
    food = [reading for reading in held if reading.claim.question == "food"]
    return sentences[:3] + (unread_crop_sentences(page, food) if food else [])


def _group(page: Page, id: str) -> PlantGroup | None:
    return next((group for group in page.dig.packs.plant_groups if group.id == id), None)


def _rich(page: Page, contexts: Sequence[Context], reading: Reading, group: PlantGroup) -> list[Sentence]:
    """'Of the 1,094 items of native seeds 550 (50%) lay in C05, which is read as …: one lot.'"""
    held = [(items, context, refs) for context in contexts for items, refs in [_items(page, context, group)] if items]
    total = sum(items for items, _, _ in held)
    if total < ENOUGH or len(held) < WIDE:
        return []
    most, richest, refs = max(held, key=lambda one: one[0])
    if most / total < RICH:
        return []
    name, where = name_of(page, group), setting.context_name(page, richest)
    share = numbers.percent(most / total)
    read_as = _read_as(page, richest)
    refs = [reading.claim.id, *refs, *([read_as[1]] if read_as else [])]
    lot = f", which is read as {read_as[0]}" if read_as else ""
    verb = "is" if group.is_singular else "are"
    many = page.count(total)
    so = (
        "that is one deposit, and how common they were is better seen in the number of samples"
        if not page.has_told("that is one deposit")
        else "that again is one deposit"
    )
    so = so.replace("they were", "it was") if group.is_singular else so
    parts = " of all its parts" if group.is_singular else ""
    return page.say(
        refs,
        f"of the {many} items of {name} {page.count(most)} ({share}) lay in {where}{lot}; {so}",
        f"{name} {verb} unevenly spread: {page.count(most)} of {many} items{parts} ({share}) lay in {where}{lot}; {so}",
    )


def _read_as(page: Page, context: Context) -> tuple[str, str] | None:
    """What the richest deposit is read as, and the claim; with it a rival that is read of it as firmly."""
    subject = Subject(level="context", id=context.id)
    for name in LOTS:
        claim = page.dig.claims.find(subject, name)
        if claim is not None and claim.verdict == "holds" and GRADE_NAMES.index(claim.grade) > 1:
            rivals = [page.dig.claims.find(subject, rival.statement) for rival in claim.rivals]
            alike = [r for r in rivals if r is not None and r.verdict == "holds" and r.grade == claim.grade]
            nouns = [page.dig.packs.statements[one.statement].noun for one in (claim, *alike)]
            told = " and as ".join(page.in_own_words(noun) for noun in nouns)
            return f"{told} alike" if alike else told, claim.id
    return None


def _without(page: Page, contexts: Sequence[Context], reading: Reading, group: PlantGroup) -> list[Sentence]:
    """'The one sample without them is of posthole C09, which held too little to be read.'"""
    if page.subject.level != "phase":
        return []
    found = presence(page.dig, group, PhaseId(page.subject.id))
    missing = found.n - found.k
    if found.n < 10 or not 0 < missing <= 2:
        return []
    lacking = [c for c in contexts for s in page.dig.project.samples_of(c.id) if not _holds(page, s.id, group)]
    names = list(dict.fromkeys(setting.context_name(page, c) for c in lacking))
    if len(lacking) != missing or len(names) > 2:
        return []
    poor = all(is_too_few(page.dig, c.id) for c in lacking)
    why = ", which held too little to be read" if poor and len(names) == 1 else ""
    them = "it" if group.is_singular else name_of(page, group)
    is_of = english.agreed(missing, "sample without", "samples without")
    one = "the one" if missing == 1 else f"the {page.count(missing)}"
    be = english.agreed(missing, "is", "are")
    return page.say([reading.claim.id, *found.refs[:1]], f"{one} {is_of} {them} {be} of {page.listed(names)}{why}")


def _items(page: Page, context: Context, group: PlantGroup) -> tuple[int, list[str]]:
    found = page.dig.found(Subject(level="context", id=context.id))
    tallies = [t for t in found.tallies if t.condition in page.dig.ancient] if found is not None else []
    meant = [t for t in tallies if is_meant(group.of, t, page.dig.packs)]
    return sum(t.counted for t in meant), [t.ref for t in meant if t.ref][:1]


def _holds(page: Page, sample: str, group: PlantGroup) -> bool:
    found = page.dig.found(Subject(level="sample", id=sample))
    tallies = [t for t in found.tallies if t.condition in page.dig.ancient] if found is not None else []
    return any(is_meant(group.of, t, page.dig.packs) for t in tallies)
