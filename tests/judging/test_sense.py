"""Rules that can never hold, and rivals that are never set beside each other."""

from __future__ import annotations

import pytest

from narrate.judging.check_rules import check_rules
from narrate.model.ids import StatementId
from narrate.model.rules import Criterion, Statement
from narrate.problems import written
from tests.judging.rules import CUPULE, KERNEL, a_rule, a_statement, bound, fact, group, packs_with

AT = "packs/rules/fuel/test.yaml:1: error"


def told(criteria: Criterion, *needs: Criterion) -> list[str]:
    rule = a_rule(criteria=criteria, needs=needs, says="", says_plain="")
    return [written(problem) for problem in check_rules(packs_with(rule))]


@pytest.mark.parametrize(
    ("criteria", "needs", "expected"),
    [
        (
            bound("share", KERNEL, CUPULE, at_least=30),
            (),
            f"{AT} N505: rule 'fuel.test': measure 'share' must be at least 30, expected something within 0 to 1\n"
            "      help: write 0.3 for 30 %",
        ),
        (
            bound("items", KERNEL, at_most=-1),
            (),
            f"{AT} N505: rule 'fuel.test': measure 'items' must be at most -1, expected something within 0 or more\n"
            "      help: change the bound",
        ),
        (
            bound("items", KERNEL, at_most=5),
            (bound("items", KERNEL, at_least=10),),
            f"{AT} N505: rule 'fuel.test': the same measure must be at least 10 and at most 5, "
            "expected bounds that something can meet\n"
            "      help: change one of the bounds, or put the two under 'any'",
        ),
        (
            group("all", fact("deposit", "primary"), fact("deposit", "tertiary")),
            (),
            f"{AT} N505: rule 'fuel.test': what is asked of fact 'deposit' leaves no value that meets all of it\n"
            "      help: change one of the two, or put them under 'any'",
        ),
        (
            group("all", fact("trait", "thermal"), fact("trait", is_not=("thermal",))),
            (),
            f"{AT} N505: rule 'fuel.test': what is asked of fact 'trait' leaves no value that meets all of it\n"
            "      help: change one of the two, or put them under 'any'",
        ),
        (
            group("all", bound("items", KERNEL, at_least=3), group("none", bound("items", KERNEL, at_least=3))),
            (),
            f"{AT} N505: rule 'fuel.test': a criterion must hold and stands under 'none' as well, "
            "expected one of the two\n"
            "      help: take it out of 'none', or out of the criteria beside it",
        ),
    ],
)
def test_criteria_that_contradict_each_other_are_told(
    criteria: Criterion, needs: tuple[Criterion, ...], expected: str
) -> None:
    """A rule that nothing could ever meet is an error with its place and its mend."""
    assert told(criteria, *needs) == [expected]


@pytest.mark.parametrize(
    "criteria",
    [
        group("all", fact("trait", "thermal"), fact("trait", "cut")),
        group("any", fact("deposit", "primary"), fact("deposit", "tertiary")),
        group("any", bound("items", KERNEL, at_least=9), bound("items", KERNEL, at_most=2)),
        group("all", bound("items", KERNEL, at_least=9), bound("items", CUPULE, at_most=2)),
        group("all", fact("deposit", "primary", "secondary"), fact("deposit", is_not=("secondary",))),
        bound("ubiquity_change", KERNEL, at_most=-0.2),
    ],
)
def test_criteria_that_something_can_meet_are_silent(criteria: Criterion) -> None:
    """Two traits of one kind, alternatives under 'any' and different remains are no contradiction."""
    rule = a_rule(criteria=criteria, needs=(), says="", says_plain="", about=("site",))

    assert [p for p in check_rules(packs_with(rule)) if p.code == "N505"] == []


def rivals(**named: str) -> list[str]:
    """Problems of statements that name each other as rivals: a='b c' lets food.a name food.b and food.c."""
    statements: tuple[Statement, ...] = tuple(
        a_statement(f"food.{id}", rivals=tuple(StatementId(f"food.{rival}") for rival in of.split()))
        for id, of in named.items()
    )
    return [written(problem) for problem in check_rules(packs_with(statements=statements))]


def test_mutual_rivals_are_as_it_should_be() -> None:
    """Two readings of the same remains name each other, and so may three."""
    assert rivals(a="b c", b="a c", c="a b") == []


def test_a_rival_that_does_not_name_back_is_no_fault() -> None:
    """Rivalry holds both ways, whichever of the two names the other."""
    assert rivals(a="b", b="", c="b") == []


def test_a_ring_of_rivals_is_told_once() -> None:
    """Three statements of which each names only the next are never set beside each other from both sides."""
    assert rivals(b="c", a="b", c="a d", d="") == [
        f"{AT} N501: statements 'food.a' -> 'food.b' -> 'food.c' -> 'food.a' are rivals in a ring, each naming only "
        "the next, expected rivals that name each other\n"
        "      help: add 'food.a' to the rivals of 'food.b' if the two explain the same remains, or take it out"
    ]


def test_a_statement_is_not_its_own_rival() -> None:
    """A reading cannot compete with itself."""
    assert rivals(a="a") == [
        f"{AT} N501: statement 'food.a' names itself as a rival, expected each of the other readings of the same "
        "remains once\n"
        "      help: take it out"
    ]


def test_a_rival_is_named_once() -> None:
    """A rival that is named twice is a slip."""
    assert rivals(a="b b", b="") == [
        f"{AT} N501: statement 'food.a' names rival 'food.b' twice, expected each of the other readings of the same "
        "remains once\n"
        "      help: take it out"
    ]
