"""Other counts that the same deposits might have given, and other samples: one more axis of the count table."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass

import numpy as np

from narrate.measures.count_table import CountTable
from narrate.measures.units import Units


def resampled(table: CountTable, replicates: int, seed: int) -> CountTable:
    """
    The table with `replicates` draws of every row in place of the counts.

        counted* ~ Poisson(counted);   unsorted* ~ Poisson(counted*·(1 − f)/f)

    counted is what was counted in the share f of its size class. Rows that note presence or a mass stay as they are.
    The same seed gives the same draws. Each sample has draws of its own, which its id and its counts alone decide: an
    edit elsewhere changes nothing of what is said of it.
    Misleads: items that arrived together (a spilled pot, a broken cob) vary more than Poisson counts do, so that
    true stability is lower than this.
    """
    return draws(table, replicates, seed).of(table, slice(None), slice(None))


@dataclass(frozen=True, slots=True)
class Draws:
    """Draws of every row of a table, packed: whole numbers in the smallest type that holds them."""

    counted: np.ndarray
    """(replicates, rows)."""
    unsorted: np.ndarray
    """(replicates, rows of classes sorted in part)."""
    sorted_in_part: np.ndarray
    """Number of each row among those of `unsorted`; −1: its class was sorted whole."""

    @property
    def replicates(self) -> int:
        return len(self.counted)

    def of(self, part: CountTable, replicates: slice, rows: np.ndarray | slice) -> CountTable:
        """A part of the table, which holds the rows named, with some of their draws in place of its counts."""
        counted = np.asfortranarray(self.counted[replicates, rows], dtype=float)
        unsorted = np.zeros_like(counted)
        number = self.sorted_in_part[rows]
        there = np.flatnonzero(number >= 0)
        if there.size:
            unsorted[:, there] = self.unsorted[replicates][:, number[there]]
        return part.with_counts(counted, unsorted)


def draws(table: CountTable, replicates: int, seed: int) -> Draws:
    """The draws of `resampled`, packed."""
    part = np.flatnonzero(table.share < 1)
    number = np.full(table.share.size, -1, np.intp)
    number[part] = np.arange(part.size)
    counted = np.zeros((replicates, table.share.size), np.uint16)
    unsorted = np.zeros((replicates, part.size), np.uint16)
    ends = np.searchsorted(table.row_sample, np.arange(len(table.sample_ids) + 1))
    for id, start, end in zip(table.sample_ids, ends[:-1], ends[1:], strict=True):
        own = np.arange(start, end)
        generator = _generator(seed, id)
        drawn = generator.poisson(table.counted[0, own], size=(replicates, own.size))
        counted = _with(counted, own, drawn)
        there = np.flatnonzero(number[own] >= 0)
        share = table.share[own[there]]
        unsorted = _with(unsorted, number[own[there]], generator.poisson(drawn[:, there] * (1 - share) / share))
    return Draws(counted, unsorted, number)


def _with(found: np.ndarray, columns: np.ndarray, drawn: np.ndarray) -> np.ndarray:
    """The columns put in their place, in a larger type from then on if they need one."""
    if drawn.size and int(drawn.max()) > np.iinfo(found.dtype).max:
        found = found.astype(np.int64)
    found[:, columns] = drawn
    return found


def drawn_samples(units: Units, replicates: int, seed: int) -> np.ndarray | None:
    """
    How often each sample is drawn when the samples of every unit are drawn anew with replacement.

    Gives (replicates, samples); a unit of one sample keeps it. None for samples themselves, which have no samples.
    The unit of doubt of ubiquity is the sample: which samples were taken, not how many seeds each holds.
    Source: Efron 1979, Annals of Statistics 7:1–26 (from memory).
    """
    if units.level == "sample":
        return None
    weight = np.ones((replicates, len(units.table.sample_ids)))
    for unit in range(len(units.ids)):
        own = units.samples_of(unit)
        if own.size > 1:
            generator = _generator(seed, units.ids[unit])
            weight[:, own] = generator.multinomial(own.size, np.full(own.size, 1 / own.size), size=replicates)
    return weight


def _generator(seed: int, id: str) -> np.random.Generator:
    """Draws that a seed and the id of a sample or unit decide, and nothing else."""
    own = hashlib.blake2b(id.encode("utf-8", "surrogatepass"), digest_size=8).digest()
    return np.random.default_rng((seed, int.from_bytes(own)))
