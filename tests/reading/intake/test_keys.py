"""Keys of signs and footnotes that a file itself carries, wherever they stand."""

# ruff: noqa: E501

from __future__ import annotations

import io
from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

# Invented.
TABLE = (
    "Taxon,Part,S1,S2,S3\nZea mays,kernel,+,12,4\nCarya sp.,nutshell,++,3,+\nVitis sp.,seed,2,,++\n"
    "Phaseolus vulgaris,seed,1,1,\n"
)


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, text: str) -> TakenIn:
    (folder / "lab.csv").write_text(text, encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


def of_workbook(folder: Path, sheets: dict[str, str]) -> TakenIn:
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, text in sheets.items():
        sheet = book.create_sheet(name)
        for line in text.splitlines():
            sheet.append([int(cell) if cell.isdigit() else cell or None for cell in line.split(",")])
    out = io.BytesIO()
    book.save(out)
    (folder / "lab.xlsx").write_bytes(out.getvalue())
    return take_in(folder / "lab.xlsx", packs())


def ends(found: TakenIn) -> list[tuple[str, int | None, int | None]]:
    """Each sign that was found, with the ends that its key gives it."""
    return sorted({
        (r.count.written, r.count.at_least, r.count.at_most) for r in found.rows if r.count.amount == "noted as present"
    })  # fmt: skip


def counted(found: TakenIn) -> int:
    return sum(r.count.number or 0 for r in found.rows)


BOTH = [("+", 1, 5), ("++", 6, 20)]


@pytest.mark.parametrize(
    "key",
    [
        "\nKey: + = 1-5; ++ = 6-20\n",
        "\n+ = 1-5\n++ = 6-20\n",
        "\nKey,+,1-5,++,6-20\n",
        "\nKey\n+,1-5\n++,6-20\n",
        "\nKey:,+,= 1-5\n,++,= 6-20\n",
        "\nAbundance key\nSign,Items\n+,few (1-5)\n++,some (6-20)\n",
        "\n+,=,1-5\n++,=,6-20\n",
        "\nKey,+,1 to 5\n,++,6 to 20\n",
    ],
    ids=["one cell", "cell a row", "along a row", "down", "head beside", "words", "sign between", "to"],
)
def test_a_key_below_the_counts_is_used(tmp_path: Path, key: str) -> None:
    """In one cell, over cells or over rows; the counts stay what they are."""
    found = taken(tmp_path, TABLE + key)

    assert (ends(found), counted(found)) == (BOTH, 12 + 4 + 3 + 2 + 1 + 1)


def test_a_key_above_the_counts_is_used(tmp_path: Path) -> None:
    """As in the head of many reports."""
    found = taken(tmp_path, "Key,+,1-5,++,6-20\n\n" + TABLE)

    assert (ends(found), counted(found)) == (BOTH, 23)


@pytest.mark.parametrize("notes", ["+,1-5\n++,6-20\n", "Key to signs\n+ = 1-5; ++ = 6-20\n", "Sign,Items\n+,1-5\n++,6-20\n"])
def test_a_key_on_a_sheet_of_notes_is_used(tmp_path: Path, notes: str) -> None:
    """The workbook explains its signs on another sheet."""
    found = of_workbook(tmp_path, {"Flots": TABLE, "Notes": notes})

    assert (ends(found), counted(found)) == (BOTH, 23)


def test_without_a_key_a_sign_is_presence_and_is_told(tmp_path: Path) -> None:
    """No number is made of it."""
    found = taken(tmp_path, TABLE)

    assert ends(found) == [("+", None, None), ("++", None, None)]
    assert [p.message for p in found.problems if "no key" in p.message] == [
        f"'{sign}' has no key in the sheet; it is kept as presence, expected a key that says how many it means; "
        f"the same in {cell}"
        for sign, cell in (("+", "E3"), ("++", "E4"))
    ]


def test_two_keys_that_disagree_are_told_and_neither_is_used(tmp_path: Path) -> None:
    """On one sheet, with both meanings and both places."""
    found = taken(tmp_path, TABLE + "\n+ = 1-5; ++ = 6-20\n\n+ = 1-10\n")

    assert ends(found) == [("+", None, None), ("++", 6, 20)]
    assert [(str(p.place), p.code, p.message, p.help) for p in found.problems if "neither" in p.message] == [(
        "lab.csv, cell A9", "N313", "'+' means '1-10' here and '1-5' in A7; neither is used, expected one key",
        'say which holds under cells in the layout: key: {"+": 1-10}',
    )]  # fmt: skip


def test_a_sheet_of_notes_that_disagrees_with_the_counts_is_told(tmp_path: Path) -> None:
    """Both sheets are named."""
    found = of_workbook(tmp_path, {"Flots": TABLE + "\n+ = 1-10\n", "Notes": "+,1-5\n++,6-20\n"})

    assert ends(found) == [("+", None, None), ("++", 6, 20)]
    assert [p.message for p in found.problems if "neither" in p.message] == [
        "'+' means '1-5' here and '1-10' in sheet Flots, cell A7; neither is used, expected one key"
    ]


def test_the_analyst_settles_two_keys_in_the_layout(tmp_path: Path) -> None:
    """What stands in the layout holds, and the disagreement is told no more."""
    found = taken(tmp_path, TABLE + "\n+ = 1-5; ++ = 6-20\n\n+ = 1-10\n")
    text = found.text.replace('key:\n', 'key:\n        "+": 1-10\n', 1)
    (tmp_path / "lab.csv.layout.yaml").write_text(text, encoding="utf-8")
    again = take_in(tmp_path / "lab.csv", packs())

    assert ends(again) == [("+", 1, 10), ("++", 6, 20)]
    assert not [p for p in again.problems if "neither" in p.message]


STARRED = "Taxon,Part,S1,S2,S3\nZea mays,kernel,3*,12,4\nCarya sp.,nutshell,5,3 (uc),1\nVitis sp.,seed,2,,1\n"


@pytest.mark.parametrize(
    "note",
    ["\n* = uncharred; (uc) = uncharred\n", "\n* uncharred\n(uc) uncharred\n", "\nFootnotes\n*,uncharred\nuc,uncharred\n"],
)
def test_a_footnote_of_the_sheet_is_used_for_cells(tmp_path: Path, note: str) -> None:
    """'3*' and '3 (uc)' are uncharred, by the sheet's own word."""
    found = taken(tmp_path, STARRED + note)

    assert [(r.count.written, r.count.number) for r in found.rows if r.condition == "uncharred"] == [("3*", 3), ("3 (uc)", 3)]


@pytest.mark.parametrize("name", ["Vitis sp.*", "*Vitis sp.", "Vitis sp. (*)"])
def test_a_footnote_of_the_sheet_is_used_for_names(tmp_path: Path, name: str) -> None:
    """A star beside a name holds for all its finds."""
    found = taken(tmp_path, STARRED.replace("Vitis sp.", name) + "\n* = uncharred\n")

    vitis = [r for r in found.rows if "Vitis" in r.identification.written]
    assert {(r.identification.taxon, r.condition) for r in vitis} == {("Vitis", "uncharred")}


def test_letters_in_brackets_beside_a_name_are_a_footnote(tmp_path: Path) -> None:
    """'(uc)' needs no key of its own: it is the trade's short form (common practice, no source)."""
    found = taken(tmp_path, STARRED.replace("Vitis sp.", "Vitis sp. (uc)"))

    vitis = [r for r in found.rows if "Vitis" in r.identification.written]
    assert {(r.identification.taxon, r.condition) for r in vitis} == {("Vitis", "uncharred")}


def test_a_star_beside_a_name_that_nobody_explains_is_told(tmp_path: Path) -> None:
    """It may well say that the seeds are modern."""
    found = taken(tmp_path, STARRED.replace("Vitis sp.", "Vitis sp.*"))

    assert [(p.place.cell, p.message) for p in found.problems if "footnote sign" in p.message and "Vitis" in p.message] == [
        ("A4", "'Vitis sp.*' carries a footnote sign, kept in the note, expected a plain name")
    ]


def test_marks_beside_conditions_in_a_list_are_no_key(tmp_path: Path) -> None:
    """Under 'abundance' and 'condition' stand finds, and no sign is explained."""
    found = taken(
        tmp_path,
        "sample,taxon,part,abundance,condition\nS1,Zea mays,kernel,x,uncharred\nS1,Carya sp.,nutshell,x,charred\n"
        "S2,Zea mays,cupule,*,uncharred\nS2,Vitis sp.,seed,x,charred\n",
    )

    assert [(r.count.written, r.condition) for r in found.rows] == [
        ("x", "uncharred"), ("x", "charred"), ("*", "uncharred"), ("x", "charred"),
    ]  # fmt: skip
    assert "footnotes" not in found.text


def test_a_footnote_about_some_of_the_items_sets_the_name_aside(tmp_path: Path) -> None:
    """'* some uncharred' beside a name: nobody can tell which of them, so none is taken for charred."""
    found = taken(tmp_path, STARRED.replace("Vitis sp.", "Vitis sp.*").replace("3*", "3").replace(" (uc)", "") + "\n* some uncharred\n")

    assert not [r for r in found.rows if "Vitis" in r.identification.written]
    assert [(p.place.cell, p.severity, p.code) for p in found.problems if "two conditions" in p.message] == [
        ("A4", "error", "N402")
    ]


def test_codes_of_pieces_and_keys_in_capitals_are_understood(tmp_path: Path) -> None:
    """'KF = kernel fragment' says what and how whole, and a key may be printed all in capitals."""
    found = taken(
        tmp_path, "Taxon,Part,S1,S2,S3\nZea mays,KE,12,.,4\nZea mays,KF,3,1,.\nVitis sp.,SE,2,.,1\n\n"
        "KE = kernel; KF = kernel fragment; SE = seed\n.  = NONE  X = PRESENT\n",
    )  # fmt: skip

    assert [(str(row.part), row.completeness, row.count.number) for row in found.rows if row.sample == "S1"] == [
        ("kernel", "whole", 12), ("kernel", "fragment", 3), ("seed", "whole", 2),
    ]  # fmt: skip
    assert [p.message for p in found.problems if p.code == "N313"] == []
