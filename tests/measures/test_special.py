"""The incomplete beta and gamma functions and their inverses against scipy."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import special as reference
from scipy.stats import beta

from narrate.measures.intervals import clopper_pearson, each_once
from narrate.measures.special import (
    incomplete_beta,
    incomplete_beta_inverse,
    incomplete_gamma,
    incomplete_gamma_inverse,
    log_gamma,
)

GENERATOR = np.random.default_rng(3)
A = np.concatenate([GENERATOR.integers(1, 60, 800), GENERATOR.integers(1, 30_000, 800)]).astype(float)
B = np.concatenate([GENERATOR.integers(1, 60, 800), GENERATOR.integers(1, 30_000, 800)]).astype(float)


def test_log_gamma_is_that_of_scipy() -> None:
    """Whole and broken numbers up to a hundred thousand, to twelve places of the value."""
    x = np.concatenate([A, GENERATOR.uniform(0.1, 50, 500), [1e5]])

    assert np.allclose(log_gamma(x), reference.gammaln(x), rtol=1e-12, atol=1e-12)


def test_the_incomplete_beta_function_is_that_of_scipy() -> None:
    """Over the whole range of x, for small and large counts."""
    x = GENERATOR.uniform(0, 1, A.size)

    assert np.max(np.abs(incomplete_beta(x, A, B) - reference.betainc(A, B, x))) < 1e-10


@pytest.mark.parametrize("p", [0.005, 0.025, 0.5, 0.975, 0.995])
def test_the_inverse_of_the_incomplete_beta_function_is_that_of_scipy(p: float) -> None:
    """To ten significant figures."""
    assert np.allclose(incomplete_beta_inverse(p, A, B), reference.betaincinv(A, B, p), rtol=1e-10, atol=0)


def test_the_incomplete_gamma_function_is_that_of_scipy() -> None:
    """Below and above its mean."""
    x = A * GENERATOR.uniform(0, 3, A.size)

    assert np.max(np.abs(incomplete_gamma(x, A) - reference.gammainc(A, x))) < 1e-10


@pytest.mark.parametrize("p", [0.025, 0.5, 0.975])
def test_the_inverse_of_the_incomplete_gamma_function_is_that_of_scipy(p: float) -> None:
    """To ten significant figures."""
    assert np.allclose(incomplete_gamma_inverse(p, A), reference.gammaincinv(A, p), rtol=1e-10, atol=0)


@pytest.mark.parametrize(
    ("successes", "trials", "low", "high"),
    [
        # Newcombe 1998, Statistics in Medicine 17:857-872, the four worked examples, method 5 (from memory), and worked
        # out again from the definition.
        (81, 263, 0.2527, 0.3676),
        (15, 148, 0.0578, 0.1617),
        (0, 20, 0.0, 0.1684),
        (1, 29, 0.0009, 0.1776),
        # Worked out from the definition alone.
        (23, 60, 0.2607, 0.5179),
        (5, 10, 0.1871, 0.8129),
        (0, 10, 0.0, 0.3085),
        (10, 10, 0.6915, 1.0),
        (0, 8, 0.0, 0.3694),
        (8, 8, 0.6306, 1.0),
        (3, 25, 0.0255, 0.3122),
    ],
)
def test_clopper_and_pearson_meet_newcombes_examples(successes: int, trials: int, low: float, high: float) -> None:
    """The exact interval is the one printed, to four places."""
    found = clopper_pearson(np.array([successes]), np.array([trials]))

    assert (round(float(found[0][0]), 4), round(float(found[1][0]), 4)) == (low, high)


def test_clopper_and_pearson_are_the_beta_quantiles_of_scipy() -> None:
    """For every k of 0 to 40 of 40, to ten figures."""
    k = np.arange(41)
    low, high = clopper_pearson(k, np.full(41, 40))

    assert np.allclose(low[1:], beta.ppf(0.025, k[1:], 41 - k[1:]), rtol=1e-10)
    assert np.allclose(high[:-1], beta.ppf(0.975, k[:-1] + 1, 40 - k[:-1]), rtol=1e-10)


def test_counts_of_nine_digits_are_not_taken_for_each_other() -> None:
    """Two pairs of very large counts stay two pairs."""
    (first, second), where = each_once(np.array([999_999_999, 999_999_998]), np.array([1, 999_999_999]))

    assert (first[where], second[where])[0].tolist() == [999_999_999, 999_999_998]
    assert second[where].tolist() == [1, 999_999_999]
