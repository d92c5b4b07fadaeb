"""Forms of the bench, and ids of samples that a spreadsheet has made dates of. All sheets are invented."""

from __future__ import annotations

import datetime
from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

FORMS = """BENCH SHEET,Wend Hollow,,,
Sample,12.3,Context,C12,
Vol processed (l),20,Flot (ml),30,
Date,17/02/19,% sorted,50,
Taxon,Part,Charred,Uncharred,Notes
Zea mays,kernel,2,,
Chenopodium sp.,seed,17,12,
,,,,
BENCH SHEET,Wend Hollow,,,
Sample,12.4,Context,C14,
Vol processed (l),10,Flot (ml),25,
Taxon,Part,Charred,Uncharred,Notes
Iva annua,seed,1,3,photo
"""


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path) -> TakenIn:
    (folder / "lab.csv").write_text(FORMS, encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


def test_each_form_is_one_sample(tmp_path: Path) -> None:
    """The id in the lines over a list is the sample of all that is in the list."""
    assert [(str(row.sample), row.condition, row.count.number) for row in taken(tmp_path).rows] == [
        ("12.3", "charred", 2), ("12.3", "charred", 17), ("12.3", "uncharred", 12),
        ("12.4", "charred", 1), ("12.4", "uncharred", 3),
    ]  # fmt: skip


def test_the_lines_over_a_list_say_what_its_sample_is(tmp_path: Path) -> None:
    """Context, litres and share sorted come from the form; the day of the work is no phase."""
    found = taken(tmp_path).facts["12.3"]

    assert {role: said[0].text for role, said in found.items()} == {
        "sample": "12.3", "context": "C12", "volume": "20", "flot volume": "30", "sorted": "50",
    }  # fmt: skip


def test_a_layout_of_forms_is_obeyed_and_a_wrong_cell_is_told(tmp_path: Path) -> None:
    """The layout that was written reads the sheet again; 'about' with a cell that holds nothing is an error."""
    first = taken(tmp_path)
    beside = tmp_path / "lab.csv.layout.yaml"
    beside.write_text(first.text, encoding="utf-8")
    again = take_in(tmp_path / "lab.csv", packs())
    beside.write_text(first.text.replace("sample: B2", "sample: Z9"), encoding="utf-8")
    wrong = take_in(tmp_path / "lab.csv", packs())

    assert (again.is_given, again.rows) == (True, first.rows)
    assert "about says that 'sample' stands in 'Z9', and nothing does, expected a cell such as B2" in [
        one.message for one in wrong.problems if one.severity == "error"
    ]


def dated(folder: Path, *ids: object) -> TakenIn:
    book = openpyxl.Workbook()
    for line in (("Sample", *ids), ("Zea mays", 1, 2, 3), ("Iva annua", 4, 5, 6), ("Carya sp.", 7, 8, 9)):
        book.active.append(line)
    book.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


def test_an_id_that_became_a_date_is_told(tmp_path: Path) -> None:
    """Nobody can say whether 3-1 or 1-3 was typed, so the date stands and the cell is pointed at."""
    found = dated(tmp_path, datetime.datetime(2011, 3, 1), datetime.datetime(2011, 5, 2), "S9")

    assert [(one.place.cell, one.message) for one in found.problems if one.code == "N314"][:1] == [
        ("B1", "the sample id is the date 1 Mar 2011, probably made of 1-3 or 3-1 by the spreadsheet; it is kept as it "
               "is shown, expected the id that was typed"),
    ]  # fmt: skip


def test_an_id_that_stayed_a_text_shows_how_the_others_were_typed(tmp_path: Path) -> None:
    """14-1 would have become a date had the day been written first."""
    found = dated(tmp_path, datetime.datetime(2011, 3, 1), datetime.datetime(2011, 5, 2), "14-1")

    assert {str(row.sample) for row in found.rows} == {"3-1", "5-2", "14-1"}
    assert found.layout.mend == {"Sheet!B1": "3-1", "Sheet!C1": "5-2"}  # type: ignore[union-attr]


HEADED = """Poz. list,,,,,
{sample},{one},{feature},{pit},{dug},
Taxon,Part,Charred,Uncharred,Notes,
Zea mays,kernel,2,,,
Iva annua,seed,1,3,,
,,,,,
{sample},{two},{feature},{pit},{dug},
Taxon,Part,Charred,Uncharred,Notes,
Zea mays,kernel,4,,,
"""


@pytest.mark.parametrize(
    ("sample", "feature", "one", "two", "pit", "dug"),
    [
        ("Probe", "Befund", "3", "4a", "Bef. 41", "Grubenhaus"), ("Pr.-Nr.", "Bef.", "7", "8", "12", "Ofen"),
        ("Muestra", "UE", "M1", "M2", "104", "fosa"), ("Échantillon", "US", "E1", "E2", "2012", "fosse"),
        ("Sample no.", "Feature", "12", "13", "F. 3", "earth oven"), ("Monster", "Spoor", "5", "6", "18", "kuil"),
    ],
)  # fmt: skip
def test_what_was_dug_stands_behind_its_number(
    tmp_path: Path, sample: str, feature: str, one: str, two: str, pit: str, dug: str
) -> None:
    """A word without a label at the end of the line of labels leaves the id what it is, in any language of the head."""
    (tmp_path / "lab.csv").write_text(
        HEADED.format(sample=sample, feature=feature, one=one, two=two, pit=pit, dug=dug), encoding="utf-8"
    )

    found = take_in(tmp_path / "lab.csv", packs())
    assert [(str(row.sample), row.count.number) for row in found.rows] == [(one, 2), (one, 1), (one, 3), (two, 4)]
