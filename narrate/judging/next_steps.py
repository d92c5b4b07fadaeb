"""The work that would firm up most: what it would lift, what it would let be told, and roughly what it costs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

import numpy as np

from narrate.judging.criteria import Look
from narrate.judging.next_dates import DATE_COST, ToDate, best_to_date, date_step
from narrate.judging.outlook import PLANTS, WOOD, WOOD_ENOUGH, Outcomes, Supposed, outcomes, supposed
from narrate.judging.weigh import VERDICTS
from narrate.measures.units import Units
from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.ids import SITE, Level, StatementId, Subject
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Limit, Rule, Selector

LEVELS_WORKED: tuple[Level, ...] = ("sample", "context")
"""Levels of which work is proposed; features, phases and the dig gain by what is done on their contexts."""

COST: Mapping[str, int] = MappingProxyType(
    {
        "record.deposit": 1,
        "record.security": 1,
        "record.heavy": 1,
        "record.volume": 1,
        "sort.heavy": 2,
        "name.cf": 2,
        "wood.identify": 3,
        "float.more": 4,
        "date.item": DATE_COST,
        "review.rules": 3,
        "test.recovery": 2,
    }
)
"""Rough order of cost, see `next_steps.COSTS` of the model; a class to sort costs by what is left of it."""

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
RulesOf = Callable[[Level], Mapping[StatementId, tuple[Rule, ...]]]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Level:
    """One level as work on it is weighed."""

    look: Look
    rules: Mapping[StatementId, tuple[Rule, ...]]
    packs: Packs
    project: Project
    claims: Mapping[Subject, tuple[Claim, ...]]
    to_date: ToDate


def next_steps(
    project: Project,
    packs: Packs,
    looks: Mapping[Level, Look],
    rules: Mapping[Level, Mapping[StatementId, tuple[Rule, ...]]],
    claims: Mapping[Subject, tuple[Claim, ...]],
) -> Steps:
    """
    For every sample and context the work that would lift a limit or let something be told, the best first.

    Best is what serves most questions for its cost. For the site: what the whole dig would gain by. Work that serves
    nothing is not proposed; a subject without work is best left.
    Misleads: that the rest of a sample holds the same mix as the part that was sorted is a supposition.
    """
    found: dict[Subject, tuple[NextStep, ...]] = {}
    to_date = best_to_date(project, packs)
    for level in LEVELS_WORKED:
        here = _Level(
            look=looks[level], rules=rules[level], packs=packs, project=project, claims=claims, to_date=to_date
        )
        found.update(_of_level(here))
    found[Subject(level="site", id=SITE)] = _of_dig(project, packs, claims)
    return found


def with_next_steps(claims: Mapping[Subject, tuple[Claim, ...]], steps: Steps) -> dict[Subject, tuple[Claim, ...]]:
    """The claims, each with the cheapest work that serves it: on its own subject, else on the whole dig."""
    of_dig = steps.get(Subject(level="site", id=SITE), ())
    of_dig_by_claim = _by_claim(of_dig)
    found = {}
    for subject, own in claims.items():
        by_claim = of_dig_by_claim | _by_claim(steps.get(subject, ())) if subject.level != "site" else of_dig_by_claim
        found[subject] = tuple(replace(c, next_step=by_claim[c.id]) if c.id in by_claim else c for c in own)
    return found


def _by_claim(steps: Iterable[NextStep]) -> dict[str, NextStep]:
    found: dict[str, NextStep] = {}
    for step in sorted(steps, key=lambda step: (step.cost, step.in_order())):
        for claim in (*step.lifts, *step.turns):
            found.setdefault(claim, step)
    return found


def _of_level(here: _Level) -> dict[Subject, tuple[NextStep, ...]]:
    units = here.look.units
    found: dict[Subject, list[NextStep]] = {Subject(level=units.level, id=id): [] for id in units.ids}
    for work in supposed(here.look):
        after = outcomes(work.look, here.rules, here.packs)
        for unit in np.flatnonzero(work.where).tolist():
            step = _step(work, after, unit, here)
            if step.pays:
                found[step.about].append(step)
    for unit, id in enumerate(units.ids):
        subject = Subject(level=units.level, id=id)
        date = date_step(units, unit, subject, claims=here.claims[subject], packs=here.packs, to_date=here.to_date)
        if date is not None:
            found[date.about].append(date)
    return {subject: tuple(sorted(steps, key=NextStep.in_order)) for subject, steps in found.items()}


def _step(work: Supposed, after: Outcomes, unit: int, here: _Level) -> NextStep:
    units = here.look.units
    subject = Subject(level=units.level, id=units.ids[unit])
    says, cost = _described(work.step, units, unit, here.project)
    items = {when: float(work.look.units.counted(meant)[0, unit]) for when, meant in _COUNTED.items()}
    lifts, turns = [], []
    for claim in here.claims[subject]:
        if claim.question in NOT_COUNTED:
            continue
        if claim.verdict == "holds" and _rises(claim, work.step, items, here.packs.limits):
            lifts.append(claim)
        if claim.verdict == "cannot tell" and VERDICTS[int(after[claim.statement][unit])] in _worth(work.step):
            turns.append(claim)
    return NextStep(
        id=work.step,
        about=subject,
        says=says,
        cost=cost,
        lifts=tuple(c.id for c in lifts),
        turns=tuple(c.id for c in turns),
        questions=_questions((*lifts, *turns), here.packs),
    )


def _worth(step: str) -> tuple[str, ...]:
    """Verdicts for whose sake the work is done on a claim that cannot be told yet."""
    return ("holds",) if step in _ONLY_TO_HOLD else ("holds", "fails")


def _questions(claims: Sequence[Claim], packs: Packs) -> tuple[str, ...]:
    served = {claim.question for claim in claims}
    return tuple(question for question in packs.questions if question in served) + tuple(
        sorted(served - set(packs.questions))
    )


def _rises(claim: Claim, step: str, items: Mapping[str, float], limits: Sequence[Limit]) -> bool:
    """Whether the grade would rise once the limits that the work lifts are gone and all others stay."""
    if not claim.limits or claim.unlimited is None:
        return False
    known = {limit.id: limit for limit in limits}
    left = [held for held in claim.limits if not _is_lifted(known[held.limit], step, items)]
    caps = [GRADE_NAMES.index(held.grade) for held in left]
    return min([*caps, GRADE_NAMES.index(claim.unlimited)]) > GRADE_NAMES.index(claim.grade)


def _is_lifted(limit: Limit, step: str, items: Mapping[str, float]) -> bool:
    if step not in _LIFTED_BY.get(limit.when, ()):
        return False
    return limit.when not in items or items[limit.when] >= (limit.threshold or 10)


# ---- what to do, in words


def _described(step: str, units: Units, unit: int, project: Project) -> tuple[str, int]:
    samples = [str(units.table.sample_ids[s]) for s in units.samples_of(unit)]
    name = units.ids[unit]
    if units.level == "sample" and step.startswith("record."):
        # How a deposit formed is written down for the context.
        name = next(str(s.context) for s in project.samples if s.id == name)
    if step == "sort.class":
        return _class_described(units, unit, project)
    if step == "wood.identify":
        named = int(units.counted(WOOD)[0, unit])
        more = WOOD_ENOUGH - named
        return f"identify {more}{' more' if named else ''} wood fragment{'s' * (more != 1)} of {name}", COST[step]
    if step == "name.cf":
        return f"have another look at {_uncertain(units, unit)} of {name}", COST[step]
    if step == "sort.heavy":
        return f"sort the heavy fraction of {listed(_heavy_left(project, samples))}", COST[step]
    return _SAID[step].format(name=name, samples=listed(samples)), COST[step]


_SAID: Mapping[str, str] = MappingProxyType(
    {
        "record.deposit": "write down how the deposit of {name} formed, if the field notes tell",
        "record.security": "write down whether {name} was sealed, if the field notes tell",
        "record.heavy": "write down whether the heavy fraction of {samples} was sorted",
        "record.volume": "write down the volume of {samples}, if the field notes tell",
        "float.more": "float a second sample from {name}, if sediment was kept",
    }
)


def _class_described(units: Units, unit: int, project: Project) -> tuple[str, int]:
    """The classes that were sorted in part, with what the rest lets expect."""
    own = {str(units.table.sample_ids[s]) for s in units.samples_of(unit)}
    left: dict[str, list[str]] = {}
    for sample in project.samples:
        if sample.id in own:
            for size in sample.size_classes:
                if size.proportion_sorted < 1:
                    left.setdefault(size.name, []).append(str(sample.id))
    what = " and ".join(f"the {name} class of {listed(ids)}" for name, ids in left.items())
    items, taxa = expected(units, unit)
    counted = float(units.counted(PLANTS)[0, unit])
    more = "no new taxon" if taxa < 0.5 else f"about {taxa:.0f} more tax{'on' if round(taxa) == 1 else 'a'}"
    narrower = 1 - np.sqrt(counted / (counted + items)) if counted + items > 0 else 0.0
    says = f"finish {what}: {more} expected" + (f", intervals {narrower:.0%} narrower" if narrower >= 0.05 else "")
    return says, 2 if items <= 50 else 3 if items <= 500 else 4


def expected(units: Units, unit: int) -> tuple[float, float]:
    """
    Items and new taxa that the unsorted rest of a unit lets expect, wood left out.

        m = Σ kᵢ(1 − fᵢ)/fᵢ;   S(n + m) − S(n) = f₀[1 − (1 − f₁/(n·f₀ + f₁))ᵐ]

    n items counted, f₁ and f₂ taxa found once and twice, f₀ = f₁(f₁ − 1)/2(f₂ + 1) taxa at least not yet seen.
    Source: Chao 1984, Scandinavian Journal of Statistics 11:265–270; Colwell et al. 2012, Journal of Plant Ecology
    5:3–21, eq. 9 (both from memory).
    Misleads: that the rest of a class holds the same mix as what was sorted is a supposition.
    """
    rows = units.rows_of(unit, PLANTS)
    table = units.table
    items = float((table.counted[0, rows] * (1 - table.share[rows]) / table.share[rows]).sum()) if rows.size else 0.0
    by_taxon: dict[object, float] = {}
    for row in rows.tolist():
        kind = table.kinds[table.row_kind[row]]
        name = kind.taxon or kind.either or kind.written
        by_taxon[name] = by_taxon.get(name, 0.0) + float(table.counted[0, row])
    counts = [count for count in by_taxon.values() if count > 0]
    n, once, twice = sum(counts), counts.count(1.0), counts.count(2.0)
    unseen = once * (once - 1) / (2 * (twice + 1))
    if not n or not unseen or not items:
        return items, 0.0
    return items, unseen * (1 - (1 - once / (n * unseen + once)) ** items)


def _uncertain(units: Units, unit: int) -> str:
    table = units.table
    every = units.rows_of(unit, Selector(any_condition=True)).tolist()
    rows = [r for r in every if table.is_noted[r] and _is_cf(units, r)]
    items = int(table.counted[0, rows].sum()) if rows else 0
    names = listed(sorted({table.written[r] for r in rows}))
    return f"the {items} items named '{names}'" if items > 1 else f"what is named '{names}'"


def _is_cf(units: Units, row: int) -> bool:
    kind = units.table.kinds[units.table.row_kind[row]]
    return not kind.is_certain and not kind.either


def _heavy_left(project: Project, samples: Sequence[str]) -> list[str]:
    left = {str(s.id) for s in project.samples if s.heavy_fraction is not None and s.heavy_fraction.sorted is False}
    return [id for id in samples if id in left]


def listed(names: Sequence[str]) -> str:
    """
    Names in a row, the fourth and later ones counted.

    >>> listed(["S1"]), listed(["S1", "S2", "S3"]), listed(["S1", "S2", "S3", "S4", "S5"])
    ('S1', 'S1, S2 and S3', 'S1, S2, S3 and 2 others')
    """
    if len(names) == 1:
        return names[0]
    shown = list(names[:3])
    more = len(names) - 3
    last = shown.pop() if more <= 0 else f"{more} other{'s' * (more > 1)}"
    return f"{', '.join(shown)} and {last}"


# ---- the whole dig


def _of_dig(project: Project, packs: Packs, claims: Mapping[Subject, tuple[Claim, ...]]) -> tuple[NextStep, ...]:
    every = [claim for own in claims.values() for claim in own if claim.question not in NOT_COUNTED]
    site = Subject(level="site", id=SITE)
    found = []
    drafts = {limit.id for limit in packs.limits if limit.when in ("only draft rules", "only local draft rules")}
    lifted = [c for c in every if _rises_without(c, drafts)]
    rules = sorted({a.rule for c in lifted for a in c.held("for")})
    if lifted:
        found.append(
            NextStep(
                id="review.rules",
                about=site,
                says=f"check the {_many(len(rules), 'draft rule')} behind {_many(len(lifted), 'reading')} against "
                f"{'its' if len(rules) == 1 else 'their'} sources",
                cost=COST["review.rules"],
                lifts=tuple(c.id for c in lifted),
                questions=_questions(lifted, packs),
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


def _many(number: int, noun: str) -> str:
    return f"{number} {noun}{'s' * (number != 1)}"


def _rises_without(claim: Claim, lifted: set[str]) -> bool:
    if claim.verdict != "holds" or not claim.limits or claim.unlimited is None:
        return False
    caps = [GRADE_NAMES.index(held.grade) for held in claim.limits if held.limit not in lifted]
    return min([*caps, GRADE_NAMES.index(claim.unlimited)]) > GRADE_NAMES.index(claim.grade)
