"""Items, mass and density: by hand, against published tables, and the laws that they keep."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from narrate.measures import amounts
from narrate.model.ids import PartId
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row, units

EVERYTHING = Selector()
WOOD = Selector(role=("wood",))
FOOD = Selector(role=("edible",))


def test_ten_grains_in_a_quarter_stand_for_forty() -> None:
    """10 grains in a quarter of the class, 10 litres: 10 / (1/4) / 10 = 4 per litre; as counted there are 10."""
    dig = a_dig([[]], rows=[a_row("S1", "Triticum dicoccum", "grain", 10, share=0.25)])

    assert amounts.items(units(dig), EVERYTHING).value.tolist() == [[10]]
    assert amounts.density(units(dig), EVERYTHING).value.tolist() == [[4.0]]


def test_the_interval_of_a_density_rests_on_the_raw_count() -> None:
    """Ten items in a quarter have the relative doubt of ten, not of forty: 4.795·4/10 to 18.390·4/10."""
    dig = a_dig([[]], rows=[a_row("S1", "Triticum dicoccum", "grain", 10, share=0.25)])
    column = amounts.density(units(dig), EVERYTHING)

    assert column.low[0, 0] == pytest.approx(4.7954 * 4 / 10, rel=1e-4)
    assert column.high[0, 0] == pytest.approx(18.3904 * 4 / 10, rel=1e-4)


def test_nothing_found_in_a_quarter_may_hide_more_than_nothing_found_in_all() -> None:
    """No item: the upper end is 3.689 items over the share sorted."""
    whole = amounts.density(units(a_dig([[]])), EVERYTHING)

    assert whole.value[0, 0] == 0
    assert whole.high[0, 0] == pytest.approx(0.3689, abs=1e-4)


def test_a_density_without_volume_has_no_value() -> None:
    """A sample without litres has no density, and it says why."""
    column = amounts.density(units(a_dig([[("Zea mays", "kernel", 3)]], litres=None)), EVERYTHING)

    assert np.isnan(column.value[0, 0])
    assert column.reason == "no volume was recorded, or it was noted and not counted"


def test_densities_of_a_published_site() -> None:
    """
    Fredricks site 1986: 500 L of fill, 504.62 g of plant remains, 396.52 g of wood and stem, 88.06 g of plant food.

    Source: Gremillion, Excavating Occaneechi Town (University of North Carolina), "Results": weights and litres as
    printed there; grams per litre and food to wood worked out from them.
    """
    rest = 504.62 - 396.52 - 88.06
    dig = a_dig(
        [[]],
        litres=500.0,
        rows=[
            a_row("S1", "Carya", "wood", None, mass_g=396.52),
            a_row("S1", "Zea mays", "kernel", None, mass_g=88.06),
            a_row("S1", "Chenopodium", "seed", None, mass_g=rest),
        ],
    )
    site = units(dig, "site")

    assert amounts.mass_per_l(site, EVERYTHING).value[0, 0] == pytest.approx(1.0092, abs=5e-5)
    assert amounts.mass_per_l(site, WOOD).value[0, 0] == pytest.approx(0.7930, abs=5e-5)
    assert amounts.mass_per_l(site, FOOD).value[0, 0] == pytest.approx(0.1761, abs=5e-5)
    assert amounts.mass_ratio(site, FOOD, WOOD).value[0, 0] == pytest.approx(0.2221, abs=5e-5)


def test_a_thing_noted_but_not_weighed_has_no_mass() -> None:
    """Wood that was seen and not weighed weighs 'not known', not nothing; a thing not found weighs nothing."""
    noted = units(a_dig([[]], rows=[a_row("S1", "Carya", "wood", None)]))

    assert np.isnan(amounts.mass(noted, WOOD).value[0, 0])
    assert amounts.mass(units(a_dig([[]])), WOOD).value[0, 0] == 0


def test_uncharred_seeds_are_not_among_the_items_of_a_charred_assemblage() -> None:
    """At a dry site the items are the charred ones; uncharred seeds are asked for by name."""
    dig = a_dig([[("Zea mays", "kernel", 3)]], rows=[a_row("S1", "Chenopodium", "seed", 500, condition="uncharred")])

    assert amounts.items(units(dig), EVERYTHING).value.tolist() == [[3]]
    assert amounts.items(units(dig), Selector(condition=("uncharred",))).value.tolist() == [[500]]


counts = st.lists(st.integers(0, 400), min_size=1, max_size=8)


@given(counts)
def test_doubling_counts_and_litres_keeps_the_density(found: list[int]) -> None:
    """Twice the items in twice the sediment is the same density."""
    once = amounts.density(units(a_dig([[("Zea mays", "kernel", n)] for n in found], litres=7.0)), EVERYTHING)
    twice = amounts.density(units(a_dig([[("Zea mays", "kernel", 2 * n)] for n in found], litres=14.0)), EVERYTHING)

    assert np.allclose(once.value, twice.value)


@given(counts)
def test_the_order_of_samples_does_not_change_the_site(found: list[int]) -> None:
    """A site total does not depend on the order in which samples are listed."""
    forward = units(a_dig([[("Zea mays", "kernel", n)] for n in found]), "site")
    backward = units(a_dig([[("Zea mays", "kernel", n)] for n in reversed(found)]), "site")

    assert amounts.items(forward, EVERYTHING).value.tolist() == amounts.items(backward, EVERYTHING).value.tolist()


@given(counts)
def test_pooled_samples_hold_what_their_samples_hold(found: list[int]) -> None:
    """The items of a context are the sum over its samples, and its litres too."""
    dig = a_dig([[("Zea mays", "kernel", n)] for n in found], contexts=["C1"] * len(found))
    by_sample, by_context = units(dig), units(dig, "context")

    assert amounts.items(by_context, EVERYTHING).value.sum() == amounts.items(by_sample, EVERYTHING).value.sum()
    assert amounts.litres(by_context).value[0, 0] == pytest.approx(10.0 * len(found))


def test_a_row_of_nought_changes_nothing() -> None:
    """'Looked for and absent' adds no item, no taxon and no presence."""
    with_nought = a_dig([[("Zea mays", "kernel", 3), ("Carya", "nutshell", 0)]])

    assert amounts.items(units(with_nought), Selector(part=(PartId("nutshell"),))).value.tolist() == [[0]]
