"""Calendar years and years before present."""

from __future__ import annotations

import pytest

from narrate.model.style import before_present

YEARS = {950: 1000, 1350: 600, 1949: 1, 1950: 0, 1: 1949, -1: 1950, -44: 1993, -500: 2449, -9701: 11650}
"""
Calendar year (BC below 0) -> years before AD 1950. BP counts from AD 1950 (Stuiver & Polach 1977, from memory).
1 BC and AD 1 follow each other, as between ISO 8601's years 0000 and 0001. -9701 is the base of the
Holocene: 11,700 years before AD 2000 ("b2k"; Walker et al. 2009, from memory), so 11,650 before 1950.
"""


@pytest.mark.parametrize("year", YEARS)
def test_years_before_present_count_from_1950_without_a_year_0(year: int) -> None:
    """1 BC is one year before AD 1, and 44 BC is 1993 BP."""
    assert before_present(year) == YEARS[year]


def test_astronomical_years_give_the_same() -> None:
    """Checked against numpy's calendar (ISO 8601, with a year 0): n BC is its year 1 - n."""
    import numpy as np

    for bc in (1, 44, 500, 1200):
        years = (np.datetime64("1950") - np.datetime64(f"{1 - bc:05d}" if bc > 1 else "0000")).astype(int)
        assert before_present(-bc) == years


def test_year_0_is_refused() -> None:
    """There is none."""
    with pytest.raises(ValueError, match="there is no year 0"):
        before_present(0)
