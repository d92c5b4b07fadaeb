"""Rules of one region are in force only under its pack, and their examples wait until it is in use."""

from __future__ import annotations

from dataclasses import replace

from narrate.judging.check_rules import check_rules
from narrate.judging.criteria import Look, verdicts
from narrate.judging.facts import recorded
from narrate.judging.judge import rules_of
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.ids import PartId, TaxonId
from narrate.model.packs import Packs
from narrate.model.plants import Ecology, Part, Taxon
from narrate.model.project import Project
from narrate.model.rules import Selector
from tests.judging.rules import CUPULE, HERE, KERNEL, a_rule, an_example, bound, fact, packs_with
from tests.measures.digs import a_dig, a_row
from tests.small_packs import small_packs


def _look(dig: Project, packs: Packs) -> Look:
    table = count_table(dig, packs)
    return Look(Units(table, "sample", packs, "charred"), Units(table, "phase", packs, "charred"), recorded(dig, packs))


SPELT = Selector(taxon=("Triticum spelta",))


def test_a_rule_of_another_region_is_not_in_force() -> None:
    """A rule for temperate Europe judges nothing in eastern North America, nor is it checked there."""
    rule = a_rule(criteria=bound("items", SPELT, at_least=1, name="kpc"), regions=("temperate-europe",))
    packs = replace(packs_with(rule), regions=("eastern-north-america",))

    assert rules_of("sample", packs) == {}
    assert check_rules(packs) == ()


def test_a_rule_is_in_force_under_any_of_its_regions() -> None:
    """Of several regions one in use is enough; a rule without regions is in force everywhere."""
    here = a_rule("fuel.a", regions=("arid-southwest", "eastern-north-america"))
    packs = replace(packs_with(here, a_rule("fuel.b")), regions=("eastern-north-america",))

    assert [rule.id for rule in rules_of("sample", packs)[here.statement]] == ["fuel.a", "fuel.b"]


def test_an_example_of_another_region_waits() -> None:
    """An example that names plants of a region that is not in use is not tried."""
    examples = (an_example("holds", ("Triticum spelta", "grain", 60), region="temperate-europe"),)
    packs = replace(packs_with(a_rule(examples=examples)), regions=("arid-southwest",))

    assert check_rules(packs) == ()
    assert len(check_rules(replace(packs, regions=("temperate-europe",)))) == 1


def test_the_region_is_a_fact() -> None:
    """A rule may ask which region packs the project uses."""
    dig = a_dig([[("Zea mays", "kernel", 3)]])
    packs = replace(small_packs(), regions=("arid-southwest",))
    look = _look(dig, packs)

    assert verdicts(fact("region", "arid-southwest"), look).tolist() == [[1]]
    assert verdicts(fact("region", "temperate-europe"), look).tolist() == [[-1]]


def test_a_bound_on_the_value_is_judged_as_it_stands() -> None:
    """Ten kernels to ten cupules are one to one; the interval cannot tell whether they are below one and a half."""
    dig = a_dig([[("Zea mays", "kernel", 10), ("Zea mays", "cupule", 10)]])
    packs = small_packs()
    look = _look(dig, packs)

    assert verdicts(bound("ratio", KERNEL, CUPULE, at_most=1.5), look).tolist() == [[0]]
    assert verdicts(bound("ratio", KERNEL, CUPULE, at_most=1.5, judged_on="value"), look).tolist() == [[1]]


def test_a_spikelet_fork_stands_for_two_glume_bases() -> None:
    """250 glume bases and 10 forks to 30 grains are 9 pieces of chaff to a grain (a worked sum, no source)."""
    fork = Part(
        id=PartId("spikelet fork"), plural="", plain="", plain_plural="", roles=frozenset({"chaff"}), stands_for=2
    )
    known = small_packs()
    packs = replace(known, words=replace(known.words, parts={**known.words.parts, fork.id: fork}))
    dig = a_dig([[("Poaceae", "glume base", 250), ("Poaceae", "spikelet fork", 10), ("Poaceae", "grain", 30)]])
    look = _look(dig, packs)
    column = look.column(bound("chaff_ratio", Selector(role=("chaff",)), Selector(part=(PartId("grain"),)), at_least=3))

    assert column.value.tolist() == [[9.0]]
    assert column.n.tolist() == [[290]]


def test_ecology_narrows_a_selection() -> None:
    """Keys of ecology narrow; one value of 'seed' may hold several words that must all be true."""
    weed = Taxon(
        id=TaxonId("Lapsana communis"), rank="species", family="Asteraceae", habit="herb", place=HERE,
        ecology=Ecology(sow="autumn", soil=("rich",), height="low", seed=("small", "free", "heavy"), life="annual"),
    )  # fmt: skip
    known = small_packs()
    packs = replace(
        known, taxa={**known.taxa, weed.id: weed}, taxon_lookup={**known.taxon_lookup, "lapsana communis": weed.id}
    )
    rows = [a_row("S1", "Lapsana communis", "seed", 4, packs=packs), a_row("S1", "Poaceae", "seed", 2)]
    units = Units(count_table(a_dig([[]], rows=rows), packs), "sample", packs, "charred")

    def counted(**keys: tuple[str, ...]) -> float:
        return float(units.counted(Selector(**keys))[0, 0])

    asked = [{"sow": ("autumn",)}, {"soil": ("rich", "wet")}, {"height": ("low",)}, {"seed": ("small free heavy",)},
             {"life": ("annual",)}, {"habit": ("herb",)}]  # fmt: skip
    assert [counted(**keys) for keys in asked] == [4] * 6
    assert [counted(sow=("spring",)), counted(soil=("poor",)), counted(seed=("small headed", "big"))] == [0, 0, 0]
