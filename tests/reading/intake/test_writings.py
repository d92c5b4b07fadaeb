"""Ways of writing names and amounts, each in a sheet of its own, invented, laid out without a hint and read."""

# ruff: noqa: E501

from __future__ import annotations

from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.counts import CountRow
from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

BELOW = "Carya sp.,nutshell,5,3,1\nVitis sp.,seed,2,,1\nPhaseolus vulgaris,cotyledon,1,1,\n"


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, text: str) -> TakenIn:
    (folder / "lab.csv").write_text(text, encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


def first_row(folder: Path, line: str, head: str = "Taxon,Part,S1,S2,S3", below: str = BELOW) -> list[CountRow]:
    """The finds that the first line of counts gives in its first sample."""
    found = taken(folder, f"{head}\n{line}\n{below}")
    return [r for r in found.rows if str(r.sample) == "S1" and r.place.line == 2]


@pytest.mark.parametrize(
    ("name", "taxon", "qualifier"),
    [
        ("cf. Chenopodium berlandieri", "Chenopodium berlandieri", "cf."),
        ("Chenopodium cf. berlandieri", "Chenopodium berlandieri", "cf."),
        ("Chenopodium ?berlandieri", "Chenopodium berlandieri", "cf."),
        ("cf. Poaceae", "Poaceae", "cf."),
        ("cf_Setaria", "Setaria", "cf."),
        ("Chenopodium/Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium.Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium_Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium & Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium or Amaranthus", "Chenopodium/Amaranthus", ""),
        ('"Chenopodium, Amaranthus"', "Chenopodium/Amaranthus", ""),
        ("Poaceae indet.", "Poaceae", "indet."),
        ("Poaceae undet.", "Poaceae", "indet."),
        ("Chenopodium type", "Chenopodium", "type"),
        ("Polygonum erectum agg.", "Polygonum erectum", "agg."),
        ("Polygonum erectum gp.", "Polygonum erectum", "agg."),
        ("Chenopodium s.l.", "Chenopodium", "s.l."),
        ("Zea mays L.", "Zea mays", ""),
        ("Gramineae", "Poaceae", ""),
        ("Goosefoot", "Chenopodium", ""),
    ],
)
def test_a_name_in_a_sheet_finds_its_taxon(tmp_path: Path, name: str, taxon: str, qualifier: str) -> None:
    """Whatever sign stands in it, the name as written is kept beside the taxon."""
    rows = first_row(tmp_path, f"{name},seed,7,,2")

    assert [(r.identification.taxon, r.identification.qualifier, r.count.number) for r in rows] == [(taxon, qualifier, 7)]
    assert rows[0].identification.written == name.strip('"')


@pytest.mark.parametrize(
    ("name", "taxon", "part", "condition", "completeness", "size"),
    [
        ("Zea mays (cupule)", "Zea mays", "cupule", "charred", "whole", ""),
        ("Zea mays cupule", "Zea mays", "cupule", "charred", "whole", ""),
        ("Zea_mays_cupule", "Zea mays", "cupule", "charred", "whole", ""),
        ("Zea mays cupule frags", "Zea mays", "cupule", "charred", "fragment", ""),
        ("Poaceae (>2mm) seed", "Poaceae", "seed", "charred", "whole", ">2mm"),
        ("Rubus sp. seed (uncharred)", "Rubus", "seed", "uncharred", "whole", ""),
        ("Zea mays (kernel; uncharred)", "Zea mays", "kernel", "uncharred", "whole", ""),
    ],
)
def test_a_name_that_says_more_than_the_plant_is_taken_apart(
    tmp_path: Path, name: str, taxon: str, part: str, condition: str, completeness: str, size: str
) -> None:
    """Part, condition, pieces and size class in brackets or behind the name."""
    rows = first_row(
        tmp_path, f"{name},7,,2", "Taxon,S1,S2,S3", "Carya nutshell,5,3,1\nVitis seed,2,,1\nIva annua seed,1,1,\n"
    )

    assert [(r.identification.taxon, str(r.part), r.condition, r.completeness, r.size_class) for r in rows] == [
        (taxon, part, condition, completeness, size)
    ]


def test_a_column_of_its_own_says_cf(tmp_path: Path) -> None:
    """'cf.' beside the name is the doubt of the name."""
    rows = first_row(
        tmp_path, "cf.,Zea mays,kernel,7,,2", "cf.,Taxon,Part,S1,S2,S3",
        ",Carya sp.,nutshell,5,3,1\n,Vitis sp.,seed,2,,1\ncf.,Iva annua,seed,1,1,\n",
    )  # fmt: skip

    assert [(r.identification.taxon, r.identification.qualifier) for r in rows] == [("Zea mays", "cf.")]


def test_a_genus_shortened_to_that_above_is_the_same(tmp_path: Path) -> None:
    """'C. album' below Chenopodium berlandieri."""
    found = taken(
        tmp_path, "Taxon,Part,S1,S2,S3\nChenopodium berlandieri,seed,7,,2\nC. album,seed,4,1,\n" + BELOW
    )

    assert "Chenopodium album" in {r.identification.taxon for r in found.rows}


def test_the_same_taxon_twice_in_a_sample_is_added_and_told(tmp_path: Path) -> None:
    """Both cells are named in the note."""
    found = taken(tmp_path, "Taxon,Part,S1,S2,S3\nZea mays,kernel,7,,2\nZea mays,kernel,4,1,\n" + BELOW)
    maize = [r for r in found.rows if r.identification.taxon == "Zea mays" and str(r.sample) == "S1"]

    assert [(r.count.number, r.count.written, r.note) for r in maize] == [(11, "7 + 4", "added from C2, C3")]
    assert [(p.place.cell, p.code) for p in found.problems if p.code == "N316"] == [("C2", "N316")]


@pytest.mark.parametrize("head", ["Condition", "Preservation", "Remarks", "Notes"])
def test_uncharred_in_a_column_or_a_remark_is_the_condition(tmp_path: Path, head: str) -> None:
    """Wherever the word stands, the seed is not taken for charred."""
    rows = first_row(
        tmp_path, "Rubus sp.,seed,uncharred,7,,2", f"Taxon,Part,{head},S1,S2,S3",
        "Carya sp.,nutshell,,5,3,1\nVitis sp.,seed,uncharred,2,,1\nIva annua,seed,,1,1,\n",
    )  # fmt: skip

    assert [(r.identification.taxon, r.condition, r.count.number) for r in rows] == [("Rubus", "uncharred", 7)]


def test_what_is_no_plant_is_set_aside_by_kind(tmp_path: Path) -> None:
    """Bone among the seeds is in no count, and is told."""
    found = taken(tmp_path, "Taxon,Part,S1,S2,S3\nFish bone,,7,,2\n" + BELOW)

    assert "Fish bone" not in {r.identification.written for r in found.rows}
    assert [p.message for p in found.problems if p.code == "N315"] == [
        "bone is set aside: it is no plant, and is in no count, expected remains of plants"
    ]


def test_units_in_one_column_are_told_apart(tmp_path: Path) -> None:
    """A count, grams and millilitres of one sample stay a count, a weight and presence."""
    found = taken(
        tmp_path,
        "Taxon,Part,S1,S2\nZea mays,kernel,12,3\nCarya sp.,nutshell,0.35g,2\nQuercus sp.,wood,2ml,1\nVitis sp.,seed,4,\n",
    )

    of_s1 = [(r.identification.taxon, r.count.amount, r.count.number, r.mass_g) for r in found.rows if str(r.sample) == "S1"]
    assert of_s1 == [
        ("Zea mays", "counted", 12, None), ("Carya", "weighed only", None, 0.35),
        ("Quercus", "noted as present", None, None), ("Vitis", "counted", 4, None),
    ]  # fmt: skip


def test_a_text_that_is_a_number_is_that_number(tmp_path: Path) -> None:
    """A workbook that holds '12' as text and 8.00 as a number gives 12 and 8."""
    book = openpyxl.Workbook()
    sheet = book.active
    for line in (
        ["Taxon", "Part", "S1", "S2"], ["Zea mays", "kernel", "12", 8.0], ["Carya sp.", "nutshell", "1,234", " 3 "],
        ["Vitis sp.", "seed", 2, "1"],
    ):  # fmt: skip
        sheet.append(line)
    book.save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())

    assert sorted(r.count.number or 0 for r in found.rows) == [1, 2, 3, 8, 12, 1234]
