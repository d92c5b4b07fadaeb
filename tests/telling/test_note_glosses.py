"""What is said of a note is what the note says: no gloss sees in the ground what nobody wrote down."""

from __future__ import annotations

import re

import pytest

from narrate.model.observations import Observation
from narrate.model.signs import found_in
from narrate.model.signs import pattern as _pattern
from narrate.reading.packs import read_packs

# A thing that a gloss may name -> what every phrase of the note must hold for it.
SEEN = {
    r"sweepings": r"sweepings", r"plough": r"plough|plow", r"roof": r"roof|thatch", r"wall clay": r"daub",
    r"\bload\b|loads": r"tip|load", r"burrow": r"rodent|animal|krotovina", r"\brain\b": r"open|silt",
    r"swept": r"swe", r"trodden": r"trodden|trampled", r"in rows": r"rows", r"vessel|pot\b": r"crust|sherd|food|rolled|pot|jar|bowl",
    r"household": r"household|kitchen", r"roots": r"root", r"no earth turned red": r"reddened|reddening",
    r"turned red": r"red|oxidi[sz]ed", r"smoulder": r"smoulder|smolder|reddened|reddening",
}  # fmt: skip


@pytest.fixture(scope="module")
def observations() -> tuple[Observation, ...]:
    return read_packs(("eastern-north-america",))[0].observations


def test_a_gloss_names_only_what_its_notes_name(observations: tuple[Observation, ...]):
    """'Full of sherds' is no note of sweepings, and 'baked daub' none of a roof (no source: the words themselves)."""
    strays = [
        (seen.id, thing, phrase)
        for seen in observations
        for thing, must in SEEN.items()
        if re.search(thing, seen.plain)
        for phrase in seen.phrases
        if not re.search(must, phrase)
    ]

    assert strays == []


@pytest.mark.parametrize(
    ("note", "plain"),
    [
        ("Upper midden, black and full of sherds", "the diggers saw many broken pots in the soil"),
        ("Its top is cut by the old plough", "the diggers saw that a plough had cut into this soil"),
        ("Raked out many times", "the diggers saw that people had raked out the ash many times"),
        ("The pit walls are scorched", "the diggers saw earth here that fire had scorched"),
    ],
)
def test_a_note_is_put_in_plain_words_as_it_was_written(observations: tuple[Observation, ...], note: str, plain: str):
    """Visitors are told what the record says, no more and no less."""
    found = [o.plain for o in observations if o.noted_of == "ground" and found_in(_pattern(o.phrases), note)]

    assert found == [plain]


def test_no_bracket_says_the_same_twice(observations: tuple[Observation, ...]):
    """What a layer of seed or a heap of sherds means needs no words that only repeat it."""
    bare = {o.id for o in observations if not o.means}

    assert {"lens of seed", "sherds"} <= bare


def test_thatch_is_no_further_find(observations: tuple[Observation, ...]):
    """The stems that the list names are the thatch of the note: it is not told as lying there too."""
    plain = next(o.plain for o in observations if o.id == "thatch")

    assert "too" not in plain.split() and "these finds" in plain
