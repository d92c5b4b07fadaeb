"""Counts a little other than they are: one kind of thing more or fewer in every unit, as one more axis of the table."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from narrate.measures.count_table import CountTable
from narrate.measures.selection import kinds_meant
from narrate.measures.units import Units
from narrate.model.ids import Level
from narrate.model.rules import Selector
from narrate.problems import Place

MOST = 30
"""Items that are added or taken at most. A verdict that only larger changes turn is firm in this respect."""
STEPS = np.array([sign * items for items in range(1, MOST + 1) for sign in (1, -1)], dtype=float)
"""The changes that are tried, the smallest first."""

NEW_PLANT = frozenset({"taxa", "taxa_at_30", "dominance"})
"""Measures that a plant not yet there may move as much as more of one that is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Varied:
    """The table with every candidate of every unit changed by every step: (candidates · steps) replicates."""

    table: CountTable
    kinds: np.ndarray
    """(candidates, units): the kind that is changed; −1 where a unit has no such candidate."""
    samples: np.ndarray
    """(candidates, units): the sample in which the first row is changed."""
    is_possible: np.ndarray
    """(candidates, steps, units): False where there is nothing left to take, or no candidate."""


class Candidates:
    """Which kinds of thing may be added to or taken from each unit of a level, by selector."""

    def __init__(self, units: Units) -> None:
        self._units = units
        self._counted = units.table.counted[0]
        self._of_dig = np.bincount(units.table.row_kind, self._counted, minlength=len(units.table.kinds))
        self._known: dict[tuple[Selector, Selector | None, bool], np.ndarray] = {}

    def of(self, selector: Selector, *, apart_from: Selector | None = None, new: bool = False) -> np.ndarray:
        """
        One kind a unit (−1: none): the commonest that the unit holds, else the commonest of the dig.

        apart_from:  leaves out the kinds that this selector means as well.
        new:         the commonest plant of the dig that the unit does not hold.
        """
        key = (selector, apart_from, new)
        found = self._known.get(key)
        if found is None:
            found = self._known[key] = self._chosen(selector, apart_from, new)
        return found

    def _chosen(self, selector: Selector, apart_from: Selector | None, new: bool) -> np.ndarray:
        units, table = self._units, self._units.table
        if not table.kinds:
            return np.full(len(units.ids), -1)
        meant = self._meant(selector)
        if apart_from is not None:
            meant = meant & ~self._meant(apart_from)
        rows = units.rows(selector)
        rows = rows[meant[table.row_kind[rows]]]
        there = np.zeros((len(units.ids), len(table.kinds)))
        np.add.at(there, (units.unit_of(rows), table.row_kind[rows]), self._counted[rows])
        # Undated phases and plants later than a phase depend on the unit: only what lies there is a candidate.
        common = np.array([], int) if selector.later_than_phase else self._common(meant)
        if new:
            return self._first_missing(there, common)
        best = there.argmax(axis=1)
        elsewhere = common[0] if common.size else -1
        return np.where(there.max(axis=1) > 0, best, elsewhere)

    def _meant(self, selector: Selector) -> np.ndarray:
        units = self._units
        return kinds_meant(selector, units.table, units.packs, units.preservation)

    def _common(self, meant: np.ndarray) -> np.ndarray:
        """Kinds that are meant, firmly named ones first, the commonest of the dig first."""
        kinds = np.flatnonzero(meant)
        is_doubtful = np.array([not self._units.table.kinds[k].is_certain for k in kinds], bool)
        return kinds[np.lexsort((kinds, -self._of_dig[kinds], is_doubtful))]

    def _first_missing(self, there: np.ndarray, common: np.ndarray) -> np.ndarray:
        if not common.size:
            return np.full(len(there), -1)
        kinds = self._units.table.kinds
        names: dict[object, int] = {}
        of_kind = np.array([names.setdefault(k.taxon or k.either or k.written, len(names)) for k in kinds])
        held = np.zeros((len(there), len(names)), bool)
        unit, kind = np.nonzero(there)
        held[unit, of_kind[kind]] = True
        missing = ~held[:, of_kind[common]]
        return np.where(missing.any(axis=1), common[missing.argmax(axis=1)], -1)


def compacted(candidates: list[np.ndarray]) -> np.ndarray:
    """(candidates, units): each kind once a unit, those of a unit first, without candidates that no unit has."""
    stacked = np.stack(candidates)
    for later in range(1, len(stacked)):
        stacked[later][(stacked[:later] == stacked[later]).any(axis=0)] = -1
    order = np.argsort(stacked < 0, axis=0, kind="stable")
    stacked = np.take_along_axis(stacked, order, axis=0)
    return stacked[(stacked >= 0).any(axis=1)]


def with_empty_rows(units: Units, kinds: np.ndarray) -> CountTable:
    """
    The table with a row that counts nothing for each candidate that a unit does not hold.

    The row lies in the first sample of the unit, in a class that was sorted whole. It changes no measure.
    """
    table = units.table
    unit = np.broadcast_to(np.arange(kinds.shape[1]), kinds.shape)[kinds >= 0]
    wanted = np.unique(unit * len(table.kinds) + kinds[kinds >= 0])
    held = np.unique(_unit_of_rows(units) * len(table.kinds) + table.row_kind)
    missing = np.setdiff1d(wanted, held)
    unit, kind = missing // len(table.kinds), missing % len(table.kinds)
    has_sample = np.array([units.samples_of(u).size > 0 for u in unit], bool)
    unit, kind = unit[has_sample], kind[has_sample]
    sample = np.array([units.samples_of(u)[0] for u in unit], dtype=np.intp)
    count = len(sample)
    nothing = np.zeros((1, count))
    return replace(
        table,
        row_sample=np.concatenate([table.row_sample, sample]),
        row_kind=np.concatenate([table.row_kind, kind]),
        counted=np.concatenate([table.counted, nothing], axis=1),
        unsorted=np.concatenate([table.unsorted, nothing], axis=1),
        share=np.concatenate([table.share, np.ones(count)]),
        mass_g=np.concatenate([table.mass_g, np.full(count, np.nan)]),
        is_noted=np.concatenate([table.is_noted, np.zeros(count, bool)]),
        places=table.places + (Place(path=""),) * count,
        written=table.written + ("",) * count,
    )


def varied(units: Units, kinds: np.ndarray) -> Varied:
    """
    Every candidate changed by every step.

    What is added goes to the row of the unit that holds most of the kind; what is taken is taken from that row first,
    then from the next. The unsorted share follows the count.
    """
    table = units.table
    base = table.counted[0]
    entry, unit, row, before = _rows_changed(units, kinds)
    steps = len(STEPS)
    counted = np.broadcast_to(base, (len(kinds), steps, base.size)).copy()
    is_first = before == 0
    if entry.size:
        is_first[1:] = (entry[1:] != entry[:-1]) | (unit[1:] != unit[:-1])
    for step, items in enumerate(STEPS):
        if items > 0:
            counted[entry[is_first], step, row[is_first]] += items
        else:
            counted[entry, step, row] -= np.clip(-items - before, 0, base[row])
    held = np.zeros(kinds.shape)
    np.add.at(held, (entry, unit), base[row])
    has_row = np.zeros(kinds.shape, bool)
    has_row[entry, unit] = True
    samples = np.full(kinds.shape, -1, dtype=np.intp)
    samples[entry[is_first], unit[is_first]] = table.row_sample[row[is_first]]
    is_possible = has_row[:, None, :] & (held[:, None, :] + STEPS[None, :, None] >= 0)
    flat = counted.reshape(len(kinds) * steps, base.size)
    changed = table.with_counts(flat, flat * ((1 - table.share) / table.share))
    return Varied(table=changed, kinds=kinds, samples=samples, is_possible=is_possible)


def part_of(table: CountTable, level: Level, first: int, end: int) -> tuple[CountTable, np.ndarray]:
    """The units `first` to `end` of one level as a table of their own, and their samples."""
    member = table.unit_of_sample[level]
    samples = np.flatnonzero((member >= first) & (member < end))
    position = np.full(len(table.sample_ids), -1, dtype=np.intp)
    position[samples] = np.arange(samples.size)
    rows = np.flatnonzero(position[table.row_sample] >= 0) if table.row_sample.size else table.row_sample
    part = replace(
        table,
        sample_ids=tuple(table.sample_ids[s] for s in samples),
        row_sample=position[table.row_sample[rows]],
        row_kind=table.row_kind[rows],
        counted=table.counted[:, rows],
        unsorted=table.unsorted[:, rows],
        share=table.share[rows],
        mass_g=table.mass_g[rows],
        is_noted=table.is_noted[rows],
        places=tuple(table.places[r] for r in rows),
        written=tuple(table.written[r] for r in rows),
        volume_l=table.volume_l[samples],
        sorted_share=table.sorted_share[samples],
        added=table.added[samples],
        recovered=table.recovered[samples],
        intrusions=table.intrusions[samples],
        unit_of_sample={level: member[samples] - first},
        unit_ids={level: table.unit_ids[level][first:end]},
        phase_end={level: table.phase_end[level][first:end]},
    )
    return part, samples


def _unit_of_rows(units: Units) -> np.ndarray:
    return units.unit_of(np.arange(units.table.row_sample.size))


def _rows_changed(units: Units, kinds: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """For every row that a candidate may change: candidate, unit, row, and the items in its rows before it."""
    table = units.table
    rows = np.flatnonzero(_unit_of_rows(units) >= 0)
    key = units.unit_of(rows) * len(table.kinds) + table.row_kind[rows]
    order = np.lexsort((rows, -table.counted[0, rows], key))
    rows, key = rows[order], key[order]
    entry, unit = np.nonzero(kinds >= 0)
    wanted = unit * len(table.kinds) + kinds[entry, unit]
    first, end = np.searchsorted(key, wanted), np.searchsorted(key, wanted, side="right")
    length = end - first
    which = np.repeat(np.arange(length.size), length)
    place = np.arange(length.sum()) - np.repeat(np.cumsum(length) - length, length)
    row = rows[first[which] + place]
    items = table.counted[0, row]
    running = np.cumsum(items) - items
    starts = np.cumsum(length) - length
    before = running - running[starts[which]] if row.size else running
    return entry[which], unit[which], row, before
