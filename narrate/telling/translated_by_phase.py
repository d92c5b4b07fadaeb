"""The readings of a dig by phase, in a language of its own: what all bear out, what one shows, what is faint."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Claim
from narrate.model.ids import ContextId
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling.behind import remains_behind
from narrate.telling.of_note import finds_of_another_phase
from narrate.telling.page import Page
from narrate.telling.phase_by_phase import phase_readings
from narrate.telling.plan import Reading, is_hint, standing
from narrate.telling.readings_of_phases import PhaseReading, held_elsewhere
from narrate.telling.translated_finds import finds_summed
from narrate.telling.translated_readings import faint, framed
from narrate.telling.translated_words import grammar_of, is_said, places_told, say, years_of

SHARED, ALONE = 2, 2
"""Readings of a theme that are told of all phases or of several, and of each phase alone."""

FIRM = ("suggests", "supports", "strongly supports")


def tells_by_phase(page: Page) -> bool:
    """Whether the language has the sentences that this wants."""
    return all(name in grammar_of(page).language.sentences for name in ("all phases", "one phase"))


def told_by_phase(page: Page, phases: Sequence[Phase], questions: Sequence[str]) -> list[Sentence]:
    """
    What all phases bear out, what one of them alone does, and that it says nothing of the others; then hints.

    Counts pooled over centuries are of no time. No reading of one phase is one of the opposite for another.
    """
    found = [r for r in phase_readings(page, phases, questions) if r.statement in grammar_of(page).language.statements]
    hints = [(r.statement, [pair for pair in r.claims if is_hint(pair[1])]) for r in found]
    firm = [(r.statement, tuple(pair for pair in r.claims if standing(pair[1]) == "reading")) for r in found]
    held = [PhaseReading(statement=name, claims=claims) for name, claims in firm if claims]
    sentences = _shared(page, phases, [r for r in held if len(r.claims) == len(phases)][:SHARED])
    for reading in [r for r in held if 1 < len(r.claims) < len(phases)][:SHARED]:
        sentences += _some(page, reading)
    for phase in phases:
        own = [c for r in held if len(r.claims) == 1 for p, c in r.claims if p.id == phase.id and c.grade in FIRM]
        for claim in sorted(own, key=lambda claim: -claim.support)[:ALONE]:
            sentences += _alone(page, phases, phase, claim)
    for _, alike in hints:
        sentences += _faint(page, phases, alike) if alike else []
    return sentences


def _shared(page: Page, phases: Sequence[Phase], shared: Sequence[PhaseReading]) -> list[Sentence]:
    sentences: list[Sentence] = []
    for reading in shared:
        refs = [claim.id for _, claim in reading.claims]
        sentences += say(page, refs, _of_all(page, phases), lead=framed(page, _reading(page, reading.weakest)))
    return sentences


def _some(page: Page, reading: PhaseReading) -> list[Sentence]:
    """What several phases of more bear out: 'en las épocas de hacia 950–1050 d. C. y 1250–1350 d. C. …'."""
    years = grammar_of(page).listed(years_of(page, phase) for phase, _ in reading.claims)
    refs = [claim.id for _, claim in reading.claims]
    return say(page, refs, "several phases", years=years, lead=framed(page, _reading(page, reading.weakest)))


def _of_all(page: Page, phases: Sequence[Phase], name: str = "") -> str:
    """'both phases' of two, where the language has words for that; else 'all phases'."""
    both = f"{name}both phases"
    has_both = both in grammar_of(page).language.sentences
    return both if len(phases) == 2 and has_both else f"{name}all phases"


def _alone(page: Page, phases: Sequence[Phase], phase: Phase, claim: Claim) -> list[Sentence]:
    """What one phase shows; where another shows it in single places too, that; else that the others leave it open."""
    lead, years = framed(page, _reading(page, claim)), years_of(page, phase)
    sentences = say(page, [claim.id], "one phase", years=years, lead=lead)
    places = held_elsewhere(page, phase, claim.statement)
    if places:
        where = places_told(page, [ContextId(c.about.id) for c in places])
        return sentences + say(page, [claim.id, *(c.id for c in places)], "shown elsewhere", places=where)
    other = _of_another(page, phases, claim)
    if other or not sentences:
        return sentences + other
    name = "others open" if len(phases) > 2 else "other open"
    return sentences if is_said(page, name) else sentences + say(page, [claim.id], name)


def _of_another(page: Page, phases: Sequence[Phase], claim: Claim) -> list[Sentence]:
    """That another phase has a few finds of the one plant a claim rests on, so that nothing is to be compared."""
    other = finds_of_another_phase(page, claim, phases)
    if other is None:
        return []
    phase, found = other
    refs = [claim.id, *(tally.ref for _, tally in found if tally.ref)]
    where = places_told(page, [context for (context, _), _ in found])
    find = finds_summed(page, [tally for _, tally in found])
    return say(page, refs, "found elsewhere", years=years_of(page, phase), find=find, places=where)


def _faint(page: Page, phases: Sequence[Phase], alike: Sequence[tuple[Phase, Claim]]) -> list[Sentence]:
    """'De la época de hacia 1250–1350 d. C. hay indicios muy débiles …', with what they rest on."""
    if len(alike) == len(phases):
        return faint(page, [_reading(page, alike[0][1])], _of_all(page, phases, "faint of "))
    sentences: list[Sentence] = []
    for phase, claim in alike:
        sentences += faint(page, [_reading(page, claim)], "faint of one phase", years=years_of(page, phase))
        sentences += _of_another(page, phases, claim)
    return sentences


def _reading(page: Page, claim: Claim) -> Reading:
    held = page.dig.found(claim.about)
    tallies = [t for t in held.tallies if t.condition in page.dig.ancient] if held is not None else []
    statement = page.dig.packs.statements[claim.statement]
    return Reading(claim=claim, statement=statement, behind=remains_behind(claim, page.dig.packs, tallies))
