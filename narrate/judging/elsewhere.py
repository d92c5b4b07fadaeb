"""Counts changed where that makes or unmakes a sample with the thing: one more in a third sample, none left in one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from narrate.judging.variants import MOST, STEPS, Varied, with_rows
from narrate.measures.count_table import CountTable
from narrate.measures.units import Units
from narrate.model.rules import Selector

OF_EACH_SAMPLE = frozenset({"samples_with", "ubiquity", "richest_share", "richest_context_share"})
"""Measures that ask how a thing is spread over samples, so that it matters in which of them it is more or fewer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadOut:
    """Every candidate changed by every step, in the samples where the change tells most."""

    as_counted: CountTable
    """The table as it was counted, with the empty rows that additions need."""
    varied: Varied
    samples_with: np.ndarray
    """(candidates, units): samples of the unit that hold all of what the selectors mean by the candidate."""
    table: CountTable
    """The table with every change."""
    _row: np.ndarray
    """Rows that may be changed, those of one candidate and unit side by side."""
    _key: np.ndarray
    """candidate · units + unit of each of them; rises."""

    def changes(self, candidate: int, step: int, unit: int) -> dict[str, tuple[int, bool]]:
        """By sample: items more or fewer, and whether the sample held none of the kind before or holds none now."""
        key = candidate * self.samples_with.shape[1] + unit
        rows = self._row[slice(*np.searchsorted(self._key, (key, key + 1)))]
        before = self.as_counted.counted[0, rows]
        after = self.table.counted[candidate * len(STEPS) + step, rows]
        samples = self.as_counted.row_sample[rows]
        found: dict[str, tuple[int, bool]] = {}
        for sample in np.unique(samples[np.flatnonzero(after - before)]).tolist():
            own = np.flatnonzero(samples == sample)
            was, now = before[own].sum(), after[own].sum()
            found[self.as_counted.sample_ids[sample]] = (int(now - was), bool(was == 0 or now == 0))
        return found


def spread_out(units: Units, kinds: np.ndarray, selectors: Sequence[Selector]) -> SpreadOut:
    """
    Every candidate changed by every step, sample by sample.

    What is added goes one by one into samples of the unit that lack the thing, those first that lack most of what the
    selectors mean; when all hold it, the rest goes to the row that holds most. What is taken is taken from the samples
    that hold least of it, those first in which nothing else of what a selector means is left.

    selectors:  what the measures of each sample ask for; a kind that none of them means is not changed.
    """
    member = units.table.unit_of_sample[units.level]
    meant = np.stack([units.meant(selector) for selector in selectors])
    kinds = np.where((kinds >= 0) & np.logical_or.reduce(meant)[kinds], kinds, -1)
    kind_at = np.where(member >= 0, kinds[:, member], -1)
    there = np.stack([units.there_by_sample(selector)[0][0] > 0 for selector in selectors])
    lacks = (meant[:, kind_at] & ~there[:, None, :]).sum(axis=0) * (kind_at >= 0)
    entry, sample, rank = _most_wanting_first(lacks, member)
    table = with_rows(units.table, sample, kind_at[entry, sample])
    new = np.arange(units.table.row_sample.size, table.row_sample.size)
    held_entry, held_unit, held_row, before = _thinnest_first(units, kinds, meant)
    # Laid out as measures read it, one row of the sheets after the other.
    laid = np.broadcast_to(table.counted[0][:, None, None], (table.row_sample.size, len(kinds), len(STEPS))).copy()
    counted = laid.transpose(1, 2, 0)
    counted[entry, :, new] += STEPS[None, :] > rank[:, None]
    counted[held_entry, :, held_row] -= np.clip(
        np.where(STEPS < 0, -STEPS, 0)[None, :] - before[:, None], 0, table.counted[0, held_row][:, None]
    )
    lacking = _number((entry, member[sample]), kinds.shape)
    _add_the_rest(counted, lacking, _fullest(kinds.shape, entry, member[sample], new, held_entry, held_unit, held_row))
    held = np.zeros(kinds.shape)
    np.add.at(held, (held_entry, held_unit), table.counted[0, held_row])
    key = np.concatenate([held_entry * kinds.shape[1] + held_unit, entry * kinds.shape[1] + member[sample]])
    order = np.argsort(key, kind="stable")
    flat = counted.reshape(-1, table.row_sample.size)
    is_complete_entry, is_complete_sample = np.nonzero((kind_at >= 0) & (lacks == 0))
    changed = table.with_counts(flat, flat * ((1 - table.share) / table.share))
    return SpreadOut(
        as_counted=table,
        table=changed,
        varied=Varied(
            made=lambda: changed,
            kinds=kinds,
            samples=np.full(kinds.shape, -1, dtype=np.intp),
            is_possible=np.where(
                (STEPS > 0)[None, :, None], (lacking > 0)[:, None, :], held[:, None, :] + STEPS[None, :, None] >= 0
            ),
        ),
        samples_with=_number((is_complete_entry, member[is_complete_sample]), kinds.shape),
        _row=np.concatenate([held_row, new])[order],
        _key=key[order],
    )


def _most_wanting_first(lacks: np.ndarray, member: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Candidates and samples that lack something of it, and the rank of each sample within its unit, up to `MOST`."""
    entry, sample = np.nonzero(lacks)
    order = np.lexsort((sample, -lacks[entry, sample], member[sample], entry))
    entry, sample = entry[order], sample[order]
    rank = _rank_within(entry, member[sample])
    near = rank < MOST
    return entry[near], sample[near], rank[near]


def _thinnest_first(
    units: Units, kinds: np.ndarray, meant: np.ndarray
) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """Candidate, unit and row of all rows that hold a candidate, in the order of taking; and the items before each."""
    table = units.table
    member = table.unit_of_sample[units.level]
    row_unit = member[table.row_sample]
    entry, row = np.nonzero((row_unit >= 0) & (kinds[:, row_unit] == table.row_kind) & (kinds[:, row_unit] >= 0))
    own = np.zeros((len(table.sample_ids), len(table.kinds)))
    np.add.at(own, (table.row_sample, table.row_kind), table.counted[0])
    in_sample = own[table.row_sample[row], table.row_kind[row]]
    order = np.lexsort((row, table.row_sample[row], in_sample, ~_is_alone(table, meant)[row], row_unit[row], entry))
    entry, row = entry[order], row[order]
    items = table.counted[0, row]
    running = np.cumsum(items) - items
    first = np.flatnonzero(_rank_within(entry, row_unit[row]) == 0)
    starts = np.repeat(running[first], np.diff(np.append(first, row.size)))
    return entry, row_unit[row], row, running - starts


def _is_alone(table: CountTable, meant: np.ndarray) -> np.ndarray:
    """True for rows of a kind that is all that its sample holds of what some selector means."""
    is_mark = table.is_noted & (table.counted[0] == 0)
    names = table.row_kind + len(table.kinds) * is_mark
    is_there = table.is_noted | (table.counted[0] > 0)
    alone = np.zeros(table.row_sample.size, bool)
    for kinds in meant:
        rows = np.flatnonzero(is_there & kinds[table.row_kind])
        pairs = np.unique(np.stack([table.row_sample[rows], names[rows]]), axis=1)
        number = np.bincount(pairs[0], minlength=len(table.sample_ids))
        alone[rows] |= number[table.row_sample[rows]] == 1
    return alone


def _fullest(
    shape: tuple[int, ...],
    entry: np.ndarray,
    unit: np.ndarray,
    new: np.ndarray,
    held_entry: np.ndarray,
    held_unit: np.ndarray,
    held_row: np.ndarray,
) -> np.ndarray:
    """(candidates, units): the row for what is left when every sample has one; the first new one where none is held."""
    found = np.full(shape, -1, dtype=np.intp)
    found[entry[::-1], unit[::-1]] = new[::-1]
    found[held_entry, held_unit] = held_row
    return found


def _add_the_rest(counted: np.ndarray, lacking: np.ndarray, fullest: np.ndarray) -> None:
    entry, unit = np.nonzero(lacking)
    counted[entry, :, fullest[entry, unit]] += np.clip(STEPS[None, :] - lacking[entry, unit][:, None], 0, None)


def _number(at: tuple[np.ndarray, np.ndarray], shape: tuple[int, ...]) -> np.ndarray:
    found = np.zeros(shape, dtype=int)
    np.add.at(found, at, 1)
    return found


def _rank_within(first: np.ndarray, second: np.ndarray) -> np.ndarray:
    """
    The place of each entry in its run of equal pairs.

    >>> _rank_within(np.array([0, 0, 0, 1]), np.array([4, 4, 5, 5])).tolist()
    [0, 1, 0, 0]
    """
    place = np.arange(first.size)
    is_new = np.ones(first.size, bool)
    is_new[1:] = (first[1:] != first[:-1]) | (second[1:] != second[:-1])
    return place - np.maximum.accumulate(np.where(is_new, place, 0)) if first.size else place
