"""Long tables whose heads are a database's own: columns are known by what stands in them."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import take_in
from narrate.reading.packs import read_packs

SHEET = """Lab_ID;Unit;Species_ID;Element;Cond;N;Wt_g;Remarks
LF-01;F3;Zea mays;cupule;carb;22;0,15;
LF-01;F3;cf Phaseolus;cotyledon;carb;1;0,03;small
LF-02;F3;Quercus;acorn shell;carb;12;0,08;
LF-02;F3;Chenopodium sp.;seed;mod;40;;modern
LF-03;F8;Carya;nutshell;carb;31;1,2;
"""
"""Invented, in the manner of an export from a database."""


def test_a_column_of_plant_names_is_known_by_its_cells(tmp_path: Path) -> None:
    """'Species_ID' reads like a code and holds names: it is the taxon column."""
    sheet = tmp_path / "export.txt"
    sheet.write_text(SHEET, encoding="utf-8")
    packs, _ = read_packs(("eastern-north-america",))
    taken = take_in(sheet, packs)

    assert taken.layout is not None
    assert [role.name for role in taken.layout.tables[0].columns.values()][:4] == ["sample", "context", "taxon", "part"]


BAGS = """Bag,Sample,Sieve (mm),Material,Taxon,Part,State,n,g
11,A1,>4,Charcoal,wood charcoal,,carb.,7,1.30
12,A1,2-4,Plant,Persoonia falcata,endocarp,carb.,3,0.07
13,A1,2-4,Bone,small vertebrate,,,2,0.08
14,A1,>4,Ochre,,,,3,1.03
,A1 Total,,,,,,15,2.48
15,A2,2-4,Plant,Nymphaea sp.,seed,uncarb.,6,
16,A2,>4,Stone,flaked thing,,,4,9.10
,A2 Total,,,,,,10,9.10
,Grand Total,,,,,,25,11.58
"""
"""Invented: a list of bags that names the class of each before its taxon, with the subtotals of a spreadsheet."""


@pytest.mark.parametrize("head", ["Material", "Class"])
def test_a_class_before_the_names_is_not_their_column(tmp_path: Path, head: str) -> None:
    """'Material' may head names, and here says 'Plant' or 'Bone' of each: bags that hold no plant are set aside."""
    sheet = tmp_path / "bags.csv"
    sheet.write_text(BAGS.replace("Material", head), encoding="utf-8")
    packs, _ = read_packs(("eastern-north-america",))
    taken = take_in(sheet, packs)

    assert taken.layout is not None
    roles = taken.layout.tables[0].columns
    assert [roles[c].name for c in (1, 3, 4)] == ["sample", "group", "taxon"]
    read = [(row.sample, row.identification.written, row.count.number, row.mass_g) for row in taken.rows]
    assert read == [
        ("A1", "wood charcoal", 7, 1.3), ("A1", "Persoonia falcata", 3, 0.07), ("A2", "Nymphaea sp.", 6, None)
    ]  # fmt: skip
    assert not [problem for problem in taken.problems if problem.severity == "error"]


def test_stored_weights_may_take_in_what_is_set_aside(tmp_path: Path) -> None:
    """Bone in grams is weighed, not counted: a total of weights with it agrees, and one that is wrong does not."""
    packs, _ = read_packs(("eastern-north-america",))
    told = []
    for text in (BAGS, BAGS.replace("15,2.48", "15,2.47")):
        sheet = tmp_path / "bags.csv"
        sheet.write_text(text, encoding="utf-8")
        told.append([problem.place.line for problem in take_in(sheet, packs).problems if problem.code == "N317"])

    assert told == [[], [6]]
