"""Which size class to sort next, and what it would bring."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from narrate.measures.amounts import density
from narrate.measures.catalogue import MEASURES, measured
from narrate.measures.narrowing import finished, width_left
from narrate.measures.selection import named
from narrate.measures.shares import share
from narrate.measures.thinning import total_from_share
from narrate.measures.units import Units
from narrate.measures.unseen import unseen
from narrate.model.ids import SampleId, Subject
from narrate.model.project import Project
from narrate.model.rules import Selector, ShownMeasure
from narrate.model.sorting import Narrowing, SortingGain

SEEDS = Selector(role=("propagule",))
CROPS = Selector(role=("propagule",), status=("crop",))


def sorting_gains(
    samples: Units, project: Project, of: Selector = SEEDS, part: Selector = CROPS
) -> tuple[SortingGain, ...]:
    """
    For every size class that was sorted in part: how many items it holds in all, how many new taxa the rest may bring,
    and how far the intervals of the sample's density and of a share would narrow.

        width left = width(then) / width(now);   then: the rest holds what the sorted share foretells

    samples:   units of the level 'sample'.
    of:        what is counted; left out: seeds and fruits.
    part:      whose share among them is looked at; left out: crops.
    Gives:     one entry a class, those that narrow the density most first.
    Misleads:  the rest is taken to be like what was sorted, and new taxa are a lower bound.
    Source:    Shen, Chao & Lin 2003, Ecology 84:798–804, for new taxa; Fay & Feuer 1997 and Wilson 1927 for the
               intervals (all from memory).
    """
    table = samples.table
    classes = np.array(size_classes(project), object)
    density_left: dict[str, np.ndarray] = {}
    share_left: dict[str, np.ndarray] = {}
    for name in _names_of_partly_sorted(project):
        then = finished(samples, classes == name)
        density_left[name] = width_left(density(samples, of), density(then, of))[0]
        share_left[name] = width_left(share(samples, part, of), share(then, part, of))[0]
    found = []
    for i, sample in enumerate(project.samples):
        rows = samples.rows_of(i, of)
        k = table.counted[0, rows]
        has_name = np.isin(rows, samples.rows_of(i, named(of)))
        with_name = rows[has_name]
        if (hidden := samples.covered(with_name)) is not None:
            has_name[has_name] = ~hidden[0]
        for size_class in sample.size_classes:
            if size_class.proportion_sorted >= 1:
                continue
            sorted_share = size_class.proportion_sorted
            items = float(k[classes[rows] == size_class.name].sum())
            low, high = total_from_share(np.array([items]), np.array([sorted_share]))
            rest = items * (1 - sorted_share) / sorted_share
            found.append(
                SortingGain(
                    sample=SampleId(sample.id),
                    size_class=size_class.name,
                    share=sorted_share,
                    items=int(items),
                    total=items / sorted_share,
                    total_low=float(low[0]),
                    total_high=float(high[0]),
                    new_taxa=_new_taxa(samples.taxon_of_kind[table.row_kind[rows[has_name]]], k[has_name], rest),
                    density_width_left=_known(density_left[size_class.name][i]),
                    share_width_left=_known(share_left[size_class.name][i]),
                )
            )
    return tuple(
        sorted(found, key=lambda g: (g.density_width_left is None, g.density_width_left, g.sample, g.size_class))
    )


def narrowings(units: Units, project: Project, measurements: Iterable[ShownMeasure]) -> tuple[Narrowing, ...]:
    """
    For every size class that was sorted in part, and every named measurement with an interval: how far the interval of
    each unit would narrow if the rest of the class were sorted and held what the sorted share foretells.

        left = width(k / f) / width(k)

    Gives:     only what would narrow or widen by one part in a thousand or more.
    Misleads:  as each measure's own narrowing does.
    """
    classes = np.array(size_classes(project), object)
    asked = [s for s in measurements if f"{s.measure}_width_if_sorted" in MEASURES or s.measure == "share"]
    made = []
    for name in _names_of_partly_sorted(project):
        then = finished(units, classes == name)
        for shown in asked:
            now, after = (measured(shown.measure, u, of=shown.of, to=shown.to) for u in (units, then))
            left = width_left(now, after)[0]
            for unit in np.flatnonzero(np.isfinite(left) & (np.abs(left - 1) >= 0.001)).tolist():
                width = float(now.high[0, unit] - now.low[0, unit])
                made.append(
                    Narrowing(
                        subject=Subject(level=units.level, id=units.ids[unit]),
                        size_class=name,
                        measurement=shown.name,
                        title=shown.title,
                        width=width,
                        width_then=width * float(left[unit]),
                        left=float(left[unit]),
                    )
                )
    place = {id: i for i, id in enumerate(units.ids)}
    return tuple(sorted(made, key=lambda n: (place[n.subject.id], n.size_class, n.left)))


def size_classes(project: Project) -> tuple[str, ...]:
    """The size class of each row of the count table, which is sorted by sample."""
    index = {sample.id: i for i, sample in enumerate(project.samples)}
    return tuple(row.size_class for row in sorted(project.counts, key=lambda row: index[row.sample]))


def _names_of_partly_sorted(project: Project) -> list[str]:
    return sorted({c.name for s in project.samples for c in s.size_classes if c.proportion_sorted < 1})


def _known(value: float) -> float | None:
    return float(value) if np.isfinite(value) else None


def _new_taxa(taxon: np.ndarray, k: np.ndarray, rest: float) -> float:
    by_taxon = np.bincount(taxon, weights=k) if k.size else np.zeros(0)
    total, once, twice = by_taxon.sum(), float((by_taxon == 1).sum()), float((by_taxon == 2).sum())
    hidden = float(unseen(np.array(once), np.array(twice)))
    if hidden <= 0 or total <= 0:
        return 0.0
    return float(hidden * (1 - (1 - once / (total * hidden + once)) ** rest))
