"""What would best be dated: items of doubtful age, and the first of each phase that no measured date holds."""

from __future__ import annotations

import re
from collections.abc import Mapping

import numpy as np

from narrate.judging.columns import LevelJudged
from narrate.judging.facts import FAILS, HOLDS
from narrate.measures.dating import dating_candidates
from narrate.measures.units import Units
from narrate.model.dating import DatingCandidate
from narrate.model.ids import PhaseId, StatementId, Subject, TaxonId
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Selector
from narrate.model.stratigraphy import Phase

DATE_COST = 5
DATE_CANDIDATE = StatementId("work.date-candidate")
OUT_OF_PERIOD = StatementId("integrity.out-of-period")
ToDate = Mapping[str, tuple[Phase, DatingCandidate]]
MEASURED = re.compile(
    r"radiocarbon|\b14c\b|\bc-?14\b|\bams\b|tree.?ring|dendro|archaeomagn|luminescence|\bosl\b|\bcoins?\b",
    re.IGNORECASE,
)
"""Words by which the basis of a phase says that something of it was dated by itself."""


def best_to_date(project: Project, packs: Packs) -> ToDate:
    """The best item of each phase without a measured date, under the ids of its sample and its context."""
    phase_of = {context.id: context.phase for context in project.contexts}
    undated = {phase.id: phase for phase in project.phases if not MEASURED.search(phase.basis)}
    found: dict[str, tuple[Phase, DatingCandidate]] = {}
    for candidate in dating_candidates(project, packs).candidates if undated else ():
        phase = undated.pop(phase_of.get(candidate.context) or PhaseId(""), None)
        if phase is not None:
            found[str(candidate.sample)] = found[str(candidate.context)] = (phase, candidate)
    return found


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
    """Dating, where what is fit for it lies in a deposit of doubtful age, or ranks first in an undated phase."""
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
    row = rows[units.table.counted[0, rows].argmax()]
    kind = units.table.kinds[units.table.row_kind[row]]
    taxon = packs.taxa.get(kind.taxon) if kind.taxon is not None else None
    name = (taxon.trade_name or taxon.name or taxon.id) if taxon is not None else units.table.written[row]
    return NextStep(
        id="date.item",
        about=subject,
        says=f"date one {name} {kind.part} of {units.ids[unit]}, if its owners agree",
        cost=DATE_COST,
        turns=() if code in (None, FAILS) else (f"{keys[subject]}/{OUT_OF_PERIOD}",),
        questions=("integrity",),
    )


def _date_of_phase(subject: Subject, packs: Packs, to_date: ToDate) -> NextStep | None:
    """Dating what ranks first in a phase that rests on no measured date."""
    found = to_date.get(subject.id)
    if found is None:
        return None
    phase, candidate = found
    taxon = packs.taxa.get(TaxonId(candidate.taxon))
    name = (taxon.trade_name or taxon.name or taxon.id) if taxon is not None else candidate.taxon
    return NextStep(
        id="date.item",
        about=subject,
        says=f"date one {name} {candidate.part} of {subject.id}, if its owners agree: phase '{phase.name}' rests on no "
        "measured date",
        cost=DATE_COST,
        questions=("integrity",),
    )
