"""Lines without a sample id that a feature names, and shares beside weights. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

from tests.reading.intake.test_silent_faults import finds, problems, taken

SHEET = """
Sample no,Feature,Period,Charcoal (g),Vol (l),Total seeds,Millet %,Foxtail millet,Rice,Sorrel
,Trench 6 pit 20,Late,0.60,6,4,100%,4,,
,Trench 6 pit 31,Late,0.35,5,10,50%,5,2,3
041,Trench 7 pit 8,Late,,8,8,75%,6,1,1
,Trench 8 ditch,Early,1.25,7,20,40%,8,4,8
077,Trench 9 pit 1,Early,,4,4,50%,2,1,1
"""


def test_features_name_lines_without_an_id(tmp_path: Path) -> None:
    """All of them are told at once, with one mend for all."""
    found = taken(tmp_path, SHEET)

    rice = [(sample, number) for sample, taxon, _, number in finds(found) if taxon == "Oryza sativa"]
    assert rice == [("Trench 6 pit 31", 2), ("041", 1), ("Trench 8 ditch", 4), ("077", 1)]
    told = [one for one in found.problems if one.code == "N314"]
    assert [(one.place.cell, one.message) for one in told] == [
        (
            "A2",
            "the counts of feature 'Trench 6 pit 20' have no sample id; the feature is taken for it, expected an id; "
            "the same in A3, A5",
        )
    ]
    assert told[0].help == (
        'if it has one, say it under \'mend\' in the layout: "A2": the id; where the feature is part of all ids, '
        "give it the role 'sample and feature'"
    )


def test_lines_of_one_feature_stay_without_an_id(tmp_path: Path) -> None:
    """Where two lines are of one feature it cannot stand for either."""
    found = taken(tmp_path, SHEET.replace("Trench 6 pit 31", "Trench 6 pit 20"))

    assert [(one.place.cell, one.severity) for one in found.problems if one.code == "N314"][:2] == [
        ("A2", "error"),
        ("A3", "error"),
    ]


def test_weights_are_no_part_of_a_whole_of_counts(tmp_path: Path) -> None:
    """Shares that are right are right in lines that are not read, too: grams of charcoal are not added to seeds."""
    found = taken(tmp_path, SHEET.replace("Trench 6 pit 31", "Trench 6 pit 20"))

    assert problems(found, "N317") == []
