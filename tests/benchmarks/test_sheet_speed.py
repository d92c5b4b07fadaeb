"""How long large sheets of a laboratory take to be worked out and read, against a library that only opens them."""

from __future__ import annotations

import random
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import take_in
from tests.benchmarks.yardsticks import opened_by_openpyxl, timed


def test_a_sheet_of_two_hundred_by_two_hundred_takes_ten_times_its_opening(tmp_path: Path) -> None:
    """Layout proposed, 40,000 cells read and totals checked in at most ten times the time that openpyxl takes to open it."""
    packs = naming_packs(("eastern-north-america",))
    path = a_square_sheet(tmp_path / "large.xlsx", packs, 200)

    finds, seconds = _taken_in(path, packs)
    opened = opened_by_openpyxl(path)
    print(f"200 x 200: {finds} finds: {seconds:.2f} s, {seconds / opened:.1f} times its opening in {opened:.2f} s")

    assert finds > 20_000
    assert seconds < 10 * opened


def test_a_sheet_with_few_cells_filled_takes_no_longer_than_a_full_one(tmp_path: Path) -> None:
    """One cell in twenty, mostly ones and threes, whose sums chance makes often: no longer than two in three."""
    packs = naming_packs(("eastern-north-america",))
    full, sparse = (
        a_square_sheet(tmp_path / f"{filled}.xlsx", packs, 150, filled=filled) for filled in (2 / 3, 1 / 20)
    )

    _, at_most = _taken_in(full, packs)
    finds, seconds = _taken_in(sparse, packs)
    print(f"150 x 150: {finds} finds: {seconds:.2f} s; with two cells in three filled: {at_most:.2f} s")

    assert finds > 900
    assert seconds < at_most


@pytest.mark.parametrize("has_totals", [False, True])
def test_the_time_of_a_list_grows_with_its_rows_and_not_with_their_square(tmp_path: Path, *, has_totals: bool) -> None:
    """One row a find: twice as many of the same plants take less than three times as long, with totals or without."""
    packs = naming_packs(("eastern-north-america",))
    half, whole = (
        a_list(tmp_path / f"{rows}.csv", packs, rows, has_totals=has_totals) for rows in (2_000, 4_000)
    )

    _, first = _taken_in(half, packs)
    finds, seconds = _taken_in(whole, packs)
    print(f"4,000 rows: {finds} finds: {seconds:.2f} s; 2,000: {first:.2f} s")

    assert finds > 3_500
    assert seconds < 3 * first


def a_square_sheet(path: Path, packs: Packs, size: int, *, filled: float = 2 / 3) -> Path:
    """A sheet of so many names by so many samples, with a share of its cells filled."""
    chance = random.Random(1)
    names = [f"{id} {part}" for part in ("seed", "achene") for id in _species(packs)][:size]
    book = openpyxl.Workbook()
    book.active.append(["Sample", *(f"S{n}" for n in range(size))])
    for name in names:
        cells = (chance.choice([3, 1, 20, "x"]) if chance.random() < filled else None for _ in range(size))
        book.active.append([name, *cells])
    book.save(path)
    return path


def a_list(path: Path, packs: Packs, rows: int, *, has_totals: bool = False) -> Path:
    """A list of so many finds, 20 to a sample, each with its total behind it or without."""
    chance = random.Random(1)
    species = _species(packs)
    lines: list[str] = []
    for sample in range(rows // 20):
        counts = [chance.randint(1, 40) for _ in range(20)]
        lines += [
            f"S{sample},{chance.choice(species)},{chance.choice(('seed', 'grain'))},charred,{count}" for count in counts
        ]
        lines += [f"Total,,,,{sum(counts)}"] if has_totals else []
    path.write_text("\n".join(["Sample,Taxon,Part,Condition,Count", *lines]), encoding="utf-8")
    return path


def _species(packs: Packs) -> list[str]:
    return [taxon.id for taxon in packs.taxa.values() if taxon.rank == "species"]


def _taken_in(path: Path, packs: Packs) -> tuple[int, float]:
    """How many rows of counts a sheet gives, and the seconds of the processor that it takes."""
    with timed() as taken:
        found = take_in(path, packs)
    return len(found.rows), taken()
