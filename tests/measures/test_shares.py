"""Shares, ratios and rarefaction against whole ears, published tables and general-purpose libraries."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import fisher_exact, hypergeom
from skbio.diversity.alpha import berger_parker_d

from narrate.measures import shares
from narrate.measures.comparison import fisher
from narrate.measures.diversity import rarefied, taxa
from narrate.model.ids import PartId
from narrate.model.rules import Selector
from tests.measures.digs import Found, a_dig, a_row, units


def of(taxon: str, part: str) -> Selector:
    return Selector(taxon=(taxon,), part=(PartId(part),))


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        # Whole ears are the zero line of every ratio. Botany of the ear; van der Veen 1992, Crop Husbandry Regimes,
        # p. 82; Hillman 1984 (from memory). Two kernels to a cupule: geometry of paired spikelets.
        (("Zea mays", "kernel", 2), ("Zea mays", "cupule", 1), 2.0),
        (("Triticum dicoccum", "glume base", 2), ("Triticum dicoccum", "grain", 2), 1.0),
        (("Triticum dicoccum", "rachis internode", 1), ("Triticum dicoccum", "grain", 2), 0.5),
        # Worked by arithmetic: 12 kernels to 96 cupules, 47 glume bases to 48 grains.
        (("Zea mays", "kernel", 12), ("Zea mays", "cupule", 96), 0.125),
        (("Triticum dicoccum", "glume base", 47), ("Triticum dicoccum", "grain", 48), 47 / 48),
    ],
)
def test_ratios_of_whole_ears(first: Found, second: Found, expected: float) -> None:
    """The ratio of parts in whole ears is what botany says, and others follow by arithmetic."""
    column = shares.ratio(units(a_dig([[first, second]])), of(*first[:2]), of(*second[:2]))

    assert column.value[0, 0] == pytest.approx(expected)
    assert column.low[0, 0] < expected < column.high[0, 0]


def test_a_ratio_to_nothing_has_a_bound_and_a_reason() -> None:
    """Forty kernels and no cupule: no value, but at least so many kernels to a cupule."""
    column = shares.ratio(
        units(a_dig([[("Zea mays", "kernel", 40)]])), of("Zea mays", "kernel"), of("Zea mays", "cupule")
    )

    assert np.isnan(column.value[0, 0]) and np.isinf(column.high[0, 0])
    assert column.low[0, 0] > 10
    assert column.reason == "nothing of the second was found"


def test_a_share_counts_only_what_both_selections_mean() -> None:
    """3 of 12 seeds and kernels are kernels; cupules are in neither."""
    dig = a_dig([[("Zea mays", "kernel", 3), ("Zea mays", "cupule", 50), ("Chenopodium", "seed", 9)]])
    column = shares.share(units(dig), Selector(taxon=("Zea mays",)), Selector(role=("propagule",)))

    assert column.value[0, 0] == 0.25


def test_dominance_is_berger_and_parkers_index() -> None:
    """The share of the commonest plant part equals scikit-bio's Berger-Parker index."""
    found = [
        ("Zea mays", "kernel", 17),
        ("Carya", "nutshell", 5),
        ("Chenopodium", "seed", 2),
        ("Amaranthus", "seed", 9),
    ]
    column = shares.dominance(units(a_dig([found])), Selector())

    assert column.value[0, 0] == pytest.approx(berger_parker_d([17, 5, 2, 9]))


def test_the_commonest_plant_is_counted_over_all_its_parts() -> None:
    """Maize with 6 cupules, 5 kernels, and 1 cob is 12 of 20 items, though no part of it outnumbers the 8 nutshells."""
    found = [("Zea mays", "cupule", 6), ("Zea mays", "kernel", 5), ("Zea mays", "cob", 1), ("Carya", "nutshell", 8)]
    dig = units(a_dig([found]))

    assert shares.plant_dominance(dig, Selector()).value[0, 0] == pytest.approx(berger_parker_d([12, 8]))
    assert shares.dominance(dig, Selector()).value[0, 0] == pytest.approx(berger_parker_d([6, 5, 1, 8]))


def test_the_richest_context_is_said_over_its_samples() -> None:
    """Of 100 items one of two contexts holds 70 in two samples, though no sample holds half."""
    found = [[("Zea mays", "cupule", 40)], [("Zea mays", "cupule", 30)], [("Zea mays", "cupule", 30)]]
    dig = a_dig(found, contexts=["C1", "C1", "C2"])

    assert shares.richest_share(units(dig, "site"), Selector()).value[0, 0] == pytest.approx(0.4)
    assert shares.richest_context_share(units(dig, "site"), Selector()).value[0, 0] == pytest.approx(0.7)
    assert shares.richest_context_share(units(dig, "context"), Selector()).value[0].tolist() == [1, 1]


def test_the_richest_sample_is_said() -> None:
    """Of 100 items the richest of three samples holds 80."""
    dig = a_dig([[("Zea mays", "kernel", n)] for n in (80, 15, 5)])

    assert shares.richest_share(units(dig, "site"), Selector()).value[0, 0] == pytest.approx(0.8)


def test_taxa_are_counted_once_whatever_their_parts() -> None:
    """Kernel and cupule are one taxon; a noted presence counts as a taxon; a nought does not."""
    dig = a_dig(
        [[("Zea mays", "kernel", 3), ("Zea mays", "cupule", 5), ("Carya", "nutshell", 0)]],
        rows=[a_row("S1", "Chenopodium", "seed", None)],
    )

    assert taxa(units(dig), Selector()).value.tolist() == [[2]]


@given(st.lists(st.integers(0, 60), min_size=2, max_size=12), st.integers(1, 25))
def test_rarefaction_equals_scipys_hypergeometric(found: list[int], items: int) -> None:
    """Expected taxa among n items equal the sum of scipy's chances of meeting each taxon."""
    counts, total = np.array(found, float), sum(found)
    expected = sum(1 - hypergeom.pmf(0, total, n, items) for n in found if n) if items <= total else np.nan

    assert float(rarefied(counts, np.array(total), items)) == pytest.approx(expected, nan_ok=True, rel=1e-9)


def test_rarefaction_meets_a_printed_value() -> None:
    """
    Trap A (9 3 0 4 2 1 1 0 1 0 1 1) rarefied to 13 individuals gives 6.56.

    Source: Magurran 1988, Ecological Diversity and its Measurement, pp. 128-129 (data and value from memory).
    """
    counts = np.array([9, 3, 0, 4, 2, 1, 1, 0, 1, 0, 1, 1], float)

    assert round(float(rarefied(counts, counts.sum(), 13)), 2) == 6.56


@given(st.integers(0, 30), st.integers(1, 30), st.integers(0, 30), st.integers(1, 30))
def test_fishers_test_equals_scipys(k1: int, n1: int, k2: int, n2: int) -> None:
    """The two-sided p is scipy's for every small table."""
    k1, k2 = min(k1, n1), min(k2, n2)
    found = fisher(np.array([k1]), np.array([n1]), np.array([k2]), np.array([n2]))[0]

    assert found == pytest.approx(fisher_exact([[k1, n1 - k1], [k2, n2 - k2]])[1], rel=1e-6, abs=1e-12)


@pytest.mark.parametrize(
    ("first", "second", "p"),
    [
        # Published counts, Fisher's p worked out from them: maize cupules in 8 of 8 late Pueblo II samples against
        # 2 of 12 from the Great Tower, kernels in 3 and 0, juniper in 7 and 8 (Murray & Jackman-Craig 2003, Yellow
        # Jacket Pueblo, Table 9).
        ((8, 8), (2, 12), 0.000714),
        ((3, 8), (0, 12), 0.0491),
        ((7, 8), (8, 12), 0.603),
        # Maize cob parts in 6 of 19 hearths against 7 of 12 firepits (Adams, Kuckelman & Bowyer 2007, Sand Canyon
        # Pueblo, Table 6): 32 % against 58 % is no firm difference.
        ((6, 19), (7, 12), 0.2623),
        # The lady tasting tea (Fisher 1935) and convicts' twins (Fisher 1934), from memory.
        ((3, 4), (1, 4), 0.485714),
        ((10, 13), (2, 17), 0.00053672),
    ],
)
def test_fishers_test_on_published_counts(first: tuple[int, int], second: tuple[int, int], p: float) -> None:
    """Published presence counts give the p that is worked out from them."""
    found = fisher(*(np.array([n]) for n in (*first, *second)))[0]

    assert found == pytest.approx(p, rel=2e-3)
