"""Sheets whose columns add up columns of other sheets: their amounts are not counted twice. All are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

Rows = list[list[object]]
IDS = [17, 18, 19, 21, 22]
LIGHT = {
    "Wood": (134, 294, 18, 185, 406), "Hickory": (8, 30, 28, 129, 3), "Acorn shell": (13, 1, 11, 3, 0),
    "Maize kernel": (0, 4, 33, 0, 27), "Maize cupule": (2, 1, 8, 103, 17), "Squash rind": (5, 0, 0, 3, 2),
}  # fmt: skip
HEAVY = {
    "Wood": (7, 1, 5, 1, 3), "Nutshell (hickory)": (0, 0, 9, 5, 1), "Nutshell (walnut)": (1, 0, 0, 2, 1),
    "Maize kernel": (0, 0, 4, 0, 1),
}  # fmt: skip


def added(*columns: tuple[int, ...]) -> list[int]:
    return [sum(own) for own in zip(*columns, strict=True)]


SUMS = {
    "Wood N": added(LIGHT["Wood"], HEAVY["Wood"]),
    "Nutshell N": added(
        LIGHT["Hickory"], LIGHT["Acorn shell"], HEAVY["Nutshell (hickory)"], HEAVY["Nutshell (walnut)"]
    ),
    "Maize N": added(LIGHT["Maize kernel"], LIGHT["Maize cupule"], HEAVY["Maize kernel"]),
}  # fmt: skip
ALL = sum(map(sum, [*LIGHT.values(), *HEAVY.values()]))


def rows(columns: dict[str, object], **beside: object) -> Rows:
    named = {**beside, **columns}
    return [["Flot #", *named], *([id, *(own[n] for own in named.values())] for n, id in enumerate(IDS))]  # type: ignore[index]


def book(folder: Path, **sheets: Rows) -> TakenIn:
    made = Workbook()
    made.remove(made.active)
    for name, lines in sheets.items():
        page = made.create_sheet(name)
        for line in lines:
            page.append(line)
    made.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


def counted(found: TakenIn) -> int:
    return sum(row.count.number or 0 for row in found.rows)


@pytest.mark.parametrize("order", [("LF", "HF", "Summary"), ("Summary", "LF", "HF"), ("LF", "Sheet3", "HF")])
def test_a_sheet_of_sums_of_columns_is_not_counted_again(tmp_path: Path, order: tuple[str, ...]) -> None:
    """Wherever it stands and whatever it is called; what it says of the samples is kept."""
    summary = rows({**SUMS, "Seeds/L": [2.6] * 5}, **{"Vol (L)": [10, 10, 8.5, 10, 9]})
    sheets = {"LF": rows(LIGHT), "HF": rows(HEAVY), "Summary": summary, "Sheet3": summary}
    found = book(tmp_path, **{name: sheets[name] for name in order})

    assert counted(found) == ALL
    assert [p.message for p in found.problems if p.code == "N317"] == []
    assert found.facts["19"]["volume"][0].text == "8.5"
    assert [one for one in found.doubts if "adds up columns of other sheets in 3 of 3 columns" in one] != []


def test_a_sum_that_the_other_sheets_do_not_give_is_told(tmp_path: Path) -> None:
    """In its cell, with the cells that it should add up."""
    wrong = {**SUMS, "Wood N": [141, 295, 32, 186, 409]}
    found = book(tmp_path, LF=rows(LIGHT), HF=rows(HEAVY), Summary=rows(wrong))

    assert counted(found) == ALL
    assert [(p.place.sheet, p.place.cell, p.message) for p in found.problems if p.code == "N317"] == [
        ("Summary", "B4", "the stored Wood N is 32, and sheet LF B4, sheet HF B4 give 23, expected them to agree")
    ]


def test_a_sheet_of_other_counts_of_the_same_samples_is_counted(tmp_path: Path) -> None:
    """Though one of its columns happens to be the sum of two others."""
    more = {"Rubus sp.": (3, 0, 2, 9, 1), "Vitis sp.": (0, 5, 1, 1, 0), "Wood N": tuple(SUMS["Wood N"])}
    found = book(tmp_path, LF=rows(LIGHT), HF=rows(HEAVY), Seeds=rows(more))

    assert counted(found) == ALL + sum(map(sum, more.values()))
