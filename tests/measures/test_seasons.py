"""Months as a circle, and the fewest gatherings that explain them."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from narrate.measures.count_table import count_table
from narrate.measures.seasons import fewest_gatherings, gatherings, one_gathering_share, seasons
from narrate.measures.units import Units
from narrate.model.plants import Taxon, Window
from narrate.model.rules import Selector
from narrate.problems import Place
from tests.measures.digs import Found, a_dig
from tests.small_packs import small_packs

HERE = Place(path="test")
ALL = Selector()


def plant(name: str, *windows: tuple[tuple[int, ...], str, str]) -> Taxon:
    """Windows of its seeds: months, keeping, source."""
    return Taxon(
        id=name,  # type: ignore[arg-type]
        rank="species",
        family="",
        place=HERE,
        windows=tuple(Window(part="seed", months=m, keeping=(k,), sources=(s,)) for m, k, s in windows),  # type: ignore[arg-type]
    )


PLANTS = (
    plant("june fruit", ((6, 7), "perishable", "a")),
    plant("july fruit", ((7, 8), "perishable", "a")),
    plant("autumn nut", ((9, 10, 11), "stored", "a")),
    plant("winter hip", ((11, 12, 1, 2), "persists", "a")),
    plant("disputed", ((5, 6), "perishable", "a"), ((6, 7, 8), "perishable", "b")),
    plant("torn", ((4,), "perishable", "a"), ((9,), "perishable", "b")),
    plant("no months"),
    plant("weed of the crop", ((7, 8), "with the crop", "a")),
    replace(plant("late comer", ((6,), "perishable", "a")), tags=frozenset(("old-world",)), earliest=1540),
)


def units_of(*names: str) -> Units:
    packs = small_packs()
    packs = replace(
        packs,
        taxa={**packs.taxa, **{p.id: p for p in PLANTS}},
        taxon_lookup={**packs.taxon_lookup, **{p.id: p.id for p in PLANTS}},
    )
    found: list[Found] = [(name, "seed", 2) for name in names]
    dig = a_dig([found])
    named = tuple(
        replace(row, identification=replace(row.identification, taxon=row.identification.written)) for row in dig.counts
    )
    dig = replace(dig, counts=named)
    return Units(count_table(dig, packs), "sample", packs, "charred")


def test_fruits_that_overlap_are_one_gathering() -> None:
    """June-July and July-August: July explains both."""
    assert fewest_gatherings([(6, 7), (7, 8)]).plans == ((7,),)


def test_a_window_goes_round_the_new_year() -> None:
    """November to February and January: one gathering in January."""
    assert fewest_gatherings([(11, 12, 1, 2), (1,)]).plans == ((1,),)


def test_greed_would_take_one_gathering_too_many() -> None:
    """
    Taking the month that meets most windows first needs three gatherings here; two are enough, and are found.

    Windows 1-2, 2-3, 2-4 (not 3), 5-3 …: month 2 meets three windows, but 3 and 1 meet all.
    """
    windows = [(2, 3), (2, 3, 5), (1, 2), (1, 4), (3, 5)]
    plans = fewest_gatherings(windows)

    assert plans.fewest == 2 and (1, 3) in plans.plans
    assert _greedy(windows) == 3


def _greedy(windows: list[tuple[int, ...]]) -> int:
    left, taken = [set(w) for w in windows], 0
    while left:
        best = max(range(1, 13), key=lambda month: sum(month in w for w in left))
        left = [w for w in left if best not in w]
        taken += 1
    return taken


@given(st.lists(st.tuples(st.integers(1, 12), st.integers(1, 6)), min_size=1, max_size=7))
def test_no_smaller_set_of_months_meets_all_windows(drawn: list[tuple[int, int]]) -> None:
    """For any circular windows the number is the least, and the plans are all sets of that size."""
    windows = [tuple((start - 1 + i) % 12 + 1 for i in range(length)) for start, length in drawn]
    found = fewest_gatherings(windows)
    assert found.fewest is not None

    def meeting(size: int) -> list[tuple[int, ...]]:
        return [c for c in combinations(range(1, 13), size) if all(set(c) & set(w) for w in windows)]

    assert list(found.plans) == meeting(found.fewest)
    assert all(not meeting(size) for size in range(1, found.fewest))


@given(st.sets(st.sampled_from([p.id for p in PLANTS]), min_size=1))
def test_the_measure_over_columns_counts_as_the_plain_function_does(names: set[str]) -> None:
    """`gatherings` for whole columns and `fewest_gatherings` for one set of windows agree."""
    dig = units_of(*sorted(names))
    plain = seasons(dig)[0].all_fresh.fewest
    found = gatherings(dig, ALL).value[0, 0]

    assert (plain is None and np.isnan(found)) or plain == found


def test_support_counts_what_one_gathering_in_each_month_could_have_given() -> None:
    """June 1, July 2, August 1 of two fruits."""
    assert seasons(units_of("june fruit", "july fruit"))[0].support == (0, 0, 0, 0, 0, 1, 2, 1, 0, 0, 0, 0)


def test_what_keeps_binds_nothing() -> None:
    """
    A nut and a hip may have been stored or picked late: two gatherings if fresh, none that binds, all months open.
    """
    found = seasons(units_of("autumn nut", "june fruit"))[0]

    assert found.all_fresh.fewest == 2
    assert found.binding.plans == ((6,), (7,))
    assert found.left_open == (1, 2, 3, 4, 5, 8, 9, 10, 11, 12)
    assert seasons(units_of("autumn nut", "winter hip"))[0].binding.fewest is None


def test_weeds_of_a_harvest_keep_with_it() -> None:
    """They ripened with the crop, lay in store with it, and speak of no month of the fire."""
    found = seasons(units_of("june fruit", "weed of the crop"))[0]

    assert found.binding.plans == ((6,), (7,))
    assert 8 in found.left_open and found.support[7] == 1


def test_a_plant_from_overseas_is_no_find_of_an_older_deposit() -> None:
    """A plant that came in 1540 lies in a pit of AD 900 to 1000: it got in later, and its months are not counted."""
    found = seasons(units_of("autumn nut", "late comer"))[0]

    assert [window.taxon for window in found.windows] == ["autumn nut"]


def test_sources_that_disagree_stay_side_by_side() -> None:
    """One says May-June, the other June-August: both are kept, June is agreed on, and the dispute is told."""
    found = seasons(units_of("disputed"))[0]

    assert [w.months for w in found.windows[0].by_source] == [(5, 6), (6, 7, 8)]
    assert (found.windows[0].any_source, found.windows[0].every_source) == ((5, 6, 7, 8), (6,))
    assert found.disputed == (("disputed", "seed"),)


def test_sources_that_share_no_month_leave_nothing_agreed() -> None:
    """April against September: no month is agreed on; as any source allows, one gathering is enough."""
    found = seasons(units_of("torn"))[0]

    assert found.windows[0].every_source == () and found.agreed_only.fewest is None
    assert found.all_fresh.fewest == 1


def test_plants_without_months_are_named() -> None:
    """What the packs do not know is told, not passed over."""
    found = seasons(units_of("no months", "june fruit"))[0]

    assert found.unknown == (("no months", "seed"),)
    assert one_gathering_share(units_of("no months", "june fruit"), ALL).value[0, 0] == 1


def test_nothing_with_known_months_has_no_number() -> None:
    """No value, and the reason."""
    column = gatherings(units_of("no months"), ALL)

    assert np.isnan(column.value[0, 0]) and column.reason == "nothing with known months was found"


@pytest.mark.parametrize(("names", "share"), [(("june fruit", "july fruit"), 1.0), (("june fruit", "autumn nut"), 0.5)])
def test_share_that_one_gathering_could_have_given(names: tuple[str, ...], share: float) -> None:
    """The best month's share of the plants."""
    assert one_gathering_share(units_of(*names), ALL).value[0, 0] == share
