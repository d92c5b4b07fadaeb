"""Maize kernels against cupules."""

from __future__ import annotations

import re

import pytest

from narrate.charts import kernels_and_cupules
from tests.charts.chart_builders import a_measurement, a_project, found_in, some_findings, some_packs


def chart_of(**contexts):
    """Contexts by id: kernels, cupules, and the measurement of their ratio."""
    project = a_project({id: ("pit", "early") for id in contexts})
    found = [
        found_in(
            "context",
            id,
            kernels=a_measurement(k),
            cupules=a_measurement(c),
            **({"kernels_per_cupule": r} if r else {}),
        )
        for id, (k, c, r) in contexts.items()
    ]
    return kernels_and_cupules.draw(some_findings(*found), project, some_packs(), "k")


FEW, MANY, UNSURE = a_measurement(0.1, 0.05, 0.2), a_measurement(9.0, 5.0, 14.0), a_measurement(2.0, 1.0, 4.0)


def test_title_counts_contexts_whose_interval_excludes_whole_ears():
    """Two fall clearly short, one clearly exceeds, one may be either."""
    chart = chart_of(A=(4, 40, FEW), B=(5, 50, FEW), C=(45, 5, MANY), D=(8, 4, UNSURE))

    short = "In two of 4 contexts with maize, clearly fewer kernels lay than whole ears hold"
    assert chart.title == f"{short}; in one, clearly more"


def test_nothing_clear_is_said_to_be_unclear():
    """An interval that holds 2 decides nothing."""
    assert (
        chart_of(A=(8, 4, UNSURE)).title
        == "1 context with maize: in none do kernels and cupules clearly depart from whole ears"
    )


def test_without_intervals_nothing_is_called_clear():
    """Where the ratio was not measured the title only says what is shown."""
    assert chart_of(A=(8, 4, None)).title == "Kernels against cupules in 1 context with maize"


def test_whole_ears_rise_at_45_degrees_through_2_to_1():
    """The line runs through two kernels to one cupule: ears of maize carry paired spikelets (from memory)."""
    svg = chart_of(A=(1, 100, FEW), B=(100, 1, MANY)).svg
    line = re.search(r'<path d="M ([\d.]+) ([\d.]+) L ([\d.]+) ([\d.]+)" style="fill: none; stroke-dasharray: 6,4', svg)
    x0, y0, x1, y1 = map(float, line.groups())

    ten, hundred = (float(re.search(rf'x="([\d.]+)" y="[\d.]+">{tick}</text>', svg)[1]) for tick in (10, 100))
    level = float(re.findall(r'y="([\d.]+)">10</text>', svg)[1]) - 4
    height_over_ten_cupules = level - (y0 - (ten - x0))

    assert x1 - x0 == pytest.approx(y0 - y1, abs=0.1)
    assert 10 ** (height_over_ten_cupules / (hundred - ten)) == pytest.approx(2, abs=0.02)


def test_contexts_without_maize_are_not_points():
    """Neither kernels nor cupules: nothing to show, and no row."""
    chart = chart_of(A=(8, 4, UNSURE), B=(0, 0, a_measurement(None, reason="no maize")))

    assert [row[0] for row in chart.rows] == ["A"]


def test_no_cupules_lie_in_the_lane_of_none():
    """Kernels alone are drawn left of the scale, and the table says why there is no ratio."""
    chart = chart_of(A=(8, 0, a_measurement(None, 0.9, None, is_open_above=True, reason="no cupules")))

    assert chart.svg.count(">none</text>") == 2
    assert chart.rows == (("A", "Early", "8", "0", "no cupules", "0.9", "no upper end"),)


def test_points_on_one_place_share_a_label():
    """Three contexts with one cupule each are one mark with three names."""
    assert ">A, B and C</text>" in chart_of(A=(0, 1, FEW), B=(0, 1, FEW), C=(0, 1, FEW)).svg


def test_every_context_of_a_common_dig_is_labelled():
    """Fifteen contexts, fifteen ids."""
    contexts = {f"C{n:02d}": ((n * 7) % 40 + 1, (n * n * 3) % 90 + 1, UNSURE) for n in range(15)}
    svg = chart_of(**contexts).svg

    assert [id for id in contexts if f">{id}</text>" not in svg] == []
