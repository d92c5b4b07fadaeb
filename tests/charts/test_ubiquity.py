"""Shares of samples by phase."""

from __future__ import annotations

import pytest

from narrate.charts import ubiquity
from tests.charts.chart_builders import a_project, a_share, a_tally, a_taxon, found_in, some_findings, some_packs


def chart_of(early, late=None, packs=None, n=20):
    """Plants by taxon: in how many of the samples of the phase."""
    phases = {"early": early} if late is None else {"early": early, "late": late}
    found = [
        found_in("phase", phase, *(held(t, k, n) for t, k in plants.items()), samples=n)
        for phase, plants in phases.items()
    ]
    return ubiquity.draw(some_findings(*found), a_project({}), packs or some_packs(), "u")


def held(taxon, k, n):
    return a_tally(taxon, "seed", 5, samples=k, of_samples=n, ubiquity=a_share(k, n))


def test_title_names_the_largest_clear_difference():
    """Intervals that do not touch; the numbers stand in the title."""
    chart = chart_of({"Vitis": 18, "Rhus": 10}, {"Vitis": 2, "Rhus": 9})

    assert chart.title == "Grape seeds: in 18 of 20 samples of Early, but in 2 of 20 of Late"


def test_overlapping_intervals_are_no_difference():
    """Ten of twenty and nine of twenty are alike."""
    assert chart_of({"Rhus": 10}, {"Rhus": 9}).title == "No plant part differs clearly between the phases"


def test_one_phase_has_its_commonest():
    """With one phase there is nothing to compare."""
    assert (
        chart_of({"Rhus": 3, "Vitis": 14}).title
        == "Grape seeds: found in 14 of 20 samples, more than any other plant part"
    )


def test_a_plant_missing_from_a_phase_has_an_interval_from_none():
    """None of 20: Wilson's upper end is 0.1611 (Newcombe 1998, Statistics in Medicine 17:857–872, Table I)."""
    chart = chart_of({"Vitis": 18}, {"Rhus": 9})
    row = next(row for row in chart.rows if row[0] == "Vitis" and row[3] == "Late")

    assert row[4:] == ("0", "20", "0", "0", "16")


def test_what_became_rarer_stands_first():
    """Top to bottom: fell, stayed, rose."""
    chart = chart_of({"Vitis": 18, "Rhus": 10, "Zea mays": 1}, {"Vitis": 2, "Rhus": 10, "Zea mays": 19})

    assert [row[0] for row in chart.rows][::2] == ["Vitis", "Rhus", "Zea mays"]


def test_sixteen_rows_hold_the_most_telling():
    """The largest differences and the largest shares are drawn, all others stand in the table."""
    packs = some_packs(*(a_taxon(f"Taxon {n:02d}", f"plant {n:02d}") for n in range(30)))
    early = {f"Taxon {n:02d}": 5 for n in range(30)} | {"Taxon 29": 20, "Taxon 28": 18}
    late = {f"Taxon {n:02d}": 5 for n in range(30)} | {"Taxon 29": 20, "Taxon 28": 2}
    chart = chart_of(early, late, packs)

    assert "plant 29" in chart.svg and "plant 28" in chart.svg
    assert "and 14 more, all in the table" in chart.svg
    assert len(chart.rows) == 60


@pytest.mark.parametrize("condition", ["uncharred"])
def test_modern_seeds_are_left_out(condition):
    """Conditions that are not ancient have no share."""
    tally = a_tally("Vitis", "seed", 5, condition, samples=5, of_samples=20, ubiquity=a_share(5, 20))
    found = some_findings(found_in("phase", "early", tally, samples=20))

    assert ubiquity.draw(found, a_project({}), some_packs(), "u") is None


def test_conditions_are_kept_apart_and_named():
    """Mineralised seeds of a plant are a row of their own."""
    tallies = [
        a_tally("Vitis", "seed", 5, c, samples=5, of_samples=20, ubiquity=a_share(5, 20))
        for c in ("charred", "mineralised")
    ]
    chart = ubiquity.draw(
        some_findings(found_in("phase", "early", *tallies, samples=20)), a_project({}), some_packs(), "u"
    )

    assert "(mineralised)" in chart.svg
    assert [row[2] for row in chart.rows] == ["charred", "mineralised"]


def test_broad_groups_stand_in_the_table_only():
    """'Indeterminate' in every sample tells nothing of the phase."""
    packs = some_packs(a_taxon("Vitis", "grape"), a_taxon("indeterminate", "indeterminate plant", rank="broad"))
    chart = chart_of({"Vitis": 3, "indeterminate": 20}, packs=packs)

    assert chart.title == "Grape seeds: found in 3 of 20 samples, more than any other plant part"
    assert "indeterminate" not in chart.svg
    assert [row[0] for row in chart.rows] == ["indeterminate", "Vitis"]
