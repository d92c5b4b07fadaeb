"""Lists whose heads stand in two rows, sieve classes or states over 'Ct' and 'Wt (g)'. All invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

UNDER_ALL = """Sample,Vol. (L),Taxon,Part,{a},,{b},,Total,
,,,,Ct,Wt (g),Ct,Wt (g),Ct,Wt (g)
1,10,Carya sp.,nutshell,4,0.4,6,0.2,10,0.6
1,10,Juglans nigra,nutshell,2,0.3,1,0.1,3,0.4
1,10,Zea mays,cupule,,,9,0.1,9,0.1
2,8,Carya sp.,nutshell,12,1.1,,,12,1.1
2,8,Zea mays,kernel,3,0.2,5,0.1,9,0.5
"""


def taken(folder: Path, a: str, b: str) -> TakenIn:
    (folder / "sheet.csv").write_text(UNDER_ALL.format(a=a, b=b), encoding="utf-8")
    return take_in(folder / "sheet.csv", packs())


@pytest.mark.parametrize(
    ("a", "b", "of"),
    [
        ("> 2.0 mm", "< 2.0 mm", "size_class"),
        ("Charred", "Uncharred", "condition"),
        ("Whole", "Fragments", "completeness"),
    ],
)
def test_what_stands_over_pairs_of_columns_is_said_of_their_finds(tmp_path: Path, a: str, b: str, of: str) -> None:
    """Each amount keeps its class or state, the grams beside it are its own, and 'Total' is no further class."""
    rows = taken(tmp_path, a, b).rows

    assert [(str(r.sample), r.count.number, r.mass_g) for r in rows] == [
        ("1", 4, 0.4), ("1", 6, 0.2), ("1", 2, 0.3), ("1", 1, 0.1), ("1", 9, 0.1), ("2", 12, 1.1), ("2", 3, 0.2),
        ("2", 5, 0.1),
    ]  # fmt: skip
    assert len({getattr(row, of) for row in rows}) == 2


def test_totals_of_counts_and_of_grams_are_worked_out_again(tmp_path: Path) -> None:
    """The last line has a wrong sum of counts and a wrong one of grams; each is told at its cell."""
    told = [p for p in taken(tmp_path, "> 2.0 mm", "< 2.0 mm").problems if p.code == "N317"]

    assert [p.place.cell for p in told] == ["I7", "J7"]
    assert "the stored Wt (g) is 0.5, and the weights in E7 to H7 give 0.3" in told[1].message
