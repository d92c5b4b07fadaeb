"""
How fast measures are, against pandas in the same run, in seconds of one core. Prints ratios; run it by hand, with one
thread for numpy:

    OMP_NUM_THREADS=1 python -m tests.benchmarks.measures

Goals: all per-sample measures of 20,000 samples × 25 rows in at most 3 × the time of one pandas groupby.agg over the
same rows and in less than 400 MB; 1,000 replicates of every claim-bearing measure for 100 contexts in less than 2 s on
one core.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pandas as pd

from narrate.judging.criteria import leaves
from narrate.judging.resample import resampled
from narrate.measures.catalogue import MEASURES, measured
from narrate.measures.count_table import CountTable, Kind
from narrate.measures.units import Units
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Selector
from narrate.problems import Place
from narrate.reading.packs import read_packs

ROWS_A_SAMPLE = 25
REGION = "eastern-north-america"
SEEDS = Selector(role=("propagule",))
WOOD = Selector(role=("wood",))
CUPULES = Selector(taxon=("Zea mays",), part=("cupule",))  # type: ignore[arg-type]
KERNELS = Selector(taxon=("Zea mays",), part=("kernel",))  # type: ignore[arg-type]
OTHER_SELECTORS = {
    "mass": (WOOD, None),
    "mass_per_l": (WOOD, None),
    "mass_ratio": (Selector(role=("nutshell",)), WOOD),
    "items_per_g": (SEEDS, WOOD),
    "ratio": (KERNELS, CUPULES),
    "log_ratio": (KERNELS, CUPULES),
    "chaff_ratio": (CUPULES, KERNELS),
    "chaff_against_ear": (CUPULES, KERNELS),
    "taxa_in_last_ten": (WOOD, None),
}


def a_table(samples: int, contexts: int, packs: Packs, seed: int = 1) -> CountTable:
    """Invented counts: 25 rows a sample of 200 kinds, one row in five from a quarter, one in four weighed."""
    generator = np.random.default_rng(seed)
    kinds = _kinds(packs)
    rows = samples * ROWS_A_SAMPLE
    row_sample = np.repeat(np.arange(samples), ROWS_A_SAMPLE)
    row_kind = np.concatenate([generator.choice(len(kinds), ROWS_A_SAMPLE, replace=False) for _ in range(samples)])
    counted = np.ceil(generator.lognormal(0.8, 1.3, rows)).reshape(1, -1)
    share = np.where(generator.random(rows) < 0.2, 0.25, 1.0)
    unit = np.sort(generator.integers(0, contexts, samples))
    unit[:contexts] = np.arange(contexts)
    unit.sort()
    ids = tuple(f"S{i}" for i in range(samples))
    here = Place(path="invented")
    levels = {
        "sample": np.arange(samples),
        "context": unit,
        "feature": unit,
        "phase": (unit >= contexts // 2).astype(int),
        "site": np.zeros(samples, int),
    }
    names = {"sample": ids, "context": tuple(f"C{i}" for i in range(contexts)), "phase": ("early", "late")}
    names |= {"feature": names["context"], "site": ("site",)}
    return CountTable(
        sample_ids=ids,
        kinds=kinds,
        row_sample=row_sample,
        row_kind=row_kind,
        counted=counted,
        unsorted=counted * (1 - share) / share,
        share=share,
        mass_g=np.where(generator.random(rows) < 0.25, generator.lognormal(-3, 1, rows), np.nan),
        is_noted=np.ones(rows, bool),
        class_low=np.full(rows, np.nan),
        class_high=np.full(rows, np.nan),
        places=(here,) * rows,
        written=("",) * rows,
        volume_l=generator.uniform(5, 15, samples),
        sorted_share=np.full(samples, 0.25),
        added=np.full(samples, 50.0),
        recovered=generator.integers(30, 50, samples).astype(float),
        intrusions=np.zeros(samples),
        unit_of_sample=levels,
        unit_ids=names,
        phase_end={level: np.full(len(names[level]), 1200.0) for level in names},
    )


def per_sample(table: CountTable, packs: Packs) -> Callable[[], None]:
    """Everything that a sample is given: every measure of the catalogue that samples can have."""

    def run() -> None:
        units = Units(table, "sample", packs, "charred")
        for id, measure in MEASURES.items():
            if "sample" in measure.levels:
                of, to = OTHER_SELECTORS.get(id.removesuffix("_width_if_sorted"), (SEEDS, Selector()))
                measured(id, units, of=of, to=to)

    return run


def one_groupby(frame: pd.DataFrame) -> Callable[[], None]:
    def run() -> None:
        frame.groupby("sample", sort=False).agg(
            items=("count", "sum"), mass_g=("mass_g", "sum"), taxa=("taxon", "nunique"), volume_l=("volume_l", "first")
        )

    return run


def claim_bearing(table: CountTable, packs: Packs, replicates: int) -> tuple[Callable[[], None], int]:
    """Every measure that a rule in force holds against a bound, once for each pair of selectors, as judging asks."""
    asked = dict.fromkeys(
        (leaf.measure, leaf.of, leaf.to)
        for rule in packs.rules.values()
        if rule.status != "retired" and "context" in rule.about
        for leaf in leaves((*rule.needs, rule.criteria))
        if isinstance(leaf, Bound)
    )
    units, phases = (Units(table, level, packs, "charred") for level in ("context", "phase"))
    drawn = resampled(table, replicates, 1)
    for _, of, to in asked:
        units.rows(of or Selector()), units.rows(to or Selector())

    def run() -> None:
        redrawn = units.with_table(drawn)
        for id, of, to in asked:
            measured(id, redrawn, of=of, to=to, phases=phases)

    return run, len(asked)


def seconds(*runs: Callable[[], None], times: int = 5) -> list[float]:
    """Median seconds of one core for each, taken in turns, so that a busy machine slows all of them alike."""
    taken: list[list[float]] = [[] for _ in runs]
    for _ in range(times):
        for run, own in zip(runs, taken, strict=True):
            start = time.process_time()
            run()
            own.append(time.process_time() - start)
    return [statistics.median(own) for own in taken]


def most_memory_mb() -> float:
    """
    The most memory that this process itself has held: VmHWM. What getrusage gives begins with the most that the process
    which started this one had held.
    """
    told = dict(line.split(":", 1) for line in Path("/proc/self/status").read_text(encoding="ascii").splitlines())
    return float(told["VmHWM"].split()[0]) / 1024


def _kinds(packs: Packs) -> tuple[Kind, ...]:
    plants = [id for id, taxon in packs.taxa.items() if taxon.rank in ("species", "genus")][:150]
    made = [("Zea mays", "kernel"), ("Zea mays", "cupule"), ("Carya", "nutshell"), ("Quercus", "acorn shell")]
    made += [(id, "seed") for id in plants] + [(id, "wood") for id in plants[:46]]
    return tuple(
        Kind(
            taxon=taxon,
            either=(),
            written="",
            is_certain=True,
            part=part,
            condition="charred",
            completeness="whole",
            fraction="light",
        )
        for taxon, part in made
    )


def main() -> None:
    packs, _ = read_packs((REGION,))
    table = a_table(20_000, 5_000, packs)
    frame = pd.DataFrame(
        {
            "sample": pd.array([table.sample_ids[i] for i in table.row_sample], dtype=object),
            "taxon": pd.array([table.kinds[k].taxon for k in table.row_kind], dtype=object),
            "count": table.counted[0],
            "mass_g": table.mass_g,
            "volume_l": table.volume_l[table.row_sample],
        }
    )
    as_categories = frame.assign(sample=frame["sample"].astype("category"), taxon=frame["taxon"].astype("category"))
    run = per_sample(table, packs)
    run()
    ours, text, categories = seconds(run, one_groupby(frame), one_groupby(as_categories))
    number = sum("sample" in measure.levels for measure in MEASURES.values())
    memory = most_memory_mb()
    print(f"{number} measures of 20,000 samples × 25 rows: {ours * 1000:.0f} ms")
    print(f"  one groupby.agg, names as text: {text * 1000:.0f} ms; ours / it = {ours / text:.2f}")
    print(f"  one groupby.agg, names as categories: {categories * 1000:.0f} ms; ours / it = {ours / categories:.2f}")
    print(f"  most memory of the whole run, pandas and both frames included: {memory:.0f} MB")
    small = a_table(300, 100, packs)
    bearing, asked = claim_bearing(small, packs, 1000)
    print(f"1,000 replicates of {asked} claim-bearing measures for 100 contexts: {seconds(bearing)[0]:.2f} s")


if __name__ == "__main__":
    main()
