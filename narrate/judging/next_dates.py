"""What would best be dated: finds of doubtful age by themselves, and the first of a phase without a measured date."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from narrate.judging.columns import LevelJudged
from narrate.judging.facts import FAILS, HOLDS
from narrate.measures.dating import ENOUGH_G, dating_candidates
from narrate.measures.units import Units
from narrate.model.dating import DatingCandidate
from narrate.model.ids import ContextId, PhaseId, StatementId, Subject, TaxonId
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Selector
from narrate.model.signs import pattern
from narrate.model.stratigraphy import Phase

DATE_COST = 5
DATE_CANDIDATE = StatementId("work.date-candidate")
OUT_OF_PERIOD = StatementId("integrity.out-of-period")
_DISTURBED = StatementId("integrity.disturbed")
OF_ITSELF = "date.own"
"""Id of the step that dates one find whose own age is in doubt."""
FEW = 0.05
"""Share of a crop's items that an earlier phase holds, from which down they may be of the later (judgement)."""
ENOUGH_LATER = 50
"""Items of a crop in the later phase below which none of this is said (judgement of the makers)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToDate:
    """What would best be dated, under the ids of its sample and its context."""

    first: Mapping[str, tuple[Phase, DatingCandidate]]
    """The best item of each phase without a measured date."""
    early: Mapping[str, tuple[Phase, DatingCandidate, int, int]]
    """The best of a crop's few finds before the phase that holds most of it, with the items of both."""
    beside_modern: frozenset[str] = frozenset()
    """Samples and contexts that held things of later times, among which the date of a stray would tell nothing."""


MEASURED = re.compile(
    r"radiocarbon|\b14c\b|\bc-?14\b|\bams\b|tree.?ring|dendro|archaeomagn|luminescence|\bosl\b|\bcoins?\b",
    re.IGNORECASE,
)
"""Words by which the basis of a phase says that something of it was dated by itself."""


def best_to_date(project: Project, packs: Packs) -> ToDate:
    """The best item of each phase without a measured date, and of each crop of which a phase holds few, early finds."""
    phase_of = {context.id: context.phase for context in project.contexts}
    undated = {phase.id: phase for phase in project.phases if not MEASURED.search(phase.basis)}
    few = _few_and_early(project, packs, phase_of)
    first: dict[str, tuple[Phase, DatingCandidate]] = {}
    early: dict[str, tuple[Phase, DatingCandidate, int, int]] = {}
    best: dict[tuple[PhaseId, str], DatingCandidate] = {}
    for candidate in dating_candidates(project, packs).candidates if undated or few else ():
        place = phase_of.get(candidate.context) or PhaseId("")
        phase = undated.pop(place, None)
        if phase is not None:
            first[str(candidate.sample)] = first[str(candidate.context)] = (phase, candidate)
        crop = (place, candidate.taxon)
        if crop in few and "the name is not certain" not in candidate.doubts:
            best[crop] = min(best.get(crop, candidate), candidate, key=_for_its_own_age)
    for crop, candidate in best.items():
        early[str(candidate.sample)] = early[str(candidate.context)] = (few[crop][0], candidate, *few[crop][1:])
    return ToDate(first=first, early=early, beside_modern=_beside_modern(project, packs))


def _for_its_own_age(candidate: DatingCandidate) -> tuple[bool, bool, bool, float, int]:
    """What best tells the age of a doubtful find: sealed, away from modern finds, weighed and heavy enough, large."""
    one = (candidate.mass_g or 0.0) / max(candidate.items, 1)
    is_stirred = any(doubt.startswith("the sample holds") for doubt in candidate.doubts)
    return candidate.security != "sealed", is_stirred, one < ENOUGH_G, -round(one, 6), candidate.rank


def _beside_modern(project: Project, packs: Packs) -> frozenset[str]:
    """Samples whose heavy fraction held coal, wire or glass, and their contexts."""
    seen = [pattern(o.phrases) for o in packs.observations if o.noted_of == "heavy" and _DISTURBED in o.agrees_with]
    found = [
        sample
        for sample in project.samples
        if sample.heavy_fraction is not None
        and any(known.search(name.replace("_", " ")) for known in seen for name in sample.heavy_fraction.finds)
    ]
    return frozenset(str(id) for sample in found for id in (sample.id, sample.context))


def _few_and_early(
    project: Project, packs: Packs, phase_of: Mapping[ContextId, PhaseId | None]
) -> dict[tuple[PhaseId, str], tuple[Phase, int, int]]:
    """By phase and crop: items there, where they are few beside what a later phase holds, and the items there."""
    of_sample = {sample.id: phase_of.get(sample.context) for sample in project.samples}
    counted: Counter[tuple[TaxonId, PhaseId]] = Counter()
    for row in project.counts:
        taxon, phase = row.identification.taxon, of_sample.get(row.sample)
        if taxon is None or phase is None or row.condition not in ("charred", "partly charred"):
            continue
        part = packs.words.parts.get(row.part)
        if packs.taxa[taxon].status == "crop" and (part is None or "wood" not in part.roles):
            counted[taxon, phase] += row.count.number or 0
    dated = [phase for phase in project.phases if phase.start is not None]
    found: dict[tuple[PhaseId, str], tuple[Phase, int, int]] = {}
    for taxon in sorted({taxon for taxon, _ in counted}):
        for own in dated:
            here = counted[taxon, own.id]
            later = max((counted[taxon, p.id] for p in dated if _starts(p) > _starts(own)), default=0)
            if 0 < here <= FEW * later and later >= ENOUGH_LATER:
                found[own.id, str(taxon)] = (own, here, later)
    return found


def _starts(phase: Phase) -> float:
    return float("inf") if phase.start is None else phase.start


def date_step(
    units: Units,
    unit: int,
    subject: Subject,
    *,
    judged: LevelJudged,
    keys: Mapping[Subject, str],
    packs: Packs,
    to_date: ToDate,
) -> NextStep | None:
    """
    Dating, where a find is later than its deposit or may be, where what is fit for it lies in a deposit of doubtful
    age, or where it ranks first in an undated phase.
    """
    is_stirred = subject.id in to_date.beside_modern
    stray = None if is_stirred else _date_of_a_stray(units, unit, subject, judged, packs)
    own = stray or _date_of_the_early(subject, packs, to_date)
    if own is not None:
        return own
    if not judged.holds(DATE_CANDIDATE, unit):
        return None
    doubt = judged.statements.get(OUT_OF_PERIOD)
    code = None if doubt is None else int(doubt.outcome[unit])
    is_undated = not np.isfinite(units.table.phase_end[units.level][unit])
    if not (is_undated or code == HOLDS):
        return _date_of_phase(subject, packs, to_date)
    rows = units.rows_of(unit, Selector(status=("crop",), role=("propagule",), is_certain=True))
    if not rows.size:
        rows = units.rows_of(unit, Selector(tag=("nut",), role=("nutshell",), is_certain=True))
    if not rows.size:
        return None
    find = _commonest(units, rows, packs)
    return NextStep(
        id="date.item",
        about=subject,
        says=f"date one {find} of {units.ids[unit]}, if its owners agree",
        cost=DATE_COST,
        turns=() if code in (None, FAILS) else (f"{keys[subject]}/{OUT_OF_PERIOD}",),
        questions=("integrity",),
    )


def _commonest(units: Units, rows: np.ndarray, packs: Packs) -> str:
    """'maize kernel': the find that most of are counted among some rows."""
    row = rows[units.table.counted[0, rows].argmax()]
    kind = units.table.kinds[units.table.row_kind[row]]
    return f"{_named(kind.taxon, packs) or units.table.written[row]} {kind.part}"


def _named(id: TaxonId | None, packs: Packs) -> str:
    taxon = packs.taxa.get(id) if id is not None else None
    return (taxon.trade_name or taxon.name or taxon.id) if taxon is not None else str(id or "")


def _date_of_a_stray(units: Units, unit: int, subject: Subject, judged: LevelJudged, packs: Packs) -> NextStep | None:
    """Dating by itself a find of a plant that came later than the phase, where its deposit holds one."""
    if OUT_OF_PERIOD not in judged.statements or not judged.holds(OUT_OF_PERIOD, unit):
        return None
    rows = units.rows_of(unit, Selector(tag=("old-world",), later_than_phase=True))
    rows = rows[units.table.counted[0, rows] > 0] if rows.size else rows
    if not rows.size:
        return None
    find = _commonest(units, rows, packs)
    return NextStep(
        id=OF_ITSELF,
        about=subject,
        says=f"date one {find} of {units.ids[unit]} by itself (AMS), if its owners agree: the plant came "
        "to the region after the phase, and only a date tells when this find did",
        cost=DATE_COST,
        questions=("integrity",),
    )


def _date_of_the_early(subject: Subject, packs: Packs, to_date: ToDate) -> NextStep | None:
    """Dating by itself one of the few finds of a crop that precede the phase in which it is common."""
    found = to_date.early.get(subject.id)
    if found is None:
        return None
    phase, candidate, here, later = found
    name = _named(TaxonId(candidate.taxon), packs)
    where = subject.id if subject.level == "sample" else f"{subject.id} ({candidate.sample})"
    many = f"the {here:,} remains" if here > 1 else "the single find"
    return NextStep(
        id=OF_ITSELF,
        about=subject,
        says=f"date one {name} {candidate.part} of {where} by itself (AMS), if its owners agree: {many} of {name} "
        f"in phase '{phase.name}', beside {later:,} later ones, may have come down from later soil",
        cost=DATE_COST,
        questions=("integrity",),
    )


def _date_of_phase(subject: Subject, packs: Packs, to_date: ToDate) -> NextStep | None:
    """Dating what ranks first in a phase that rests on no measured date."""
    found = to_date.first.get(subject.id)
    if found is None:
        return None
    phase, candidate = found
    name = _named(TaxonId(candidate.taxon), packs)
    return NextStep(
        id="date.item",
        about=subject,
        says=f"date one {name} {candidate.part} of {subject.id}, if its owners agree: phase '{phase.name}' rests on no "
        "measured date",
        cost=DATE_COST,
        questions=("integrity",),
    )
