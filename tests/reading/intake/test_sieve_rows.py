"""Rows for the sieve classes of a sample, with a row of totals below them. The sheet is invented."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

_SAMPLES = ("40,2092,40", "41,2080,20", "42,2007,30")
_COUNTS = (
    ("4 mm,,,,0", "2 mm,,12,3,15", "1 mm,9,,4,13", "0.5 mm,,,2,2", "Total,9,12,9,30"),
    ("4 mm,7,2,,9", "2 mm,12,,1,13", "1 mm,,,12,12", "0.5 mm,8,3,,11", "Total,27,5,13,45"),
    ("4 mm,,5,,5", "2 mm,2,13,,15", "1 mm,8,,5,13", "0.5 mm,,,2,2", "Total,10,18,7,35"),
)
_LINES = tuple(f"{sample},{line}" for sample, lines in zip(_SAMPLES, _COUNTS, strict=True) for line in lines)


def taken(folder: Path, head: str, lines: tuple[str, ...] = _LINES) -> TakenIn:
    first = f"Sample,Context,Vol. floated (l),{head},Avena sativa grain,Triticum aestivum grain,Chenopodium album,Total"
    (folder / "table.csv").write_text("\n".join((first, *lines)) + "\n", encoding="utf-8")
    return take_in(folder / "table.csv", packs())


@pytest.mark.parametrize("head", ["Fraction", "Sieve (mm)"])
def test_sizes_under_fraction_are_size_classes(tmp_path: Path, head: str) -> None:
    """Whatever totals stand among them; the same plant in two classes is no plant that stands twice."""
    found = taken(tmp_path, head)

    oats = [(str(r.sample), r.size_class, r.count.number) for r in found.rows if r.identification.taxon == "Avena sativa"]
    assert oats == [
        ("40", "1 mm", 9), ("41", "4 mm", 7), ("41", "2 mm", 12), ("41", "0.5 mm", 8), ("42", "2 mm", 2), ("42", "1 mm", 8)
    ]  # fmt: skip
    assert not [problem for problem in found.problems if problem.code in ("N316", "N317")]


def test_an_empty_sieve_class_is_no_doubt(tmp_path: Path) -> None:
    """Nothing is counted in it, and its total is a worked-out 0."""
    assert not [doubt for doubt in taken(tmp_path, "Fraction").doubts if "left out" in doubt]


def test_a_line_without_counts_and_with_a_total_is_told(tmp_path: Path) -> None:
    """A total of 7 of nothing is something that was lost."""
    lines = tuple(line.replace("4 mm,,,,0", "4 mm,,,,7") for line in _LINES)
    found = taken(tmp_path, "Fraction", lines)

    assert [doubt for doubt in found.doubts if "left out" in doubt] or [p for p in found.problems if p.code == "N317"]
