"""Whether a claim hangs on arguments that rest on few items, however many there are besides."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from narrate.judging.criteria import Look, leaves
from narrate.judging.weigh import grade_of, support
from narrate.model.claims import GRADE_NAMES
from narrate.model.rules import Bound, Limit, Rule

COUNTING = frozenset(
    {"items", "density", "taxa", "taxa_at_30", "presence", "share", "ratio", "chaff_ratio", "dominance"}
)
"""Measures that rest on items; those of samples, weights and litres have doubts of their own."""


def few_behind(look: Look, unit: int, holding: Sequence[Rule], limit: Limit) -> bool:
    """
    Of samples, contexts and features: the heaviest arguments all rest on fewer items than the threshold, and without
    them what is left would not bear more than the grade of the limit.

    An argument rests on the items that its criteria count. One without such criteria rests on what the records say.
    Source: common practice, no source: a handful of seeds may be one fruit.
    """
    packs = look.units.packs
    for_ = [rule for rule in holding if rule.direction == "for"]
    if look.units.level not in ("sample", "context", "feature") or not for_:
        return False
    least = limit.threshold or 10
    heaviest = max(packs.weights[rule.weight] for rule in for_)
    if not all(is_thin(look, unit, rule, least) for rule in for_ if packs.weights[rule.weight] == heaviest):
        return False
    left = [rule for rule in holding if rule not in for_ or packs.weights[rule.weight] < heaviest]
    if not any(rule in for_ for rule in left):
        return True
    weights = [packs.weights[rule.weight] * (1 if rule in for_ else -1) for rule in left]
    prior = packs.statements[for_[0].statement].prior
    weighed = support(prior, weights, [np.array([True])] * len(left), [rule.evidence for rule in left])
    return GRADE_NAMES.index(grade_of(float(weighed[0]))) <= GRADE_NAMES.index(limit.grade)  # type: ignore[arg-type]


def is_thin(look: Look, unit: int, rule: Rule, least: float) -> bool:
    """Whether all that a rule counts in a unit is fewer items than `least`; marks count by their lower ends."""
    asked = [leaf for leaf in leaves((rule.criteria,)) if isinstance(leaf, Bound) and leaf.measure in COUNTING]
    selectors = {selector for leaf in asked for selector in (leaf.of, leaf.to) if selector is not None}
    if not selectors:
        return False
    units = look.units
    rows = np.unique(np.concatenate([units.rows_of(unit, selector) for selector in selectors]))
    marked = units.table.class_low[rows]
    items = units.table.counted[0, rows].sum() + marked[np.isfinite(marked)].sum()
    return bool(items < least)
