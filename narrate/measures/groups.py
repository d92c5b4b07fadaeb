"""Items by unit and taxon, without a table of every taxon in every unit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from narrate.measures.runs import blank, reduced, starts, taken
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
    at: np.ndarray = field(repr=False)
    """Where the groups of each unit begin."""
    taxa: int
    shape: tuple[int, int]
    """(replicates, units)."""

    def total(self, values: np.ndarray) -> np.ndarray:
        """Values of the groups summed by unit."""
        out = blank(values.shape[0], self.shape[1])
        if self.at.size:
            out.T[self.unit[self.at]] = reduced(np.add, values, self.at).T
        return out

    def sum_of(self, function: Callable[[np.ndarray], np.ndarray]) -> np.ndarray:
        """A function of the items of each taxon, summed by unit."""
        return self.total(function(self.items))

    @property
    def total_items(self) -> np.ndarray:
        """(replicates, units): items of all taxa."""
        return self.total(self.items)

    def spread(self, of_units: np.ndarray) -> np.ndarray:
        """Values of units laid over their groups."""
        return taken(of_units, self.unit)


def by_taxon(units: Units, of: Selector, *, anywhere: bool = False) -> ByTaxon:
    """
    Items of every taxon in every unit, worked out once for a selector; unknown names count by their writing. Items of a
    name that is wider than one that is there are left out, because they may be of that one.

    anywhere:  wider than one in any of the units.
    """
    return units.kept(("by taxon", of, anywhere), lambda: _grouped(units, of, anywhere))


def is_seen(k: np.ndarray) -> np.ndarray:
    """1 where a taxon was counted."""
    return (k > 0).astype(float)


def is_once(k: np.ndarray) -> np.ndarray:
    """1 where a taxon was counted once."""
    return (k == 1).astype(float)


def is_twice(k: np.ndarray) -> np.ndarray:
    """1 where a taxon was counted twice."""
    return (k == 2).astype(float)


def _grouped(units: Units, of: Selector, anywhere: bool) -> ByTaxon:
    rows = units.rows(of)
    taxa = int(units.taxon_of_kind.max(initial=-1)) + 1
    if not rows.size:
        empty = np.zeros(0, np.intp)
        return ByTaxon(
            items=np.zeros((units.table.replicates, 0)),
            unit=empty,
            taxon=empty,
            at=empty,
            taxa=taxa,
            shape=units.shape,
        )
    at, unit, taxon, begins = units.laid("taxa", rows, lambda: _runs(units, rows))
    hidden = units.covered(rows, anywhere=anywhere)
    counts = units.counts(rows) if hidden is None else units.counts(rows) * ~hidden
    return ByTaxon(
        items=reduced(np.add, counts, at),
        unit=unit,
        taxon=taxon,
        at=begins,
        taxa=taxa,
        shape=units.shape,
    )


def _runs(units: Units, rows: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """Where runs of one unit and taxon begin, their units and taxa, and which runs begin a unit."""
    unit, taxon = units.unit_of(rows), units.taxon_of_kind[units.kind_of(rows)]
    at = starts(unit, taxon)
    return at, unit[at], taxon[at], starts(unit[at])
