"""The sum of a claim stands while the claim does, and moves with whatever it says."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from narrate.judging.judge import judge


@pytest.fixture(scope="module")
def before_and_after(judged_example):
    """Claims of the example project, and of the same with one count doubled and the security of a context unknown."""
    project = judged_example.project
    row = next(row for row in project.counts if row.count.written == "12")
    other = replace(row, count=replace(row.count, written="24", number=24))
    context = next(c for c in project.contexts if c.security == "sealed")
    changed = replace(
        project,
        counts=tuple(other if one is row else one for one in project.counts),
        contexts=tuple(replace(one, security="unknown") if one is context else one for one in project.contexts),
    )
    return judged_example.claims, judge(changed, judged_example.packs)


def test_rules_are_tallied_as_their_arguments_came_out(judged_example):
    """How often each rule holds, fails or cannot tell at each level is what counting all arguments gives."""
    claims = judged_example.claims

    def said(tallied):
        return {
            (rule, level, verdict): n
            for rule, levels in tallied.items()
            for level, verdicts in levels.items()
            for verdict, n in verdicts.items()
            if n
        }

    assert said(claims.tallied()) == Counter((one.rule, one.about.level, one.verdict) for one in claims.came_out())
    assert claims.many_holding() == sum(1 for _ in claims.all_holding())


def test_a_claim_that_changed_has_another_sum(before_and_after):
    """No claim that says something else keeps its sum."""
    before, after = before_and_after
    changed = [id for id, claim in after.by_id.items() if _said(claim) != _said(before.by_id[id])]

    assert len(changed) > 20
    assert [id for id in changed if _sum(before, id) == _sum(after, id)] == []


def test_a_claim_that_stays_keeps_its_sum(before_and_after):
    """Most claims of a dig are not touched by one edit, and their sums stand."""
    before, after = before_and_after
    same = [id for id, claim in after.by_id.items() if _said(claim) == _said(before.by_id[id])]

    assert len(same) > len(after.by_id) / 2
    assert sum(_sum(before, id) != _sum(after, id) for id in same) <= len(same) / 50


def test_the_sum_of_a_subject_moves_with_each_of_its_claims(before_and_after):
    """All claims about a subject have one sum together, which stands while all of theirs do."""
    before, after = before_and_after
    for subject in after.by_subject:
        is_same = all(_sum(before, claim.id) == _sum(after, claim.id) for claim in after.about(subject))
        assert (before.sums.about(subject) == after.sums.about(subject)) == is_same, subject


def _sum(claims, id):
    claim = claims.by_id[id]
    return claims.sums.of(claim.about, claim.statement)


def _said(claim):
    """What the claim says but the shares of draws in which single arguments stay, which no page shows, and places."""
    step = claim.next_step
    arguments = [
        replace(one, share_holding=None, evidence=tuple(replace(e, places=()) for e in one.evidence))
        for one in claim.arguments
    ]
    told = step and (step.id, step.cost, step.says)
    return repr(replace(claim, arguments=tuple(arguments), next_step=None)), told
