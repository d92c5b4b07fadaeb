"""Weeds are weighed one by one where a deposit holds many: harvest, kitchen, yard."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = Mapping[str, Mapping[Subject, Narrative]]


@pytest.fixture(scope="module")
def told(judged_example: Judged) -> Told:
    whole = judged_example
    return {
        audience: narratives(whole.project, whole.packs, whole.findings, whole.claims, audience, ("context",))
        for audience in ("report", "public")
    }


def _sentence(told: Told, id: str, audience: str, words: str) -> str:
    found = [s.text for s in told[audience][Subject(level="context", id=id)].sentences() if words in s.text]
    assert len(found) == 1, (id, words, found)
    return found[0]


@pytest.mark.parametrize("id", ["C14", "C16"])
def test_weeds_that_can_be_eaten_are_parted_from_those_that_are_not(told: Told, id: str):
    """Purslane and amaranth may have been gathered; copperleaf, carpetweed and spurge have no such use on record."""
    eaten, bare = (_sentence(told, id, "report", words) for words in ("growth on the spot", "no use as food"))
    if id == "C16":
        assert "purslane (13) and amaranth (8)" in eaten
    assert "purslane" in eaten and "amaranth" in eaten and "carpetweed" not in eaten
    assert all(name in bare for name in ("opperleaf", "carpetweed", "spotted spurge"))


def test_weeds_of_edges_are_told_as_such(told: Told):
    """Nightshade and pokeweed, weak witnesses of fields, may have grown about the place."""
    text = _sentence(told, "C14", "report", "waste ground and edges")

    assert "lack nightshade" in text and "pokeweed" in text and "purslane" not in text


def test_fruits_that_are_weeds_too_are_said_to_be_counted_twice(told: Told):
    """Maypop is a weed of crops and a fruit, and both readings count it."""
    assert _sentence(told, "C16", "report", "alike") == "Maypop (10) is counted among the weeds and the fruits alike."


def test_weeds_that_lie_wherever_the_crop_does_are_told(told: Told):
    """In C14 four weeds are in all three samples, each of which holds crop remains."""
    text = _sentence(told, "C14", "report", "as the crop remains do")

    assert text == "Purslane, amaranth, copperleaf, and carpetweed recur in all three samples, as the crop remains do."


def test_few_weeds_are_not_weighed(told: Told):
    """The ten seeds of weeds in the hearth C11 are told as a whole."""
    assert "one by one" not in told["report"][Subject(level="context", id="C11")].text


def test_no_poisonous_weed_is_told_as_picked(told: Told, judged_example: Judged):
    """Visitors hear of purslane and pigweed, eaten elsewhere, which shows nothing here; of no poison."""
    for id in ("C14", "C16"):
        text = _sentence(told, id, "public", "have eaten them")
        toxic = [x.plural for x in judged_example.packs.taxa.values() if "toxic" in x.tags]
        assert text.endswith(": people in other places are known to have eaten them, but that does not show it here.")
        assert not [name for name in toxic if name and name in text]
        assert "any other wild plant" in told["public"][Subject(level="context", id=id)].sentences()[-1].text


def test_what_is_left_without_plants_of_two_roles_is_told(told: Told):
    """
    C14 counts 67 seeds of field weeds; without nightshade (5), maypop (7) and groundcherry (1), and without the
    panicgrass (4) and pokeweed (3) of its 74 of open ground, purslane 25, amaranth 10, copperleaf 9, carpetweed 9 and
    spurge 1 are left: 54 (light_fraction.csv).
    """
    text = told["report"][Subject(level="context", id="C14")].text

    assert "Without these five, 54 seeds are left, of plants of fields and gardens." in text
