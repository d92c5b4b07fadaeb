"""Every problem that comes of what a sheet says points at the cell, in a workbook and in a text file. Invented."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import openpyxl
import pytest

from narrate.pipeline.explain import explain
from narrate.pipeline.intake import intake
from narrate.pipeline.judged import read
from narrate.problems import Problem, written

ROWS: tuple[tuple[str | float | None, ...], ...] = (
    ("Sample", "", "014", "015", "016", "016", "017", "017*", "", "018", "Total"),
    ("Context", "", "C12", "C12", "C14", "C14", "C14", "C14", "C14", "C99", ""),
    ("Phase", "", "Early", "Early", "Late", "Late", "Late", "Late", "Late", "Late", ""),
    ("Volume (l)", "", 10, "<1", 12, 12, 1200, 10, 10, 10, ""),
    ("Zea mays", "kernel", 12, 3, 0, 1, 2, 1, 4, 1, 20),
    ("Zea mays", "kernel", 2, "", "", "", "", "", "", "", 2),
    ("Zea mays", "cupule", 45, "many?!", 1, 2, "x", "", 2, "", ""),
    ("Chenopodum berlandieri", "seed", 4, "", 2, "", 1, "", "", "", 7),
    ("Carya sp. nÃ¼tshell", "", 3, 1, "", "", "", "", "", "", 4),
    ("Vitis sp.", "seed, charred and uncharred", 1, "", "", "", "", "", "", "", 1),
    ("Iva annua", "frobnicle", 2, "", "", "", "", "", "", "", 2),
    ("Fish bone", "", 3, "", "", "", "", "", "", "", 3),
)

RECORDS = """
contexts:
  - {id: C12, kind: hearth, phase: Early, deposit: primary, security: sealed}
  - {id: C14, kind: storage pit, phase: Late, deposit: primary, security: sealed}
samples:
  - {id: "014", context: C12}
  - {id: "015", context: C12, sterile: true}
  - {id: "016", context: C14, volume_l: 12}
  - {id: "017", context: C14, volume_l: 1200}
  - {id: "018", context: C99, volume_l: 10}
"""

OTHER_SHEET = "Taxon,014,020\nZea mays kernel,1,2\n"


def a_project(folder: Path, ending: str) -> tuple[Problem, ...]:
    """The problems of a project whose sheet has something wrong in many ways."""
    dig = folder / "dig"
    (dig / "records").mkdir(parents=True)
    (dig / "counts").mkdir()
    (dig / "project.yaml").write_text(
        "title: Invented\nregion_packs: [eastern-north-america]\npreservation: charred\n"
        "phases:\n  - {id: Early, name: Early, start: 950, end: 1050}\n",
        encoding="utf-8",
    )
    (dig / "records" / "mine.yaml").write_text(RECORDS, encoding="utf-8")
    sheet = dig / "counts" / f"lab.{ending}"
    if ending == "csv":
        with sheet.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out).writerows(ROWS)
    else:
        book = openpyxl.Workbook()
        book.active.title = "Flots"
        for row in ROWS:
            book.active.append([None if cell == "" else cell for cell in row])
        book.save(sheet)
    intake(sheet)
    other = dig / "counts" / "other.csv"
    other.write_text(OTHER_SHEET, encoding="utf-8")
    intake(other)
    return read(dig).problems


CODES = {
    "N203", "N205", "N207", "N304", "N305", "N312", "N313", "N314", "N315", "N316", "N317", "N401", "N402",
}  # fmt: skip
"""N206 has a project of its own below; N310, N311 and the others of N312 are of a whole file and not of a cell."""


@pytest.mark.parametrize("ending", ["xlsx", "csv"])
def test_every_problem_of_a_sheet_names_its_cell(tmp_path: Path, ending: str) -> None:
    """In its place or, where a record is at fault as well, in its message."""
    found = a_project(tmp_path, ending)
    where = r"counts/(?:lab\.xlsx, sheet Flots|lab\.csv|other\.csv), cell [A-Z]+\d+"

    assert {p.code for p in found} == CODES
    assert [written(p) for p in found if not re.search(where, f"{p.place} {p.message}")] == []


def test_problems_of_records_say_what_the_sheet_says_and_where(tmp_path: Path) -> None:
    """The record's line comes first, because it is what is read; the cell that it was taken from is in the message."""
    found = [p for p in a_project(tmp_path, "xlsx") if p.place.path == "records/mine.yaml"]
    flots = "counts/lab.xlsx, sheet Flots, cell"

    assert [f"{p.place.line}: {p.code}: {p.message}" for p in found] == [
        f"4: N205: context 'C14': phase 'Late' is none of the project's; the sheet says 'Late' in {flots} E3",
        "6: N207: sample '014' has no volume_l, expected litres of sediment; without it there is no density; the sheet "
        f"says 10 in {flots} C4",
        "7: N207: sample '015' has no volume_l, expected litres of sediment; without it there is no density; the sheet "
        f"says '<1' in {flots} D4",
        f"7: N203: sample '015': sterile is true, and {flots} D5 has something in it, expected one or the other",
        "9: N207: sample '017': volume_l is 1200, expected between 0.05 and 1000 litres; the sheet says 1200 in "
        f"{flots} G4",
        f"10: N205: sample '018': context 'C99' is described by no record; the sheet says 'C99' in {flots} J2",
    ]


def test_a_part_that_the_sheet_does_not_name_is_told_at_the_first_such_find(tmp_path: Path) -> None:
    """Names before it that have a part are not pointed at."""
    sheet = tmp_path / "lab.csv"
    sheet.write_text("Taxon,S1,S2\nZea mays cupule,3,1\nVitis sp.,,4\nIva annua,2,\n", encoding="utf-8")

    assert [f"{p.place}: {p.message}" for p in intake(sheet).problems] == [
        "lab.csv, cell A3: 2 finds name no part; the layout takes them as seed for 2, expected a part for each"
    ]


def test_a_sample_without_rows_is_pointed_at_in_the_sheet(tmp_path: Path) -> None:
    """A list of samples names it, no count sheet has rows of it, and the record does not say that it is sterile."""
    dig = tmp_path / "dig"
    (tmp_path / "samples.csv").write_text("Sample,Context,Litres\nS1,C1,10\nS2,C2,8\n", encoding="utf-8")
    (tmp_path / "lab.csv").write_text("Taxon,Part,S1\nZea mays,kernel,3\nCarya sp.,nutshell,4\n", encoding="utf-8")
    intake(tmp_path / "samples.csv", dig)
    intake(tmp_path / "lab.csv", dig)
    drafted = dig / "records" / "drafted-from-sheets.yaml"
    drafted.write_text(drafted.read_text(encoding="utf-8").replace("    sterile: true\n", ""), encoding="utf-8")

    assert [f"{p.place}: {p.message}" for p in read(dig).problems if p.code == "N206"] == [
        "records/drafted-from-sheets.yaml:13:9: sample 'S2' has no rows in any count sheet; it counts as a sample in "
        "which nothing was found; the sample stands in counts/samples.csv, cell A3"
    ]


def test_letters_read_in_an_older_encoding_are_pointed_at_by_cell(tmp_path: Path) -> None:
    """The byte, what it is read as, and the cell that holds the word."""
    sheet = tmp_path / "lab.csv"
    sheet.write_bytes("Taxon,Fundort Höhle,S2\nZea mays kernel,3,1\nCarya sp. nutshell,,4\n".encode("cp1252"))

    assert [f"{p.place}: {p.message}" for p in intake(sheet).problems if p.code == "N312"] == [
        "lab.csv, cell B1: byte 0xF6 is not UTF-8; the file is read as Windows-1252 (Latin-1 reads the same here), so "
        "that the byte is 'ö' in 'Höhle'; expected UTF-8"
    ]


@pytest.mark.parametrize("ending", ["xlsx", "csv"])
def test_explain_leads_from_a_find_to_its_cell(tmp_path: Path, ending: str) -> None:
    """The evidence names the cell, with the words that head its row and column."""
    dig = tmp_path / "dig"
    sheet = tmp_path / f"lab.{ending}"
    rows = [["Sample", "", "S1"], ["Context", "", "C1"], ["Zea mays", "kernel", 12], ["Zea mays", "cupule", 45]]
    if ending == "csv":
        with sheet.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out).writerows(rows)
    else:
        book = openpyxl.Workbook()
        book.active.title = "Flots"
        for row in rows:
            book.active.append([None if cell == "" else cell for cell in row])
        book.save(sheet)
    intake(sheet, dig)
    where = "counts/lab.xlsx, sheet Flots, cell C3" if ending == "xlsx" else "counts/lab.csv, cell C3"

    assert f"{where}  Zea mays | kernel | S1 | C1: 12" in explain(dig, "C1/found.zea-mays.kernel").text
