"""In how many samples groups of plants were found: by phase, by kind of context, by both, and how phases differ."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from narrate.measures.intervals import difference_of_shares, wilson
from narrate.measures.units import Units
from narrate.model.findings import Tally
from narrate.model.ids import PhaseId
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs
from narrate.model.plant_groups import GroupSpread, PlantGroup, SpreadChange
from narrate.model.project import Project
from narrate.model.refs import found_ref
from narrate.model.rules import Selector

Where = tuple[PhaseId | None, str]
"""A phase and a kind of context; None and '' for all."""


def spreads(
    project: Project, packs: Packs, samples: Units, found: Mapping[str, Sequence[Tally]]
) -> tuple[GroupSpread, ...]:
    """
    Ubiquity of every group of the packs in the dig, in each phase, in each kind of context, and in each kind by phase.

    samples:  units of the level 'sample'.
    found:    the tallies of each sample, most items first: what a reference leads to.
    Leaves:   plants of the Old World that the region had only after the phase: they say nothing of it.
    Source:   Popper 1988 for ubiquity; "like contexts with like": Gremillion, Excavating Occaneechi Town, "Crops".
    """
    places = places_of_samples(project)
    contexts = [sample.context for sample in project.samples]
    made = []
    for group in packs.plant_groups:
        rows = of_its_time(samples, group)
        there, refs = _there(samples, rows), _refs(samples, rows, found)
        only_cf = there & ~_there(samples, rows[_is_firm(samples, rows)])
        made += [_spread(group, where, of, (there, only_cf), refs, contexts) for where, of in places.items()]
    return tuple(made)


def spread_changes(project: Project, spread: Sequence[GroupSpread]) -> tuple[SpreadChange, ...]:
    """
    For every two phases, the earlier first: how the ubiquity of each group differs, over all samples and by kind.

    Source: Newcombe 1998, Statistics in Medicine 17:873–890, method 10 (from memory).
    """
    by_place = {(s.group, s.phase, s.kind): s for s in spread if s.phase is not None and s.of_samples}
    dated = sorted(project.phases, key=lambda phase: (phase.start is None, phase.start or 0))
    pairs = [(first.id, last.id) for i, first in enumerate(dated) for last in dated[i + 1 :]]
    made = []
    for group, phase, kind in by_place:
        for first, last in pairs:
            if phase == first and (group, last, kind) in by_place:
                earlier, later = by_place[group, first, kind], by_place[group, last, kind]
                difference = _difference(earlier, later)
                made.append(SpreadChange(group=group, first=first, last=last, kind=kind, difference=difference))
    return tuple(made)


def spread_of(group: str, where: Where, with_it: int, of_samples: int, refs: tuple[str, ...]) -> GroupSpread:
    """The spread of a group over samples, with the Wilson interval of its ubiquity."""
    low, high = (float(end[0]) for end in wilson(np.array([with_it]), np.array([of_samples])))
    return GroupSpread(
        group=group,
        phase=where[0],
        kind=where[1],
        with_it=with_it,
        of_samples=of_samples,
        ubiquity=Measurement(
            measure="ubiquity",
            value=with_it / of_samples if of_samples else None,
            low=low if of_samples else None,
            high=high if of_samples else None,
            n=of_samples,
            reason="" if of_samples else "no samples were looked at",
        ),
        refs=refs,
    )


def places_of_samples(project: Project) -> dict[Where, list[int]]:
    """Indices of the samples of the dig, of each phase, kind, and kind in a phase."""
    contexts = {context.id: context for context in project.contexts}
    places: dict[Where, list[int]] = {(None, ""): []}
    places |= {(phase.id, ""): [] for phase in project.phases}
    for i, sample in enumerate(project.samples):
        context = contexts[sample.context]
        own: list[Where] = [(None, ""), (None, context.kind)]
        own += [(context.phase, ""), (context.phase, context.kind)] if context.phase is not None else []
        for where in own:
            places.setdefault(where, []).append(i)
    return places


LATER = Selector(tag=("old-world",), later_than_phase=True)
"""What cannot be of the phase of its sample."""


def of_its_time(samples: Units, group: PlantGroup) -> np.ndarray:
    rows, later = samples.rows(group.of), samples.rows(LATER)
    return rows[~np.isin(rows, later)] if later.size else rows


def _is_firm(samples: Units, rows: np.ndarray) -> np.ndarray:
    """(rows,): True where the name is more than a cf.; one name or another of two is no cf."""
    kinds = [samples.table.kinds[i] for i in samples.kind_of(rows).tolist()]
    return np.array([kind.is_certain or bool(kind.either) for kind in kinds], bool)


def _there(samples: Units, rows: np.ndarray) -> np.ndarray:
    """(samples,): True where one of the rows was counted or noted."""
    there = np.zeros(len(samples.ids), bool)
    there[samples.unit_of(rows)[samples.is_there(rows)[0]]] = True
    return there


def _refs(samples: Units, rows: np.ndarray, found: Mapping[str, Sequence[Tally]]) -> list[str]:
    """For each sample the reference of its largest find among the rows' kinds; '' where it has none."""
    kinds = [samples.table.kinds[i] for i in np.unique(samples.kind_of(rows)).tolist()]
    meant = {found_ref("", k.taxon or "/".join(k.either) or k.written, k.part, k.condition) for k in kinds}
    return [next((t.ref for t in found.get(id, ()) if _without_key(t.ref) in meant), "") for id in samples.ids]


def _without_key(ref: str) -> str:
    return ref[ref.index("/found.") :] if "/found." in ref else ref


def _spread(
    group: PlantGroup,
    where: Where,
    of: Sequence[int],
    found_in: tuple[np.ndarray, np.ndarray],
    refs: Sequence[str],
    contexts: Sequence[str],
) -> GroupSpread:
    """found_in: masks over the samples: the group is there, and it is there only as cf."""
    there, only_cf = found_in
    holding = [i for i in of if there[i]]
    found = spread_of(group.id, where, len(holding), len(of), tuple(refs[i] for i in holding if refs[i]))
    of_contexts = (len({contexts[i] for i in holding}), len({contexts[i] for i in of}))
    return replace(found, contexts=of_contexts, only_cf=sum(1 for i in holding if only_cf[i]))


def _difference(earlier: GroupSpread, later: GroupSpread) -> Measurement:
    numbers = (np.array([float(n)]) for s in (earlier, later) for n in (s.with_it, s.of_samples))
    low, high = (float(end[0]) for end in difference_of_shares(*numbers))
    return Measurement(
        measure="ubiquity_change",
        value=later.with_it / later.of_samples - earlier.with_it / earlier.of_samples,
        low=low,
        high=high,
        n=earlier.of_samples + later.of_samples,
    )
