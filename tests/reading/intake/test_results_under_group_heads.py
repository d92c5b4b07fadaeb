"""
Results under a head of their group: 'All samples' over a number, a share and a rank, 'Mean number' over phases.

All sheets are invented; the figures are sums, shares and means of the counts beside them, but for what is made wrong.
"""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

NAMES = ("Hordeum vulgare", "Avena sp.", "Lens culinaris", "Chenopodium album", "Galium aparine")
COUNTS = ((12, 0, 31, 4), (5, 3, 0, 19), (0, 2, 8, 0), (7, 16, 0, 2), (0, 11, 4, 13))
ALL = sum(map(sum, COUNTS))


def read(folder: Path, group: str = "All samples", **changed: float) -> TakenIn:
    book = openpyxl.Workbook()
    page = book.active
    assert page is not None
    page.append(["", "Samples", "", "", "", "Mean number", "", group])
    page.append(["Phase", "Early", "", "Late", ""])
    small = ("Early", "Late", "Absolute number", "Percentage (%)", "Ubiquity (%)", "Rank")
    page.append(["Sample", "S1", "S2", "S3", "S4", *small])
    page.append(["Taxon"])
    ranks = sorted((sum(own) for own in COUNTS), reverse=True)
    for name, own in zip(NAMES, COUNTS, strict=True):
        found = sum(n > 0 for n in own)
        page.append([
            name, *own, sum(own[:2]) / 2, sum(own[2:]) / 2, sum(own), round(100 * sum(own) / ALL, 2), 25 * found,
            ranks.index(sum(own)) + 1,
        ])  # fmt: skip
    page.append(["Total", *(sum(own[n] for own in COUNTS) for n in range(4)), "", "", ALL, 100])
    for area in ("B1:E1", "F1:G1", "H1:K1", "B2:C2", "D2:E2"):
        page.merge_cells(area)
    for at, value in changed.items():
        page[at] = value
    path = folder / "lab.xlsx"
    book.save(path)
    return take_in(path, packs())


def told(found: TakenIn) -> list[tuple[str, str]]:
    return [(one.place.cell, one.message) for one in found.problems if one.code == "N317"]


@pytest.mark.parametrize("group", ["All samples", "Total", "Gesamt"])
def test_the_head_of_a_column_says_more_than_that_of_its_group(tmp_path: Path, group: str) -> None:
    """Only the first column under 'All samples' is of sums; none of the others is held against a sum."""
    found = read(tmp_path, group)
    assert found.layout is not None

    assert [found.layout.tables[0].columns[c].name for c in range(7, 11)] == ["total", "percent", "ubiquity", "derived"]
    assert told(found) == []


def test_wrong_results_under_a_group_are_told_by_their_own_heads(tmp_path: Path) -> None:
    """Lentil is 10 of 137 items, 7.3 percent, and 17.3 is written."""
    assert told(read(tmp_path, I7=17.3)) == [
        (
            "I7", "the stored Percentage (%) is 17.3, and the counts in B7 to E7 of those in B5 to E9 give 7.29927, "
            "expected them to agree",
        ),
    ]  # fmt: skip


def test_a_wrong_mean_of_a_phase_is_told(tmp_path: Path) -> None:
    """Goosefoot of the two late samples is 0 and 2, 1 on average, and 4 is written."""
    assert told(read(tmp_path, G8=4)) == [
        ("G8", "the stored Mean number is 4, and the counts in D8 to E8 over 2 samples give 1, expected them to agree")
    ]
