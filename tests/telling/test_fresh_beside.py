"""A season read from a plant whose modern seeds lie in the same unsealed soil is told with that doubt."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.telling.told_once import ToldOnce


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Mapping[tuple[str, str], str]:
    return {
        (audience, subject.id): narrative.text
        for audience in ("report", "review")
        for subject, narrative in told_of_example[audience].items()
    }


@pytest.mark.parametrize("audience", ["report", "review"])
def test_modern_seeds_of_the_same_plant_are_a_caution(told: Mapping[tuple[str, str], str], audience: str):
    """C16 is open and holds five uncharred elderberry seeds beside seven charred ones (sheets of the example)."""
    assert "Uncharred seeds of elderberry (5), taken as modern, lay here as well" in told[audience, "C16"]


def test_the_phase_says_where_they_lay(told: Mapping[tuple[str, str], str]):
    """The late phase names the context that holds both."""
    assert "Uncharred seeds of elderberry (5), taken as modern, lay in C16 as well" in told["report", "late"]


def test_seasons_without_such_seeds_are_told_without_the_caution(told: Mapping[tuple[str, str], str]):
    """C22 holds no uncharred seeds of the plants that its season rests on."""
    assert "taken as modern, lay" not in told["report", "C22"]
