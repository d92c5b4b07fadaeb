"""Counts that may be thousands, and weights without a unit: told, with how to mend them. All sheets are invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.pipeline.intake import intake
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

_LIST = "Probe;Taxon;Rest;Anzahl\n1;Triticum spelta;Korn;{a}\n1;Hordeum vulgare;Korn;12\n2;Secale cereale;Korn;{b}\n"


@cache
def packs() -> Packs:
    return naming_packs(("temperate-europe",))


def taken(folder: Path, text: str) -> TakenIn:
    path = folder / "lab.csv"
    path.write_text(text, encoding="utf-8")
    return take_in(path, packs())


def numbers(found: TakenIn) -> list[int | None]:
    return [row.count.number for row in found.rows]


def test_a_count_that_may_be_a_thousand_is_no_number_and_is_told(tmp_path: Path) -> None:
    """'1.000' was once one grain."""
    found = taken(tmp_path, _LIST.format(a="1.000", b="3"))

    assert numbers(found) == [None, 12, 3]
    assert (found.rows[0].count.amount, found.rows[0].count.written) == ("noted as present", "1.000")
    assert [f"{p.place.cell}: {p.message}" for p in found.problems if p.code == "N313"] == [
        "D2: '1.000' may be 1000 or 1; it is kept as presence and is in no sum, expected a number that reads in one way"
    ]


def test_the_mend_that_is_offered_gives_the_thousand(tmp_path: Path) -> None:
    """'decimal: ","' under cells in the layout."""
    path = tmp_path / "lab.csv"
    path.write_text(_LIST.format(a="1.000", b="3"), encoding="utf-8")
    intake(path)
    layout = tmp_path / "lab.csv.layout.yaml"
    layout.write_text(layout.read_text(encoding="utf-8").replace('decimal: "."', 'decimal: ","'), encoding="utf-8")

    assert numbers(take_in(path, packs())) == [1000, 12, 3]


@pytest.mark.parametrize("other", ["1.345.200", "2,5"])
def test_a_sheet_that_parts_thousands_by_points_elsewhere_leaves_nothing_open(tmp_path: Path, other: str) -> None:
    """Two points in one number, or a decimal comma."""
    found = taken(tmp_path, _LIST.format(a="1.000", b=other))

    assert found.rows[0].count.number == 1000


def test_counts_written_out_with_three_decimals_are_counts(tmp_path: Path) -> None:
    """As statistical programs write them: one is no thousand where twelve is '12.000'."""
    found = taken(tmp_path, _LIST.format(a="1.000", b="3.000").replace(";12\n", ";12.000\n"))

    assert numbers(found) == [1, 12, 3]
    assert [p for p in found.problems if p.code == "N313"] == []


_WEIGHED = "Sample,Taxon,Part,Count,{h}\nS1,Triticum spelta,grain,3,0.52\nS2,Hordeum vulgare,grain,2,1.34\n"


@pytest.mark.parametrize("head", ["Wt", "Weight", "Mass", "Gewicht"])
def test_weights_without_a_unit_are_told_to_be_taken_as_grams(tmp_path: Path, head: str) -> None:
    """It is an assumption, and the layout shows where to change it."""
    found = taken(tmp_path, _WEIGHED.format(h=head))

    assert [row.mass_g for row in found.rows] == [0.52, 1.34]
    assert (
        f"no unit is named of the weights under '{head}'; they are taken as grams: write 'mass, mg' for the row or "
        "column in the layout, or the unit into the cells under 'mend', if they are not"
    ) in found.doubts


@pytest.mark.parametrize("text", [_WEIGHED.format(h="Wt (g)"), "Weights in grams,,,,\n" + _WEIGHED.format(h="Wt")])
def test_weights_whose_unit_the_sheet_names_are_told_of_nobody(tmp_path: Path, text: str) -> None:
    """At their head, or in the title."""
    found = taken(tmp_path, text)

    assert [row.mass_g for row in found.rows] == [0.52, 1.34]
    assert [doubt for doubt in found.doubts if "no unit is named" in doubt] == []
