"""
How many kinds, how evenly, and how many there would be at the same number of items.

What nobody could name is left out of all of them, because it may be of a taxon that is there already (`named`); and so
is a name that is wider than one that is there, such as that of the genus beside a species (`wider_names`).
"""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.groups import ByTaxon, by_taxon, is_seen
from narrate.measures.intervals import Z
from narrate.measures.log_factorial import log_choose, log_factorial
from narrate.measures.selection import named
from narrate.measures.units import Units
from narrate.measures.unseen import NOTHING
from narrate.model.rules import Selector

RAREFIED_TO = 30
"""Items at which units are compared; the least that most workers ask of a sample (a default, check)."""


def taxa(units: Units, of: Selector) -> Column:
    """
    Number of different taxa, counted or noted (richness).

        S = number of taxa with at least one item or mark of presence

    Unit: taxa. Interval: none. Always has a value. What nobody could name (indeterminate, unidentified, hardwood) is no
    taxon, here and in every measure of diversity.
    Misleads: it grows with the number of items; see `taxa_at_30` and `taxa_against_pool`. A name that may stand for a
    plant which is there under a closer one, such as a family beside its species, is no further taxon where the two were
    found as the same part, so that this is the least number.
    Source: common practice, no source.
    """
    of = named(of)
    number = units.taxa(of)
    return exact(number, of=number, n=units.counted(of))


def taxa_at_30(units: Units, of: Selector) -> Column:
    """
    Taxa to expect among 30 items drawn from the unit (rarefaction).

        E(S₃₀) = Σ [1 − C(N − nᵢ, 30) / C(N, 30)];   N items in all, nᵢ of taxon i

    Unit: taxa. Interval: none. No value: where fewer than 30 items were counted.
    Misleads: items of one sample are clustered, so that true spread is wider than the formula's.
    Source: Hurlbert 1971, Ecology 52:577–586 (from memory).
    """
    of = named(of)
    groups = by_taxon(units, of)
    total = groups.total_items
    expected = _rarefied_by_unit(groups, total, RAREFIED_TO)
    return exact(expected, of=units.taxa(of), n=total, reason=f"fewer than {RAREFIED_TO} items were counted")


def shannon(units: Units, of: Selector) -> Column:
    """
    Shannon's index, in natural logarithms, without correction for bias.

        H′ = −Σ pᵢ ln pᵢ;   pᵢ = nᵢ/N

    Unit: nats. Interval: H′ ± 1.96 √V, V = (Σ pᵢ ln² pᵢ − H′²)/N + (S − 1)/2N², cut off at 0. No value: where nothing
    was counted.
    Misleads: it grows with the number of items, and mixes how many kinds there are with how evenly they are spread; the
    interval takes items for independent, and it lies too low where many taxa were missed.
    Source: Shannon 1948, Bell System Technical Journal 27:379–423; the variance: Hutcheson 1970, Journal of Theoretical
    Biology 29:151–154 (both from memory).
    """
    of = named(of)
    value, variance, total = _shannon(units, of)
    half = Z * np.sqrt(variance)
    return Column(
        value=value,
        low=np.maximum(value - half, 0),
        high=value + half,
        of=units.taxa(of),
        n=total,
        has_interval=True,
        reason=NOTHING,
    )


def simpson(units: Units, of: Selector) -> Column:
    """
    Chance that two items drawn from the unit are of different taxa: Simpson's index in its unbiased form, as 1 − D.

        1 − D = 1 − Σ nᵢ(nᵢ − 1) / N(N − 1)

    Unit: 0 to 1. Interval: ± 1.96 √V, V = 4 [Σ pᵢ³ − (Σ pᵢ²)²] / N, within 0 to 1. No value: where fewer than two items
    were counted.
    Misleads: it hardly sees rare taxa. D and 1/D are other forms: never compare them with this one.
    Source: Simpson 1949, Nature 163:688 (from memory).
    """
    of = named(of)
    groups = by_taxon(units, of)
    total = groups.total_items
    squared = groups.sum_of(np.square)
    with np.errstate(invalid="ignore", divide="ignore"):
        n = np.where(total > 1, total, np.nan)
        value = 1 - (squared - total) / (n * (n - 1))
        squares, cubes = squared / n**2, groups.sum_of(lambda k: k * k * k) / n**3
        half = Z * np.sqrt(np.maximum(4 * (cubes - squares**2) / n, 0))
    return Column(
        value=value,
        low=np.clip(value - half, 0, 1),
        high=np.clip(value + half, 0, 1),
        of=units.taxa(of),
        n=total,
        has_interval=True,
        reason="fewer than two items were counted",
    )


def evenness(units: Units, of: Selector) -> Column:
    """
    How evenly the items are spread over the taxa (Pielou's J′).

        J′ = H′ / ln S;   S taxa with at least one item

    Unit: 0 to 1. Interval: none. No value: where fewer than two taxa were counted, for nothing can be uneven then.
    Misleads: S is what was seen; a missed taxon raises J′.
    Source: Pielou 1966, Journal of Theoretical Biology 13:131–144 (from memory).
    """
    of = named(of)
    value, _, total = _shannon(units, of)
    seen = by_taxon(units, of).sum_of(lambda k: (k > 0).astype(float))
    with np.errstate(invalid="ignore", divide="ignore"):
        even = value / np.log(np.where(seen > 1, seen, np.nan))
    return exact(even, of=seen, n=total, reason="fewer than two taxa were counted")


def taxa_against_pool(units: Units, of: Selector) -> Column:
    """
    Taxa of the unit, more or fewer than a draw of as many items from the whole dig would give.

        S − E(S);   E(S) = Σ [1 − (1 − pᵢ)^N];   pᵢ share of taxon i in the items of all units together

    Unit: taxa. Interval: S less the band in which 95% of such draws lie, so that it leaves out 0 where the unit is
    richer or poorer than its size explains. No value: where nothing was counted.
    Misleads: the pool is what this dig gave, and its largest unit rules it; items of a unit are clustered, so that the
    band is too narrow.
    Source: Kintigh 1984, American Antiquity 49:44–54 (from memory), who draws at random; here the mean is exact and the
    spread is worked out.
    """
    of = named(of)
    groups = by_taxon(units, of, anywhere=True)
    total = groups.total_items
    seen = groups.sum_of(is_seen)
    expected, spread = units.kept(("pool", of), lambda: _from_pool(groups, total))
    value = np.where(total > 0, seen - expected, np.nan)
    return Column(
        value=value,
        low=value - Z * spread - 0.5,
        high=value + Z * spread + 0.5,
        of=seen,
        to=expected,
        n=total,
        has_interval=True,
        reason=NOTHING,
    )


def rarefied(counts: np.ndarray, total: np.ndarray, items: int) -> np.ndarray:
    """
    Expected taxa among `items` drawn without replacement.

    counts:  (taxa, …) items of each taxon.
    total:   (…) their sum; NaN comes back where it is below `items`.
    Source:  Hurlbert 1971, Ecology 52:577–586 (from memory).

    >>> counts = np.array([9, 3, 4, 2, 1, 1, 1, 1, 1.0])
    >>> float(rarefied(counts, counts.sum(), 13).round(3))
    6.557
    """
    total = np.asarray(total, float)
    drawn = np.array(float(items))
    enough = np.maximum(total, drawn)
    missed = np.exp(log_choose(total[None, ...] - counts, drawn) - log_choose(enough, drawn))
    expected = np.where(counts > 0, 1 - missed, 0).sum(axis=0)
    return np.where(total >= items, expected, np.nan)


def _rarefied_by_unit(groups: ByTaxon, total: np.ndarray, items: int) -> np.ndarray:
    enough = np.maximum(total, items)
    of_whole = log_factorial(enough - items) - log_factorial(enough)
    left = groups.spread(enough) - groups.items
    can_be_missed = left >= items
    missed = np.exp(_log_falling(np.where(can_be_missed, left, items), items) + groups.spread(of_whole))
    expected = np.where(groups.items > 0, np.where(can_be_missed, 1 - missed, 1.0), 0.0)
    return np.where(total >= items, groups.total(expected), np.nan)


def _log_falling(n: np.ndarray, items: int) -> np.ndarray:
    """ln n!/(n − items)!, by one look-up for counts of a few thousand."""
    most = int(n.max(initial=items))
    if most > 4096:
        return log_factorial(n) - log_factorial(n - items)
    steps = np.arange(items, most + 1)
    return (log_factorial(steps) - log_factorial(steps - items))[n.astype(np.intp) - items]


def _shannon(units: Units, of: Selector) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Shannon's index, its variance, and the items."""
    return units.kept(("shannon", of), lambda: _shannon_of(by_taxon(units, of)))


def _shannon_of(groups: ByTaxon) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    k, total = groups.items, groups.total_items
    logs = np.log(np.maximum(k, 1))
    with np.errstate(invalid="ignore", divide="ignore"):
        n = np.where(total > 0, total, np.nan)
        log_n = np.log(n)
        # Σ p ln p and Σ p ln² p, with ln p = ln k − ln n taken apart, so that one logarithm serves all units.
        first, second = groups.total(k * logs) / n, groups.total(k * logs * logs) / n
        value = np.maximum(log_n - first, 0)
        squares = second - 2 * log_n * first + log_n * log_n
        variance = (squares - value * value) / n + (groups.sum_of(is_seen) - 1) / (2 * n * n)
    return value, np.maximum(variance, 0), total


def _from_pool(groups: ByTaxon, total: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Expected taxa of a multinomial draw of each unit's size from all units together, and its standard deviation."""
    pool = np.zeros((groups.items.shape[0], groups.taxa))
    for replicate, items in enumerate(groups.items):
        pool[replicate] = np.bincount(groups.taxon, weights=items, minlength=groups.taxa)
    share = pool / np.maximum(pool.sum(axis=1, keepdims=True), 1)
    expected, spread = np.zeros(groups.shape), np.zeros(groups.shape)
    for replicate in range(groups.shape[0]):
        p = share[replicate][share[replicate] > 0]
        sizes, where = np.unique(total[replicate], return_inverse=True)
        missed = np.exp(sizes[:, None] * np.log1p(-np.minimum(p, 1 - 1e-15))[None, :])
        expected[replicate] = (1 - missed).sum(axis=1)[where]
        # Taxa of one draw take items from each other: the covariances, to first order in the shares.
        variance = (missed * (1 - missed)).sum(axis=1) - sizes * (missed * p).sum(axis=1) ** 2
        spread[replicate] = np.sqrt(np.maximum(variance, 0))[where]
    return expected, spread
