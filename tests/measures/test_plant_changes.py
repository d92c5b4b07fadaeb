"""Single plants tested between phases."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from scipy.stats import fisher_exact
from statsmodels.stats.multitest import multipletests

from narrate.model.ids import Subject
from narrate.model.plant_groups import PlantChange

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


def _changes(whole: Judged) -> dict[str, PlantChange]:
    return {change.taxon: change for change in whole.findings.plants}


def test_samples_are_those_of_the_count_sheets(judged_example: Judged):
    """Purslane is in none of 23 samples and then in 14 of 27; maypop in none and then in eight (counted by hand)."""
    changes = _changes(judged_example)

    assert (changes["Portulaca oleracea"].with_it, changes["Portulaca oleracea"].of_samples) == ((0, 14), (23, 27))
    assert changes["Passiflora incarnata"].with_it == (0, 8)


def test_the_test_is_fishers_with_holms_correction(judged_example: Judged):
    """p and corrected p are those of scipy's fisher_exact and of statsmodels' multipletests over all plants tested."""
    changes = judged_example.findings.plants
    tables = [[(k, n - k) for k, n in zip(c.with_it, c.of_samples, strict=True)] for c in changes]
    p = [fisher_exact(table)[1] for table in tables]

    assert [c.p for c in changes] == pytest.approx(p)
    assert [c.p_holm for c in changes] == pytest.approx(multipletests(np.array(p), method="holm")[1])
    assert {c.tested for c in changes} == {len(changes)}


def test_wood_and_plants_of_few_samples_are_not_tested(judged_example: Judged):
    """Pine is known by wood and bark alone; no plant tested lies in fewer than five samples of the two phases."""
    late = judged_example.findings.subjects[Subject(level="phase", id="late")]

    assert any(t.taxon == "Acer" and t.part == "wood" for t in late.tallies)
    assert "Acer" not in _changes(judged_example)
    assert min(sum(c.with_it) for c in judged_example.findings.plants) >= 5


def test_the_same_test_is_made_by_contexts(judged_example: Judged):
    """Acorns lie in 9 of 10 contexts, then 6 of 11 (counted by hand); p and Holm's are scipy's and statsmodels'."""
    changes = judged_example.findings.plants
    tables = [[(k, n - k) for k, n in c.contexts] for c in changes]
    p = [fisher_exact(table)[1] for table in tables]

    assert _changes(judged_example)["Quercus"].contexts == ((9, 10), (6, 11))
    assert [c.p_contexts_holm for c in changes] == pytest.approx(multipletests(np.array(p), method="holm")[1])


def test_a_difference_that_one_context_undoes_names_it(judged_example: Judged):
    """Without the two samples of C19 (acorns in neither) Holm's p of acorns is above 0.05 by scipy and statsmodels."""
    whole = judged_example
    without = {s.id: s.context for s in whole.project.samples if s.context != "C19"}
    phase_of = {c.id: c.phase for c in whole.project.contexts}
    sizes = [sum(phase_of[c] == phase for c in without.values()) for phase in ("early", "late")]
    tables = {}
    for change in whole.findings.plants:
        held = [ref.split("/")[0] for ref in change.refs]
        k = [sum(phase_of.get(without.get(id)) == phase for id in held) for phase in ("early", "late")]
        tables[change.taxon] = [(a, n - a) for a, n in zip(k, sizes, strict=True)]
    p = [fisher_exact(table)[1] for table in tables.values()]
    corrected = dict(zip(tables, multipletests(np.array(p), method="holm")[1], strict=True))
    changes = _changes(whole)

    assert changes["Quercus"].p_holm < 0.05 <= corrected["Quercus"]
    assert "C19" in changes["Quercus"].hangs_on
    assert changes["Phalaris caroliniana"].hangs_on == () and corrected["Phalaris caroliniana"] < 0.05
