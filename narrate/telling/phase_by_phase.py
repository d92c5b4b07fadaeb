"""The readings of the whole dig told by phase: what all phases bear out, and what one of them alone does."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import numbers, setting, shared_words
from narrate.telling.by_phase_for_visitors import by_phase_for_visitors
from narrate.telling.foods_once import is_told_with_another_food
from narrate.telling.frames import noun_of
from narrate.telling.hints import hints_of_phases
from narrate.telling.page import Draw, Page
from narrate.telling.plan import TOO_FEW, UNSETTLED, is_hint, standing
from narrate.telling.readings_of_phases import PhaseReading, as_readings, refs_of
from narrate.telling.seasons_asked import between_sentences
from narrate.telling.spread import NOT_LISTED

UNTOLD = (*NOT_LISTED, TOO_FEW, "season.more-than-one")
"""Readings that are the sum of others or say what cannot be told."""

VERBS = {
    "strongly supports": ("strongly supports", "strongly support"),
    "supports": ("supports", "support"),
    "suggests": ("suggests", "suggest"),
    "consistent with": ("is consistent with", "are consistent with"),
}
"""What one phase does to a reading, and what several do."""


def phase_readings(page: Page, phases: Sequence[Phase], questions: Sequence[str]) -> list[PhaseReading]:
    """Statements of some questions that hold in some phase, the firmest first."""
    found: dict[str, list[tuple[Phase, Claim]]] = {}
    for phase in phases:
        for claim in page.dig.claims.holding(Subject(level="phase", id=phase.id)):
            if claim.question not in questions or claim.verdict != "holds" or claim.grade == "not supported":
                continue
            if claim.statement in UNTOLD or claim.statement not in page.dig.packs.statements:
                continue
            if not is_told_with_another_food(page.dig, claim):
                found.setdefault(claim.statement, []).append((phase, claim))
    told = [PhaseReading(statement=name, claims=tuple(claims)) for name, claims in found.items()]
    place = {statement: i for i, statement in enumerate(page.dig.packs.statements)}
    return sorted(told, key=lambda r: (-GRADE_NAMES.index(r.weakest.grade), place[r.statement]))  # type: ignore[index]


def told_by_phase(page: Page, phases: Sequence[Phase]) -> None:
    """Sets apart the claims of the whole dig whose statements some phase bears out: they are told of the phases."""
    held = page.dig.claims.holding(page.subject)
    questions = {claim.question for claim in held} - {"change", "integrity", "work"}
    named = {r.statement for r in phase_readings(page, phases, tuple(questions))}
    page.aside.update(
        claim.id
        for claim in held
        if claim.statement in named or claim.statement == "season.more-than-one"
    )


def phase_by_phase(page: Page, phases: Sequence[Phase], readings: Sequence[PhaseReading]) -> list[Sentence]:
    """What all phases bear out, what some do, what each alone does, and which of it is close: a sentence for each."""
    if page.is_plain:
        return by_phase_for_visitors(page, phases, readings)
    hints = [pair for reading in readings for pair in reading.claims if is_hint(pair[1])]
    firm = [(r.statement, tuple(pair for pair in r.claims if standing(pair[1]) == "reading")) for r in readings]
    readings = [PhaseReading(statement=statement, claims=claims) for statement, claims in firm if claims]
    shared = [r for r in readings if len(r.claims) == len(phases)]
    sentences = _shared(page, phases, shared) + _some(page, [r for r in readings if 1 < len(r.claims) < len(phases)])
    single = [r for r in readings if len(r.claims) == 1]
    sentences += _alone(page, phases, single)
    in_season = [r for r in single if r.weakest.question == "season"]
    sentences += between_sentences(page, phases, are_apart=len({r.claims[0][0].id for r in in_season}) > 1)
    return sentences + hints_of_phases(page, hints) + _close(page, readings)


def _shared(page: Page, phases: Sequence[Phase], shared: Sequence[PhaseReading]) -> list[Sentence]:
    sentences: list[Sentence] = []
    every = "both phases" if len(phases) == 2 else f"all {page.count(len(phases))} phases"
    by_grade: dict[tuple[str, bool], list[PhaseReading]] = {}
    for reading in shared:
        by_grade.setdefault((reading.weakest.grade, reading.is_of_one_grade), []).append(reading)
    parts: list[str] = []
    refs: list[str] = []
    for (grade, is_one), alike in by_grade.items():
        claims = [r.weakest for r in alike]
        parts.append(f"{_at_least(VERBS[grade][1], is_one=is_one)} {_noun(page, claims)}")
        refs += refs_of(alike)
    if parts:
        said = "; they ".join(parts)
        sentences += page.say(refs, f"{every} {said}", f"in {every} alike the remains {said}")
    return sentences


def _some(page: Page, several: Sequence[PhaseReading]) -> list[Sentence]:
    """'The Iron Age farm and the Roman farm suggest waste from the dehusking of grain': of three phases or more."""
    by_phases: dict[tuple[str, ...], list[PhaseReading]] = {}
    for reading in several:
        by_phases.setdefault(tuple(setting.phase_name(phase) for phase, _ in reading.claims), []).append(reading)
    sentences: list[Sentence] = []
    for names, alike in list(by_phases.items())[:2]:
        weakest = min((r.weakest for r in alike), key=lambda claim: GRADE_NAMES.index(claim.grade))
        noun = _noun(page, [r.weakest for r in alike])
        which = page.listed(names)
        is_one = len({claim.grade for r in alike for _, claim in r.claims}) == 1
        verb = _at_least(VERBS[weakest.grade][1], is_one=is_one)
        sentences += page.say(refs_of(alike), f"{which} {verb} {noun}")
    return sentences


def _at_least(verb: str, *, is_one: bool) -> str:
    """'at least support', 'are at least consistent with': where the phases are not of one grade."""
    return verb if is_one else f"are at least {verb[4:]}" if verb.startswith("are ") else f"at least {verb}"


def _alone(page: Page, phases: Sequence[Phase], single: Sequence[PhaseReading]) -> list[Sentence]:
    """'The Early hamlet alone supports the use of native seed crops as food, and the Late hamlet that of maize'."""
    parts: list[str] = []
    refs: list[str] = []
    first = ""
    for phase in phases:
        by_grade: dict[str, list[PhaseReading]] = {}
        for reading in (r for r in single if r.claims[0][0] == phase):
            by_grade.setdefault(reading.weakest.grade, []).append(reading)
        if not by_grade:
            continue
        refs += [ref for alike in by_grade.values() for ref in refs_of(alike)]
        told = []
        for grade, alike in by_grade.items():
            noun = _noun(page, [r.weakest for r in alike])
            told.append(f"{VERBS[grade][0]} {shared_words.after(first, noun) if first else noun}")
            first = first or noun
        parts.append(f"{setting.phase_name(phase)} alone {page.listed(told)}")
    if not parts:
        return []
    mark = "; " if any(", " in part for part in parts) else ", and "
    return page.say(refs, mark.join(parts))


def _close(page: Page, readings: Sequence[PhaseReading]) -> list[Sentence]:
    """Readings of a phase that do not stand when its counts are drawn again."""
    shaky = [
        (phase, claim)
        for reading in readings
        for phase, claim in reading.claims
        if claim.stability is not None and claim.stability < UNSETTLED
    ]
    if not shaky:
        return []
    by_noun: dict[str, list[str]] = {}
    for phase, claim in shaky:
        share = numbers.percent(claim.stability or 0.0)
        noun = _noun(page, [claim])
        by_noun.setdefault(noun, []).append(f"in {share} of cases for {setting.phase_name(phase)}")
    texts = [f"{noun} {page.listed(shares)}" for noun, shares in list(by_noun.items())[:2]]
    said = page.say(
        [claim.id for _, claim in shaky], f"counts drawn anew at random uphold {', and '.join(texts)}"
    )
    page.draws += [Draw(sentence=sentence, pieces=tuple(texts)) for sentence in said]
    return said


def _noun(page: Page, claims: Sequence[Claim]) -> str:
    """The readings as one noun phrase; 'nuts as food' in short once the page has said that something was food."""
    noun = noun_of(page, as_readings(page, claims))
    is_short = page.has_told(" as food") and " as food" in noun and not page.is_plain
    return noun.removeprefix("the use of ") if is_short else noun
