"""The total from a share: against scipy's binomial distribution, and how often its interval covers the truth."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from narrate.measures.thinning import added, total_from_share


@pytest.mark.parametrize("share", [0.05, 0.125, 0.25, 0.5, 0.9])
@pytest.mark.parametrize("found", [0, 1, 2, 10, 57, 300])
def test_the_ends_are_the_last_totals_that_the_binomial_test_does_not_refuse(found: int, share: float) -> None:
    """Every total from k upwards is tried with scipy; the ends are the least and the greatest that are not refused."""
    totals = np.arange(found, int(found / share * 3 + 200 / share))
    low, high = total_from_share(np.array([found]), np.array([share]))

    assert low[0] == totals[binom.sf(found - 1, totals, share) > 0.025].min()
    assert high[0] == totals[binom.cdf(found, totals, share) > 0.025].max()


@pytest.mark.parametrize("share", [0.125, 0.25, 0.5])
@pytest.mark.parametrize("total", [40, 200, 2000])
def test_the_interval_of_one_class_covers_the_truth_as_often_as_it_says(total: int, share: float) -> None:
    """20,000 draws of a share from known totals of 40 and more: the truth is covered in 95 to 98 %."""
    found = np.random.default_rng(1).binomial(total, share, 20_000)
    low, high = total_from_share(found, np.full(found.size, share))

    assert 0.945 <= np.mean((low <= total) & (total <= high)) <= 0.98


@pytest.mark.parametrize(("total", "share"), [(3, 0.125), (3, 0.5), (10, 0.125), (10, 0.25)])
def test_below_a_few_dozen_items_the_interval_covers_more_often_than_it_says(total: int, share: float) -> None:
    """The exception to 93 to 98 %: an exact interval of whole numbers cannot cover less, and covers up to 100 %."""
    found = np.random.default_rng(1).binomial(total, share, 20_000)
    low, high = total_from_share(found, np.full(found.size, share))

    assert 0.97 <= np.mean((low <= total) & (total <= high)) <= 1.0


@pytest.mark.parametrize(
    ("shares", "totals"),
    [
        ((1.0, 0.5, 0.25), (20, 30, 60)),
        ((0.5, 0.125), (10, 100)),
        ((0.5, 0.25, 0.125), (2, 6, 20)),
        ((0.5, 0.25, 0.125), (100, 200, 400)),
        ((1.0, 0.25), (200, 40)),
    ],
)
def test_the_sum_over_size_classes_covers_the_truth_as_often_as_it_says(shares: tuple, totals: tuple) -> None:
    """Several classes sorted to different shares: the truth is covered in 93 to 98 %."""
    generator = np.random.default_rng(2)
    found = np.stack([generator.binomial(n, f, 20_000) for n, f in zip(totals, shares, strict=True)]).astype(float)
    share = np.broadcast_to(np.array(shares)[:, None], found.shape)
    low, high = total_from_share(found, share)
    _, low, high = added(found / share, low, high)

    assert 0.93 <= np.mean((low <= sum(totals)) & (sum(totals) <= high)) <= 0.98


@given(st.integers(0, 500), st.sampled_from([1.0, 0.5, 0.25, 0.125]))
def test_a_total_is_never_less_than_what_was_found(found: int, share: float) -> None:
    """The ends hold the estimate, and lie at what was found or above it."""
    low, high = total_from_share(np.array([found]), np.array([share]))

    assert found <= low[0] <= max(found / share, found) <= high[0] + 1e-9


def test_what_was_sorted_whole_has_no_doubt() -> None:
    """A share of 1 gives the count itself."""
    low, high = total_from_share(np.array([7]), np.array([1.0]))

    assert (low[0], high[0]) == (7, 7)
