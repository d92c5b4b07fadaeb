"""Simulated digs: their pieces against published experiments and tables, and the laws that any dig obeys."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from narrate.measures.units import Units
from narrate.model.packs import Packs
from narrate.model.rules import Selector
from narrate.reading.packs import read_packs
from narrate.trials.activities import HEATS, Region, Trial, survival
from narrate.trials.east import EAST
from narrate.trials.europe import EUROPE
from narrate.trials.simulate import Dug, simulate
from narrate.trials.southwest import SOUTHWEST
from narrate.trials.worlds import BREAKABLE

REGIONS = (EAST, SOUTHWEST, EUROPE)


@cache
def packs_of(region: str) -> Packs:
    return read_packs((region,))[0]


@cache
def usual_southwest() -> Dug:
    return simulate(SOUTHWEST, packs_of(SOUTHWEST.name), Trial(digs=200, is_usual=True), seed=3)


@pytest.mark.parametrize("region", REGIONS, ids=lambda r: r.name)
def test_every_word_of_a_region_is_known_to_its_packs(region: Region) -> None:
    """Taxa, parts, kinds of context and statements of the tables are those of the packs."""
    packs = packs_of(region.name)

    taxa = {t for a in region.activities for y in a.yields for t in y.taxa} | {*region.strays, *region.later}
    assert taxa - set(packs.taxa) == set()
    assert {y.part for a in region.activities for y in a.yields} - set(packs.words.parts) == set()
    assert {s for a in region.activities for s in a.true} - set(packs.statements) == set()
    assert set(region.kinds) - set(packs.words.context_kinds) == set()


def test_the_same_seed_gives_the_same_digs() -> None:
    """Counts and truths are the same; another seed gives others."""
    one, same, other = (simulate(EAST, packs_of(EAST.name), Trial(digs=4), seed) for seed in (7, 7, 8))

    assert np.array_equal(one.table.counted, same.table.counted)
    assert all(np.array_equal(one.truth[s], same.truth[s]) for s in one.truth)
    assert one.table.counted.shape != other.table.counted.shape or not np.array_equal(
        one.table.counted, other.table.counted
    )


@pytest.mark.parametrize("heat", range(len(HEATS)), ids=HEATS)
def test_grain_survives_fire_before_glume_bases_before_culm_nodes(heat: int) -> None:
    """The order of survival in charring. Source: Boardman & Jones 1990, JAS 17:1–11, as quoted."""
    grain, base, node = (survival(part)[heat] for part in ("grain", "glume base", "culm node"))

    assert grain > base > node


def test_cupules_outlast_kernels_at_high_heat_alone() -> None:
    """Kernels last as cupules do at moderate heat only. Source: Goette et al. 1994, from memory; direction only."""
    low, high = HEATS.index("low"), HEATS.index("high")

    assert survival("kernel")[low] == survival("cupule")[low]
    assert survival("kernel")[high] < survival("cupule")[high] / 2


def test_recovery_stays_within_what_has_been_reported() -> None:
    """Marked seeds come back at 6 to 98 %. Source: Wagner 1982, American Antiquity 47:127–132, abstract."""
    dug = simulate(EAST, packs_of(EAST.name), Trial(digs=300), seed=5)
    tested = dug.table.added > 0
    of_dig = dug.table.unit_of_sample["phase"][tested]
    back = np.bincount(of_dig, dug.table.recovered[tested]) / np.bincount(of_dig, dug.table.added[tested])

    assert 0.02 < back.min() < 0.3
    assert 0.9 < back.max() <= 1.0


@pytest.mark.parametrize(
    ("what", "selector", "low", "high"),
    [
        ("juniper", Selector(taxon=("Juniperus",), role=("wood",)), 0.733, 0.944),
        ("maize cob parts", Selector(taxon=("Zea mays",), role=("cob",)), 0.271, 0.566),
        ("pine bark scales", Selector(taxon=("Pinus",), part=("bark scale",)), 0.206, 0.490),
        ("pine wood", Selector(taxon=("Pinus",), part=("wood",)), 0.206, 0.490),
        ("sagebrush", Selector(taxon=("Artemisia",), role=("wood",)), 0.041, 0.236),
        ("serviceberry", Selector(taxon=("Amelanchier",), role=("wood",)), 0.041, 0.236),
    ],
)  # type: ignore[arg-type]
def test_fires_of_the_southwest_hold_what_a_pueblo_s_fires_held(
    what: str, selector: Selector, low: float, high: float
) -> None:
    """
    Ubiquity in primary fires of late phases lies within the Wilson interval of the count of 39 samples.

    Source: Adams, Kuckelman & Bowyer 2007, The Sand Canyon Pueblo archaeological project, Table 6 (counts); intervals
    worked out from them.
    """
    dug = usual_southwest()
    kinds = [list(SOUTHWEST.kinds).index(kind) for kind in ("hearth", "firepit", "burned area")]
    is_fire = np.isin(dug.deposits.kind, kinds) & (dug.deposits.deposit == 0)
    meant = is_fire[dug.table.unit_of_sample["context"]] & (dug.table.phase_end["sample"] >= 1060)
    units = Units(dug.table, "sample", packs_of(SOUTHWEST.name), "charred")
    found = (units.counted(selector)[0] > 0)[meant].mean()

    assert low < found < high


def test_one_crop_s_share_of_contexts_spreads_as_widely_as_published() -> None:
    """
    Maize makes up from under 3 % to over 68 % of the food remains of contexts.

    Source: Gremillion, Excavating Occaneechi Town, plant remains of Fredricks, "Crops": 2.6 % to 68.3 % by context.
    """
    dug = simulate(EAST, packs_of(EAST.name), Trial(digs=100), seed=9)
    units = Units(dug.table, "context", packs_of(EAST.name), "charred")
    maize = units.counted(Selector(taxon=("Zea mays",)))[0]  # type: ignore[arg-type]
    food = units.counted(Selector(not_role=("wood",)))[0]
    share = (maize / np.maximum(food, 1))[(food >= 50) & (maize > 0)]

    assert share.min() < 0.026
    assert np.percentile(share, 75) > 0.683


def test_counts_of_samples_from_one_deposit_spread_wider_than_chance() -> None:
    """The variance of counts between samples of a context exceeds their mean. Common practice, no source."""
    dug = usual_southwest()
    units = Units(dug.table, "sample", packs_of(SOUTHWEST.name), "charred")
    items = units.counted(Selector(not_role=("wood",)))[0]
    context, litres = dug.table.unit_of_sample["context"], dug.table.volume_l
    expected = (np.bincount(context, items) / np.bincount(context, litres))[context] * litres
    squares = np.bincount(context, (items - expected) ** 2 / np.maximum(expected, 1e-9))
    number, total = np.bincount(context), np.bincount(context, items)
    many = (number >= 3) & (total >= 10)

    assert np.median(squares[many] / (number[many] - 1)) > 1.5


@pytest.mark.parametrize("broken", sorted(BREAKABLE))
def test_a_broken_assumption_changes_the_digs(broken: str) -> None:
    """Each assumption that can be broken is one that the model makes."""
    region = EUROPE if broken == "weeds grow anywhere" else EAST
    packs = packs_of(region.name)
    usual = simulate(region, packs, Trial(digs=6), seed=2)
    other = simulate(region, packs, Trial(digs=6, broken=frozenset({broken})), seed=2)

    same_counts = np.array_equal(usual.table.counted, other.table.counted)
    same_records = [r.values for r in usual.records] == [r.values for r in other.records]
    assert not (same_counts and same_records)


def test_a_crop_is_not_found_before_the_region_had_it() -> None:
    """Maize lies in no undisturbed deposit of a dig that ended before maize came."""
    packs = packs_of(EAST.name)
    dug = simulate(EAST, packs, Trial(digs=60), seed=4)
    maize = Units(dug.table, "sample", packs, "charred").counted(Selector(taxon=("Zea mays",)))[0]  # type: ignore[arg-type]
    before = dug.table.phase_end["sample"] < (packs.taxa["Zea mays"].earliest or 0)  # type: ignore[index]

    assert before.any()
    assert maize[before].sum() == 0
