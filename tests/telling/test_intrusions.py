"""Roots, worms and burrows are told by what was seen, and doubts about a deposit in the words of the four grades."""

from __future__ import annotations

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.pipeline.judged import Judged
from narrate.telling.tell import narratives


@pytest.fixture(scope="module")
def report(judged_example: Judged) -> dict[Subject, Narrative]:
    w = judged_example
    return dict(narratives(w.project, w.packs, w.findings, w.claims, "report", ("context",)))


@pytest.mark.parametrize(
    ("context", "seen"),
    [
        ("C20", "many modern rootlets and worm casts, and some insects and rodent signs, were noted"),
        ("C21", "many modern rootlets, and some insects and worm casts, were noted"),
    ],
)
def test_intrusions_are_named_with_how_much_was_seen(report: dict[Subject, Narrative], context: str, seen: str):
    """S047 and S048 of C20 and S049 of C21, as their records have it; a few of a kind are not told."""
    assert seen in report[Subject(level="context", id=context)].text


def test_doubts_about_a_deposit_are_told_by_the_four_grades(report: dict[Subject, Narrative]):
    """One scale for all that is read: no 'good' and 'strong reason' beside it (house rule of wording)."""
    assert "What is on record strongly supports the view that the deposit was disturbed" in (
        report[Subject(level="context", id="C20")].text
    )
    assert not [s.id for s, n in report.items() if "reason to hold" in n.text]
