"""
Sheets as laboratories in many lands may lay them out, all invented: what is read is what a person reads.

Each lot was written down, with what a person sees in it, before any of its sheets was tried.
"""

from __future__ import annotations

import csv
import re
from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.by_eye import (
    lot_eight,
    lot_eighteen,
    lot_eleven,
    lot_fifteen,
    lot_five,
    lot_four,
    lot_fourteen,
    lot_nine,
    lot_nineteen,
    lot_one,
    lot_seven,
    lot_seventeen,
    lot_six,
    lot_sixteen,
    lot_ten,
    lot_thirteen,
    lot_thirty,
    lot_thirtyone,
    lot_three,
    lot_twelve,
    lot_twenty,
    lot_twentyeight,
    lot_twentyfive,
    lot_twentyfour,
    lot_twentynine,
    lot_twentyone,
    lot_twentyseven,
    lot_twentysix,
    lot_twentythree,
    lot_twentytwo,
    lot_two,
    published_shapes,
)  # fmt: skip
from tests.reading.intake.by_eye.expectations import Expected, Facts, Sheet

LOTS = (
    lot_one, lot_two, lot_three, lot_four, lot_five, lot_six, lot_seven, lot_eight, lot_nine, lot_ten, lot_eleven,
    lot_twelve, lot_thirteen, lot_fourteen, lot_fifteen, lot_sixteen, lot_seventeen, lot_eighteen, lot_nineteen,
    lot_twenty, lot_twentyone, lot_twentytwo,
    lot_twentythree, lot_twentyfour,
    lot_twentyfive, lot_twentysix, lot_twentyseven,
    lot_twentyeight, lot_twentynine, lot_thirty,
    lot_thirtyone, published_shapes,
)  # fmt: skip
SHEETS = {sheet.name: sheet for lot in LOTS for sheet in lot.SHEETS}


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def written(folder: Path, sheet: Sheet) -> Path:
    """The sheet as a file: XLSX where cells are merged, else CSV."""
    if not sheet.merged:
        path = folder / "lab.csv"
        with path.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out).writerows(sheet.grid)
        return path
    book = openpyxl.Workbook()
    for r, row in enumerate(sheet.grid, 1):
        for c, text in enumerate(row, 1):
            if text:
                book.active.cell(r, c, float(text) if re.fullmatch(r"[1-9]\d*|\d+\.\d+|0", text) else text)
    for area in sheet.merged:
        book.active.merge_cells(area)
    path = folder / "lab.xlsx"
    book.save(path)
    return path


def read(found: TakenIn) -> Expected:
    """Cell -> (sample, name with part, kind) of all that was read and is not absence."""
    cells: Expected = {}
    for row in found.rows:
        if row.count.amount == "looked for and absent":
            continue
        kind = "g" if row.count.number is None and row.mass_g is not None else "n" if row.count.number else "x"
        name = f"{row.identification.written} {row.part} {row.note}"
        cells[row.place.cell] = (str(row.sample), name.lower(), kind)
    return cells


def unread(cells: Expected, expected: Expected, found: TakenIn) -> list[str]:
    """Cells of counts that were not read, cells that were and should not have been, and weights that are missing."""
    weights = {at for at, (_, _, kind) in expected.items() if kind == "g"}
    counts = set(expected) - weights
    beside = {re.sub(r"[A-Z]", "", at) for at in weights}
    extra = {
        at for at in set(cells) - set(expected) if cells[at][2] != "g" or re.sub(r"[A-Z]", "", at) not in beside
    }
    wrong = sorted(counts - set(cells)) + sorted(f"extra {at}" for at in extra)
    weighed = sum(row.mass_g is not None for row in found.rows)
    return wrong + ([f"{weighed} weights"] if weighed != len(weights) else [])


def misnamed(cells: Expected, expected: Expected, grid: list[list[str]]) -> list[str]:
    """Cells read under another sample or name, or presence taken for a number and a number for presence."""
    wrong = []
    ids: dict[str, str] = {}
    for at, (sample, name, kind) in expected.items():
        if at not in cells:
            continue
        own, words, read_kind = cells[at]
        is_same = ids.setdefault(sample, own) == own and all(bit in own for bit in re.findall(r"\w+", sample))
        first = re.findall(r"[^\W\d_]{3,}", name.lower())[:1]
        is_named = not first or first[0][:4] in words
        if not is_same or not is_named or (kind == "x" and read_kind == "n" and not re.search(r"\d", _text(grid, at))):
            wrong.append(f"{at}: {sample}, {name}, {kind} read as {cells[at]}")
    return wrong if len(set(ids.values())) == len(ids) else [*wrong, "two samples read as one"]


def _text(grid: list[list[str]], at: str) -> str:
    from tests.reading.intake.by_eye.expectations import number

    letters, digits = re.fullmatch(r"([A-Z]+)(\d+)", at).groups()  # type: ignore[union-attr]
    return grid[int(digits) - 1][number(letters)]


def unsaid(found: TakenIn, cells: Expected, expected: Expected, facts: Facts) -> list[str]:
    """Volumes, contexts and phases of samples that did not come back."""
    own = {sample: cells[at][0] for at, (sample, _, _) in expected.items() if at in cells}
    wrong = []
    for (sample, role), text in facts.items():
        known = found.facts.get(own.get(sample, sample), {})
        roles = (role, "feature") if role == "context" else (role,)
        said = [one.text for r in roles for one in known.get(r, ())]
        if text and text not in said and [_number(text)] != [_number(one) for one in said[:1]]:
            wrong.append(f"{role} of {sample}: {said} for {text}")
    return wrong


def _number(text: str) -> str:
    match = re.match(r"\(?(\d+(?:[.,]\d+)?)", text)
    return f"{float(match[1].replace(',', '.')):g}" if match else text


@pytest.mark.parametrize("name", SHEETS)
def test_a_sheet_is_read_as_a_person_reads_it(tmp_path: Path, name: str) -> None:
    """Each amount with its sample, its name and its kind, nothing else for an amount, and the records it carries."""
    sheet = SHEETS[name]
    expected, facts = sheet.eye(sheet.grid)
    found = take_in(written(tmp_path, sheet), packs())
    cells = read(found)

    assert unread(cells, expected, found) == []
    assert misnamed(cells, expected, sheet.grid) == []
    assert unsaid(found, cells, expected, facts) == []
