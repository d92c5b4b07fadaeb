"""Diversity against printed worked examples and a general-purpose library, on data that others publish."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from prince import datasets
from skbio.diversity import alpha

from narrate.measures import diversity, enough, shares, unseen
from narrate.measures.units import Units
from narrate.model.ids import TaxonId
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row, units
from tests.small_packs import small_packs

ALL = Selector()

# Magurran 1988, Ecological Diversity and its Measurement, pp. 145-149, birds of two woods at Killarney (data from
# memory).
OAK = [35, 26, 25, 21, 16, 11, 6, 5, 3, 3, 3, 3, 3, 2, 2, 2, 1, 1, 1, 1]
SPRUCE = [30, 30, 3, 65, 20, 11, 4, 2, 14, 3, 9, 5, 1, 1]
# The same, pp. 128-129, a moth trap; pp. 152-153, trees (data from memory).
TRAP = [9, 3, 4, 2, 1, 1, 1, 1, 1]
TREES = [
    752, 276, 194, 126, 121, 97, 95, 83, 72, 44, 39, 16, 15, 13, 9, 9, 9, 8, 7, 4, 2, 2, 1, 1, 1,
]  # fmt: skip
# scikit-bio's own test values: skbio/diversity/alpha/tests (read in its repository).
LIBRARY = [1, 1, 4, 2, 5, 2, 4, 1, 2]


def holding(*counts: list[int]) -> Units:
    """One sample for each list of counts, each count of a taxon of its own name."""
    return units(a_dig([[(f"taxon {i}", "seed", n) for i, n in enumerate(one) if n] for one in counts]))


def value(measure, *counts: list[int]) -> list[float]:  # type: ignore[no-untyped-def]
    return measure(holding(*counts), ALL).value[0].tolist()


def test_shannon_of_magurrans_woods() -> None:
    """
    H' 2.408 and 2.056; the book prints 2.40 and 2.06 (from memory), so it is the form without correction for bias.
    """
    assert value(diversity.shannon, OAK, SPRUCE) == pytest.approx([2.40798, 2.05599], abs=1e-5)


def test_the_interval_of_shannon_is_that_of_hutchesons_variance() -> None:
    """Var H' 0.0054004 (oak), by Hutcheson 1970, Journal of Theoretical Biology 29:151-154 (formula from memory)."""
    column = diversity.shannon(holding(OAK), ALL)

    assert ((column.high - column.low)[0, 0] / 2 / 1.959964) ** 2 == pytest.approx(0.0054004, rel=1e-4)


def test_hutchesons_t_of_magurrans_woods() -> None:
    """t = 3.534 for oak against spruce, from values and variances (worked out; Hutcheson 1970)."""
    column = diversity.shannon(holding(OAK, SPRUCE), ALL)
    variance = ((column.high - column.low)[0] / 2 / 1.959964) ** 2

    assert (column.value[0, 0] - column.value[0, 1]) / np.sqrt(variance.sum()) == pytest.approx(3.534, abs=1e-3)


def test_evenness_of_magurrans_woods() -> None:
    """J' 0.80380 and 0.77906 (worked out)."""
    assert value(diversity.evenness, OAK, SPRUCE) == pytest.approx([0.80380, 0.77906], abs=1e-5)


def test_simpson_is_one_less_the_unbiased_d() -> None:
    """D 0.11472 (the book's oak 0.115, from memory) and 0.17151, of the trees 0.18655: told as 1 - D."""
    found = value(diversity.simpson, OAK, SPRUCE, TREES)

    assert found == pytest.approx([1 - 0.11472, 1 - 0.17151, 1 - 0.18655], abs=1e-5)


def test_simpsons_index_of_upper_saratown_has_this_form() -> None:
    """
    0.8876 is printed for Upper Saratown in Gremillion, Excavating Occaneechi Town, "Additional data": between 0 and 1
    and rising with diversity, as 1 - D is; D itself would be 0.1124.
    """
    found = value(diversity.simpson, [10] * 9, [90])

    assert found[0] > 0.8876 and found[1] == 0


@pytest.mark.parametrize(
    ("items", "oak", "spruce"), [(50, 13.6277, 10.4562), (100, 17.4932, 12.4395), (150, 19.4826, 13.4263)]
)
def test_rarefaction_of_magurrans_woods(items: int, oak: float, spruce: float) -> None:
    """E(S) by Hurlbert 1971, Ecology 52:577-586 (worked out)."""
    for counts, expected in ((OAK, oak), (SPRUCE, spruce)):
        found = diversity.rarefied(np.array(counts, float), np.array(float(sum(counts))), items)

        assert float(found) == pytest.approx(expected, abs=5e-5)


def test_rarefaction_of_magurrans_moth_trap() -> None:
    """E(S13) is printed as 6.56 (Magurran 1988, pp. 128-129; from memory)."""
    assert float(diversity.rarefied(np.array(TRAP, float), np.array(23.0), 13)) == pytest.approx(6.557, abs=5e-4)


@pytest.mark.parametrize(
    ("items", "expected"), [(1, 1.0), (2, 1.8918), (5, 4.0299), (10, 6.3411), (15, 7.7624), (22, 9.0)]
)
def test_rarefaction_of_the_librarys_counts(items: int, expected: float) -> None:
    """E(S) of scikit-bio's test counts (worked out)."""
    assert float(diversity.rarefied(np.array(LIBRARY, float), np.array(22.0), items)) == pytest.approx(
        expected, abs=5e-5
    )


def test_the_measure_rarefies_as_the_function_does() -> None:
    """taxa_at_30 over whole columns equals the plain function, and has no value below 30 items."""
    found = value(diversity.taxa_at_30, OAK, SPRUCE, LIBRARY)
    plain = [float(diversity.rarefied(np.array(c, float), np.array(float(sum(c))), 30)) for c in (OAK, SPRUCE)]

    assert found[:2] == pytest.approx(plain) and np.isnan(found[2])


def test_chao1_is_the_bias_corrected_form_without_a_factor() -> None:
    """Oak 21.5, spruce 14.5 (classic: 22.667 and 16); 9.75 for scikit-bio's counts, 5 and 4 for its edge cases."""
    found = value(unseen.chao1, OAK, SPRUCE, LIBRARY, [1, 1, 4, 5], [2, 2, 4, 5])

    assert found == pytest.approx([21.5, 14.5, 9.75, 5.0, 4.0])


def test_the_interval_of_chao1_is_the_librarys() -> None:
    """9.07 to 17.45, printed in scikit-bio's tests of chao1_ci (1 %); none where nothing was seen once."""
    column = unseen.chao1(holding(LIBRARY, [2, 2, 4, 5]), ALL)

    assert (column.low[0, 0], column.high[0, 0]) == (pytest.approx(9.07, rel=0.01), pytest.approx(17.45, rel=0.01))
    assert (column.low[0, 1], column.high[0, 1]) == (4, 4)


def test_coverage_of_the_librarys_counts() -> None:
    """
    75 seen once, six twice, 3, 4, 4: Good's coverage is 0.2347 in scikit-bio's tests; Chao and Jost's form is near it.
    """
    counts = [1] * 75 + [2] * 6 + [3, 4, 4]
    found = value(unseen.coverage, counts)[0]
    n, once, twice = sum(counts), 75, 6

    assert 1 - once / n == pytest.approx(0.23469387755)
    assert found == pytest.approx(1 - once / n * (n - 1) * once / ((n - 1) * once + 2 * twice))
    assert found == pytest.approx(0.2347, abs=0.002)


def test_dominance_of_magurrans_woods() -> None:
    """Berger-Parker 0.206 for oak (the book, from memory)."""
    assert value(shares.dominance, OAK) == pytest.approx([0.20588], abs=1e-5)


def test_shannon_and_evenness_of_magurrans_trees() -> None:
    """H' and J' of 1,996 trees of 25 kinds (data from memory; 2.17815 and 0.67668 worked out, and by scikit-bio)."""
    assert value(diversity.shannon, TREES) == pytest.approx([alpha.shannon(np.array(TREES), base=np.e)])
    assert value(diversity.shannon, TREES) == pytest.approx([2.17815], abs=5e-6)
    assert value(diversity.evenness, TREES) == pytest.approx([0.67668], abs=5e-6)


def test_one_taxon_has_no_evenness_and_no_diversity() -> None:
    """Shannon 0, Simpson 0; evenness is not defined, and no number stands for it (scikit-bio gives 0)."""
    assert value(diversity.shannon, [12]) == [0]
    assert value(diversity.simpson, [12]) == [0]
    assert np.isnan(value(diversity.evenness, [12])[0])


def test_an_empty_sample_has_no_diversity() -> None:
    """Nothing counted: no value, with a reason."""
    for measure in (diversity.shannon, diversity.simpson, diversity.evenness, unseen.chao1, unseen.coverage):
        column = measure(holding([]), ALL)

        assert np.isnan(column.value[0, 0]) and column.reason


OPEN_DATA = {
    # Tables that the prince package carries: votes by French department (open data of the ministry of the interior) and
    # punctuation marks in chapters by author.
    "votes": datasets.load_french_elections().select_dtypes("number").fillna(0).to_numpy().astype(int)[:12] // 1000,
    "punctuation": datasets.load_punctuation_marks().select_dtypes("number").to_numpy().astype(int),
}


@pytest.mark.parametrize("name", OPEN_DATA)
def test_diversity_of_open_data_is_that_of_scikit_bio(name: str) -> None:
    """Shannon, Simpson, evenness, Chao1 and richness of every row of a table that others publish."""
    table = OPEN_DATA[name]
    kept = [row[row > 0] for row in table if (row > 0).sum() > 1]
    found = holding(*(row.tolist() for row in kept))

    assert len(kept) >= 3
    assert diversity.taxa(found, ALL).value[0].tolist() == [alpha.observed_features(r) for r in kept]
    assert diversity.shannon(found, ALL).value[0] == pytest.approx([alpha.shannon(r, base=np.e) for r in kept])
    assert diversity.evenness(found, ALL).value[0] == pytest.approx([alpha.pielou_e(r) for r in kept])
    assert unseen.chao1(found, ALL).value[0] == pytest.approx([alpha.chao1(r) for r in kept])
    biased = 1 - diversity.simpson(found, ALL).value[0]
    totals = np.array([r.sum() for r in kept])
    assert (biased * (totals - 1) + 1) / totals == pytest.approx([alpha.dominance(r) for r in kept])


def test_a_rich_site_is_told_from_a_large_one() -> None:
    """Of two sites of 60 items one has 30 taxa and the other 5: the first is richer than its size explains."""
    column = diversity.taxa_against_pool(holding([2] * 30, [12] * 5), ALL)

    assert column.low[0, 0] > 0 > column.high[0, 1]


def test_new_taxa_if_the_rest_is_sorted_come_near_what_is_found_then() -> None:
    """Of 100 simulated deposits half is sorted: what the other half adds is foretold to a quarter, and not too much."""
    generator = np.random.default_rng(5)
    share = generator.dirichlet(np.full(40, 0.5))
    gained, foretold = [], []
    for _ in range(100):
        whole = generator.multinomial(300, share)
        half = generator.binomial(whole, 0.5)
        gained.append((whole > 0).sum() - (half > 0).sum())
        rows = [a_row("S1", f"taxon {i}", "seed", int(n), share=0.5) for i, n in enumerate(half) if n]
        foretold.append(enough.new_taxa_if_sorted(units(a_dig([[]], rows=rows)), ALL).value[0, 0])

    assert np.mean(foretold) == pytest.approx(np.mean(gained), rel=0.25)
    assert np.mean(foretold) <= np.mean(gained) * 1.05


def test_what_nobody_could_name_is_no_taxon() -> None:
    """
    Richness, rarefaction and both indices are those of the named items alone (common practice, no source).

    The 40 indeterminate seeds may be of any of the five taxa beside them.
    """
    packs = small_packs()
    broken = replace(packs.taxa[TaxonId("Poaceae")], tags=frozenset({"indeterminate"}))
    known = replace(packs, taxa={**packs.taxa, broken.id: broken})
    named = [(f"taxon {i}", "seed", 8) for i in range(5)]
    both = units(a_dig([named, [*named, ("Poaceae", "seed", 40)]]), packs=known)

    for measure in (diversity.taxa, diversity.taxa_at_30, diversity.shannon, diversity.simpson, unseen.chao1):
        alone, with_broken = measure(both, ALL).value[0].tolist()
        assert with_broken == alone
