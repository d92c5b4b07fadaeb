"""All that is worked out of a whole dig for its pages, gathered once."""

from __future__ import annotations

import numpy as np

from narrate.measures.association import association
from narrate.measures.count_table import count_table
from narrate.measures.diversity import rarefied
from narrate.measures.fields import field_shares, triangle_points
from narrate.measures.order import ordination
from narrate.measures.seasons import seasons
from narrate.measures.selection import named
from narrate.measures.units import Units
from narrate.model.ids import Level, Subject
from narrate.model.kept import Kept
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Selector
from narrate.model.studies import RarefactionCurve, Studies

SEEDS = Selector(role=("propagule", "edible", "byproduct"))
"""What samples are put in order by: wood is named from a handful of pieces and would set the axes by itself."""
NOT_WOOD = Selector(not_role=("wood",))
_STEPS = 24


def studies(project: Project, packs: Packs, kept: Kept | None = None) -> Studies:
    """
    Rarefaction, seasons, companions of crops, fields, triangle and order of the samples.

    kept:  what was worked out before of a dig with the same presences; what is worked out now is added to it.
    """
    table = count_table(project, packs)
    levels: tuple[Level, ...] = ("sample", "context", "phase", "site")
    units = {level: Units(table, level, packs, project.preservation) for level in levels}
    of_phases = "phase" if project.phases else "site"
    return Studies(
        rarefaction=rarefaction_curves(units[of_phases]),  # type: ignore[index]
        seasons=next(iter(seasons(units["site"])), None),
        associations=association(units["sample"], kept=kept),
        field_shares=(*field_shares(units["phase"]), *field_shares(units["site"])),
        triangle=triangle_points(units["context"]),
        ordination=ordination(units["sample"], SEEDS),
    )


def rarefaction_curves(units: Units, of: Selector = NOT_WOOD) -> tuple[RarefactionCurve, ...]:
    """
    Taxa to expect among ever more items of each unit, up to all of them; units in which nothing was counted are left.

    Source: the formula is that of `diversity.rarefied`.
    """
    of = named(of)
    by_taxon, total = units.counts_by_taxon(of)
    curves: list[RarefactionCurve] = []
    for unit, id in enumerate(units.ids):
        counts = by_taxon[:, 0, unit]
        items = int(total[0, unit])
        if items < 1:
            continue
        drawn = sorted({max(1, round(step)) for step in np.geomspace(1, items, _STEPS).tolist()} | {items})
        expected = [float(rarefied(counts, counts.sum(), number)) for number in drawn]
        curves.append(
            RarefactionCurve(
                subject=Subject(level=units.level, id=id),
                items=items,
                taxa=int(np.count_nonzero(counts)),
                points=tuple(zip(drawn, expected, strict=True)),
            )
        )
    return tuple(curves)
