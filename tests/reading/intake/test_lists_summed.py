"""A workbook whose table sums up the list of single finds beside it: the finds are read once; invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

TAXA = (("Zea mays", "kernel"), ("Zea mays", "cupule"), ("Chenopodium berlandieri", "seed"), ("Carya sp.", "nutshell"))
SAMPLES = ("FS 11", "FS 12", "FS 13")


def workbook(path: Path, *, more: dict[tuple[str, str, str], int]) -> Path:
    """A list of finds in two size classes, and its sums by sample; `more` is added to some of the sums."""
    book = Workbook()
    listed = book.active
    listed.title = "Sorting"
    listed.append(["Sample", "Fraction", "Taxon", "Part", "Count", "Sorter"])
    sums: dict[tuple[str, str, str], int] = {}
    for at, sample in enumerate(SAMPLES):
        for number, (taxon, part) in enumerate(TAXA):
            for size, count in ((">2 mm", 3 + at + number), ("1-2 mm", 2 + 2 * number)):
                listed.append([sample, size, taxon, part, count, "AB"])
                sums[taxon, part, sample] = sums.get((taxon, part, sample), 0) + count
    summed = book.create_sheet("Summary")
    summed.append(["Taxon", "Part", *SAMPLES])
    for taxon, part in TAXA:
        summed.append([taxon, part, *(sums[taxon, part, s] + more.get((taxon, part, s), 0) for s in SAMPLES)])
    book.save(path)
    return path


def read(path: Path) -> TakenIn:
    return take_in(path, packs())


def test_finds_that_a_list_holds_are_not_read_again_from_their_sums(tmp_path: Path) -> None:
    taken = read(workbook(tmp_path / "lab.xlsx", more={}))

    assert {row.place.sheet for row in taken.rows} == {"Sorting"} and len(taken.rows) == 24
    assert any("sheet Summary sums up the finds that sheet Sorting lists" in doubt for doubt in taken.doubts)


def test_a_sum_that_differs_from_its_list_is_told_with_its_name_and_sample(tmp_path: Path) -> None:
    taken = read(workbook(tmp_path / "lab.xlsx", more={("Zea mays", "cupule", "FS 12"): 4}))

    told = next(doubt for doubt in taken.doubts if "sheet Summary" in doubt)
    assert "1 differ from it, which is DOUBTFUL: zea mays cupule in fs 12" in told


@pytest.mark.parametrize("factor", [2, 5])
def test_counts_that_are_no_sums_of_the_list_are_finds_of_their_own(tmp_path: Path, factor: int) -> None:
    other = {(taxon, part, sample): factor * (7 + n) for n, (taxon, part) in enumerate(TAXA) for sample in SAMPLES}

    taken = read(workbook(tmp_path / "lab.xlsx", more=other))

    assert {row.place.sheet for row in taken.rows} == {"Sorting", "Summary"}
