"""From values to places."""

from __future__ import annotations

import pytest

from narrate.charts.scales import LinearScale, LogScale, log_scale


@pytest.mark.parametrize(
    ("top", "ticks"),
    [(1, (0, 0.5, 1)), (3, (0, 1, 2, 3)), (312, (0, 100, 200, 300)), (3000, (0, 1000, 2000, 3000)), (45, (0, 20, 40))],
)
def test_linear_ticks_are_round(top, ticks):
    """Steps of 1, 2 or 5, none above the top."""
    assert LinearScale(top=top, start=0, end=1).ticks() == pytest.approx(ticks)


def test_linear_scale_keeps_proportion():
    """Half the value lies half way."""
    assert LinearScale(top=10, start=100, end=300).at(5) == 200


def test_log_scale_gives_equal_steps_to_equal_ratios():
    """From 1 to 10 is as far as from 10 to 100."""
    scale = LogScale(low=1, high=100, start=0, end=200)

    assert [scale.at(value) for value in (1, 10, 100)] == pytest.approx([0, 100, 200])


@pytest.mark.parametrize("values", [[0.003], [7.0], [1.0, 3000.0], [0.02, 0.9, 44.0], [1e-9, 1e9]])
def test_log_scale_holds_all_values_and_has_ticks(values):
    """One value alone has a scale too."""
    scale = log_scale(values, 0, 100)

    assert scale.low <= min(values) * 1.001 and scale.high >= max(values) * 0.999
    assert len(scale.ticks()) >= 2


def test_log_ticks_of_a_short_scale_are_1_2_5():
    """Two decades or fewer have ticks between the decades."""
    assert LogScale(low=0.2, high=5, start=0, end=1).ticks() == pytest.approx((0.2, 0.5, 1, 2, 5))
