"""Sheets and tables that add up others, by their numbers: checked, and never counted beside them. All are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs
from tests.reading.intake.test_sums_without_words import ALL, COUNTS, LIST, NAMES, SAMPLES, WAYS, Rows, added, taken

HEAVY = (
    (0, 2, 0, 1, 0, 0, 3), (1, 0, 0, 0, 4, 0, 0), (0, 0, 2, 0, 0, 1, 0), (0, 0, 0, 3, 0, 0, 0),
    (5, 0, 0, 0, 0, 2, 0), (2, 8, 1, 0, 6, 0, 9), (0, 0, 0, 0, 0, 0, 0), (0, 1, 0, 0, 0, 0, 2),
)  # fmt: skip
COMBINED = [[a + b for a, b in zip(*pair, strict=True)] for pair in zip(COUNTS, HEAVY, strict=True)]
BOTH = ALL + sum(map(sum, HEAVY))
PHASES = {"in runs": (range(3), range(3, 5), range(5, 7)), "mixed": ((0, 4), (1, 3, 6), (2, 5))}


def table(numbers: object, ids: list[str] = SAMPLES) -> Rows:
    return [["Taxon", *ids], *([name, *own] for name, own in zip(NAMES, numbers, strict=True))]  # type: ignore[call-overload]


def book(folder: Path, **sheets: Rows) -> TakenIn:
    made = Workbook()
    made.remove(made.active)
    for name, rows in sheets.items():
        sheet = made.create_sheet(name)
        for row in rows:
            sheet.append([None if cell == "" else cell for cell in row])
    made.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


def told(found: TakenIn) -> list[tuple[str, str, str]]:
    return [(one.place.sheet, one.place.cell, one.message) for one in found.problems if one.code == "N317"]


def by_phase(way: str, wrong: int = 0) -> list[list[int]]:
    rows = [[sum(own[s] for s in of) for of in PHASES[way]] for own in COUNTS]
    rows[1][1] += wrong
    return rows


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("order", [("Light", "Heavy", "Combined"), ("Combined", "Light", "Heavy"), ("A", "B", "C")])
def test_a_sheet_that_adds_up_two_is_not_counted(tmp_path: Path, order: tuple[str, ...], way: str) -> None:
    """Wherever it stands and whatever it is called."""
    rows = {"Light": COUNTS, "Heavy": HEAVY, "Combined": COMBINED, "A": COUNTS, "B": HEAVY, "C": COMBINED}
    found = book(tmp_path, **{name: WAYS[way](table(rows[name])) for name in order})

    assert (added(found), told(found)) == (BOTH, [])
    assert [one for one in found.doubts if "cell by cell" in one and "write counts" in one] != []


@pytest.mark.parametrize("way", WAYS)
def test_a_wrong_number_in_a_sheet_that_adds_up_two_is_told(tmp_path: Path, way: str) -> None:
    """With both numbers, and the cells of both sheets."""
    wrong = [list(own) for own in COMBINED]
    wrong[4][0] += 7
    sheets = {"LF": COUNTS, "HF": HEAVY, "Sum3": wrong}
    found = book(tmp_path, **{name: WAYS[way](table(rows)) for name, rows in sheets.items()})

    cell, what = {"taxa down": ("B6", "S1"), "taxa across": ("F2", NAMES[4])}[way]
    assert added(found) == BOTH
    assert told(found) == [(
        "Sum3", cell, f"the stored {what} is 12, and the counts in sheet LF, {cell} and sheet HF, {cell} give 5, "
        "expected them to agree",
    )]  # fmt: skip


def test_tables_of_one_sheet_are_held_against_each_other(tmp_path: Path) -> None:
    """Three tables below each other, the third the sum of the two."""
    width = [""] * 7
    rows: Rows = [["Light", *width], *table(COUNTS), ["", *width], ["Heavy", *width], *table(HEAVY)]
    rows += [["", *width], ["Both", *width], *table(COMBINED)]

    assert added(taken(tmp_path, rows)) == BOTH


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("ids", [["Phase I", "Phase II", "Phase III"], ["101", "102", "103"]])
@pytest.mark.parametrize("phases", PHASES)
def test_a_sheet_by_phase_is_no_more_samples(tmp_path: Path, phases: str, ids: list[str], way: str) -> None:
    """Though no sheet says which sample is of which phase: it is told, and left out."""
    found = book(tmp_path, Counts=WAYS[way](table(COUNTS)), Sheet2=table(by_phase(phases), ids))

    assert (added(found), told(found)) == (ALL, [])
    assert [one for one in found.doubts if "sheet Sheet2" in one and "sums of groups of the samples" in one] != []


@pytest.mark.parametrize("phases", PHASES)
def test_a_wrong_number_in_a_sheet_by_phase_is_told(tmp_path: Path, phases: str) -> None:
    """With both numbers and both places: of the phase where its samples are known, else of the name in all of them."""
    found = book(tmp_path, Counts=table(COUNTS), Sheet2=table(by_phase(phases, wrong=40), ["Early", "Middle", "Late"]))

    assert added(found) == ALL
    assert [sheet for sheet, _, _ in told(found)] == ["Sheet2"]
    assert "sheet Counts" in told(found)[0][2]


def test_a_sheet_by_phase_adds_up_a_list_too(tmp_path: Path) -> None:
    """One row a find on one sheet, its sums by phase on another."""
    rows: Rows = [["Sample", "Taxon", "Count"], *([*line] for line in LIST)]
    found = book(tmp_path, Finds=rows, Sheet2=table(by_phase("mixed"), ["Phase I", "Phase II", "Phase III"]))

    assert added(found) == ALL


def test_a_sheet_of_the_whole_site_is_no_sample(tmp_path: Path) -> None:
    """One column holds all that was found of each name."""
    found = book(tmp_path, Counts=table(COUNTS), Site=table([[sum(own)] for own in COUNTS], ["Hill Farm"]))

    assert added(found) == ALL


def test_sheets_of_other_samples_are_counted(tmp_path: Path) -> None:
    """The same plants in samples of another area, and the two fractions of the same ones."""
    other = book(tmp_path, North=table(COUNTS), South=table([own[:3] for own in HEAVY], ["T1", "T2", "T3"]))
    assert added(other) == ALL + sum(sum(own[:3]) for own in HEAVY)

    assert added(book(tmp_path, Light=table(COUNTS), Heavy=table(HEAVY))) == BOTH
