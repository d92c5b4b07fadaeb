"""Weighing, limits, stability and evidence of whole claims."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.judging.depth import Depth
from narrate.judging.judge import judge
from narrate.judging.weigh import grade_of
from narrate.model.claims import Claim
from narrate.model.ids import Subject
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Limit, Selector
from tests.judging.rules import COBS, a_rule, a_statement, bound, fact, packs_with
from tests.measures.digs import Found, a_dig, a_row

MANY_COBS: list[Found] = [("Zea mays", "cupule", 96), ("Zea mays", "kernel", 12)]


def claim(project: Project, packs: Packs, level: str = "context", id: str = "C1", statement: str = COBS) -> Claim:
    found = judge(project, packs).find(Subject(level=level, id=id), statement)  # type: ignore[arg-type]
    assert found is not None
    return found


def a_limit(when: str, grade: str = "suggests", threshold: float | None = None) -> Limit:
    return Limit(id=when, when=when, grade=grade, says=when, lifts="more", threshold=threshold)


def recorded(project: Project, **keys: str) -> Project:
    return replace(project, contexts=tuple(replace(c, **keys) for c in project.contexts))  # type: ignore[arg-type]


def meshed(project: Project, light_mm: float) -> Project:
    return replace(project, samples=tuple(replace(s, mesh_mm={"light": light_mm}) for s in project.samples))


def test_one_strong_argument_supports() -> None:
    """Prior -0.9 and a strong argument of 2.6: support 1/(1 + exp(-1.7)) = 0.8455."""
    found = claim(a_dig([MANY_COBS]), packs_with(a_rule()))

    assert (found.verdict, found.support, found.grade) == ("holds", 0.8455, "supports")


def test_an_argument_against_takes_its_weight_away() -> None:
    """A strong argument for and one against leave support at 0.289: it cannot be told."""
    against = a_rule(
        "fuel.not", bound("items", Selector(), at_least=1), direction="against", needs=(), says="", says_plain=""
    )
    found = claim(a_dig([MANY_COBS]), packs_with(a_rule(), against))

    assert (found.verdict, found.support, found.grade) == ("cannot tell", 0.2891, "not supported")


def test_only_an_argument_against_makes_it_fail() -> None:
    """Nothing speaks for it and something against it: fails."""
    against = a_rule(
        "fuel.not", bound("items", Selector(), at_least=1), direction="against", needs=(), says="", says_plain=""
    )

    assert claim(a_dig([[("Carya", "nutshell", 3)]]), packs_with(a_rule(), against)).verdict == "fails"


def test_too_little_to_look_at_is_no_failure() -> None:
    """Three cupules are too few to say anything."""
    assert claim(a_dig([[("Zea mays", "cupule", 3)]]), packs_with(a_rule())).verdict == "cannot tell"


@pytest.mark.parametrize(
    ("support", "grade"),
    [
        (0.499, "not supported"),
        (0.5, "consistent with"),
        (0.66, "suggests"),
        (0.8, "supports"),
        (0.93, "strongly supports"),
        (1.0, "strongly supports"),
    ],
)
def test_grades_follow_their_bands(support: float, grade: str) -> None:
    """Each grade begins at its support."""
    assert grade_of(support) == grade


@pytest.mark.parametrize(
    ("limit", "project"),
    [
        (a_limit("deposit is tertiary"), recorded(a_dig([MANY_COBS]), deposit="tertiary")),
        (a_limit("deposit is unknown"), a_dig([MANY_COBS])),
        (a_limit("security is disturbed"), recorded(a_dig([MANY_COBS]), security="disturbed")),
        (a_limit("security is unknown"), a_dig([MANY_COBS])),
        (a_limit("few items", threshold=200), a_dig([MANY_COBS])),
        (a_limit("one sample"), a_dig([MANY_COBS])),
        (a_limit("coarse mesh", threshold=0.5), meshed(a_dig([MANY_COBS]), 1.0)),
        (a_limit("only draft rules"), a_dig([MANY_COBS])),
        (
            a_limit("only cf. names"),
            a_dig([[]], rows=[a_row("S1", "cf. Zea mays", "cupule", 96), a_row("S1", "cf. Zea mays", "kernel", 12)]),
        ),
    ],
    ids=lambda value: value.when if isinstance(value, Limit) else "",
)
def test_a_limit_holds_the_grade_down_and_says_so(limit: Limit, project: Project) -> None:
    """Whatever the arguments weigh, the grade stays at the limit, and the claim says which and what would lift it."""
    found = claim(project, packs_with(a_rule(), limits=(limit,)))

    assert found.grade == "suggests"
    assert [held.says for held in found.limits] == [f"{limit.when}: grade held at 'suggests'"]
    assert found.support == 0.8455
    assert found.unlimited == "supports"


@pytest.mark.parametrize(
    ("limit", "project"),
    [
        (a_limit("deposit is tertiary"), recorded(a_dig([MANY_COBS]), deposit="primary")),
        (a_limit("deposit is unknown"), recorded(a_dig([MANY_COBS]), deposit="primary")),
        (a_limit("few items", threshold=50), a_dig([MANY_COBS])),
        (a_limit("one sample"), a_dig([MANY_COBS, MANY_COBS], contexts=["C1", "C1"])),
        (a_limit("coarse mesh", threshold=0.5), meshed(a_dig([MANY_COBS]), 0.5)),
        (a_limit("coarse mesh", threshold=0.5), a_dig([MANY_COBS])),
        (a_limit("only cf. names"), a_dig([MANY_COBS], rows=[a_row("S1", "cf. Zea mays", "seed", 9)])),
        (a_limit("deposit is tertiary", grade="strongly supports"), recorded(a_dig([MANY_COBS]), deposit="tertiary")),
    ],
    ids=lambda value: value.when if isinstance(value, Limit) else "",
)
def test_a_limit_whose_circumstance_is_not_met_is_silent(limit: Limit, project: Project) -> None:
    """Where the circumstance is not met, or the grade is lower anyway, the limit does not speak."""
    found = claim(project, packs_with(a_rule(), limits=(limit,)))

    assert (found.grade, found.limits) == ("supports", ())


def test_limits_leave_questions_of_integrity_alone() -> None:
    """That a deposit is disturbed is no reason to doubt that it is disturbed."""
    statement = a_statement("integrity.disturbed")
    rule = a_rule(
        "integrity.d", fact("security", "disturbed"), statement=statement.id, needs=(), says="it is", says_plain="it is"
    )
    packs = packs_with(rule, statements=(statement,), limits=(a_limit("security is disturbed", "consistent with"),))

    assert claim(recorded(a_dig([MANY_COBS]), security="disturbed"), packs, statement=statement.id).grade == "supports"


def test_clauses_quote_their_figures() -> None:
    """'{name.to}' and '{name.of}' are the raw items of the two selections."""
    found = claim(a_dig([MANY_COBS]), packs_with(a_rule()))

    assert found.arguments[0].says == "cob parts outnumber kernels (96 to 12)"


def test_evidence_leads_to_the_rows_of_that_context_alone() -> None:
    """The evidence of a claim names the rows that were summed, and no row of another context."""
    rows = [
        a_row("S1", "Zea mays", "cupule", 96, line=2),
        a_row("S1", "Zea mays", "kernel", 12, line=3),
        a_row("S2", "Zea mays", "cupule", 50, line=4),
        a_row("S1", "Carya", "nutshell", 50, line=5),
    ]
    found = claim(a_dig([[], []], rows=rows), packs_with(a_rule()))
    ratio = next(e for e in found.arguments[0].evidence if e.measure == "ratio.kpc")

    assert [place.row for place in ratio.places] == ["counts/test.csv:2", "counts/test.csv:3"]


def test_a_claim_that_hangs_on_few_items_is_less_stable() -> None:
    """96 cupules to 12 kernels stay; 11 cupules and no kernel often fall below what is needed."""
    packs = packs_with(a_rule())
    firm = claim(a_dig([MANY_COBS]), packs)
    frail = claim(a_dig([[("Zea mays", "cupule", 11)]]), packs)

    assert firm.stability == 1.0
    assert frail.verdict == "holds" and frail.stability is not None and 0.2 < frail.stability < 0.8


def test_rivals_that_hold_come_first() -> None:
    """Among the rival readings those that hold here are named first."""
    shelling, other = a_statement("processing.shelling-waste"), a_statement("processing.other")
    cobs = a_statement(rivals=(other.id, shelling.id))
    packs = packs_with(
        a_rule(),
        a_rule("processing.s", bound("items", Selector(), at_least=1), statement=shelling.id, says="", says_plain=""),
        statements=(cobs, shelling, other),
    )

    assert claim(a_dig([MANY_COBS]), packs).alternatives == (shelling.id, other.id)


def test_claim_ids_are_subject_and_statement() -> None:
    """A claim is named C1/fuel.maize-cob; where a sample shares the id of a context, the sample says its level."""
    packs = packs_with(a_rule())
    dig = a_dig([MANY_COBS], contexts=["S1"])

    assert [c.id for c in judge(a_dig([MANY_COBS]), packs)] == ["S1/fuel.maize-cob", "C1/fuel.maize-cob"]
    assert [c.id for c in judge(dig, packs)] == ["sample:S1/fuel.maize-cob", "S1/fuel.maize-cob"]


def test_retired_rules_do_not_speak() -> None:
    """A retired rule stays in the packs and argues no more."""
    packs = packs_with(a_rule(), a_rule("fuel.old", bound("items", Selector(), at_least=0), status="retired"))

    assert [a.rule for a in claim(a_dig([MANY_COBS]), packs).arguments] == ["fuel.test"]


def test_what_is_later_than_an_undated_phase_cannot_be_told() -> None:
    """Chickweed in a phase without dates is neither in nor out of period."""
    statement = a_statement("integrity.out-of-period")
    later = Selector(later_than_phase=True)
    rule = a_rule(
        "integrity.p",
        bound("items", later, at_least=1),
        statement=statement.id,
        needs=(),
        says="it is",
        says_plain="it is",
    )
    dated = a_dig([[("Stellaria media", "seed", 4)]])
    undated = replace(dated, phases=tuple(replace(phase, end=None) for phase in dated.phases))
    packs = packs_with(rule, statements=(statement,))

    assert claim(dated, packs, statement=statement.id).verdict == "holds"
    assert claim(undated, packs, statement=statement.id).verdict == "cannot tell"


def test_ubiquity_is_redrawn_over_samples_and_not_over_seeds() -> None:
    """Single seeds in 18 of 20 samples stay widespread; whether a sample held one seed or two is not in doubt."""
    rule = a_rule(
        criteria=bound("ubiquity", Selector(taxon=("Carya",)), at_least=0.5), needs=(), says="it is", says_plain="it is"
    )
    dig = a_dig([[("Carya", "nutshell", 1)]] * 18 + [[]] * 2, contexts=["C1"] * 20)
    found = claim(dig, packs_with(rule))

    assert found.verdict == "holds" and found.stability is not None and found.stability > 0.95


@pytest.mark.parametrize(("threshold", "grade"), [(0.99, "suggests"), (0.05, "supports")])
def test_a_verdict_that_few_draws_uphold_is_held_down(threshold: float, grade: str) -> None:
    """Eleven cupules where ten are needed: the verdict stays in about half of the draws."""
    limit = a_limit("verdict is unsteady", threshold=threshold)
    found = claim(a_dig([[("Zea mays", "cupule", 11)]]), packs_with(a_rule(), limits=(limit,)))

    assert found.verdict == "holds"
    assert found.grade == grade


def test_wood_makes_no_assemblage_of_seeds_less_small() -> None:
    """Twenty identified pieces of wood do not lift the limit of few items from what seeds say; fuel counts them."""
    dig = a_dig([[("Zea mays", "cupule", 12), ("Carya", "wood", 20)]])
    few = a_limit("few items", threshold=30)
    with_wood = a_limit("few items, wood counted", threshold=30)

    assert claim(dig, packs_with(a_rule(), limits=(few,))).grade == "suggests"
    assert claim(dig, packs_with(a_rule(), limits=(with_wood,))).grade == "supports"


def test_claims_without_turnings_are_else_the_same() -> None:
    """Who shows no smallest change that would turn a verdict need not look for it, and loses nothing else."""
    project, packs = a_dig([MANY_COBS, [("Zea mays", "cupule", 3)]]), packs_with(a_rule())
    whole = list(judge(project, packs))
    bare = list(judge(project, packs, depth=Depth(turned=())))

    def told(each: Claim) -> Claim:
        return replace(each, turnings=(), arguments=tuple(each.arguments), rivals=tuple(each.rivals))

    assert any(each.turnings for each in whole)
    assert not any(each.turnings for each in bare)
    assert list(map(told, whole)) == list(map(told, bare))


def test_turnings_of_what_holds_are_those_of_all() -> None:
    """Who tells readings alone has the same smallest changes of them, and none of samples and of what does not hold."""
    project, packs = a_dig([MANY_COBS, [("Zea mays", "cupule", 3)]]), packs_with(a_rule())
    whole = list(judge(project, packs))
    held = list(judge(project, packs, depth=Depth(turned=("context",), only_held=True)))
    wanted = [each.turnings if each.about.level == "context" and each.verdict == "holds" else () for each in whole]

    assert any(wanted) and any(each.turnings for each, own in zip(whole, wanted, strict=True) if not own)
    assert [each.turnings for each in held] == wanted
