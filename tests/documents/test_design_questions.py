"""Every question of the project design is met by readings, or said to be left open."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.documents.design_questions import questions_answered
from narrate.model.edition import Edition

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def edition(judged_example: Judged) -> Edition:
    w = judged_example
    return Edition(
        audience="review", project=w.project, packs=w.packs, findings=w.findings, claims=w.claims, narratives={}
    )


def _answers(edition: Edition, aims: str) -> list[str]:
    project = replace(edition.project, report={**edition.project.report, "aims": aims})
    return [block.text for block in questions_answered(replace(edition, project=project))][1:]  # type: ignore[union-attr]


def test_the_questions_of_the_example_are_all_met(edition: Edition):
    """Five questions of project.yaml: crops, gathering, handling and wood have readings; why it was left has none."""
    crops, gathered, handled, wood, left = [b.text for b in questions_answered(edition)][1:]  # type: ignore[union-attr]

    assert "a spread of maize between the phases (supported: the whole dig)" in crops
    assert "the use of nuts as food (supported: the whole dig)" in gathered
    assert "the burning of stored food where it was kept (supported: C05, C17)" in handled
    assert "as food" not in handled and "whole ears" in handled
    assert "a spread of pine between the phases (supported: the whole dig)" in wood
    assert left == (
        "“Why was the hamlet left and lived in again?” – left open, for no reading of the remains bears on it."
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


def test_a_question_that_no_plant_can_answer_is_left_open(edition: Edition):
    """No word of it is met by a statement."""
    assert _answers(edition, "Who were the people?") == [
        "“Who were the people?” – left open, for no reading of the remains bears on it."
    ]


def test_aims_without_a_question_are_not_answered(edition: Edition):
    """Then the section has no list of them."""
    project = replace(edition.project, report={**edition.project.report, "aims": "To study the plants."})

    assert list(questions_answered(replace(edition, project=project))) == []
