"""The engine says of published remains what those who published them said, and no more."""

from __future__ import annotations

import pytest

from tests.readings.deposits_east import EAST_DEPOSITS
from tests.readings.deposits_europe import EUROPE_DEPOSITS
from tests.readings.deposits_southwest import SOUTHWEST_DEPOSITS
from tests.readings.eastern import EASTERN
from tests.readings.europe import EUROPE
from tests.readings.practice_east import EAST_PRACTICE
from tests.readings.practice_europe import EUROPE_PRACTICE
from tests.readings.practice_southwest import SOUTHWEST_PRACTICE
from tests.readings.reading import KNOWN, Reading, claims_of, rank
from tests.readings.southwest import SOUTHWEST

PUBLISHED = (*SOUTHWEST, *EASTERN, *EUROPE)
PRACTICE = (*SOUTHWEST_PRACTICE, *EAST_PRACTICE, *EUROPE_PRACTICE)
DEPOSITS = (*SOUTHWEST_DEPOSITS, *EAST_DEPOSITS, *EUROPE_DEPOSITS)
READINGS = (*PUBLISHED, *PRACTICE, *DEPOSITS)


@pytest.mark.parametrize("reading", READINGS, ids=lambda reading: reading.id)
def test_the_engine_meets_the_published_reading(reading: Reading) -> None:
    """What the author concluded holds at the grade given; what the author warned of does not."""
    claims = claims_of(reading)
    told = {
        id: (claims[id].verdict, claims[id].grade, claims[id].support)
        for id in (*reading.holds, *reading.at_most, *reading.must_not)
        if id in claims
    }

    weak = {id for id, least in reading.holds.items() if id not in claims or rank(claims[id].grade) < rank(least)}
    strong = {id for id, most in reading.at_most.items() if id in claims and rank(claims[id].grade) > rank(most)}
    wrong = {id for id in reading.must_not if id in claims and claims[id].verdict == "holds"}
    assert (weak, strong, wrong) == (set(), set(), set()), told


def test_there_are_readings_enough_and_each_says_what_it_is() -> None:
    """At least 25 published readings, from all three regions, each with its source and how well that is known."""
    assert len([reading for reading in READINGS if reading.known != "common practice, no source"]) >= 25
    assert len({reading.id for reading in READINGS}) == len(READINGS)
    assert len({reading.region for reading in READINGS}) == 3
    assert {reading.known for reading in READINGS} <= set(KNOWN)
    assert all(reading.source and reading.printed and reading.concluded for reading in READINGS)


def test_every_reading_asks_for_something() -> None:
    """A reading without an expectation could not fail."""
    assert [r.id for r in READINGS if not (r.holds or r.at_most or r.must_not)] == []
