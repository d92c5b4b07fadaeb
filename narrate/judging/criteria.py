"""Criteria judged on intervals, for all units and replicates at once."""

from __future__ import annotations

from collections.abc import Iterator
from functools import reduce

import numpy as np

from narrate.judging.facts import CANNOT_TELL, FAILS, HOLDS, Recorded, fact_verdicts
from narrate.measures.catalogue import measured
from narrate.measures.column import Column
from narrate.measures.units import Units
from narrate.model.rules import Bound, Criterion, Fact, Group, Rule, Selector


class Look:
    """The units of one level as rules look at them; every measure is worked out once."""

    def __init__(self, units: Units, phases: Units, records: tuple[Recorded, ...]) -> None:
        self.units = units
        self.phases = phases
        self.records = records
        self._columns: dict[tuple[str, Selector | None, Selector | None], Column] = {}
        self._verdicts: dict[Bound | Fact, np.ndarray] = {}

    def column(self, bound: Bound) -> Column:
        key = (bound.measure, bound.of, bound.to)
        found = self._columns.get(key)
        if found is None:
            found = measured(bound.measure, self.units, of=bound.of, to=bound.to, phases=self.phases)
            self._columns[key] = found
        return found

    def forget(self) -> None:
        """Drops what was only needed to work out columns; they and the verdicts stay."""
        self.units.forget()
        self.phases.forget()

    def leaf_verdicts(self, leaf: Bound | Fact) -> np.ndarray:
        """Codes of one bound or fact, of shape (replicates, units)."""
        found = self._verdicts.get(leaf)
        if found is None:
            if isinstance(leaf, Bound):
                found = _bound(leaf, self)
            else:
                found = np.broadcast_to(fact_verdicts(leaf, self.units, self.records), self.units.shape)
            self._verdicts[leaf] = found
        return found


def rule_verdicts(rule: Rule, look: Look) -> np.ndarray:
    """Codes of shape (replicates, units). Needs that are not met, or not known, make it 'cannot tell'."""
    codes = verdicts(rule.criteria, look)
    for need in rule.needs:
        codes = codes * _needs_met(need, look)
    return codes


def verdicts(criterion: Criterion, look: Look) -> np.ndarray:
    """Codes of one criterion, of shape (replicates, units)."""
    if not isinstance(criterion, Group):
        return look.leaf_verdicts(criterion)
    parts = [verdicts(part, look) for part in criterion.criteria]
    if criterion.kind == "all":
        return reduce(np.minimum, parts) if parts else np.full(look.units.shape, HOLDS, np.int8)
    any_of = reduce(np.maximum, parts) if parts else np.full(look.units.shape, FAILS, np.int8)
    return any_of if criterion.kind == "any" else -any_of


def leaves(criteria: tuple[Criterion, ...]) -> Iterator[Bound | Fact]:
    """Bounds and facts of criteria, in the order in which they are written."""
    for criterion in criteria:
        if isinstance(criterion, Group):
            yield from leaves(criterion.criteria)
        else:
            yield criterion


def _bound(bound: Bound, look: Look) -> np.ndarray:
    """
    `at_most b` holds if high ≤ b, fails if low > b; `at_least b` holds if low ≥ b, fails if high < b.

    A value without an interval, and a bound on the value, is judged as it stands. Where there is no interval at all
    nothing can be told.
    """
    column = look.column(bound)
    low, high = (column.value, column.value) if bound.judged_on == "value" else (column.low, column.high)
    # Comparisons with NaN are false, so that what has no value neither holds nor fails.
    known = True if high is low else ~np.isnan(low)
    codes = []
    with np.errstate(invalid="ignore"):
        if bound.at_least is not None:
            codes.append(_code(low >= bound.at_least, (high < bound.at_least) & known))
        if bound.at_most is not None:
            codes.append(_code((high <= bound.at_most) & known, low > bound.at_most))
    return reduce(np.minimum, codes) if codes else np.where(np.isnan(low), CANNOT_TELL, HOLDS).astype(np.int8)


def _code(holds: np.ndarray, fails: np.ndarray) -> np.ndarray:
    """Codes are 1, 0 and −1, and nothing both holds and fails."""
    return holds.view(np.int8) - fails.view(np.int8)


def _needs_met(need: Criterion, look: Look) -> np.ndarray:
    """Needs are judged on the value alone: they ask whether there is enough to look at, not what it says."""
    if not isinstance(need, Bound):
        return verdicts(need, look) == HOLDS
    value = look.column(need).value
    with np.errstate(invalid="ignore"):
        met = np.isfinite(value)
        if need.at_least is not None:
            met = met & (value >= need.at_least)
        if need.at_most is not None:
            met = met & (value <= need.at_most)
    return met
