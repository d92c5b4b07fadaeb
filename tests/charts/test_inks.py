"""Colours that can be told from their ground, in light and in dark."""

from __future__ import annotations

import pytest

from narrate.charts.inks import INKS, SERIES, SHAPES, series, stylesheet, with_fixed_inks
from tests.charts.every_kind import a_small_dig, draw


def contrast(one: str, other: str) -> float:
    """Contrast ratio as defined in WCAG 2.2, W3C Recommendation 2023, 'contrast ratio' and 'relative luminance'."""

    def luminance(colour: str) -> float:
        channels = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_contrast_of_black_on_white_is_21():
    """The measure used below gives the value that WCAG 2.2 names as the largest."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", SERIES)
def test_marks_reach_3_to_1(name, scheme):
    """WCAG 2.2, success criterion 1.4.11. Hatches are ground on ink, so the same holds for them."""
    assert contrast(getattr(INKS[name], scheme), getattr(INKS["ground"], scheme)) >= 3


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", ["ink", "soft"])
def test_words_reach_4_5_to_1(name, scheme):
    """WCAG 2.2, success criterion 1.4.3."""
    assert contrast(getattr(INKS[name], scheme), getattr(INKS["ground"], scheme)) >= 4.5


def test_light_inks_are_markers():
    """No two inks share a light colour, or one would be taken for the other when properties are put in."""
    assert len({ink.light for ink in INKS.values()}) == len(INKS)


def test_series_repeat_late():
    """42 phases have 42 different marks."""
    assert len({series(n) for n in range(42)}) == len(SERIES) * len(SHAPES)


def test_stylesheet_names_every_property():
    """A page that sets the dark scheme sets all of it."""
    assert stylesheet("dark").count("--chart-") == len(INKS)
    assert "--chart-2: #e39166;" in stylesheet("dark")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_fixed_inks_leave_no_property(scheme):
    """A document whose reader knows no custom properties gets plain colours."""
    chart = draw("months", *a_small_dig())
    fixed = with_fixed_inks(chart.svg, scheme)

    assert "var(" not in fixed
    assert getattr(INKS["ink"], scheme) in fixed
