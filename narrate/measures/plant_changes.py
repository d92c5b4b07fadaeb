"""Single plants put to the test: whether they lie in more samples of one phase than of another, all allowed for."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

import numpy as np

from narrate.measures.comparison import fisher
from narrate.measures.significance import holm
from narrate.model.findings import Tally
from narrate.model.ids import ContextId, PhaseId, TaxonId
from narrate.model.packs import Packs
from narrate.model.plant_groups import PlantChange
from narrate.model.project import Project

ENOUGH_SAMPLES = 5
"""A plant in fewer samples of the two phases is not tested: hardly any split of so few would differ beyond chance
(judgement of the makers)."""
RANKS = ("species", "genus", "group")
"""Ranks of names that are a plant; families and their like are many."""


CHANCE = 0.05
"""Chance of a difference from which it is not held to be one. Convention."""
MOST_CONTEXTS = 200
"""Contexts up to which each is left out in turn."""


def plant_changes(project: Project, packs: Packs, found: Mapping[str, Sequence[Tally]]) -> tuple[PlantChange, ...]:
    """
    For every two phases, the earlier first: each plant found in enough samples, the least likely difference first.

    found:     the tallies of each sample.
    Leaves:    wood, which was looked at in part of the samples; remains that are not ancient; names above the genus.
    Misleads:  samples of one context are not independent, which makes p too small. Beside it stand the same test by
               contexts, and the contexts without which the difference would not outlast the correction.
    Source:    Popper 1988 for ubiquity; Fisher 1934; Holm 1979 (all from memory); that one observation is left out at a
               time: common practice, no source.
    """
    return _changes(project, packs, found, is_wood=False)


def wood_changes(
    project: Project, packs: Packs, found: Mapping[str, Sequence[Tally]], looked_at: Collection[str]
) -> tuple[PlantChange, ...]:
    """
    The same for each wood, in the samples whose wood was looked at; woods named no further than hardwood are left out.

    looked_at: samples whose wood was looked at and named.
    Misleads:  as above; timber of a building is no fuel, and turns the woods of a phase without any change of the land.
    Source:    as above.
    """
    return _changes(project, packs, {id: found.get(id, ()) for id in looked_at}, is_wood=True)


def _changes(
    project: Project, packs: Packs, found: Mapping[str, Sequence[Tally]], *, is_wood: bool
) -> tuple[PlantChange, ...]:
    phases = {context.id: context.phase for context in project.contexts}
    sampled: dict[PhaseId, list[Holding]] = {}
    ancient = packs.words.preservations.get(project.preservation) or ("charred", "partly charred")
    for sample in project.samples:
        phase = phases[sample.context]
        if phase is None or (is_wood and sample.id not in found):
            continue
        seen: dict[TaxonId, str] = {}
        for tally in found.get(sample.id, ()):
            if tally.taxon is not None and tally.condition in ancient and _is_meant(packs, tally, is_wood=is_wood):
                seen.setdefault(tally.taxon, tally.ref)
        sampled.setdefault(phase, []).append((sample.context, seen))
    dated = sorted(project.phases, key=lambda phase: (phase.start is None, phase.start or 0))
    ids = [phase.id for phase in dated if phase.id in sampled]
    pairs = [(first, last) for i, first in enumerate(ids) for last in ids[i + 1 :]]
    return tuple(change for first, last in pairs for change in _tested(first, last, sampled[first], sampled[last]))


Holding = tuple[ContextId, Mapping[TaxonId, str]]
"""The context of a sample, and the plants in it with a reference to each."""


def _tested(first: PhaseId, last: PhaseId, before: Sequence[Holding], after: Sequence[Holding]) -> list[PlantChange]:
    both = [*before, *after]
    number: dict[TaxonId, int] = {}
    for _, seen in both:
        for taxon in seen:
            number[taxon] = number.get(taxon, 0) + 1
    taxa = sorted(taxon for taxon, samples in number.items() if samples >= ENOUGH_SAMPLES)
    if not taxa:
        return []
    there = np.array([[taxon in seen for taxon in taxa] for _, seen in both], bool)
    is_late = np.arange(len(both)) >= len(before)
    of_context = list(dict.fromkeys(context for context, _ in both))
    number_of = {id: at for at, id in enumerate(of_context)}
    contexts = np.array([number_of[context] for context, _ in both])
    p = _p(there, is_late)
    corrected = holm(p)
    own = _by_context(there, contexts, len(of_context))
    context_is_late = is_late[np.unique(contexts, return_index=True)[1]]  # a context is of one phase
    p_contexts = _p(own, context_is_late)
    by_context = holm(p_contexts)
    hang = _hanging(there, is_late, contexts, len(of_context), corrected)
    made = [
        PlantChange(
            taxon=taxon,
            first=first,
            last=last,
            with_it=(int(there[~is_late, i].sum()), int(there[is_late, i].sum())),
            of_samples=(len(before), len(after)),
            p=float(p[i]),
            p_holm=float(corrected[i]),
            tested=len(taxa),
            hangs_on=tuple(of_context[c] for c in np.flatnonzero(hang[:, i]).tolist()),
            contexts=tuple(  # type: ignore[arg-type]
                (int(own[side, i].sum()), int(side.sum())) for side in (~context_is_late, context_is_late)
            ),
            p_contexts=float(p_contexts[i]),
            p_contexts_holm=float(by_context[i]),
            refs=tuple(ref for _, seen in both if (ref := seen.get(taxon))),
        )
        for i, taxon in enumerate(taxa)
    ]
    return sorted(made, key=lambda change: (change.p, change.taxon))


def _p(there: np.ndarray, is_late: np.ndarray) -> np.ndarray:
    """Of each column: Fisher's p for the rows with it that are late and those that are not."""
    n = np.full(there.shape[1], 1.0)
    k1, k2 = there[~is_late].sum(axis=0).astype(float), there[is_late].sum(axis=0).astype(float)
    return fisher(k1, n * float((~is_late).sum()), k2, n * float(is_late.sum()))


def _by_context(there: np.ndarray, contexts: np.ndarray, many: int) -> np.ndarray:
    """(contexts, plants): True where a sample of the context, by its number in each row, holds the plant."""
    own = np.zeros((many, there.shape[1]), bool)
    np.logical_or.at(own, contexts, there)
    return own


def _hanging(
    there: np.ndarray, is_late: np.ndarray, contexts: np.ndarray, many: int, corrected: np.ndarray
) -> np.ndarray:
    """(contexts, plants): True where a difference that outlasts the correction does not without the context."""
    hang = np.zeros((many, corrected.size), bool)
    if many > MOST_CONTEXTS or not (corrected < CHANCE).any():
        return hang
    for number in range(many):
        left = contexts != number
        if is_late[left].any() and not is_late[left].all():
            hang[number] = (corrected < CHANCE) & ~(holm(_p(there[left], is_late[left])) < CHANCE)
    return hang


def _is_meant(packs: Packs, tally: Tally, *, is_wood: bool) -> bool:
    taxon, part = packs.taxa.get(tally.taxon), packs.words.parts.get(tally.part)  # type: ignore[arg-type]
    return taxon is not None and taxon.rank in RANKS and (part is not None and "wood" in part.roles) == is_wood
