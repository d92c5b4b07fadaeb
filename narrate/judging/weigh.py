"""Arguments weighed in log-odds, and the grade that the sum allows."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce

import numpy as np

from narrate.judging.facts import CANNOT_TELL, FAILS, HOLDS
from narrate.model.claims import GRADES, Grade
from narrate.model.rules import Rule, Verdict

VERDICTS: dict[int, Verdict] = {HOLDS: "holds", CANNOT_TELL: "cannot tell", FAILS: "fails"}


def support(
    prior: float, weights: Sequence[float], held: Sequence[np.ndarray], evidence: Sequence[str] = ()
) -> np.ndarray:
    """
    Weighed evidence from 0 to 1.

        support = 1 / (1 + exp(−(prior + Σ wᵢ)));   wᵢ of the arguments that hold, negative for those against

    prior:     log-odds before any argument.
    weights:   signed log-odds of each argument.
    held:      for each argument, an array that is True where it holds.
    evidence:  for each argument the key of the evidence that it shares with others; '' for evidence of its own. Of
               those that share a key and a side, the heaviest that holds is added and the others are not: the same
               seeds, looked at twice, are no second witness.
    Source:   good practice in weighing evidence (Good 1950, from memory); the figures are a default of the packs.

    >>> support(-0.9, [2.6], [np.array([True, False])]).round(3).tolist()
    [0.846, 0.289]
    """
    odds = np.full(held[0].shape, prior) if held else np.array(prior)
    for weight, counts in zip(weights, counted_once(weights, held, evidence), strict=True):
        np.add(odds, weight, out=odds, where=counts)
    return 1 / (1 + np.exp(-odds))


def counted_once(
    weights: Sequence[float], held: Sequence[np.ndarray], evidence: Sequence[str] = ()
) -> list[np.ndarray]:
    """
    For each argument, True where it holds and no heavier one of the same evidence and side does.

    Of arguments that weigh alike the first is taken.

    >>> a, b = np.array([True, True]), np.array([True, False])
    >>> [part.tolist() for part in counted_once([1.0, 1.8], [a, b], ["beans", "beans"])]
    [[False, True], [True, False]]
    """
    counts = list(held)
    if not any(evidence):
        return counts
    taken: dict[tuple[str, bool], np.ndarray] = {}
    for i in sorted(range(len(counts)), key=lambda i: -abs(weights[i])):
        if evidence[i]:
            group = (evidence[i], weights[i] > 0)
            before = taken.get(group)
            counts[i] = held[i] if before is None else held[i] & ~before
            taken[group] = held[i] if before is None else before | held[i]
    return counts


def claim_verdicts(rules: Sequence[Rule], codes: Sequence[np.ndarray], weighed: np.ndarray) -> np.ndarray:
    """
    Codes of a statement from the codes of its rules.

    Holds: an argument for it holds and support is 0.5 or more. Fails: no argument for it holds, and either one against
    it holds or every argument for it was looked at and failed. Otherwise it cannot be told.
    """
    nothing = np.zeros(weighed.shape, bool)
    for_ = [c for rule, c in zip(rules, codes, strict=True) if rule.direction == "for"]
    against = [c for rule, c in zip(rules, codes, strict=True) if rule.direction == "against"]
    any_for = reduce(np.logical_or, (c == HOLDS for c in for_)) if for_ else nothing
    any_against = reduce(np.logical_or, (c == HOLDS for c in against)) if against else nothing
    all_failed = reduce(np.logical_and, (c == FAILS for c in for_)) if for_ else nothing
    holds = any_for & (weighed >= GRADES[0][1])
    fails = ~any_for & (any_against | all_failed)
    return holds.astype(np.int8) * np.int8(HOLDS) + fails.astype(np.int8) * np.int8(FAILS)


def grade_of(weighed: float) -> Grade:
    """
    The grade whose band the support reaches.

    >>> grade_of(0.94), grade_of(0.66), grade_of(0.49)
    ('strongly supports', 'suggests', 'not supported')
    """
    found: Grade = "not supported"
    for grade, least in GRADES:
        if weighed >= least - 1e-12:
            found = grade
    return found
