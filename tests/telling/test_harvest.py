"""Crops are harvested and wild plants gathered."""

from __future__ import annotations

import re

import pytest

from narrate.model.ids import Subject
from tests.telling.told_once import ToldOnce


@pytest.mark.parametrize(
    ("audience", "level", "id", "word"),
    [
        # What ripens in autumn is maize, and hickory nuts and amaranth beside it.
        ("report", "phase", "late", r"repeated harvesting and gathering in autumn"),
        ("public", "context", "C11", r"people harvested and gathered plants"),
        # Maygrass and little barley were sown, strawberries were not.
        ("report", "phase", "early", r"repeated harvesting and gathering in early summer"),
        # Persimmon, grape and nuts were not.
        ("public", "context", "C03", r"people gathered plants"),
    ],
)
def test_the_word_for_a_season_is_that_of_its_plants(
    told_of_example: ToldOnce, audience: str, level: str, id: str, word: str
):
    """By the plants that the reading rests on (status of the plants in the packs)."""
    told = told_of_example[audience]
    text = told[Subject(level=level, id=id)].text  # type: ignore[arg-type]

    assert re.search(word, text)


@pytest.mark.parametrize(
    ("id", "season"),
    [
        ("C03", "its gathering in autumn"),
        ("C11", "use of a harvest of autumn"),
        ("C12", "use of a harvest of that season"),
        ("C16", "gathering of soft fruit in late summer and autumn"),
    ],
)
def test_of_a_deposit_it_is_read_what_was_gathered_fresh(told_of_example: ToldOnce, id: str, season: str):
    """When nuts and crops were gathered is known wherever they lie, and no reading of a deposit puts it in doubt."""
    text = told_of_example["report"][Subject(level="context", id=id)].text

    assert season in text
    assert not re.search(r"(?<!its )(?:gathering|harvesting) in (?:autumn|early|late|that season|more than one)", text)


def test_two_harvests_leave_the_month_of_burning_open(told_of_example: ToldOnce):
    """Maygrass and chenopod of C01 ripen months apart: two harvests are in it, and as both keep, that is all."""
    text = told_of_example["report"][Subject(level="context", id="C01")].text

    assert "suggests use of more than one harvest" in text
    assert "so that the month of their burning stays open" in text
