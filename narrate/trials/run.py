"""The whole record: usual worlds, worlds drawn otherwise, and worlds in which one assumption is broken."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from narrate.model.packs import Packs
from narrate.model.track_record import TrackRecord
from narrate.trials.activities import Region, Trial
from narrate.trials.east import EAST
from narrate.trials.europe import EUROPE
from narrate.trials.judged import Outcome, evidence_of, outcomes
from narrate.trials.record import Told, by_circumstance, by_grade, by_statement, missed_of, told
from narrate.trials.simulate import Dug, simulate
from narrate.trials.southwest import SOUTHWEST
from narrate.trials.worlds import BREAKABLE

REGIONS: Mapping[str, Region] = {region.name: region for region in (EAST, SOUTHWEST, EUROPE)}
REPLICATES = 40
"""Draws of the counts that stand for the two hundred of a project's own claims."""
SEED = 20261
"""Worlds of the record; those of fitting have other seeds."""

ELSEWHERE: Mapping[str, Trial] = {
    "poorer deposits": Trial(richness=0.3),
    "richer deposits": Trial(richness=3.0),
    "wilder spread": Trial(noise=2.0),
    "every hamlet does everything": Trial(is_usual=True),
}
"""Worlds drawn otherwise than those that weights and limits were set on."""


def track_record(
    packs: Mapping[str, Packs],
    *,
    digs: int = 100,
    seed: int = SEED,
    progress: Callable[[str], None] = lambda step: None,
) -> TrackRecord:
    """
    The record of the rules in force, over `digs` digs of 20 contexts in each of the regions given.

    packs:  region -> its packs, a project's own rules among them.
    digs:   of the usual worlds; worlds drawn otherwise, and broken ones, take a third as many.
    Source: hit rates by Clopper & Pearson 1934 (see `measures.intervals`); the worlds are the model of this room.
    """
    progress("simulating usual digs")
    usual = claims_of(packs, Trial(digs=digs), seed)
    few = max(digs // 3, 1)
    lines = [*by_grade(usual), *by_statement(usual), *by_circumstance(usual)]
    for name, trial in ELSEWHERE.items():
        progress(f"simulating digs: {name}")
        lines.extend(by_grade(claims_of(packs, replace(trial, digs=few), seed + 1), "elsewhere", name))
    for name in BREAKABLE:
        progress(f"simulating digs: {name}")
        lines.extend(by_grade(claims_of(packs, Trial(digs=few, broken=frozenset({name})), seed + 2), "broken", name))
    return TrackRecord(
        contexts=usual.contexts,
        claims=int(usual.is_true.size),
        false_claims=int((~usual.is_true).sum()),
        seed=seed,
        lines=tuple(lines),
        missed=missed_of(usual),
    )


def claims_of(packs: Mapping[str, Packs], trial: Trial, seed: int) -> Told:
    """Claims about contexts of simulated digs of every region given, with what was true."""
    return told([judged_run(REGIONS[name], packs[name], trial, seed + i) for i, name in enumerate(sorted(packs))])


def judged_run(region: Region, packs: Packs, trial: Trial, seed: int) -> tuple[Dug, dict[str, Outcome]]:
    """Digs of one region and all their contexts judged."""
    dug = simulate(region, packs, trial, seed)
    evidence = evidence_of(dug.table, dug.records, packs, region.preservation, replicates=REPLICATES, seed=seed)
    return dug, outcomes(evidence, packs)
