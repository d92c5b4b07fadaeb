"""What is gathered for the pages of a whole dig."""

from __future__ import annotations

from math import comb

import pytest

from narrate.measures.studies import studies
from tests.measures.digs import a_dig
from tests.small_packs import small_packs


def test_a_curve_ends_at_all_taxa_and_follows_the_formula() -> None:
    """Hurlbert 1971 in whole numbers: 6 of one taxon and 4 of another; among all ten both, among one exactly one."""
    dig = a_dig([[("Zea mays", "kernel", 6)], [("Chenopodium", "seed", 4)]])
    (curve,) = [c for c in studies(dig, small_packs()).rarefaction if c.items == 10]

    assert curve.points[0] == (1, pytest.approx(1.0))
    assert curve.points[-1] == (10, pytest.approx(2.0)) and curve.taxa == 2
    for items, taxa in curve.points:
        assert taxa == pytest.approx(2 - (comb(4, items) + comb(6, items)) / comb(10, items))


def test_a_dig_of_nothing_has_nothing_to_study() -> None:
    """No samples: no curve, no point, no axis, and no fault."""
    found = studies(a_dig([]), small_packs())

    assert (found.rarefaction, found.triangle) == ((), ())
    assert found.ordination is not None and found.ordination.rows is None
