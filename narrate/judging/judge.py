"""All statements judged for all subjects."""

from __future__ import annotations

from narrate.judging.claims_by_subject import claims_of
from narrate.judging.columns import LevelJudged, level_judged, rules_of
from narrate.judging.criteria import Look
from narrate.judging.depth import WHOLE, Depth
from narrate.judging.facts import recorded
from narrate.judging.kept_units import KeptUnits
from narrate.judging.next_steps import next_steps
from narrate.judging.redrawn import DrawsMade, Redrawn
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.at_once import AtOnce, in_turn
from narrate.model.claims import DRAWS, Claims
from narrate.model.ids import LEVELS, Level
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import subject_keys

__all__ = ["REPLICATES", "SEED", "judge", "rules_of"]

REPLICATES = DRAWS
SEED = 20260


def judge(
    project: Project,
    packs: Packs,
    *,
    replicates: int = REPLICATES,
    seed: int = SEED,
    depth: Depth = WHOLE,
    kept: KeptUnits | None = None,
    at_once: AtOnce = in_turn,
) -> Claims:
    """
    Claims of every sample, context, feature and phase, and of the site, in a fixed order.

    Verdicts are worked out for all units at once and kept in columns; a claim is made of them when somebody asks.

    replicates:  draws of the counts for stability; 0 leaves stability out.
    seed:        the same seed gives the same stability.
    depth:       what is slow to work out, for who shows it.
    kept:        what was worked out of units before, with the same packs; what is worked out now is added to it.
                 None: nothing is kept.
    at_once:     does what can be done at once for some of the units and for others.
    """
    table = count_table(project, packs)
    made = DrawsMade(table, replicates, seed) if replicates else None
    records = recorded(project, packs)
    keys = subject_keys(project)
    phases = Units(table, "phase", packs, project.preservation)
    levels: dict[Level, LevelJudged] = {}
    for level in LEVELS:
        units = phases if level == "phase" else Units(table, level, packs, project.preservation)
        look = Look(units, phases, records)
        redrawn = None if made is None else Redrawn(look, made, packs)
        levels[level] = level_judged(look, redrawn, packs, kept, depth=depth, at_once=at_once)
    steps = next_steps(project, packs, levels, keys)
    return claims_of(levels, steps, packs, keys)
