"""Contexts judged as columns come out as `judge` has them, one by one."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from scipy.stats import binomtest

from narrate.judging.facts import recorded
from narrate.judging.judge import REPLICATES, SEED
from narrate.measures.count_table import count_table
from narrate.model.claims import GRADE_NAMES
from narrate.trials.judged import Outcome, evidence_of, outcomes
from narrate.trials.record import hits

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def as_columns(judged_example: Judged) -> dict[str, Outcome]:
    project, packs = judged_example.project, judged_example.packs
    table, records = count_table(project, packs), recorded(project, packs)
    evidence = evidence_of(table, records, packs, project.preservation, replicates=REPLICATES, seed=SEED)
    return outcomes(evidence, packs)


def test_verdicts_and_grades_are_those_of_the_claims(judged_example: Judged, as_columns: dict[str, Outcome]) -> None:
    """Every claim about a context of the example has the verdict and the grade that the columns give it."""
    contexts = [str(context.id) for context in judged_example.project.contexts]
    claims = [c for c in judged_example.claims if c.about.level == "context"]
    expected = {(c.about.id, c.statement): c.grade if c.verdict == "holds" else "not supported" for c in claims}
    found = {
        (contexts[i], statement): GRADE_NAMES[grade]
        for statement, outcome in as_columns.items()
        for i, grade in enumerate(outcome.grade.tolist())
    }

    assert len(expected) > 1000
    assert {key: (grade, found[key]) for key, grade in expected.items() if found[key] != grade} == {}


@pytest.mark.parametrize(("right", "claims"), [(0, 7), (40, 45), (93, 100), (12, 12)])
def test_the_interval_of_a_hit_rate_is_the_exact_binomial_one(right: int, claims: int) -> None:
    """Clopper–Pearson ends as scipy.stats.binomtest gives them."""
    found = hits(np.arange(claims) < right)
    expected = binomtest(right, claims).proportion_ci(0.95, method="exact")

    assert found.low == pytest.approx(expected.low, abs=1e-6)
    assert found.high == pytest.approx(expected.high, abs=1e-6)
