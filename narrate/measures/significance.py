"""Tests whose unit is the sample: ranks, permutations within like contexts, and what many tests at once cost."""

from __future__ import annotations

import numpy as np

from narrate.measures.special import incomplete_gamma


def holm(p: np.ndarray) -> np.ndarray:
    """
    p values made to allow for all tests of a table at once.

        in rising order pᵢ becomes max over j ≤ i of min(1, (m − j + 1) pⱼ);   m tests

    p:       one value a test; NaN is no test and stays NaN.
    Source:  Holm 1979, Scandinavian Journal of Statistics 6:65–70 (from memory).

    >>> holm(np.array([0.01, 0.04, 0.03, 0.005])).round(6).tolist()
    [0.03, 0.06, 0.06, 0.02]
    """
    p = np.asarray(p, float)
    out = np.full(p.shape, np.nan)
    tested = np.flatnonzero(np.isfinite(p))
    order = tested[np.argsort(p[tested], kind="stable")]
    steps = p[order] * np.arange(order.size, 0, -1)
    out[order] = np.minimum(np.maximum.accumulate(steps), 1) if order.size else steps
    return out


def midranks(values: np.ndarray) -> np.ndarray:
    """
    Ranks of each column from 1, equal values sharing the middle of theirs.

    values:  (samples, things).

    >>> midranks(np.array([[3.0], [1.0], [3.0], [0.0]])).ravel().tolist()
    [3.5, 2.0, 3.5, 1.0]
    """
    values = np.asarray(values, float)
    out = np.empty(values.shape)
    for column in range(values.shape[1]):
        _, where, times = np.unique(values[:, column], return_inverse=True, return_counts=True)
        out[:, column] = (np.cumsum(times) - (times - 1) / 2)[where.ravel()]
    return out


def kruskal_wallis(values: np.ndarray, group: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Kruskal and Wallis' H with its correction for ties, and its p by the chi-square distribution.

        H = (n − 1) Σ n_g (r̄_g − r̄)² / Σ (r − r̄)²

    values:  (samples, things).
    group:   (samples,) whole numbers from 0.
    Gives:   H and p, one for each thing; NaN where all values are equal. With two groups it is the two-sided rank test
             of Wilcoxon, Mann and Whitney without correction for continuity.
    Misleads: the chi-square distribution is rough below five samples a group: permute then.
    Source:  Kruskal & Wallis 1952, JASA 47:583–621 (from memory).

    >>> h, p = kruskal_wallis(np.array([[1.0], [2.0], [3.0], [4.0], [5.0], [6.0]]), np.array([0, 0, 0, 1, 1, 1]))
    >>> h.round(4).tolist(), p.round(4).tolist()
    ([3.8571], [0.0495])
    """
    ranks = midranks(values)
    groups, where = np.unique(group, return_inverse=True)
    member = np.eye(groups.size)[where]
    centred = ranks - ranks.mean(axis=0)
    means = member.T @ centred / member.sum(axis=0)[:, None]
    with np.errstate(invalid="ignore", divide="ignore"):
        h = (len(ranks) - 1) * (member.sum(axis=0)[:, None] * means**2).sum(axis=0) / (centred**2).sum(axis=0)
    p = 1 - incomplete_gamma(np.nan_to_num(h) / 2, np.full(h.shape, (groups.size - 1) / 2))
    return h, np.where(np.isfinite(h), p, np.nan)


def cliffs_delta(first: np.ndarray, second: np.ndarray) -> np.ndarray:
    """
    How much more often a sample of the second group has the larger value than the other way round.

        δ = P(second > first) − P(second < first)

    first, second:  (samples, things).
    Gives:   −1 to 1, one for each thing; NaN where a group is empty.
    Source:  Cliff 1993, Psychological Bulletin 114:494–509 (from memory).

    >>> cliffs_delta(np.array([[1.0], [2.0]]), np.array([[2.0], [3.0]])).tolist()
    [0.75]
    """
    if not len(first) or not len(second):
        return np.full(first.shape[1], np.nan)
    return np.sign(second[:, None, :] - first[None, :, :]).mean(axis=(0, 1))


def permuted(strata: np.ndarray, permutations: int, seed: int) -> np.ndarray:
    """
    Orders of the samples in which each stays within its stratum.

    strata:   (samples,) whole numbers.
    Gives:    (permutations, samples) indices; the same seed gives the same orders.

    >>> bool(np.all(np.array([0, 1, 0, 1])[permuted(np.array([0, 1, 0, 1]), 5, 1)] == [0, 1, 0, 1]))
    True
    """
    generator = np.random.default_rng(seed)
    strata = np.asarray(strata)
    places = np.argsort(strata, kind="stable")
    drawn = generator.random((permutations, strata.size))
    shuffled = np.lexsort((drawn, np.broadcast_to(strata, drawn.shape)), axis=1)
    orders = np.empty(drawn.shape, np.intp)
    orders[:, places] = shuffled
    return orders


def permutation_p(values: np.ndarray, group: np.ndarray, strata: np.ndarray, orders: np.ndarray) -> np.ndarray:
    """
    Chance that groups differ at least as much as seen, if samples had been dealt to them within their strata.

        statistic = Σ over groups (Σ residual)² / n_g;   residual: value less the mean of its stratum

    values:   (samples, things): presence (0 or 1) or ranks.
    group:    (samples,) whole numbers.
    strata:   (samples,) whole numbers, within which `orders` shuffle.
    orders:   (permutations, samples) from `permuted`.
    Gives:    p, one for each thing: (1 + draws at least as far apart) / (1 + draws).
    Source:   Phipson & Smyth 2010, Statistical Applications in Genetics and Molecular Biology 9:39, for the 1 (from
              memory); permutation within strata: common practice, no source.
    """
    _, stratum = np.unique(strata, return_inverse=True)
    groups, where = np.unique(group, return_inverse=True)
    member = np.eye(stratum.max(initial=-1) + 1)[stratum]
    residual = values - member @ (member.T @ values / np.maximum(member.sum(axis=0), 1)[:, None])
    sizes = np.bincount(where)

    def apart(labels: np.ndarray) -> np.ndarray:
        return sum(((labels == g) @ residual) ** 2 / sizes[g] for g in range(groups.size))  # type: ignore[return-value]

    seen = apart(where[None, :])
    at_least = (apart(where[orders]) >= seen * (1 - 1e-9) - 1e-12).sum(axis=0)
    return (1 + at_least) / (1 + len(orders))
