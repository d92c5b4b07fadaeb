"""Tests over samples against scipy, statsmodels and printed examples."""

from __future__ import annotations

import numpy as np
import pytest
import statsmodels.api as sm
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats
from statsmodels.stats.multitest import multipletests
from statsmodels.stats.proportion import proportion_confint

from narrate.measures.compared import cramers_v
from narrate.measures.comparison import fisher
from narrate.measures.intervals import clopper_pearson, wilson
from narrate.measures.significance import cliffs_delta, holm, kruskal_wallis, midranks, permutation_p, permuted

FAIR = sm.datasets.fair.load_pandas().data
"""A survey of 6,366 people that statsmodels carries, in the public domain; used here for its groups and counts."""


def one_fisher(table: list[list[int]]) -> float:
    (a, b), (c, d) = table
    return float(fisher(np.array([a]), np.array([a + b]), np.array([c]), np.array([c + d]))[0])


@pytest.mark.parametrize(
    ("table", "p"),
    [
        # Fisher 1935, The Design of Experiments: the lady tasting tea (from memory), and all four cups told right.
        ([[3, 1], [1, 3]], 0.485714),
        ([[4, 0], [0, 4]], 0.0285714),
        # Fisher 1934, Statistical Methods for Research Workers, 5th ed.: convictions of twins (from memory).
        ([[10, 3], [2, 15]], 0.00053672),
        # An encyclopaedia's worked example (from memory).
        ([[1, 9], [11, 3]], 0.00275946),
        # Adams, Kuckelman & Bowyer 2007, Table 6: maize cob parts in 6 of 19 hearths and 7 of 12 firepits.
        ([[6, 13], [7, 5]], 0.2623),
        # Murray & Jackman-Craig 2003, Table 9: late Pueblo II (n = 8) against Great Tower (n = 12): cupule, kernel,
        # juniper, cheno-am. Counts as printed there; p worked out.
        ([[8, 0], [2, 10]], 0.000714),
        ([[3, 5], [0, 12]], 0.0491),
        ([[7, 1], [8, 4]], 0.603),
        ([[4, 4], [3, 9]], 0.356),
    ],
)
def test_fishers_exact_test(table: list[list[int]], p: float) -> None:
    """The two-sided p, to the figures given."""
    assert one_fisher(table) == pytest.approx(p, rel=2e-3)
    assert one_fisher(table) == pytest.approx(stats.fisher_exact(table)[1], rel=1e-9)


@given(st.tuples(*[st.integers(0, 30)] * 4).filter(lambda t: t[0] + t[1] > 0 and t[2] + t[3] > 0))
def test_fisher_is_that_of_scipy(cells: tuple[int, int, int, int]) -> None:
    """For any table of up to thirty a cell."""
    a, b, c, d = cells

    assert one_fisher([[a, b], [c, d]]) == pytest.approx(stats.fisher_exact([[a, b], [c, d]])[1], rel=1e-7)


def test_the_late_drop_of_pine_is_firm_and_cobs_by_hearth_are_not() -> None:
    """
    Adams, Kuckelman & Bowyer 2007, Tables 14 and 6: pine in 21 of 25 early and 19 of 50 late samples; cob parts in 6
    of 19 hearths and 7 of 12 firepits. Counts as printed; the first difference is firm, the second is not.
    """
    assert one_fisher([[21, 4], [19, 31]]) < 0.001
    assert one_fisher([[6, 13], [7, 5]]) > 0.2


@pytest.mark.parametrize(
    ("table", "chi"),
    [
        ([[10, 20], [20, 10]], 6.6667),
        # Greenacre 1984, Theory and Applications of Correspondence Analysis: smoking by staff group.
        ([[4, 2, 3, 2], [4, 3, 7, 4], [25, 10, 12, 4], [18, 24, 33, 13], [10, 6, 7, 2]], 16.4416),
        ([[6, 13], [7, 5]], 2.1621),
    ],
)
def test_cramers_v_is_that_of_scipy(table: list[list[int]], chi: float) -> None:
    """V from chi-square without correction; phi for 2 x 2."""
    x = np.array(table)

    assert stats.chi2_contingency(x, correction=False)[0] == pytest.approx(chi, abs=5e-5)
    assert cramers_v(x) == pytest.approx(stats.contingency.association(x, method="cramer"))


def test_holm_is_that_of_statsmodels() -> None:
    """For forty p values, some equal; a test that was not made stays out of it."""
    p = np.round(np.random.default_rng(1).uniform(0, 0.2, 40), 2)

    assert holm(p) == pytest.approx(multipletests(p, method="holm")[1])
    with_none = holm(np.array([0.01, np.nan, 0.04]))
    assert with_none[[0, 2]] == pytest.approx([0.02, 0.04]) and np.isnan(with_none[1])


def test_ranks_are_those_of_scipy() -> None:
    """Ties share the middle rank."""
    values = np.random.default_rng(2).integers(0, 6, (30, 4)).astype(float)

    assert midranks(values) == pytest.approx(stats.rankdata(values, axis=0))


def test_kruskal_and_wallis_is_that_of_scipy_on_open_data() -> None:
    """Years married and number of children by rating of the marriage, in the survey that statsmodels carries."""
    values = FAIR[["yrs_married", "children"]].to_numpy()[:400]
    group = FAIR["rate_marriage"].to_numpy()[:400].astype(int)
    h, p = kruskal_wallis(values, group)
    for i in range(values.shape[1]):
        expected = stats.kruskal(*(values[group == g, i] for g in np.unique(group)))

        assert (h[i], p[i]) == (pytest.approx(expected[0]), pytest.approx(expected[1], rel=1e-6))


def test_cliffs_delta_comes_from_the_u_of_mann_and_whitney() -> None:
    """delta = 2U/(n1 n2) - 1, with scipy's U, on ages in the same survey."""
    age, affair = FAIR["age"].to_numpy()[::20], FAIR["affairs"].to_numpy()[::20] > 0
    first, second = age[affair], age[~affair]
    u = stats.mannwhitneyu(second, first).statistic

    assert cliffs_delta(first[:, None], second[:, None])[0] == pytest.approx(2 * u / (first.size * second.size) - 1)


def test_wilson_and_clopper_pearson_are_those_of_statsmodels() -> None:
    """All k of 44."""
    k = np.arange(45)
    for name, ours in (("wilson", wilson), ("beta", clopper_pearson)):
        low, high = proportion_confint(k, np.full(45, 44), method=name)
        found = ours(k, np.full(45, 44))

        assert np.allclose(found[0], np.nan_to_num(low), atol=1e-9)
        assert np.allclose(found[1], np.where(np.isnan(high), 1, high), atol=1e-9)


def test_samples_are_permuted_within_their_strata_alone() -> None:
    """Every order gives every sample a place of its own stratum."""
    strata = np.array([0, 2, 1, 0, 1, 2, 2, 0])
    orders = permuted(strata, 200, 1)

    assert np.all(strata[orders] == strata) and np.all(np.sort(orders, axis=1) == np.arange(8))
    assert np.unique(orders, axis=0).shape[0] > 50


def test_the_permutation_of_two_groups_comes_near_fishers_test() -> None:
    """8 of 8 against 2 of 12 (Murray & Jackman-Craig 2003): with 20,000 permutations p lies near the exact 0.000714."""
    there = np.array([1.0] * 8 + [1.0] * 2 + [0.0] * 10)[:, None]
    group = np.array([0] * 8 + [1] * 12)
    strata = np.zeros(20, int)
    p = permutation_p(there, group, strata, permuted(strata, 20_000, 2))

    assert p[0] == pytest.approx(0.000714, abs=0.0005)


def test_like_contexts_are_compared_with_like() -> None:
    """
    Maize lies in hearths and not in pits, and one phase has more hearths. Taken together the phases differ; within
    hearths and within pits they do not.
    """
    kind = np.array([0] * 18 + [1] * 2 + [0] * 2 + [1] * 18)
    phase = np.array([0] * 20 + [1] * 20)
    maize = (kind == 0).astype(float)[:, None]
    together = permutation_p(maize, phase, np.zeros(40, int), permuted(np.zeros(40, int), 999, 3))
    within = permutation_p(maize, phase, kind, permuted(kind, 999, 3))

    assert together[0] < 0.01 and within[0] == 1


def test_p_is_small_as_often_as_it_should_be() -> None:
    """400 comparisons without a difference: p is 0.05 or less in about one of twenty."""
    generator = np.random.default_rng(6)
    there = (generator.random((30, 400)) < 0.4).astype(float)
    group = np.array([0] * 13 + [1] * 17)
    strata = np.array([0, 1] * 15)
    p = permutation_p(there, group, strata, permuted(strata, 999, 5))

    assert 0.01 <= np.mean(p <= 0.05) <= 0.08
