"""'Date' between other fruits is the palm, and over the samples a date. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn
from tests.reading.intake.test_silent_faults import finds, taken

SAMPLES_DOWN = """
Sample,Litres,Barley,Cucumber,Date,Fig,Grape
S1,10,4,,3,1,
S2,12,2,1,,,2
S3,9,1,,14,,1
"""
SAMPLES_ACROSS = """
Taxon,S1,S2,S3
Barley,4,2,1
Cucumber,,1,
Dates,3,,14
Fig,1,,
Grape,,2,1
"""


def dates(found: TakenIn) -> list[tuple[str, float | None]]:
    return [(sample, number) for sample, taxon, _, number in finds(found) if taxon == "Phoenix dactylifera"]


@pytest.mark.parametrize("sheet", [SAMPLES_DOWN, SAMPLES_ACROSS])
def test_a_head_of_dates_between_fruits_is_a_fruit(tmp_path: Path, sheet: str) -> None:
    """Its numbers are counts like those of its neighbours, and no sample is named by them."""
    found = taken(tmp_path, sheet)

    assert dates(found) == [("S1", 3), ("S3", 14)]
    assert all("phase" not in facts for facts in found.facts.values())


def test_at_the_end_of_the_plants_a_nought_makes_it_one(tmp_path: Path) -> None:
    """No deposit is of the date 0."""
    found = taken(tmp_path, "Sample,Barley,Fig,Grape,Date,Total\nS1,4,1,0,3,8\nS2,2,0,2,0,4\nS3,1,0,1,1,3")

    assert [one for one in dates(found) if one[1]] == [("S1", 3), ("S3", 1)]


@pytest.mark.parametrize(
    "sheet",
    [
        "Sample,Date,Litres,Barley,Fig\nS1,1250,10,4,1\nS2,1340,12,2,3",
        "Sample,Barley,Date,Fig\nS1,4,1250,1\nS2,2,1340,3",
        "Taxon,S1,S2\nDate,1250,1340\nBarley,4,2\nFig,1,3",
    ],
)
def test_years_are_dates(tmp_path: Path, sheet: str) -> None:
    """Numbers as large as years are said of the samples."""
    found = taken(tmp_path, sheet)

    assert dates(found) == []
    assert [said.text for facts in found.facts.values() for said in facts["phase"]] == ["1250", "1340"]


def test_few_and_small_dates_are_told(tmp_path: Path) -> None:
    """Before the first plant nothing decides whether 3 and 14 are dates or fruits."""
    found = taken(tmp_path, "Sample,Date,Barley,Fig\nS1,3,4,1\nS2,,2,3\nS3,14,1,3")

    assert dates(found) == []
    told = (
        "DOUBTFUL: column B ('Date') holds numbers, stands among finds and is read as phase; "
        "write counts for it in the layout if it is a find"
    )
    assert told in found.doubts


def test_numbers_between_finds_do_not_vanish(tmp_path: Path) -> None:
    """A line of the samples between two lines of finds is told."""
    found = taken(tmp_path, "Taxon,S1,S2,S3\nBarley,4,2,1\nEmmer,3,2,8\nContext,12,13,17\nFig,1,3,4\nGrape,3,4,5")

    assert [doubt for doubt in found.doubts if "row 4 ('Context') holds numbers, stands among finds" in doubt] != []
