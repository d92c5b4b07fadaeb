"""What records say of plough, worms and rodents is told where mixing is spoken of, and so is what keeps fills apart."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.telling.told_once import ToldOnce

WORMS = "“worked by worms, but a lens of clean silt keeps it apart from the midden above”"
PLOUGH = "“its top is cut by the old plough”"


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Mapping[tuple[str, str], str]:
    return {
        (audience, subject.id): narrative.text
        for audience in ("report", "review")
        for subject, narrative in told_of_example[audience].items()
    }


@pytest.mark.parametrize("audience", ["report", "review"])
def test_worms_and_the_lens_that_keeps_it_apart_are_told(told: Mapping[tuple[str, str], str], audience: str):
    """C08 is told with both halves of its record and the worm casts of its samples (records of the example)."""
    assert (
        f"As to mixing, the excavation record says {WORMS} and some worm casts (S018, S019, and S020) and some rootlets "
        "(S018) were noted, so that single finds of another time cannot be ruled out, though the one was kept from the "
        "other." in told[audience, "C08"]
    )


@pytest.mark.parametrize("audience", ["report", "review"])
def test_the_plough_and_rodents_are_told(told: Mapping[tuple[str, str], str], audience: str):
    """C16 is told with its plough, the rodents of S037, and what its neighbour's record says of the lens."""
    text = told[audience, "C16"]

    assert f"As to mixing, the excavation record says {PLOUGH}" in text
    assert "a few traces of rodents (S037)" in text
    assert f"of C08, of the same feature, the excavation record says {WORMS}" in text


def test_older_finds_in_a_shared_feature_are_weighed_by_both_records(told: Mapping[tuple[str, str], str]):
    """Where the dig's account allows for older finds it quotes what speaks for mixing and against it."""
    assert f"of C16 the record says {PLOUGH}, and of C08 {WORMS}" in told["report", "site"]


def test_a_deposit_read_as_disturbed_is_not_told_of_mixing_again(told: Mapping[tuple[str, str], str]):
    """C20 is read as disturbed with its signs, which need no second telling."""
    assert "As to mixing" not in told["report", "C20"]
