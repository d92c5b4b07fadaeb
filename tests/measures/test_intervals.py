"""Intervals against published values and a general-purpose library."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import beta, chi2

from narrate.measures.intervals import difference_of_shares, poisson, ratio, wilson


@pytest.mark.parametrize(
    ("successes", "trials", "low", "high"),
    [
        # Newcombe 1998, Statistics in Medicine 17:857-872, the four worked examples, method 3 (values from memory,
        # and worked out again from the printed formula).
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0000, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_wilson_meets_newcombes_examples(successes: int, trials: int, low: float, high: float) -> None:
    """The Wilson interval is the one that Newcombe prints, to four places."""
    found_low, found_high = wilson(np.array([successes]), np.array([trials]))

    assert (round(float(found_low[0]), 4), round(float(found_high[0]), 4)) == (low, high)


def test_wilson_of_nothing_is_not_known() -> None:
    """Without trials there is no interval."""
    low, high = wilson(np.array([0]), np.array([0]))

    assert np.isnan(low[0]) and np.isnan(high[0])


def test_wilson_lies_inside_nought_and_one_and_holds_the_share() -> None:
    """The share lies in its interval, and the interval in 0 to 1, for all small tables."""
    n = np.repeat(np.arange(1, 60), 60)
    k = np.minimum(np.tile(np.arange(60), 59), n)
    low, high = wilson(k, n)

    assert np.all((low >= 0) & (low <= k / n + 1e-12) & (high >= k / n - 1e-12) & (high <= 1))


@pytest.mark.parametrize("items", [0, 1, 2, 3, 7, 10, 43, 100, 199, 200])
def test_poisson_ends_are_those_of_the_chi_square_distribution(items: int) -> None:
    """Garwood's exact ends equal half the chi-square quantiles that scipy gives."""
    low, high = poisson(np.array([items]))

    assert low[0] == pytest.approx(chi2.ppf(0.025, 2 * items) / 2 if items else 0.0, rel=1e-9, abs=1e-12)
    assert high[0] == pytest.approx(chi2.ppf(0.975, 2 * items + 2) / 2, rel=1e-9)


@pytest.mark.parametrize("items", [201, 500, 3000, 200_000])
def test_poisson_ends_of_large_counts_are_close_to_exact(items: int) -> None:
    """Above the table the approximation differs from scipy's exact ends by less than 0.01 %."""
    low, high = poisson(np.array([items]))

    assert low[0] == pytest.approx(chi2.ppf(0.025, 2 * items) / 2, rel=1e-4)
    assert high[0] == pytest.approx(chi2.ppf(0.975, 2 * items + 2) / 2, rel=1e-4)


def test_a_ratio_without_denominator_has_a_bound_instead_of_infinity_alone() -> None:
    """Twelve kernels and no cupule: the ratio is open above and has a lower bound."""
    low, high = ratio(np.array([12.0]), np.array([0.0]))

    assert low[0] == pytest.approx(0.025 ** (1 / 12) / (1 - 0.025 ** (1 / 12))) and np.isinf(high[0])


def test_the_ends_of_a_ratio_are_the_exact_ones() -> None:
    """For 12 kernels and 96 cupules the ends are those of scipy's beta distribution."""
    low, high = ratio(np.array([12.0]), np.array([96.0]))
    exact_low, exact_high = beta.ppf(0.025, 12, 97), beta.ppf(0.975, 13, 96)

    assert low[0] == pytest.approx(exact_low / (1 - exact_low), rel=1e-9)
    assert high[0] == pytest.approx(exact_high / (1 - exact_high), rel=1e-9)


def test_difference_of_shares_meets_newcombes_example() -> None:
    """Newcombe 1998, Statistics in Medicine 17:873-890, example a: 56/70 and 48/80 (value from memory)."""
    low, high = difference_of_shares(np.array([48.0]), np.array([80.0]), np.array([56.0]), np.array([70.0]))

    assert (round(float(low[0]), 4), round(float(high[0]), 4)) == (0.0524, 0.3339)


def test_wilson_covers_the_truth_about_as_often_as_it_says() -> None:
    """Over shares and sample numbers met on digs the Wilson interval covers the truth in 93 to 98 % on average."""
    generator = np.random.default_rng(1)
    for n in (12, 40, 200):
        truth = generator.uniform(0.05, 0.95, 20_000)
        k = generator.binomial(n, truth)
        low, high = wilson(k, np.full(k.size, n))

        assert 0.93 <= np.mean((low <= truth) & (truth <= high)) <= 0.98
