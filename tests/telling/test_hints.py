"""Hints for visitors name the few finds that they rest on, and seasons that keep say what is not known."""

from __future__ import annotations

import csv
import re
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from narrate.pipeline.judged import disclosed_part
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

SHEETS = Path(__file__).parents[2] / "example_project" / "counts"


@pytest.fixture(scope="module")
def told(judged_example: Judged) -> dict[str, str]:
    whole = disclosed_part(judged_example)
    found = narratives(whole.project, whole.packs, whole.findings, whole.claims, "public")
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

        assert re.search(r"\. But .* keep.*does? not tell us when (it|they) burned|\. But .*do not tell us when", season)


def test_plants_that_keep_are_not_all_called_foods(told: dict[str, str]):
    """Pigweed lies among the plants of autumn in C11, and nothing there says that it was food."""
    assert "But plants like these keep for months" in told["C11"]
    assert not [id for id, text in told.items() if "foods like these" in text]


def test_nuts_are_gathered_beside_a_harvest(told: dict[str, str]):
    """C12 names hickory nuts beside corn, and nobody harvests a forest."""
    assert "harvested and gathered plants that ripen in autumn, because we found remains of corn, hickory" in told["C12"]
