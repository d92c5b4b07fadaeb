"""Work that would firm up what is said, and what is best left."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from narrate.judging.judge import judge
from narrate.judging.work_described import expected
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.claims import Claims
from narrate.model.ids import SITE, StatementId, Subject
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Criterion, Limit, Selector
from narrate.model.sampling import HeavyFraction, SizeClass
from tests.judging.rules import CUPULE, a_rule, a_statement, bound, fact, packs_with
from tests.measures.digs import Found, a_dig, a_row
from tests.small_packs import small_packs

S1 = Subject(level="sample", id="S1")
C1 = Subject(level="context", id="C1")


def judged(project: Project, criteria: Criterion, *limits: Limit, **keys: Any) -> Claims:
    packs: Packs = packs_with(
        a_rule(criteria=criteria, **{"needs": (), "says": "", "says_plain": "", **keys}), limits=limits
    )
    return judge(project, replace(packs, questions={"fuel": "What was burned?"}), replicates=0)


def steps(claims: Claims, subject: Subject) -> list[tuple[str, str]]:
    return [(step.id, step.says) for step in claims.steps[subject]]


def of_sample(project: Project, **fields: Any) -> Project:
    return replace(project, samples=tuple(replace(s, **fields) for s in project.samples))


def a_limit(when: str, threshold: float | None = None, grade: str = "consistent with") -> Limit:
    return Limit(id=when, when=when, grade=grade, says=when, lifts="more", threshold=threshold)


QUARTER = (SizeClass(name="0.5-1 mm", proportion_sorted=0.25),)


def test_sorting_the_rest_is_proposed_where_it_would_settle_something() -> None:
    """Four cupules of a quarter stand for sixteen: the need of ten items would be met."""
    dig = of_sample(a_dig([[]], rows=[a_row("S1", "Zea mays", "cupule", 4, share=0.25)]), size_classes=QUARTER)
    claims = judged(dig, bound("items", CUPULE, at_least=10), needs=(bound("items", CUPULE, at_least=10),))
    claim = claims.find(S1, "fuel.maize-cob")

    assert claim is not None and claim.verdict == "cannot tell"
    assert claims.steps[S1] == (
        NextStep(
            id="sort.class",
            about=S1,
            says="finish the 0.5-1 mm class of S1: more of the same plants and hardly a new one are to be expected, "
            "and intervals 50% narrower",
            cost=2,
            turns=("S1/fuel.maize-cob",),
            questions=("fuel",),
        ),
    )
    assert claim.next_step == claims.steps[S1][0]


def test_sorting_the_rest_is_not_proposed_where_it_settles_nothing() -> None:
    """Where the verdict stays as it is, the sample is best left."""
    dig = of_sample(a_dig([[]], rows=[a_row("S1", "Zea mays", "cupule", 40, share=0.25)]), size_classes=QUARTER)

    assert steps(judged(dig, bound("items", CUPULE, at_least=10)), S1) == []


def test_few_items_are_lifted_by_sorting_only_if_enough_are_to_be_expected() -> None:
    """Twelve of a quarter let 48 be expected: more than thirty, less than sixty."""
    dig = of_sample(a_dig([[]], rows=[a_row("S1", "Zea mays", "cupule", 12, share=0.25)]), size_classes=QUARTER)
    criteria = bound("items", CUPULE, at_least=10)

    assert claims_lifted(judged(dig, criteria, a_limit("few items", 30))) == ["S1/fuel.maize-cob"]
    assert claims_lifted(judged(dig, criteria, a_limit("few items", 60))) == []


def claims_lifted(claims: Claims) -> list[str]:
    return [claim for step in claims.steps[S1] for claim in step.lifts]


def test_a_limit_is_not_lifted_while_another_holds_as_low() -> None:
    """Sorting the heavy fraction does not help a reading that a tertiary deposit holds down as far."""
    dig = of_sample(a_dig([[("Zea mays", "cupule", 40)]]), heavy_fraction=HeavyFraction(sorted=False))
    moved = replace(dig, contexts=tuple(replace(c, deposit="tertiary") for c in dig.contexts))
    heavy, tertiary = a_limit("unsorted heavy fraction"), a_limit("deposit is tertiary")
    criteria = bound("items", CUPULE, at_least=10)

    assert steps(judged(dig, criteria, heavy), S1) == [("sort.heavy", "sort the heavy fraction of S1")]
    assert steps(judged(moved, criteria, heavy, tertiary), S1) == []


@pytest.mark.parametrize(
    ("dig", "criteria", "step"),
    [
        (
            a_dig([[("Zea mays", "cupule", 40)]]),
            fact("deposit", "primary"),
            ("record.deposit", "write down how the deposit of C1 formed, if the field notes tell"),
        ),
        (
            a_dig([[("Zea mays", "cupule", 40)]]),
            fact("security", "sealed"),
            ("record.security", "write down whether C1 was sealed, if the field notes tell"),
        ),
        (
            a_dig([[("Zea mays", "cupule", 40)]], litres=None),
            bound("density", CUPULE, at_least=1),
            ("record.volume", "write down the volume of S1, if the field notes tell"),
        ),
        (
            a_dig([[]], rows=[a_row("S1", "cf. Zea mays", "cupule", 40)]),
            bound("ratio", Selector(part=("cupule",), is_certain=True), Selector(part=("kernel",)), at_least=1),  # type: ignore[arg-type]
            ("name.cf", "have another look at the 40 items named 'cf. Zea mays' of S1"),
        ),
        (
            a_dig([[("Carya", "wood", 8)]], rows=[a_row("S1", "Carya", "wood", None, mass_g=2.0)]),
            bound("share", Selector(part=("wood",)), Selector(), at_least=0.8),  # type: ignore[arg-type]
            ("wood.identify", "identify 12 more wood fragments of S1"),
        ),
    ],
)
def test_work_is_proposed_where_its_want_leaves_something_open(
    dig: Project, criteria: Criterion, step: tuple[str, str]
) -> None:
    """What is not recorded, uncertain or barely begun, and stands between the remains and a verdict."""
    assert steps(judged(dig, criteria), S1) == [step]


@pytest.mark.parametrize(("at_least", "told"), [(0.25, True), (0.75, False)])
def test_wood_is_not_named_only_to_rule_a_reading_out(at_least: float, told: bool) -> None:
    """Four of eight pieces are hickory: naming twelve more pays to show a quarter of it, not to deny three quarters."""
    hickory, wood = Selector(taxon=("Carya",), part=("wood",)), Selector(part=("wood",))  # type: ignore[arg-type]
    named: list[Found] = [("Carya", "wood", 4), ("Zea mays", "wood", 4)]
    project = a_dig([named], rows=[a_row("S1", "Carya", "wood", None, mass_g=2.0)])
    criteria = bound("share", hickory, wood, at_least=at_least)

    assert ("wood.identify" in [id for id, _ in steps(judged(project, criteria), S1)]) is told


def test_a_second_sample_is_proposed_for_a_context_of_one() -> None:
    """Only a context can be sampled again, and only where that would lift or settle something."""
    claims = judged(a_dig([[("Zea mays", "cupule", 40)]]), bound("items", CUPULE, at_least=10), a_limit("one sample"))

    assert steps(claims, C1) == [("float.more", "float a second sample from C1, if sediment was kept")]
    assert steps(claims, S1) == []


def test_the_dig_is_told_what_it_would_gain_by() -> None:
    """Draft rules hold readings down everywhere, and no recovery test was made."""
    claims = judged(
        a_dig([[("Zea mays", "cupule", 40)]]), bound("items", CUPULE, at_least=10), a_limit("only draft rules")
    )

    assert steps(claims, Subject(level="site", id=SITE)) == [
        (
            "test.recovery",
            "add marked charred seeds to the next flotation: 1 of 1 samples had no recovery test",
        ),
        ("review.rules", "check the 1 draft rule behind 2 readings against its sources"),
    ]


def test_most_questions_for_the_cost_come_first() -> None:
    """Two questions for an hour go before three for a day, and one for minutes before one for an hour."""
    made = [
        NextStep(id=id, about=S1, says="", cost=cost, questions=("q",) * questions)
        for id, cost, questions in (("a", 2, 2), ("b", 4, 3), ("c", 1, 1), ("d", 2, 1))
    ]

    assert [step.id for step in sorted(made, key=NextStep.in_order)] == ["c", "a", "b", "d"]


def test_new_taxa_are_expected_from_those_found_once() -> None:
    """
    Two taxa once and one twice among 12 items of a quarter: f0 = 2·1/(2·2) = 0.5 not yet seen, 36 more items expected.

    0.5·[1 − (1 − 2/(12·0.5 + 2))³⁶] = 0.5·(1 − 0.75³⁶) = 0.49998 (worked out by hand).
    """
    rows = [
        a_row("S1", taxon, part, n, share=0.25)
        for taxon, part, n in (
            ("Zea mays", "kernel", 8),
            ("Chenopodium", "seed", 2),
            ("Amaranthus", "seed", 1),
            ("Carya", "nutshell", 1),
        )
    ]
    project = a_dig([[]], rows=rows)
    units = Units(count_table(project, small_packs()), "sample", small_packs(), "charred")

    assert expected(units, 0) == (36.0, pytest.approx(0.49998, abs=1e-5))


def test_an_undated_phase_is_offered_its_best_item_to_date() -> None:
    """Of two contexts of a phase without a measured date, the one whose item ranks first is proposed, once."""
    candidate = a_rule(
        "work.fit",
        bound("items", Selector(part=("kernel",)), at_least=1),  # type: ignore[arg-type]
        statement=StatementId("work.date-candidate"),
        needs=(),
        says="",
        says_plain="",
    )
    packs = packs_with(candidate, statements=(a_statement("work.date-candidate"),))
    project = a_dig([[("Zea mays", "kernel", 2)], [("Zea mays", "kernel", 9)]])
    dated = replace(project, phases=tuple(replace(p, basis="two radiocarbon dates") for p in project.phases))

    open_ = judge(project, packs, replicates=0)
    closed = judge(dated, packs, replicates=0)

    told = [step.says for id in ("C1", "C2") for step in open_.steps[Subject(level="context", id=id)]]
    assert told == ["date one maize kernel of C1, if its owners agree: phase 'one' rests on no measured date"]
    assert [step for id in ("C1", "C2") for step in closed.steps[Subject(level="context", id=id)]] == []


def test_wood_that_was_only_weighed_can_be_identified() -> None:
    """Two grams of wood of which no piece was named: twenty pieces would let the fuel be told."""
    project = a_dig([[]], rows=[a_row("S1", "Carya", "wood", None, mass_g=2.0)])
    claims = judged(project, bound("share", Selector(part=("wood",)), Selector(), at_least=0.8))  # type: ignore[arg-type]

    assert ("wood.identify", "identify 20 wood fragments of S1") in steps(claims, S1)


@pytest.mark.parametrize(("left_g", "told"), [(0.02, False), (0.5, True)])
def test_crumbs_are_not_to_be_identified(left_g: float, told: bool) -> None:
    """Two pieces named and 0.02 g left: eighteen more would each weigh a milligram (from memory: 2 mm weigh five)."""
    project = a_dig([[("Carya", "wood", 2)]], rows=[a_row("S1", "Carya", "wood", None, mass_g=left_g)])
    claims = judged(project, bound("share", Selector(part=("wood",)), Selector(), at_least=0.8))  # type: ignore[arg-type]

    for subject in (S1, C1):
        assert ("wood.identify" in [id for id, _ in steps(claims, subject)]) is told


def test_the_first_few_finds_of_a_crop_are_offered_a_date_of_their_own() -> None:
    """Two kernels of the first phase beside sixty of the next: they may be of the next, and only a date tells."""
    dig = a_dig([[("Zea mays", "kernel", 2)], [("Zea mays", "kernel", 60)]], phases=("one", "two"))
    claims = judge(dig, small_packs(), replicates=0)

    (step,) = (s for s in claims.steps[C1] if s.id == "date.own")
    assert step.says == (
        "date one maize kernel of C1 (S1) by itself (AMS), if its owners agree: the 2 remains of maize in phase 'one', "
        "beside 60 later ones, may have come down from later soil"
    )
    assert not [s for s in claims.steps[Subject(level="context", id="C2")] if s.id == "date.own"]


def test_the_best_piece_to_date_by_itself_is_weighed_and_large() -> None:
    """An unweighed cupule of a hearth stands behind a kernel of 25 mg from refuse that is sealed as well."""
    dig = a_dig(
        [[], [], [("Zea mays", "kernel", 60)]],
        phases=("one", "one", "two"),
        rows=[a_row("S1", "Zea mays", "cupule", 1), a_row("S2", "Zea mays", "kernel", 1, mass_g=0.025)],
    )
    deposits = {"C1": "primary", "C2": "secondary", "C3": "secondary"}
    sealed = tuple(replace(c, security="sealed", deposit=deposits[c.id]) for c in dig.contexts)
    dig = replace(dig, contexts=sealed)
    claims = judge(dig, small_packs(), replicates=0)

    contexts = (Subject(level="context", id=id) for id in ("C1", "C2"))
    own = [step for context in contexts for step in claims.steps[context] if step.id == "date.own"]
    assert [step.says.split(" by itself")[0] for step in own] == ["date one maize kernel of C2 (S2)"]


@pytest.mark.parametrize("before", [10, 0])
def test_a_crop_that_was_there_from_the_first_needs_no_date_of_its_own(before: int) -> None:
    """Ten kernels before sixty are no stray few (more than one in twenty), and none at all are nothing to date."""
    dig = a_dig([[("Zea mays", "kernel", before)], [("Zea mays", "kernel", 60)]], phases=("one", "two"))
    claims = judge(dig, small_packs(), replicates=0)

    assert not [s for steps in claims.steps.values() for s in steps if s.id == "date.own"]
