"""Phases that stand between samples, in titles and in the names of sheets, read as a person reads them. All invented."""

# ruff: noqa: E501

from __future__ import annotations

from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("temperate-europe",))


def phases(found: TakenIn) -> dict[str, list[str]]:
    return {id: [said.text for said in facts.get("phase", ())] for id, facts in found.facts.items()}


BANDS = """Sample,Feature,Litres,Hordeum vulgare,Triticum spelta,Rumex sp.
{},,,,,
12,pit 4,10,3,1,2
13,ditch 2,10,1,,4
{},,,,,
21,pit 9,20,5,2,1
22,hearth 1,10,2,3,
"""


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("Early Pueblo II", "Pueblo III"), ("Middle Woodland", "Late Woodland"), ("Early Bronze Age", "Roman (AD 43-410)"),
        ("Bronze final IIIb", "Premier âge du Fer"), ("Jüngere Bronzezeit", "Römische Kaiserzeit"),
        ("Formativo Tardío", "Horizonte Medio"), ("Età del bronzo", "Età del ferro"), ("Bronstijd", "Romeinse tijd"),
        ("Epoka brązu", "Okres rzymski"), ("Level III", "Level II"),
    ],
)  # fmt: skip
def test_a_period_between_samples_is_their_phase(tmp_path: Path, first: str, second: str) -> None:
    """A line of one cell that names a period holds for the samples below it, to the next such line."""
    (tmp_path / "lab.csv").write_text(BANDS.format(first, second), encoding="utf-8")

    assert phases(take_in(tmp_path / "lab.csv", packs())) == {"12": [first], "13": [first], "21": [second], "22": [second]}


def test_words_between_samples_that_nobody_knows_are_told(tmp_path: Path) -> None:
    """'By the river' and 'On the hill' say nothing known; where they stand is told, with what to write."""
    (tmp_path / "lab.csv").write_text(BANDS.format("By the river", "On the hill"), encoding="utf-8")
    found = take_in(tmp_path / "lab.csv", packs())

    assert phases(found) == {"12": [], "13": [], "21": [], "22": []}
    assert found.doubts == (
        "DOUBTFUL: the lines 'By the river', 'On the hill' stand over groups of samples, and say nothing that is known; "
        "write 'section and phase', or 'section and site', for rows 2, 5 in the layout",
    )


def of_tabs(folder: Path, tabs: dict[str, str]) -> TakenIn:
    book = openpyxl.Workbook()
    book.remove(book.active)
    for n, (name, title) in enumerate(tabs.items()):
        sheet = book.create_sheet(name)
        sheet.append([title or None])
        sheet.append(["Sample", f"T{n}1", f"T{n}2", f"T{n}3"])
        sheet.append(["Volume (litres)", 10, 20, 30])
        for taxon, *counts in (("Hordeum vulgare", 3, 1, 2), ("Lens culinaris", 5, 1, 4), ("Lolium sp.", 2, 2, 9)):
            sheet.append([taxon, *counts])
    book.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


@pytest.mark.parametrize(
    "tabs",
    [
        {"S3a": "Table S3a. Charred plant remains, Level III. Numbers are counts.", "S3b": "Table S3b. Charred plant remains, Level II."},
        {"Level III": "Charred plant remains", "Level II": "Charred plant remains"},
        {"Table 1 Level III": "", "Table 2 Level II": ""},
    ],
)  # fmt: skip
def test_a_level_in_a_title_or_in_the_name_of_a_sheet_is_the_phase_of_its_samples(tmp_path: Path, tabs: dict[str, str]) -> None:
    """Three samples in each of two sheets; which level they are of stands over them alone, and that it is taken is told."""
    found = of_tabs(tmp_path, tabs)

    assert phases(found) == {f"T{n}{i}": [level] for n, level in ((0, "Level III"), (1, "Level II")) for i in (1, 2, 3)}
    assert sum("taken for the phase of all samples under it" in doubt for doubt in found.doubts) == 2


@pytest.mark.parametrize("title", ["Roman and medieval ditches: charred plant remains", "Phases 1 and 2", "Seeds (modern)"])
def test_a_title_of_several_phases_says_none(tmp_path: Path, title: str) -> None:
    """What is of two phases together is of neither."""
    assert set(map(tuple, phases(of_tabs(tmp_path, {"Counts": title})).values())) == {()}


def test_a_phase_of_a_title_is_written_into_the_layout_and_read_from_it(tmp_path: Path) -> None:
    """With the cell that it stands in: the layout beside the sheet gives the same phases."""
    tabs = {"S3a": "Plant remains, Level III", "S3b": "Plant remains, Level II"}
    found = of_tabs(tmp_path, tabs)
    (tmp_path / "lab.xlsx.layout.yaml").write_text(found.text, encoding="utf-8")
    again = take_in(tmp_path / "lab.xlsx", packs())

    assert again.is_given
    assert phases(again) == phases(found)


def test_a_line_among_periods_that_nobody_knows_ends_the_one_before(tmp_path: Path) -> None:
    """'Time of the mill' over samples as 'Late Woodland' is: no period that is known, and no Late Woodland either."""
    sheet = BANDS.format("Middle Woodland", "Late Woodland") + "Time of the mill,,,,,\n31,pit 5,10,1,2,2\n"
    (tmp_path / "lab.csv").write_text(sheet, encoding="utf-8")
    found = take_in(tmp_path / "lab.csv", packs())

    assert phases(found)["31"] == ["Time of the mill"]
    assert found.doubts == (
        "row 8 ('Time of the mill') stands over samples as the lines do that say a phase, and is taken for one",
    )
