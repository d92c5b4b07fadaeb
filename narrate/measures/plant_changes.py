"""Single plants put to the test: whether they lie in more samples of one phase than of another, all allowed for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from narrate.measures.comparison import fisher
from narrate.measures.significance import holm
from narrate.model.findings import Tally
from narrate.model.ids import TaxonId
from narrate.model.packs import Packs
from narrate.model.plant_groups import PlantChange
from narrate.model.project import Project

ENOUGH_SAMPLES = 5
"""A plant in fewer samples of the two phases is not tested: hardly any split of so few would differ beyond chance
(judgement of the makers)."""
RANKS = ("species", "genus", "group")
"""Ranks of names that are a plant; families and their like are many."""


def plant_changes(project: Project, packs: Packs, found: Mapping[str, Sequence[Tally]]) -> tuple[PlantChange, ...]:
    """
    For every two phases, the earlier first: each plant found in enough samples, the least likely difference first.

    found:     the tallies of each sample.
    Leaves:    wood, which was looked at in part of the samples; remains that are not ancient; names above the genus.
    Misleads:  samples of one context are not independent, which makes p too small.
    Source:    Popper 1988 for ubiquity; Fisher 1934; Holm 1979 (both from memory).
    """
    phases = {context.id: context.phase for context in project.contexts}
    sizes: dict[str, int] = {}
    holding: dict[TaxonId, dict[str, list[str]]] = {}
    ancient = packs.words.preservations.get(project.preservation) or ("charred", "partly charred")
    for sample in project.samples:
        phase = phases[sample.context]
        if phase is None:
            continue
        sizes[phase] = sizes.get(phase, 0) + 1
        seen: dict[TaxonId, str] = {}
        for tally in found.get(sample.id, ()):
            if tally.taxon is not None and tally.condition in ancient and _is_a_plant(packs, tally):
                seen.setdefault(tally.taxon, tally.ref)
        for taxon, ref in seen.items():
            holding.setdefault(taxon, {}).setdefault(phase, []).append(ref)
    dated = sorted(project.phases, key=lambda phase: (phase.start is None, phase.start or 0))
    ids = [phase.id for phase in dated if phase.id in sizes]
    pairs = [(first, last) for i, first in enumerate(ids) for last in ids[i + 1 :]]
    return tuple(change for first, last in pairs for change in _tested(first, last, sizes, holding))


def _tested(first, last, sizes, holding) -> list[PlantChange]:  # type: ignore[no-untyped-def]
    refs = {taxon: (*there.get(first, ()), *there.get(last, ())) for taxon, there in holding.items()}
    taxa = sorted(taxon for taxon, there in refs.items() if len(there) >= ENOUGH_SAMPLES)
    if not taxa:
        return []
    with_it = [tuple(len(holding[taxon].get(phase, ())) for phase in (first, last)) for taxon in taxa]
    k1, k2 = (np.array(k, float) for k in zip(*with_it, strict=True))
    n1, n2 = (np.full(len(taxa), float(sizes[phase])) for phase in (first, last))
    p = fisher(k1, n1, k2, n2)
    corrected = holm(p)
    made = [
        PlantChange(
            taxon=taxon,
            first=first,
            last=last,
            with_it=(with_it[i][0], with_it[i][1]),
            of_samples=(sizes[first], sizes[last]),
            p=float(p[i]),
            p_holm=float(corrected[i]),
            tested=len(taxa),
            refs=tuple(ref for ref in refs[taxon] if ref),
        )
        for i, taxon in enumerate(taxa)
    ]
    return sorted(made, key=lambda change: (change.p, change.taxon))


def _is_a_plant(packs: Packs, tally: Tally) -> bool:
    taxon, part = packs.taxa.get(tally.taxon), packs.words.parts.get(tally.part)  # type: ignore[arg-type]
    return taxon is not None and taxon.rank in RANKS and (part is None or "wood" not in part.roles)
