"""Phases, kinds of context and areas held apart by samples: against tests of other libraries, and laws."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy import stats
from statsmodels.stats.contingency_tables import StratifiedTable

from narrate.measures import apart
from narrate.measures.apart import Strata, score
from narrate.model.project import Project
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, units

MAIZE = Selector(taxon=("Zea mays",))
CUPULE = ("Zea mays", "cupule", 3)
SEED = ("Chenopodium", "seed", 2)
THERMAL = {"burned spot": (3, 8), "firepit": (7, 12), "hearth": (6, 19)}
"""Samples with maize cob parts, and samples (Adams, Kuckelman & Bowyer 2007, Sand Canyon Pueblo, table 6)."""


def dig_of(groups: dict[str, tuple[int, int]], phases: tuple[str, ...] = ("one",)) -> Project:
    """One sample a context; each group's first k of n samples hold cupules, in every phase alike."""
    held = [(kind, i < k, phase) for phase in phases for kind, (k, n) in groups.items() for i in range(n)]
    dig = a_dig([[CUPULE] if has else [SEED] for _, has, _ in held], phases=[phase for *_, phase in held])
    contexts = tuple(replace(c, kind=kind) for c, (kind, *_) in zip(dig.contexts, held, strict=True))
    return replace(dig, contexts=contexts)


def with_areas(dig: Project, areas: list[str]) -> Project:
    contexts = tuple(replace(c, location={"area": area}) for c, area in zip(dig.contexts, areas, strict=True))
    return replace(dig, contexts=contexts)


def test_several_strata_agree_with_mantel_and_haenszel() -> None:
    """Two groups in three strata give the statistic of statsmodels, without correction for continuity."""
    with_it, samples = np.array([[3, 8], [5, 6], [1, 9]]), np.array([[10, 12], [14, 9], [7, 20]])
    tables = [np.array([k, n - k]) for k, n in zip(with_it, samples, strict=True)]

    q, freedom = score(Strata(with_it=with_it[None].astype(float), samples=samples[None].astype(float)))

    assert q[0] == pytest.approx(StratifiedTable(tables).test_null_odds(correction=False).statistic)
    assert freedom[0] == 1


def test_one_stratum_agrees_with_chi_square() -> None:
    """For three kinds of thermal feature the statistic is (n − 1)/n of Pearson's chi-square (scipy)."""
    k, n = (np.array([pair[i] for pair in THERMAL.values()], float) for i in (0, 1))
    pearson = stats.chi2_contingency([k, n - k], correction=False)

    q, freedom = score(Strata(with_it=k[None, None], samples=n[None, None]))

    assert q[0] == pytest.approx(pearson.statistic * 38 / 39)
    assert freedom[0] == pearson.dof == 2


def test_drawn_chances_agree_with_tables_drawn_by_scipy() -> None:
    """Kinds of thermal feature of Sand Canyon Pueblo: p within 0.02 of scipy's permutation test."""
    k, n = (np.array([pair[i] for pair in THERMAL.values()], int) for i in (0, 1))
    shuffled = stats.PermutationMethod(n_resamples=9999, rng=np.random.default_rng(3))
    by_scipy = stats.chi2_contingency([k, n - k], correction=False, method=shuffled)

    found = apart.kinds_apart_p(units(dig_of(THERMAL), "site"), MAIZE)

    assert found.value[0, 0] == pytest.approx(by_scipy.pvalue, abs=0.02)
    assert found.n[0, 0] == 39


def test_hearths_and_firepits_are_not_apart() -> None:
    """
    6 of 19 hearths and 7 of 12 firepits (table 6) look apart, and are not: Fisher's p is 0.2623 and phi
    √(2.1621/31) = 0.2641 (worked out with scipy). Drawn tables count the other tail by how far it lies, not by how
    unlikely it is, so p is near and not the same.
    """
    two = {kind: THERMAL[kind] for kind in ("hearth", "firepit")}
    site = units(dig_of(two), "site")

    assert apart.kinds_apart(site, MAIZE).value[0, 0] == pytest.approx(0.2641, abs=5e-5)
    assert apart.kinds_apart_p(site, MAIZE).value[0, 0] == pytest.approx(0.2623, abs=0.02)


def test_groups_of_one_size_have_fishers_p() -> None:
    """
    With groups of one size, what lies farther is what is less likely: 9 of 10 against 3 of 10 has Fisher's two-sided p.
    """
    expected = stats.fisher_exact([[9, 3], [1, 7]]).pvalue

    found = apart.kinds_apart_p(units(dig_of({"hearth": (9, 10), "pit": (3, 10)}), "site"), MAIZE)

    assert found.value[0, 0] == pytest.approx(expected, abs=0.005)


def test_a_change_of_what_was_dug_is_no_change_between_phases() -> None:
    """
    Hearths always hold maize and pits never do; one phase gave hearths mainly, the other pits. Pooled, phases differ;
    like with like, they do not.
    """
    held = [("one", "hearth")] * 8 + [("one", "pit")] * 2 + [("two", "hearth")] * 2 + [("two", "pit")] * 8
    dig = a_dig([[CUPULE] if kind == "hearth" else [SEED] for _, kind in held], phases=[p for p, _ in held])
    dig = replace(dig, contexts=tuple(replace(c, kind=k) for c, (_, k) in zip(dig.contexts, held, strict=True)))

    assert apart.phases_apart_p(units(dig, "site"), MAIZE).value[0, 0] == 1
    assert stats.fisher_exact([[8, 2], [2, 8]]).pvalue < 0.03


def test_without_two_groups_there_is_no_value() -> None:
    """One phase and one kind of context: nothing to hold apart, and no areas were named."""
    site = units(dig_of({"hearth": (3, 5)}), "site")

    for measure in (apart.phases_apart_p, apart.kinds_apart_p, apart.areas_apart_p, apart.areas_apart):
        assert np.isnan(measure(site, MAIZE).value[0, 0])
        assert measure(site, MAIZE).reason.startswith("there are not two groups with samples of like contexts")


def test_areas_are_those_of_the_records() -> None:
    """Nine of ten samples of the north hold maize and one of ten of the south: apart by V = 0.8."""
    dig = with_areas(dig_of({"pit": (10, 20)}), ["north"] * 9 + ["south"] + ["north"] + ["south"] * 9)

    site = units(dig, "site")

    assert apart.areas_apart(site, MAIZE).value[0, 0] == pytest.approx(0.8)
    assert apart.areas_apart_p(site, MAIZE).value[0, 0] < 0.01


def test_a_phase_has_its_own_kinds() -> None:
    """Asked of phases, each is compared within itself: two alike phases have one V."""
    found = apart.kinds_apart(units(dig_of(THERMAL, ("one", "two")), "phase"), MAIZE)

    assert found.value[0, 0] == found.value[0, 1] > 0


def test_redrawn_counts_have_the_chi_square_chance() -> None:
    """A thousand replicates of one table have the p of the chi-square distribution (scipy)."""
    k, n = (np.array([pair[i] for pair in THERMAL.values()], float) for i in (0, 1))
    q = stats.chi2_contingency([k, n - k], correction=False).statistic * 38 / 39
    site = units(dig_of(THERMAL), "site")
    many = site.table.with_counts(
        np.repeat(site.table.counted, 1000, axis=0), np.repeat(site.table.unsorted, 1000, axis=0)
    )

    found = apart.kinds_apart_p(site.with_table(many), MAIZE).value

    assert found.shape == (1000, 1) and np.ptp(found) == 0
    assert found[0, 0] == pytest.approx(stats.chi2.sf(q, 2))


def test_the_order_of_samples_is_nothing() -> None:
    """The same samples in another order are as far apart."""
    dig = dig_of(THERMAL)
    turned = replace(dig, samples=dig.samples[::-1])

    values = [apart.kinds_apart(units(one, "site"), MAIZE).value[0, 0] for one in (dig, turned)]

    assert values[0] == pytest.approx(values[1])
