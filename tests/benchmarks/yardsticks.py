"""
Work of general-purpose libraries that ours is held against, so that a slow machine is not taken for slow work.

Seconds of the processor, the median of a few turns. Goals in seconds stand beside the ratios in DEVELOPERS.md.
"""

from __future__ import annotations

import gc
import statistics
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import openpyxl
import pandas as pd

from narrate.measures.count_table import CountTable

TURNS = 5


def opened_by_openpyxl(path: Path) -> float:
    """Seconds in which openpyxl reads all cells of a workbook."""

    def read() -> int:
        rows = openpyxl.load_workbook(path).active.iter_rows(values_only=True)
        return sum(value is not None for row in rows for value in row)

    return _median(read)


def grouped_by_pandas(table: CountTable) -> float:
    """Seconds in which pandas sums counts, counts taxa and takes a first value by sample, with names as text."""
    frame = pd.DataFrame({
        "sample": [table.sample_ids[n] for n in table.row_sample],
        "taxon": [str(table.kinds[n].taxon) for n in table.row_kind],
        "count": table.counted[0],
        "share": table.share,
    })  # fmt: skip

    def grouped() -> pd.DataFrame:
        return frame.groupby("sample", sort=False).agg(
            items=("count", "sum"), taxa=("taxon", "nunique"), share=("share", "first")
        )

    return _median(grouped)


@contextmanager
def timed() -> Iterator[Callable[[], float]]:
    """Gives a function that says how many seconds of the processor the work inside took."""
    gc.collect()
    gc.freeze()  # what other tests of this process left behind is no part of the work
    began = time.process_time()
    taken: list[float] = []
    try:
        yield lambda: taken[0]
    finally:
        taken.append(time.process_time() - began)
        gc.unfreeze()


def _median(work: Callable[[], object]) -> float:
    seconds = []
    for _ in range(TURNS):
        with timed() as taken:
            work()
        seconds.append(taken())
    return statistics.median(seconds)
