"""What is worked out of a sheet beyond its counts: codes, shares, sums; and what is told. All sheets are invented."""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

import openpyxl

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.summary import summary
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def read(folder: Path, text: str) -> TakenIn:
    path = folder / "lab.csv"
    with path.open("w", encoding="utf-8", newline="") as out:
        csv.writer(out).writerows([line.split("|") for line in text.strip("\n").split("\n")])
    return take_in(path, packs())


def counts(found: TakenIn) -> list[tuple[str, str, int | None]]:
    return [(str(row.sample), row.identification.written, row.count.number) for row in found.rows if row.count.number]


def test_a_sheet_of_codes_explains_the_codes_of_the_counts(tmp_path: Path) -> None:
    """The list of codes in the workbook gives their names and parts, and they stand in the layout for the analyst."""
    book = openpyxl.Workbook()
    head = ["Sample", "Volume (l)", "ZEM1", "ZEM2", "CHB"]
    for row in (head, [1, 10, 3, 22, 101], [2, 8, None, 4, 30], [3, 9, 1, 2, 3]):
        book.active.append(row)
    keys = book.create_sheet("Codes")
    for row in (["Code", "Name", "Part"], ["ZEM1", "Zea mays", "kernel"], ["ZEM2", "Zea mays", "cupule"],
                ["CHB", "Chenopodium berlandieri", "seed"]):  # fmt: skip
        keys.append(row)
    path = tmp_path / "lab.xlsx"
    book.save(path)
    found = take_in(path, packs())

    assert found.layout is not None
    assert found.layout.names == {
        "ZEM1": "Zea mays kernel", "ZEM2": "Zea mays cupule", "CHB": "Chenopodium berlandieri seed",
    }  # fmt: skip
    assert {row.part for row in found.rows} == {"kernel", "cupule", "seed"}
    assert found.doubts == ("sheet Codes says what 3 codes mean; they stand under 'names' in the layout",)


SHARES = """
|Absolute count
Taxon|5|7|9
Carya|12|3|
Quercus|6|9|20
Zea mays|2||20

|Relative number
Taxon|5|7|9
Carya|60.0|25.0|
Quercus|30.0|75.0|50.0
Zea mays|10.0||50.0
"""


def test_a_second_table_of_shares_is_left_out_and_told(tmp_path: Path) -> None:
    """Numbers that add up to 100 under the names of the table before are shares of its counts, and no counts."""
    found = read(tmp_path, SHARES)

    assert counts(found) == [
        ("5", "Carya", 12), ("7", "Carya", 3), ("5", "Quercus", 6), ("7", "Quercus", 9), ("9", "Quercus", 20),
        ("5", "Zea mays", 2), ("9", "Zea mays", 20),
    ]  # fmt: skip
    assert "the table of rows 7 to 11 adds up to 100 in each sample: shares, not counts; it is left out" in found.doubts


SUMS = """
Sample|Phase|Vol|Foxtail millet|Broomcorn millet|Millets|Wheat|Chenopodium
56|Late|5|105|8|113|5|2
86|Late|8|41|1|42|1|7
90|Late|6|82|15|97|1|3
"""


def test_a_column_that_is_a_sum_of_others_is_no_count(tmp_path: Path) -> None:
    """'Millets' is in every sample the sum of the millets beside it: it is not counted again, and that is told."""
    found = read(tmp_path, SUMS)

    assert "Millets" not in {name for _, name, _ in counts(found)}
    assert sum(n or 0 for _, _, n in counts(found)) == 271
    assert (
        "'Millets' is in every sample the sum of 'Foxtail millet' to 'Broomcorn millet': taken for a stored total"
        in found.doubts
    )


HOUSES = """
{}||||{}|||
Taxon|Hearth|Pit|Floor|Taxon|Hearth|Pit|Floor
Zea mays|12|30|4|Zea mays|8|22|1
Carya|1|4||Quercus||3|
Vitis||11|2|Vitis|2|9|
"""


def test_titles_that_name_places_become_part_of_the_ids_under_them(tmp_path: Path) -> None:
    """Two houses with a hearth each have two hearths; no counts are added, and it is told."""
    found = read(tmp_path, HOUSES.format("House 1", "House 2"))

    assert {str(row.sample) for row in found.rows} == {
        "House 1/Hearth", "House 1/Pit", "House 1/Floor", "House 2/Hearth", "House 2/Pit", "House 2/Floor",
    }  # fmt: skip
    assert [doubt for doubt in found.doubts if doubt.startswith("DOUBTFUL")] == []
    assert "the ids under 'House 1' stand under 'House 2' too; the title is taken into them" in found.doubts


def test_titles_that_name_no_places_leave_the_ids_as_they_are(tmp_path: Path) -> None:
    """'Table 1' and 'Table 2' may be halves of one list: the ids stay, and the doubt is told."""
    found = read(tmp_path, HOUSES.format("Table 1", "Table 2"))

    assert {str(row.sample) for row in found.rows} == {"Hearth", "Pit", "Floor"}
    assert any(doubt.startswith("DOUBTFUL: the tables from rows 1 and 1") for doubt in found.doubts)


def test_a_flot_volume_in_litres_is_told_to_be_taken_for_soil(tmp_path: Path) -> None:
    """Flots are measured in millilitres; a volume of flotation in litres is the soil, and the summary says so."""
    found = read(tmp_path, "FS|Flot_Vol_L|Taxon|Count\n1|4.0|Zea mays|3\n2|3.5|Zea mays|9")

    assert found.facts["1"]["volume"][0].text == "4.0"
    assert (
        "column B is headed as a volume of flots and is in litres; it is taken for the soil that was floated: "
        "write 'flot volume, l' in the layout if it is not"
    ) in summary(found)


def test_names_that_nobody_knows_are_told_to_be_doubtful(tmp_path: Path) -> None:
    """Codes without a key are read where they stand, and the first line of what to look at says that it is doubtful."""
    found = read(tmp_path, "Sample|AAB|CCD|EEF|GGH|IIK\n1|3||2|9|1\n2|1|4|2||5\n3||7|1|2|2")

    assert found.doubts == (
        "DOUBTFUL: few of the names are known as plants; look whether the role 'taxon' stands at the names",
    )


def test_an_id_that_ends_in_what_is_given_is_mended_in_the_layout(tmp_path: Path) -> None:
    """'Pit 1 (n)' and 'Pit 1 (g)' are one sample, counted and weighed; the layout says which id was meant."""
    found = read(tmp_path, "Taxon|Pit 1 (n)|Pit 1 (g)|Pit 4 (n)|Pit 4 (g)\nQuercus|12|1.20|4|0.31\nCarya|3|0.22|1|0.08")

    assert found.layout is not None
    assert found.layout.mend == {"B1": "Pit 1", "C1": "Pit 1", "D1": "Pit 4", "E1": "Pit 4"}
    assert [(str(r.sample), r.count.number, r.mass_g) for r in found.rows] == [
        ("Pit 1", 12, 1.2), ("Pit 4", 4, 0.31), ("Pit 1", 3, 0.22), ("Pit 4", 1, 0.08),
    ]  # fmt: skip
