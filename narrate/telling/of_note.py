"""Plants that are named however few they are: those that a reading rests on, here or elsewhere on the dig."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from narrate.model.claims import GRADE_NAMES, Claim, Claims
from narrate.model.findings import Findings, Tally
from narrate.model.ids import TaxonId
from narrate.model.narrative import Sentence
from narrate.model.packs import Packs
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, setting
from narrate.telling.behind import remains_behind
from narrate.telling.page import Page
from narrate.telling.places_named import places_named
from narrate.telling.plan import Reading
from narrate.telling.reasons import reason_texts
from narrate.telling.strays import Found, is_spread
from narrate.telling.surroundings import genus_of

QUESTIONS = ("food", "processing")
_SUGGESTS = GRADE_NAMES.index("suggests")


def lone_plants(findings: Findings, claims: Claims, packs: Packs, ancient: frozenset[str]) -> frozenset[str]:
    """Genera on which alone some reading of a phase or the dig rests: tobacco, maize, squash."""
    found = set()
    for subject, held in findings.subjects.items():
        if subject.level not in ("phase", "site"):
            continue
        tallies = [t for t in held.tallies if t.condition in ancient and t.taxon is not None]
        for claim in claims.holding(subject):
            if claim.question in QUESTIONS and GRADE_NAMES.index(claim.grade) >= _SUGGESTS:
                genera = {genus_of(t, packs) for t in remains_behind(claim, packs, tallies)}
                found |= genera if len(genera) == 1 else set()
    return frozenset(found)


def plants_of_note(page: Page, held: Iterable[Reading]) -> frozenset[TaxonId]:
    """
    Plants of the page that are named among its finds.

    Those that its readings name, those that somebody wrote of, and those that carry a reading elsewhere on the dig.
    """
    held = list(held)
    texts = " ".join(text for item in held for text in reason_texts(page, item))
    foods = {name for item in held for name in page.foods.get(item.claim.id, ())[: _named(page, item)]}
    bear = {r.claim.statement for r in held}
    noted = {n.ref for n in page.noted if bear & {*n.observation.agrees_with, *n.observation.against}}
    chosen = set()
    for tally in page.found.tallies:
        if tally.taxon is None or tally.condition not in page.dig.ancient or not tally.counted:
            continue
        name = page.names.food(tally.taxon, tally.written)
        is_read = name in foods or re.search(rf"\b{re.escape(name)}\b", texts) is not None
        if is_read or tally.ref in noted or genus_of(tally, page.dig.packs) in page.dig.lone_plants:
            chosen.add(tally.taxon)
    return frozenset(chosen)


def _named(page: Page, item: Reading) -> int:
    """How many plants of a food reading are told by name."""
    plants = page.foods.get(item.claim.id, ())
    return len(plants) if len(plants) <= 4 else 2


# Plants read elsewhere


def stray_sentences(page: Page, phase: Phase, questions: Sequence[str]) -> list[Sentence]:
    """
    Finds of a plant that carries a reading in another phase and too few here to carry one.

    Plants whose spread over the samples is told need no such word.
    """
    sentences: list[Sentence] = []
    for places in finds_astray(page, phase, questions).values():
        total = sum(t.counted for _, t in places)
        refs = [t.ref for _, t in places if t.ref]
        where = page.listed(f"{context} ({sample})" for context, sample in dict.fromkeys(at for at, _ in places))
        found = _found(page, places, total)
        if page.is_plain:
            few = english.agreed(total, "one find is", "so few finds are")
            sentences += page.say(refs, f"we also found {found}, but {few} too little to go by")
            continue
        comes, carries = english.agreed(total, "comes", "come"), english.agreed(total, "it carries", "they carry")
        sentences += page.say(
            refs,
            f"{found} {comes} from {where}; alone {carries} no reading",
            f"from {where} {comes} {found}, too little to read anything from",
        )
    return sentences


def elsewhere_sentences(page: Page, phases: Sequence[Phase], questions: Sequence[str]) -> list[Sentence]:
    """Over the dig: that a plant which one phase alone carries a reading of was found in another phase too."""
    sentences: list[Sentence] = []
    for phase in phases if not page.is_plain else ():
        for places in finds_astray(page, phase, questions).values():
            refs = [t.ref for _, t in places if t.ref]
            where = page.listed(dict.fromkeys(context for (context, _), _ in places))
            total = sum(t.counted for _, t in places)
            found = _found(page, places, total)
            sentences += page.say(
                refs, f"{setting.phase_name(phase)} gave {found} too ({where}), which alone carries no reading"
            )
    return sentences


def found_in_another_phase(page: Page, claim: Claim, phases: Sequence[Phase]) -> str:
    """'The Early hamlet gave one tobacco seed too (C07)', where one plant alone carries a claim; else nothing."""
    other = finds_of_another_phase(page, claim, phases)
    if other is None:
        return ""
    phase, places = other
    where = page.listed(dict.fromkeys(context for (context, _), _ in places))
    where = places_named(page, [context for (context, _), _ in places]) if page.is_plain else where
    total = sum(tally.counted for _, tally in places)
    return f"{setting.phase_name(phase)} gave {_found(page, places, total)} too ({where})"


def finds_of_another_phase(page: Page, claim: Claim, phases: Sequence[Phase]) -> tuple[Phase, Sequence[Found]] | None:
    """Where one plant alone carries a claim of a phase, another phase with too few finds of it to carry one."""
    held = page.dig.found(claim.about)
    tallies = [t for t in held.tallies if t.taxon is not None] if held is not None else []
    genera = {genus_of(t, page.dig.packs) for t in remains_behind(claim, page.dig.packs, tallies)}
    if len(genera) != 1 or not genera <= page.dig.lone_plants:
        return None
    for phase in (p for p in phases if p.id != claim.about.id):
        places = page.dig.strays.finds(phase.id, *genera)
        if places and not any(is_spread(tally, page.dig.packs) for _, tally in places):
            return phase, places
    return None


def strays_of_context(page: Page, context: Context) -> list[Sentence]:
    """For the team: finds of a context that carry a reading in another phase and are too few here."""
    phase = page.dig.project.phase(context.phase)
    sentences: list[Sentence] = []
    for places in finds_astray(page, phase, QUESTIONS).values() if phase is not None else ():
        own = [(at, tally) for at, tally in places if at[0] == english.literal(context.id)]
        if own:
            total = sum(t.counted for _, t in own)
            samples = page.listed(dict.fromkeys(sample for (_, sample), _ in own))
            refs = [t.ref for _, t in own if t.ref]
            is_little = f"{english.agreed(total, 'is', 'are')} too little to read anything from"
            sentences += page.say(refs, f"{_found(page, own, total, latin=False)} ({samples}) {is_little}")
    return sentences


def _found(page: Page, places: Sequence[tuple[tuple[str, str], Tally]], total: int, *, latin: bool = True) -> str:
    if len(places) == 1:
        return page.names.remains(places[0][1], latin=latin and not page.is_plain)
    plant = page.names.plant(places[0][1].taxon, places[0][1].written)
    return page.count(total, f"find of {plant}", f"finds of {plant}")


def finds_astray(page: Page, phase: Phase, questions: Sequence[str]) -> dict[str, list[Found]]:
    """By plant: finds of a phase, for plants whose reading another phase alone carries."""
    found: dict[str, list[Found]] = {}
    for genus in page.dig.strays.genera(phase.id, *questions):
        for place, tally in page.dig.strays.finds(phase.id, genus):
            found.setdefault(page.names.plant(tally.taxon, tally.written), []).append((place, tally))
    return found
