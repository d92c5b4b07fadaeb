"""Whole comparisons of a dig: who is compared with whom, and what is told beside p."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.measures.compared import compare
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.project import Project
from tests.measures.digs import Found, a_dig, units
from tests.small_packs import small_packs

MAIZE: Found = ("Zea mays", "kernel", 3)


def compared(dig: Project, by: str = "phase", **options):  # type: ignore[no-untyped-def]
    packs = small_packs()
    return compare(Units(count_table(dig, packs), "sample", packs, "charred"), dig, by, permutations=499, **options)


def two_phases(early: list[list[Found]], late: list[list[Found]], kinds: str = "") -> Project:
    dig = a_dig([*early, *late], phases=["early"] * len(early) + ["late"] * len(late))
    if not kinds:
        return dig
    words = {"h": "hearth", "p": "pit", "m": "midden"}
    return replace(dig, contexts=tuple(replace(c, kind=words[k]) for c, k in zip(dig.contexts, kinds, strict=True)))


def test_sterile_samples_are_counted() -> None:
    """Two samples of which one is empty: one of two."""
    found = compared(two_phases([[MAIZE], []], [[MAIZE], [MAIZE]]))

    assert found.rows[0].with_it == (1, 2) and found.rows[0].of_samples == (2, 2)


def test_the_share_of_the_richest_sample_stands_beside_every_test() -> None:
    """90 of 100 kernels lie in one sample of the late phase: that is said, whatever p is."""
    rich = [("Zea mays", "kernel", 90)], [("Zea mays", "kernel", 5)], [("Zea mays", "kernel", 5)]
    found = compared(two_phases([[MAIZE], [MAIZE], []], list(map(list, rich))))

    assert found.rows[0].richest_share == (0.5, 0.9)


def test_kinds_of_context_that_one_phase_lacks_are_set_aside_and_named() -> None:
    """A midden of the late phase alone is not compared, and its sample is counted among those left out."""
    found = compared(two_phases([[MAIZE], [MAIZE]], [[MAIZE], [], [MAIZE]], kinds="hphpm"))

    assert found.like == ("hearth", "pit")
    assert found.set_aside == (("midden", 1),)
    assert found.rows[0].of_samples == (2, 2)


def test_phases_without_a_kind_in_common_are_not_compared() -> None:
    """Hearths against middens: nothing is tested, and the reason is said."""
    found = compared(two_phases([[MAIZE], [MAIZE]], [[MAIZE], [MAIZE]], kinds="hhmm"))

    assert found.rows == () and found.reason == "there are not two groups with like contexts"


def test_a_plant_in_one_sample_is_not_tested() -> None:
    """Two samples are the least (Charles et al. 2009); what is left out is counted."""
    found = compared(two_phases([[MAIZE], [("Carya", "nutshell", 1)]], [[MAIZE], []]))

    assert [row.taxon for row in found.rows] == ["Zea mays"] and found.left_out == 1


def test_many_plants_cost_each_of_them() -> None:
    """Corrected values are never smaller than their own p, and the least is p times the number of rows."""
    taxa = [(f"plant {i}", "seed", 1) for i in range(6)]
    found = compared(two_phases([[*taxa], [*taxa[:3]], [], []], [[*taxa[2:]], [*taxa], [taxa[0]], [MAIZE, *taxa]]))

    assert len(found.rows) == 6
    least = min(row.fisher_p for row in found.rows)  # type: ignore[type-var]
    assert min(row.fisher_holm for row in found.rows) == pytest.approx(min(1, 6 * least))  # type: ignore[type-var, operator]
    assert all(row.ubiquity_holm >= row.ubiquity_p for row in found.rows)  # type: ignore[operator]


def test_three_kinds_of_context_are_compared_at_once() -> None:
    """More groups than two: permutation and Cramer's V, no difference of two and no Fisher test."""
    found = compared(two_phases([[MAIZE], [], [MAIZE]], [[MAIZE], [MAIZE], []], kinds="hpmhpm"), "kind")

    assert found.groups == ("hearth", "pit", "midden")
    assert found.rows[0].fisher_p is None and found.rows[0].difference is None
    assert found.rows[0].association is not None


def test_areas_come_from_the_records() -> None:
    """Two areas, as the location of each context says."""
    dig = two_phases([[MAIZE], [MAIZE]], [[], []])
    areas = ("north", "north", "south", "south")
    dig = replace(
        dig, contexts=tuple(replace(c, location={"area": a}) for c, a in zip(dig.contexts, areas, strict=True))
    )

    assert compared(dig, "area").groups == ("north", "south")


def test_the_same_seed_gives_the_same_table() -> None:
    """Nothing of it is left to chance that was not passed in."""
    dig = two_phases([[MAIZE], [], [MAIZE]], [[MAIZE], [MAIZE], []])

    assert compared(dig, seed=4) == compared(dig, seed=4)


def test_an_unknown_way_of_grouping_is_refused() -> None:
    """The message names the ways that there are."""
    with pytest.raises(ValueError, match="samples cannot be compared by 'weather', only by phase, kind, feature, area"):
        compared(two_phases([[MAIZE]], [[MAIZE]]), "weather")


def test_a_large_dig_is_permuted_less_often_and_says_so() -> None:
    """Of 2,000 samples 5,000 permutations are made where 9,999 were asked for: memory stays in bounds."""
    held = [[("Zea mays", "cupule", 1)]] * 1000 + [[]] * 1000

    dig = a_dig(held, phases=["early", "late"] * 1000)

    found = compare(units(dig), dig)

    assert found.permutations == 5000
    assert found.rows[0].ubiquity_p > 0.9
