"""A printed form on each sheet: blank lines, remarks below the list, and lines of the work. All are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

_PRINTED = (
    ("Hordeum vulgare", "grain"),
    ("Avena sp.", "grain"),
    ("Triticum spelta", "glume base"),
    ("Carex sp.", "nutlet"),
)


def taken(folder: Path, *forms: tuple[int | None, ...], remark: str = "Many modern roots.") -> TakenIn:
    book = Workbook()
    book.remove(book.active)
    for n, counts in enumerate(forms, 1):
        sheet = book.create_sheet(f"Sample {n}")
        sheet.append(("FLOT RECORD FORM",))
        sheet.append(("Context", 3000 + n, None, "Sample no.", f"S{n}"))
        sheet.append(("Sorted by", "initials", None, "Date", "14/03/2016"))
        sheet.append(())
        sheet.append(("Taxon", "Element", "Count"))
        for (name, part), count in zip(_PRINTED, counts, strict=True):
            sheet.append((name, part, count))
        sheet.append(())
        sheet.append(("Total", None, sum(count or 0 for count in counts)))
        sheet.append(())
        sheet.append(("Comments", remark))
    book.save(folder / "forms.xlsx")
    return take_in(folder / "forms.xlsx", packs())


def test_blank_lines_of_a_printed_form_are_not_told(tmp_path: Path) -> None:
    """The same names stand on the same rows of every sheet."""
    found = taken(tmp_path, (3, None, 4, None), (None, 2, 7, 1), (5, None, None, 2))

    assert not [problem for problem in found.problems if problem.code == "N313"]
    assert [row.count.number for row in found.rows] == [3, 4, 2, 7, 1, 5, 2]


def test_a_blank_line_of_one_list_is_told(tmp_path: Path) -> None:
    """Where only two sheets have it, nothing says that the list was printed."""
    found = taken(tmp_path, (3, None, 4, 2), (1, 2, 7, 1))

    assert [problem.place.cell for problem in found.problems if problem.code == "N313"] == ["C7"]


@pytest.mark.parametrize("remark", ["Many modern roots.", "Snails present, some charcoal"])
def test_remarks_below_a_form_are_of_its_sample(tmp_path: Path, remark: str) -> None:
    """With the label that they stand behind."""
    found = taken(tmp_path, (3, 1, 4, 2), (1, 2, 7, 1), remark=remark)

    assert {(one.unit, one.text) for one in found.facts["S2"]["sample note"]} == {("Comments", remark)}


def test_lines_of_the_work_are_left_out_and_told(tmp_path: Path) -> None:
    """Who sorted it, and when, stands in the layout as left out."""
    assert "ignored, it says who did the work, and when" in taken(tmp_path, (3, 1, 4, 2)).text
