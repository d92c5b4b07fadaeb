"""Hints for visitors name the few finds that they rest on, and seasons that keep say what is not known."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest

from tests.telling.told_once import ToldOnce

SHEETS = Path(__file__).parents[2] / "example_project" / "counts"


@pytest.fixture(scope="module")
def told(told_of_open: ToldOnce) -> dict[str, str]:
    found = told_of_open["public"]
    return {subject.id: narrative.text for subject, narrative in found.items()}


@pytest.mark.parametrize("id", ["C15", "late", "site"])
def test_a_hint_names_the_few_finds_it_rests_on(told: dict[str, str], id: str):
    """Of the light fractions S035, of floor C15, holds two tobacco seeds; the third is of the Early hamlet (S016)."""
    with (SHEETS / "light_fraction.csv").open(encoding="utf-8") as sheet:
        rows = [row for row in csv.reader(sheet) if len(row) > 3 and row[1].startswith("Nicotiana")]

    assert [(row[0], row[3]) for row in rows] == [("S016", "1"), ("S035", "2")]
    assert "two tobacco seeds from one sample" in told[id]
    assert ("(floor C15)" in told[id]) == (id != "C15")


def test_a_season_that_keeps_leaves_the_fire_open(told: dict[str, str]):
    """What is told of gathering is not taken back: of the fire alone no season is known."""
    for id in ("C07", "C12"):
        season = told[id].split("harvested and gathered")[1]

        assert re.search(r"\. But [^.]*keeps?\b[^.]*do(es)? not tell us when (it|they) burned", season)


def test_plants_that_keep_are_not_all_called_foods(told: dict[str, str]):
    """Pigweed lies among the plants of autumn in C11, and nothing there says that it was food."""
    assert "But plants like these keep for months" in told["C11"]
    assert not [id for id, text in told.items() if "foods like these" in text]


def test_nuts_are_gathered_beside_a_harvest(told: dict[str, str]):
    """C12 names hickory nuts beside corn, and nobody harvests a forest."""
    assert re.search("harvested and gathered plants that ripen in autumn, because .* hickory nuts", told["C12"])


def test_fruit_of_a_season_is_named(told: dict[str, str]):
    """Seven elderberry seeds (three, four) and five grape pips lie in C16: few fruits of each, and each by its name."""
    assert "We found seeds of elderberries, which ripen in late summer." in told["C16"]
    assert "the elderberry seeds may come from just two fruits, and the grape seeds from just two." in told["C16"]
    assert not [id for id, text in told.items() if "seeds of fruit that ripens" in text]


def test_a_plant_without_room_for_its_gloss_has_a_sentence(told: dict[str, str]):
    """Two plants of that sentence of C10 are explained in brackets, and a third would be too much."""
    assert "Little barley is a small cousin of barley." in told["C10"]


def test_dumped_shells_may_have_been_fuel(told: dict[str, str]):
    """The tip C22 held ash with the shell, and no reading of the page says that shells were fuel."""
    assert re.search(r"[Ff]ire .*with (its|the) ash\.", told["C22"])
    assert "ash." not in told["C03"].split("## The time of year")[0].split("## The fire")[1]
