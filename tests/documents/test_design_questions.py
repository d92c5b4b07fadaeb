"""Every question of the project design has the author's answer and the readings that bear on it, or says what lacks."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.documents.blocks import Paragraph
from narrate.documents.design_questions import answers, questions_answered, unanswered
from narrate.model.edition import Edition
from narrate.telling.calibrated import overclaimed

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def edition(judged_example: Judged) -> Edition:
    w = judged_example
    return Edition(
        audience="review", project=w.project, packs=w.packs, findings=w.findings, claims=w.claims, narratives={}
    )


def _said(edition: Edition, **report: str) -> Edition:
    project = replace(edition.project, report={**edition.project.report, **report})
    return replace(edition, project=project)


def _texts(edition: Edition) -> list[tuple[str, str]]:
    """Kind and text of each entry, without the lead."""
    return [(b.kind, b.text) for b in questions_answered(edition) if isinstance(b, Paragraph)][1:]


def test_the_questions_of_the_example_are_all_met(edition: Edition):
    """Five questions of project.yaml: crops, gathering, handling and wood have readings; why it was left has none."""
    crops, gathered, handled, wood, left = [b.text for b in questions_answered(edition)][1:]  # type: ignore[union-attr]

    assert "a spread of maize between the phases (supported: the whole dig)" in crops
    assert "the use of nuts as food (supported: the whole dig)" in gathered
    assert "the burning of stored food where it was kept (supported: C05, C17)" in handled
    assert "as food" not in handled and "whole ears" in handled
    assert "a spread of pine between the phases (supported: the whole dig)" in wood
    assert left == (
        "“Why was the hamlet left and lived in again?” The plants do not answer this. They record what was burned while "
        "people were there. No reading of the remains bears on it."
    )


def test_hints_answer_no_question(edition: Edition):
    """The texts tell tobacco and old fields as hints of their phases: pooled over phases they are no reading either."""
    _, gathered, handled, *_ = [b.text for b in questions_answered(edition)][1:]  # type: ignore[union-attr]

    assert "old fields, edges and clearings (suggested: C06, C14, C16, C22)" in gathered
    assert "tobacco" not in handled


def test_what_one_phase_bears_out_is_told_of_that_phase(edition: Edition):
    """Maize as food is read of the Late hamlet alone, so that it is no reading of the whole dig."""
    crops = [b.text for b in questions_answered(edition)][1]  # type: ignore[union-attr]

    assert "the use of maize as food (supported: Late hamlet)" in crops
    assert "the use of native seed crops as food (supported: Early hamlet)" in crops


def test_a_question_that_nobody_answered_is_marked_as_to_be_written(edition: Edition):
    """No answer is made up from readings; the mark stands in the section and the item is missing in the checklist."""
    open_one = _said(edition, aims="Who were the people?", answers="")

    assert _texts(open_one) == [
        ("missing", "To be written: the answer to “Who were the people?” No reading of the remains bears on it.")
    ]
    assert unanswered(open_one).startswith("1 of 1 questions of report: aims not answered; write report: answers")
    assert unanswered(edition) == ""


def test_an_answer_is_found_by_its_question(edition: Edition):
    """Whatever its capitals, over line ends, and with a question within the answer."""
    answers = "- who WERE\n  the people? Is that asked of plants? They do not say.\n"
    answered = _said(edition, aims="We asked: who were the people?", answers=answers)

    assert _texts(answered) == [
        (
            "item",
            "“Who were the people?” Is that asked of plants? They do not say. No reading of the remains bears on it.",
        )
    ]


def test_an_answer_to_nothing_that_was_asked_is_kept_and_told(edition: Edition):
    """A question that is misspelt, answered twice or left without a word is no answered one; no word is dropped."""
    answers = "A remark.\n- Who were the peple? Farmers.\n- What grew?\n"
    wrong = _said(edition, aims="Who were the people? What grew?", answers=answers)

    assert [kind for kind, _ in _texts(wrong)] == ["missing", "missing", "item", "item"]
    assert [text for kind, text in _texts(wrong) if kind == "item"] == ["A remark.", "Who were the peple? Farmers."]
    assert unanswered(wrong).startswith("2 of 2 questions of report: aims not answered")
    assert "'A remark.…'; 'Who were the peple? Farmers.…', which begins with no question" in unanswered(wrong)


def test_the_answers_of_the_example_claim_no_more_than_its_readings(edition: Edition):
    """Two or three sentences each, with no word that the firmest grade of a reading of the dig would not bear."""
    given, others = answers(edition)
    language = edition.packs.languages["en"]
    grades = ("supports",)

    assert len(given) == 5 and others == ()
    assert [found.says for text in given.values() for found in overclaimed(text, language, grades)] == []
    assert all(2 <= len(re.findall(r"[.](?: |$)", text)) <= 2 for text in given.values())


def test_aims_without_a_question_are_not_answered(edition: Edition):
    """Then the section has no list of them, and the checklist asks for none."""
    none = _said(edition, aims="To study the plants.", answers="")

    assert list(questions_answered(none)) == []
    assert unanswered(none) == ""
