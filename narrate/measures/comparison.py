"""Two phases compared. The unit is the sample, not the seed."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.intervals import difference_of_shares
from narrate.measures.log_factorial import log_choose
from narrate.measures.units import Units
from narrate.model.rules import Selector


def ubiquity_change(units: Units, phases: Units, of: Selector) -> Column:
    """
    Ubiquity in the last phase minus ubiquity in the first.

        change = k₂/n₂ − k₁/n₁

    Unit: −1 to 1. Interval: Newcombe's hybrid score. No value: where there are not two phases with samples.
    Misleads: when the phases were sampled from other kinds of context.
    Source: Newcombe 1998, Statistics in Medicine 17:873–890 (from memory).
    """
    compared = _first_and_last(phases, of)
    if compared is None:
        return exact(np.full(units.shape, np.nan), reason="there are not two phases with samples")
    k1, n1, k2, n2 = compared
    # A draw of samples may hold none whose wood was looked at.
    is_both = (n1 > 0) & (n2 > 0)
    shares = k2 / np.where(is_both, n2, np.nan) - k1 / np.where(is_both, n1, np.nan)
    ends = difference_of_shares(k1, np.maximum(n1, 1), k2, np.maximum(n2, 1))
    low, high = (np.where(is_both, end, np.nan) for end in ends)
    value, low, high, first, last, n = (_spread(x, units) for x in (shares, low, high, k1, k2, n1 + n2))
    return Column(value=value, low=low, high=high, of=last, to=first, n=n, has_interval=True)


def ubiquity_p(units: Units, phases: Units, of: Selector) -> Column:
    """
    Chance of a difference in ubiquity at least as unlikely as that between the first and the last phase, if there
    were none (Fisher's exact test, two-sided).

        p = Σ P(x) over all x with P(x) ≤ P(k₁);   P(x) = C(n₁, x)·C(n₂, k₁ + k₂ − x) / C(n₁ + n₂, k₁ + k₂)

    Unit: 0 to 1. Interval: none. No value: where there are not two phases with samples.
    Misleads: when many plants are tested and the smallest value is picked; samples of one context are not independent.
    Source: Fisher 1934, Statistical Methods for Research Workers, 5th ed. (from memory).
    """
    compared = _first_and_last(phases, of)
    if compared is None:
        return exact(np.full(units.shape, np.nan), reason="there are not two phases with samples")
    k1, n1, k2, n2 = compared
    value = _spread(fisher(k1, n1, k2, n2), units)
    return Column(
        value=value, low=value, high=value, of=_spread(k2, units), to=_spread(k1, units), n=_spread(n1 + n2, units)
    )


def fisher(k1: np.ndarray, n1: np.ndarray, k2: np.ndarray, n2: np.ndarray) -> np.ndarray:
    """
    Two-sided p of Fisher's exact test for k1 of n1 against k2 of n2.

        p = Σ P(x) over all x with P(x) ≤ P(k1);   P(x) = C(n1, x)·C(n2, k1 + k2 − x) / C(n1 + n2, k1 + k2)

    Source: Fisher 1934; the sum over tables no likelier than the one seen is that of common statistics packages.

    >>> fisher(np.array([10]), np.array([13]), np.array([2]), np.array([17])).round(6).tolist()
    [0.000537]
    """
    k1, n1, k2, n2 = (np.asarray(part, float) for part in (k1, n1, k2, n2))
    x = np.arange(int(n1.max(initial=0)) + 1)
    total = (k1 + k2)[:, None]
    log_p = (
        log_choose(n1[:, None], x[None, :])
        + log_choose(n2[:, None], total - x[None, :])
        - log_choose((n1 + n2)[:, None], total)
    )
    p = np.exp(log_p)
    seen = np.take_along_axis(p, k1[:, None].astype(np.intp), axis=1)
    return np.minimum(np.where(p <= seen * (1 + 1e-7), p, 0).sum(axis=1), 1.0)


def _first_and_last(phases: Units, of: Selector) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray] | None:
    """Samples with the thing and samples, of the first and the last phase that have any; by replicate."""
    k, n = phases.samples_with(of), phases.samples_looked_at(of)
    has_samples = np.flatnonzero(n[0] > 0) if n.size else np.array([], int)
    if has_samples.size < 2:
        return None
    first, last = has_samples[0], has_samples[-1]
    return k[:, first], n[:, first], k[:, last], n[:, last]


def _spread(values: np.ndarray, units: Units) -> np.ndarray:
    return np.broadcast_to(values[:, None], units.shape)
