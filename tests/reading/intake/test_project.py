"""A laboratory's workbook in a project: drafted records, problems at cells, evidence down to cells."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest
from click.testing import CliRunner

from narrate.cli import commands
from narrate.pipeline.explain import explain, explained
from narrate.pipeline.intake import intake
from narrate.pipeline.judged import judged_folder, read
from narrate.problems import written

# Invented.
ROWS = (
    ("Invented hamlet: light fraction", None, None, None, None),
    (None, "Sample", "014", "015", "016"),
    (None, "Context", "C12", "C12", "C14"),
    (None, "Feature type", "Hearth", "Hearth", "Storage pit"),
    (None, "Phase", "Early", "Early", "Late"),
    (None, "Volume (l)", 10, "<1", 12.5),
    (None, "% sorted", 100, 50, 100),
    ("Zea mays", "kernel", 12, 3, 0),
    ("Zea mays", "cupule", 45, "many?!", None),
    ("Chenopodium berlandieri", "seed", None, 7, None),
    ("Chenopodum berlandieri", "seed", 4, None, None),
    ("Fish bone", None, 3, None, None),
    ("Total", None, 57, 10, 0),
)


@pytest.fixture
def workbook(tmp_path: Path) -> Path:
    book = openpyxl.Workbook()
    book.active.title = "Notes"
    book.active.append(["Counted by an invented analyst"])
    sheet = book.create_sheet("Flots")
    for row in ROWS:
        sheet.append(row)
    path = tmp_path / "lab.xlsx"
    book.save(path)
    return path


def test_a_workbook_becomes_a_project(tmp_path: Path, workbook: Path) -> None:
    """Contexts, samples, volumes, shares sorted and phases are drafted, each with the cell that says it."""
    before = workbook.read_bytes()
    found = intake(workbook, tmp_path / "dig")

    assert workbook.read_bytes() == before
    assert sorted(path.relative_to(tmp_path / "dig").as_posix() for path in found.written) == [
        "counts/lab.xlsx", "counts/lab.xlsx.layout.yaml", "project.yaml", "records/drafted-from-sheets.yaml",
    ]  # fmt: skip
    drafted = (tmp_path / "dig" / "records" / "drafted-from-sheets.yaml").read_text(encoding="utf-8")
    at = "  # counts/lab.xlsx, sheet Flots, cell"
    assert drafted.split("\n", 3)[3] == (
        'contexts:\n'
        f'  - id: "C12"{at} C3\n    kind: hearth{at} C4\n    phase: "Early"{at} C5\n    description: "Hearth"\n'
        f'  - id: "C14"{at} E3\n    kind: storage pit{at} E4\n    phase: "Late"{at} E5\n'
        '    description: "Storage pit"\n'
        'samples:\n'
        f'  - id: "014"{at} C2\n    context: "C12"{at} C3\n    volume_l: 10{at} C6\n'
        f'  - id: "015"{at} D2\n    context: "C12"{at} D3\n'
        f'    size_classes: [{{name: whole flot, proportion_sorted: 0.5}}]{at} D7\n    note: "volume written <1"\n'
        f'  - id: "016"{at} E2\n    context: "C14"{at} E3\n    volume_l: 12.5{at} E6\n    sterile: true\n'
    )  # fmt: skip


def test_check_points_at_the_cell(tmp_path: Path, workbook: Path) -> None:
    """Every problem of a cell names file, sheet and cell, what was read, what was expected and how to mend it."""
    intake(workbook, tmp_path / "dig")
    told = [written(p) for p in read(tmp_path / "dig").problems if p.place.cell]

    assert told == [
        "counts/lab.xlsx, sheet Flots, cell D9: error N313: Zea mays, sample 015: the cell holds 'many?!', expected a "
        "count, a sign or nothing\n"
        '      help: say under mend in the layout what is meant, such as mend: {"H4": "3"}',
        "counts/lab.xlsx, sheet Flots, cell A11: warning N401: taxon 'Chenopodum berlandieri' is in no taxon pack in "
        "use; 1 finds are counted as written, and no rule can speak of it; did you mean 'Chenopodium berlandieri'?\n"
        '      help: to accept it, write under names in the layout: "Chenopodum berlandieri": Chenopodium berlandieri',
        "counts/lab.xlsx, sheet Flots, cell A12: warning N315: bone is set aside: it is no plant, and is in no count, "
        "expected remains of plants\n"
        "      help: nothing need be done; heavy_fraction, finds in the records can hold it",
        "counts/lab.xlsx, sheet Flots, cell C13: warning N317: the stored Total is 57, and the counts in C8 to C11 "
        "give 61, expected them to agree\n"
        "      help: narrate uses the counts; look whether a count or the stored number is wrong",
    ]


def test_what_the_analyst_mends_in_the_layout_is_obeyed(tmp_path: Path, workbook: Path) -> None:
    """A cell mended and a name accepted in the layout leave the workbook as it was and the project without errors."""
    intake(workbook, tmp_path / "dig")
    layout = tmp_path / "dig" / "counts" / "lab.xlsx.layout.yaml"
    text = layout.read_text(encoding="utf-8")
    text = text.replace("mend: {}", 'mend: {"Flots!D9": ">100"}')
    text = text.replace("names: {}", "names: {Chenopodum berlandieri: Chenopodium berlandieri}")
    layout.write_text(text, encoding="utf-8")
    reading = read(tmp_path / "dig")

    assert [p.code for p in reading.problems if p.severity == "error" or p.code == "N401"] == []
    assert reading.project is not None
    cupules = next(row for row in reading.project.counts if row.place.cell == "D9")
    assert (cupules.count.written, cupules.count.number, cupules.count.at_least) == (">100", None, 101)
    assert cupules.proportion_sorted == 0.5
    goosefoot = next(row for row in reading.project.counts if row.place.cell == "C11")
    assert (goosefoot.identification.written, goosefoot.identification.taxon) == (
        "Chenopodum berlandieri", "Chenopodium berlandieri",
    )  # fmt: skip


def test_explain_leads_to_the_cell(tmp_path: Path, workbook: Path) -> None:
    """The evidence of a find is the cell, with the words that head its row and column."""
    intake(workbook, tmp_path / "dig")
    layout = tmp_path / "dig" / "counts" / "lab.xlsx.layout.yaml"
    layout.write_text(layout.read_text(encoding="utf-8").replace("mend: {}", 'mend: {D9: ""}'), encoding="utf-8")

    assert (
        "counts/lab.xlsx, sheet Flots, cell C8  Zea mays | kernel | 014 | C12 | Hearth: 12"
        in explain(tmp_path / "dig", "C12/found.zea-mays.kernel").text
    )
    assert (
        'records/drafted-from-sheets.yaml:5  - id: "C12"  # counts/lab.xlsx, sheet Flots, cell C3'
        in explain(tmp_path / "dig", "C12/record").text
    )


def test_explain_leads_from_every_claim_to_the_cells_that_it_rests_on(tmp_path: Path, workbook: Path) -> None:
    """All claims of one sample: each cell of counts that a criterion looked at stands in the explanation."""
    intake(workbook, tmp_path / "dig")
    layout = tmp_path / "dig" / "counts" / "lab.xlsx.layout.yaml"
    layout.write_text(layout.read_text(encoding="utf-8").replace("mend: {}", 'mend: {D9: ""}'), encoding="utf-8")
    whole = judged_folder(tmp_path / "dig").whole
    assert whole is not None
    rests_on = {
        id: {str(place) for argument in claim.arguments for one in argument.evidence for place in one.places
             if place.path.startswith("counts/")}
        for id, claim in whole.claims.by_id.items() if claim.about.id == "014"
    }  # fmt: skip
    unsaid = [
        (id, place)
        for id, places in rests_on.items()
        for place in places
        if place not in explained(tmp_path / "dig", whole, id).text or ", cell " not in place
    ]

    assert sum(map(bool, rests_on.values())) > 10
    assert unsaid == []


def test_a_second_run_obeys_the_layout(tmp_path: Path, workbook: Path) -> None:
    """An edited layout is left as it is, and what it says is read."""
    intake(workbook)
    layout = workbook.with_name("lab.xlsx.layout.yaml")
    edited = layout.read_text(encoding="utf-8").replace("    9-11: counts\n", "    9: ignored\n    10-11: counts\n")
    edited = edited.replace("8-11: counts", "8: counts\n      9: ignored, unsure\n      10-11: counts")
    layout.write_text(edited, encoding="utf-8")
    again = intake(workbook)

    assert again.taken.is_given
    assert layout.read_text(encoding="utf-8") == edited
    assert {row.place.cell for row in again.taken.rows if row.part == "cupule"} == set()


# Invented: no heads, so that a layout must say what the columns are; and the list of samples beside it.
HEADLESS = "x,S1,3,kernel,Zea mays\nx,S2,4,nutshell,Carya sp.\n"
HEADLESS_LAYOUT = """# by hand
format: narrate layout 1
tables:
  - shape: long
    rows: {1-2: finds}
    columns: {A: note, B: sample, C: count, D: part, E: taxon}
"""


@pytest.mark.parametrize("name", ["lab.csv.layout.yaml", "lab.layout.yaml"])
@pytest.mark.parametrize("is_copied", [False, True])
def test_a_layout_beside_the_sheet_goes_into_the_project(tmp_path: Path, name: str, is_copied: bool) -> None:
    """The analyst's own layout lies beside the copy word for word, and records are drafted of what it says."""
    (tmp_path / "lab.csv").write_text(HEADLESS, encoding="utf-8")
    (tmp_path / name).write_text(HEADLESS_LAYOUT, encoding="utf-8")
    (tmp_path / "samples.csv").write_text("Sample,Context,Litres\nS1,C1,10\nS2,C2,8\n", encoding="utf-8")
    if is_copied:
        (tmp_path / "dig" / "counts").mkdir(parents=True)
        (tmp_path / "dig" / "counts" / "lab.csv").write_text(HEADLESS, encoding="utf-8")
    found = intake(tmp_path / "lab.csv", tmp_path / "dig")
    intake(tmp_path / "samples.csv", tmp_path / "dig")
    reading = read(tmp_path / "dig")

    assert found.taken.is_given
    assert (tmp_path / "dig" / "counts" / "lab.csv.layout.yaml").read_text(encoding="utf-8") == HEADLESS_LAYOUT
    assert [p.message for p in reading.problems if p.severity == "error"] == []
    assert reading.project is not None
    assert {s.id: (s.context, s.sterile) for s in reading.project.samples} == {
        "S1": ("C1", False), "S2": ("C2", False),
    }  # fmt: skip
    assert sorted(row.count.number or 0 for row in reading.project.counts) == [3, 4]


def test_another_sheet_of_the_same_name_is_refused(tmp_path: Path) -> None:
    """A corrected or second sheet is not passed over for the old copy, and writes nothing over; the same goes on."""
    sheet, copy = tmp_path / "lab.csv", tmp_path / "dig" / "counts" / "lab.csv"
    sheet.write_text("Taxon,Part,S1,S2\nZea mays,kernel,3,\nCarya sp.,nutshell,,4\n", encoding="utf-8")
    intake(sheet, tmp_path / "dig")
    again = intake(sheet, tmp_path / "dig")
    before = {path: path.read_bytes() for path in (tmp_path / "dig").rglob("*") if path.is_file()}
    sheet.write_text(sheet.read_text(encoding="utf-8").replace("3", "30"), encoding="utf-8")
    found = intake(sheet, tmp_path / "dig")

    assert sorted(row.count.number or 0 for row in again.taken.rows) == [3, 4]
    assert [written(problem) for problem in found.problems] == [
        f"counts/lab.csv: error N108: the project holds another sheet of this name, and '{sheet}' differs from it; "
        "nothing was read or written, expected the same sheet or none\n"
        "      help: if they are two sheets, give the one taken in a name of its own; if one mends the other, put it "
        "in the place of the old copy yourself and look whether the layout beside it still fits"
    ]
    assert (found.taken.rows, found.written) == ((), ())
    assert {path: path.read_bytes() for path in (tmp_path / "dig").rglob("*") if path.is_file()} == before
    assert b"30" not in copy.read_bytes()


def test_drafted_records_that_were_edited_are_left_alone(tmp_path: Path, workbook: Path) -> None:
    """Once the analyst has changed the drafted file it is hers."""
    intake(workbook, tmp_path / "dig")
    drafted = tmp_path / "dig" / "records" / "drafted-from-sheets.yaml"
    drafted.write_text(drafted.read_text(encoding="utf-8").replace("volume_l: 10", "volume_l: 11"), encoding="utf-8")
    edited = drafted.read_text(encoding="utf-8")
    intake(workbook, tmp_path / "dig")

    assert drafted.read_text(encoding="utf-8") == edited


def test_records_and_counts_in_two_files_are_joined(tmp_path: Path) -> None:
    """The sample's id is the key between a file of counts and a file of records."""
    (tmp_path / "counts.csv").write_text(
        "Taxon,Part,S1,S2\nZea mays,kernel,3,\nCarya sp.,nutshell,,4\n", encoding="utf-8"
    )
    (tmp_path / "samples.csv").write_text("Sample,Context,Litres\nS1,C1,10\nS2,C2,8\nS3,C2,9\n", encoding="utf-8")
    intake(tmp_path / "counts.csv", tmp_path / "dig")
    intake(tmp_path / "samples.csv", tmp_path / "dig")
    reading = read(tmp_path / "dig")

    assert [p.message for p in reading.problems if p.severity == "error"] == []
    assert reading.project is not None
    assert {s.id: (s.context, s.volume_l, s.sterile) for s in reading.project.samples} == {
        "S1": ("C1", 10.0, False), "S2": ("C2", 8.0, False), "S3": ("C2", 9.0, True),
    }  # fmt: skip


def test_the_command_prints_the_picture_and_writes_the_layout(workbook: Path) -> None:
    """One command shows what was understood, what was left out and why, and what was written."""
    ran = CliRunner().invoke(commands, ["intake", str(workbook)])

    assert "sheet Flots: taxa are rows, samples are columns" in ran.stdout
    assert "Notes: nothing in it reads as counts or as records of samples" in ran.stdout
    assert f"written: {workbook}.layout.yaml" in ran.stdout
    assert ran.exit_code == 1
