"""What the laboratory noted of the wood is told with the wood, whatever was read of it."""

from __future__ import annotations

import re
from collections.abc import Mapping

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

Told = Mapping[str, Mapping[Subject, Narrative]]


@pytest.mark.parametrize(
    ("id", "quotes"),
    [
        ("C17", ("rafter, wide rings", "split post")),
        ("C14", ("narrow twigs with bark",)),
        ("C11", ("thin branch",)),
        ("C03", ("bark on, knots: branch wood",)),
    ],
)
def test_every_note_on_the_wood_is_quoted(told_of_example: ToldOnce, id: str, quotes: tuple[str, ...]):
    """As counts/wood.csv has them, with the sample and the tree."""
    text = told_of_example["report"][Subject(level="context", id=id)].text

    for quote in quotes:
        assert re.search(rf"“{quote}” of the fragments of |f the fragments of [^“]* the laboratory notes “{quote}”", text)
        assert text.count(quote) == 1


def test_visitors_are_told_of_timber_and_of_twigs(told_of_example: ToldOnce):
    """C17 burned with its rafters; in C14 twigs were burned."""
    assert (
        "some of the wood had been part of a building"
        in told_of_example["public"][Subject(level="context", id="C17")].text.lower()
    )
    assert (
        "some of the wood came from twigs or branches"
        in told_of_example["public"][Subject(level="context", id="C14")].text.lower()
    )


def test_timber_is_no_fuel_where_the_woods_of_the_phases_are_compared(told_of_example: ToldOnce):
    """Pine spread between the phases, and part of it is the rafters of C17: that is said beside it."""
    text = told_of_example["report"][Subject(level="site", id=SITE)].text

    assert "wood of C17" in text and "noted as building timber" in text
