"""Narratives that were told before stand while everything that they ask of the dig is as it was."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.judging.judge import judge
from narrate.judging.kept_units import KeptUnits
from narrate.measures.findings import find
from narrate.model.ids import Subject
from narrate.telling import tell
from narrate.telling.kept_words import KeptWords
from narrate.telling.tell import narratives

AUDIENCES = ("review", "report", "public", "label")


@pytest.fixture(scope="module")
def edited(judged_example):
    """Project, findings and claims of the example with one count doubled."""
    project, packs = judged_example.project, judged_example.packs
    row = next(row for row in project.counts if row.count.written == "12")
    other = replace(row, count=replace(row.count, written="24", number=24))
    project = replace(project, counts=tuple(other if one is row else one for one in project.counts))
    return project, find(project, packs), judge(project, packs), row


def told_of_example(judged_example, audience, known=None):
    it = judged_example
    return narratives(it.project, it.packs, it.findings, it.claims, audience, known=known)


@pytest.mark.parametrize("audience", AUDIENCES)
def test_words_after_an_edit_are_those_of_telling_anew(judged_example, edited, audience):
    """With what was kept before the edit every narrative is, word for word and reference for reference, that of a
    fresh telling."""
    project, findings, claims, _ = edited
    kept = KeptUnits()
    told_of_example(judged_example, audience, KeptWords(kept, "ground"))
    known = KeptWords(KeptUnits(kept.now), "ground")

    after = narratives(project, judged_example.packs, findings, claims, audience, known=known)

    assert after == narratives(project, judged_example.packs, findings, claims, audience)


@pytest.fixture
def told(monkeypatch):
    """Subjects of samples and contexts that are told, and not taken from what was kept."""
    subjects: list[Subject] = []
    own = tell._tell

    def noted(dig, subject, sections):
        if subject.level in ("sample", "context"):
            subjects.append(subject)
        return own(dig, subject, sections)

    monkeypatch.setattr(tell, "_tell", noted)
    return subjects


def test_only_what_an_edit_reaches_is_told_again(judged_example, edited, told):
    """Another count is told of its sample and of few contexts, which are set beside its own."""
    project, findings, claims, row = edited
    kept = KeptUnits()
    told_of_example(judged_example, "public", KeptWords(kept, "ground"))
    told.clear()

    narratives(
        project, judged_example.packs, findings, claims, "public", known=KeptWords(KeptUnits(kept.now), "ground")
    )

    assert [subject.id for subject in told if subject.level == "sample"] == [row.sample]
    assert 0 < len([subject for subject in told if subject.level == "context"]) < len(project.contexts) / 2


def test_words_told_on_another_ground_are_not_taken(judged_example, told):
    """What another program, or other packs, told is told again."""
    kept = KeptUnits()
    told_of_example(judged_example, "label", KeptWords(kept, "one program"))
    before = len(told)

    told_of_example(judged_example, "label", KeptWords(KeptUnits(kept.now), "another"))

    assert len(told) == 2 * before


def test_words_are_kept_for_who_was_told(judged_example, told):
    """The same dig told once more to the same audience is not told at all."""
    kept = KeptUnits()
    first = told_of_example(judged_example, "report", KeptWords(kept, "ground"))
    told.clear()

    again = told_of_example(judged_example, "report", KeptWords(KeptUnits(kept.now), "ground"))

    assert again == first
    assert told == []
