"""What is said of files that give no table: what stands there, and what is wanting. All sheets are invented."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from narrate.reading.intake.take_in import take_in
from tests.reading.intake.test_blind import packs

NAMES = ("Hordeum vulgare", "Triticum dicoccum", "Panicum miliaceum", "Lens culinaris")
PAIRS = [["", "n", "%", "n", "%"], *([name, 28 + n, "3.2", 8, "3.1"] for n, name in enumerate(NAMES))]
TURNED = [list(column) for column in zip(*PAIRS, strict=True)]
WORDS = [["Taxon", "Family"], *([name, "of the"] for name in NAMES)]


@pytest.mark.parametrize(
    ("rows", "wanting"),
    [
        (PAIRS, "4 names of plants stand in column A, rows 2 to 5, amounts in columns B to E, and nothing there says"),
        (TURNED, "4 names of plants stand in row 1, columns B to E, amounts in rows 2 to 5, and nothing there says"),
        (WORDS, "4 names of plants stand in column A, rows 2 to 5, and no amount stands beside any of them"),
    ],
)
def test_what_is_wanting_is_said_where_nothing_reads(tmp_path: Path, rows: list[list[object]], wanting: str) -> None:
    """Names beside amounts of samples that nobody named, either way round, and names without amounts."""
    path = tmp_path / "sheet.csv"
    with path.open("w", newline="", encoding="utf-8") as file:
        csv.writer(file).writerows(rows)
    found = take_in(path, packs())
    (told,) = [problem for problem in found.problems if problem.code == "N311"]

    assert found.layout is None
    assert wanting in told.message
    assert told.help.startswith("write what is wanting into a copy of the sheet")


def test_nothing_is_said_to_be_wanting_of_what_is_no_list_of_plants(tmp_path: Path) -> None:
    """A file without names of plants is refused with the plain words."""
    path = tmp_path / "sheet.csv"
    path.write_text("day,rain\n1,12\n2,0\n3,4\n", encoding="utf-8")
    (told,) = take_in(path, packs()).problems

    assert told.message.endswith("and the samples that these are of")
    assert told.help.startswith("write a layout by hand as sheet.csv.layout.yaml")
