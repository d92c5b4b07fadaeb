"""
Sheets as publications and databases give them away: what a right reading of each shape is.

All sheets are invented, in the shape of tables that are published as open data; names, places and numbers are made up.
"""

# ruff: noqa: E501

from __future__ import annotations

from collections import Counter
from functools import cache
from pathlib import Path

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("temperate-europe",))


def taken(tmp_path: Path, text: str) -> TakenIn:
    file = tmp_path / "sheet.csv"
    file.write_text(text, encoding="utf-8")
    return take_in(file, packs())


def counted(found: TakenIn) -> dict[tuple[str, str, str], int]:
    """Sample, name as written and part -> the sum of what was counted."""
    sums: Counter[tuple[str, str, str]] = Counter()
    for row in found.rows:
        if row.count.number is not None:
            sums[row.sample, row.identification.written, row.part] += row.count.number
    return dict(sums)


PERIODS = """Year,Sample,Feature,Period,Type,Vol,Total no,Density,Panicum miliaceum,Hordeum vulgare,Galium
2011,101,Trench 2 pit 4,Late Lower,Pit,6,11,1.83,1,,10
2011,102,Trench 2 pit 7,Mid/L Low,Pit,4,17,4.25,6,5,6
2011,103,Trench 2 hearth,Early Upper,Hearth,5,12,2.40,10,1,1
2011,104,Trench 3 floor,E/L Upper,House,8,13,1.63,4,4,5
"""
"""Invented: short forms of periods that hold '/L', which are no 'per litre'."""


def test_a_period_in_short_is_no_density(tmp_path: Path) -> None:
    """The samples of 'Mid/L Low' and 'E/L Upper' are read like the others."""
    found = taken(tmp_path, PERIODS)

    assert sorted({row.sample for row in found.rows}) == ["101", "102", "103", "104"]
    assert [p.message for p in found.problems if p.code == "N317"] == []


SHARES = """Site,Phase,Taxon,Family,Proportion_per_Phase,Ubquity
Millford,MF_1,Avena sp.,Poaceae,8,20
Millford,MF_1,Triticum dicoccum grains,Poaceae,38,60
Millford,MF_1,Lens sp.,Fabaceae,54,100
Millford,MF_2,Avena sp.,Poaceae,3,50
Millford,MF_2,Hordeum vulgare grain (hulled),Poaceae,97,100
Weirby,WE,Galium sp.,Rubiaceae,1,9
Weirby,WE,Vitis vinifera pips,Vitaceae,99,77
"""
"""Invented: shares and ubiquities of whole phases, no counts among them; one head is misspelt."""


def test_a_list_of_shares_is_told_and_not_read_as_counts(tmp_path: Path) -> None:
    """Nothing becomes a count, and the reader hears why."""
    found = taken(tmp_path, SHARES)

    assert found.rows == ()
    assert [p.code for p in found.problems] == ["N311"]
    assert "give 'Proportion_per_Phase' and 'Ubquity' of each taxon, and no counts" in found.problems[0].message
