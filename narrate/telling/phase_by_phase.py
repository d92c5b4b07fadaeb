"""The readings of the whole dig told by phase: what all phases bear out, and what one of them alone does."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.ids import ContextId, Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers, setting, shared_words
from narrate.telling.foods_once import is_told_with_another_food
from narrate.telling.frames import frame, noun_of, that_clauses
from narrate.telling.hints import hints_of_phases
from narrate.telling.of_note import found_in_another_phase
from narrate.telling.page import Draw, Page
from narrate.telling.plan import TOO_FEW, UNSETTLED, Reading, is_hint, standing
from narrate.telling.spread import NOT_LISTED, ids_listed

UNTOLD = (*NOT_LISTED, TOO_FEW, "season.more-than-one")
"""Readings that are the sum of others or say what cannot be told."""

VERBS = {
    "strongly supports": ("strongly supports", "strongly support"),
    "supports": ("supports", "support"),
    "suggests": ("suggests", "suggest"),
    "consistent with": ("is consistent with", "are consistent with"),
}
"""What one phase does to a reading, and what several do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseReading:
    """One statement and the claims of the phases that bear it out."""

    statement: str
    claims: tuple[tuple[Phase, Claim], ...]

    @property
    def weakest(self) -> Claim:
        return min((claim for _, claim in self.claims), key=lambda claim: GRADE_NAMES.index(claim.grade))

    @property
    def is_of_one_grade(self) -> bool:
        return len({claim.grade for _, claim in self.claims}) == 1


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
    hints = [pair for reading in readings for pair in reading.claims if is_hint(pair[1])]
    firm = [(r.statement, tuple(pair for pair in r.claims if standing(pair[1]) == "reading")) for r in readings]
    readings = [PhaseReading(statement=statement, claims=claims) for statement, claims in firm if claims]
    shared = [r for r in readings if len(r.claims) == len(phases)]
    sentences = _shared(page, phases, shared) + _some(page, [r for r in readings if 1 < len(r.claims) < len(phases)])
    sentences += _alone(page, phases, [r for r in readings if len(r.claims) == 1])
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
        if page.is_plain:
            of_two, of_more = ("at both times", "early and late"), ("at all times", "all along", "throughout")
            turns = of_two if len(phases) == 2 else of_more
            lead = frame(page, _as_readings(page, claims), "lead")
            sentences += page.say(_refs(alike), *(f"{turn}, {lead}" for turn in turns))
            continue
        parts.append(f"{'' if is_one else 'at least '}{VERBS[grade][1]} {_noun(page, claims)}")
        refs += _refs(alike)
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
        if page.is_plain:
            clauses = that_clauses(page, _as_readings(page, [r.weakest for r in alike]))
            sentences += page.say(_refs(alike), f"in {which} we saw signs that {clauses}")
            continue
        is_one = len({claim.grade for r in alike for _, claim in r.claims}) == 1
        verb = f"{'' if is_one else 'at least '}{VERBS[weakest.grade][1]}"
        sentences += page.say(_refs(alike), f"{which} {verb} {noun}")
    return sentences


def _alone(page: Page, phases: Sequence[Phase], single: Sequence[PhaseReading]) -> list[Sentence]:
    """'The Early hamlet alone supports the use of native seed crops as food, and the Late hamlet that of maize'."""
    parts: list[str] = []
    refs: list[str] = []
    first = ""
    more: list[Sentence] = []
    named: list[str] = []
    if page.is_plain:
        single, more = _without_elsewhere(page, single)
    for phase in phases:
        by_grade: dict[str, list[PhaseReading]] = {}
        for reading in (r for r in single if r.claims[0][0] == phase):
            by_grade.setdefault(reading.weakest.grade, []).append(reading)
        if page.is_plain:
            by_grade.pop("consistent with", None)
        if not by_grade:
            continue
        refs += [ref for alike in by_grade.values() for ref in _refs(alike)]
        if page.is_plain:
            clauses = that_clauses(page, _as_readings(page, [r.weakest for alike in by_grade.values() for r in alike]))
            name = setting.phase_name(phase)
            parts.append(f"in {name}{', that' if parts else ' we saw signs that'} {clauses}")
            named.append(name)
            continue
        told = []
        for grade, alike in by_grade.items():
            noun = _noun(page, [r.weakest for r in alike])
            told.append(f"{VERBS[grade][0]} {shared_words.after(first, noun) if first else noun}")
            first = first or noun
        parts.append(f"{setting.phase_name(phase)} alone {page.listed(told)}")
    if not parts:
        return more
    if page.is_plain:
        # No reading is no sign of the opposite.
        others = [setting.phase_name(phase) for phase in phases if setting.phase_name(phase) not in named]
        if others:
            return page.say(refs, f"{'; '.join(parts)}; of {page.listed(others)} we cannot say so") + more
        rest = "the other" if len(phases) == 2 else "the others"
        denied = page.fresh(f"what we say of one we cannot say of {rest}", f"neither can be said of {rest}")
        return page.say(refs, "; ".join(parts)) + (page.say(refs, denied[0]) if denied else []) + more
    mark = "; " if any(", " in part for part in parts) else ", and "
    return page.say(refs, mark.join(parts))


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
        if not held and found_too:
            clauses = that_clauses(page, _as_readings(page, [claim]))
            sentences += page.say([claim.id], f"some finds of {setting.phase_name(phase)} hint that {clauses}")
            sentences += page.say([claim.id], f"but {found_too}, and these finds are too few to compare")
        elif not held:
            kept.append(reading)
        elif claim.grade != "consistent with":
            clauses = that_clauses(page, _as_readings(page, [claim]))
            sentences += page.say(
                [claim.id, *(c.id for c in held)],
                f"the finds of {setting.phase_name(phase)} as a whole hint that {clauses}; {_shown_by(page, held)}",
            )
    return kept, sentences


def held_elsewhere(page: Page, phase: Phase, statement: str) -> list[Claim]:
    """Claims of contexts of other phases that make a reading, more firmly than that it would fit."""
    elsewhere = [c for c in page.dig.project.contexts if c.phase not in (None, phase.id)]
    found = [page.dig.claims.find(Subject(level="context", id=c.id), statement) for c in elsewhere]
    held = [c for c in found if c is not None and c.verdict == "holds" and GRADE_NAMES.index(c.grade) > 1]
    return [c for c in held if not is_hint(c)]


def _shown_by(page: Page, held: Sequence[Claim]) -> str:
    """'In the Early hamlet only C06 shows it', phase by phase."""
    by_phase: dict[str, list[str]] = {}
    for claim in held:
        context = page.dig.project.context(ContextId(claim.about.id))
        phase = page.dig.project.phase(context.phase)
        by_phase.setdefault(setting.phase_name(phase) if phase else "other places", []).append(context.id)
    return "; ".join(
        f"in {name} only {ids_listed(page, ids)} {english.agreed(len(ids), 'shows', 'show')} it"
        for name, ids in by_phase.items()
    )


def _close(page: Page, readings: Sequence[PhaseReading]) -> list[Sentence]:
    """Readings of a phase that do not stand when its counts are drawn again."""
    shaky = [
        (phase, claim)
        for reading in readings
        for phase, claim in reading.claims
        if claim.stability is not None and claim.stability < UNSETTLED
    ]
    if not shaky or page.is_plain:
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
    noun = noun_of(page, _as_readings(page, claims))
    is_short = page.has_told(" as food") and " as food" in noun and not page.is_plain
    return noun.removeprefix("the use of ") if is_short else noun


def _as_readings(page: Page, claims: Sequence[Claim]) -> list[Reading]:
    statements = page.dig.packs.statements
    return [Reading(claim=c, statement=statements[c.statement], behind=()) for c in claims]


def _refs(readings: Sequence[PhaseReading]) -> list[str]:
    return [claim.id for reading in readings for _, claim in reading.claims]
