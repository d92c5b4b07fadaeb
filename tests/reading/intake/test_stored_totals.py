"""Stored totals with signs are checked as bounds; the sheets are invented."""

from __future__ import annotations

from pathlib import Path

from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import take_in

SHEET = (
    "Taxon,S1,S2,S3,Total\n"
    "Zea mays,60,50,70,{}\n"
    "Chenopodium berlandieri,3,4,5,12\n"
    "Vitis sp.,1,2,3,{}\n"
)  # fmt: skip


def told(tmp_path: Path, first: str, last: str) -> list[tuple[str, str]]:
    file = tmp_path / "lab.csv"
    file.write_text(SHEET.format(first, last), encoding="utf-8")
    found = take_in(file, naming_packs(("eastern-north-america",)))
    return [(p.place.cell, p.message) for p in found.problems if p.code == "N317"]


def test_signed_totals_that_hold_are_not_told(tmp_path: Path) -> None:
    """180 is about 200, and 6 is under 10."""
    assert told(tmp_path, "c. 200", "<10") == []


def test_a_rounded_total_that_the_counts_do_not_reach_is_told(tmp_path: Path) -> None:
    """180 is not about 300: the stored writing, the sum and the cells of both are said."""
    assert told(tmp_path, "c. 300", "6") == [
        ("E2", "the stored Total is c. 300, and the counts in B2 to D2 give 180, expected them to agree")
    ]


def test_a_total_said_to_be_above_a_number_is_told_when_it_is_below(tmp_path: Path) -> None:
    """180 is above 100, and 6 is not."""
    assert told(tmp_path, ">100", ">6") == [
        ("E4", "the stored Total is >6, and the counts in B4 to D4 give 6, expected them to agree")
    ]
