"""Other counts that the same deposit might have given: one more axis of the count table."""

from __future__ import annotations

import numpy as np

from narrate.measures.count_table import CountTable


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
