"""Items per litre of each context."""

from __future__ import annotations

from narrate.charts import density
from tests.charts.chart_builders import a_measurement, a_project, found_in, some_findings, some_packs


def chart_of(densities, phases=None):
    project = a_project({id: ("hearth", (phases or {}).get(id, "early")) for id in densities})
    found = [
        found_in("context", id, density=a_measurement(*d) if isinstance(d, tuple) else d) for id, d in densities.items()
    ]
    return density.draw(some_findings(*found), project, some_packs(), "d")


def test_a_context_whose_interval_lies_above_all_others_leads():
    """The densest is named where no other may be as dense."""
    chart = chart_of({"C1": (40.0, 35.0, 45.0), "C2": (4.0, 3.0, 5.0), "C3": (5.0, 4.0, 6.0), "C4": (4.0, 3.0, 5.0)})

    assert chart.title == "Context C1 held the most per litre: 40 items per litre, 9 times the median of 4 contexts"


def test_contexts_that_cannot_be_told_apart_share_the_lead():
    """Overlapping intervals are not ranked."""
    chart = chart_of({"C1": (40.0, 30.0, 50.0), "C2": (38.0, 28.0, 48.0), "C3": (5.0, 4.0, 6.0)})

    assert chart.title == "Contexts C1 and C2 held the most per litre, up to 40 items"


def test_many_alike_are_said_to_be_alike():
    """Where more than three may be the densest, none stands out."""
    chart = chart_of({f"C{n}": (10.0 + n, 5.0, 20.0) for n in range(6)})

    assert chart.title == "No one context stands out by density: 6 of 6 may be as dense as the densest"


def test_rows_go_by_phase_and_then_by_value():
    """Early before late, dense before sparse, whatever the order of the contexts."""
    densities = {"C1": (1.0, 0.5, 2.0), "C2": (9.0, 8.0, 10.0), "C3": (5.0, 4.0, 6.0), "C4": (7.0, 6.0, 8.0)}
    chart = chart_of(densities, {"C1": "late", "C2": "late", "C3": "early", "C4": None})

    assert [row[0] for row in chart.rows] == ["C3", "C2", "C1", "C4"]
    assert [row[2] for row in chart.rows] == ["Early", "Late", "Late", "No phase"]


def test_a_context_without_value_is_in_the_table_with_its_reason():
    """It is not drawn, and it is not left out."""
    chart = chart_of({"C1": (4.0, 3.0, 5.0), "C2": a_measurement(None, reason="volume not recorded")})

    assert chart.rows[1] == ("C2", "hearth", "Early", "", "", "", "", "10", "volume not recorded")
    assert "C2" not in chart.svg
    assert "1 context has no value; the table says why." in chart.note


def test_no_items_have_a_lane_of_their_own():
    """A log scale has no zero; an empty context stands at 'none' with an open mark."""
    chart = chart_of({"C1": (4.0, 3.0, 5.0), "C2": (0.0, 0.0, 0.37)})

    assert ">none</text>" in chart.svg
    assert "0 (0–0.37)" in chart.svg


def test_no_context_with_a_value_is_no_chart():
    """Reasons alone cannot be drawn."""
    assert chart_of({"C1": a_measurement(None, reason="volume not recorded")}) is None


def test_an_interval_without_upper_end_is_said():
    """Infinity is not a number."""
    chart = chart_of({"C1": a_measurement(4.0, 3.0, None, is_open_above=True)})

    assert chart.rows[0][3:6] == ("4", "3", "no upper end")


def test_forty_contexts_are_drawn_and_the_rest_counted():
    """The densest forty of sixty; all sixty in the table."""
    chart = chart_of({f"C{n:02d}": (float(n + 1), n + 0.5, n + 2.0) for n in range(60)})

    assert "and 20 less dense, all in the table" in chart.svg
    assert "C19 hearth" not in chart.svg and "C20 hearth" in chart.svg
    assert len(chart.rows) == 60
