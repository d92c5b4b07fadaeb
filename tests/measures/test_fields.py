"""Weeds and crops: company over samples, shares of sorts, triangles."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import contingency

from narrate.judging.kept_units import KeptUnits
from narrate.measures import association as company
from narrate.measures.association import association, phi, with_same_margins
from narrate.measures.count_table import count_table
from narrate.measures.fields import field_shares, triangle, triangle_points
from narrate.measures.units import Units
from narrate.model.plants import Ecology
from tests.measures.digs import Found, a_dig, units
from tests.small_packs import small_packs

MAIZE: Found = ("Zea mays", "kernel", 2)
WEED: Found = ("Chenopodium", "seed", 3)
OTHER: Found = ("Amaranthus", "seed", 3)


def test_phi_is_that_of_scipy() -> None:
    """For 2 x 2 tables phi is Cramer's V with a sign."""
    generator = np.random.default_rng(1)
    there = generator.random((40, 2)) < 0.4
    table = np.array([[np.sum((there[:, 0] == a) & (there[:, 1] == b)) for b in (True, False)] for a in (True, False)])

    found = phi(there[:, :1], there[:, 1:])[0, 0]
    assert abs(found) == pytest.approx(contingency.association(table, method="cramer"))
    assert np.sign(found) == np.sign(table[0, 0] * table[1, 1] - table[0, 1] * table[1, 0])


@given(st.integers(2, 9), st.integers(2, 7), st.integers(0, 10_000))
def test_trades_keep_both_margins(samples: int, things: int, seed: int) -> None:
    """Every drawn table has the row sums and the column sums of the table seen."""
    there = np.random.default_rng(seed).random((samples, things)) < 0.5
    drawn = with_same_margins(there, 5, seed)

    assert np.all(drawn.sum(axis=1) == there.sum(axis=0)) and np.all(drawn.sum(axis=2) == there.sum(axis=1))


def test_trades_reach_every_table_with_the_same_margins_about_as_often() -> None:
    """
    Row sums 1, 1, 2 and column sums 2, 1, 1: there are five such tables (counted by hand: the two rows of one hold
    the same or different things), and each comes up in about a fifth of 5,000 draws.
    """
    there = np.array([[1, 0, 0], [1, 0, 0], [0, 1, 1]], bool)
    drawn = with_same_margins(there, 5000, 2)
    kinds, times = np.unique(drawn.reshape(5000, -1), axis=0, return_counts=True)

    assert len(kinds) == 5
    assert np.all(np.abs(times / 5000 - 0.2) < 0.03)


def test_a_weed_of_the_crop_is_told_from_one_of_rich_samples() -> None:
    """
    Chenopodium lies in every sample with maize and in no other; Amaranthus lies where anything much lies. Only the
    first keeps company beyond what rich and poor samples make of it.
    """
    filler: list[Found] = [(f"plant {i}", "seed", 1) for i in range(6)]
    with_maize = [[MAIZE, WEED, OTHER, *filler]] * 9 + [[MAIZE, WEED]] * 3
    without = [[OTHER, *filler]] * 5 + [[filler[0]]] * 7 + [[]] * 6
    found = association(units(a_dig([*with_maize, *without])), permutations=499, seed=3)
    by_weed = {row.weed: row for row in found.rows}

    assert by_weed["Chenopodium"].phi == 1 and by_weed["Chenopodium"].p_holm <= 0.05
    assert by_weed["Amaranthus"].phi > 0.4 and by_weed["Amaranthus"].p_holm > 0.05
    assert (by_weed["Chenopodium"].both, by_weed["Chenopodium"].neither) == (12, 18)


def test_samples_trade_within_their_group_alone() -> None:
    """Every group keeps its own column sums (strata as in ter Braak's restricted permutations), one alone its row."""
    there = np.random.default_rng(4).random((9, 5)) < 0.5
    groups = np.array([1, 0, 0, 1, -1, 0, 1, 0, 2])
    drawn = with_same_margins(there, 50, 5, groups)

    for group in np.unique(groups):
        assert np.all(drawn[:, groups == group].sum(axis=1) == there[groups == group].sum(axis=0))
    assert np.all(drawn.sum(axis=2) == there.sum(axis=1))
    assert np.all(drawn[:, 8] == there[8]) and np.any(drawn[:, groups == 0] != there[groups == 0])


def test_a_weed_that_went_out_when_the_crop_came_in_does_not_stay_away_from_it() -> None:
    """Fat hen in most early samples, maize in most late ones: apart over the dig, unrelated within each phase."""
    filler: list[list[Found]] = [[(f"plant {i}", "seed", 1) for i in range(1 + n % 4)] for n in range(40)]
    early = [[*([WEED] if n % 10 else []), *([MAIZE] if n % 10 == 5 else []), *filler[n]] for n in range(20)]
    late = [[*([MAIZE] if n % 10 else []), *([WEED] if n % 10 == 5 else []), *filler[n]] for n in range(20)]
    phases = ["early"] * 20 + ["late"] * 20
    (parted,) = association(units(a_dig([*early, *late], phases=phases)), permutations=199, seed=3).rows
    (joined,) = association(units(a_dig([*early, *late])), permutations=199, seed=3).rows

    assert parted.phi == joined.phi < -0.5
    assert joined.p_holm <= 0.05 < parted.p_holm
    assert parted.expected_phi < -0.4


def test_what_came_of_tables_is_kept_while_every_thing_lies_where_it_lay(monkeypatch: pytest.MonkeyPatch) -> None:
    """Another count draws no tables again and gives the same; a plant in one more sample is looked at anew."""
    held: list[list[Found]] = [[MAIZE, WEED]] * 8 + [[OTHER]] * 8
    more: list[list[Found]] = [[("Zea mays", "kernel", 40), WEED], *held[1:]]
    kept = KeptUnits()
    first = association(units(a_dig(held)), permutations=99, kept=kept)
    fresh = association(units(a_dig([[MAIZE], *held[1:]])), permutations=99)
    again = association(units(a_dig([[MAIZE], *held[1:]])), permutations=99, kept=kept)
    monkeypatch.setattr(company, "_some_with_same_margins", None)

    assert association(units(a_dig(more)), permutations=99, kept=kept) == first
    assert again == fresh != first


def test_pairs_in_too_few_samples_are_not_tested_and_are_counted() -> None:
    """Maize in two samples: no pair, a reason, and the number left out."""
    found = association(units(a_dig([[MAIZE, WEED], [MAIZE], [WEED], []])), permutations=9)

    assert found.rows == () and found.left_out == 1
    assert found.reason.startswith("no crop part and no weed are in 5 samples or more")


def with_ecology() -> Units:
    packs = small_packs()
    ecology = {
        "Chenopodium": Ecology(field_weed="strong", sow="spring", soil=("rich",), seed=("small", "free", "heavy")),
        "Amaranthus": Ecology(
            field_weed="strong", sow="autumn", soil=("rich", "dry"), seed=("small", "headed", "light")
        ),
        "Carya": Ecology(),
    }
    taxa = {id: replace(t, ecology=ecology.get(id, t.ecology)) for id, t in packs.taxa.items()}
    packs = replace(packs, taxa=taxa)
    dig = a_dig(
        [[("Chenopodium", "seed", 30), ("Amaranthus", "seed", 10), ("Carya", "seed", 5), ("Zea mays", "kernel", 9)]]
    )
    return Units(count_table(dig, packs), "sample", packs, "charred")


def test_shares_of_sorts_are_among_seeds_whose_sort_is_known() -> None:
    """30 spring, 10 autumn, 5 unknown: 0.75 of 40, and the 5 are told beside."""
    found = {(f.attribute, f.value): f for f in field_shares(with_ecology())}

    assert found["sow", "spring"].share.value == 0.75 and found["sow", "spring"].share.n == 40
    assert found["sow", "spring"].unknown == 5
    assert found["soil", "rich"].share.value == 1.0 and found["soil", "dry"].share.value == 0.25


def test_the_six_sorts_of_seed_are_told_by_size_head_and_weight() -> None:
    """Small, free, heavy: the cleanings of the fine sieve (G. Jones 1984; from memory)."""
    found = {f.value: f for f in field_shares(with_ecology()) if f.attribute == "seed"}

    assert len(found) == 6
    assert (
        found["small free heavy"].of == 30 and found["small headed light"].of == 10 and found["big free heavy"].of == 0
    )


def test_corners_of_the_triangle() -> None:
    """Grain on top, chaff right, weeds left, and the middle (geometry)."""
    x, y = triangle(*(np.array(part, float) for part in ([1, 0, 0, 1], [0, 1, 0, 1], [0, 0, 1, 1])))

    assert x == pytest.approx([0.5, 1, 0, 0.5]) and y == pytest.approx([0.8660, 0, 0, 0.2887], abs=5e-5)


@given(st.tuples(*[st.integers(0, 900)] * 3).filter(lambda t: sum(t) > 0))
def test_points_lie_in_the_triangle_whatever_the_amounts(amounts: tuple[int, int, int]) -> None:
    """And twice the amounts lie at the same place."""
    x, y = triangle(*(np.array([a]) for a in amounts))
    twice = triangle(*(np.array([2 * a]) for a in amounts))

    assert 0 <= y[0] <= np.sqrt(3) / 2 + 1e-12 and y[0] / np.sqrt(3) <= x[0] + 1e-12 <= 1 - y[0] / np.sqrt(3) + 1e-9
    assert np.allclose(twice, (x, y))


def test_units_with_few_items_are_not_in_the_triangle() -> None:
    """29 pieces are too few, 30 are enough (a default)."""
    few = units(a_dig([[("Zea mays", "kernel", 20), ("Zea mays", "cupule", 9)], [("Zea mays", "kernel", 30)]]))

    assert [p.subject.id for p in triangle_points(few)] == ["S2"]
