"""Counts a little other than they are: one kind of thing more or fewer in every unit, as one more axis of the table."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from narrate.measures.count_table import CountTable
from narrate.measures.units import Units
from narrate.model.ids import Level
from narrate.model.rules import Selector

MOST = 30
"""Items that are added or taken at most. A verdict that only larger changes turn is firm in this respect."""
STEPS = np.array([sign * items for items in range(1, MOST + 1) for sign in (1, -1)], dtype=float)
"""The changes that are tried, the smallest first."""

OF_EACH_PLANT = frozenset({"taxa", "taxa_at_30", "dominance", "plant_dominance"})
"""Measures that ask how items are spread over plants, so that it matters which of them is more or fewer."""
OF_EACH_CLASS = frozenset({"density", "times_median_density"})
"""Measures that ask in which size class an item lies, where a class was sorted in part."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Varied:
    """Every candidate of every unit changed by every step."""

    made: Callable[[], CountTable]
    """Makes the table with all of it: (candidates · steps) replicates."""
    kinds: np.ndarray
    """(candidates, units): the kind that is changed; −1 where a unit has no such candidate."""
    samples: np.ndarray
    """(candidates, units): the sample in which the first row is changed."""
    is_possible: np.ndarray
    """(candidates, steps, units): False where there is nothing left to take, or no candidate."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VariedInPlace(Varied):
    """Changes where a unit holds most of the kind: in its fullest row first."""

    held: np.ndarray
    """(candidates, units): items of the kind."""
    first_row: np.ndarray
    """(candidates, units): the row that is changed first; −1 where there is none."""
    changes: Changes

    def summed(self, weight: np.ndarray) -> np.ndarray:
        """(candidates, steps, units): all that a step changes, each row times a weight of its own."""
        found = np.zeros((self.kinds.shape[0], self.kinds.shape[1], len(STEPS)))
        at = self.changes
        np.add.at(found, (at.entry, at.unit), at.items * weight[at.row][:, None])
        return found.transpose(0, 2, 1)


@dataclass(frozen=True, slots=True)
class Changes:
    """Rows that some step changes."""

    entry: np.ndarray
    """The candidate."""
    unit: np.ndarray
    row: np.ndarray
    items: np.ndarray
    """(changes, steps): items more or fewer in the row."""


def with_empty_rows(units: Units, kinds: np.ndarray, spread: Sequence[Selector] = ()) -> CountTable:
    """
    The table with a row that counts nothing for each candidate that a unit does not hold.

    The row lies in the first sample of the unit that holds most of what the selectors of `spread` mean by the
    candidate, so that an item added there makes as few samples with the thing as may be. It changes no measure.
    """
    table = units.table
    unit = np.broadcast_to(np.arange(kinds.shape[1]), kinds.shape)[kinds >= 0]
    wanted = np.unique(unit * len(table.kinds) + kinds[kinds >= 0])
    rows = np.flatnonzero(unit_of_rows(units) >= 0)
    held = np.unique(units.unit_of(rows) * len(table.kinds) + table.row_kind[rows])
    missing = np.setdiff1d(wanted, held)
    unit, kind = missing // len(table.kinds), missing % len(table.kinds)
    has_sample = np.array([units.samples_of(u).size > 0 for u in unit], bool)
    unit, kind = unit[has_sample], kind[has_sample]
    if not spread:
        return with_rows(table, np.array([units.samples_of(u)[0] for u in unit], dtype=np.intp), kind)
    there = np.stack([units.there_by_sample(selector)[0][0] > 0 for selector in spread])
    meant = np.stack([units.meant(selector) for selector in spread])
    homes = []
    for u, k in zip(unit.tolist(), kind.tolist(), strict=True):
        own = units.samples_of(u)
        homes.append(own[there[np.ix_(meant[:, k], own)].sum(axis=0).argmax()])
    return with_rows(table, np.array(homes, dtype=np.intp), kind)


def with_rows(table: CountTable, sample: np.ndarray, kind: np.ndarray) -> CountTable:
    """The table with rows that count nothing, in classes that were sorted whole; without places and written names."""
    count = len(sample)
    nothing, unknown = np.zeros((1, count)), np.full(count, np.nan)
    return replace(
        table,
        row_sample=np.concatenate([table.row_sample, sample]),
        row_kind=np.concatenate([table.row_kind, kind]),
        counted=np.concatenate([table.counted, nothing], axis=1),
        unsorted=np.concatenate([table.unsorted, nothing], axis=1),
        share=np.concatenate([table.share, np.ones(count)]),
        mass_g=np.concatenate([table.mass_g, unknown]),
        is_noted=np.concatenate([table.is_noted, np.zeros(count, bool)]),
        class_low=np.concatenate([table.class_low, unknown]),
        class_high=np.concatenate([table.class_high, unknown]),
        places=(),
        written=(),
    )


def varied(units: Units, kinds: np.ndarray) -> VariedInPlace:
    """
    Every candidate changed by every step.

    What is added goes to the row of the unit that holds most of the kind; what is taken is taken from that row first,
    then from the next. The unsorted share follows the count.
    """
    table = units.table
    base = table.counted[0]
    entry, unit, row, before = _rows_changed(units, kinds)
    is_first = before == 0
    if entry.size:
        is_first[1:] = (entry[1:] != entry[:-1]) | (unit[1:] != unit[:-1])
    taken = np.clip(-STEPS[None, :] - before[:, None], 0, base[row][:, None])
    items = np.where(STEPS > 0, is_first[:, None] * STEPS[None, :], -taken)
    changes = Changes(entry, unit, row, items)
    held = np.zeros(kinds.shape)
    np.add.at(held, (entry, unit), base[row])
    first_row = np.full(kinds.shape, -1, dtype=np.intp)
    first_row[entry[is_first], unit[is_first]] = row[is_first]
    has_row = first_row >= 0
    return VariedInPlace(
        made=lambda: _changed(table, changes, len(kinds)),
        kinds=kinds,
        samples=np.where(has_row, np.append(table.row_sample, -1)[first_row], -1),
        is_possible=has_row[:, None, :] & (held[:, None, :] + STEPS[None, :, None] >= 0),
        held=held,
        first_row=first_row,
        changes=changes,
    )


def _changed(table: CountTable, changes: Changes, candidates: int) -> CountTable:
    # Laid out as measures read it, one row of the sheets after the other, so that it need not be copied for them.
    laid = np.empty((table.row_sample.size, candidates, len(STEPS)))
    laid[...] = table.counted[0][:, None, None]
    laid[changes.row, changes.entry, :] += changes.items
    flat = laid.transpose(1, 2, 0).reshape(candidates * len(STEPS), -1)
    return table.with_counts(flat, flat * ((1 - table.share) / table.share))


def part_of(
    table: CountTable, level: Level, units: np.ndarray, kinds: np.ndarray | None = None
) -> tuple[CountTable, np.ndarray, np.ndarray]:
    """
    Some units of one level as a table of their own, numbered in the order in which they are named.

    kinds:  True for the kinds whose rows are wanted; left out: all.
    Gives:  the table, without places and written names, and which samples and rows of the other it holds.
    """
    number = np.full(len(table.unit_ids[level]) + 1, -1, dtype=np.intp)
    number[units] = np.arange(units.size)
    member = number[table.unit_of_sample[level]]
    samples = np.flatnonzero(member >= 0)
    position = np.full(len(table.sample_ids), -1, dtype=np.intp)
    position[samples] = np.arange(samples.size)
    is_wanted = position[table.row_sample] >= 0 if table.row_sample.size else np.zeros(0, bool)
    rows = np.flatnonzero(is_wanted if kinds is None else is_wanted & kinds[table.row_kind])
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
        class_low=table.class_low[rows],
        class_high=table.class_high[rows],
        places=(),
        written=(),
        volume_l=table.volume_l[samples],
        sorted_share=table.sorted_share[samples],
        added=table.added[samples],
        recovered=table.recovered[samples],
        intrusions=table.intrusions[samples],
        unit_of_sample={level: member[samples]},
        unit_ids={level: tuple(table.unit_ids[level][u] for u in units.tolist())},
        phase_end={level: table.phase_end[level][units]},
        groups={by: numbers[samples] for by, numbers in table.groups.items()},
        context_kind=tuple(table.context_kind[s] for s in samples) if table.context_kind else (),
        recorded=tuple(table.recorded[s] for s in samples) if table.recorded else (),
    )
    return part, samples, rows


def unit_of_rows(units: Units) -> np.ndarray:
    return units.unit_of(np.arange(units.table.row_sample.size))


def _rows_changed(units: Units, kinds: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """For every row that a candidate may change: candidate, unit, row, and the items in its rows before it."""
    table = units.table
    rows = np.flatnonzero(unit_of_rows(units) >= 0)
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
