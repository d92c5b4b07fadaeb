"""The work that would firm up most: what it would lift, what it would let be told, and roughly what it costs."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from narrate.judging.columns import LevelJudged, StatementJudged
from narrate.judging.facts import CANNOT_TELL
from narrate.judging.next_dates import ToDate, best_to_date, date_step
from narrate.judging.outlook import Outcomes, outcomes, supposed
from narrate.judging.weigh import VERDICTS
from narrate.judging.work_described import COST, WorkLeft, described, many
from narrate.model.claims import GRADE_NAMES
from narrate.model.ids import SITE, Level, StatementId, Subject
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Limit, Selector

LEVELS_WORKED: tuple[Level, ...] = ("sample", "context")
"""Levels of which work is proposed; features, phases and the dig gain by what is done on their contexts."""

NOT_COUNTED = ("work",)
"""Questions for whose sake no work is proposed."""

_LIFTED_BY: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "deposit is unknown": ("record.deposit",),
        "security is unknown": ("record.security",),
        "unsorted heavy fraction": ("sort.heavy",),
        "few items": ("sort.class", "float.more"),
        "few items, wood counted": ("sort.class", "float.more"),
        "one sample": ("float.more",),
        "poor recovery": (),
        "only cf. names": ("name.cf",),
    }
)
"""Circumstance of a limit -> the work that lifts it; 'few items' only if enough items are to be expected."""

_ONLY_TO_HOLD = ("wood.identify", "float.more")
"""Work that is too slow to be done only to rule a reading out."""

_COUNTED: Mapping[str, Selector] = MappingProxyType(
    {"few items": Selector(not_role=("wood",)), "few items, wood counted": Selector()}
)
"""Circumstances of too few items -> the items that are meant."""

Steps = Mapping[Subject, tuple[NextStep, ...]]
_Judged = tuple[StatementId, StatementJudged]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Level:
    """One level as work on it is weighed."""

    judged: LevelJudged
    packs: Packs
    keys: Mapping[Subject, str]
    to_date: ToDate
    held_down: Mapping[int, Sequence[_Judged]]
    """By unit: the statements that hold and that some limit holds down."""
    told: Sequence[_Judged]
    """Statements for whose sake work is proposed."""
    samples: WorkLeft


def next_steps(
    project: Project, packs: Packs, levels: Mapping[Level, LevelJudged], keys: Mapping[Subject, str]
) -> Steps:
    """
    For every sample and context the work that would lift a limit or let something be told, the best first.

    Best is what serves most questions for its cost. For the site: what the whole dig would gain by. Work that serves
    nothing is not proposed; a subject without work is best left.
    Misleads: that the rest of a sample holds the same mix as the part that was sorted is a supposition.

    keys:   `subject_keys` of the project.
    """
    found: dict[Subject, tuple[NextStep, ...]] = {}
    to_date, samples = best_to_date(project, packs), WorkLeft(project)
    for level in LEVELS_WORKED:
        judged = levels[level]
        told = [(id, s) for id, s in judged.statements.items() if s.statement.question not in NOT_COUNTED]
        held_down: dict[int, list[_Judged]] = {}
        for id, statement in told:
            for unit in statement.limits:
                held_down.setdefault(unit, []).append((id, statement))
        found.update(
            _of_level(
                _Level(
                    judged=judged,
                    packs=packs,
                    keys=keys,
                    to_date=to_date,
                    held_down=held_down,
                    told=told,
                    samples=samples,
                )
            )
        )
        judged.look.forget()
    found[Subject(level="site", id=SITE)] = _of_dig(project, packs, levels, keys)
    return found


def steps_by_claim(steps: Steps) -> dict[str, NextStep]:
    """By claim the cheapest work that serves it: on its own subject, else on the whole dig."""
    found: dict[str, NextStep] = {}
    for subject in sorted(steps, key=lambda subject: subject.level != "site"):
        own: dict[str, NextStep] = {}
        for step in sorted(steps[subject], key=lambda step: (step.cost, step.in_order())):
            for claim in (*step.lifts, *step.turns):
                own.setdefault(claim, step)
        found.update(own)
    return found


def _of_level(here: _Level) -> dict[Subject, tuple[NextStep, ...]]:
    judged, units = here.judged, here.judged.look.units
    found: dict[Subject, list[NextStep]] = {subject: [] for subject in judged.subjects()}
    subjects = list(found)
    rules = {id: statement.rules for id, statement in judged.statements.items()}
    for work in supposed(judged.look):
        after = outcomes(work.look, rules, here.packs)
        settled = _settled(work.step, after, here)
        items = {when: work.look.units.counted(meant)[0] for when, meant in _COUNTED.items()}
        for unit in np.flatnonzero(work.where).tolist():
            lifts = [
                held
                for held in here.held_down.get(unit, ())
                if _rises(held[1], unit, work.step, items, here.packs.limits)
            ]
            turns = [here.told[i] for i in np.flatnonzero(settled[:, unit]).tolist()]
            if lifts or turns:
                found[subjects[unit]].append(_step(work.step, subjects[unit], unit, lifts, turns, here))
    for unit, subject in enumerate(subjects):
        date = date_step(units, unit, subject, judged=judged, keys=here.keys, packs=here.packs, to_date=here.to_date)
        if date is not None:
            found[date.about].append(date)
    return {subject: tuple(sorted(steps, key=NextStep.in_order)) for subject, steps in found.items()}


def _settled(step: str, after: Outcomes, here: _Level) -> np.ndarray:
    """(statements told, units): cannot be told now, and would come out as something that the work is done for."""
    width = len(here.judged.look.units.ids)
    worth = [code for code, verdict in VERDICTS.items() if verdict in _worth(step)]
    return np.array(
        [(statement.outcome == CANNOT_TELL) & np.isin(after[id], worth) for id, statement in here.told], bool
    ).reshape(-1, width)


def _step(
    step: str, subject: Subject, unit: int, lifts: Sequence[_Judged], turns: Sequence[_Judged], here: _Level
) -> NextStep:
    says, cost = described(step, here.judged.look.units, unit, here.samples)
    return NextStep(
        id=step,
        about=subject,
        says=says,
        cost=cost,
        lifts=tuple(f"{here.keys[subject]}/{id}" for id, _ in lifts),
        turns=tuple(f"{here.keys[subject]}/{id}" for id, _ in turns),
        questions=_questions([statement.statement.question for _, statement in (*lifts, *turns)], here.packs),
    )


def _worth(step: str) -> tuple[str, ...]:
    """Verdicts for whose sake the work is done on a claim that cannot be told yet."""
    return ("holds",) if step in _ONLY_TO_HOLD else ("holds", "fails")


def _questions(served: Iterable[str], packs: Packs) -> tuple[str, ...]:
    every = set(served)
    return tuple(question for question in packs.questions if question in every) + tuple(
        sorted(every - set(packs.questions))
    )


def _rises(
    held: StatementJudged, unit: int, step: str, items: Mapping[str, np.ndarray], limits: Sequence[Limit]
) -> bool:
    """Whether the grade would rise once the limits that the work lifts are gone and all others stay."""
    known = {limit.id: limit for limit in limits}
    of_unit = {when: float(counted[unit]) for when, counted in items.items()}
    return _rises_without(
        held, unit, {one.limit for one in held.limits[unit] if _is_lifted(known[one.limit], step, of_unit)}
    )


def _rises_without(held: StatementJudged, unit: int, lifted: Collection[str]) -> bool:
    caps = [GRADE_NAMES.index(one.grade) for one in held.limits[unit] if one.limit not in lifted]
    return min([*caps, int(held.unlimited[unit])]) > held.grade[unit]


def _is_lifted(limit: Limit, step: str, items: Mapping[str, float]) -> bool:
    if step not in _LIFTED_BY.get(limit.when, ()):
        return False
    return limit.when not in items or items[limit.when] >= (limit.threshold or 10)


# ---- the whole dig


def _of_dig(
    project: Project, packs: Packs, levels: Mapping[Level, LevelJudged], keys: Mapping[Subject, str]
) -> tuple[NextStep, ...]:
    site = Subject(level="site", id=SITE)
    found = []
    drafts = {limit.id for limit in packs.limits if limit.when in ("only draft rules", "only local draft rules")}
    lifted = [
        (keys[subject], held, unit)
        for judged in levels.values()
        for unit, subject in _held_down(judged)
        for held in judged.statements.values()
        if held.statement.question not in NOT_COUNTED and unit in held.limits and _rises_without(held, unit, drafts)
    ]
    rules = sorted({held.rules[i].id for _, held, unit in lifted for i in held.held(unit, "for")})
    if lifted:
        found.append(
            NextStep(
                id="review.rules",
                about=site,
                says=f"check the {many(len(rules), 'draft rule')} behind {many(len(lifted), 'reading')} against "
                f"{'its' if len(rules) == 1 else 'their'} sources",
                cost=COST["review.rules"],
                lifts=tuple(f"{key}/{held.statement.id}" for key, held, _ in lifted),
                questions=_questions([held.statement.question for _, held, _ in lifted], packs),
            )
        )
    untested = [s for s in project.samples if s.recovery_test is None]
    if untested:
        found.append(
            NextStep(
                id="test.recovery",
                about=site,
                says=f"add marked charred seeds to the next flotation: {len(untested)} of {len(project.samples)} "
                "samples had no recovery test",
                cost=COST["test.recovery"],
                questions=("integrity",),
            )
        )
    return tuple(sorted(found, key=NextStep.in_order))


def _held_down(judged: LevelJudged) -> Iterator[tuple[int, Subject]]:
    """Units of which some claim is held down by a limit."""
    held = {unit for statement in judged.statements.values() for unit in statement.limits}
    return ((unit, subject) for unit, subject in enumerate(judged.subjects()) if unit in held)
