"""Blocks of finds in one table or form: 'Wood', 'Nutshell' and 'Seeds' under heads that come again. All invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

CROSSED = """Sample,1,,2,
Volume (L),10,,8,
Wood,Ct,Wt (g),Ct,Wt (g)
Carya,4,0.20,6,0.31
Quercus,,,3,0.10
Corylus,,,,
Total wood,4,0.20,9,0.41
Nutshell,Ct,Wt (g),Ct,Wt (g)
Carya,12,0.60,,
Corylus,,,,
Juglans nigra,2,0.15,1,0.05
Total nutshell,14,0.75,2,0.05
Seeds,Ct,Wt (g),Ct,Wt (g)
Rubus,3,,1,
Vitis,,,2,
Total seeds,3,,3,
"""
FORM = """Sample no.,FS 12,,Feature,Pit 4
Volume (L),10,,Analyst,T. Wren
WOOD,,,,
Taxon,Count,Weight (g),,
Carya,4,0.20,,
Subtotal,4,0.20,,
NUTSHELL,,,,
Taxon,Count,Weight (g),,
Subtotal,0,0,,
SEEDS,,,,
Taxon,Count,Weight (g),,
Rubus,3,,,
Vitis,2,,,
Subtotal,6,,,

GRAND TOTAL,9,,,
"""


def taken(folder: Path, text: str) -> TakenIn:
    (folder / "sheet.csv").write_text(text, encoding="utf-8")
    return take_in(folder / "sheet.csv", packs())


def test_small_heads_that_come_again_head_blocks_of_one_table(tmp_path: Path) -> None:
    """Each block gives its part, a plant without counts heads nothing, and no 'Ct' is read for a count."""
    found = taken(tmp_path, CROSSED)

    assert [(str(r.sample), r.identification.written, str(r.part), r.count.number, r.mass_g) for r in found.rows] == [
        ("1", "Carya", "wood", 4, 0.2), ("2", "Carya", "wood", 6, 0.31), ("2", "Quercus", "wood", 3, 0.1),
        ("1", "Carya", "nutshell", 12, 0.6), ("1", "Juglans nigra", "nutshell", 2, 0.15),
        ("2", "Juglans nigra", "nutshell", 1, 0.05), ("1", "Rubus", "seed", 3, None), ("2", "Rubus", "seed", 1, None),
        ("2", "Vitis", "seed", 2, None),
    ]  # fmt: skip


def test_the_total_of_each_block_is_worked_out_again(tmp_path: Path) -> None:
    """The nutshell of sample 2 is one, and the sheet says two."""
    told = [p.place.cell for p in taken(tmp_path, CROSSED).problems if p.code == "N317"]

    assert told == ["D12"]


def test_the_blocks_of_a_form_are_of_its_sample(tmp_path: Path) -> None:
    """One sample, by the whole of its id, with a part from the name of each block; one of them is empty."""
    found = taken(tmp_path, FORM)

    assert [(str(r.sample), r.identification.written, str(r.part), r.count.number) for r in found.rows] == [
        ("FS 12", "Carya", "wood", 4), ("FS 12", "Rubus", "seed", 3), ("FS 12", "Vitis", "seed", 2),
    ]  # fmt: skip
    assert [p.place.cell for p in found.problems if p.code == "N317"] == ["B14"]


@pytest.mark.parametrize(
    ("written", "taxon"),
    [
        ("Quercus sp. (red oak group)", "Quercus (red group)"), ("Quercus, white group", "Quercus (white group)"),
        ("Quercus (red oak)", "Quercus (red group)"), ("Pinus, hard", "Pinus (hard group)"),
        ("Carya (pecan)", "Carya"), ("Quercus sp. (burned)", "Quercus"),
    ],
)  # fmt: skip
def test_a_group_of_a_genus_is_known_by_its_word(tmp_path: Path, written: str, taxon: str) -> None:
    """A word for a group that the packs know narrows the genus; one for a species, or another word, does not."""
    found = taken(tmp_path, f'Sample,Taxon,Part,Count\n1,"{written}",wood,4\n2,"{written}",wood,5\n3,Acer,wood,5\n')

    assert {str(row.identification.taxon) for row in found.rows} == {taxon, "Acer"}


def test_shares_of_a_block_are_of_the_block(tmp_path: Path) -> None:
    """'%' beside wood is of the wood of the form, whatever else it holds; one of them is wrong."""
    form = (
        "Sample ID,7,,\nSoil volume (L),3,,\nWood charcoal,,,\nTaxon,n,%,g\nCarya,6,60,0.2\nAcer,3,30,0.1\n"
        "Pinus,1,20,0.1\n"
        "Total identified,10,100,0.4\n,,,\nOther plant remains,,,\nTaxon,n,%,g\nRubus seed,30,,\nZea mays cupule,10,,\n"
    )

    assert [p.place.cell for p in taken(tmp_path, form).problems if p.code == "N317"] == ["C7"]


BESIDE = """Sample,PN-11,,,Feature,Pit 2,,
WOOD,,,,NUTSHELL,,,
Taxon,Ct,Wt,,Taxon,Ct,Wt,
Carya,4,0.2,,Carya,3,0.1,
Bark,2,0.1,,Juglans nigra,1,0.1,
Pinus,1,0.1,,,,,
,,,,,,,
Total,7,0.4,,Total,5,0.2,
"""
LARGE = """Sample:,FS-9,Context:,Unit 3
Volume:,4 L,,
Material,Count,Weight (g),Notes
WOOD,,,
Carya,4,0.20,
Bark,,,
Pinus,2,0.10,
SEEDS,,,
Rubus,3,,
"""
IN_HEADS = """Sample: 12,,Feature: 20
Volume: 8 L,,
Wood,Count,Weight
Carya,4,0.20
Total,4,0.20
Nutshell,Count,Weight
Carya,2,0.05
Total,2,0.05
"""


@pytest.mark.parametrize(
    ("form", "sample", "expected", "wrong"),
    [
        (
            BESIDE,
            "PN-11",
            ["Carya wood", "Bark bark", "Pinus wood", "Carya nutshell", "Juglans nigra nutshell"],
            ["F8"],
        ),
        (LARGE, "FS-9", ["Carya wood", "Pinus wood", "Rubus seed"], []),
        (IN_HEADS, "12", ["Carya wood", "Carya nutshell"], []),
    ],
)
def test_blocks_stand_beside_each_other_in_capitals_or_in_heads(
    tmp_path: Path, form: str, sample: str, expected: list[str], wrong: list[str]
) -> None:
    """Each find has the part of its block, and each total is that of its own list."""
    found = taken(tmp_path, form)

    assert [f"{row.identification.written} {row.part}" for row in found.rows] == expected
    assert {str(row.sample) for row in found.rows} == {sample}
    assert [p.place.cell for p in found.problems if p.code == "N317"] == wrong


def test_names_without_a_count_in_a_form_in_capitals_head_nothing(tmp_path: Path) -> None:
    """'UNIDENTIFIED SEED' and 'BARK' left blank among names in capitals are plants that were looked for."""
    form = "Sample,4,,\nTaxon,Count,Weight (g)\nCARYA,4,0.2\nBARK,,\nACER,3,0.1\nUNIDENTIFIED SEED,,\nVITIS,2,\n"

    assert {str(row.part) for row in taken(tmp_path, form).rows} == {"nutshell", "seed"}
