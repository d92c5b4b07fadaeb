"""A claim laid out for a terminal: what limits it, what turns it, what firms it, and its rivals beside it."""

from __future__ import annotations

from dataclasses import replace

from narrate.judging.judge import judge
from narrate.model.ids import StatementId, Subject
from narrate.model.rules import Limit, Selector
from narrate.telling.explanation import claim_text
from tests.judging.rules import COBS, KERNEL, a_rule, a_statement, bound, packs_with
from tests.measures.digs import a_dig

SHELLING = StatementId("processing.shelling-waste")


def test_a_claim_shows_limit_turning_next_step_and_rival() -> None:
    """Eleven cupules of one sample: what holds them down, what one kernel more would do, and the other reading."""
    quiet = {"needs": (), "says": "", "says_plain": ""}
    packs = packs_with(
        a_rule("fuel.a", bound("items", Selector(), at_least=3), title="Many cob parts", **quiet),
        a_rule("fuel.b", bound("items", KERNEL, at_least=2), title="Kernels too", direction="against", **quiet),
        a_rule("processing.a", bound("items", Selector(), at_least=1), title="Cobs", statement=SHELLING, weight="weak", **quiet),
        statements=(
            a_statement(COBS, rivals=(SHELLING,)),
            a_statement(SHELLING, title="Waste from shelling"),
        ),
        limits=(
            Limit(
                id="one", when="one sample", grade="suggests", says="only one sample was taken", lifts="a second sample"
            ),
        ),
    )  # fmt: skip
    packs = replace(packs, questions={"fuel": "What was burned?", "processing": "What was done?"})
    claims = judge(a_dig([[("Zea mays", "cupule", 11), ("Zea mays", "kernel", 1)]]), packs, replicates=0)
    claim = claims.find(Subject(level="context", id="C1"), COBS)
    assert claim is not None

    assert claim_text(claim, packs, lambda place: "").splitlines() == [
        "C1/fuel.maize-cob: Maize cobs as fuel",
        "  about      context C1",
        "  verdict    holds, suggests",
        "  support    0.85 (weighed evidence from 0 to 1, not a probability)",
        "  limit      only one sample was taken: grade held at 'suggests'",
        "             lifted by a second sample",
        "             without limits it would read 'supports'",
        "  turned by  one more maize kernel: the verdict would be 'cannot tell'",
        "  turned by  ten fewer maize cupules: the verdict would be 'fails'",
        "  firmed by  float a second sample from C1, if sediment was kept",
        "",
        "  for: Many cob parts [fuel.a, strong +2.6, draft]",
        "    holds: ",
        "    items = 12 items: holds",
        "      counts/test.csv:2",
        "      counts/test.csv:2",
        "",
        "  against: Kernels too [fuel.b, strong -2.6, draft]",
        "    fails",
        "    items = 1 items: fails",
        "      counts/test.csv:2",
        "",
        "  misleads when:",
        "    - kernels burned away",
        "",
        "  set against C1/processing.shelling-waste: Waste from shelling (holds, consistent with, 0.53)",
        "    balance: the remains favour this reading",
        "    for this:          Many cob parts (+2.6)",
        "    against this:      nothing",
        "    for the rival:     Cobs (+1.0)",
        "    against the rival: nothing",
    ]


def test_an_argument_on_the_same_remains_says_that_it_adds_nothing() -> None:
    """Of two rules that count the same cob parts the stronger is added, and the other says so."""
    quiet = {"needs": (), "says": "", "says_plain": "", "evidence": "cobs"}
    packs = packs_with(
        a_rule("fuel.a", bound("items", Selector(), at_least=3), title="Many cob parts", **quiet),
        a_rule("fuel.b", bound("items", Selector(), at_least=2), title="Some cob parts", weight="weak", **quiet),
        statements=(a_statement(COBS),),
    )
    claim = judge(a_dig([[("Zea mays", "cupule", 11)]]), packs, replicates=0).find(
        Subject(level="context", id="C1"), COBS
    )
    assert claim is not None

    lines = claim_text(claim, packs, lambda place: "").splitlines()
    assert [line.strip() for line in lines if "adds nothing" in line] == [
        "adds nothing: it rests on the same remains as 'Many cob parts' [fuel.a], which is added"
    ]
