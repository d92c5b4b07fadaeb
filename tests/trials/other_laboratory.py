"""
From a fill to a count sheet in the other worlds: buckets, flotation, riffling, and a laboratory with more or less care.
"""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace

import numpy as np

from narrate.judging.facts import Recorded
from narrate.measures.count_table import CountTable, Kind
from narrate.model.ids import TaxonId
from narrate.model.packs import Packs
from narrate.trials.remains import kind_of
from narrate.trials.simulate import _records, _table
from tests.trials.other_households import PARTS, Table
from tests.trials.other_regions import Life

_FRAGMENTS = ("nutshell", "acorn shell", "rind", "tuber", "nutmeat", "rhizome", "cob", "wood")
"""Parts that come to the table in pieces."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Laboratory:
    """Whose finds are named, and by which words."""

    life: Life
    table: Table
    packs: Packs
    ends: np.ndarray
    contexts: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Count sheets, and totals of every context."""

    table: CountTable
    records: tuple[Recorded, ...]
    deposit: np.ndarray
    pieces: np.ndarray
    """(contexts, things) looked at, by what they truly were."""
    items: np.ndarray
    litres: np.ndarray
    share: np.ndarray
    modern: np.ndarray
    late: np.ndarray


def found_in(
    laboratory: Laboratory,
    laid: np.ndarray,
    fill_l: np.ndarray,
    kind: np.ndarray,
    deposit: np.ndarray,
    disturbed: np.ndarray,
    kinds: tuple[str, ...],
    generator: np.random.Generator,
) -> Found:
    """One or two buckets of every fill: floated, riffled if rich, named with the care of each dig's laboratory."""
    table = laboratory.table
    n, sites = kind.size, laboratory.ends.size
    dig = np.repeat(np.arange(sites), laboratory.contexts)
    care = generator.beta(6, 2, sites)
    # Share of small charred seeds that flotation gives back: published tests with counted poppy seeds range from some
    # 10 to above 90 % (Wagner 1982; from memory).
    recovery = generator.beta(6, 2, sites).clip(0.08, 0.97)
    digs = SimpleNamespace(
        heavy_sorted=generator.random(sites) < 0.75,
        coarse=generator.random(sites) < 0.15,
        recovery=recovery,
        end=laboratory.ends,
    )
    context = np.repeat(np.arange(n), 1 + (generator.random(n) < 0.4))
    litres = (
        np.minimum(
            generator.choice([5.0, 10.0, 15.0, 30.0], context.size, p=[0.2, 0.4, 0.2, 0.2]), 0.45 * fill_l[context]
        )
        .round(1)
        .clip(0.5)
    )
    expected = laid[context] * (litres / fill_l[context]).clip(None, 1.0)[:, None]
    # Negative binomial: variance m + m²/k with k near 1.5, as patchy fills give; judgement.
    there = generator.poisson(expected * generator.gamma(1.5, 1 / 1.5, expected.shape))
    seen = generator.binomial(there, _kept(table, digs, dig[context]))
    light = seen[:, ~table.is_wood].sum(axis=1)
    enough = np.where(care[dig[context]] > 0.75, 600, 250)
    share = np.select([light < enough, light < 2 * enough, light < 4 * enough], [1.0, 0.5, 0.25], 0.125)
    looked = generator.binomial(seen, np.where(table.is_wood, 1.0, share[:, None]))
    wood = looked[:, table.is_wood].sum(axis=1)
    looked[:, table.is_wood] = generator.binomial(
        looked[:, table.is_wood], np.minimum(1.0, 25 / np.maximum(wood, 1))[:, None]
    )
    counts, written = _named(laboratory, looked, care[dig[context]], generator)
    strays, stray_kinds = _strays(laboratory.life, disturbed[context], litres, generator)
    deposits = SimpleNamespace(
        dig=dig,
        kind=kind,
        is_disturbed=disturbed,
        recorded_deposit=_recorded(deposit, 4, generator),
        # A burrow is overlooked more often than one is seen that is not there.
        recorded_security=np.where(
            generator.random(n) < 0.7, generator.random(n) < np.where(disturbed, 0.7, 0.04), -1
        ).astype(int),
    )
    things = SimpleNamespace(is_wood=table.is_wood)
    sheet = _table(
        np.concatenate([counts, strays], axis=1), (*written, *stray_kinds), context, litres, share, seen,
        things, deposits, digs, generator,  # type: ignore[arg-type]
    )  # fmt: skip
    region = SimpleNamespace(kinds=kinds, preservation="charred")
    modern = len(laboratory.life.strays)
    pieces = _by_context(looked, context, n)
    late = _by_context(strays[:, modern:], context, n).sum(axis=1)
    least = np.ones(n)
    np.minimum.at(least, context, share)
    return Found(
        table=sheet,
        records=_records(region, laboratory.packs, deposits, digs, context),  # type: ignore[arg-type]
        deposit=deposit,
        pieces=pieces,
        items=pieces[:, ~table.is_wood].sum(axis=1),
        litres=_by_context(litres[:, None], context, n)[:, 0],
        share=least,
        modern=_by_context(strays[:, :modern], context, n).sum(axis=1),
        late=late,
    )


def _by_context(of_sample: np.ndarray, context: np.ndarray, n: int) -> np.ndarray:
    summed = np.zeros((n, of_sample.shape[1]))
    np.add.at(summed, context, of_sample)
    return summed


def _kept(table: Table, digs: SimpleNamespace, dig: np.ndarray) -> np.ndarray:
    """Share that flotation brings to the table: small parts slip, dense ones sink."""
    large = np.array([PARTS[part][2] for part in table.part])
    small = digs.recovery[dig] * np.where(digs.coarse[dig], 0.3, 1.0)
    kept = np.where(large[None, :], 0.5 + 0.5 * digs.recovery[dig][:, None], small[:, None])
    sinks = np.isin(table.part, ("nutshell", "wood", "fruit stone"))
    return kept * np.where(sinks[None, :] & ~digs.heavy_sorted[dig][:, None], 0.6, 1.0)


def _named(
    laboratory: Laboratory, looked: np.ndarray, care: np.ndarray, generator: np.random.Generator
) -> tuple[np.ndarray, tuple[Kind, ...]]:
    """(samples, kinds): each piece sure, with cf., only to the genus, as its look-alike, or not named at all."""
    table, known = laboratory.table, laboratory.packs.taxa
    alike = dict(laboratory.life.alike)
    kinds: dict[Kind, int] = {}
    columns: list[np.ndarray] = []
    slack = 1.0 - care
    ways = np.stack([1 - 0.62 * slack, 0.22 * slack, 0.15 * slack, 0.07 * slack, 0.18 * slack], axis=1)
    for i, (taxon, part) in enumerate(zip(table.taxon, table.part, strict=True)):
        genus = taxon.split(" ")[0].split("/")[0]
        names = [taxon, taxon, genus if TaxonId(genus) in known else taxon, alike.get(taxon, taxon)]
        drawn = generator.multinomial(looked[:, i], ways)
        state = "fragment" if part in _FRAGMENTS else "whole"
        for way, name in enumerate(names):
            kind = kind_of(name, part, "charred", way != 1, state)
            if kind not in kinds:
                kinds[kind] = len(columns)
                columns.append(np.zeros(looked.shape[0]))
            columns[kinds[kind]] += drawn[:, way]
    return np.stack(columns, axis=1), tuple(kinds)


def _strays(
    life: Life, disturbed: np.ndarray, litres: np.ndarray, generator: np.random.Generator
) -> tuple[np.ndarray, tuple[Kind, ...]]:
    """Uncharred seeds of today, and now and then a charred seed of a later century."""
    n = disturbed.size
    some = generator.random((n, len(life.strays))) < np.where(disturbed, 0.45, 0.12)[:, None]
    fresh = some * generator.poisson(0.3 * litres[:, None], (n, len(life.strays)))
    late = (generator.random((n, len(life.later))) < np.where(disturbed, 0.04, 0.002)[:, None]) * 1
    part = {"Triticum aestivum": "grain", "Triticum": "grain", "Zea mays": "kernel", "Prunus persica": "fruit stone"}
    kinds = [kind_of(t, "seed", "uncharred") for t in life.strays]
    return np.concatenate([fresh, late], axis=1).astype(float), (
        *kinds,
        *(kind_of(t, part.get(t, "seed"), "charred") for t in life.later),
    )


def _recorded(truth: np.ndarray, values: int, generator: np.random.Generator) -> np.ndarray:
    """What the notebook says: right in most cases, at times wrong, at times nothing."""
    way = generator.random(truth.size)
    return np.where(way < 0.72, truth, np.where(way < 0.78, generator.integers(0, values, truth.size), -1))
