"""Woods of the phases are compared by the samples whose wood was looked at, with the test of the other plants."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from scipy.stats import fisher_exact
from statsmodels.stats.multitest import multipletests

from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def sentences(judged_example: Judged) -> list[str]:
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "report")
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
    assert any("pine (5, then 11; p 0.012 before the correction) does not" in s for s in sentences)


def test_building_timber_is_taken_out_of_the_count(sentences: list[str]):
    """The three samples of the burned house hold building timber: without them pine is in 18 of 19 (sheets)."""
    told = next(s for s in sentences if "noted as building timber" in s)

    assert "without it pine is in 18 of the 19 later samples" in told
