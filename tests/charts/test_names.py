"""How charts name things."""

from __future__ import annotations

import pytest

from narrate.charts.names import (
    as_recorded,
    months_in_words,
    of_plant,
    percent,
    plant,
    runs,
    subject_name,
    three_figures,
)
from narrate.model.ids import Subject
from tests.charts.chart_builders import a_tally, a_taxon, some_packs


@pytest.mark.parametrize(
    ("tally", "name"),
    [
        (a_tally("Zea mays", "cupule"), "maize cupules"),
        (a_tally("Hordeum pusillum", only_cf=True), "cf. little barley seeds"),
        (a_tally("Amphicarpaea bracteata"), "Amphicarpaea bracteata seeds"),
        (a_tally(None, written="Unidentified type 3"), "Unidentified type 3 seeds"),
        (a_tally(None, written="cf. bean", only_cf=True), "cf. bean seeds"),
        (a_tally(None, "lump", written="Unidentified"), "Unidentified lump"),
        (a_tally(None, written="small seeds"), "small seeds"),
    ],
)
def test_plants_are_named_with_their_part(tally, name):
    """Common name, else Latin, else as written; the part follows, once."""
    assert plant(tally, some_packs()) == name


def test_a_part_that_begins_with_the_name_is_said_once():
    """Acorn with acorn shell is acorn shell."""
    assert plant(a_tally("Quercus", "acorn shell"), some_packs(a_taxon("Quercus", "acorn"))) == "acorn shell"


@pytest.mark.parametrize(
    ("name", "part", "whole"),
    [("corn", "bits of corn cob", "bits of corn cob"), ("bean", "halves of seeds", "halves of bean seeds"),
     ("hickory", "nutshell", "hickory nutshell"), ("walnut", "kernel of a nut", "kernel of a walnut nut")],
)  # fmt: skip
def test_the_plant_stands_before_the_last_part(name, part, whole):
    """'Halves of bean seeds', not 'bean halves of seeds'."""
    assert of_plant(name, part) == whole


@pytest.mark.parametrize(
    ("months", "words"),
    [((8, 9, 10), "August to October"), ((5,), "May"), ((11, 12, 1), "November to January"),
     ((1, 2, 11, 12), "November to February"), ((6, 7), "June and July"),
     ((4, 9, 10), "April, September and October"), (tuple(range(1, 13)), "January to December")],
)  # fmt: skip
def test_months_are_said_as_runs(months, words):
    """December runs on into January; names are whole, and two months are two names."""
    assert months_in_words(months) == words


def test_months_over_the_new_year_are_one_run():
    """Written in calendar order or in order of the season."""
    assert runs((1, 2, 11, 12)) == [[11, 12, 1, 2]]


@pytest.mark.parametrize(
    ("number", "text"),
    [(0, "0"), (0.0213, "0.021"), (0.5, "0.5"), (4.5, "4.5"), (41.26, "41.3"),
     (100.0, "100"), (1350.4, "1350"), (0.00001, "1.0e-05")],
)  # fmt: skip
def test_worked_out_numbers_have_few_figures(number, text):
    """As many as a reader needs."""
    assert three_figures(number) == text


def test_recorded_numbers_are_not_rounded():
    """Sums of recorded masses lose only the dust of binary fractions."""
    assert [as_recorded(n) for n in (0.1 + 0.2, 12.3456, 3000.0, None)] == ["0.3", "12.3456", "3000", ""]


def test_all_and_none_are_not_said_of_nearly_all_and_nearly_none():
    """One of 3000 is not 0%, 2999 of 3000 not 100%."""
    assert [percent(share) for share in (0, 1 / 3000, 0.714, 2999 / 3000, 1)] == [
        "0%",
        "<1%",
        "71%",
        ">99%",
        "100%",
    ]


def test_the_whole_dig_is_named():
    """Other subjects are named by level and id."""
    assert [subject_name(Subject(level=level, id=id)) for level, id in (("site", "site"), ("context", "C07"))] == [
        "the whole dig",
        "context C07",
    ]
