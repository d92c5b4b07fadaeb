"""How many kinds, and how many there would be at the same number of items."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.log_factorial import log_choose
from narrate.measures.units import Units
from narrate.model.rules import Selector

RAREFIED_TO = 30
"""Items at which units are compared; the least that most workers ask of a sample (a default, check)."""


def taxa(units: Units, of: Selector) -> Column:
    """
    Number of different taxa, counted or noted (richness).

    Unit: taxa. Interval: none. Always has a value.
    Misleads: it grows with the number of items; see `taxa_at_30`.
    Source: common practice, no source.
    """
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
    counts, total = units.counts_by_taxon(of)
    expected = rarefied(counts, total, RAREFIED_TO)
    return exact(expected, of=units.taxa(of), n=total, reason=f"fewer than {RAREFIED_TO} items were counted")


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
