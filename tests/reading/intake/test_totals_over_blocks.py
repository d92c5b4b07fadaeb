"""
A table that is parted over the page: beside or below it the taxa stand again with other samples, and one total of all.

All sheets are invented; what is a sum was added up from the counts of both blocks, but for what is wrong on purpose.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

NAMES = ("Hordeum vulgare", "Avena sp.", "Lens culinaris", "Chenopodium album", "Galium aparine")
FIRST = ((12, 0, 31), (5, 3, 0), (0, 2, 8), (7, 16, 0), (0, 11, 4))
SECOND = ((4, 0), (19, 2), (0, 6), (2, 9), (0, 0))
Rows = list[list[str | int]]


def block(samples: list[str], counts: tuple[tuple[int, ...], ...]) -> Rows:
    sums = [sum(line[n] for line in counts) for n in range(len(samples))]
    rows: Rows = [["Sample", *samples], ["Litres", *[10] * len(samples)], ["Taxon", *[""] * len(samples)]]
    rows += [[name, *(n or "" for n in own)] for name, own in zip(NAMES, counts, strict=True)]
    return [*rows, ["Total", *sums]]


def both(**changed: int) -> tuple[Rows, Rows]:
    """The blocks, the second with a column of what both hold; changed: by the name of a line of it."""
    first, second = block(["S1", "S2", "S3"], FIRST), block(["S4", "S5"], SECOND)
    of_names = {name: sum(a) + sum(b) for name, a, b in zip(NAMES, FIRST, SECOND, strict=True)}
    totals = {**of_names, "Total": sum(of_names.values())} | {k.replace("_", " "): n for k, n in changed.items()}
    column = {**totals, "Taxon": "Total, all samples"}
    return first, [[*row, column.get(str(row[0]), "")] for row in second]


def beside(first: Rows, second: Rows) -> Rows:
    return [[*a, "", *b] for a, b in zip(first, second, strict=True)]


def below(first: Rows, second: Rows) -> Rows:
    return [*first, [], ["Table 1 (continued)"], *second]


def read(folder: Path, rows: Rows) -> TakenIn:
    path = folder / "lab.csv"
    with path.open("w", encoding="utf-8", newline="") as out:
        csv.writer(out).writerows(rows)
    return take_in(path, packs())


def told(found: TakenIn) -> list[tuple[str, str]]:
    return [(one.place.cell, one.message) for one in found.problems if one.code == "N317"]


@pytest.mark.parametrize("way", [beside, below])
def test_totals_over_both_blocks_that_hold_are_not_told(tmp_path: Path, way: object) -> None:
    """The total of each name, and that of all, takes in the samples of the block before."""
    assert callable(way)
    assert told(read(tmp_path, way(*both()))) == []


def test_a_wrong_total_over_both_blocks_is_told(tmp_path: Path) -> None:
    """Goosefoot is 7 and 16 and 2 and 9, and 43 is written; 141 in all, and 150 is written."""
    found = read(tmp_path, beside(*both(Chenopodium_album=43, Total=150)))

    assert told(found) == [
        (
            "I7", "the stored Total, all samples is 43, and the counts in G7 to H7 with those of the other blocks give "
            "34, expected them to agree",
        ),
        (
            "I9", "the stored Total is 150, and the counts in G4 to H8 with those of the other blocks give 141, "
            "expected them to agree",
        ),
    ]  # fmt: skip


def test_totals_of_a_block_alone_are_still_held_against_it(tmp_path: Path) -> None:
    """Where the column is of its own block, a wrong number in it is held against that block."""
    first, second = both()
    own = [[*row[:-1], row[-1] if n < 3 else sum(int(cell or 0) for cell in row[1:-1])] for n, row in enumerate(second)]
    own[3][-1] = 9

    assert [at for at, _ in told(read(tmp_path, beside(first, own)))] == ["I4"]
