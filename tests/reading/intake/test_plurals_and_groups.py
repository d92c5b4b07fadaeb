"""Plurals of everyday names, what is drawn from other presences, and what stays left out. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.problems import ProblemList
from narrate.reading.intake.take_in import name_reader, read_laboratory_sheet
from narrate.reading.taxa import Identifier
from tests.reading.intake.test_silent_faults import packs, taken

SHEET = """
SiteID,SiteNo,Region,Period,millets,rice,acorns,walnut,hazelnut,rice_and_millets,wild_nuts
A001,1,North,Early,1,0,0,0,0,1,0
A002,1,North,Late,1,0,1,0,0,1,1
A003,2,North,Early,0,1,0,1,0,1,1
A004,3,South,Late,1,1,0,0,1,1,1
A005,3,South,Early,0,0,0,0,0,0,0
A006,4,South,Late,0,1,1,0,0,1,1
"""


@pytest.mark.parametrize(
    ("many", "one"),
    [
        ("millets", "Panicum/Setaria"),
        ("acorns", "Quercus"),
        ("Walnuts", "Juglans"),
        ("foxtail millets", "Setaria italica"),
        ("radish pods", None),
        ("Cannabis", "Cannabis sativa"),
        ("sunflowers", "Helianthus"),
    ],
)
def test_a_plural_of_a_known_name_is_known(many: str, one: str | None) -> None:
    """Words that end in s and are no plurals stay as they are."""
    assert name_reader(packs()).read(many).identification.taxon == one


def test_plurals_are_names_and_lines_drawn_from_others_are_no_finds(tmp_path: Path) -> None:
    """Five plants are read, and the two columns that repeat them are told."""
    found = taken(tmp_path, SHEET)

    assert {r.identification.written for r in found.rows} == {"millets", "rice", "acorns", "walnut", "hazelnut"}
    assert [doubt for doubt in found.doubts if "taken as drawn" in doubt] == [
        "'rice and millets' is present wherever one of millets, rice is, and nowhere else: taken as drawn from those, "
        "and for no find; write counts for it in the layout if it is one",
        "'wild nuts' is present wherever one of acorns, walnut, hazelnut is, and nowhere else: taken as drawn from "
        "those, and for no find; write counts for it in the layout if it is one",
    ]


def test_ids_of_sites_that_tell_all_apart_are_the_samples(tmp_path: Path) -> None:
    """The number of the site beside them is a note."""
    found = taken(tmp_path, SHEET)

    assert list(dict.fromkeys(str(r.sample) for r in found.rows)) == [f"A00{n}" for n in range(1, 7)]
    assert {said.text for said in found.facts["A004"]["sample note"]} == {"3"}


def test_a_group_that_was_found_alone_stays_a_find(tmp_path: Path) -> None:
    """Nuts that nobody named further are present where none of the named ones is."""
    found = taken(tmp_path, SHEET.replace("A005,3,South,Early,0,0,0,0,0,0,0", "A005,3,South,Early,0,0,0,0,0,0,1"))

    assert "wild_nuts" in {r.identification.written for r in found.rows}


def test_numbers_that_are_left_out_are_told_whenever_the_sheet_is_read(tmp_path: Path) -> None:
    """Until somebody says in the layout that they are no finds."""
    sheet = "Taxon,S1,S2,S3\nQuux 1,4,5,6\nHordeum vulgare,4,2,1\nRumex,1,0,2\nFicus carica,3,1,1\nGlorp,7,7,7"
    found = taken(tmp_path, sheet)
    layout = tmp_path / "lab.csv.layout.yaml"

    def told(text: str) -> list[tuple[str, str]]:
        layout.write_text(text, encoding="utf-8")
        problems, known = ProblemList(), packs()
        identifier = Identifier(known.taxa, known.taxon_lookup)
        read_laboratory_sheet(tmp_path, "lab.csv", known, identifier, {}, frozenset(), problems)
        return [(one.place.cell, one.message) for one in problems.found if "left out" in one.message]

    reason = "ignored, no name of a plant"
    left_out = found.text.replace("      2-6: counts\n", f"      2: {reason}\n      3-6: counts\n")

    assert told(left_out) == [
        ("A2", "row 2 ('Quux 1') holds numbers and is left out: no name of a plant, expected a role in the layout")
    ]
    assert told(left_out.replace(reason, "ignored")) == []
