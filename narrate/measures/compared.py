"""Phases, kinds of context and areas compared over their samples, like contexts with like."""

from __future__ import annotations

import numpy as np

from narrate.measures.comparison import fisher
from narrate.measures.intervals import difference_of_shares
from narrate.measures.significance import cliffs_delta, holm, midranks, permutation_p, permuted
from narrate.measures.units import Units
from narrate.model.comparisons import Compared, Comparison
from narrate.model.project import Project
from narrate.model.rules import Selector

BY = ("phase", "kind", "feature", "area")
LEAST_SAMPLES = 2
"""A plant and part found in fewer samples is not tested (Charles et al. 2009 ask for two)."""
_MOST_PLACES = 10_000_000
"""Samples times permutations that are held at once: a dig of more than a thousand samples is permuted less often."""


def compare(
    samples: Units,
    project: Project,
    by: str = "phase",
    *,
    of: Selector | None = None,
    like_with_like: bool = True,
    permutations: int = 9999,
    seed: int = 1,
) -> Comparison:
    """
    Every plant and part, compared between groups of samples.

    samples:         units of the level 'sample'.
    by:              phase, kind (of context), feature, or area (from the records' location).
    of:              what is compared; left out: everything ancient.
    like_with_like:  keeps to kinds of context that every group has, and permutes within them; for phases and areas,
                     because a feature is of one kind.
    permutations:    as many at most; fewer where there are more than a thousand samples, and never fewer than 199. The
                     result says how many were made.
    seed:            the same seed gives the same permutations.
    Gives:           for each plant and part with two samples or more: ubiquity by group, tests, effect sizes, p values
                     corrected for the number of rows (Holm), and the share that each group's richest sample holds.
    Misleads:        samples of one context are not independent, which makes p values too small; seeds never are, and
                     are not the unit here.
    Source:          Popper 1988 for ubiquity; Holm 1979; "like contexts with like" and the caution about one rich
                     context: Gremillion, Excavating Occaneechi Town, "Crops".
    """
    if by not in BY:
        raise ValueError(f"samples cannot be compared by '{by}', only by {', '.join(BY)}")
    label, kind = _labels(project, by)
    keep, like, aside = _like(label, kind, like_with_like and by in ("phase", "area"))
    names = [name for name in dict.fromkeys(label[keep].tolist()) if name]
    permutations = min(permutations, max(199, _MOST_PLACES // max(int(keep.sum()), 1)))
    if len(names) < 2:
        return Comparison(
            by=by,
            groups=tuple(names),
            like=like,
            set_aside=aside,
            rows=(),
            left_out=0,
            permutations=permutations,
            seed=seed,
            reason="there are not two groups with like contexts",
        )
    things, counts, there = _things(samples, of or Selector())
    counts, there = counts[keep], there[keep]
    tested = np.flatnonzero(there.sum(axis=0) >= LEAST_SAMPLES)
    group = np.array([names.index(name) for name in label[keep].tolist()])
    strata = np.unique(kind[keep], return_inverse=True)[1] if like else np.zeros(int(keep.sum()), int)
    rows = _rows(
        [things[i] for i in tested],
        counts[:, tested],
        there[:, tested],
        samples.table.volume_l[keep],
        group,
        strata,
        len(names),
        permutations,
        seed,
    )
    return Comparison(
        by=by,
        groups=tuple(names),
        like=like,
        set_aside=aside,
        rows=rows,
        left_out=len(things) - tested.size,
        permutations=permutations,
        seed=seed,
    )


def cramers_v(table: np.ndarray) -> float | None:
    """
    How far rows and columns of a table of counts hang together; phi where it has two rows or two columns.

        V = √[χ² / n (min(rows, columns) − 1)]

    Gives:   0 to 1; None where a row or column holds nothing.
    Source:  Cramér 1946; Shennan 1988, Quantifying Archaeology (both from memory).

    >>> round(cramers_v(np.array([[10.0, 20.0], [20.0, 10.0]])), 6)
    0.333333
    """
    table = np.asarray(table, float)
    expected = table.sum(axis=1, keepdims=True) * table.sum(axis=0, keepdims=True) / max(table.sum(), 1)
    if not expected.size or np.any(expected == 0):
        return None
    chi = ((table - expected) ** 2 / expected).sum()
    return float(np.sqrt(chi / table.sum() / (min(table.shape) - 1)))


def _labels(project: Project, by: str) -> tuple[np.ndarray, np.ndarray]:
    """Group and kind of context of each sample; an empty group is none."""
    contexts = {context.id: context for context in project.contexts}
    own = [contexts[sample.context] for sample in project.samples]
    label = {
        "phase": lambda c: str(c.phase or ""),
        "kind": lambda c: c.kind,
        "feature": lambda c: str(c.feature or ""),
        "area": lambda c: c.location.get("area", ""),
    }[by]
    return np.array([label(c) for c in own], object), np.array([c.kind for c in own], object)


def _like(label: np.ndarray, kind: np.ndarray, asked: bool) -> tuple[np.ndarray, tuple[str, ...], tuple]:
    """Samples to keep, the kinds that every group has, and kinds set aside with their samples."""
    grouped = np.array([bool(name) for name in label], bool)
    if not asked:
        return grouped, (), ()
    groups = {name for name in label.tolist() if name}
    kinds = sorted({k for k in kind[grouped].tolist()})
    shared = tuple(k for k in kinds if {n for n, has in zip(label, kind, strict=True) if has == k and n} == groups)
    keep = grouped & np.isin(kind.astype(str), np.array(shared, str))
    aside = tuple((k, int(np.sum(grouped & (kind == k)))) for k in kinds if k not in shared)
    return keep, shared, aside


def _things(samples: Units, of: Selector) -> tuple[list[tuple[str, str]], np.ndarray, np.ndarray]:
    """Each plant and part, with items and presence of shape (samples, things)."""
    table, rows = samples.table, samples.rows(of)
    names: dict[tuple[str, str], int] = {}
    code = [names.setdefault((k.taxon or "/".join(k.either) or k.written, k.part), len(names)) for k in table.kinds]
    column = np.array(code, np.intp)[table.row_kind[rows]] if rows.size else rows
    counts = np.zeros((len(table.sample_ids), len(names)))
    there = np.zeros(counts.shape)
    np.add.at(counts, (table.row_sample[rows], column), table.counted[0, rows])
    np.maximum.at(there, (table.row_sample[rows], column), table.is_noted[rows].astype(float))
    return list(names), counts, there


def _rows(
    things: list[tuple[str, str]],
    counts: np.ndarray,
    there: np.ndarray,
    litres: np.ndarray,
    group: np.ndarray,
    strata: np.ndarray,
    groups: int,
    permutations: int,
    seed: int,
) -> tuple[Compared, ...]:
    sizes = np.bincount(group, minlength=groups)
    k = np.array([there[group == g].sum(axis=0) for g in range(groups)])
    ubiquity_p = permutation_p(there, group, strata, permuted(strata, permutations, seed))
    rank_p, delta = _by_density(counts, litres, group, strata, groups, permutations, seed)
    nothing = np.full(len(things), np.nan)
    if groups == 2:
        n = np.broadcast_to(sizes[:, None], k.shape)
        exact = fisher(k[0], n[0], k[1], n[1])
        low, high = difference_of_shares(k[0], n[0], k[1], n[1])
        change = k[1] / n[1] - k[0] / n[0]
    else:
        exact = low = high = change = nothing
    fisher_holm, ubiquity_holm, rank_holm = holm(exact), holm(ubiquity_p), holm(rank_p)
    richest = [_richest(counts[group == g]) for g in range(groups)]
    made = [
        Compared(
            taxon=taxon,
            part=part,
            with_it=tuple(int(x) for x in k[:, i]),
            of_samples=tuple(int(x) for x in sizes),
            richest_share=tuple(_known(r[i]) for r in richest),
            difference=_known(change[i]),
            difference_low=_known(low[i]),
            difference_high=_known(high[i]),
            association=cramers_v(np.array([k[:, i], sizes - k[:, i]])),
            fisher_p=_known(exact[i]),
            ubiquity_p=float(ubiquity_p[i]),
            rank_p=_known(rank_p[i]),
            dominance=_known(delta[i]),
            fisher_holm=_known(fisher_holm[i]),
            ubiquity_holm=_known(ubiquity_holm[i]),
            rank_holm=_known(rank_holm[i]),
        )
        for i, (taxon, part) in enumerate(things)
    ]
    return tuple(sorted(made, key=lambda row: (row.ubiquity_p, row.taxon, row.part)))


def _by_density(
    counts: np.ndarray,
    litres: np.ndarray,
    group: np.ndarray,
    strata: np.ndarray,
    groups: int,
    permutations: int,
    seed: int,
) -> tuple[np.ndarray, np.ndarray]:
    """p of a permutation of ranks of items per litre within strata, and Cliff's delta; NaN where it cannot be."""
    nothing = np.full(counts.shape[1], np.nan)
    known = np.isfinite(litres)
    if np.unique(group[known]).size < 2:
        return nothing, nothing
    density, group, strata = counts[known] / litres[known, None], group[known], strata[known]
    ranks = np.empty(density.shape)
    for stratum in np.unique(strata):
        inside = strata == stratum
        # Ranks over one more than the stratum's size weigh strata as van Elteren 1960 does.
        ranks[inside] = midranks(density[inside]) / (inside.sum() + 1)
    p = permutation_p(ranks, group, strata, permuted(strata, permutations, seed + 1))
    delta = cliffs_delta(density[group == 0], density[group == 1]) if groups == 2 else nothing
    counted = counts[known].sum(axis=0) > 0
    return np.where(counted, p, np.nan), np.where(counted, delta, np.nan)


def _richest(counts: np.ndarray) -> np.ndarray:
    total = counts.sum(axis=0)
    return np.where(total > 0, counts.max(axis=0, initial=0) / np.maximum(total, 1), np.nan)


def _known(value: float) -> float | None:
    return float(value) if np.isfinite(value) else None
