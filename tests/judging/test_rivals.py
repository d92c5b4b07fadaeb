"""Rival readings side by side."""

from __future__ import annotations

import pytest

from narrate.judging.judge import judge
from narrate.model.claims import Rival
from narrate.model.ids import StatementId, Subject
from narrate.model.rules import Rule, Selector
from tests.judging.rules import COBS, a_rule, a_statement, bound, packs_with
from tests.measures.digs import a_dig

SHELLING = StatementId("processing.shelling-waste")


def rule(id: str, statement: StatementId, weight: str, direction: str = "for", at_least: int = 1) -> Rule:
    """A rule that holds for any dig with a kernel or cupule in it."""
    return a_rule(
        id,
        bound("items", Selector(), at_least=at_least),
        statement=statement,
        weight=weight,
        direction=direction,
        needs=(),
        says="",
        says_plain="",
    )


def rivals(*rules: Rule, named: StatementId = COBS) -> tuple[Rival, ...]:
    """Rivals of cobs as fuel in a sample of three cupules; one of the two statements names the other."""
    packs = packs_with(
        *rules,
        statements=(
            a_statement(COBS, rivals=(SHELLING,) if named == SHELLING else ()),
            a_statement(SHELLING, rivals=(COBS,) if named == COBS else ()),
        ),
    )
    claim = judge(a_dig([[("Zea mays", "cupule", 3)]]), packs, replicates=0).find(
        Subject(level="sample", id="S1"), COBS
    )
    assert claim is not None
    return claim.rivals


def test_a_rival_stands_beside_the_claim_with_what_speaks_for_and_against_it() -> None:
    """Verdict, support, grade and the arguments of the rival are shown with the claim."""
    found = rivals(
        rule("fuel.a", COBS, "strong"),
        rule("processing.a", SHELLING, "strong"),
        rule("processing.b", SHELLING, "weak", "against"),
    )

    assert found == (
        Rival(
            claim="S1/processing.shelling-waste",
            statement=SHELLING,
            verdict="holds",
            support=0.6682,
            grade="suggests",
            balance="this",
            speak_for=("processing.a",),  # type: ignore[arg-type]
            speak_against=("processing.b",),  # type: ignore[arg-type]
        ),
    )


@pytest.mark.parametrize("named", [COBS, SHELLING])
def test_rivalry_is_mutual(named: StatementId) -> None:
    """It does not matter which of the two statements names the other."""
    found = rivals(rule("fuel.a", COBS, "strong"), rule("processing.a", SHELLING, "strong"), named=named)

    assert [rival.statement for rival in found] == [SHELLING]


@pytest.mark.parametrize(
    ("this", "rival", "balance"),
    [
        ("strong", "strong", "undecided"),
        ("strong", "moderate", "undecided"),
        ("strong", "weak", "this"),
        ("weak", "strong", "rival"),
    ],
)
def test_less_than_one_weak_argument_decides_nothing(this: str, rival: str, balance: str) -> None:
    """2.6 against 1.8 leaves 0.8, less than a weak argument's 1.0: the remains do not decide. 2.6 against 1.0 does."""
    assert [r.balance for r in rivals(rule("fuel.a", COBS, this), rule("processing.a", SHELLING, rival))] == [balance]


def test_a_rival_that_does_not_hold_is_shown_as_the_weaker() -> None:
    """What cannot be told is no match for what holds."""
    found = rivals(rule("fuel.a", COBS, "weak"), rule("processing.a", SHELLING, "strong", at_least=50))

    assert [(r.verdict, r.balance) for r in found] == [("fails", "this")]


def test_two_that_do_not_hold_are_not_weighed() -> None:
    """Where neither holds nothing is decided and nothing is claimed."""
    found = rivals(rule("fuel.a", COBS, "weak", at_least=50), rule("processing.a", SHELLING, "strong", at_least=50))

    assert [r.balance for r in found] == ["neither holds"]
