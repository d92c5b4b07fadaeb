"""
The strength table fitted to digs whose truth is known.

Support is a logistic sum: prior plus the weights of the arguments that hold. So the three weights and one shift of all
priors are those of a logistic regression of truth on numbers of arguments, with a pull towards the table that is given.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from narrate.model.rules import WEIGHTS
from narrate.trials.judged import Outcome
from narrate.trials.simulate import Dug


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """Statements of contexts for which at least one argument for them holds, one row each."""

    arguments: np.ndarray
    """(rows, 3): arguments for less arguments against, weak, moderate and strong."""
    prior: np.ndarray
    is_true: np.ndarray
    weight: np.ndarray
    """What a row counts for: every statement as much as any other, however often it is argued for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    weights: Mapping[str, float]
    shift: float
    """Added to every prior."""
    loss_before: float
    """Mean log loss under the table given, in nats."""
    loss_after: float


def readings(runs: Iterable[tuple[Dug, Mapping[str, Outcome]]], questions: frozenset[str]) -> Readings:
    """Rows of all runs for statements of the questions named whose truth the model knows."""
    arguments, priors, truths, weights = [], [], [], []
    for dug, outcomes in runs:
        for id in sorted(set(outcomes) & set(dug.truth)):
            found = outcomes[id]
            if found.statement.question not in questions:
                continue
            for_ = np.array([rule.direction == "for" for rule in found.rules])
            rows = np.flatnonzero(found.held[for_].any(axis=0))
            if not rows.size:
                continue
            sign = np.where(for_, 1.0, -1.0)
            of_weight = np.array([[rule.weight == w for w in WEIGHTS] for rule in found.rules], float) * sign[:, None]
            arguments.append(found.counted[:, rows].T @ of_weight)
            priors.append(np.full(rows.size, found.statement.prior))
            truths.append(dug.truth[id][rows])
            weights.append(np.full(rows.size, 1 / np.sqrt(rows.size)))
    return Readings(
        arguments=np.concatenate(arguments),
        prior=np.concatenate(priors),
        is_true=np.concatenate(truths).astype(float),
        weight=np.concatenate(weights),
    )


def fitted(rows: Readings, given: Mapping[str, float], *, pull: float = 0.05, steps: int = 50) -> Fit:
    """
    The weights that make support agree best with truth, held near those given.

        minimise  mean log loss + pull · Σ (w − w_given)² + pull · shift²,   weak ≤ moderate ≤ strong

    pull:   in nats per squared unit of log-odds; large keeps the table as it is.
    Source: logistic regression with a Gaussian prior, by Newton's method (common practice).
    """
    start = np.array([*(given[w] for w in WEIGHTS), 0.0])
    columns = np.column_stack([rows.arguments, np.ones(rows.prior.size)])
    share = rows.weight / rows.weight.sum()
    at = start.copy()
    for _ in range(steps):
        chance = 1 / (1 + np.exp(-(columns @ at + rows.prior)))
        slope = columns.T @ (share * (chance - rows.is_true)) + 2 * pull * (at - start)
        curve = (columns * (share * chance * (1 - chance))[:, None]).T @ columns + 2 * pull * np.eye(at.size)
        at = at - np.linalg.solve(curve, slope)
    at[:3] = np.maximum.accumulate(at[:3])
    return Fit(
        weights=dict(zip(WEIGHTS, at[:3].tolist(), strict=True)),
        shift=float(at[3]),
        loss_before=log_loss(rows, start),
        loss_after=log_loss(rows, at),
    )


def log_loss(rows: Readings, table: np.ndarray) -> float:
    """Mean log loss in nats of weak, moderate, strong and the shift of priors."""
    chance = 1 / (1 + np.exp(-(rows.arguments @ table[:3] + rows.prior + table[3])))
    chance = np.clip(chance, 1e-9, 1 - 1e-9)
    loss = -(rows.is_true * np.log(chance) + (1 - rows.is_true) * np.log(1 - chance))
    return float((rows.weight * loss).sum() / rows.weight.sum())
