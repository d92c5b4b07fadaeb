"""Circumstances that hold a grade down, and what they spare."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.judging.judge import judge
from narrate.model.claims import Claim
from narrate.model.ids import StatementId, Subject, TaxonId
from narrate.model.plants import seeds_in_one_fruit
from narrate.model.project import Project
from narrate.model.rules import Limit, Rule, Selector
from narrate.pipeline.judged import Judged
from tests.judging.rules import COBS, CUPULE, KERNEL, a_rule, a_statement, bound, packs_with
from tests.measures.digs import a_dig

CHANCE = Limit(id="chance", when="may be chance", grade="suggests", says="may be chance", lifts="more samples")
TERTIARY = Limit(id="moved", when="deposit is tertiary", grade="suggests", says="deposit is tertiary", lifts="others")


def phases_with(early: int, late: int) -> Project:
    """Ten samples of each of two phases, so many of them with cupules; all hold goosefoot."""
    held = [i < k for k in (early, late) for i in range(10)]
    samples = [[("Chenopodium", "seed", 2), *([("Zea mays", "cupule", 3)] if has else [])] for has in held]
    return a_dig(samples, phases=["one"] * 10 + ["two"] * 10)  # type: ignore[arg-type]


def rises(id: str, of: Selector, statement: str = COBS) -> Rule:
    criteria = bound("ubiquity_change", of, at_least=0)
    return a_rule(id, criteria, statement=StatementId(statement), about=("site",), needs=(), says="", says_plain="")


def of_site(project: Project, *rules: Rule) -> Claim:
    others = tuple(a_statement(f"fuel.other{i}") for i in range(20))
    claims = judge(project, packs_with(*rules, statements=others, limits=(CHANCE,)), replicates=0)
    claim = claims.find(Subject(level="site", id="site"), COBS)
    assert claim is not None
    return claim


OTHERS = tuple(
    rises(f"fuel.other{i}", Selector(taxon=("Carya",), part=(part,)), f"fuel.other{i}")  # type: ignore[arg-type]
    for i, part in enumerate(("nutshell", "wood", "nutmeat", "leaf", "bud", "bark"))
)


def test_a_difference_tested_alone_needs_no_correction() -> None:
    """1 of 10 against 7 of 10 samples: Fisher's p is 0.0198 (scipy.stats.fisher_exact), below 0.05."""
    claim = of_site(phases_with(1, 7), rises("fuel.cobs", CUPULE))

    assert (claim.verdict, claim.grade, claim.limits) == ("holds", "supports", ())


def test_a_difference_among_many_must_outlast_the_correction() -> None:
    """Among seven tests Holm makes 0.0198 into 0.139, which may be chance."""
    claim = of_site(phases_with(1, 7), rises("fuel.cobs", CUPULE), *OTHERS)

    assert (claim.verdict, claim.grade) == ("holds", "suggests")
    assert [limit.says for limit in claim.limits] == ["may be chance: grade held at 'suggests'"]


def test_a_great_difference_outlasts_it() -> None:
    """0 of 10 against 10 of 10: p is 0.00001 (scipy), which seven tests make 0.00008."""
    claim = of_site(phases_with(0, 10), rises("fuel.cobs", CUPULE), *OTHERS)

    assert (claim.grade, claim.limits) == ("supports", ())


def test_a_circumstance_spares_what_it_speaks_for() -> None:
    """That a deposit is tertiary is a reason to doubt readings of it, not that it was moved."""
    dig = a_dig([[("Zea mays", "cupule", 60)]])
    moved = replace(dig, contexts=tuple(replace(c, deposit="tertiary") for c in dig.contexts))
    subject = Subject(level="context", id="C1")

    doubted = judge(moved, packs_with(a_rule(), limits=(TERTIARY,)), replicates=0).find(subject, COBS)
    spared = judge(moved, packs_with(a_rule(), limits=(replace(TERTIARY, spares=(COBS,)),)), replicates=0)

    assert doubted is not None and doubted.grade == "suggests"
    assert spared.by_id["C1/fuel.maize-cob"].grade == "supports"


def test_phases_that_disagree_are_not_pooled_unsaid() -> None:
    """Cupules in all ten late samples and in no early one: of the whole dig that is at most consistent."""
    pooled = Limit(id="pooled", when="phases disagree", grade="consistent with", says="pooled", lifts="each phase")
    rule = a_rule("fuel.wide", bound("ubiquity", CUPULE, at_least=0.29), about=("phase", "site"), needs=(), says="",
                  says_plain="")  # fmt: skip
    site = Subject(level="site", id="site")

    apart = judge(phases_with(0, 10), packs_with(rule, limits=(pooled,)), replicates=0).find(site, COBS)
    alike = judge(phases_with(9, 10), packs_with(rule, limits=(pooled,)), replicates=0).find(site, COBS)

    assert apart is not None and (apart.verdict, apart.grade) == ("holds", "consistent with")
    assert alike is not None and (alike.verdict, alike.grade, alike.limits) == ("holds", "supports", ())


FEW = Limit(
    id="few", when="few items behind", grade="suggests", says="rests on few items", lifts="more items", threshold=10.0
)


def few_claim(cupules: int, kernels: int, *, kernels_weigh: str = "weak") -> Claim:
    """A strong argument from cupules and another from kernels."""
    rules = (
        a_rule("fuel.cupules", bound("items", CUPULE, at_least=2), needs=(), says="", says_plain=""),
        a_rule(
            "fuel.kernels", bound("items", KERNEL, at_least=2), needs=(), says="", says_plain="", weight=kernels_weigh
        ),
    )
    dig = a_dig([[("Zea mays", "cupule", cupules), ("Zea mays", "kernel", kernels)]])
    claim = judge(dig, packs_with(*rules, limits=(FEW,)), replicates=0).find(Subject(level="context", id="C1"), COBS)
    assert claim is not None
    return claim


def test_a_claim_whose_chief_argument_rests_on_a_handful_is_held_down() -> None:
    """Five cupules carry the strong argument; a hundred kernels carry a weak one beside it."""
    claim = few_claim(5, 100)

    assert (claim.verdict, claim.grade) == ("holds", "suggests")
    assert [limit.says for limit in claim.limits] == ["rests on few items: grade held at 'suggests'"]


def test_a_claim_whose_chief_argument_rests_on_enough_is_not() -> None:
    """With ten cupules the strong argument stands, and five kernels beside it hold nothing down."""
    assert few_claim(10, 5).limits == ()


def test_a_second_argument_as_heavy_that_rests_on_enough_bears_the_claim() -> None:
    """Five cupules do no harm where a hundred kernels speak as strongly."""
    assert few_claim(5, 100, kernels_weigh="strong").limits == ()


def test_the_packs_hold_a_season_by_five_seeds_at_suggests(judged_example: Judged) -> None:
    """C16 has five grape seeds and C03 four of grape and persimmon: too few to support a season of gathering."""
    claims = judged_example.claims.by_id
    grades = {id: claims[f"{id}/season.autumn"].grade for id in ("C03", "C16")}  # type: ignore[index]

    assert grades == {"C03": "suggests", "C16": "suggests"}


@pytest.mark.parametrize(("context", "season"), [("C06", "autumn"), ("C06", "early-summer"), ("C22", "autumn")])
def test_fruits_and_not_seeds_are_counted_towards_the_limit(
    judged_example: Judged, context: str, season: str
) -> None:
    """
    Ten persimmon and eight grape seeds of C06 may be of four fruits, 39 of strawberry of one.

    Source: seeds of one fruit from memory, as the packs mark them (`seeds_per_fruit`).
    """
    claim = judged_example.claims.by_id[f"{context}/season.{season}"]  # type: ignore[index]

    assert claim.grade == "suggests"
    assert "items.few-behind" in [limit.limit for limit in claim.limits]


def test_a_species_holds_as_many_seeds_as_its_genus(judged_example: Judged) -> None:
    """Of persimmon the pack says eight; a wild strawberry has the number of its genus; a hickory has none."""
    taxa = judged_example.packs.taxa
    of = [("Diospyros virginiana", "seed"), ("Fragaria virginiana", "seed"), ("Carya", "nutshell"), ("Vitis", "fruit")]

    assert [seeds_in_one_fruit(taxa, TaxonId(id), part) for id, part in of] == [8, 50, 1, 1]
