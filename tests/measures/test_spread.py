"""In how many samples groups of plants were found, by phase and kind of context."""

from __future__ import annotations

from dataclasses import replace

import pytest
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

from narrate.measures.findings import find
from narrate.model.findings import Findings
from narrate.model.ids import TaxonId
from narrate.model.plant_groups import GroupSpread, PlantGroup
from narrate.model.rules import Selector
from tests.measures.digs import HERE, a_dig, a_row
from tests.small_packs import small_packs

MAIZE = PlantGroup(id="maize", name="maize", plain="corn", of=Selector(taxon=("Zea mays",)), place=HERE)
KERNEL, CUPULE, SEED = ("Zea mays", "kernel", 2), ("Zea mays", "cupule", 5), ("Chenopodium", "seed", 4)
HELD = [[KERNEL], [SEED], [SEED], [], [KERNEL, CUPULE], [CUPULE], [SEED]]
PHASES = ["early"] * 4 + ["late"] * 3
KINDS = ["pit", "pit", "hearth", "hearth", "pit", "hearth", "hearth"]


def found(**more) -> Findings:  # type: ignore[no-untyped-def]
    dig = a_dig(HELD, phases=PHASES, **more)
    contexts = tuple(replace(c, kind=kind) for c, kind in zip(dig.contexts, KINDS, strict=True))
    return find(replace(dig, contexts=contexts), replace(small_packs(), plant_groups=(MAIZE,)))


def spread(phase: str | None, kind: str = "") -> GroupSpread:
    return next(s for s in found().spreads if (s.phase, s.kind) == (phase, kind))


def test_a_group_is_counted_in_every_phase_and_kind() -> None:
    """Samples with it and samples, sterile ones kept: of the dig, by phase, by kind, and by kind in a phase."""
    numbers = {(s.phase, s.kind): (s.with_it, s.of_samples) for s in found().spreads}

    assert numbers == {
        (None, ""): (3, 7), ("early", ""): (1, 4), ("late", ""): (2, 3),
        (None, "pit"): (2, 3), (None, "hearth"): (1, 4),
        ("early", "pit"): (1, 2), ("early", "hearth"): (0, 2), ("late", "pit"): (1, 1), ("late", "hearth"): (1, 2),
    }  # fmt: skip


def test_a_spread_has_its_wilson_interval() -> None:
    """Two of three, as statsmodels has it."""
    low, high = proportion_confint(2, 3, method="wilson")

    assert (spread("late").ubiquity.low, spread("late").ubiquity.high) == pytest.approx((low, high))


def test_a_change_has_newcombes_interval() -> None:
    """One of four, then two of three, as statsmodels has it."""
    low, high = confint_proportions_2indep(2, 3, 1, 4, method="newcomb")
    change = next(c.difference for c in found().changes if not c.kind)

    assert (change.value, change.low, change.high) == pytest.approx((2 / 3 - 1 / 4, low, high))


def test_like_is_compared_with_like() -> None:
    """Each kind of context that both phases have has a change of its own."""
    assert {(c.first, c.last, c.kind) for c in found().changes} == {
        ("early", "late", ""),
        ("early", "late", "pit"),
        ("early", "late", "hearth"),
    }


def test_a_spread_leads_to_one_find_of_each_sample() -> None:
    """The largest find of the group: the cupules of the fifth sample."""
    assert spread("late").refs == ("S5/found.zea-mays.cupule", "S6/found.zea-mays.cupule")


def test_a_mark_of_presence_counts_a_sample() -> None:
    """Noted is found, without a number."""
    rows = [a_row("S2", "Zea mays", "kernel", None)]

    assert next(s for s in found(rows=rows).spreads if (s.phase, s.kind) == (None, "")).with_it == 4


def test_what_is_not_old_is_not_found() -> None:
    """An uncharred kernel at a dry site is no find of the group."""
    rows = [a_row("S2", "Zea mays", "kernel", 3, condition="uncharred")]

    assert next(s for s in found(rows=rows).spreads if (s.phase, s.kind) == (None, "")).with_it == 3


def test_a_plant_that_came_after_the_phase_is_no_find_of_it() -> None:
    """Chickweed came from the Old World after 1600; in a phase of AD 900–1000 the group is told without it."""
    packs = small_packs()
    chickweed = replace(packs.taxa[TaxonId("Stellaria media")], tags=frozenset({"old-world"}))
    seeds = PlantGroup(id="seed", name="seeds", plain="seeds", of=Selector(part=("seed",)), place=HERE)
    known = replace(packs, taxa={**packs.taxa, chickweed.id: chickweed}, plant_groups=(seeds,))
    dig = a_dig([[SEED], [("Stellaria media", "seed", 3)]])

    assert next(s for s in find(dig, known).spreads if (s.phase, s.kind) == (None, "")).with_it == 1
