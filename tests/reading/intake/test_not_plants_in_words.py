"""Finds that are no plants are set aside by kind, whatever words stand beside. All sheets are invented."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.intake.test_silent_faults import finds, taken

ASIDE = (
    "Snails from flot", "Metal Fe", "Fe objects", "Cu alloy object", "Iron nails", "Bone, burnt (small)", "Fish scales from HR",
    "Hammer scale spheres", "Earthworm egg cases", "Coal frags", "Slag from residue", "Glass frags", "Beetle frags in flot",
    "Schnecken aus dem Flot", "Eisenobjekte", "Knochensplitter, unverbrannt", "Objets en fer", "Os brûlés (petits)",
    "Fragmentos de hierro", "Huesos de la flotación", "Oggetti in ferro", "Ossa combuste piccole", "Schelpen uit residu",
    "IJzeren voorwerpen",
)  # fmt: skip
KEPT = ("Glass wort", "Bird cherry", "Nut shell", "Bud scales", "Copper beech", "Lead tree", "Stone pine", "Gold of pleasure")


@pytest.mark.parametrize("across", [True, False])
@pytest.mark.parametrize("name", ASIDE)
def test_a_head_of_several_words_is_set_aside(tmp_path: Path, name: str, across: bool) -> None:
    """In a row and over a column: nothing of it is a find, and the two plants are read."""
    rows = [["Taxon", "S1", "S2"], ["Hordeum vulgare", "4", "2"], [f'"{name}"', "12", "3"], ["Rumex", "1", "5"]]
    lines = rows if across else list(zip(*[["Sample", *rows[0][1:]], *rows[1:]], strict=True))
    found = taken(tmp_path, "\n".join(",".join(row) for row in lines))

    assert sorted({taxon for _, taxon, _, _ in finds(found)}) == ["Hordeum vulgare", "Rumex"]
    assert [one for one in found.left_out if name in one] != []


@pytest.mark.parametrize("name", KEPT)
def test_plants_with_such_a_word_in_their_name_stay(tmp_path: Path, name: str) -> None:
    """A word that nobody knows beside it may make a plant of it."""
    found = taken(tmp_path, f"Taxon,S1,S2\nHordeum vulgare,4,2\n{name},12,3\nRumex,1,5")

    assert [r.count.number for r in found.rows if r.identification.written == name] == [12, 3]
