"""How many there were in all, from what was found in the share that was sorted."""

from __future__ import annotations

import numpy as np

from narrate.measures.intervals import each_once
from narrate.measures.special import incomplete_beta


def total_from_share(found: np.ndarray, share: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Exact interval of the number of items in a size class, from k of them found in the share f that was sorted.

        k ~ Binomial(N, f);   low: least N with P(X ≥ k | N) > 0.025;   high: greatest N with P(X ≤ k | N) > 0.025

    found:   k, whole numbers of zero or more.
    share:   f, above 0 and at most 1; where it is 1 both ends are k.
    Gives:   lower and upper end, whole numbers of k or more.
    Misleads: when the share was not taken by chance (a spoonful instead of a riffle box): seeds stick and segregate.
    Source:  the binomial test inverted, as Clopper & Pearson 1934, Biometrika 26:404–413, invert it for a share (from
             memory); counts from a share are divided by it: van der Veen & Fieller 1982, JAS 9:287–298.

    >>> low, high = total_from_share(np.array([10, 0]), np.array([0.25, 0.25]))
    >>> low.tolist(), high.tolist()
    ([22.0, 0.0], [69.0, 12.0])
    """
    k, f = np.broadcast_arrays(np.asarray(found, float), np.asarray(share, float))
    shares, which = np.unique(f, return_inverse=True)
    (k1, code), where = each_once(k, which.reshape(k.shape))
    f1 = shares[code.astype(np.intp)]
    low, high = k1.copy(), k1.copy()
    part = f1 < 1
    low[part], high[part] = _ends(k1[part], f1[part])
    return low[where].reshape(k.shape), high[where].reshape(k.shape)


def added(
    totals: np.ndarray, lows: np.ndarray, highs: np.ndarray, axis: int = 0
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """
    A sum of independent estimates, with an interval made from theirs.

        T = Σ tᵢ;   low = T − √Σ(tᵢ − lᵢ)²;   high = T + √Σ(uᵢ − tᵢ)²

    One estimate keeps its own interval; so does one beside others that have no doubt.
    Source: Zou & Donner 2008, Statistics in Medicine 27:1693–1702 (from memory); Newcombe 1998 does so for differences.

    >>> added(np.array([40.0, 7.0]), np.array([22.0, 7.0]), np.array([71.0, 7.0]))
    (np.float64(47.0), np.float64(29.0), np.float64(78.0))
    """
    total = totals.sum(axis=axis)
    below = np.sqrt(np.square(totals - lows).sum(axis=axis))
    above = np.sqrt(np.square(highs - totals).sum(axis=axis))
    return total, total - below, total + above


def _ends(k: np.ndarray, f: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    The least N of k or more with P(X ≥ k | N) = I_f(k, N − k + 1) > 0.025, and one less than the first N above k with
    P(X > k | N) = I_f(k + 1, N − k) ≥ 0.975; both are looked for at once.
    """
    is_low = np.repeat([True, False], k.size)
    twice_k, twice_f = np.tile(k, 2), np.tile(f, 2)
    first = np.where(is_low, np.maximum(twice_k, 1), twice_k + 1)
    asked = np.where(is_low, 0.025, 0.975)
    start = np.where(is_low, twice_k, twice_k + 1)
    top = np.ceil(np.where(is_low, twice_k / twice_f + 1, (twice_k + 4 * np.sqrt(twice_k + 4) + 8) / twice_f))

    def is_met(n: np.ndarray) -> np.ndarray:
        chance = incomplete_beta(twice_f, first, np.maximum(n - first + 1, 1e-9))
        return np.where(is_low & (twice_k == 0), True, np.where(is_low, chance > asked, chance >= asked))

    found = _first_whole(is_met, start, top)
    return found[: k.size], found[k.size :] - 1


def _first_whole(is_met, low: np.ndarray, high: np.ndarray) -> np.ndarray:  # type: ignore[no-untyped-def]
    """The first whole number from `low` on at which a condition that stays met is met; it is met at `high`."""
    low, high = low.astype(float), high.astype(float)
    while np.any(low < high):
        middle = np.floor((low + high) / 2)
        met = is_met(middle)
        high = np.where(met, middle, high)
        low = np.where(met, low, np.minimum(middle + 1, high))
    return high
