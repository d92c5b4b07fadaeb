"""A strip of twelve months."""

from __future__ import annotations

import re

import pytest

from narrate.charts import months
from tests.charts.chart_builders import a_tally, a_taxon, a_window, found_in, some_packs


def chart_of(*tallies, packs=None):
    return months.draw(found_in("context", "C07", *tallies), packs or some_packs(), "m")


def stretches(chart) -> list[tuple[float, float]]:
    """Left ends and widths of the bars."""
    corners = re.findall(r'<path d="M ([\d.]+) [\d.]+ L ([\d.]+)(?: [\d.]+ L [\d.]+){2} [\d.]+ z', chart.svg)
    return [(float(left), float(right) - float(left)) for left, right in corners]


def test_a_window_over_the_new_year_is_drawn_in_two_pieces():
    """November to January: two months at the end of the strip, one at its beginning."""
    (first, long), (second, short) = stretches(chart_of(a_tally("Amphicarpaea bracteata")))

    assert first > second
    assert long + 2 == pytest.approx(2 * (short + 2), abs=0.1)


def test_rows_go_by_first_month():
    """Early summer comes before autumn, and a window over the new year begins in November."""
    chart = chart_of(a_tally("Amphicarpaea bracteata"), a_tally("Vitis"), a_tally("Fragaria virginiana"))

    assert [row[0] for row in chart.rows] == ["Fragaria virginiana", "Vitis", "Amphicarpaea bracteata"]
    assert [row[3] for row in chart.rows] == ["May and June", "August to October", "November to January"]


def test_sources_that_differ_have_a_bar_each():
    """Two windows, two rows in the table, and a note."""
    chart = chart_of(a_tally("Rhus"))

    assert [row[3] for row in chart.rows] == ["July to September", "September to February"]
    assert "Two bars in a row: the sources differ." in chart.note


def test_only_what_does_not_keep_tells_a_season():
    """Stored seeds say nothing of the month of the fire."""
    title = chart_of(a_tally("Zea mays", "kernel"), a_tally("Fragaria virginiana")).title

    assert title == (
        "One of the two plant parts with known months in context C07 does not keep: gathered in May and June"
    )


def test_what_keeps_tells_no_season():
    """Maize and goosefoot alone do not date a fire within the year."""
    title = chart_of(a_tally("Zea mays", "kernel"), a_tally("Chenopodium berlandieri")).title

    assert title == "None of the two plant parts with known months in context C07 tells a season by itself"


@pytest.mark.parametrize(
    ("windows", "end"),
    [
        ([(5, 6, 7), (7, 8)], "do not keep; their months meet in July"),
        ([(5, 6), (8, 9)], "do not keep; they have no month in common"),
        ([(11, 12, 1), (12, 1, 2)], "do not keep; their months meet in December and January"),
    ],
)
def test_months_in_common_are_said(windows, end):
    """Over the new year too."""
    packs = some_packs(
        *(a_taxon(f"Taxon {n}", f"berry {n}", (a_window("seed", w, "perishable"),)) for n, w in enumerate(windows))
    )

    assert chart_of(*(a_tally(f"Taxon {n}") for n in range(len(windows))), packs=packs).title.endswith(end)


@pytest.mark.parametrize(
    ("keeping", "words"),
    [
        (("perishable",), "does not keep"), (("stored",), "keeps in store"), (("persists",), "stays on the plant"),
        (("with the crop",), "keeps with a harvest"), ((), "keeping not known"),
        (("perishable", "stored"), "fresh or from store"),
    ],
)  # fmt: skip
def test_keeping_is_said_in_words(keeping, words):
    """Colour and hatch are never alone."""
    packs = some_packs(a_taxon("Taxon", "berry", (a_window("seed", (5,), *keeping),)))

    assert chart_of(a_tally("Taxon"), packs=packs).rows[0][4] == words


def test_modern_seeds_have_no_season_here():
    """Uncharred seeds at a dry site say nothing of the people who lived there."""
    assert chart_of(a_tally("Fragaria virginiana", "seed", 9, "uncharred")) is None


def test_plants_without_known_months_are_counted_in_the_note():
    """What the packs do not know is said."""
    chart = chart_of(a_tally("Vitis"), a_tally(None, written="type 3"), a_tally("Vitis", "wood"))

    assert chart.note.startswith("n = 1 of 3 plant parts; no months are known for 2.")


def test_sources_are_cited_in_the_table():
    """Each window says who says so, and how well it is known."""
    assert chart_of(a_tally("Vitis")).rows[0][5:] == ("Author, A. 2001", "memory-M")


def test_conditions_of_one_plant_part_are_added_up():
    """Charred and mineralised grape seeds are one row."""
    chart = chart_of(a_tally("Vitis", "seed", 3), a_tally("Vitis", "seed", 4, "mineralised"))

    assert [row[2] for row in chart.rows] == ["7"]
