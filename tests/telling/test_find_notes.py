"""What the laboratory wrote of finds is quoted with the finds; checked against the count sheets of the example."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.signs import signs_in, signs_of
from narrate.pipeline.judged import Judged
from tests.telling.told_once import ToldOnce

Told = Mapping[str, Mapping[Subject, Narrative]]


def context(told: Told, audience: str, id: str) -> str:
    return told[audience][Subject(level="context", id=id)].text


@pytest.mark.parametrize(
    ("id", "said"),
    [
        ("C13", "the maize cobs of S028 the laboratory notes “eight- and ten-row, short sections”"),
        ("C11", "the maize cobs of S024 the laboratory notes “ten-row where it can be told”"),
        ("C12", "“pericarp mostly gone”"),
        ("C12", "of the common bean cotyledon of S027 “two halves may be one seed”"),
        ("C05", "the grass culms of S012 and of the grass culm nodes of S012 the laboratory notes “lining”"),
        ("C08", "the maize kernel named cf. of S019 the laboratory notes “glassy, no embryo”"),
        ("C21", "the chenopod seed of S049 the laboratory notes “abraded”"),
    ],
)
def test_notes_on_finds_are_quoted_whatever_is_read(told_of_example: ToldOnce, id: str, said: str):
    """As counts/light_fraction.csv has them: rows of cobs, lost skins, halves, the grounds of a name, wear."""
    assert context(told_of_example, "report", id).count(said) == 1


def test_a_block_that_was_lifted_is_told_with_the_finds(told_of_example: ToldOnce):
    """The record of S012 (C05) says so, and what was lifted is not in the counts."""
    text = context(told_of_example, "report", "C05")

    assert "“a block was lifted in plaster before the rest was floated” (what was lifted is not in the counts)" in text


def test_older_ash_is_told_where_it_is_counted_with_the_last_fire(told_of_example: ToldOnce):
    """S025 of C11 is older ash under the last fire."""
    assert "“older ash under it, trampled at the edge”" in context(told_of_example, "report", "C11")


def test_one_thing_seen_of_two_parts_is_quoted_of_both(told_of_example: ToldOnce):
    """C17: cobs with kernels attached, and kernels with glume bases pressed on (S040)."""
    text = context(told_of_example, "report", "C17")

    assert (
        "“with kernels attached on one side” and of the maize kernels of S040 “many with glume bases pressed on; some "
        "still in rows”" in text
    )


def test_visitors_and_the_review_have_no_list_of_notes(told_of_example: ToldOnce):
    """What single cobs looked like is for who compares them."""
    assert "ten-row" not in context(told_of_example, "public", "C13")


@pytest.mark.parametrize(
    ("note", "is_told"),
    [("by the bench", True), ("both from one spot", True), ("checked by the analyst", False), ("fragile", False)],
)
def test_only_what_others_can_use_is_told_with_the_finds(judged_example: Judged, note: str, is_told: bool):
    """Where finds lay bears on how many plants stand behind a number; who looked at them does not."""
    found = [seen for seen, _, _ in signs_in(signs_of(judged_example.packs.observations), note, "find")]

    assert any(seen.told_with == "finds" for seen in found) is is_told
