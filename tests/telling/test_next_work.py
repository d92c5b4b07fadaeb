"""What to do next: one list behind the review, the report and its limits."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.documents.account import limits
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.model.work_left import ASKS, left_undone, paying
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = dict[str, dict[Subject, Narrative]]


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Told:
    return {a: dict(told_of_example[a]) for a in ("review", "report")}


@pytest.fixture(scope="module")
def limits_told(judged_example: Judged, told: Told) -> str:
    w = judged_example
    edition = Edition(
        audience="review", project=w.project, packs=w.packs, findings=w.findings, claims=w.claims,
        narratives={("report", subject): one for subject, one in told["report"].items()},
    )  # fmt: skip
    return "\n".join(block.text for block in limits(edition))  # type: ignore[union-attr]


def _context(id: str) -> Subject:
    return Subject(level="context", id=id)


@pytest.mark.parametrize(
    ("note", "asks"),
    [
        ("float the reserve before using this one for densities", True),
        ("Two bags still to be sorted", True),
        ("needs to be weighed", True),
        ("Half of the packing; the other half is stored", False),
        ("Floated clean", False),
        ("Took two days to sort", False),
    ],
)
def test_a_note_that_asks_for_work_is_known(note: str, asks: bool):
    """As people write it down; that something was done, or is kept, asks for nothing."""
    assert bool(ASKS.search(note)) is asks


def test_what_a_record_asks_for_stands_in_every_list(told: Told, limits_told: str):
    """S037 of C16 (records/samples-late.yaml) asks that its reserve be floated."""
    asked = "“float the reserve before using this one for densities”"

    assert asked in told["review"][_context("C16")].text
    assert asked in told["review"][Subject(level="site", id=SITE)].text
    assert asked in told["report"][Subject(level="site", id=SITE)].text
    assert asked in limits_told


def test_unsorted_heavy_fractions_stand_in_every_list(told: Told, limits_told: str):
    """S023 and S036 are recorded as not sorted."""
    assert "heavy fractions of S023 and S036" in told["report"][Subject(level="site", id=SITE)].text
    assert "heavy fractions of S023 and S036" in told["review"][Subject(level="site", id=SITE)].text
    assert "heavy fractions of S023 and S036" in limits_told
    assert "heavy fraction of S023" in told["review"][_context("C10")].text


def test_finds_of_doubtful_age_are_offered_a_date_in_every_list(told: Told, limits_told: str):
    """The first maize: only a date of its own says when it came; the sealed, weighed, largest piece is offered."""
    texts = (told["report"][Subject(level="site", id=SITE)].text, limits_told)
    for text in (*texts, told["review"][Subject(level="site", id=SITE)].text):
        assert re.search(r"(?i)date one maize kernel of C04 \(S\d+\) by itself \(AMS\)", text)
        assert "bread wheat grain of C20 by itself" not in text  # coal and wire lie beside it


def test_what_is_weighed_is_all_that_is_spoken_of(told: Told):
    """Where no work is asked for, that is said of the work that is weighed here and not of all work."""
    texts = [n.text for n in told["review"].values()]

    assert not [text for text in texts if "no work is known" in text]
    assert [text for text in texts if "none of the work that is weighed here would change a reading" in text]


def test_one_sample_is_no_warrant_of_its_shares(told: Told):
    """C05 gave 566 seeds in one sample, some of them in lumps: nobody says that its shares are sure to five points."""
    assert "enough for shares" not in told["review"][_context("C05")].text
    assert "enough for shares" in told["review"][_context("C03")].text


def test_nothing_is_asked_in_the_limits_that_the_review_does_not_know(
    told: Told, limits_told: str, judged_example: Judged
):
    """Where the review of a context says that nothing more is asked of it, no other list asks for work on it."""
    quiet = [s for s, n in told["review"].items() if s.level == "context" and "nothing more is asked" in n.text.lower()]

    assert quiet
    for subject in quiet:
        assert not [step for step in paying(judged_example.claims, subject) if step.lifts or step.turns]
        assert left_undone(judged_example.project, subject) == ()
        assert f"of {subject.id}" not in limits_told.split("Work that would do most")[1].split("fit for")[0]


def test_what_is_too_slight_for_the_report_is_so_for_the_review(told: Told):
    """C15: two seeds of tobacco, whose handling 64% of the draws uphold, are a hint to either reader."""
    for audience in ("report", "review"):
        sentences = [s.text for s in told[audience][_context("C15")].sentences() if "handling of tobacco" in s.text]

        assert any("no more than a hint" in text for text in sentences)
        assert not any(text.startswith("They suggest") or "remains suggest" in text for text in sentences)


def test_nothing_left_undone_is_nothing_told(judged_example: Judged):
    """Samples all sorted, without a note, leave no work behind."""
    done = tuple(replace(s, note="", size_classes=(), heavy_fraction=None) for s in judged_example.project.samples)

    assert left_undone(replace(judged_example.project, samples=done), Subject(level="site", id=SITE)) == ()


def test_deposits_too_poor_to_be_read_hold_no_reading_down(limits_told: str):
    """C09, C18 and C19 carry no reading, so that none of theirs is among those that few items hold down."""
    assert "fewer than 10 items besides wood" not in limits_told
    assert "what speaks for it most rests on fewer than 10 items" in limits_told


def test_no_record_is_asked_for_where_nothing_would_be_read(told: Told, limits_told: str):
    """C19 holds eight items: however its deposit formed, they are too few to be read on their own."""
    assert "C19" not in limits_told
    assert "could then be told" not in told["review"][_context("C19")].text


def test_no_review_says_that_all_was_sorted_where_the_record_is_silent(told: Told):
    """C09 has one sample, S021, without size classes; C08 has classes down to 0.5 mm, of a finer mesh."""
    assert "how far S021 was sorted is not on record" in told["review"][_context("C09")].text
    assert "all that was floated is sorted" not in "".join(n.text for n in told["review"].values())


def test_more_soil_is_not_asked_for(told: Told):
    """No record says that any is left in the ground."""
    assert "more soil" not in "".join(n.text for n in told["review"].values())
    assert "cannot be settled from what was floated of C07" in told["review"][_context("C07")].text


def test_few_items_are_told_with_the_reading_that_they_hold_down(told: Told):
    """Of C03, C14 and C16 a few fruits hold the season down: told behind the season, and not with the deposit."""
    for id in ("C03", "C14", "C16"):
        texts = [s.text for s in told["report"][_context(id)].sentences()]
        at = next(i for i, text in enumerate(texts) if "rests chiefly on" in text)

        assert "autumn" in " ".join(texts[at - 4 : at])


def test_a_hint_of_the_dig_names_the_context_that_bears_it_out(told: Told):
    """Fruit as food: 69% of the draws of the whole dig uphold it, and C06 supports it by itself."""
    assert "the use of fruit as food (69% for the dig as a whole; C06 by itself bears it out)" in (
        told["report"][Subject(level="site", id="site")].text
    )


def test_three_readings_that_work_would_let_be_told_are_named(told: Told):
    """C12: more of S026 would let three be told, and the review says which."""
    assert "three readings could then be told" not in told["review"][_context("C12")].text
    assert "the arrival of field weeds with the harvest, " in told["review"][_context("C12")].text
