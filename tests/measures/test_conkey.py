"""
Diversity at like size on one published table: design elements of engraved bone at five sites of Cantabria.

Conkey 1980, Current Anthropology 21:609-630, as printed in Baxter 2003, Statistics in Archaeology, table 2.4, and given
out as the open data set EngrBone of the archdata package (read there). Kintigh 1984, American Antiquity 49:44-54, shows
his method on it in a figure; no table of his expected numbers or bands was found, so that bands are held to draws.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial.distance import cityblock
from scipy.stats import hypergeom
from skbio.diversity import alpha

from narrate.measures import diversity
from narrate.measures.intervals import Z
from narrate.measures.order import brainerd_robinson
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row, units

SITES = ("Altamira", "Cueto de la Mina", "El Juyo", "El Cierro", "La Paloma")
ELEMENTS = np.array([
    [2,12,7,1,0,3,12,15,0,3,1,1,12,7,3,11,3,1,7,2,4,3,3,1,5,1,1,1,0,2,0,1,0,1,1,1,3,0,2,1,4,5,4,5],
    [1,12,2,0,1,0,0,3,1,5,0,1,4,3,1,0,0,1,2,4,0,1,1,0,1,0,0,2,2,0,1,0,7,0,0,0,0,1,1,2,2,6,1,0],
    [0,8,2,1,0,0,0,12,3,9,0,0,2,1,1,0,0,1,1,0,1,0,2,0,1,0,1,1,0,0,0,0,0,0,0,0,0,0,1,0,2,0,3,0],
    [0,5,1,2,0,0,0,7,3,2,1,0,4,0,2,0,0,0,2,0,0,0,1,0,0,0,0,0,0,0,0,0,0,1,0,0,0,0,1,0,0,2,1,0],
    [0,4,0,0,0,0,0,1,2,2,0,0,3,0,0,0,0,1,0,0,0,0,0,0,1,0,0,0,0,0,0,0,0,0,0,0,0,0,1,0,1,4,1,2],
])  # fmt: skip
ALL = Selector()


def sites():  # type: ignore[no-untyped-def]
    rows = [
        a_row(f"S{i}", f"element {j}", "seed", int(n))
        for i, counts in enumerate(ELEMENTS, start=1)
        for j, n in enumerate(counts)
        if n
    ]
    return units(a_dig([[]] * len(SITES), rows=rows))


def test_the_table_has_its_published_margins() -> None:
    """152, 69, 53, 35 and 23 items of 38, 27, 19, 15 and 12 elements; 332 of 44 in all."""
    assert ELEMENTS.sum(axis=1).tolist() == [152, 69, 53, 35, 23]
    assert diversity.taxa(sites(), ALL).value[0].tolist() == [38, 27, 19, 15, 12]
    assert (ELEMENTS.sum(), (ELEMENTS.sum(axis=0) > 0).sum()) == (332, 44)


def test_shannon_and_evenness_are_those_of_scikit_bio() -> None:
    """Every site."""
    kept = [row[row > 0] for row in ELEMENTS]

    assert diversity.shannon(sites(), ALL).value[0] == pytest.approx([alpha.shannon(r, base=np.e) for r in kept])
    assert diversity.evenness(sites(), ALL).value[0] == pytest.approx([alpha.pielou_e(r) for r in kept])
    assert diversity.shannon(sites(), ALL).value[0].round(4).tolist() == [3.2692, 2.9553, 2.4917, 2.4856, 2.3292]


def test_expected_elements_are_those_of_draws_from_the_pool() -> None:
    """The mean, and the ends of the 95 % band to one element, of 20,000 draws of each site's size."""
    column = diversity.taxa_against_pool(sites(), ALL)
    generator, pool = np.random.default_rng(1), ELEMENTS.sum(axis=0) / ELEMENTS.sum()
    for i, items in enumerate(ELEMENTS.sum(axis=1)):
        drawn = (generator.multinomial(items, pool, 20_000) > 0).sum(axis=1)
        half, expected = (column.high - column.low)[0, i] / 2, column.to[0, i]  # type: ignore[index]

        assert expected == pytest.approx(drawn.mean(), abs=0.05)
        assert [expected - half, expected + half] == pytest.approx(np.quantile(drawn, [0.025, 0.975]), abs=1.2)


def test_altamira_is_rich_for_its_size_and_two_sites_are_poor() -> None:
    """
    What Kintigh's figure is cited for (from memory): Altamira lies at the top of its band, El Juyo and El Cierro below
    the band in which 80 % of draws fall, the other two inside.
    """
    column = diversity.taxa_against_pool(sites(), ALL)
    spread = ((column.high - column.low)[0] / 2 - 0.5) / Z
    in_spreads = column.value[0] / spread

    assert in_spreads[0] == max(in_spreads) > 1.28
    assert all(in_spreads[[2, 3]] < -1.28)
    assert all(abs(in_spreads[[1, 4]]) < 1.6)


def test_elements_among_23_are_the_sum_of_chances_to_be_drawn() -> None:
    """Hurlbert's expectation at the size of the smallest site, from scipy's hypergeometric chances."""
    for row in ELEMENTS:
        expected = sum(1 - hypergeom.pmf(0, row.sum(), n, 23) for n in row if n)

        assert float(diversity.rarefied(row.astype(float), np.array(float(row.sum())), 23)) == pytest.approx(expected)


def test_every_two_sites_are_as_like_as_their_percentages() -> None:
    """Brainerd and Robinson's index is 200 less scipy's city-block distance of percentages."""
    percent = 100 * ELEMENTS / ELEMENTS.sum(axis=1, keepdims=True)
    expected = [[200 - cityblock(a, b) for b in percent] for a in percent]

    found = brainerd_robinson(ELEMENTS)

    assert found == pytest.approx(np.array(expected))
    assert found[2, 3] == pytest.approx(131.105, abs=5e-4)
