"""A cell of each kind of layout, damaged in each way that makes a problem: `check` points at it. All invented."""

from __future__ import annotations

import csv
import datetime
from functools import cache
from pathlib import Path
from shutil import copytree

import openpyxl
import pytest
from openpyxl.utils import get_column_letter

from narrate.pipeline.explain import explain
from narrate.pipeline.intake import intake
from narrate.pipeline.judged import read

Rows = list[list[object]]

COLUMNS: Rows = [
    ["Sample", None, "S1", "S2", "Total"],
    ["Context", None, "C1", "C2", None],
    ["Volume (l)", None, 10, 7.5, None],
    ["Taxon", "Part", None, None, None],
    ["Zea mays", "kernel", 12, 3, 15],
    ["Iva annua", "achene", 24, 37, 61],
    ["Carya sp.", "nutshell", 5, 8, 13],
    ["Galium aparine", "seed", 2, 1, 3],
]
KINDS: dict[str, dict[str, Rows]] = {
    "columns": {"Flots": COLUMNS},
    "rows": {
        "Flots": [
            ["Sample", "Context", "Volume (l)", "Zea mays", "Iva annua", "Carya sp.", "Galium aparine", "Total"],
            [None, None, None, "kernel", "achene", "nutshell", "seed", None],
            ["S1", "C1", 10, 12, 24, 5, 2, 43],
            ["S2", "C2", 7.5, 3, 37, 8, 1, 49],
            ["S3", "C2", 9, 4, 6, 1, 9, 20],
        ]
    },
    "long": {
        "Flots": [
            ["Sample", "Context", "Volume (l)", "Taxon", "Part", "Count"],
            ["S1", "C1", 10, "Zea mays", "kernel", 12],
            ["S1", "C1", 10, "Carya sp.", "nutshell", 5],
            ["S2", "C2", 7.5, "Iva annua", "achene", 37],
            ["S2", "C2", 7.5, "Galium aparine", "seed", 1],
            ["Total", None, None, None, None, 55],
        ]
    },
    "several rows a sample": {
        "Flots": [
            ["Sample", "Context", "Volume (l)", "Sieve (mm)", "Zea mays", "Iva annua", "Carya sp.", "Total"],
            [None, None, None, None, "kernel", "achene", "nutshell", None],
            ["S1", "C1", 10, ">2", 12, 24, 5, 41],
            ["S1", "C1", 10, "1-2", 1, 3, 2, 6],
            ["S2", "C2", 7.5, ">2", 3, 37, 8, 48],
            ["S2", "C2", 7.5, "1-2", 2, 9, 4, 15],
        ]
    },
    "merged pairs": {
        "Flots": [
            ["Sample", None, "S1", None, "S2", None],
            ["Context", None, "C1", None, "C2", None],
            ["Volume (l)", None, 10, None, 7.5, None],
            ["Taxon", "Part", "n", "wt (g)", "n", "wt (g)"],
            ["Zea mays", "kernel", 12, 0.31, 3, 0.08],
            ["Iva annua", "achene", 24, 0.12, 37, 0.19],
            ["Carya sp.", "nutshell", 5, 0.55, 8, 0.71],
            ["Total", None, 41, 0.98, 48, 0.98],
        ]
    },
    "two tables": {
        "Flots": [
            ["Table 1. Hearth"],
            ["Sample", None, "S1"],
            ["Context", None, "C1"],
            ["Volume (l)", None, 10],
            ["Zea mays", "kernel", 12],
            ["Carya sp.", "nutshell", 5],
            ["Galium aparine", "seed", 2],
            [],
            ["Table 2. Pit"],
            *COLUMNS[:1],
            *([row[0], row[1], row[3], row[3], row[4]] if n == 0 else row for n, row in enumerate(COLUMNS[1:])),
        ]
    },
    "other sheet": {"Read me": [["Invented."], ["Floated by bucket."]], "Flots": COLUMNS},
}
KINDS["two tables"]["Flots"][9] = ["Sample", None, "S3", "S2", "Total"]

MARKS: dict[str, object] = {"count": 37, "first": 24, "name": "Iva annua", "part": "achene", "id": "S2", "volume": 7.5}
DAMAGES: dict[str, tuple[str, object, str, str]] = {
    # what is damaged, what stands there then, the code of the problem, where it points
    "no amount": ("count", "many?!", "N313", "count"),
    "half an item": ("count", 3.5, "N313", "count"),
    "a sign without a key": ("count", "++", "N313", "count"),
    "a date": ("count", datetime.date(2026, 12, 10), "N313", "count"),
    "a name nearly right": ("name", "Iwa annua", "N401", "name"),
    "a name of no plant": ("name", "Fish bone", "N315", "name"),
    "no name": ("name", None, "N314", "first"),
    "a part that is none": ("part", "frobnicle", "N402", "part"),
    "two conditions": ("part", "achene, charred and uncharred", "N402", "part"),
    "an id twice": ("id", "S1", "N314", "id"),
    "no id": ("id", None, "N314", "id"),
}
IN_TEXT = ("no amount", "a name nearly right", "a part that is none", "no id")
"""Damages that are tried in text files too."""
EXCEPT = {
    ("long", "an id twice"): "an id stands in many lines of a list",
    ("several rows a sample", "an id twice"): "an id stands in several lines there",
    ("two tables", "an id twice"): "an id of another table means the same sample",
    ("long", "no name"): "the first count of that find is the one",
    ("merged pairs", "no id"): "in a text file a blank means the id on its left",
}


def at(kind: str, mark: object) -> tuple[int, int]:
    rows = KINDS[kind]["Flots"]
    return next((r, c) for r, row in enumerate(rows) for c, cell in enumerate(row) if cell == mark)


def cell_name(kind: str, mark: object) -> str:
    row, column = at(kind, mark)
    return f"{get_column_letter(column + 1)}{row + 1}"


def write(path: Path, kind: str, changed: dict[tuple[int, int], object] | None = None) -> None:
    sheets = {name: [list(row) for row in rows] for name, rows in KINDS[kind].items()}
    for (row, column), value in (changed or {}).items():
        sheets["Flots"][row][column] = value
    if path.suffix == ".csv":
        with path.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out).writerows([["" if c is None else c for c in row] for row in sheets["Flots"]])
        return
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for r, row in enumerate(rows, start=1):
            for c, value in enumerate(row, start=1):
                if value is not None:
                    sheet.cell(r, c, value)
    if kind == "merged pairs":
        for merged in ("C1:D1", "E1:F1", "C2:D2", "E2:F2", "C3:D3", "E3:F3"):
            book["Flots"].merge_cells(merged)
    book.save(path)


@cache
def clean(base: Path, kind: str, ending: str) -> Path:
    """A project whose sheet is whole, with the layout that was worked out for it."""
    home = base / f"{kind} {ending}".replace(" ", "-")
    home.mkdir()
    write(home / f"lab.{ending}", kind)
    intake(home / f"lab.{ending}", home / "dig")
    return home / "dig"


CASES = [
    (kind, ending, damage)
    for kind in KINDS
    for ending in (("xlsx",) if kind == "other sheet" else ("xlsx", "csv"))
    for damage in DAMAGES
    if (kind, damage) not in EXCEPT and (ending == "xlsx" or damage in IN_TEXT)
]


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("clean")


def where(ending: str, cell: str) -> str:
    return f"counts/lab.xlsx, sheet Flots, cell {cell}" if ending == "xlsx" else f"counts/lab.csv, cell {cell}"


def told(dig: Path) -> frozenset[tuple[str, str]]:
    return frozenset((p.code, f"{p.place} {p.message}") for p in read(dig).problems)


@cache
def told_of_clean(base: Path, kind: str, ending: str) -> frozenset[tuple[str, str]]:
    """What is told of a project whose sheet is whole; nothing is ever written into it."""
    return told(clean(base, kind, ending))


@pytest.mark.parametrize(("kind", "ending", "damage"), CASES)
def test_check_points_at_the_cell(tmp_path: Path, base: Path, kind: str, ending: str, damage: str) -> None:
    """The problem that the damage makes names the file, the sheet and the cell, and no other cell is blamed for it."""
    mark, value, code, blamed = DAMAGES[damage]
    whole = clean(base, kind, ending)
    dig = tmp_path / "dig"
    copytree(whole, dig)
    write(dig / "counts" / f"lab.{ending}", kind, {at(kind, MARKS[mark]): value})
    before = told_of_clean(base, kind, ending)
    new = [text for code_of, text in sorted(told(dig) - before) if code_of == code]

    assert [text for text in new if f"{where(ending, cell_name(kind, MARKS[blamed]))}" in text] != [], new


FILES = [(kind, ending) for kind in KINDS for ending in ("xlsx", "csv") if (kind, ending) != ("other sheet", "csv")]


@pytest.mark.parametrize(("kind", "ending"), FILES)
def test_a_volume_that_is_no_number_is_pointed_at(tmp_path: Path, kind: str, ending: str) -> None:
    """The record has no volume, and the problem says what the sheet has in its place, and where."""
    write(tmp_path / f"lab.{ending}", kind, {at(kind, 7.5): "<1"})
    intake(tmp_path / f"lab.{ending}", tmp_path / "dig")
    told = [p.message for p in read(tmp_path / "dig").problems if p.code == "N207"]
    end = f"the sheet says '<1' in {where(ending, cell_name(kind, 7.5))}"

    assert [text for text in told if text.endswith(end)] != []


@pytest.mark.parametrize("ending", ["xlsx", "csv"])
def test_a_find_of_a_list_without_a_name_or_an_id_is_pointed_at(tmp_path: Path, base: Path, ending: str) -> None:
    """In a list of finds, at the count that has no name, and at the id that is missing."""
    whole = clean(base, "long", ending)
    dig = tmp_path / "dig"
    copytree(whole, dig)
    write(dig / "counts" / f"lab.{ending}", "long", {at("long", "Iva annua"): None, at("long", "S1"): None})
    found = {(p.code, p.place.cell) for p in read(dig).problems}

    assert {("N314", "F4"), ("N314", "A2")} <= found


@pytest.mark.parametrize(("kind", "ending"), FILES)
def test_explain_leads_to_the_cell(base: Path, kind: str, ending: str) -> None:
    """From what is said of the plant in its context to the cell that it was read from."""
    text = explain(clean(base, kind, ending), "C2/found.iva-annua.achene").text

    assert where(ending, cell_name(kind, 37)) in text
