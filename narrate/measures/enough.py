"""How many items are enough, and what sorting the rest would bring."""

from __future__ import annotations

import math

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.groups import by_taxon
from narrate.measures.intervals import wilson
from narrate.measures.log_factorial import log_factorial
from narrate.measures.selection import named
from narrate.measures.special import normal_quantile
from narrate.measures.units import Units
from narrate.measures.unseen import NOTHING, unseen
from narrate.model.rules import Selector

HALF_WIDTH = 0.05
"""Points of a share to which it should be known: the default of `items_wanting`."""


def items_for_share(
    share: float = 0.5, half_width: float = HALF_WIDTH, confidence: float = 0.95, of_items: float = math.inf
) -> float:
    """
    Items to count for one share to be known to a half-width. Round it up; some reports round to the nearest.

        n = z² P(1 − P) / d²;   of N items in all: n = N P(1 − P) / [(N − 1)(d/z)² + P(1 − P)]

    share:       P, as expected; 0.5 is the worst case.
    half_width:  d.
    confidence:  from which z, the exact normal quantile, follows.
    of_items:    N; infinite where it is not known or very large.
    Misleads:    it is for one share and a draw by chance; clustered items need more.
    Source:      van der Veen & Fieller 1982, Journal of Archaeological Science 9:287–298 (formula from memory).

    >>> [math.ceil(n) for n in (items_for_share(), items_for_share(of_items=1000), items_for_share(confidence=0.98))]
    [385, 278, 542]
    """
    d_over_z = half_width / normal_quantile((1 + confidence) / 2)
    spread = share * (1 - share)
    if math.isinf(of_items):
        return spread / d_over_z**2
    return of_items * spread / ((of_items - 1) * d_over_z**2 + spread)


def items_for_shares(half_width: float = HALF_WIDTH, alpha: float = 0.05) -> tuple[int, int]:
    """
    Items to count for all shares at once to be known to a half-width, whatever they are, and the number of equal shares
    that is the worst case.

        n = max over m of z² (1/m)(1 − 1/m) / d²;   z the quantile of α/2m

    half_width:  d.
    alpha:       chance that some share lies farther off.
    Source:      Thompson 1987, American Statistician 41:42–46 (from memory).

    >>> items_for_shares(), items_for_shares(alpha=0.01)
    ((510, 3), (788, 2))
    """
    sizes = {m: normal_quantile(1 - alpha / (2 * m)) ** 2 * (1 / m) * (1 - 1 / m) / half_width**2 for m in range(2, 50)}
    worst = max(sizes, key=lambda m: sizes[m])
    return math.ceil(sizes[worst] - 1e-9), worst


def items_to_see(share: float, chance: float = 0.95) -> int:
    """
    Items to look through for a chance of seeing a taxon of a given share at least once.

        n = ln(1 − chance) / ln(1 − p), rounded up

    share:   p, above 0 and below 1.
    Source:  the binomial chance of seeing none.

    >>> [items_to_see(p) for p in (0.01, 0.02, 0.05, 0.1)]
    [299, 149, 59, 29]
    """
    return math.ceil(math.log(1 - chance) / math.log1p(-share) - 1e-9)


def items_wanting(units: Units, of: Selector) -> Column:
    """
    Items still to count for any share among them to be known to ± 5 points at 95%, within what the sample holds.

        wanting = max(0, ⌈N·¼ / [(N − 1)(d/z)² + ¼]⌉ − k);   k items counted, N items scaled up

    Unit: items. Interval: none. Always has a value.
    Misleads: it is for one share; for several at once 510 items are needed. A sample that was sorted whole wants none,
    however few its items are: what it says of the deposit then stays as wide as its intervals.
    Source: van der Veen & Fieller 1982, Journal of Archaeological Science 9:287–298 (from memory).
    """
    counted = units.counted(of)
    whole = counted + units.unsorted(of)
    d_over_z = HALF_WIDTH / normal_quantile(0.975)
    needed = np.ceil(whole * 0.25 / (np.maximum(whole - 1, 0) * d_over_z**2 + 0.25) - 1e-9)
    return exact(np.maximum(needed - counted, 0), of=counted, to=whole, n=counted)


def new_taxa_if_sorted(units: Units, of: Selector) -> Column:
    """
    Taxa to expect beyond those seen if the unsorted share were sorted.

        ΔS = f₀ [1 − (1 − f₁ / (N f₀ + f₁))^m];   f₀ = f₁(f₁ − 1)/2(f₂ + 1) unseen taxa, m items not yet sorted

    Unit: taxa. Interval: none. No value: where nothing was counted.
    Misleads: f₀ is a lower bound, so this one is too; a taxon seen only as a mark is not among the items.
    Source: Shen, Chao & Lin 2003, Ecology 84:798–804 (from memory).
    """
    of = named(of)
    groups = by_taxon(units, of)
    total = groups.total_items
    rest = units.unsorted(of)
    once = groups.sum_of(lambda k: (k == 1).astype(float))
    hidden = unseen(once, groups.sum_of(lambda k: (k == 2).astype(float)))
    with np.errstate(invalid="ignore", divide="ignore"):
        missed = np.where(hidden > 0, (1 - once / (total * hidden + once)) ** rest, 1.0)
    return exact(np.where(total > 0, hidden * (1 - missed), np.nan), of=once, to=rest, n=total, reason=NOTHING)


def width_if_sorted(units: Units, of: Selector, to: Selector) -> Column:
    """
    How much of the width of a share's interval would be left if the unsorted share were sorted and held the same.

        left = width(k·N/n, N) / width(k, n);   n items counted, N scaled up, width of the Wilson interval

    Unit: 0 to 1. Interval: none. No value: where there is nothing to take a share of.
    Misleads: it takes the rest to be like what was sorted.
    Source: Wilson 1927, JASA 22:209–212 for the interval; worked out.
    """
    both = units.counted_in_both(of, to)
    whole = units.counted(to)
    more = whole + units.unsorted(to)
    with np.errstate(invalid="ignore", divide="ignore"):
        low, high = wilson(both, whole)
        then_low, then_high = wilson(both * more / whole, more)
        left = (then_high - then_low) / (high - low)
    return exact(left, of=both, to=more, n=whole, reason="nothing to take a share of")


def taxa_in_last_ten(units: Units, of: Selector) -> Column:
    """
    Taxa that the last ten items added, on average over all orders of naming them: whether wood has been named to
    saturation.

        Σ C(10, nᵢ) / C(N, nᵢ), the chance of each taxon that all its nᵢ items are among the last ten of N

    Unit: taxa per ten items. Interval: none. No value: where fewer than 20 items were named.
    Misleads: a curve that has gone flat says that the common taxa are known, not the rare ones. No number is agreed on
    for "flat"; half a taxon per ten pieces is a default of ours.
    Source: the saturation curve of Chabal 1997 (from memory), as its exact mean after Hurlbert 1971.
    """
    of = named(of)
    groups = by_taxon(units, of)
    total = groups.total_items
    k = np.clip(groups.items, 0, 10)
    whole = groups.spread(np.maximum(total, 20))
    few = log_factorial(np.array(10.0)) - log_factorial(10 - k)
    chance = np.exp(few + log_factorial(whole - k) - log_factorial(whole))
    gained = groups.total(np.where((groups.items > 0) & (groups.items <= 10), chance, 0.0))
    return exact(
        np.where(total >= 20, gained, np.nan), of=units.taxa(of), n=total, reason="fewer than 20 items were named"
    )
