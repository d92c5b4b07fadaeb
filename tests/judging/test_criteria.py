"""Three verdicts on intervals, and how they combine."""

from __future__ import annotations

import pytest

from narrate.judging.check_rules import answers
from narrate.model.rules import Criterion, Selector, Verdict
from tests.judging.rules import CUPULE, KERNEL, a_rule, an_example, bound, fact, group, packs_with

ALWAYS = bound("items", Selector(), at_least=0)
NEVER = bound("items", Selector(), at_most=-1)
OPEN = bound("recovery", at_least=0.5)
"""No recovery test was made, so nobody can tell."""


def verdict(criteria: Criterion, *remains: tuple[str, str, int], **records: object) -> str:
    rule = a_rule(criteria=criteria, needs=(), says="", says_plain="")
    (said,) = set(answers(rule, an_example("holds", *remains, **records), packs_with(rule)).values())
    return said


@pytest.mark.parametrize(
    ("kernels", "cupules", "expected"),
    [
        (6, 60, "holds"),
        (0, 60, "holds"),
        (60, 6, "fails"),
        (60, 0, "fails"),
        (5, 12, "cannot tell"),
        (0, 0, "cannot tell"),
    ],
)
def test_a_bound_is_judged_on_the_interval(kernels: int, cupules: int, expected: Verdict) -> None:
    """At most 0.5 holds if the whole interval lies below, fails if it lies above, else cannot tell."""
    found = verdict(
        bound("ratio", KERNEL, CUPULE, at_most=0.5), ("Zea mays", "kernel", kernels), ("Zea mays", "cupule", cupules)
    )

    assert found == expected


@pytest.mark.parametrize(
    ("kind", "parts", "expected"),
    [
        ("all", (ALWAYS, ALWAYS), "holds"),
        ("all", (ALWAYS, OPEN), "cannot tell"),
        ("all", (NEVER, OPEN), "fails"),
        ("any", (NEVER, NEVER), "fails"),
        ("any", (NEVER, OPEN), "cannot tell"),
        ("any", (ALWAYS, OPEN), "holds"),
        ("none", (NEVER, NEVER), "holds"),
        ("none", (ALWAYS, OPEN), "fails"),
        ("none", (NEVER, OPEN), "cannot tell"),
    ],
)
def test_groups_combine_three_verdicts(kind: str, parts: tuple[Criterion, ...], expected: Verdict) -> None:
    """'all' fails if any fails, else cannot tell if any cannot; 'any' the other way round; 'none' is not any."""
    assert verdict(group(kind, *parts), ("Zea mays", "kernel", 1)) == expected


@pytest.mark.parametrize(
    ("asked", "records", "expected"),
    [
        (fact("deposit", "primary", "de facto"), {"deposit": "primary"}, "holds"),
        (fact("deposit", "primary"), {"deposit": "secondary"}, "fails"),
        (fact("deposit", "primary"), {"deposit": "unknown"}, "cannot tell"),
        (fact("deposit", is_not=("tertiary",)), {"deposit": "secondary"}, "holds"),
        (fact("trait", "thermal"), {"context_kind": "hearth"}, "holds"),
        (fact("trait", "thermal"), {"context_kind": "pit"}, "fails"),
        (fact("context_kind", "hearth"), {"context_kind": "hearth"}, "holds"),
        (fact("heavy_fraction", "sorted"), {"heavy_fraction": "unknown"}, "cannot tell"),
        (fact("heavy_fraction", "sorted"), {"heavy_fraction": "not sorted"}, "fails"),
        (fact("preservation", "charred"), {"preservation": "waterlogged"}, "fails"),
    ],
)
def test_facts_are_what_the_records_say(asked: Criterion, records: dict[str, object], expected: Verdict) -> None:
    """What is not recorded cannot be told; what is recorded holds or fails."""
    assert verdict(asked, ("Zea mays", "kernel", 1), **records) == expected


def test_needs_that_are_not_met_never_fail() -> None:
    """Nine items where ten are needed: cannot tell, although the ratio alone would hold."""
    rule = a_rule()

    nine = answers(rule, an_example("holds", ("Zea mays", "cupule", 9)), packs_with(rule))
    thirty = answers(rule, an_example("holds", ("Zea mays", "cupule", 30)), packs_with(rule))
    assert nine == {"sample": "cannot tell", "context": "cannot tell"}
    assert thirty == {"sample": "holds", "context": "holds"}
