"""The smallest change in counts that turns a verdict, held against honest judging of changed counts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from narrate.judging.judge import judge
from narrate.judging.turning_words import said
from narrate.measures.count_table import Kind
from narrate.model.claims import Claim, Turning
from narrate.model.counts import CountRow
from narrate.model.ids import PartId, StatementId, Subject, TaxonId
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Rule, Selector
from tests.judging.rules import COBS, CUPULE, KERNEL, a_rule, a_statement, bound, group, packs_with
from tests.measures.digs import Found, a_dig, a_row
from tests.small_packs import small_packs

FOOD = StatementId("food.maize")
RULES = (
    a_rule("fuel.ratio"),
    a_rule("fuel.pure", bound("dominance", Selector(), at_least=0.6), needs=(), weight="moderate", direction="against"),
    a_rule("fuel.many", bound("density", CUPULE, at_least=2), needs=(), weight="weak"),
    a_rule(
        "food.kernels",
        group("all", bound("items", KERNEL, at_least=5), bound("share", KERNEL, Selector(), at_least=0.2)),
        statement=FOOD,
        needs=(bound("taxa", Selector(), at_least=2),),
    ),
    a_rule(
        "food.nuts",
        group("any", bound("presence", Selector(tag=("nut",)), at_most=0), bound("samples_with", KERNEL, at_least=2)),
        statement=FOOD,
        needs=(),
        weight="moderate",
        direction="against",
    ),
)
THINGS = (
    ("Zea mays", "kernel"),
    ("Zea mays", "cupule"),
    ("Carya", "nutshell"),
    ("Chenopodium", "seed"),
    ("Amaranthus", "seed"),
)


def packs() -> Packs:
    return packs_with(*RULES, statements=(a_statement(FOOD),))


def found(things: Sequence[Found], level: str = "sample", statement: str = COBS) -> Claim:
    project = a_dig([things])
    claim = judge(project, packs(), replicates=0).find(
        Subject(level=level, id="S1" if level == "sample" else "C1"),  # type: ignore[arg-type]
        statement,
    )
    assert claim is not None
    return claim


def changed(project: Project, samples: Sequence[str], turning: Turning, items: int) -> Project:
    """The project with so many more or fewer of the thing that the turning speaks of, as a person would write it."""
    if turning.by_sample:
        return changed_in(project, turning, dict(turning.by_sample), abs(items - turning.items))
    own = [
        i
        for i, row in enumerate(project.counts)
        if row.sample in samples and (row.identification.taxon, row.part) == (turning.taxon, turning.part)
    ]
    own.sort(key=lambda i: -(project.counts[i].count.number or 0))
    rows = list(project.counts)
    if items > 0 and not own:
        rows.append(a_row(turning.sample, str(turning.taxon), turning.part, items))
    elif items > 0:
        rows[own[0]] = _counted(rows[own[0]], items)
    else:
        left = -items
        for i in own:
            taken = min(left, rows[i].count.number or 0)
            rows[i] = _counted(rows[i], -taken)
            left -= taken
        assert left == 0
    return replace(project, counts=tuple(rows))


def changed_in(project: Project, turning: Turning, by_sample: dict[str, int], short_of: int = 0) -> Project:
    """The project with the thing changed in each sample as said, short of so many items in the last of them."""
    for i, (sample, items) in enumerate(by_sample.items(), start=1):
        sign = 1 if items > 0 else -1
        left = items - sign * short_of if i == len(by_sample) else items
        if left:
            project = changed(project, [sample], replace(turning, by_sample=(), sample=sample), left)
    return project


def _counted(row: CountRow, more: int) -> CountRow:
    return a_row(row.sample, row.identification.written, row.part, (row.count.number or 0) + more)


def test_two_more_kernels_would_turn_it() -> None:
    """Three kernels beside nutshell are two short of the five that the rule asks for."""
    things: list[Found] = [("Zea mays", "kernel", 3), ("Carya", "nutshell", 2)]
    claim = found(things, statement=FOOD)
    turning = claim.turnings[0]

    assert (claim.verdict, turning.says, turning.items, turning.verdict) == (
        "fails",
        "two more maize kernels",
        2,
        "holds",
    )


def test_cupules_are_taken_until_the_verdict_turns() -> None:
    """
    42 cupules in ten litres: with 13 fewer the density is no longer surely above two a litre.

    29 items in 10 litres have an exact Poisson interval from 1.94 to 4.16 a litre, 30 one from 2.02 (worked out).
    Without that argument -0.9 + 2.6 - 1.8 = -0.1 is left, which is support below one half.
    """
    claim = found([("Zea mays", "cupule", 42), ("Zea mays", "kernel", 1)])

    assert claim.verdict == "holds"
    assert [(t.says, t.verdict) for t in claim.turnings if t.items < 0] == [("13 fewer maize cupules", "cannot tell")]


def test_a_context_loses_items_of_the_fullest_sample_first() -> None:
    """In a context of two samples the change is said for the sample that holds most of the thing."""
    project = a_dig(
        [[("Zea mays", "kernel", 2)], [("Zea mays", "kernel", 3), ("Carya", "nutshell", 2)]], contexts=["C1", "C1"]
    )
    claim = judge(project, packs(), replicates=0).find(Subject(level="context", id="C1"), FOOD)

    assert claim is not None
    assert {t.sample for t in claim.turnings if t.part == "kernel"} == {"S2"}


SPREAD = (
    a_rule("fuel.recurs", bound("samples_with", Selector(tag=("nut",)), at_least=3), needs=()),
    a_rule("fuel.seeds_recur", bound("samples_with", Selector(tag=("small-seed",)), at_least=2), needs=()),
    a_rule(
        "food.in_most",
        group(
            "all",
            bound("ubiquity", KERNEL, at_least=0.6, judged_on="value"),
            bound("items", KERNEL, at_least=4),
        ),
        statement=FOOD,
        needs=(),
    ),
)


def spread_claim(samples: Sequence[Sequence[Found]], statement: str = COBS) -> Claim:
    project = a_dig(samples, contexts=["C1"] * len(samples))
    claim = judge(project, packs_with(*SPREAD, statements=(a_statement(FOOD),)), replicates=0).find(
        Subject(level="context", id="C1"), statement
    )
    assert claim is not None
    return claim


def test_one_more_in_a_third_sample_is_looked_for() -> None:
    """Hickory shell in two of four samples is one fragment short of three samples, wherever most of it lies."""
    turning = spread_claim([[("Carya", "nutshell", 40)], [("Carya", "nutshell", 2)], [], []]).turnings[0]

    assert (turning.says, turning.by_sample, turning.verdict) == (
        "one more hickory nutshell in a third sample",
        (("S3", 1),),
        "holds",
    )


def test_two_more_lie_in_two_further_samples() -> None:
    """Hickory shell in one of three samples is short of two fragments, one in each of the others."""
    turning = spread_claim([[("Carya", "nutshell", 40)], [], []]).turnings[0]

    assert (turning.says, turning.by_sample) == (
        "two more hickory nutshells, one each in two further samples",
        (("S2", 1), ("S3", 1)),
    )


def test_the_thinnest_sample_is_emptied() -> None:
    """Of three samples with hickory shell, the one with two fragments is lost first, and is named."""
    turning = spread_claim([[("Carya", "nutshell", 40)], [("Carya", "nutshell", 2)], [("Carya", "nutshell", 9)]])

    assert [(t.says, t.by_sample) for t in turning.turnings] == [
        ("two fewer hickory nutshells, so that S2 holds none", (("S2", -2),))
    ]


def test_a_plant_that_another_stands_in_for_empties_no_sample() -> None:
    """Without its one goosefoot seed S2 still holds pigweed, so that S3 is emptied at the least cost, of pigweed."""
    samples: list[list[Found]] = [
        [("Chenopodium", "seed", 9)],
        [("Chenopodium", "seed", 1), ("Amaranthus", "seed", 5)],
        [("Amaranthus", "seed", 3)],
    ]
    rule = a_rule("fuel.recurs", bound("samples_with", Selector(tag=("small-seed",)), at_least=3), needs=())
    claim = judge(a_dig(samples, contexts=["C1"] * 3), packs_with(rule), replicates=0).find(
        Subject(level="context", id="C1"), COBS
    )

    assert claim is not None
    assert [t.says for t in claim.turnings] == ["three fewer pigweed seeds, so that S3 holds none"]


def test_what_is_asked_of_all_samples_together_is_met_as_well() -> None:
    """Two kernels in one of two samples: four kernels and both samples are asked for, and two more give both."""
    claim = spread_claim([[("Zea mays", "kernel", 2)], []], FOOD)

    assert [(t.says, t.by_sample) for t in claim.turnings] == [
        ("two more maize kernels, one of them in a second sample", (("S1", 1), ("S2", 1)))
    ]


def test_where_is_not_said_when_it_does_not_matter() -> None:
    """Kernels in both samples, one short of four: one more turns it in either."""
    claim = spread_claim([[("Zea mays", "kernel", 2)], [("Zea mays", "kernel", 1)]], FOOD)

    assert (claim.turnings[0].says, claim.turnings[0].by_sample) == ("one more maize kernel", ())


@settings(max_examples=12, deadline=None)
@given(
    numbers=st.lists(
        st.tuples(*[st.integers(min_value=0, max_value=3) for _ in THINGS]), min_size=2, max_size=3
    ).filter(lambda rows: any(map(any, rows)))
)
def test_no_smaller_change_in_any_sample_turns_a_context(numbers: list[tuple[int, ...]]) -> None:
    """One kind, changed by up to two items in any samples of the context, turns no verdict that asks for more."""
    samples: list[list[Found]] = [
        [(taxon, part, n) for (taxon, part), n in zip(THINGS, row, strict=False) if n] for row in numbers
    ]
    project = a_dig(samples, contexts=["C1"] * len(samples))
    packs = packs_with(*SPREAD, statements=(a_statement(FOOD),))
    names = [f"S{i}" for i, _ in enumerate(samples, start=1)]
    of_dig = {(taxon, part) for found in samples for taxon, part, _ in found}
    changes = [{a: sign} for a in names for sign in (1, -1)]
    changes += [{a: sign, b: sign} if a != b else {a: 2 * sign} for a in names for b in names for sign in (1, -1)]
    for claim in judge(project, packs, replicates=0).about(Subject(level="context", id="C1")):
        least = min((abs(t.items) for t in claim.turnings), default=31)
        for taxon, part in sorted(of_dig):
            for change in changes:
                held = {n: sum(c for t, p, c in samples[i] if (t, p) == (taxon, part)) for i, n in enumerate(names)}
                if sum(map(abs, change.values())) >= least or any(held[n] + c < 0 for n, c in change.items()):
                    continue
                kind = Turning(
                    items=0, taxon=TaxonId(taxon), part=PartId(part), condition="charred", sample="S1",
                    verdict="holds", says="",
                )  # fmt: skip
                other = judge(changed_in(project, kind, change), packs, replicates=0)

                assert other.by_id[claim.id].verdict == claim.verdict, (claim.id, taxon, part, change)


SEEDS = Selector(part=(PartId("seed"),))
"""Chickweed is of the Old World: the small packs have it from 1600 on, and the phase of these digs ends in 1000."""


def turned_by(rule: Rule, *digs: Sequence[Found]) -> list[str]:
    claim = judge(a_dig(digs), packs_with(rule), replicates=0).find(Subject(level="sample", id="S1"), COBS)
    assert claim is not None
    return [turning.says for turning in claim.turnings]


def test_no_plant_is_looked_for_before_it_came() -> None:
    """Chickweed is the commonest seed of the dig, but only of goosefoot could five more lie in a pit of its age."""
    rule = a_rule("fuel.seeds", bound("items", SEEDS, at_least=5), needs=())
    elsewhere: list[Found] = [("Stellaria media", "seed", 40), ("Chenopodium", "seed", 1)]

    assert turned_by(rule, [("Carya", "nutshell", 9)], elsewhere) == ["five more goosefoot seeds"]


def test_no_more_of_a_plant_that_strayed_in_is_looked_for() -> None:
    """Three chickweed seeds lie in the sample, and yet two more would be no reason: two of goosefoot would."""
    rule = a_rule("fuel.seeds", bound("items", SEEDS, at_least=5), needs=())
    elsewhere: list[Found] = [("Chenopodium", "seed", 1)]

    assert turned_by(rule, [("Stellaria media", "seed", 3)], elsewhere) == ["two more goosefoot seeds"]


def test_fewer_of_a_plant_that_strayed_in_may_turn_a_verdict() -> None:
    """What lies there may have been misnamed: without two of its six chickweed seeds the sample has too few."""
    rule = a_rule("fuel.seeds", bound("items", SEEDS, at_least=5), needs=())

    assert turned_by(rule, [("Stellaria media", "seed", 6)]) == ["two fewer Stellaria media seeds"]


def test_a_rule_that_asks_for_plants_out_of_period_may_be_turned_by_one() -> None:
    """Where later plants are the very thing that is asked for, one chickweed seed is what would turn it."""
    rule = a_rule("fuel.later", bound("items", Selector(later_than_phase=True), at_least=1), needs=())
    elsewhere: list[Found] = [("Stellaria media", "seed", 1)]

    assert turned_by(rule, [("Carya", "nutshell", 9)], elsewhere) == ["one more Stellaria media seed"]


def test_phases_and_the_site_are_not_turned_by_items() -> None:
    """Of a phase samples decide, not items: nothing is looked for there."""
    rule = replace(RULES[0], about=("phase", "site"))
    claims = judge(a_dig([[("Zea mays", "cupule", 40)]]), packs_with(rule), replicates=0)

    assert all(claim.turnings == () for claim in claims)


counts = st.integers(min_value=0, max_value=14)
samples = st.lists(st.tuples(*[counts for _ in THINGS]), min_size=1, max_size=3)


@settings(max_examples=20, deadline=None)
@given(numbers=samples, together=st.booleans())
def test_what_is_said_to_turn_a_verdict_turns_it_and_nothing_smaller_does(
    numbers: list[tuple[int, ...]], together: bool
) -> None:
    """A project with the change made in its count sheet is judged as was foretold; with one item less it is not."""
    digs = [
        [(taxon, part, n) for (taxon, part), n in zip(THINGS, row, strict=True) if n] for row in numbers
    ]  # fmt: skip
    project = a_dig(digs, contexts=["C1"] * len(digs) if together else ())
    claims = judge(project, packs(), replicates=0)
    for claim in (*claims.about(Subject(level="sample", id="S1")), *claims.about(Subject(level="context", id="C1"))):
        for turning in claim.turnings[:2]:
            own = [
                str(s.id) for s in project.samples if claim.about.id in (s.id, s.context)
            ]  # fmt: skip
            whole = judge(changed(project, own, turning, turning.items), packs(), replicates=0)
            step = 1 if turning.items > 0 else -1

            assert whole.by_id[claim.id].verdict == turning.verdict
            if abs(turning.items) > 1 and not _makes_hold_only(claim, turning):
                less = judge(changed(project, own, turning, turning.items - step), packs(), replicates=0)
                assert less.by_id[claim.id].verdict == claim.verdict


@settings(max_examples=12, deadline=None)
@given(numbers=st.lists(st.tuples(*[st.integers(min_value=0, max_value=7) for _ in THINGS]), min_size=2, max_size=3))
def test_no_smaller_change_of_any_kind_of_the_dig_turns_a_verdict(numbers: list[tuple[int, ...]]) -> None:
    """Each kind that lies anywhere on the dig, changed by fewer items than foretold, leaves the verdict as it is."""
    digs = [
        [(taxon, part, n) for (taxon, part), n in zip(THINGS, row, strict=True) if n] for row in numbers
    ]  # fmt: skip
    project = a_dig(digs)
    of_dig = {(taxon, part) for dig in digs for taxon, part, _ in dig}
    claims = judge(project, packs(), replicates=0)
    for claim in claims.about(Subject(level="sample", id="S1")):
        least = min((abs(t.items) for t in claim.turnings), default=4)
        for taxon, part in sorted(of_dig):
            held = sum(n for t, p, n in digs[0] if (t, p) == (taxon, part))
            for items in (i for i in range(-min(held, least - 1), least) if i):
                kind = Turning(
                    items=items,
                    taxon=TaxonId(taxon),
                    part=part,  # type: ignore[arg-type]
                    condition="charred",
                    sample="S1",
                    verdict="holds",
                    says="",
                )
                other = judge(changed(project, ["S1"], kind, items), packs(), replicates=0)

                assert other.by_id[claim.id].verdict == claim.verdict, (claim.id, taxon, part, items)


def _makes_hold_only(claim: Claim, turning: Turning) -> bool:
    """A second change of the same direction is there because it makes the claim hold, and the smaller one does not."""
    first = next(t for t in claim.turnings if (t.items > 0) == (turning.items > 0))
    return first is not turning


KIND = Kind(
    taxon=TaxonId("Zea mays"),
    either=(),
    written="",
    is_certain=True,
    part="kernel",
    condition="charred",
    completeness="whole",
    fraction="light",
)


@pytest.mark.parametrize(
    ("kind", "items", "expected"),
    [
        (KIND, 2, "two more maize kernels"),
        (KIND, 1, "one more maize kernel"),
        (KIND, -12, "twelve fewer maize kernels"),
        (KIND, 13, "13 more maize kernels"),
        (replace(KIND, condition="uncharred"), -1, "one fewer uncharred maize kernel"),
        (replace(KIND, is_certain=False), 3, "three more cf. maize kernels"),
        (replace(KIND, taxon=None, written="Poaceae indet.", part="seed"), 4, "four more Poaceae indet. seeds"),
    ],
)
def test_the_change_is_said_in_words(kind: Kind, items: int, expected: str) -> None:
    """Numbers up to twelve in words, the trade's name of the plant, the part in singular or plural."""
    assert said(kind, items, small_packs()) == expected
