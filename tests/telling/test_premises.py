"""What rests on the project's own judgement alone says so, with its step and all that may mislead."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.pipeline.judged import Judged
from narrate.telling.tell import narratives

LATE = Subject(level="phase", id="late")


@pytest.fixture(scope="module")
def report(told_of_example: Mapping[str, Mapping[Subject, Narrative]]) -> str:
    return told_of_example["report"][LATE].text


def test_the_step_from_pine_to_young_woodland_is_told(report: str):
    """The rule of the example cites its analyst alone: her step stands behind the reading, and that no work backs it."""
    told = report.partition("the cutting of firewood in young woodland")[2]

    assert "rests on the judgement of the analyst of this project, which no work backs: pine is among the first" in told


def test_every_caution_of_the_rule_is_told(report: str):
    """Kindling and posts, fire and dry ridges."""
    assert "pine may have been picked for kindling or for posts, whatever grew nearby; that pine also" in report
    assert "and grows on dry ridges of its own accord" in report


def test_the_other_woods_of_old_fields_are_counted(report: str, judged_example: Judged):
    """Cedar, sweetgum, locust, sassafras and persimmon, counted from the sheets without houses and disturbed soil."""
    project = judged_example.project
    kept = {
        c.id for c in project.contexts
        if c.phase == "late" and c.security != "disturbed" and c.deposit != "unknown"
        and "structure" not in judged_example.packs.words.context_kinds[c.kind].traits
    }  # fmt: skip
    samples = {s.id for s in project.samples if s.context in kept}
    wood = [r for r in project.counts if r.sample in samples and r.part == "wood" and r.count.number]
    woods = ("Juniperus", "Liquidambar", "Robinia", "Sassafras", "Diospyros")
    of = sum(r.count.number or 0 for r in wood if (r.identification.taxon or "").split(" ")[0] in woods)

    assert f"made up {of} of {sum(r.count.number or 0 for r in wood)} pieces of wood from fires and refuse" in report


def test_visitors_are_told_that_it_is_a_judgement(told_of_example: Mapping[str, Mapping[Subject, Narrative]]):
    """In plain words, right behind the reading."""
    told = told_of_example["public"][LATE].text.partition("young woods that had grown up on cleared land")[2]

    assert ". To read it so is our own view, and no book backs it." in told[:200]


def test_a_rule_that_rests_on_a_work_has_no_such_sentence(judged_example: Judged):
    """With a work among its sources the reader can look the step up."""
    w = judged_example
    rules = {
        id: replace(rule, sources=(*rule.sources, "popper-1988")) if rule.is_local else rule
        for id, rule in w.packs.rules.items()
    }
    told = narratives(w.project, replace(w.packs, rules=rules), w.findings, w.claims, "report", ("phase",))

    assert "which no work backs" not in told[LATE].text
