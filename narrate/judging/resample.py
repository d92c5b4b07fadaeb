"""Other counts that the same deposits might have given, and other samples: one more axis of the count table."""

from __future__ import annotations

import numpy as np

from narrate.measures.count_table import CountTable
from narrate.measures.units import Units


def resampled(table: CountTable, replicates: int, seed: int) -> CountTable:
    """
    The table with `replicates` draws of every row in place of the counts.

        counted* ~ Poisson(counted);   unsorted* ~ Poisson(counted*·(1 − f)/f)

    counted is what was counted in the share f of its size class. Rows that note presence or a mass stay as they are.
    The same seed gives the same draws.
    Misleads: items that arrived together (a spilled pot, a broken cob) vary more than Poisson counts do, so that
    true stability is lower than this.
    """
    generator = np.random.default_rng(seed)
    counted = generator.poisson(table.counted[0], size=(replicates, table.counted.shape[1])).astype(float)
    expected = counted * (1 - table.share) / table.share if table.share.size else counted
    unsorted = expected.copy()
    part_sorted = np.flatnonzero(table.share < 1)
    if part_sorted.size:
        unsorted[:, part_sorted] = generator.poisson(expected[:, part_sorted])
    return table.with_counts(counted, unsorted)


def drawn_samples(units: Units, replicates: int, seed: int) -> np.ndarray | None:
    """
    How often each sample is drawn when the samples of every unit are drawn anew with replacement.

    Gives (replicates, samples); a unit of one sample keeps it. None for samples themselves, which have no samples.
    The unit of doubt of ubiquity is the sample: which samples were taken, not how many seeds each holds.
    Source: Efron 1979, Annals of Statistics 7:1–26 (from memory).
    """
    if units.level == "sample":
        return None
    generator = np.random.default_rng(seed)
    weight = np.ones((replicates, len(units.table.sample_ids)))
    for unit in range(len(units.ids)):
        own = units.samples_of(unit)
        if own.size > 1:
            weight[:, own] = generator.multinomial(own.size, np.full(own.size, 1 / own.size), size=replicates)
    return weight
