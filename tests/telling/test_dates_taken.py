"""Dates that were taken stand where their contexts are told."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

Told = Mapping[str, Mapping[Subject, Narrative]]


@pytest.mark.parametrize(
    ("id", "laboratory"),
    [
        ("C03", ("VRL-0417", "VRL-0418")),
        ("C05", ("VRL-0419",)),
        ("C12", ("VRL-0423", "VRL-0424")),
        ("C13", ("VRL-0422",)),
        ("C17", ("VRL-0427",)),
    ],
)
def test_a_context_has_its_dates(told_of_example: ToldOnce, id: str, laboratory: tuple[str, ...]):
    """As project.yaml lists them, and no date of another context."""
    text = told_of_example["report"][Subject(level="context", id=id)].text

    assert [number for number in range(410, 430) if f"VRL-0{number}" in text] == [int(n[4:]) for n in laboratory]


def test_the_date_on_the_bean_is_quoted(told_of_example: ToldOnce):
    """A bean found in few samples was dated itself; its ranges stand in the list of dates and in the discussion."""
    entry = "VRL-0424: bean cotyledon, one, from hearth C12; 690 ± 20 BP"

    assert f"“{entry}”" in told_of_example["report"][Subject(level="context", id="C12")].text


def test_visitors_are_told_no_laboratory_numbers(told_of_example: ToldOnce):
    """Years are enough for them."""
    assert not [s for s, narrative in told_of_example["public"].items() if "VRL-" in narrative.text]
