"""The record that ships with the packs is that of their rules, and every grade keeps its promise on it."""

from __future__ import annotations

from functools import cache

import pytest

from narrate.deposit.track_record_file import plain_track_record, track_record_json
from narrate.model.claims import GRADES
from narrate.model.track_record import TrackRecord
from narrate.reading.packs import read_packs
from narrate.reading.track_record import SHIPPED, shipped_track_record, track_record_of
from narrate.telling.track_record import track_record_text
from narrate.trials.activities import Trial
from narrate.trials.record import Told, by_grade, by_statement
from narrate.trials.run import REGIONS, SEED, claims_of, track_record
from tests.trials.refresh import DIGS

ENOUGH = 100
"""Claims of a statement at a grade from which its share is held to the promise."""


@cache
def usual(digs: int, seed: int) -> Told:
    return claims_of({name: read_packs((name,))[0] for name in REGIONS}, Trial(digs=digs), seed)


@cache
def small() -> TrackRecord:
    return track_record({"eastern-north-america": read_packs(("eastern-north-america",))[0]}, digs=3, seed=5)


@pytest.mark.parametrize(("grade", "promise"), GRADES)
def test_claims_on_worlds_held_out_are_right_as_often_as_they_sound(grade: str, promise: float) -> None:
    """On digs that neither weights nor rules were tried on, each grade's readings keep its promise."""
    line = next(n for n in by_grade(usual(100, 424_242)) if n.grade == grade)

    assert line.hits.claims > 0
    assert line.hits.rate >= promise


def test_no_statement_falls_far_below_its_promise() -> None:
    """No statement with a hundred claims at a grade is more than ten points below it."""
    bands = dict(GRADES)
    lines = by_statement(usual(100, 424_242))

    assert [
        (n.name, n.grade, round(n.hits.rate, 2))
        for n in lines
        if n.hits.claims >= ENOUGH and n.hits.rate < bands[n.grade] - 0.1  # type: ignore[index]
    ] == []


def test_the_shipped_record_is_that_of_the_rules_that_ship() -> None:
    """A changed rule, weight, limit or world needs `python -m tests.trials.refresh`."""
    shipped = shipped_track_record()
    found = usual(DIGS, SEED)

    assert shipped.contexts == found.contexts
    assert [(n.grade, n.hits.claims, n.hits.right) for n in shipped.of("grade")] == [
        (n.grade, n.hits.claims, n.hits.right) for n in by_grade(found)
    ]


def test_a_record_comes_back_from_its_file_as_it_was() -> None:
    """Plain data, text and record say the same."""
    text = SHIPPED.read_text(encoding="utf-8")

    assert track_record_json(shipped_track_record()) == text
    assert plain_track_record(track_record_of(plain_track_record(small()))) == plain_track_record(small())


def test_the_text_says_what_the_record_is_not() -> None:
    """Nobody may take agreement with a model for agreement with the past."""
    packs = read_packs(("eastern-north-america",))[0]
    text = track_record_text(small(), packs)

    assert text.startswith("60 contexts of simulated digs;")
    assert "how well the rules agree with a model of how plants come to be found, not with the past." in text


def test_every_claim_of_the_usual_digs_stands_in_one_table() -> None:
    """The lines of the grades of readings add up to those of the statements that are readings."""
    found = usual(100, 424_242)
    by_name = [n for n in by_statement(found) if not n.name.startswith("integrity.")]

    assert sum(n.hits.claims for n in by_grade(found)) == sum(n.hits.claims for n in by_name)
    assert sum(n.hits.right for n in by_grade(found)) == sum(n.hits.right for n in by_name)
