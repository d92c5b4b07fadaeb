"""The same remains, looked at by two rules, are weighed once."""

from __future__ import annotations

import pytest

from narrate.judging.check_rules import check_rules
from narrate.judging.judge import judge
from narrate.model.claims import Claim
from narrate.model.ids import Subject
from narrate.model.rules import Rule
from narrate.problems import written
from tests.judging.rules import COBS, CUPULE, a_rule, bound, packs_with
from tests.measures.digs import a_dig


def many(id: str, weight: str, at_least: int = 10, **keys: str) -> Rule:
    criteria = bound("items", CUPULE, at_least=at_least)
    return a_rule(id, criteria, needs=(), says="", says_plain="", weight=weight, **keys)


def judged(*rules: Rule) -> Claim:
    project = a_dig([[("Zea mays", "cupule", 40)]])
    claim = judge(project, packs_with(*rules), replicates=0).find(Subject(level="sample", id="S1"), COBS)
    assert claim is not None
    return claim


# Support is worked out by hand: 1 / (1 + exp(−(−0.9 + sum of weights))), weak 1.0, moderate 1.8, strong 2.6.
@pytest.mark.parametrize(
    ("rules", "expected"),
    [
        ((many("fuel.a", "weak"), many("fuel.b", "moderate")), 0.8699),
        ((many("fuel.a", "weak", evidence="cobs"), many("fuel.b", "moderate", evidence="cobs")), 0.7109),
        ((many("fuel.a", "weak", evidence="cobs"), many("fuel.b", "moderate", evidence="other")), 0.8699),
        ((many("fuel.a", "weak", evidence="cobs"), many("fuel.b", "moderate", 99, evidence="cobs")), 0.525),
        (
            (
                many("fuel.a", "moderate", evidence="cobs"),
                many("fuel.b", "weak", evidence="cobs", direction="against"),
            ),
            0.475,
        ),
    ],
)
def test_of_arguments_on_the_same_evidence_the_heaviest_that_holds_is_added(
    rules: tuple[Rule, ...], expected: float
) -> None:
    """Those of another key, of the other side, or that do not hold, change nothing of it."""
    assert judged(*rules).support == expected


def test_an_argument_that_is_not_added_names_the_one_that_is() -> None:
    """The reader of a claim sees which argument stands in for it."""
    claim = judged(many("fuel.a", "weak", evidence="cobs"), many("fuel.b", "moderate", evidence="cobs"))

    assert {a.rule: a.counted_with for a in claim.arguments} == {"fuel.a": "fuel.b", "fuel.b": None}


def test_a_key_that_nobody_shares_is_told() -> None:
    """A slip in the key would count the same remains twice, so a key of one rule is a problem with its mend."""
    packs = packs_with(
        many("fuel.a", "weak", evidence="cobs"),
        many("fuel.b", "weak", evidence="cobs"),
        many("fuel.c", "weak", evidence="cob"),
    )

    assert [written(problem) for problem in check_rules(packs)] == [
        "packs/rules/fuel/test.yaml:1: error N502: rule 'fuel.c': evidence 'cob' is the key of no other rule for "
        "'fuel.maize-cob', expected a key that two rules share\n      help: write 'cobs'"
    ]
