"""How many items of groups of plants there were per litre, by phase and kind of context."""

from __future__ import annotations

from dataclasses import replace

import pytest
from scipy.stats import chi2

from narrate.measures.findings import find
from narrate.model.plant_groups import GroupAmount, PlantGroup
from narrate.model.project import Project
from narrate.model.rules import Selector
from tests.measures.digs import HERE, a_dig, a_row
from tests.small_packs import small_packs

MAIZE = PlantGroup(id="maize", name="maize", plain="corn", of=Selector(taxon=("Zea mays",)), place=HERE)
HELD = [[("Zea mays", "kernel", 2)], [], [("Zea mays", "kernel", 30)], [("Zea mays", "kernel", 6)], []]
PHASES = ["early"] * 2 + ["late"] * 3


def amount(dig: Project, phase: str, kind: str = "") -> GroupAmount:
    found = find(dig, replace(small_packs(), plant_groups=(MAIZE,)))
    return next(a for a in found.amounts if (a.phase, a.kind) == (phase, kind))


def test_items_of_a_phase_are_spread_over_all_its_litres() -> None:
    """2 kernels in 20 litres, sterile soil with the rest: 0.1 a litre (common practice, no source)."""
    early = amount(a_dig(HELD, phases=PHASES), "early")

    assert (early.items, early.litres, early.per_litre.value) == (2, 20.0, pytest.approx(0.1))


def test_the_interval_is_the_exact_one_of_a_count() -> None:
    """Garwood's ends of 36 by scipy's chi-square, over 30 litres."""
    late = amount(a_dig(HELD, phases=PHASES), "late")

    assert (late.per_litre.low, late.per_litre.high) == pytest.approx(
        (chi2.ppf(0.025, 72) / 2 / 30, chi2.ppf(0.975, 74) / 2 / 30), rel=1e-4
    )


def test_what_is_left_without_the_richest_context_is_told_with_its_own_litres() -> None:
    """Without the context of 30 kernels 6 are left in 20 litres (common practice, no source)."""
    late = amount(a_dig(HELD, phases=PHASES), "late")

    assert (late.richest, late.without_richest.value) == ("C3", pytest.approx(0.3))


def test_an_unsorted_share_is_scaled_up() -> None:
    """5 kernels in a quarter of a class stand for 20, in 10 litres 2 a litre (common practice, no source)."""
    dig = a_dig([[]], phases=["early"], rows=[a_row("S1", "Zea mays", "kernel", 5, share=0.25)])

    assert amount(dig, "early").per_litre.value == pytest.approx(2.0)


def test_without_litres_there_is_no_amount() -> None:
    """No volume, no density: it is said why."""
    early = amount(a_dig(HELD, phases=PHASES, litres=None), "early")

    assert (early.per_litre.value, early.per_litre.reason) == (None, "no volume was recorded")


def test_doubling_items_and_litres_leaves_the_amount() -> None:
    """A law: the same soil twice is no denser."""
    doubled = [*HELD, *HELD]

    once, twice = (amount(a_dig(h, phases=p), "late") for h, p in ((HELD, PHASES), (doubled, PHASES * 2)))
    assert once.per_litre.value == pytest.approx(twice.per_litre.value)
