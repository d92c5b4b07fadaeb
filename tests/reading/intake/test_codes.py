"""Codes of a sheet, explained by a sheet of the workbook or by a list in a file of its own."""

# ruff: noqa: E501

from __future__ import annotations

import io
from functools import cache
from pathlib import Path

import openpyxl
from click.testing import CliRunner

from narrate.cli import commands
from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

# Invented, as all codes here.
FLOTS = "Sample,Code,Count\nS1,ZEAMAY,12\nS1,CARXXX,3\nS2,ZEAMAY,5\nS2,CHEBER,40\n"
LIST = "Code,Name,Part\nZEAMAY,Zea mays,kernel\nCARXXX,Carya sp.,nutshell\nCHEBER,Chenopodium berlandieri,seed\nVITIS,Vitis sp.,seed\n"
FOUND = [
    ("S1", "Carya", "nutshell", 3), ("S1", "Zea mays", "kernel", 12), ("S2", "Chenopodium berlandieri", "seed", 40),
    ("S2", "Zea mays", "kernel", 5),
]  # fmt: skip


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def rows(found: TakenIn) -> list[tuple[str, str, str, int | None]]:
    return sorted((str(r.sample), r.identification.taxon or "", str(r.part), r.count.number) for r in found.rows)


def taken(folder: Path, sheet: str, codes: str) -> TakenIn:
    (folder / "lab.csv").write_text(sheet, encoding="utf-8")
    (folder / "codes.csv").write_text(codes, encoding="utf-8")
    return take_in(folder / "lab.csv", packs(), codes=folder / "codes.csv")


def test_a_sheet_of_codes_in_the_workbook_is_used(tmp_path: Path) -> None:
    """The codes in use stand under names in the layout, and the sheet of codes gives no finds."""
    book = openpyxl.Workbook()
    for name, text in (("Codes", LIST), ("Flots", FLOTS)):
        sheet = book.create_sheet(name)
        for line in text.splitlines():
            sheet.append([int(cell) if cell.isdigit() else cell for cell in line.split(",")])
    del book["Sheet"]
    out = io.BytesIO()
    book.save(out)
    (tmp_path / "lab.xlsx").write_bytes(out.getvalue())
    found = take_in(tmp_path / "lab.xlsx", packs())

    assert rows(found) == FOUND
    assert found.layout is not None and set(found.layout.names) == {"ZEAMAY", "CARXXX", "CHEBER"}
    assert "sheet Codes says what 3 codes mean; they stand under 'names' in the layout" in found.doubts


def test_a_list_of_codes_in_its_own_file_is_used(tmp_path: Path) -> None:
    """Names and parts come from the list; codes that the sheet does not use are left out."""
    found = taken(tmp_path, FLOTS, LIST)

    assert rows(found) == FOUND
    assert found.doubts[0] == "codes.csv says what 3 codes mean; they stand under 'names' in the layout"


def test_the_layout_alone_reads_the_codes_from_then_on(tmp_path: Path) -> None:
    """The list is needed once."""
    (tmp_path / "lab.csv.layout.yaml").write_text(taken(tmp_path, FLOTS, LIST).text, encoding="utf-8")

    assert rows(take_in(tmp_path / "lab.csv", packs())) == FOUND


def test_codes_over_columns_are_explained_too(tmp_path: Path) -> None:
    """Codes as heads of a crossed table."""
    found = taken(tmp_path, "Sample,ZEAMAY,CARXXX,CHEBER\nS1,12,3,\nS2,5,,40\n", LIST)

    assert rows(found) == FOUND


def test_small_letters_and_numbers_may_be_codes(tmp_path: Path) -> None:
    """In a list that is handed over as one, any word will do."""
    sheet = FLOTS.replace("ZEAMAY", "zm").replace("CARXXX", "101").replace("CHEBER", "ch-b")
    codes = LIST.replace("ZEAMAY", "zm").replace("CARXXX", "101").replace("CHEBER", "ch-b")

    assert rows(taken(tmp_path, sheet, codes)) == FOUND


def test_a_code_for_two_names_is_told_and_not_used(tmp_path: Path) -> None:
    """With both names and both rows."""
    found = taken(tmp_path, FLOTS, LIST + "CARXXX,Vitis sp.,seed\n")

    assert [(str(p.place), p.message) for p in found.problems if p.severity == "error"] == [(
        "codes.csv, cell A6",
        "the code 'CARXXX' stands for 'Vitis sp. seed' here and for 'Carya sp. nutshell' in row 3; it is not used, "
        "expected one name for each code",
    )]  # fmt: skip
    assert ("S1", "Carya", "nutshell", 3) not in rows(found)


def test_a_list_of_other_codes_is_told(tmp_path: Path) -> None:
    """None of them stands in the sheet."""
    found = taken(tmp_path, FLOTS, "Code,Name\nAAA,Zea mays\nBBB,Vitis sp.\n")

    assert [p.message for p in found.problems if p.severity == "error"] == [
        "none of the 2 codes stands in the sheet, expected some of AAA, BBB"
    ]


def test_a_file_that_is_no_list_of_codes_is_told(tmp_path: Path) -> None:
    """And what was expected."""
    found = taken(tmp_path, FLOTS, "Weather,Mood\nrain,good\n")

    assert [p.message for p in found.problems if p.severity == "error"] == [
        "nothing in the file reads as a list of codes, expected a column of codes and a column of names of plants"
    ]


def test_a_layout_that_is_there_is_not_overwritten(tmp_path: Path) -> None:
    """The codes that it lacks are listed for the analyst."""
    layout = taken(tmp_path, FLOTS, LIST).text.replace("  CARXXX: Carya sp. nutshell\n", "")
    (tmp_path / "lab.csv.layout.yaml").write_text(layout, encoding="utf-8")
    found = taken(tmp_path, FLOTS, LIST)

    assert found.doubts == (
        "the layout is yours and was left as it is; add the codes under 'names' in it: CARXXX: Carya sp. nutshell",
    )


def test_the_command_takes_a_list_of_codes(tmp_path: Path) -> None:
    """narrate intake SHEET --codes FILE."""
    (tmp_path / "lab.csv").write_text(FLOTS, encoding="utf-8")
    (tmp_path / "codes.csv").write_text(LIST, encoding="utf-8")
    done = CliRunner().invoke(commands, ["intake", str(tmp_path / "lab.csv"), "--codes", str(tmp_path / "codes.csv")])

    assert done.exit_code == 0
    assert "ZEAMAY: Zea mays kernel" in (tmp_path / "lab.csv.layout.yaml").read_text(encoding="utf-8")
