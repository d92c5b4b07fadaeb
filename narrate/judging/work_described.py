"""Work that is left to do, in words, and roughly what it costs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

import numpy as np

from narrate.judging.next_dates import DATE_COST
from narrate.judging.outlook import PLANTS, WOOD, WOOD_ENOUGH
from narrate.measures.selection import named
from narrate.measures.units import Units
from narrate.model.project import Project
from narrate.model.rules import Selector

COST: Mapping[str, int] = MappingProxyType(
    {
        "record.deposit": 1,
        "record.security": 1,
        "record.heavy": 1,
        "record.volume": 1,
        "sort.heavy": 2,
        "name.cf": 2,
        "wood.identify": 3,
        "float.more": 4,
        "date.item": DATE_COST,
        "date.own": DATE_COST,
        "review.rules": 3,
        "test.recovery": 2,
    }
)
"""Rough order of cost, see `next_steps.COSTS` of the model; a class to sort costs by what is left of it."""


class WorkLeft:
    """What is left to do on each sample, by id."""

    def __init__(self, project: Project) -> None:
        self.context = {str(sample.id): str(sample.context) for sample in project.samples}
        self.classes_left = {
            str(sample.id): tuple(size.name for size in sample.size_classes if size.proportion_sorted < 1)
            for sample in project.samples
        }
        self.heavy_left = {
            str(s.id) for s in project.samples if s.heavy_fraction is not None and s.heavy_fraction.sorted is False
        }


def described(step: str, units: Units, unit: int, left: WorkLeft) -> tuple[str, int]:
    samples = [str(units.table.sample_ids[s]) for s in units.samples_of(unit)]
    name = units.ids[unit]
    if units.level == "sample" and step.startswith("record."):
        # How a deposit formed is written down for the context.
        name = left.context[name]
    if step == "sort.class":
        return _class_described(units, unit, samples, left)
    if step == "wood.identify":
        named = int(units.counted(WOOD)[0, unit])
        more = WOOD_ENOUGH - named
        return f"identify {more}{' more' if named else ''} wood fragment{'s' * (more != 1)} of {name}", COST[step]
    if step == "name.cf":
        return f"have another look at {_uncertain(units, unit)} of {name}", COST[step]
    if step == "sort.heavy":
        unsorted = [id for id in samples if id in left.heavy_left]
        return f"sort the heavy fraction of {listed(unsorted)}", COST[step]
    return _SAID[step].format(name=name, samples=listed(samples)), COST[step]


_SAID: Mapping[str, str] = MappingProxyType(
    {
        "record.deposit": "write down how the deposit of {name} formed, if the field notes tell",
        "record.security": "write down whether {name} was sealed, if the field notes tell",
        "record.heavy": "write down whether the heavy fraction of {samples} was sorted",
        "record.volume": "write down the volume of {samples}, if the field notes tell",
        "float.more": "float a second sample from {name}, if sediment was kept",
    }
)


def _class_described(units: Units, unit: int, samples: Sequence[str], on: WorkLeft) -> tuple[str, int]:
    """The classes that were sorted in part, with what the rest lets expect."""
    left: dict[str, list[str]] = {}
    for sample in samples:
        for name in on.classes_left[sample]:
            left.setdefault(name, []).append(sample)
    what = " and ".join(f"the {name} class of {listed(ids)}" for name, ids in left.items())
    items, taxa = expected(units, unit)
    counted = float(units.counted(PLANTS)[0, unit])
    about = f"about {taxa:.0f} more tax{'on is' if round(taxa) == 1 else 'a are'} to be expected"
    more = "more of the same plants and hardly a new one are to be expected" if taxa < 0.5 else about
    narrower = 1 - np.sqrt(counted / (counted + items)) if counted + items > 0 else 0.0
    says = f"finish {what}: {more}" + (f", and intervals {narrower:.0%} narrower" if narrower >= 0.05 else "")
    return says, 2 if items <= 50 else 3 if items <= 500 else 4


def expected(units: Units, unit: int) -> tuple[float, float]:
    """
    Items and new taxa that the unsorted rest of a unit lets expect, wood left out.

        m = Σ kᵢ(1 − fᵢ)/fᵢ;   S(n + m) − S(n) = f₀[1 − (1 − f₁/(n·f₀ + f₁))ᵐ]

    n items counted, f₁ and f₂ taxa found once and twice, f₀ = f₁(f₁ − 1)/2(f₂ + 1) taxa at least not yet seen.
    Source: Chao 1984, Scandinavian Journal of Statistics 11:265–270; Colwell et al. 2012, Journal of Plant Ecology
    5:3–21, eq. 9 (both from memory).
    Misleads: that the rest of a class holds the same mix as what was sorted is a supposition.
    """
    rows = units.rows_of(unit, PLANTS)
    table = units.table
    items = float((table.counted[0, rows] * (1 - table.share[rows]) / table.share[rows]).sum()) if rows.size else 0.0
    by_taxon: dict[object, float] = {}
    of_plants = units.rows_of(unit, named(PLANTS))
    if (hidden := units.covered(of_plants)) is not None:
        of_plants = of_plants[~hidden[0]]
    for row in of_plants.tolist():
        kind = table.kinds[table.row_kind[row]]
        name = kind.taxon or kind.either or kind.written
        by_taxon[name] = by_taxon.get(name, 0.0) + float(table.counted[0, row])
    counts = [count for count in by_taxon.values() if count > 0]
    n, once, twice = sum(counts), counts.count(1.0), counts.count(2.0)
    unseen = once * (once - 1) / (2 * (twice + 1))
    if not n or not unseen or not items:
        return items, 0.0
    return items, unseen * (1 - (1 - once / (n * unseen + once)) ** items)


def _uncertain(units: Units, unit: int) -> str:
    table = units.table
    every = units.rows_of(unit, Selector(any_condition=True)).tolist()
    rows = [r for r in every if table.is_noted[r] and _is_cf(units, r)]
    items = int(table.counted[0, rows].sum()) if rows else 0
    names = listed(sorted({table.written[r] for r in rows}))
    return f"the {items} items named '{names}'" if items > 1 else f"what is named '{names}'"


def _is_cf(units: Units, row: int) -> bool:
    kind = units.table.kinds[units.table.row_kind[row]]
    return not kind.is_certain and not kind.either


def listed(names: Sequence[str]) -> str:
    """
    Names in a row, the fourth and later ones counted.

    >>> listed(["S1"]), listed(["S1", "S2", "S3"]), listed(["S1", "S2", "S3", "S4", "S5"])
    ('S1', 'S1, S2 and S3', 'S1, S2, S3 and 2 others')
    """
    if len(names) == 1:
        return names[0]
    shown = list(names[:3])
    more = len(names) - 3
    last = shown.pop() if more <= 0 else f"{more} other{'s' * (more > 1)}"
    return f"{', '.join(shown)} and {last}"


def many(number: int, noun: str) -> str:
    return f"{number} {noun}{'s' * (number != 1)}"
