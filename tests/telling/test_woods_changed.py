"""Woods of the phases are compared by the samples whose wood was looked at, with the test of the other plants."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from scipy.stats import binomtest, fisher_exact
from statsmodels.stats.multitest import multipletests

from narrate.model.plant_groups import is_more_than_chance
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def sentences(told_of_example: ToldOnce) -> list[str]:
    told = told_of_example["report"]
    site = next(subject for subject in told if subject.level == "site")
    return [sentence.text for sentence in told[site].sentences()]


def test_woods_are_tested_as_scipy_and_statsmodels_test_them(judged_example: Judged):
    """Fisher's exact p of each wood by scipy, corrected by statsmodels' Holm."""
    woods = judged_example.findings.woods
    tables = [[[c.with_it[i], c.of_samples[i] - c.with_it[i]] for i in (0, 1)] for c in woods]
    p = [fisher_exact(table)[1] for table in tables]

    assert [c.p for c in woods] == pytest.approx(p, abs=1e-9)
    assert [c.p_holm for c in woods] == pytest.approx(list(multipletests(p, method="holm")[1]), abs=1e-9)


def test_samples_without_wood_that_was_looked_at_are_left_out(judged_example: Judged):
    """Counted from the sheets: samples of each phase with a row of wood that has a name, were it hardwood."""
    project, packs = judged_example.project, judged_example.packs
    phase = {s.id: project.context(s.context).phase for s in project.samples}
    looked = {
        row.sample
        for row in project.counts
        if "wood" in packs.words.parts[row.part].roles and row.identification.taxon not in (None, "Indeterminate")
        and row.identification.taxon != "Unidentified"
    }  # fmt: skip
    change = judged_example.findings.woods[0]

    assert change.of_samples == tuple(sum(phase[s] == p for s in looked) for p in (change.first, change.last))


def test_woods_that_rose_are_told_by_samples(sentences: list[str]):
    """Pine and sweetgum rose beyond chance among all woods tested (sheets of the example)."""
    told = next(s for s in sentences if s.startswith("Wood by wood, two of the"))

    assert "pine (6, then 21) and sweetgum (none, then 12) rose" in told


def test_woods_are_told_by_context_too(sentences: list[str]):
    """Samples of one context are not independent: pine lies in five contexts of 10, then in all 11."""
    assert any("and pine (5, then 11; p 0.012 before the correction) does not" in s for s in sentences)


def test_every_wood_that_was_tested_is_asked_by_context(judged_example: Judged, sentences: list[str]):
    """By context statsmodels' Holm upholds sweetgum, black locust and persimmon, of which by samples but one holds."""
    woods = judged_example.findings.woods
    tables = [[[c.contexts[i][0], c.contexts[i][1] - c.contexts[i][0]] for i in (0, 1)] for c in woods]
    corrected = multipletests([fisher_exact(table)[1] for table in tables], method="holm")[1]
    upheld = {c.taxon for c, p in zip(woods, corrected, strict=True) if p < 0.05}

    assert upheld == {"Liquidambar styraciflua", "Robinia pseudoacacia", "Diospyros virginiana"}
    told = "sweetgum (none, then 9), persimmon and black locust (none, then 7 each) remain significant"
    assert any(told in s for s in sentences)


def test_more_small_p_than_chance_brings_are_told_as_more(judged_example: Judged, sentences: list[str]):
    """Four of the other 10 woods lie below 0.05 by samples: scipy's binomial test puts so many at one in a thousand."""
    others = [c for c in judged_example.findings.woods if c.p_holm >= 0.05]
    near = sum(c.p < 0.05 for c in others)

    assert (near, len(others)) == (4, 10)
    assert binomtest(near, len(others), 0.05, alternative="greater").pvalue < 0.05
    assert any("four such among the other 10 are more than chance alone would bring (0.5 exp" in s for s in sentences)


@pytest.mark.parametrize("tested", [1, 5, 20, 60])
def test_what_chance_may_bring_agrees_with_scipy(tested: int):
    """The tail of the binomial distribution, by scipy."""
    for near in range(1, tested + 1):
        p = binomtest(near, tested, 0.05, alternative="greater").pvalue
        assert is_more_than_chance(near, tested) == (p < 0.05)


def test_building_timber_is_taken_out_of_the_count(sentences: list[str]):
    """The three samples of the burned house hold building timber: without them pine is in 18 of 19 (sheets)."""
    told = next(s for s in sentences if "noted as building timber" in s)

    assert "without it pine is in 18 of the 19 later samples" in told
