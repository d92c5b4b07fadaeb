"""95 % intervals for counts, shares, ratios and differences, for whole arrays at once."""

from __future__ import annotations

from functools import cache

import numpy as np

from narrate.measures.special import incomplete_beta_inverse, incomplete_gamma_inverse

Z = 1.959963984540054
"""Standard normal quantile for a two-sided 95 % interval."""

_EXACT_UP_TO = 200
_FEW_KEYS = 4_000_000


def wilson(successes: np.ndarray, trials: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Wilson score interval of a share.

        (p + z²/2n ± z·√(p(1−p)/n + z²/4n²)) / (1 + z²/n),   p = k/n

    successes:  k, from 0 to n.
    trials:     n; where n is 0 both ends are NaN.
    Gives:      lower and upper end, each from 0 to 1.
    Source:     Wilson 1927, JASA 22:209–212; Newcombe 1998, Statistics in Medicine 17:857–872, method 3.

    >>> low, high = wilson(np.array([81, 0]), np.array([263, 20]))
    >>> low.round(4).tolist(), high.round(4).tolist()
    ([0.2553, 0.0], [0.3662, 0.1611])
    """
    k, n = np.asarray(successes, float), np.asarray(trials, float)
    with np.errstate(invalid="ignore", divide="ignore"):
        p = k / n
        middle = p + Z * Z / (2 * n)
        half = Z * np.sqrt(np.maximum(p * (1 - p) / n + Z * Z / (4 * n * n), 0))
        scale = 1 + Z * Z / n
        low = np.where(k <= 0, 0.0, (middle - half) / scale)
        high = np.where(k >= n, 1.0, (middle + half) / scale)
    empty = n <= 0
    return np.where(empty, np.nan, np.clip(low, 0, 1)), np.where(empty, np.nan, np.clip(high, 0, 1))


def poisson(items: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Exact (central) interval of the mean of a count.

        P(X ≥ k | low) = P(X ≤ k | high) = 0.025

    items:   k, zero or more; between whole numbers the ends are interpolated.
    Gives:   lower and upper end. From 200 items on, Wilson and Hilferty's approximation, which there
             differs from the exact ends by less than 0.01 %.
    Source:  Garwood 1936, Biometrika 28:437–442; Wilson & Hilferty 1931, PNAS 17:684–688 (both from memory).

    >>> low, high = poisson(np.array([0, 10]))
    >>> low.round(3).tolist(), high.round(3).tolist()
    ([0.0, 4.795], [3.689, 18.39])
    """
    k = np.asarray(items, float)
    exact_low, exact_high = _exact_poisson_ends()
    return _poisson_end(k, exact_low, 0, -Z), _poisson_end(k, exact_high, 1, Z)


def weighted_poisson(total: np.ndarray, variance: np.ndarray, heaviest: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Interval of a weighted sum of counts, such as items scaled up for the unsorted share.

        low = V/T · G(0.025, T²/V);   high = (V + w²)/(T + w) · G(0.975, (T + w)²/(V + w²));   G the gamma quantile

    total:     T = Σ wᵢ kᵢ.
    variance:  V = Σ wᵢ² kᵢ.
    heaviest:  w, the largest weight that a further item could have had.
    Gives:     lower and upper end; with one weight alone they are the exact Poisson ends times it.
    Source:    Fay & Feuer 1997, Statistics in Medicine 16:791–801 (from memory).

    >>> low, high = weighted_poisson(np.array([40.0]), np.array([160.0]), np.array([4.0]))
    >>> low.round(2).tolist(), high.round(2).tolist()
    ([19.18], [73.56])
    """
    more, spread = total + heaviest, variance + heaviest * heaviest
    found = total > 0
    scale = np.where(found, variance, 0) / np.where(found, total, 1)
    exact_low, exact_high = _exact_poisson_ends()
    low = _poisson_end(np.where(found, total / np.where(found, scale, 1), 0), exact_low, 0, -Z)
    high = _poisson_end(more * more / spread - 1, exact_high, 1, Z)
    return low * scale, high * spread / more


def clopper_pearson(successes: np.ndarray, trials: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Exact interval of a share: it never covers less often than it says, and with few trials more often.

        I_low(k, n − k + 1) = 0.025;   I_high(k + 1, n − k) = 0.975;   I the incomplete beta function

    successes:  k, from 0 to n.
    trials:     n; where n is 0 both ends are NaN.
    Gives:      lower and upper end, each from 0 to 1.
    Source:     Clopper & Pearson 1934, Biometrika 26:404–413 (from memory).

    >>> low, high = clopper_pearson(np.array([81, 0]), np.array([263, 20]))
    >>> low.round(4).tolist(), high.round(4).tolist()
    ([0.2527, 0.0], [0.3676, 0.1684])
    """
    k, n = np.broadcast_arrays(np.asarray(successes, float), np.asarray(trials, float))
    low, high = np.empty(k.shape), np.empty(k.shape)
    is_known = (n <= _KnownShares.MOST) & (k >= 0) & (k <= n) & (k == np.floor(k)) & (n == np.floor(n))
    low[is_known], high[is_known] = _known_shares().of(k[is_known], n[is_known])
    if not is_known.all():
        (k1, n1), where = each_once(k[~is_known], n[~is_known])
        ends = _exact_ends(k1, n1)
        low[~is_known], high[~is_known] = ends[0][where], ends[1][where]
    return low, high


def _exact_ends(k: np.ndarray, n: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    low, high = np.zeros(k.shape), np.ones(k.shape)
    above, below = (k > 0) & (n > 0), (k < n) & (n > 0)
    low[above] = incomplete_beta_inverse(0.025, k[above], n[above] - k[above] + 1)
    high[below] = incomplete_beta_inverse(0.975, k[below] + 1, n[below] - k[below])
    low[n <= 0] = high[n <= 0] = np.nan
    return low, high


class _KnownShares:
    """Exact ends of shares of small whole numbers, each worked out once: the same few turn up a million times."""

    MOST = 1023
    """Trials up to which ends are kept: 8 MB."""

    def __init__(self) -> None:
        size = (self.MOST + 1) * (self.MOST + 2) // 2
        self._low, self._high = np.empty(size), np.empty(size)
        self._is_there = np.zeros(size, bool)

    def of(self, k: np.ndarray, n: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        place = (n * (n + 1) / 2 + k).astype(np.intp)
        missing = place[~self._is_there[place]]
        if missing.size:
            _, first = np.unique(missing, return_index=True)
            lacking = np.flatnonzero(~self._is_there[place])[first]
            own = place[lacking]
            self._low[own], self._high[own] = _exact_ends(k[lacking], n[lacking])
            self._is_there[own] = True
        return self._low[place], self._high[place]


@cache
def _known_shares() -> _KnownShares:
    return _KnownShares()


def each_once(*parts: np.ndarray) -> tuple[tuple[np.ndarray, ...], np.ndarray]:
    """
    The different tuples of several arrays of numbers, and for each element which of them it is.

    Tables of counts repeat themselves: what is slow to work out is worked out once for each tuple.

    >>> (first, second), where = each_once(np.array([3, 1, 3]), np.array([5, 2, 5]))
    >>> first.tolist(), second.tolist(), where.tolist()
    ([1.0, 3.0], [2.0, 5.0], [1, 0, 1])
    """
    flat = [np.asarray(part, float).ravel() for part in parts]
    is_whole = all(np.array_equal(part, np.floor(part)) for part in flat)
    # Numbers between whole ones (weighted pieces, expected counts) have no place in the key below.
    if not is_whole or np.prod([float(part.max(initial=0)) + 1 for part in flat]) > 2.0**53:
        rows, where = np.unique(np.stack(flat), axis=1, return_inverse=True)
        return tuple(rows), where.ravel()
    key = flat[0].copy()
    for part in flat[1:]:
        key = key * (float(part.max(initial=0)) + 1) + part
    most = int(key.max(initial=0))
    if most < _FEW_KEYS:
        # So few possible tuples are told apart by marking them, without sorting.
        whole = key.astype(np.intp)
        first = np.full(most + 1, -1)
        first[whole[::-1]] = np.arange(whole.size - 1, -1, -1)
        found = np.flatnonzero(first >= 0)
        number = np.empty(most + 1, np.intp)
        number[found] = np.arange(found.size)
        return tuple(part[first[found]] for part in flat), number[whole]
    _, first, where = np.unique(key, return_index=True, return_inverse=True)
    return tuple(part[first] for part in flat), where


def ratio(of: np.ndarray, to: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Exact interval of a ratio of two counts, from the exact interval of the share of the first in both.

        s = of / (of + to);   ratio = s / (1 − s), taken at both ends of the interval of s

    of, to:  items, zero or more. Where both are 0 both ends are NaN; where `to` is 0 the upper end is infinite
             and the lower end is a bound; where `of` is 0 the lower end is 0.
    Gives:   lower and upper end, zero or more.
    Source:  conditioning on the total, as for two Poisson counts (Przyborowski & Wilenski 1940, Biometrika 31:313–323);
             Clopper & Pearson 1934 for the share (both from memory).

    >>> low, high = ratio(np.array([12.0, 0.0]), np.array([96.0, 20.0]))
    >>> low.round(3).tolist(), high.round(3).tolist()
    ([0.062, 0.0], [0.229, 0.203])
    """
    low, high = clopper_pearson(of, np.asarray(of, float) + np.asarray(to, float))
    with np.errstate(invalid="ignore", divide="ignore"):
        return low / (1 - low), np.where(high >= 1, np.inf, high / (1 - high))


def difference_of_shares(
    k1: np.ndarray, n1: np.ndarray, k2: np.ndarray, n2: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """
    Interval of p2 − p1 for two independent shares, by Newcombe's hybrid score method.

        d − √((p2 − l2)² + (u1 − p1)²),   d + √((u2 − p2)² + (p1 − l1)²),   l and u the Wilson ends

    Gives:   lower and upper end, from −1 to 1; NaN where either n is 0.
    Source:  Newcombe 1998, Statistics in Medicine 17:873–890, method 10 (from memory).

    >>> low, high = difference_of_shares(np.array([48.]), np.array([80.]), np.array([56.]), np.array([70.]))
    >>> low.round(4).tolist(), high.round(4).tolist()
    ([0.0524], [0.3339])
    """
    l1, u1 = wilson(k1, n1)
    l2, u2 = wilson(k2, n2)
    with np.errstate(invalid="ignore", divide="ignore"):
        p1, p2 = np.asarray(k1, float) / n1, np.asarray(k2, float) / n2
        d = p2 - p1
        return d - np.hypot(p2 - l2, u1 - p1), d + np.hypot(u2 - p2, p1 - l1)


def _poisson_end(k: np.ndarray, exact: np.ndarray, shift: int, z: float) -> np.ndarray:
    """One end, from the exact ones up to a few hundred; between whole numbers on a straight line."""
    whole = np.clip(np.nan_to_num(k), 0, _EXACT_UP_TO).astype(np.intp)
    below = exact[whole]
    end = below + (k - whole) * (exact[np.minimum(whole + 1, _EXACT_UP_TO)] - below)
    far = k > _EXACT_UP_TO
    if far.any():
        end[far] = _wilson_hilferty(k[far] + shift, z)
    return end


def _wilson_hilferty(k: np.ndarray, z: float) -> np.ndarray:
    root = 1 - 1 / (9 * k) + z / (3 * np.sqrt(k))
    return k * root * root * root


@cache
def _exact_poisson_ends() -> tuple[np.ndarray, np.ndarray]:
    k = np.arange(_EXACT_UP_TO + 1)
    low = np.concatenate([[0.0], incomplete_gamma_inverse(0.025, k[1:])])
    return low, incomplete_gamma_inverse(0.975, k + 1)
