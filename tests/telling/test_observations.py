"""Notes of the field and laboratory: found as they were written, told beside what they bear on, never weighed."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.signs import found_in
from narrate.model.signs import pattern as _pattern
from narrate.telling.observations import _quoted
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

QUOTED = re.compile(r"“([^”]+)”")


@pytest.fixture(scope="module")
def report(told_of_example: ToldOnce) -> dict[Subject, Narrative]:
    return told_of_example["report"]


def _context(id: str) -> Subject:
    return Subject(level="context", id=id)


def _noted(narrative: Narrative) -> list[str]:
    of_work = ("asks for work", "no result of that is on record")
    texts = [s.text for s in narrative.sentences() if "“" in s.text and not any(words in s.text for words in of_work)]
    return [text for text in texts if re.search(r"record\b|laborator|note on", text)]


def test_reddened_ground_is_told_with_burning_in_place(report: dict[Subject, Narrative]):
    """C01: the excavator's words and where they stand, right after the reading that they agree with."""
    texts = [s.text for s in report[_context("C01")].sentences()]
    (place,) = (i for i, text in enumerate(texts) if "reddened" in text)

    assert "the excavation record" in texts[place].lower()
    assert "“a clay-lined bowl, reddened all round, with white ash over dark, greasy ash”" in texts[place]
    assert "burning in place" in texts[place - 1]


def test_thin_coats_are_told_with_their_sample_and_source(report: dict[Subject, Narrative]):
    """C05: what the laboratory noted of the goosefoot of S012, and who says what it means."""
    said = next(text for text in _noted(report[_context("C05")]) if "thin smooth coats" in text)

    assert "S012" in said and "see Smith 1985" in said


def test_a_cut_at_the_top_explains_no_seeds_below_it(report: dict[Subject, Narrative]):
    """C16: its top is cut by the plough, and the uncharred elderberry lay in S039, the bottom of the midden."""
    told = [s.text for s in report[_context("C16")].sentences() if "plough" in s.text]

    assert told and all("agrees with" not in text and "uncharred" not in text for text in told)


def test_every_quotation_is_in_the_records(report: dict[Subject, Narrative], judged_example: Judged):
    """Words within quotation marks stand in a description or note, letter for letter but for a first small letter."""
    project = judged_example.project
    texts = [c.description for c in project.contexts] + [s.note for s in project.samples]
    texts += [text for row in project.counts for text in (row.note, row.identification.written)]
    written = " ".join(" ".join(text.split()) for text in texts).lower()
    quotes = [q for n in report.values() for text in _noted(n) for q in QUOTED.findall(text)]

    assert len(quotes) > 15
    for quote in quotes:
        for part in quote.replace("\\", "").split("…"):
            assert part.strip().lower() in written, quote


def test_a_note_changes_no_grade(told_of_example: ToldOnce, judged_example: Judged):
    """Without any note the readings are the same; only the sentences that tell notes are gone."""
    whole = judged_example
    mute = replace(whole.packs, observations=())
    told = narratives(whole.project, mute, whole.findings, whole.claims, "report")
    with_notes = told_of_example["report"]

    assert not any(_noted(narrative) for narrative in told.values())
    assert {s: n.summary for s, n in told.items()} == {s: n.summary for s, n in with_notes.items()}


@pytest.mark.parametrize(
    ("phrase", "sentence"),
    [
        ("redden*", "No reddening of the walls"),
        ("redden*", "The base was not visibly reddened"),
        ("in tips", "The fill did not come in tips, never in tips"),
    ],
)
def test_what_is_denied_is_no_sign(phrase: str, sentence: str):
    """'No reddening' is no reddened ground."""
    assert found_in(_pattern([phrase]), sentence) is None


def test_a_denial_may_be_a_sign_itself():
    """'No reddening' is told of a fire that smouldered."""
    assert found_in(_pattern(["no reddening"]), "No reddening of the walls") is not None


def test_a_denial_in_another_clause_denies_nothing():
    """'No ash, but scorched walls' is a scorched wall."""
    assert found_in(_pattern(["scorch*"]), "No ash was left, but the walls were scorched") is not None


def test_a_long_note_is_cut_at_its_own_marks():
    """Of a long sentence the clause with the sign is quoted, and marks say that something was left out."""
    sentence = (
        "The pit was dug in the first season when the ground was hard and dry and nobody could see an edge, its walls "
        "were scorched on the north side, and after that the whole of it was filled up with clean yellow sand that had "
        "been dug from the bank below the house"
    )
    match = found_in(_pattern(["scorch*"]), sentence)
    assert match is not None

    assert _quoted(sentence, match) == "… its walls were scorched on the north side …"


def test_markup_in_a_note_is_not_quoted(judged_example: Judged):
    """A note that holds angle brackets or quotation marks is passed over."""
    whole = judged_example
    nasty = tuple(replace(c, description="<b>reddened</b> “all round”") for c in whole.project.contexts)
    told = narratives(replace(whole.project, contexts=nasty), whole.packs, whole.findings, whole.claims, "report")

    assert not any("<b>" in n.text or "reddened all round" in n.text or "“all round" in n.text for n in told.values())


def test_observations_name_what_exists(judged_example: Judged):
    """Statements that an observation bears on are in the packs; each bears on one, or is told with the finds."""
    packs = judged_example.packs
    for seen in packs.observations:
        assert {*seen.agrees_with, *seen.against} <= set(packs.statements), seen.id
        assert seen.agrees_with or seen.against or seen.told_with == "finds", seen.id
        assert seen.phrases and (seen.plain or seen.told_with == "finds"), seen.id
