"""Weights of plants that stand under a head of their own, behind the counts. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

COUNTS = {"S1": (12, 3, 0, 7), "S2": (0, 5, 21, 2), "S3": (4, 0, 6, 0), "S4": (9, 1, 2, 33)}
GRAMS = {"S1": (0.41, 2.29), "S2": (0.07, 3), "S3": (0, 1.8), "S4": (1.2, 0.6)}
HEADS = ("Poids (g)", "Weights (g)", "Weight in grams", "MASS")


def sheet(folder: Path, head: str, *, is_merged: bool, has_groups: bool) -> TakenIn:
    """Cereals and weeds, their total, and two weights, of which one is of plants that are counted too."""
    made = Workbook()
    page = made.active
    page.append(["", "", *(("Cereals", "", "Weeds", "") if has_groups else [""] * 4), "", head, ""])
    page.append(["", "", "Hordeum vulgare", "", "Galium aparine", "Rumex sp.", "", "Corylus avellana", "Quercus"])
    page.append(["Sample", "Volume (l)", "grain", "rachis", "seed", "seed", "Total", "nutshell", "charcoal"])
    for id, counts in COUNTS.items():
        page.append([id, 10, *counts, sum(counts), *GRAMS[id]])
    page.merge_cells("C2:D2")
    for cells in ("C1:D1", "E1:F1", "H1:I1") if is_merged and has_groups else ("H1:I1",) if is_merged else ():
        page.merge_cells(cells)
    made.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize("is_merged", [True, False])
@pytest.mark.parametrize("has_groups", [True, False])
def test_plants_under_a_head_of_weights_are_weighed(
    tmp_path: Path, head: str, is_merged: bool, has_groups: bool
) -> None:
    """Whether other groups have heads or not; and what is counted stays counted."""
    found = sheet(tmp_path, head, is_merged=is_merged, has_groups=has_groups)

    counted = {s: sum(r.count.number or 0 for r in found.rows if r.sample == s) for s in COUNTS}
    weighed = {s: [r.mass_g for r in found.rows if r.sample == s and r.mass_g is not None] for s in COUNTS}
    assert counted == {s: sum(own) for s, own in COUNTS.items()}
    assert weighed == {s: [g for g in own if g] for s, own in GRAMS.items()}
    assert [p.message for p in found.problems if p.code in ("N313", "N317")] == []


def test_a_head_that_says_no_unit_leaves_counts_as_they_are(tmp_path: Path) -> None:
    found = sheet(tmp_path, "Others", is_merged=True, has_groups=True)

    assert [r.mass_g for r in found.rows if r.mass_g is not None] == []


def test_counts_under_a_head_of_counts_and_weights_under_one_of_weights(tmp_path: Path) -> None:
    """The same plants twice, once under each head."""
    made = Workbook()
    page = made.active
    page.append(["", "Count", "", "", "Weight (g)", "", ""])
    page.append(["Sample", *(("Corylus avellana", "Quercus sp.", "Prunus spinosa") * 2)])
    for n, id in enumerate(COUNTS, start=2):
        page.append([id, 3 * n, n, n + 7, n / 8, n / 4, 2])
    page.merge_cells("B1:D1")
    page.merge_cells("E1:G1")
    made.save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())

    assert sum(r.count.number or 0 for r in found.rows) == sum(5 * n + 7 for n in range(2, 6))
    assert sum(r.mass_g or 0 for r in found.rows) == pytest.approx(sum(3 * n / 8 + 2 for n in range(2, 6)))
