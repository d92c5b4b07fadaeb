"""What is unlike in a store is what lay in it; and shells in a fire have an everyday account beside that of fuel."""

from __future__ import annotations

import re

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

Told = dict[str, dict[Subject, Narrative]]


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Told:
    return {a: dict(told_of_example[a]) for a in ("report", "public")}


def test_a_store_without_a_season_is_told_by_what_lay_there(told: Told):
    """C05 is not unlike for being a storage pit: 540 of its 580 items are chenopod (counts/light_fraction.csv)."""
    text = told["report"][Subject(level="phase", id="early")].text

    assert "stands apart: it is" not in text
    assert "C05 leaves open the season of its own deposit: chenopod, which keeps, makes up 540 of 580 items" in text


@pytest.mark.parametrize("id", ["C01"])
def test_visitors_hear_of_scraps_beside_fires_of_nutshell(told: Told, id: str):
    """Shells thrown on a fire after a meal look like shells burned for heat (common practice, no source)."""
    text = told["public"][Subject(level="context", id=id)].text

    assert "nutshells in their fires" in text
    assert re.search(r"scraps of (food|a meal)", text)


def test_hickory_is_explained_to_visitors(told: Told):
    """Not every visitor knows the tree."""
    assert "(from a tree with hard-shelled nuts)" in told["public"][Subject(level="context", id="C03")].text
