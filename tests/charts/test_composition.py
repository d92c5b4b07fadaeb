"""Bars of what a subject holds."""

from __future__ import annotations

import re

import pytest

from narrate.charts import composition
from tests.charts.chart_builders import a_tally, found_in, some_packs


def chart_of(*tallies, **more):
    chart = composition.draw(found_in("context", "C07", *tallies), some_packs(), "c", **more)
    assert chart is not None
    return chart


def bars(chart) -> list[float]:
    """Lengths of the bars, from the corners of the paths with four of them."""
    corners = re.findall(r'<path d="M ([\d.]+) [\d.]+ L ([\d.]+)(?: [\d.]+ L [\d.]+){2} [\d.]+ z', chart.svg)
    return [round(float(right) - float(left), 1) for left, right in corners]


REMAINS = "counted remains of context C07"


@pytest.mark.parametrize(
    ("tallies", "title"),
    [
        ({"cupule": 60, "seed": 40}, f"Maize cupules made up most of the {REMAINS}: 60 of 100"),
        ({"cupule": 50, "seed": 50}, f"Maize cupules and grape seeds led among the {REMAINS}: 50 of 100 each"),
        ({"cupule": 40, "seed": 30, "rind": 30}, f"Maize cupules led among the {REMAINS}: 40 of 100"),
        ({"cupule": 30, "seed": 30, "rind": 30}, f"No one plant part led among the 90 {REMAINS}"),
        ({"cupule": 90}, f"Maize cupules made up all 90 {REMAINS}"),
        ({"cupule": 7}, "Few counted remains in context C07: 7 items"),
    ],
)
def test_title_says_what_the_numbers_say(tallies, title):
    """'Most' is more than half; ties and few items are said."""
    plants = {"cupule": "Zea mays", "seed": "Vitis", "rind": "Rhus"}

    assert chart_of(*(a_tally(plants[part], part, count) for part, count in tallies.items())).title == title


def test_wood_is_not_weighed_against_seeds():
    """Twenty pieces picked for naming are not 'most' of what was there."""
    chart = chart_of(a_tally("Carya", "wood", 90), a_tally("Vitis", "seed", 12), a_tally("Rhus", "seed", 3))

    assert chart.title == "Grape seeds made up most of the counted remains of context C07: 12 of 15"


def test_what_is_not_surely_named_is_told_with_its_number():
    """A text gives '11 (perhaps 14)'; the bar holds all 14, and the note says how many of them are in doubt."""
    chart = chart_of(a_tally("Vitis", "seed", 14, doubtful=3), a_tally("Rhus", "seed", 2))

    assert "not surely named: 3 of 14 grape seeds." in chart.note


def test_modern_seeds_stand_apart():
    """Uncharred seeds have a heading of their own and never lead."""
    chart = chart_of(a_tally("Portulaca oleracea", "seed", 500, "uncharred"), a_tally("Vitis", "seed", 12))

    assert chart.title == "Grape seeds made up all 12 counted remains of context C07"
    assert "Uncharred, held to be modern" in chart.svg


def test_only_modern_seeds_are_said_to_be_so():
    """A disturbed context has no ancient remains to lead."""
    chart = chart_of(a_tally("Portulaca oleracea", "seed", 500, "uncharred"))

    assert chart.title == "Only remains held to be modern in context C07"


def test_at_a_waterlogged_site_uncharred_is_ancient():
    """What is ancient depends on the preservation of the project."""
    from dataclasses import replace

    packs = some_packs()
    words = replace(packs.words, preservations={"waterlogged": ("charred", "uncharred")})
    found = found_in("context", "C07", a_tally("Vitis", "seed", 50, "uncharred"))
    chart = composition.draw(found, replace(packs, words=words), "c", preservation="waterlogged")

    assert chart.title == "Grape seeds made up all 50 counted remains of context C07"


def test_bars_are_as_long_as_the_counts():
    """Lengths start at zero and keep proportion."""
    lengths = bars(chart_of(a_tally("Zea mays", "cupule", 400), a_tally("Vitis", "seed", 100)))

    assert lengths[0] == pytest.approx(4 * lengths[1], abs=0.3)


def test_one_item_among_thousands_can_be_seen():
    """The smallest bar keeps a sliver."""
    assert min(bars(chart_of(a_tally("Zea mays", "cupule", 3000), a_tally("Vitis", "seed", 1)))) >= 1.4


def test_presence_is_a_mark_and_not_a_bar():
    """What was noted as present has no length."""
    chart = chart_of(a_tally("Zea mays", "cupule", 40), a_tally("Vitis", "seed", 0, is_noted=True))

    assert len(bars(chart)) == 1
    assert "noted as present" in chart.svg
    assert chart.rows[1] == ("Vitis", "seeds", "charred", "present", "", "")


def test_twelve_rows_are_drawn_and_the_rest_counted():
    """Fifteen plant parts: twelve bars and a row that sums up three."""
    packs = some_packs()
    tallies = [a_tally(None, "seed", 30 - n, written=f"type {n}") for n in range(15)]
    chart = composition.draw(found_in("context", "C07", *tallies), packs, "c")

    assert len(bars(chart)) == 12
    assert "and 3 more" in chart.svg
    assert "51 items together" in chart.svg
    assert len(chart.rows) == 15


def test_wood_and_modern_seeds_keep_a_place_among_many():
    """The twelve rows are shared out so that no group is left without a bar."""
    seeds = [a_tally(None, "seed", 30 - n, written=f"type {n}") for n in range(15)]
    chart = chart_of(*seeds, a_tally("Carya", "wood", 9), a_tally("Vitis", "seed", 2, "uncharred"))

    assert len(bars(chart)) == 12
    assert "hickory wood" in chart.svg


def test_table_holds_every_number():
    """Counted, scaled up and weighed, each as it came."""
    chart = chart_of(a_tally("Carya", "nutshell", 25, estimated=33.333333333, mass_g=1.28, only_cf=True))

    assert chart.columns[3:] == ("Counted (items)", "Scaled up for the unsorted share (items)", "Mass (g)")
    assert chart.rows == (("cf. Carya", "nutshell", "charred", "25", "33.333333", "1.28"),)


def test_presence_beside_counts_is_shown():
    """A '+' and a note where some rows only note presence."""
    chart = chart_of(a_tally("Vitis", "seed", 33, is_noted=True))

    assert ">33+</text>" in chart.svg
    assert "'+' means that some rows only note presence." in chart.note


def test_latin_names_are_italic():
    """A species without a common name stands in italics, its part does not."""
    assert (
        '<tspan font-style="italic">Amphicarpaea bracteata</tspan> rind'
        in chart_of(a_tally("Amphicarpaea bracteata", "rind")).svg
    )


def test_a_name_may_be_given():
    """Pages know what a phase is called."""
    chart = chart_of(a_tally("Zea mays", "cupule", 90), name="the late hamlet")

    assert chart.title == "Maize cupules made up all 90 counted remains of the late hamlet"
