"""Numbers as readers take them."""

from __future__ import annotations

import pytest

from narrate.model.measurement import Measurement
from narrate.telling import numbers


def a_measurement(
    value: float | None, low: float | None = None, high: float | None = None, **more: object
) -> Measurement:
    return Measurement(measure="density", value=value, low=low, high=high, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("value", "low", "high", "told"),
    [
        (8.222, 6.9, 9.7, "8.2"),
        (0.125, 0.07, 0.23, "0.12"),
        (148.3, 110, 190, "148"),
        (1483.0, 800, 2300, "1,500"),
        (12.3, None, None, "12.3"),
        (0.684, None, None, "0.68"),
        (0.0, None, None, "0"),
    ],
)
def test_figures_are_as_fine_as_the_interval_allows(value: float, low: float | None, high: float | None, told: str):
    """A value is rounded to two figures of the width of its interval; without one, to three figures."""
    assert numbers.measured(a_measurement(value, low, high)) == told


def test_interval_takes_an_en_dash():
    """A range is written with an en dash."""
    assert numbers.interval(a_measurement(8.222, 6.91, 9.68)) == "6.9–9.7"


def test_open_interval_is_told_as_a_bound():
    """An interval that is open above is told by its lower end."""
    assert numbers.interval(a_measurement(4.0, 2.0, None, is_open_above=True)) == "at least 2.00"


@pytest.mark.parametrize(
    ("number", "told"),
    [(0, "no"), (1, "one"), (9, "nine"), (10, "10"), (1402, "1,402"), (12345, "12,345")],
)
def test_small_counts_are_words(number: int, told: str):
    """Counts below ten are words, larger ones figures with their thousands set apart."""
    assert numbers.count(number) == told


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (1, "one"),
        (12, "12"),
        (20, "20"),
        (21, "21"),
        (94, "94"),
        (95, "95"),
        (104, "about 100"),
        (100, "100"),
        (148, "about 150"),
        (1402, "about 1,400"),
    ],
)
def test_visitors_read_rounded_numbers(number: int, told: str):
    """Larger counts are rounded for visitors and said to be so."""
    assert numbers.about(number) == told


@pytest.mark.parametrize(
    ("share", "told"),
    [(0.0, "0%"), (0.001, "under 1%"), (0.453, "45%"), (0.998, "over 99%"), (1.0, "100%")],
)
def test_a_share_is_never_rounded_to_all_or_nothing(share: float, told: str):
    """0% and 100% are kept for none and all."""
    assert numbers.percent(share) == told


@pytest.mark.parametrize(
    ("start", "end", "dates", "told"),
    [
        (950, 1050, "cal AD", "cal AD 950–1050"),
        (-1200, -1100, "cal BC", "1200–1100 cal BC"),
        (-100, 50, "", "100 BC–AD 50"),
        (None, 900, "", "until AD 900"),
        (900, None, "", "from AD 900"),
        (None, None, "cal AD", ""),
        (950, 1050, "<b>", "AD 950–1050"),
    ],
)
def test_years_are_told_with_their_era(start: int | None, end: int | None, dates: str, told: str):
    """Negative years are BC, and only the word 'cal' is taken from what a person wrote."""
    assert numbers.years(start, end, dates) == told


def test_a_sentence_that_would_open_with_a_figure_opens_with_words():
    """No sentence begins with a numeral."""
    assert numbers.opening_in_words("96 cupules lay there") == "ninety-six cupules lay there"


def test_halves_of_a_litre_all_go_up():
    """208.5 and 411.5 litres round the same way (common practice, no source)."""
    assert (numbers.figure(208.5, 0), numbers.figure(411.5, 0)) == ("209", "412")
