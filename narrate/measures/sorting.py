"""Which size class to sort next, and what it would bring."""

from __future__ import annotations

import numpy as np

from narrate.measures.intervals import weighted_poisson, wilson
from narrate.measures.thinning import total_from_share
from narrate.measures.units import Units
from narrate.measures.unseen import unseen
from narrate.model.ids import SampleId
from narrate.model.project import Project
from narrate.model.rules import Selector
from narrate.model.sorting import SortingGain

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
    classes = _classes(project, samples)
    found = []
    for i, sample in enumerate(project.samples):
        rows, both = samples.rows_of(i, of), samples.rows_of(i, part)
        k, f = table.counted[0, rows], table.share[rows]
        for size_class in sample.size_classes:
            if size_class.proportion_sorted >= 1:
                continue
            own = np.array([classes[row] == size_class.name for row in rows.tolist()], bool)
            share = size_class.proportion_sorted
            items = float(k[own].sum())
            low, high = total_from_share(np.array([items]), np.array([share]))
            found.append(
                SortingGain(
                    sample=SampleId(sample.id),
                    size_class=size_class.name,
                    share=share,
                    items=int(items),
                    total=items / share,
                    total_low=float(low[0]),
                    total_high=float(high[0]),
                    new_taxa=_new_taxa(samples.taxon_of_kind[table.row_kind[rows]], k, items * (1 - share) / share),
                    density_width_left=_density_left(k, f, own) if sample.volume_l else None,
                    share_width_left=_share_left(k, np.isin(rows, both), own, share),
                )
            )
    return tuple(
        sorted(found, key=lambda g: (g.density_width_left is None, g.density_width_left, g.sample, g.size_class))
    )


def _classes(project: Project, samples: Units) -> tuple[str, ...]:
    """The size class of each row of the table, which is sorted by sample as the table is."""
    index = {sample.id: i for i, sample in enumerate(project.samples)}
    return tuple(row.size_class for row in sorted(project.counts, key=lambda row: index[row.sample]))


def _new_taxa(taxon: np.ndarray, k: np.ndarray, rest: float) -> float:
    by_taxon = np.bincount(taxon, weights=k) if k.size else np.zeros(0)
    total, once, twice = by_taxon.sum(), float((by_taxon == 1).sum()), float((by_taxon == 2).sum())
    hidden = float(unseen(np.array(once), np.array(twice)))
    if hidden <= 0 or total <= 0:
        return 0.0
    return float(hidden * (1 - (1 - once / (total * hidden + once)) ** rest))


def _density_left(k: np.ndarray, f: np.ndarray, own: np.ndarray) -> float:
    """Of the width of the interval of items per litre; litres fall out of the quotient."""
    weight = 1 / f
    now = _width((k * weight).sum(), (k * weight**2).sum(), weight.max(initial=1.0))
    then_weight = np.where(own, 1.0, weight)
    then_k = np.where(own, k * weight, k)
    then = _width((then_k * then_weight).sum(), (then_k * then_weight**2).sum(), then_weight.max(initial=1.0))
    return then / now


def _width(total: float, variance: float, heaviest: float) -> float:
    low, high = weighted_poisson(np.array([total]), np.array([variance]), np.array([heaviest]))
    return float(high[0] - low[0])


def _share_left(k: np.ndarray, is_part: np.ndarray, own: np.ndarray, share: float) -> float | None:
    if k.sum() <= 0:
        return None
    then = np.where(own, k / share, k)
    widths = []
    for counts in (k, then):
        low, high = wilson(np.array([counts[is_part].sum()]), np.array([counts.sum()]))
        widths.append(float(high[0] - low[0]))
    return widths[1] / widths[0]
