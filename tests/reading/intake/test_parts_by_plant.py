"""Parts that depend on the plant, and heads that name plants and no part. All sheets here are invented."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs


def taken(folder: Path, *lines: str) -> TakenIn:
    (folder / "table.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    return take_in(folder / "table.csv", packs())


def parts(found: TakenIn) -> dict[str, str]:
    return {row.identification.written: str(row.part) for row in found.rows}


@pytest.mark.parametrize(
    ("sign", "key"),
    [("S/F", "S/F = Same/Frucht, SB = Spelzenbasis"), ("SF", "SF = Samen/Früchte; SB = Spelzenbasis"),
     ("S", "S = seed or fruit; SB = glume base")],
)  # fmt: skip
def test_seed_or_fruit_of_a_cereal_is_its_grain(tmp_path: Path, sign: str, key: str) -> None:
    """One sign for whichever a plant sheds: a cereal sheds grain, and of the others it is the first of the two."""
    found = taken(
        tmp_path, f'"{key}"', "Probe,Rest,1,2,3", f"Hordeum vulgare,{sign},3,2,1", "Triticum dicoccum,SB,17,9,10",
        f"Lens culinaris,{sign},1,2,1", f"Chenopodium album,{sign},5,6,9",
    )  # fmt: skip

    assert parts(found) == {
        "Hordeum vulgare": "grain", "Triticum dicoccum": "glume base", "Lens culinaris": "seed", "Chenopodium album": "seed"
    }  # fmt: skip


def test_seed_or_fruit_is_read_the_same_from_the_layout(tmp_path: Path) -> None:
    """What the layout says of the sign is what the key of the sheet says."""
    lines = ('"S/F = Same/Frucht, SB = Spelzenbasis"', "Probe,Rest,1,2,3", "Hordeum vulgare,S/F,3,2,1",
             "Triticum dicoccum,SB,17,9,10", "Lens culinaris,S/F,1,2,1")  # fmt: skip
    first = taken(tmp_path, *lines)
    (tmp_path / "table.csv.layout.yaml").write_text(first.text, encoding="utf-8")

    assert parts(taken(tmp_path, *lines)) == parts(first)


@pytest.mark.parametrize("head", ["FRUITS AND NUTS", "Fruits", "Wild fruits", "Fruits & nuts"])
def test_a_section_of_fruits_is_of_plants_and_gives_no_part(tmp_path: Path, head: str) -> None:
    """What was counted of them is told as taken, and is no 'fruit' without a word."""
    found = taken(
        tmp_path, "Taxon,1,2,3", "CEREALS,,,", "Hordeum vulgare,3,2,1", "Triticum dicoccum,4,,1", f"{head},,,", "Prunus sp.,1,,2",
        "Vitis vinifera,,3,4", "WEEDS,,,", "Chenopodium album,3,4,5",
    )  # fmt: skip

    assert parts(found)["Vitis vinifera"] == "seed"
    assert [problem.message for problem in found.problems if problem.code == "N315" and "name no part" in problem.message]


def test_a_spikelet_base_of_rice_is_no_fork(tmp_path: Path) -> None:
    """A fork of a hulled wheat stands for two glume bases; a base of rice stands for one spikelet."""
    found = taken(
        tmp_path, "Taxon,1,2,3", "Oryza sativa grain,3,2,1", "Oryza sativa spikelet base,30,31,16",
        "Triticum dicoccum spikelet base,4,,1",
    )  # fmt: skip

    assert parts(found) == {
        "Oryza sativa grain": "grain", "Oryza sativa spikelet base": "rice spikelet base",
        "Triticum dicoccum spikelet base": "spikelet fork",
    }  # fmt: skip
    assert packs().words.parts["rice spikelet base"].stands_for == 1
