"""What the phases of a dig bear out, told to visitors: what all of them share, what one alone shows, what is faint."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from narrate.model.claims import Claim
from narrate.model.ids import ContextId
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import english, setting
from narrate.telling.frames import frame, framed, that_clauses
from narrate.telling.hints import few_finds_sentences, with_a_fresh_end
from narrate.telling.of_note import found_in_another_phase
from narrate.telling.page import Page
from narrate.telling.places_named import places_named
from narrate.telling.plan import is_hint, standing
from narrate.telling.readings_of_phases import PhaseReading, as_readings, held_elsewhere, refs_of

LEFT_OPEN = "leave the matter open"
"""How a page says, once, that no reading of one phase is none of the opposite."""


def by_phase_for_visitors(page: Page, phases: Sequence[Phase], readings: Sequence[PhaseReading]) -> list[Sentence]:
    """The readings of one theme: those that all phases share, those of some, those of one, then hints."""
    hints = [pair for reading in readings for pair in reading.claims if is_hint(pair[1])]
    firm = [(r.statement, tuple(pair for pair in r.claims if standing(pair[1]) == "reading")) for r in readings]
    held = [PhaseReading(statement=statement, claims=claims) for statement, claims in firm if claims]
    single, elsewhere = _without_elsewhere(page, [r for r in held if len(r.claims) == 1])
    sentences = _shared(page, phases, [r for r in held if len(r.claims) == len(phases)])
    sentences += _some(page, [r for r in held if 1 < len(r.claims) < len(phases)])
    sentences += _alone(page, phases, single, is_more=bool(sentences))
    return sentences + elsewhere + _faint(page, phases, hints)


def _shared(page: Page, phases: Sequence[Phase], shared: Sequence[PhaseReading]) -> list[Sentence]:
    """'It looks as if people burned wood in their fires, early and late alike.'"""
    by_grade: dict[str, list[PhaseReading]] = {}
    for reading in shared:
        by_grade.setdefault(reading.weakest.grade, []).append(reading)
    sentences: list[Sentence] = []
    for alike in by_grade.values():
        lead = frame(page, as_readings(page, [r.weakest for r in alike]), "lead")
        if len(phases) == 2:
            turns = [f"{lead}, early and late alike", f"at both times, {lead}", _by_all(lead, "of both times")]
        else:
            turns = [f"{lead}, at all times", f"throughout, {lead}", _by_all(lead, "of all times")]
        sentences += page.say(refs_of(alike), *turns)
    return sentences


def _by_all(told: str, when: str) -> str:
    """
    What people of several times did, told of them all; empty where nobody does anything.

    >>> _by_all("as far as we can tell, people burned wood in their fires", "of both times")
    'as far as we can tell, people of both times burned wood in their fires'
    """
    return re.sub(r"\bpeople\b", f"people {when}", told, count=1) if re.search(r"\bpeople\b", told) else ""


def _some(page: Page, several: Sequence[PhaseReading]) -> list[Sentence]:
    """'In the Iron Age farm and the Roman farm it looks as if people …': of three phases or more."""
    by_phases: dict[tuple[tuple[str, ...], str], list[PhaseReading]] = {}
    for reading in several:
        names = tuple(setting.phase_name(phase) for phase, _ in reading.claims)
        by_phases.setdefault((names, reading.weakest.grade), []).append(reading)
    sentences: list[Sentence] = []
    for (names, _), alike in list(by_phases.items())[:2]:
        lead = frame(page, as_readings(page, [r.weakest for r in alike]), "lead")
        sentences += page.say(refs_of(alike), f"in {page.listed(names)}, {lead}", f"of {page.listed(names)}, {lead}")
    return sentences


def _alone(
    page: Page, phases: Sequence[Phase], single: Sequence[PhaseReading], *, is_more: bool
) -> list[Sentence]:
    """What single phases show: in one sentence where all are of one grade, and that the rest is left open."""
    told: list[tuple[str, str, list[PhaseReading]]] = []
    for phase in phases:
        by_grade: dict[str, list[PhaseReading]] = {}
        for reading in (r for r in single if r.claims[0][0] == phase and r.weakest.grade != "consistent with"):
            by_grade.setdefault(reading.weakest.grade, []).append(reading)
        told += [(setting.phase_name(phase), grade, alike) for grade, alike in by_grade.items()]
    if not told:
        return []
    is_of_two = len(told) == 2 and told[0][1] == told[1][1] and told[0][0] != told[1][0]
    if is_of_two:
        clauses = _set_beside([(name, _clause(page, alike)) for name, _, alike in told])
        refs = [ref for _, _, alike in told for ref in refs_of(alike)]
        sentences = page.say(refs, framed(page, told[0][1], clauses, "also" if is_more else "lead"))
    else:
        sentences = []
        for name, grade, alike in told:
            said = framed(page, grade, _clause(page, alike), "also" if is_more or sentences else "lead")
            sentences += page.say(refs_of(alike), f"in {name}, {said}", f"for {name}, {said}")
    if page.has_told(LEFT_OPEN) or not sentences:
        return sentences
    others = "the other" if len(phases) == 2 else "the others"
    open_ = f"where we speak of one time alone, the finds of {others} {LEFT_OPEN}"
    return sentences + page.say([ref for _, _, alike in told for ref in refs_of(alike)], open_)


def _clause(page: Page, readings: Sequence[PhaseReading]) -> str:
    return that_clauses(page, as_readings(page, [r.weakest for r in readings])).replace(", and that people ", ", and ")


def _set_beside(sides: Sequence[tuple[str, str]]) -> str:
    """
    Two phases and what people did there, with the words that both share said once.

    >>> _set_beside([("the farm", "corn served as food"), ("the town", "people used beans as food")])
    'corn served as food in the farm, and beans in the town'
    >>> _set_beside([("the farm", "people burned shells"), ("the town", "people burned cobs")])
    'in the farm people burned shells, and in the town cobs'
    >>> _set_beside([("the farm", "people cut hay"), ("the town", "people burned cobs")])
    'in the farm people cut hay, and in the town people burned cobs'
    """
    (one, first), (other, second) = sides
    foods = [_FOOD.fullmatch(clause) for clause in (first, second)]
    if foods[0] and foods[1]:
        return f"{foods[0][1]} served as food in {one}, and {foods[1][1]} in {other}"
    done = [_DONE.fullmatch(clause) for clause in (first, second)]
    if done[0] and done[1] and done[0][1] == done[1][1]:
        second = done[1][2]
    return f"in {one} {first}, and in {other} {second}"


_FOOD = re.compile(r"(?:people used )?([^,]+?) (?:as food|served as food)")
_DONE = re.compile(r"people (?:harvested and )?(gathered|harvested|burned|picked) ([^,]+)")


def _without_elsewhere(
    page: Page, single: Sequence[PhaseReading]
) -> tuple[list[PhaseReading], list[Sentence]]:
    """Readings of one phase that no context of another makes; and sentences on those that some context does make."""
    kept: list[PhaseReading] = []
    sentences: list[Sentence] = []
    for reading in single:
        phase, claim = reading.claims[0]
        held = held_elsewhere(page, phase, reading.statement)
        found_too = found_in_another_phase(page, claim, page.dig.project.phases)
        clauses = that_clauses(page, as_readings(page, [claim]))
        if not held and found_too:
            sentences += page.say([claim.id], f"some finds of {setting.phase_name(phase)} hint that {clauses}")
            sentences += page.say([claim.id], f"but {found_too}, and these finds are too few to compare")
        elif not held:
            kept.append(reading)
        elif claim.grade != "consistent with":
            sentences += page.say(
                [claim.id, *(c.id for c in held)],
                f"the finds of {setting.phase_name(phase)} as a whole hint that {clauses}; {_shown_by(page, held)}",
            )
    return kept, sentences


def _shown_by(page: Page, held: Sequence[Claim]) -> str:
    """'in the Early hamlet storage pit C06 alone hints at it', phase by phase."""
    by_phase: dict[str, list[str]] = {}
    for claim in held:
        context = page.dig.project.context(ContextId(claim.about.id))
        phase = page.dig.project.phase(context.phase)
        by_phase.setdefault(setting.phase_name(phase) if phase else "other places", []).append(context.id)
    return "; ".join(
        f"in {name} only {places_named(page, ids)} {english.agreed(len(ids), 'shows', 'show')} signs of it"
        for name, ids in by_phase.items()
    )


def _faint(page: Page, phases: Sequence[Phase], hints: Sequence[tuple[Phase, Claim]]) -> list[Sentence]:
    """'The Late hamlet gives faint signs that people handled tobacco; a few finds more or less could undo them.'"""
    sentences: list[Sentence] = []
    for statement in dict.fromkeys(claim.statement for _, claim in hints):
        alike = [(phase, claim) for phase, claim in hints if claim.statement == statement]
        refs = [claim.id for _, claim in alike]
        reading = replace(as_readings(page, [alike[0][1]])[0], behind=())
        clause = that_clauses(page, [reading]).removesuffix(" here")
        names = page.listed(setting.phase_name(phase) for phase, _ in alike)
        give = english.agreed(len(alike), "gives", "give")
        where = names if len(alike) < len(phases) else "both times" if len(phases) == 2 else "all times"
        turns = with_a_fresh_end(
            page,
            f"{names} {give} faint signs that {clause}; a few finds more or less could undo them",
            f"from {where} there are faint signs that {clause}, but a few finds more or less would change that",
            f"there are faint signs from {where} that {clause}, too slight to build on",
        )
        sentences += page.say(refs, *turns)
        sentences += few_finds_sentences(page, alike[0][1]) if len(alike) == 1 else []
        found_too = found_in_another_phase(page, alike[0][1], page.dig.project.phases) if len(alike) == 1 else ""
        if found_too:
            sentences += page.say(refs, f"but {found_too}, and these finds are too few to compare")
    return sentences
