"""Intervals that telling works out for itself equal those of the room that measures, and published values."""

from __future__ import annotations

import numpy as np
import pytest

from narrate.measures import intervals as measured
from narrate.telling.intervals import newcombe, wilson

SHARES = [(k, n) for n in (1, 2, 5, 9, 20, 51, 263) for k in sorted({0, 1, n // 3, n // 2, n - 1, n}) if 0 <= k <= n]


def test_wilson_interval_agrees_with_newcombe():
    """81 of 263 gives 0.2553 to 0.3662 (Newcombe 1998, Statistics in Medicine 17:857–872, table I; from memory)."""
    low, high = wilson(81, 263)

    assert (round(low, 4), round(high, 4)) == (0.2553, 0.3662)


@pytest.mark.parametrize(("k", "n"), SHARES)
def test_shares_have_the_interval_that_is_measured(k: int, n: int):
    """A share told has the ends that the measures give it."""
    low, high = measured.wilson(np.array([float(k)]), np.array([float(n)]))

    assert wilson(k, n) == pytest.approx((low[0], high[0]), abs=1e-12)


@pytest.mark.parametrize("first", SHARES[::3])
@pytest.mark.parametrize("second", SHARES[1::4])
def test_differences_have_the_interval_that_is_measured(first: tuple[int, int], second: tuple[int, int]):
    """A difference told has the ends that the measures give it."""
    arrays = [np.array([float(x)]) for x in (*first, *second)]
    low, high = measured.difference_of_shares(*arrays)

    assert newcombe(first, second) == pytest.approx((low[0], high[0]), abs=1e-12)


def test_a_share_of_no_samples_has_no_interval():
    """Nothing was looked at, so nothing is said."""
    with pytest.raises(ValueError, match="at least one sample"):
        wilson(0, 0)
