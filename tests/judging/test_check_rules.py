"""Unsound rules are problems with a place and a way to mend them; sound ones are tried on their own examples."""

from __future__ import annotations

import pytest

from narrate.judging.check_rules import check_rules
from narrate.model.ids import PartId, StatementId
from narrate.model.rules import Rule, Selector
from narrate.problems import written
from tests.judging.rules import CUPULE, KERNEL, a_rule, a_statement, an_example, bound, fact, group, packs_with


def told(rule: Rule) -> list[str]:
    return [written(problem) for problem in check_rules(packs_with(rule))]


AT = "packs/rules/fuel/test.yaml:1: error"


@pytest.mark.parametrize(
    ("rule", "expected"),
    [
        (
            a_rule(criteria=bound("ratoi", KERNEL, CUPULE, at_most=1, name="kpc")),
            f"{AT} N502: rule 'fuel.test': measure 'ratoi' is not known; did you mean 'ratio'?\n"
            "      help: write 'ratio'",
        ),
        (
            a_rule(statement=StatementId("fuel.maize-cobs")),
            f"{AT} N502: rule 'fuel.test': statement 'fuel.maize-cobs' is not known; did you mean 'fuel.maize-cob'?\n"
            "      help: write 'fuel.maize-cob'",
        ),
        (
            a_rule(criteria=bound("ratio", Selector(taxon=("Zea mais",)), CUPULE, at_most=1, name="kpc")),
            f"{AT} N502: rule 'fuel.test': taxon 'Zea mais' is not known; did you mean 'Zea mays'?\n"
            "      help: write 'Zea mays'",
        ),
        (
            a_rule(criteria=bound("ratio", Selector(part=(PartId("cupul"),)), CUPULE, at_most=1, name="kpc")),
            f"{AT} N502: rule 'fuel.test': part 'cupul' is not known; did you mean 'cupule'?\n"
            "      help: write 'cupule'",
        ),
        (
            a_rule(criteria=group("all", bound("ratio", KERNEL, CUPULE, at_most=1, name="kpc"), fact("deposits", "x"))),
            f"{AT} N502: rule 'fuel.test': fact 'deposits' is not known; did you mean 'deposit'?\n"
            "      help: write 'deposit'",
        ),
        (
            a_rule(criteria=bound("ratio", Selector(context_trait=("termal",)), CUPULE, at_most=1, name="kpc")),
            f"{AT} N502: rule 'fuel.test': context_trait 'termal' is not known; did you mean 'thermal'?\n"
            "      help: write 'thermal'",
        ),
        (
            a_rule(says="many ({kcp})"),
            f"{AT} N502: rule 'fuel.test': quoted value 'kcp' is not known; did you mean 'kpc'?\n"
            "      help: write 'kpc'",
        ),
        (
            a_rule(criteria=bound("ratio", KERNEL, at_most=1, name="kpc")),
            f"{AT} N501: rule 'fuel.test': measure 'ratio' has no 'to', expected a selector\n"
            "      help: add to: {…} with the taxa or parts that are meant",
        ),
        (
            a_rule(criteria=bound("ubiquity_change", KERNEL, at_least=0, name="kpc")),
            f"{AT} N501: rule 'fuel.test': measure 'ubiquity_change' is for site; the rule is about sample, context\n"
            "      help: change 'about' or use another measure",
        ),
        (
            a_rule(criteria=bound("ratio", KERNEL, CUPULE, at_least=2, at_most=1, name="kpc")),
            f"{AT} N505: rule 'fuel.test': the same measure must be at least 2 and at most 1, "
            "expected bounds that something can meet\n"
            "      help: change one of the bounds, or put the two under 'any'",
        ),
        (
            a_rule(
                criteria=group(
                    "all",
                    bound("ratio", KERNEL, CUPULE, at_least=2, name="kpc"),
                    bound("ratio", KERNEL, CUPULE, at_most=1),
                )
            ),
            f"{AT} N505: rule 'fuel.test': the same measure must be at least 2 and at most 1, "
            "expected bounds that something can meet\n"
            "      help: change one of the bounds, or put the two under 'any'",
        ),
        (
            a_rule(examples=(an_example("fails", ("Zea mays", "cupule", 60)),)),
            f"{AT} N503: rule 'fuel.test', example 'test': the rule says 'holds', expected 'fails'\n"
            "      help: mend the criteria, or the example if it is wrong",
        ),
        (
            a_rule(examples=(an_example("holds", ("Zea mais", "cupule", 60)),)),
            f"{AT} N502: rule 'fuel.test', example 'test': taxon 'zea mais' is not known; did you mean 'zea mays'?\n"
            "      help: write 'zea mays'",
        ),
    ],
)
def test_an_unsound_rule_is_told_with_its_mend(rule: Rule, expected: str) -> None:
    """Each fault of a rule is one problem that names the rule, what was read and how to mend it."""
    assert told(rule) == [expected]


def test_a_sound_rule_is_silent() -> None:
    """A rule that names what exists and meets its own examples gives no problem."""
    rule = a_rule(
        examples=(
            an_example("holds", ("Zea mays", "cupule", 60)),
            an_example("fails", ("Zea mays", "kernel", 60)),
            an_example("cannot tell", ("Zea mays", "cupule", 6)),
        )
    )

    assert told(rule) == []


def test_an_unknown_rival_is_told() -> None:
    """A statement that names a rival nobody defined is a problem of the statement."""
    packs = packs_with(statements=(a_statement("food.x", rivals=(StatementId("food.y"),)),))

    assert [problem.message for problem in check_rules(packs)] == [
        "statement 'food.x': rival 'food.y' is not known; did you mean 'food.x'?"
    ]


def test_unknown_work_before_is_told() -> None:
    """So is one that comes after work which nobody defined."""
    packs = packs_with(statements=(a_statement("food.x", after=(StatementId("food.y"),)),))

    assert [problem.message for problem in check_rules(packs)] == [
        "statement 'food.x': after 'food.y' is not known; did you mean 'food.x'?"
    ]


def test_only_local_rules_are_checked_when_asked() -> None:
    """Rules that come with narrate are tested with it; a project's own are checked on every run."""
    broken = a_rule("fuel.a", bound("nothing", KERNEL, at_least=1), says="", says_plain="")
    local = a_rule("fuel.b", bound("nothing", KERNEL, at_least=1), says="", says_plain="", is_local=True)

    assert len(check_rules(packs_with(broken, local))) == 2
    assert len(check_rules(packs_with(broken, local), only_local=True)) == 1


def test_an_example_is_tried_at_every_level_that_it_can_be() -> None:
    """Two samples are no sample, but a context and a dig: on both the rule says the same, which is told once."""
    rule = a_rule(
        criteria=bound("samples", at_most=1),
        about=("site", "sample", "context"),
        needs=(),
        says="",
        says_plain="",
        examples=(an_example("holds", ("Zea mays", "cupule", 60), samples=2),),
    )

    assert told(rule) == [
        f"{AT} N503: rule 'fuel.test', example 'test': the rule says 'fails', expected 'holds'\n"
        "      help: mend the criteria, or the example if it is wrong"
    ]
