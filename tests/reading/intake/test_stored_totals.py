"""
Stored totals, shares, densities and ubiquities are worked out again: right ones are passed over, wrong ones told.

All sheets are invented; the figures are sums, shares and quotients of the counts beside them.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.folder import read_folder
from narrate.reading.intake.project_intake import naming_packs, volume_problems
from narrate.reading.intake.take_in import TakenIn, take_in

SHEET = (
    "Taxon,S1,S2,S3,Total\n"
    "Zea mays,60,50,70,{}\n"
    "Chenopodium berlandieri,3,4,5,12\n"
    "Vitis sp.,1,2,3,{}\n"
)  # fmt: skip


@cache
def packs(region: str) -> Packs:
    return naming_packs((region,))


def taken(tmp_path: Path, text: str, region: str = "temperate-europe") -> TakenIn:
    file = tmp_path / "lab.csv"
    file.write_text("\n".join(line.strip() for line in text.strip().split("\n")).replace("|", ","), encoding="utf-8")
    return take_in(file, packs(region))


def told(tmp_path: Path, first: str, last: str) -> list[tuple[str, str]]:
    return disagreements(taken(tmp_path, SHEET.format(first, last), "eastern-north-america"))


def disagreements(found: TakenIn) -> list[tuple[str, str]]:
    return [(p.place.cell, p.message) for p in found.problems if p.code == "N317"]


def not_checked(found: TakenIn) -> list[str]:
    return [line for drawn in found.pictures for line in drawn.split("\n") if line.startswith("not checked")]


def of_csv(tmp_path: Path, text: str) -> tuple[list[tuple[str, str]], list[str]]:
    found = taken(tmp_path, text)
    return disagreements(found), not_checked(found)


def test_signed_totals_that_hold_are_not_told(tmp_path: Path) -> None:
    """180 is about 200, and 6 is under 10."""
    assert told(tmp_path, "c. 200", "<10") == []


def test_a_rounded_total_that_the_counts_do_not_reach_is_told(tmp_path: Path) -> None:
    """180 is not about 300: the stored writing, the sum and the cells of both are said."""
    assert told(tmp_path, "c. 300", "6") == [
        ("E2", "the stored Total is c. 300, and the counts in B2 to D2 give 180, expected them to agree")
    ]


def test_a_total_said_to_be_above_a_number_is_told_when_it_is_below(tmp_path: Path) -> None:
    """180 is above 100, and 6 is not."""
    assert told(tmp_path, ">100", ">6") == [
        ("E4", "the stored Total is >6, and the counts in B4 to D4 give 6, expected them to agree")
    ]


SECTIONS = """
    Taxon|S1|S2|S3
    Cereals
    Hordeum vulgare grain|3|4|5
    Triticum spelta grain|2|1|0
    Total cereals|5|5|{cereals}
    Weeds
    Galium aparine seed|1|1|1
    Bromus sp. seed|2|2|9
    Subtotal|3|3|{weeds}
    Total|8|8|15
"""

GROUPS = """
    Taxon|S1|S2|S3
    Hordeum vulgare grain|3|4|5
    Triticum spelta grain|2|1|0
    Galium aparine seed|1|1|1
    Bromus sp. seed|2|2|9
    Triticum spelta glume base|12|7|3
    Total cereals|5|5|{cereals}
    Total chaff|12|7|{chaff}
    Total Poaceae|19|14|{grasses}
    Total grain|5|5|5
    Total|20|15|18
"""

BESIDE = """
    Sample|Hordeum vulgare grain|Triticum spelta grain|Total cereals|Galium aparine|Bromus sp.|Total|% cereals
    S1|3|2|5|1|2|8|62.5
    S2|4|1|5|1|2|8|{share}
    S3|5|0|{cereals}|1|9|15|33
    S4|2|2|4|0|1|5|80
"""

PHASES = """
    Phase|Early|Early||Late|Late||
    Taxon|S1|S2|Early total|S3|S4|Late total|Total
    Hordeum vulgare grain|3|4|7|5|1|6|13
    Triticum spelta grain|2|1|3|1|1|{late}|5
"""

WEIGHTS = """
    Taxon|S1||S2||Total|
    |n|wt (g)|n|wt (g)|n|wt (g)
    Quercus charcoal|30|1.25|20|0.50|50|1.75
    Corylus charcoal|20|0.50|10|0.25|30|{weight}
    Total|50|1.75|30|0.75|80|2.50
"""

LONG = """
    Sample|Taxon|Part|Count|%
    S1|Hordeum vulgare|grain|3|30
    S1|Triticum spelta|grain|2|20
    S1|Galium aparine|seed|5|{share}
    Total S1|||10|
    S2|Hordeum vulgare|grain|6|60
    S2|Bromus sp.|seed|4|40
    Total S2|||{second}|
    Grand total|||20|
"""

BASES = """
    Taxon|S1|S2|Total|%
    Cereals
    Hordeum vulgare grain|3|3|6|60
    Triticum spelta grain|2|2|4|40
    Total cereals|5|5|10|100
    Weeds
    Galium aparine seed|1|1|2|25
    Bromus sp. seed|2|4|6|{share}
    Total weeds|3|5|8|100
"""

PAIRS = """
    Taxon|S1||S2||Total
    |n|%|n|%|
    Hordeum vulgare grain|3|30|4|50|7
    Triticum spelta grain|2|20|1|12.5|3
    Galium aparine seed|5|{share}|3|37.5|8
    Total|10|100|8|100|18
"""

DENSITY = """
    Taxon|S1|S2|S3|S4|Total|Ubiquity|Ubiquity %|Density
    Volume (l)|10|10|20|10||||
    Hordeum vulgare grain|3|4|5||12|3/4|75|0.24
    Triticum spelta grain|2|1||1|4|{ubiquity}|{percent}|0.08
    Galium aparine seed|1|1|1|1|4|4/4|100|{of_taxon}
    Total|6|6|6|2|20|||0.4
    Density (n/l)|0.6|0.6|0.3|{of_sample}|||
"""

SHARES = """
    |Absolute count
    Taxon|5|7|9
    Hordeum vulgare|12|3|
    Triticum spelta|6|9|20
    Galium aparine|2||20

    |Relative number
    Taxon|5|7|9
    Hordeum vulgare|60.0|25.0|
    Triticum spelta|30.0|75.0|{share}
    Galium aparine|10.0||50.0
"""

TAXA = """
    Taxon|S1|S2|S3
    Hordeum vulgare grain|3|4|5
    Triticum spelta grain|2||1
    Galium aparine seed|1||1
    Number of taxa|3|1|{taxa}
"""

# The sheet, what makes it right, what makes one cell of it wrong, and the cell with the whole message.
CASES: dict[str, tuple[str, dict[str, str], dict[str, str], list[tuple[str, str]]]] = {
    "a total of a section, by its head": (
        SECTIONS, {"cereals": "5", "weeds": "10"}, {"cereals": "6", "weeds": "10"},
        [("D5", "the stored Total cereals is 6, and the counts in D3 to D4 give 5, expected them to agree")],
    ),
    "a subtotal under a section": (
        SECTIONS, {"cereals": "5", "weeds": "10"}, {"cereals": "5", "weeds": "12"},
        [("D9", "the stored Subtotal is 12, and the counts in D7 to D8 give 10, expected them to agree")],
    ),
    "cereals by the packs, with their chaff or without": (
        GROUPS, {"cereals": "8", "chaff": "3", "grasses": "17"}, {"cereals": "6", "chaff": "3", "grasses": "17"},
        [("D7", "the stored Total cereals is 6, and the counts in D2 to D3 give 5, or up to 8 with what may belong to "
                "it in D6, expected them to agree")],
    ),
    "chaff by its part": (
        GROUPS, {"cereals": "5", "chaff": "3", "grasses": "17"}, {"cereals": "5", "chaff": "4", "grasses": "17"},
        [("D8", "the stored Total chaff is 4, and the counts in D6 give 3, expected them to agree")],
    ),
    "a family by name": (
        GROUPS, {"cereals": "5", "chaff": "3", "grasses": "17"}, {"cereals": "5", "chaff": "3", "grasses": "18"},
        [("D9", "the stored Total Poaceae is 18, and the counts in D2 to D3 and D5 to D6 give 17, expected them to "
                "agree")],
    ),
    "a column of one group beside its taxa": (
        BESIDE, {"cereals": "5", "share": "62.5"}, {"cereals": "7", "share": "62.5"},
        [("D4", "the stored Total cereals is 7, and the counts in B4 to C4 give 5, expected them to agree")],
    ),
    "a share of one group in each sample": (
        BESIDE, {"cereals": "5", "share": "63"}, {"cereals": "5", "share": "60.5"},
        [("H3", "the stored % cereals is 60.5, and the counts in B3 to C3 of those in B3 to C3 and E3 to F3 give 62.5, "
                "expected them to agree")],
    ),
    "a total of the samples of one phase": (
        PHASES, {"late": "2"}, {"late": "3"},
        [("G4", "the stored Late total is 3, and the counts in E4 to F4 give 2, expected them to agree")],
    ),
    "a total of weights beside one of counts": (
        WEIGHTS, {"weight": "0.75"}, {"weight": "0.95"},
        [("G4", "the stored wt (g) is 0.95, and the weights in C4 and E4 give 0.75, expected them to agree")],
    ),
    "a total row of a sample in a long table": (
        LONG, {"share": "50", "second": "10"}, {"share": "50", "second": "11"},
        [("D8", "the stored Total S2 is 11, and the counts in D6 to D7 give 10, expected them to agree")],
    ),
    "a share of the sample in a long table": (
        LONG, {"share": "50", "second": "10"}, {"share": "51", "second": "10"},
        [("E4", "the stored % is 51, and the counts in D4 of those in D2 to D4 give 50, expected them to agree")],
    ),
    "a share of its section": (
        BASES, {"share": "75"}, {"share": "70"},
        [("E8", "the stored % is 70, and the counts in B8 to C8 of those in B7 to C8 give 75, expected them to agree")],
    ),
    "a share beside each count": (
        PAIRS, {"share": "50"}, {"share": "55"},
        [("C5", "the stored % is 55, and the counts in B5 of those in B3 to B5 give 50, expected them to agree")],
    ),
    "ubiquity as n of N": (
        DENSITY, {"ubiquity": "3/4", "percent": "75", "of_taxon": "0.08", "of_sample": "0.2"},
        {"ubiquity": "2/4", "percent": "75", "of_taxon": "0.08", "of_sample": "0.2"},
        [("G4", "the stored Ubiquity is 2/4, and the counts in B4 to E4 give 3/4, expected them to agree")],
    ),
    "ubiquity in percent": (
        DENSITY, {"ubiquity": "3/4", "percent": "75%", "of_taxon": "0.08", "of_sample": "0.2"},
        {"ubiquity": "3/4", "percent": "50", "of_taxon": "0.08", "of_sample": "0.2"},
        [("H4", "the stored Ubiquity % is 50, and the counts in B4 to E4 give 75, expected them to agree")],
    ),
    "density of a taxon over all litres": (
        DENSITY, {"ubiquity": "3/4", "percent": "75", "of_taxon": "0.1", "of_sample": "0.2"},
        {"ubiquity": "3/4", "percent": "75", "of_taxon": "0.8", "of_sample": "0.2"},
        [("I5", "the stored Density is 0.8, and the counts in B5 to E5 over 50 litres in B2 to E2 give 0.08, expected "
                "them to agree")],
    ),
    "density of a sample": (
        DENSITY, {"ubiquity": "3/4", "percent": "75", "of_taxon": "0.08", "of_sample": "0.20"},
        {"ubiquity": "3/4", "percent": "75", "of_taxon": "0.08", "of_sample": "0.3"},
        [("E7", "the stored Density (n/l) is 0.3, and the counts in E3 to E5 over 10 litres in E2 give 0.2, expected "
                "them to agree")],
    ),
    "a second table of shares": (
        SHARES, {"share": "50.0"}, {"share": "51.0"},
        [("D10", "the stored % is 51.0, and the counts in D4 of those in D3 to D5 give 50, expected them to "
                 "agree")],
    ),
    "the number of taxa": (
        TAXA, {"taxa": "3"}, {"taxa": "2"},
        [("D5", "the stored Number of taxa is 2, and the counts in D2 to D4 give 3, expected them to agree")],
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", CASES)
def test_a_stored_result_that_is_right_is_passed_over(tmp_path: Path, case: str) -> None:
    """No warning, and nothing is said to be left unchecked."""
    sheet, right, _, _ = CASES[case]
    assert of_csv(tmp_path, sheet.format(**right)) == ([], [])


@pytest.mark.parametrize("case", CASES)
def test_a_stored_result_that_is_wrong_is_told_with_both_numbers_and_both_places(tmp_path: Path, case: str) -> None:
    """The cell of the stored number, the number, the cells of the counts and what they give; nothing else."""
    sheet, _, wrong, expected = CASES[case]
    assert of_csv(tmp_path, sheet.format(**wrong)) == (expected, [])


ROUNDED = """
    Taxon|S1|S2|S3|Density (n/l)
    Volume (l)|13|10|9|
    Hordeum vulgare grain|3|4|5|{}
    Triticum spelta grain|2|1|1|0.125
"""


@pytest.mark.parametrize(("stored", "is_right"), [("0.4", True), ("0.38", True), ("0.375", True), ("0.36", False)])
def test_rounding_as_printed_is_respected(tmp_path: Path, stored: str, is_right: bool) -> None:
    """12 in 32 litres are 0.375: 0.4 and 0.38 are it rounded, 0.36 is not."""
    assert (disagreements(taken(tmp_path, ROUNDED.format(stored))) == []) == is_right


def test_a_group_that_nothing_tells_is_not_checked_and_the_picture_says_so(tmp_path: Path) -> None:
    """No head, no word of the packs and no sum says what 'rubbish' is: no warning, and one line under the picture."""
    sheet = GROUPS.replace("Total grain|5|5|5", "Total rubbish|3|9|11")
    assert of_csv(tmp_path, sheet.format(cereals="5", chaff="3", grasses="17")) == (
        [], ["not checked: row 10 (Total rubbish): the sheet does not say which of the taxa it is of"],
    )  # fmt: skip


def test_a_sign_among_the_counts_leaves_its_total_unchecked_and_that_is_said(tmp_path: Path) -> None:
    """An x has no number: the total of its column stands unchecked, those of the others are checked."""
    sheet = "Taxon|S1|S2|S3\nHordeum vulgare grain|3|x|5\nTriticum spelta grain|2|1|0\nTotal|5|4|6"
    assert of_csv(tmp_path, sheet) == (
        [("D4", "the stored Total is 6, and the counts in D2 to D3 give 5, expected them to agree")],
        ["not checked: row 4 (Total): 1 of its 3 cells: a sign among the counts has no number"],
    )


def test_totals_that_leave_signs_and_estimates_out_are_checked_so(tmp_path: Path) -> None:
    """Where most totals are right without the signs, one that is wrong is told, and that signs were left out of it."""
    sheet = "Taxon|S1|S2|S3|S4\nHordeum vulgare|3|x|5|c. 200\nTriticum spelta|2|1|>100|4\nTotal|5|1|7|4"
    assert of_csv(tmp_path, sheet) == (
        [("D4", "the stored Total is 7, and the counts in D2 to D3, signs and estimates left out, give 5, expected "
                "them to agree")], [],
    )  # fmt: skip


def test_bone_among_the_finds_is_in_no_total_of_the_plants(tmp_path: Path) -> None:
    """Under a list with bone in it, the total of the plants agrees."""
    sheet = "Sample|Taxon|n\nS1|Hordeum vulgare|3\nS1|Triticum spelta|2\nS1|Bone|8\nS1|Total|5"
    assert of_csv(tmp_path, sheet) == ([], [])


def test_totals_of_whole_ones_and_of_pieces_are_of_their_own_columns(tmp_path: Path) -> None:
    """Two totals, W and F, add up the columns that are headed as they are."""
    sheet = "Sample|S1||S2||Total|\nTaxon|W|F|W|F|W|F\nHordeum vulgare|3|1|5|2|8|3\nTriticum spelta|2|4|1||3|5\nZea mays|1||1|1|2|1"
    assert of_csv(tmp_path, sheet)[0] == [
        ("G4", "the stored F is 5, and the counts in C4 and E4 give 4, expected them to agree")
    ]


def test_a_density_without_litres_is_not_checked_and_the_picture_says_so(tmp_path: Path) -> None:
    """The sheet carries no volumes and there are no records."""
    sheet = "Taxon|S1|S2\nHordeum vulgare grain|3|4\nTriticum spelta grain|2|1\nDensity (n/l)|0.5|0.3"
    assert of_csv(tmp_path, sheet) == ([], ["not checked: row 4 (Density (n/l)): no volume of soil is known"])


def test_a_line_that_agrees_nowhere_is_told_once(tmp_path: Path) -> None:
    """Five totals that none of the counts give are one warning, with both numbers and both places of each."""
    sheet = (
        "Taxon|S1|S2|S3|S4|S5\nHordeum vulgare grain|3|4|5|6|7\nTriticum spelta grain|2|1|1|1|1\nTotal|50|51|52|53|54"
    )
    assert of_csv(tmp_path, sheet) == (
        [("B4", "the stored Total is 50, and the counts in B2 to B3 give 5, expected them to agree; nor does any "
                "other of the line: C4 51, the counts in C2 to C3 give 5; D4 52, the counts in D2 to D3 give 6; E4 53, the "
                "counts in E2 to E3 give 7; F4 54, the counts in F2 to F3 give 8")], [],
    )  # fmt: skip


def workbook(folder: Path, sheets: dict[str, list[list[object]]]) -> Path:
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    path = folder / "lab.xlsx"
    book.save(path)
    return path


@pytest.mark.parametrize("second", [1, 2])
def test_results_in_a_list_of_samples_are_held_against_another_sheet(tmp_path: Path, second: float) -> None:
    """Totals, densities and numbers of taxa of a list of samples rest on the counts of a sheet of their own."""
    path = workbook(tmp_path, {
        "Samples": [["Sample", "Context", "Volume (l)", "Total items", "Density (items/l)", "Number of taxa"],
                    ["S1", "C1", 10, 5, 0.5, 2], ["S2", "C2", 5, 5, second, 2], ["S3", "C2", 8, 0, 0, None]],
        "Counts": [["Taxon", "S1", "S2"], ["Hordeum vulgare grain", 3, 4], ["Triticum spelta grain", 2, 1]],
    })  # fmt: skip
    found = take_in(path, packs("temperate-europe"))
    wrong = [(str(p.place), p.message) for p in found.problems if p.code == "N317"]

    assert wrong == ([] if second == 1 else [
        ("lab.xlsx, sheet Samples, cell E3", "the stored Density (items/l) is 2, and the counts in sheet Counts, C2 to "
         "C3 over 5 litres in C3 give 1, expected them to agree"),
    ])  # fmt: skip
    assert not_checked(found) == ["not checked: column D (Total items): 1 of its 3 cells: no counts of the sample are "
                                  "in this file", "not checked: column E (Density (items/l)): 1 of its 3 cells: no "
                                  "counts of the sample are in this file"]  # fmt: skip


@pytest.mark.parametrize(("stored", "is_right"), [("0.4", True), ("0.6", False)])
def test_a_density_is_held_against_the_litres_of_the_records(tmp_path: Path, stored: str, is_right: bool) -> None:
    """The sheet has no litres; the record of the sample does, and the warning names its line."""
    (tmp_path / "counts").mkdir()
    (tmp_path / "records").mkdir()
    (tmp_path / "project.yaml").write_text(
        "title: Invented\nregion_packs: [temperate-europe]\npreservation: charred\n"
        "phases:\n  - {id: p, name: P, start: 100, end: 200}\n", encoding="utf-8"
    )  # fmt: skip
    (tmp_path / "records" / "a.yaml").write_text(
        "contexts:\n  - {id: C1, kind: pit, phase: p}\nsamples:\n"
        "  - {id: S1, context: C1, volume_l: 10}\n  - {id: S2, context: C1, volume_l: 20}\n", encoding="utf-8"
    )  # fmt: skip
    sheet = tmp_path / "counts" / "lab.csv"
    sheet.write_text(
        f"Taxon,S1,S2\nHordeum vulgare grain,3,4\nTriticum spelta grain,2,4\nDensity (n/l),0.5,{stored}\n",
        encoding="utf-8",
    )
    found = take_in(sheet, packs("temperate-europe"))
    sheet.with_name("lab.csv.layout.yaml").write_text(found.text, encoding="utf-8")
    wrong = [(str(p.place), p.message) for p in read_folder(tmp_path).problems if p.code == "N317"]

    assert wrong == ([] if is_right else [
        ("counts/lab.csv, cell C4", "the stored Density (n/l) is 0.6, and the counts in C2 to C3 over 20 litres in "
         "records/a.yaml:5:5 give 0.4, expected them to agree"),
    ])  # fmt: skip


SOIL_ACROSS = """
    Taxon|S1|S2|S3|Total
    Volume (l)|10|12|8|{}
    Hordeum vulgare grain|3|4|5|12
"""
SOIL_LONG = """
    Sample|Volume (l)|Taxon|Count
    S1|10|Hordeum vulgare grain|12
    S1|10|Triticum spelta grain|4
    S2|8|Hordeum vulgare grain|5
    Total|{}||21
"""


@pytest.mark.parametrize(("sheet", "right"), [(SOIL_ACROSS, "30"), (SOIL_LONG, "18")])
def test_a_total_of_litres_counts_each_sample_once(tmp_path: Path, sheet: str, right: str) -> None:
    """However many rows repeat the litres of a sample."""
    assert of_csv(tmp_path, sheet.format(right)) == ([], [])


def test_a_total_of_litres_that_the_volumes_do_not_give_is_told(tmp_path: Path) -> None:
    """With both numbers and both places; litres of a sample that rows repeat are no second sample."""
    across = [("E2", "the stored total of the litres is 31, and the volumes in B2 to D2 give 30, expected them to agree")]
    assert of_csv(tmp_path, SOIL_ACROSS.format("31")) == (across, [])
    long = [("B5", "the stored total of the litres is 28, and the volumes in B2 and B4 give 18, expected them to agree")]
    assert of_csv(tmp_path, SOIL_LONG.format("28")) == (long, [])


def test_litres_that_differ_within_a_sample_are_told_without_a_project(tmp_path: Path) -> None:
    """The first is kept, and they are not added."""
    found = taken(tmp_path, SOIL_LONG.format("18").replace("S1|10|Triticum", "S1|11|Triticum"))
    assert [problem.place.cell for problem in volume_problems(packs("temperate-europe"), found)] == ["B3"]


def test_halves_are_added_up_as_the_sheet_adds_them(tmp_path: Path) -> None:
    """Whole ones and a piece are made of 4.5, and the stored sum of 9.5 still agrees."""
    found = taken(tmp_path, "Taxon|S1|S2|Total\nHordeum vulgare grain|4.5|5|9.5\nTriticum spelta grain|2|1|3")
    assert disagreements(found) == []
    barley = [row for row in found.rows if "Hordeum" in row.identification.written]
    assert [(row.sample, row.count.number, row.completeness) for row in barley] == [
        ("S1", 4, "whole"), ("S1", 1, "fragment"), ("S2", 5, "whole"),
    ]  # fmt: skip


def test_two_names_of_one_genus_stay_two_finds(tmp_path: Path) -> None:
    """White oak and red oak are both Quercus, and nobody added them."""
    sheet = "Taxon|S1|S2\nWhite oak group (Quercus sp.) wood|4|5\nRed oak group (Quercus sp.) wood|2|1"
    assert [row.count.number for row in taken(tmp_path, sheet).rows] == [4, 5, 2, 1]


def test_a_total_below_its_plain_numbers_is_told_whatever_the_signs_are(tmp_path: Path) -> None:
    """Five and four make nine at least, and many more seeds cannot make it less."""
    sheet = "Taxon|S1|S2\nHordeum vulgare grain|5|4\nTriticum spelta grain|many|2\nAvena sp. grain|4|1\nTotal|{}|7"
    assert disagreements(taken(tmp_path, sheet.format("12"))) == []
    assert disagreements(taken(tmp_path, sheet.format("8"))) == [
        ("B5", "the stored Total is 8, and the counts in B2 to B4, signs left out, give 9 at least, expected them to agree")
    ]


def test_densities_are_of_the_soil_that_was_processed(tmp_path: Path) -> None:
    """Of 40 litres taken 20 were floated, and the stored density agrees with the 20."""
    sheet = "Sample|Vol. taken (l)|Vol. processed (l)|Hordeum vulgare grain|Triticum spelta grain|Total|Items per litre\n"
    found = taken(tmp_path, sheet + "1|40|20|6|4|10|0.5\n2|10|10|3|2|5|0.5\n3|30|15|1|2|3|0.2")
    assert disagreements(found) == []
    assert [found.facts[id]["volume"][0].text for id in ("1", "2", "3")] == ["20", "10", "15"]


def test_totals_of_whole_ones_and_pieces_in_one_line_of_heads_are_of_their_own_columns(tmp_path: Path) -> None:
    """'Total W' adds up the columns headed W, and 'Total F' those headed F."""
    sheet = """
        Sample||S1||S2|||
        Taxon|Element|W|F|W|F|Total W|Total F
        Triticum dicoccum|grain|1|2|3|4|4|6
        Hordeum vulgare|grain|5|6|7|8|12|{}
        Avena sativa|grain|2|5|1|3|3|8
    """
    assert of_csv(tmp_path, sheet.format("14")) == ([], [])
    assert [cell for cell, _ in of_csv(tmp_path, sheet.format("15"))[0]] == ["H4"]


def test_a_sign_for_the_name_above_is_that_name(tmp_path: Path) -> None:
    """Two parts of barley, the second under a ditto mark."""
    found = taken(tmp_path, "Taxon|Part|S1|S2\nHordeum vulgare|grain|3|4\nditto|rachis|1|2\nAvena sativa|grain|2|1")
    names = {row.identification.taxon for row in found.rows}
    assert names == {"Hordeum vulgare", "Avena sativa"}


BY_SHARE = """
    Sample|Fraction|Litres|% sorted|Hordeum vulgare grain|Avena sp. grain|Rumex sp.|TOTAL (counted)|TOTAL est.|Est./l
    S1|Flot|20|50|12|30|7|49|98|4.9
    S1|Residue||100|3|1||4|4|
    S2|Flot|10|25|6|0|11|17|68|6.8
    S3|Flot|5|100|2|9|4|15|{}|3
"""
BY_NUMBER = """
    Sample|Fraction|Litres|Hordeum vulgare grain|Avena sp. grain|Rumex sp. seed|TOTAL (counted)|x|TOTAL est.
    S1|Flot|20|12|30|7|49|2|98
    S1|Residue||3|1||4|1|4
    S2|Flot|10|6|0|11|17|4|68
    S3|Flot|5|2|9|4|15|1|{}
"""


@pytest.mark.parametrize("sheet", [BY_SHARE, BY_NUMBER])
def test_estimated_totals_are_scaled_up_as_their_own_line_says(tmp_path: Path, sheet: str) -> None:
    """By the share sorted of a flot beside a residue that was sorted whole, or by what the line is multiplied with."""
    assert disagreements(taken(tmp_path, sheet.format("15"))) == []
    found = disagreements(taken(tmp_path, sheet.format("16")))
    assert [(cell, message[:29]) for cell, message in found] == [("I5", "the stored TOTAL est. is 16, ")]
