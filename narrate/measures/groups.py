"""Items by unit and taxon, without a table of every taxon in every unit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from narrate.measures.units import Units
from narrate.model.rules import Selector


@dataclass(frozen=True, slots=True, kw_only=True)
class ByTaxon:
    """One column for each taxon that a unit has rows of."""

    items: np.ndarray
    """(replicates, groups): items of the taxon in the unit; 0 where it was only noted."""
    unit: np.ndarray
    """(groups,): the unit of each group, rising."""
    taxon: np.ndarray
    """(groups,): a number for the taxon, the same in all units."""
    taxa: int
    shape: tuple[int, int]
    """(replicates, units)."""

    def total(self, values: np.ndarray) -> np.ndarray:
        """Values of the groups summed by unit."""
        out = np.zeros((values.shape[0], self.shape[1]))
        if self.unit.size:
            starts = np.concatenate([[0], np.flatnonzero(self.unit[1:] != self.unit[:-1]) + 1])
            out[:, self.unit[starts]] = np.add.reduceat(values, starts, axis=1)
        return out

    def sum_of(self, function: Callable[[np.ndarray], np.ndarray]) -> np.ndarray:
        """A function of the items of each taxon, summed by unit."""
        return self.total(function(self.items))

    def spread(self, of_units: np.ndarray) -> np.ndarray:
        """Values of units laid over their groups."""
        return of_units[:, self.unit]


def by_taxon(units: Units, of: Selector) -> ByTaxon:
    """Items of every taxon in every unit, worked out once for a selector; unknown names count by their writing."""
    return units.kept(("by taxon", of), lambda: _grouped(units, of))


def _grouped(units: Units, of: Selector) -> ByTaxon:
    rows = units.rows(of)
    names: dict[object, int] = {}
    codes = np.array([names.setdefault(k.taxon or k.either or k.written, len(names)) for k in units.table.kinds], int)
    if not rows.size:
        empty = np.zeros(0, np.intp)
        return ByTaxon(
            items=np.zeros((units.table.replicates, 0)), unit=empty, taxon=empty, taxa=len(names), shape=units.shape
        )
    group = units.unit_of(rows) * len(names) + codes[units.table.row_kind[rows]]
    order = np.argsort(group, kind="stable")
    group = group[order]
    starts = np.concatenate([[0], np.flatnonzero(group[1:] != group[:-1]) + 1])
    items = np.add.reduceat(units.table.counted[:, rows[order]], starts, axis=1)
    return ByTaxon(
        items=items,
        unit=group[starts] // len(names),
        taxon=group[starts] % len(names),
        taxa=len(names),
        shape=units.shape,
    )
