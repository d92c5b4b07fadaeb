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
