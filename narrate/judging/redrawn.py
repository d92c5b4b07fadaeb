"""Units looked at with their counts drawn anew, a part of them at a time, so that memory stays bounded."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

import numpy as np

from narrate.judging.criteria import Look, leaves
from narrate.judging.resample import Draws, drawn_samples, draws
from narrate.judging.variants import part_of
from narrate.measures.column import Column
from narrate.measures.count_table import CountTable
from narrate.measures.units import Units
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Fact

_CELLS = 300_000
"""Numbers that one part of the draws may hold."""
_COLUMNS_KEPT = 32
"""Columns that are kept for the next rules; those that few share are not worth the memory."""

ACROSS_UNITS = frozenset({"times_median_density", "taxa_against_pool"})
"""Measures for which a unit is held against all others of its level: these are looked at in one piece."""
_LEVELS_OF_MANY = ("sample", "context", "feature")
"""Levels whose units are looked at some at a time; of phases and the dig, some draws at a time."""
_MOST_PARTS = 8
"""Parts of the draws: each keeps enough of them that all are reduced in one way."""


class DrawsMade:
    """Draws of all counts of a table, made when they are first looked at."""

    def __init__(self, table: CountTable, replicates: int, seed: int) -> None:
        self._table = table
        self.replicates = replicates
        self.seed = seed

    @cached_property
    def draws(self) -> Draws:
        return draws(self._table, self.replicates, self.seed)


class Redrawn:
    """The units of one level with draws in place of their counts."""

    def __init__(self, as_counted: Look, made: DrawsMade, packs: Packs) -> None:
        self.as_counted = as_counted
        self.replicates = made.replicates
        self.seed = made.seed
        self._made = made
        self.is_across = asks_across(packs)
        """Whether some rule holds units against each other, so that what is said of one hangs on all."""
        self.looks_at_all = self.is_across or as_counted.units.level not in _LEVELS_OF_MANY
        """Whether units are looked at only all together."""

    def looks(self, wanted: np.ndarray) -> Iterator[tuple[np.ndarray, Look]]:
        """
        Units, and a look at some or all of the draws of their counts; every unit wanted and every draw in one of them.

        wanted:  numbers of the units; all of them where units are looked at only all together.
        """
        units = self.as_counted.units
        if not wanted.size:
            return
        weight = drawn_samples(units, self.replicates, self.seed)
        if units.level in _LEVELS_OF_MANY:
            is_wanted = np.zeros(len(units.ids) + 1, bool)
            is_wanted[wanted] = True
            rows = int(is_wanted[units.unit_of(np.arange(units.table.row_sample.size))].sum())
            parts = 1 if self.is_across else -(-rows * self.replicates // _CELLS)
            for own in np.array_split(wanted, max(1, min(parts, wanted.size))):
                yield own, self._of_units(own, weight)
        else:
            everyone = np.arange(len(units.ids))
            parts = 1 if self.is_across else -(-max(1, units.table.row_sample.size) * self.replicates // _CELLS)
            at_once = -(-self.replicates // min(parts, _MOST_PARTS))
            for first in range(0, self.replicates, at_once):
                yield everyone, self._of_draws(slice(first, first + at_once), weight)

    def _of_units(self, own: np.ndarray, weight: np.ndarray | None) -> Look:
        units = self.as_counted.units
        table, samples, rows = part_of(units.table, units.level, own)
        part = units.over(table)
        drawn = self._made.draws.of(table, slice(None), rows)
        return _RedrawnLook(
            part.with_table(drawn, None if weight is None else weight[:, samples]), self.as_counted, own
        )

    def _of_draws(self, replicates: slice, weight: np.ndarray | None) -> Look:
        drawn, own = self._made.draws.of(self.as_counted.units.table, replicates, slice(None)), weight
        units = self.as_counted.units.with_table(drawn, None if own is None else own[replicates])
        phases = units if units.level == "phase" else self._phases(drawn, replicates)
        return _RedrawnLook(units, self.as_counted, np.arange(len(units.ids)), phases)

    def _phases(self, drawn, replicates: slice) -> Units:  # type: ignore[no-untyped-def]
        weight = drawn_samples(self.as_counted.phases, self.replicates, self.seed)
        return self.as_counted.phases.with_table(drawn, None if weight is None else weight[replicates])


class _RedrawnLook(Look):
    """Facts are those of the records, whatever was drawn."""

    def __init__(self, units: Units, as_counted: Look, own: np.ndarray, phases: Units | None = None) -> None:
        super().__init__(units, phases or units, ())
        self._as_counted = as_counted
        self._own = own

    def column(self, bound: Bound) -> Column:
        found = super().column(bound)
        if len(self._columns) > _COLUMNS_KEPT:
            del self._columns[next(iter(self._columns))]
        return found

    def leaf_verdicts(self, leaf: Bound | Fact) -> np.ndarray:
        if isinstance(leaf, Bound):
            return super().leaf_verdicts(leaf)
        return np.broadcast_to(self._as_counted.leaf_verdicts(leaf)[:1, self._own], self.units.shape)


def asks_across(packs: Packs) -> bool:
    return any(
        isinstance(leaf, Bound) and leaf.measure in ACROSS_UNITS
        for rule in packs.rules.values()
        for leaf in leaves((*rule.needs, rule.criteria))
    )
