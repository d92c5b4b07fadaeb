"""Waste of work and the fuel made of it: which comes first, and what makes the figures of either too high."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

Told = Mapping[str, Mapping[Subject, Narrative]]


def _text(told: Told, context: str, audience: str = "report") -> str:
    return " ".join(s.text for s in told[audience][Subject(level="context", id=context)].sentences())


@pytest.mark.parametrize("context", ["C03", "C11", "C13"])
def test_work_comes_before_the_fuel_made_of_its_waste(told_of_example: ToldOnce, context: str):
    """Nobody has shell or cobs to burn who has not cracked nuts or shelled maize: neither is told as the weaker."""
    text = _text(told_of_example, context)

    assert "weaker" not in text
    assert "waste of such work, done there or elsewhere" in text


def test_little_shell_beside_little_wood_is_no_fuel_that_is_supported(told_of_example: ToldOnce):
    """
    C01 holds 0.89 g of shell and 1.21 g of wood in 18.5 litres: the ratio, 0.74, says that there was little wood.

    Source: common practice, no source.
    """
    text = _text(told_of_example, "C01")

    assert "this suggests the use of nutshell as fuel" in text
    assert "to a gram of wood charcoal" not in text
    assert "whether for its heat or to be rid of it, the counts do not tell" in text


def test_what_makes_a_figure_too_high_stands_beside_it(told_of_example: ToldOnce):
    """Where shell is weighed against wood, the caution of that rule follows: shell outlasts wood in the fire."""
    before, _, after = _text(told_of_example, "C03").partition("g to a gram of wood charcoal")

    assert before and after
    assert "the ratio overstates its part in the fire" in after[:400]


def test_what_many_places_suggest_crowds_out_nothing_that_one_supports(told_of_example: ToldOnce):
    """Cracking of nuts is suggested in three contexts; that a store burned, supported in C05 and C17, is told first."""
    site = told_of_example["report"][Subject(level="site", id="site")]
    across = [s.text for s in site.sentences() if "C05 " in s.text and "C06 " in s.text]

    assert any("the burning of stored food" in text for text in across)
