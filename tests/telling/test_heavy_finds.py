"""Things of later times in heavy fractions stand beside what they make doubtful."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

C20 = Subject(level="context", id="C20")


@pytest.mark.parametrize("audience", ["report", "review"])
def test_coal_glass_and_wire_are_told_of_a_disturbed_pit(told_of_example: ToldOnce, audience: str):
    """C20: three and six pieces of coal, one of glass, one of wire (records/samples-late.yaml, S047 and S048)."""
    text = told_of_example[audience][C20].text

    assert "coal (9), glass (1), and wire (1)" in text.lower()
    assert "S047 and S048" in text


def test_a_sealed_deposit_is_not_doubted_for_glass(judged_example: Judged):
    """Glass and iron are as old as many a sealed pit, so that there they show nothing."""
    w = judged_example
    contexts = tuple(replace(c, security="sealed") if c.id == "C20" else c for c in w.project.contexts)
    told = narratives(replace(w.project, contexts=contexts), w.packs, w.findings, w.claims, "report")

    assert "coal (9)" not in told[C20].text


def test_the_staple_of_the_excavation_record_is_told_too(told_of_example: ToldOnce):
    """C20: the record speaks of a drain and of a rusty staple, and both show that the fill was opened."""
    text = told_of_example["report"][C20].text

    assert "cut through by a modern field drain" in text
    assert "a rusty staple in the top fill" in text


@pytest.mark.parametrize("audience", ["report", "review"])
def test_modern_seeds_are_named_by_their_plants(told_of_example: ToldOnce, audience: str):
    """C16 held five uncharred seeds of elderberry and three of purslane (counts/light_fraction.csv)."""
    text = told_of_example[audience][Subject(level="context", id="C16")].text

    assert "eight uncharred seeds (5 of elderberry and 3 of purslane)" in text


def test_burned_stone_is_told_where_a_fire_burned_in_place(told_of_example: Mapping[str, Mapping[Subject, Narrative]]):
    """C03: 4,120 g in S007 and 1,260 g in S008, and a floor of cracked sandstone; common practice, no source."""
    text = told_of_example["report"][Subject(level="context", id="C03")].text

    assert "Burned stone (5,380 g) from the heavy fractions of S007 and S008 agrees with this." in text
    assert "“straight-sided oven pit behind House 1, floor paved with cracked sandstone”" in text
