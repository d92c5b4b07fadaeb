"""Files as they come: encodings, separators, wrong endings, hidden and merged cells, number formats, given layouts."""

from __future__ import annotations

import datetime
import io
import zipfile
from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.problems import ProblemList
from narrate.reading.intake.grids import grids_of
from narrate.reading.intake.layout_file import read_layout
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in
from narrate.reading.source_text import SourceText

TEXT = "Taxon,Part,S1,S2\nZea mays,kernel,3,\nCarya sp.,nutshell,,4\nSchübl. Zea,kernel,1,\n"


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, name: str, content: bytes, layout: str = "") -> TakenIn:
    (folder / name).write_bytes(content)
    if layout:
        (folder / f"{name}.layout.yaml").write_text(layout, encoding="utf-8")
    return take_in(folder / name, packs())


def numbers(found: TakenIn) -> list[tuple[str, int | None]]:
    return sorted((str(row.sample), row.count.number) for row in found.rows)


@pytest.mark.parametrize(
    ("name", "content", "told"),
    [
        ("lab.csv", TEXT.encode("utf-8"), []),
        ("lab.csv", b"\xef\xbb\xbf" + TEXT.encode("utf-8"), []),
        ("lab.csv", TEXT.replace("\n", "\r\n").encode("utf-8"), []),
        ("lab.csv", TEXT.encode("cp1252"), ["N312"]),
        ("lab.csv", TEXT.encode("utf-16"), ["N312"]),
        ("lab.csv", TEXT.replace(",", ";").encode("utf-8"), ["N312"]),
        ("lab.csv", TEXT.encode("utf-8").decode("cp1252").encode("utf-8"), ["N312"]),
        ("lab.txt", TEXT.encode("utf-8"), []),
        ("lab.tsv", TEXT.replace(",", "\t").encode("utf-8"), []),
        ("lab.xlsx", TEXT.encode("utf-8"), ["N310"]),
    ],
    ids=[
        "utf-8",
        "utf-8 mark",
        "crlf",
        "windows-1252",
        "utf-16",
        "semicolons",
        "broken letters",
        "txt",
        "tabs",
        "wrong ending",
    ],
)
def test_a_file_is_read_whatever_wrote_it(tmp_path: Path, name: str, content: bytes, told: list[str]) -> None:
    """The counts come back, and all that is not plain UTF-8 with the usual separator is told."""
    found = taken(tmp_path, name, content)

    assert numbers(found) == [("S1", 1), ("S1", 3), ("S2", 4)]
    assert [p.code for p in found.problems if p.code in ("N310", "N312")] == told


def test_windows_letters_are_told_with_the_word() -> None:
    """Which byte was read as which letter, in which word."""
    problems = ProblemList()
    grids_of("lab.csv", TEXT.encode("cp1252"), problems)

    assert problems.found[0].message == (
        "byte 0xFC is not UTF-8; the file is read as Windows-1252 (Latin-1 reads the same here), so that the byte is "
        "'ü' in 'Schübl.'; expected UTF-8"
    )


def workbook() -> bytes:
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Flots"
    sheet.append(["Taxon", "Part", 14, 15])
    sheet.append(["Zea mays", "kernel", 3, datetime.date(2026, 12, 10)])
    sheet.append(["Carya sp.", "nutshell", "=1+1", 8.0])
    for cell in ("C1", "D1"):
        sheet[cell].number_format = "000"
    sheet["D3"].number_format = "0.00"
    sheet.row_dimensions[3].hidden = True
    book.create_sheet("Old").sheet_state = "hidden"
    book["Old"].append(["nothing to see"])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def test_number_formats_dates_and_formulas_of_a_workbook_are_seen(tmp_path: Path) -> None:
    """014 stays 014; a date and a formula without a result are told at their cells and are no counts."""
    found = taken(tmp_path, "lab.xlsx", workbook())

    assert numbers(found) == [("014", 3), ("015", 8)]
    assert [(p.place.cell, p.code) for p in found.problems if p.severity == "error"] == [("D2", "N313"), ("C3", "N313")]
    assert found.doubts == ("sheet Flots: rows 3 are hidden in the workbook, and are read",)


LAYOUT = """format: narrate layout 1
tables:
  - shape: long
    rows: {"1-3": finds}
    columns: {A: sample, B: code, C: part, D: count}
    cells: {key: {"+": 1-5}}
names: {ZM: Zea mays, CA: Carya sp.}
mend: {D3: "7"}
"""


def test_a_headless_list_is_read_by_a_layout_given_by_hand(tmp_path: Path) -> None:
    """Codes are explained, a sign has its key, a cell is mended; the file stays as it was."""
    content = b"S1,ZM,kernel,12\nS1,CA,nutshell,+\nS2,ZM,kernel,7-Jan\n"
    found = taken(tmp_path, "lab.csv", content, LAYOUT)

    assert found.is_given
    assert [(str(r.sample), r.identification.taxon, r.count.number, r.count.at_most) for r in found.rows] == [
        ("S1", "Zea mays", 12, None), ("S1", "Carya", None, 5), ("S2", "Zea mays", 7, None),
    ]  # fmt: skip
    assert (tmp_path / "lab.csv").read_bytes() == content
    assert [p.message for p in found.problems] == []


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (("shape: long", "shape: wide"), "table 1: shape is 'wide', expected crossed, long or records"),
        (("B: code", "B: cod"), "table 1: columns B has the role 'cod', which is not known; did you mean 'code'?"),
        (("A: sample, ", ""), "table 1 gives no row or column the role 'sample', expected one"),
        (("{A: sample", "{4: sample"), "table 1: columns has an entry 4, expected column letters such as A or C-K"),
        (("narrate layout 1", "narrate layout 2"), "format is 'narrate layout 2', expected narrate layout 1"),
        (("names:", "nams:"), "layout has a field 'nams' that is not known; did you mean 'names'?"),
        (
            ('"1-3": finds', '"1-3": finds, "2": total'),
            "table 1: rows 2 gives a role to what has one already, expected one",
        ),
    ],
)
def test_a_slip_in_a_layout_is_told(change: tuple[str, str], told: str) -> None:
    """With what was read, what was expected, and the near match."""
    problems = ProblemList()

    assert read_layout(SourceText("lab.csv.layout.yaml", LAYOUT.replace(*change)), problems) is None
    assert told in [p.message for p in problems.found]


def test_a_stored_total_that_is_wrong_is_told_with_both_numbers(tmp_path: Path) -> None:
    """Both numbers and both places; the counts stand."""
    content = b"Taxon,S1,S2,S3,Total,Ubiquity %\nZea mays kernel,3,,4,8,66.7\nCarya sp. nutshell,1,2,3,6,90\nTotal,4,2,7,14,\n"
    found = taken(tmp_path, "lab.csv", content)

    assert [(p.place.cell, p.message) for p in found.problems if p.code == "N317"] == [
        ("E2", "the stored Total is 8, and the counts in B2 to D2 give 7, expected them to agree"),
        ("F3", "the stored Ubiquity % is 90, and the counts in B3 to D3 give 100, expected them to agree"),
        ("E4", "the stored Total is 14, and the counts in B2 to D3 give 13, expected them to agree"),
    ]  # fmt: skip


def test_presence_alone_gives_no_number(tmp_path: Path) -> None:
    """A sheet of signs has no counts, so no density and no diversity can come of it."""
    found = taken(tmp_path, "lab.csv", b"Taxon,S1,S2\nZea mays kernel,x,xx\nCarya sp. nutshell,,x\nVitis sp. seed,+,\n")

    assert {row.count.number for row in found.rows} == {None}


def test_litres_of_sieve_rows_are_not_added(tmp_path: Path) -> None:
    """Two rows of one sample repeat its litres; they stay ten."""
    content = b"Sample,Sieve (mm),Volume (l),Zea mays kernel,Carya nutshell\nS1,>2,10,3,4\nS1,1-2,10,1,\nS2,>2,8,,2\n"
    found = taken(tmp_path, "lab.csv", content)

    assert {said.text for said in found.facts["S1"]["volume"]} == {"10"}
    assert {(row.size_class, row.count.number) for row in found.rows if row.sample == "S1"} == {
        (">2", 3),
        (">2", 4),
        ("1-2", 1),
    }


def test_ids_that_stand_twice_or_differ_by_a_star_are_told(tmp_path: Path) -> None:
    """Repeated flotation is kept apart until the analyst says otherwise."""
    found = taken(
        tmp_path,
        "lab.csv",
        b"Sample,4-1,4-1*,4-2,4-2\nZea mays kernel,3,1,2,2\nCarya nutshell,1,1,1,1\nVitis seed,1,,,2\n",
    )

    assert [(p.place.cell, p.code) for p in found.problems if p.code == "N314"] == [("C1", "N314"), ("E1", "N314")]


def test_a_million_rows_of_borders_below_the_counts_are_no_rows(tmp_path: Path) -> None:
    """The counts above them are read as if they were not there; merged cells and hidden rows among them, too."""
    book = openpyxl.Workbook()
    for row in (["Taxon", "Part", "S1", "S2"], ["Zea mays", "kernel", 3, None], ["Carya sp.", "nutshell", None, 4]):
        book.active.append(row)
    packed = io.BytesIO()
    book.save(packed)
    cells = b'<row r="%d"><c r="A%d" s="0"/><c r="B%d" s="0"/><c r="C%d" s="0"/></row>'
    borders = b"".join(cells % (n, n, n, n) for n in range(4, 1_000_001))
    padded = io.BytesIO()
    with zipfile.ZipFile(packed) as plain, zipfile.ZipFile(padded, "w", zipfile.ZIP_DEFLATED) as archive:
        for part in plain.infolist():
            content = plain.read(part)
            if part.filename == "xl/worksheets/sheet1.xml":
                content = content.replace(b"</sheetData>", borders + b"</sheetData>")
            archive.writestr(part.filename, content)

    found = taken(tmp_path, "lab.xlsx", padded.getvalue())

    assert numbers(found) == numbers(taken(tmp_path, "plain.xlsx", packed.getvalue())) == [("S1", 3), ("S2", 4)]
    assert [problem.code for problem in found.problems if problem.severity == "error"] == []
