"""How far each interval would narrow if the rest were sorted."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from narrate.measures.catalogue import MEASURES, measured
from narrate.measures.intervals import clopper_pearson, each_once
from narrate.measures.narrowing import finished, sorted_whole
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row, units

ALL = Selector()
SEEDS = Selector(taxon=("Chenopodium",))
MAIZE = Selector(taxon=("Zea mays",))
NARROWED = tuple(id for id in MEASURES if id.endswith("_width_if_sorted"))


def quarter(*found: tuple[str, str, int], share: float = 0.25, litres: float | None = 10.0):  # type: ignore[no-untyped-def]
    """One sample of which all rows come from a size class that was sorted in part."""
    return units(a_dig([[]], rows=[a_row("S1", *f, share=share) for f in found], litres=litres))


def left(id: str, dig, to: Selector = MAIZE) -> float:  # type: ignore[no-untyped-def]
    return float(measured(id, dig, of=SEEDS, to=to).value[0, 0])


def test_a_density_narrows_as_exact_poisson_ends_do() -> None:
    """Ten in a quarter give 4 × Garwood's ends of 10; forty in all give those of 40 (scipy's chi-square)."""
    ends = {k: stats.chi2.ppf([0.025, 0.975], [2 * k, 2 * k + 2]) / 2 for k in (10, 40)}

    found = left("density_width_if_sorted", quarter(("Chenopodium", "seed", 10)))

    assert found == pytest.approx(np.ptp(ends[40]) / (4 * np.ptp(ends[10])), rel=1e-6)


def test_a_ratio_narrows_as_clopper_and_pearsons_ends_do() -> None:
    """Twelve to eight in a quarter against 48 to 32 (scipy's exact interval of the share)."""
    ends = {}
    for k, n in ((12, 20), (48, 80)):
        share = stats.binomtest(k, n).proportion_ci(method="exact")
        ends[k] = share.high / (1 - share.high) - share.low / (1 - share.low)

    found = left("ratio_width_if_sorted", quarter(("Chenopodium", "seed", 12), ("Zea mays", "kernel", 8)))

    assert found == pytest.approx(ends[48] / ends[12], rel=1e-6)


def test_items_scaled_up_are_known_once_all_are_sorted() -> None:
    """Nothing is left of the doubt how many the unsorted share holds."""
    assert left("scaled_up_width_if_sorted", quarter(("Chenopodium", "seed", 10))) == 0


@pytest.mark.parametrize("id", NARROWED)
def test_what_was_sorted_whole_does_not_narrow(id: str) -> None:
    """All that there is was counted: the width left is all of it, or there is no width."""
    dig = quarter(("Chenopodium", "seed", 10), ("Zea mays", "kernel", 7), ("Zea mays", "cupule", 4), share=1.0)

    value = measured(id, dig, of=ALL, to=MAIZE).value[0, 0]

    assert np.isnan(value) or value == pytest.approx(1)


def test_without_an_interval_there_is_nothing_to_narrow() -> None:
    """No litres, no density; no maize, a ratio that is open above."""
    dig = quarter(("Chenopodium", "seed", 10), litres=None)

    for id in ("density_width_if_sorted", "ratio_width_if_sorted"):
        column = measured(id, dig, of=SEEDS, to=MAIZE)
        assert np.isnan(column.value[0, 0])
        assert column.reason == "there is no interval, or one that is open above"


def test_finishing_some_rows_leaves_the_others() -> None:
    """Only the rows named are taken for sorted whole."""
    dig = quarter(("Chenopodium", "seed", 10), ("Zea mays", "kernel", 2))

    table = sorted_whole(dig.table, np.array([True, False]))

    assert table.counted.tolist() == [[40, 2]]
    assert table.share.tolist() == [1, 0.25]
    assert finished(dig, np.array([True, False])).counted(ALL).tolist() == [[42]]


def test_grams_stay_what_they_were_estimated_to_be() -> None:
    """Two grams in a quarter are eight in all, before the rest is sorted and after."""
    dig = units(a_dig([[]], rows=[a_row("S1", "Carya", "wood", None, mass_g=2.0, share=0.25)]))

    assert dig.mass_g(ALL)[0].tolist() == finished(dig).mass_g(ALL)[0].tolist() == [[8]]


@settings(max_examples=60, deadline=None)
@given(k=st.integers(1, 200), share=st.sampled_from([0.1, 0.25, 0.3, 0.5, 0.7, 0.9]))
def test_a_density_never_widens(k: int, share: float) -> None:
    """What is found adds to what is known, and about as the square root of the share that was sorted."""
    found = left("density_width_if_sorted", quarter(("Chenopodium", "seed", k), share=share))

    assert found < 1
    assert found == pytest.approx(share**0.5, abs=0.2)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(0, 400), st.integers(1, 400)), min_size=2, max_size=30), st.floats(0.05, 1))
def test_counts_between_whole_numbers_keep_their_own_ends(pairs: list[tuple[int, int]], part: float) -> None:
    """Expected counts are told apart: each of many has the ends that it has alone."""
    n = np.array([float(max(pair)) for pair in pairs])
    k = np.array([min(pair) * part for pair in pairs])

    together = clopper_pearson(k, n)

    for i in range(len(pairs)):
        alone = clopper_pearson(k[i : i + 1], n[i : i + 1])
        assert [end[i] for end in together] == pytest.approx([end[0] for end in alone], abs=1e-9)


def test_numbers_that_are_not_whole_are_not_taken_for_others() -> None:
    """10.2 of 29 is not 10.5 of 20."""
    (first, second), where = each_once(np.array([10.2, 10.5, 10.2]), np.array([29.0, 20.0, 29.0]))

    assert first[where].tolist() == [10.2, 10.5, 10.2]
    assert second[where].tolist() == [29, 20, 29]
