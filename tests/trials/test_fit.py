"""The strength table fitted: the same answer as a reference library's, and held where it is pulled."""

from __future__ import annotations

import numpy as np
import pytest
import statsmodels.api as sm

from narrate.trials.fit import Readings, fitted

GIVEN = {"weak": 1.0, "moderate": 1.8, "strong": 2.6}


def some_readings(weights: tuple[float, float, float], shift: float, rows: int = 4000) -> Readings:
    """Readings whose truth follows known weights."""
    generator = np.random.default_rng(11)
    arguments = generator.poisson([0.8, 0.5, 0.3], (rows, 3)).astype(float)
    prior = np.full(rows, -0.9)
    chance = 1 / (1 + np.exp(-(arguments @ np.array(weights) + prior + shift)))
    return Readings(
        arguments=arguments,
        prior=prior,
        is_true=(generator.random(rows) < chance).astype(float),
        weight=np.ones(rows),
    )


def test_without_a_pull_the_fit_is_a_logistic_regression() -> None:
    """Weights and shift are those of statsmodels' binomial GLM with the priors as offset."""
    rows = some_readings((0.7, 1.5, 3.0), 0.3)
    design = np.column_stack([rows.arguments, np.ones(rows.prior.size)])
    expected = sm.GLM(rows.is_true, design, family=sm.families.Binomial(), offset=rows.prior).fit().params

    found = fitted(rows, GIVEN, pull=0.0)

    assert [*found.weights.values(), found.shift] == pytest.approx(expected.tolist(), abs=1e-6)


def test_a_strong_pull_leaves_the_table_as_it_was() -> None:
    """With a pull far beyond what the rows can say nothing moves."""
    found = fitted(some_readings((0.2, 0.3, 5.0), 1.0), GIVEN, pull=1e6)

    assert list(found.weights.values()) == pytest.approx(list(GIVEN.values()), abs=1e-3)


def test_the_order_of_the_steps_is_kept() -> None:
    """Rows in which weak arguments tell more than moderate ones do not turn the scale round."""
    found = fitted(some_readings((2.5, 0.5, 3.0), 0.0), GIVEN, pull=0.0)

    assert found.weights["weak"] <= found.weights["moderate"] <= found.weights["strong"]


def test_the_fit_agrees_better_with_truth_than_the_table_given() -> None:
    """The log loss falls where the truth follows other weights."""
    found = fitted(some_readings((0.4, 2.2, 3.4), 0.5), GIVEN, pull=0.001)

    assert found.loss_after < found.loss_before
