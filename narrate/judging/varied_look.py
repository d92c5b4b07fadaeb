"""What rules find in units whose counts are a little other than they are."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from narrate.judging.criteria import Look
from narrate.judging.variants import Varied, VariedInPlace
from narrate.judging.varied_units import ANSWERED, VariedUnits
from narrate.measures.catalogue import measured
from narrate.measures.column import Column
from narrate.measures.units import Units
from narrate.model.rules import Bound, Fact

OF_OWN_COUNTS = frozenset(
    {
        "items", "density", "taxa", "taxa_at_30", "presence", "share", "ratio", "chaff_ratio", "dominance",
        "plant_dominance",
        "samples_with", "ubiquity", "richest_share", "richest_context_share", "times_median_density",
    }
)  # fmt: skip
"""
Measures that the counts of the unit alone move. All others stay as they are: masses are what was weighed, and the
median density is that of the dig as it stands.
"""


class VariedLook(Look):
    """Units with varied counts; what counts do not move is taken from the units as they are."""

    def __init__(self, units: Units, changed: Varied, as_counted: Look, own: np.ndarray) -> None:
        in_place = VariedUnits.of(units, changed) if isinstance(changed, VariedInPlace) else None
        super().__init__(in_place or _over_table(units, changed), units, ())
        self._whole = None if in_place else self.units
        self._changed = changed
        self._as_counted = as_counted
        self._own = own

    def _over_table(self) -> Units:
        """The units over the varied table itself, where sums do not do."""
        if self._whole is None:
            self._whole = _over_table(self.phases, self._changed)
        return self._whole

    def column(self, bound: Bound) -> Column:
        key = (bound.measure, bound.of, bound.to)
        found = self._columns.get(key)
        if found is None:
            found = self._columns[key] = self._varied(bound) if is_moved(bound) else self._as_it_is(bound)
        return found

    def leaf_verdicts(self, leaf: Bound | Fact) -> np.ndarray:
        if isinstance(leaf, Bound) and is_moved(leaf):
            return super().leaf_verdicts(leaf)
        codes = self._as_counted.leaf_verdicts(leaf)[:1, self._own]
        return np.broadcast_to(codes, self.units.shape)

    def _varied(self, bound: Bound) -> Column:
        if bound.measure not in ANSWERED:
            return measured(bound.measure, self._over_table(), of=bound.of, to=bound.to)
        if bound.measure != "times_median_density":
            return measured(bound.measure, self.units, of=bound.of, to=bound.to)
        density = measured("density", self.units, of=bound.of)
        median = median_density(self._as_counted, bound)
        value, low, high = (part / median for part in (density.value, density.low, density.high))
        return replace(density, value=value, low=low, high=high)

    def _as_it_is(self, bound: Bound) -> Column:
        whole = self._as_counted.column(bound)
        value, low, high = (
            np.broadcast_to(part[:1, self._own], self.units.shape) for part in (whole.value, whole.low, whole.high)
        )
        return replace(whole, value=value, low=low, high=high, of=None, to=None, n=None)


def median_density(look: Look, bound: Bound) -> float:
    """The median of the whole dig that a density is held against; NaN where there is none above nought."""
    of_dig = look.column(replace(bound, measure="density", to=None)).value[0]
    median = float(np.nanmedian(of_dig)) if np.isfinite(of_dig).any() else np.nan
    return median if median > 0 else np.nan


def _over_table(units: Units, changed: Varied) -> Units:
    return units.with_table(changed.made())


def is_moved(bound: Bound) -> bool:
    return bound.measure in OF_OWN_COUNTS
