"""
Digs made from known activities, so that it is known what is true of each of their contexts.

People do things; fire leaves some of what they held; it is swept, mixed and dug; flotation and the microscope lose
some, and names go wrong. Everything is drawn for all contexts at once. What the model is not: it knows only the
activities of its tables, each deposit on its own, and no more of taphonomy than a share that survives.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from narrate.judging.facts import Recorded
from narrate.measures.count_table import CountTable, Kind
from narrate.model.ids import Level
from narrate.model.packs import Packs
from narrate.problems import Place
from narrate.trials.activities import HEATS, Region, Trial
from narrate.trials.remains import Things, at_home, kind_of, namings_of, share_written, things_of, weeds_of
from narrate.trials.truths import truths
from narrate.trials.worlds import DEPOSITS, Deposits, Digs, affinity, drawn_deposits, drawn_digs, swept

_PLACE = Place(path="trial")
_EVENTS = np.array([1.0, 4.0, 8.0, 0.8])
"""Events that reach a deposit, against one in place: sweepings gather many. By DEPOSITS; judgement."""
_BURNED = 3.0
"""All that was brought to the fire against what the tables say, set so that half of the samples hold some ten items."""
_LEFT = np.array([0.5, 0.15, 0.04, 0.8])
"""Share of an event's charred pieces that stays in the deposit. By DEPOSITS; judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lain:
    """What came to lie in every context: (contexts, things) pieces expected, and the events that brought them."""

    pieces: np.ndarray
    events: np.ndarray
    """(contexts, activities)."""
    heat: np.ndarray
    """(contexts, activities) index of HEATS."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dug:
    """A run of digs: their count table and records, and what is true of their contexts."""

    region: Region
    table: CountTable
    records: tuple[Recorded, ...]
    truth: dict[str, np.ndarray]
    """Statement -> True for each context of which it is true."""
    left: dict[str, np.ndarray]
    """Statement -> items counted of what makes it true, in each context; 0 where nothing of it was found."""
    deposits: Deposits
    litres: np.ndarray
    """Litres floated of each context."""
    items: np.ndarray
    """Items counted in each context, wood left out."""
    share: np.ndarray
    """Share of the light fraction that was sorted, the least of each context."""


def simulate(region: Region, packs: Packs, trial: Trial, seed: int) -> Dug:
    """All digs of a trial in one region; the same seed gives the same digs."""
    generator = np.random.default_rng(seed)
    digs = drawn_digs(region, trial, generator)
    deposits = drawn_deposits(region, packs, trial, generator)
    weeds = weeds_of(packs)
    things = things_of(region, packs, weeds)
    lain = _lain(region, packs, trial, digs, deposits, things, at_home(weeds, digs), generator)
    return _dug(region, packs, trial, digs, deposits, things, lain, generator)


def _lain(
    region: Region,
    packs: Packs,
    trial: Trial,
    digs: Digs,
    deposits: Deposits,
    things: Things,
    fit: np.ndarray,
    generator: np.random.Generator,
) -> Lain:
    dig, acts = deposits.dig, region.activities
    n = dig.size
    mixed = "everything is mixed" in trial.broken
    rate = np.array([a.rate for a in acts])
    in_place = affinity(region, packs)[deposits.kind]
    from_all = swept(region, packs)[deposits.kind][:, None]
    is_place = np.isin(deposits.deposit, (0, 3))[:, None]
    ready = np.where(is_place & (not mixed), in_place, np.maximum(0.4 * in_place, from_all))
    many = _EVENTS[np.where(mixed, 2, deposits.deposit)][:, None]
    events = generator.poisson(ready * many * rate * digs.habit[dig])
    events = events * _had(things, digs, len(acts))[dig]
    heat = _drawn_heat(region, trial, n, generator)
    left = _LEFT[deposits.deposit] * np.exp(generator.normal(0, 0.6 * trial.noise, n)) * digs.richness[dig]
    of_act = things.activity
    brings = generator.binomial(events[:, of_act], things.chance)
    size = generator.gamma(np.maximum(brings, 1e-9) * things.spread / trial.noise) * trial.noise / things.spread
    survives = things.survival[np.arange(of_act.size)[None, :], heat[:, of_act]]
    if "kernels outlast cobs" in trial.broken:
        survives = np.where(np.array(things.part) == "kernel", 0.6, survives)
    suits = np.where(things.is_weed, fit[:, things.weed][dig], 1.0) * (things.earliest <= digs.end[dig][:, None])
    return Lain(
        pieces=size * (brings > 0) * _BURNED * things.mean * survives * left[:, None] * suits, events=events, heat=heat
    )


def _had(things: Things, digs: Digs, activities: int) -> np.ndarray:
    """(digs, activities): False where the region did not yet have the first thing that the activity needs."""
    first = np.array([np.flatnonzero(things.activity == a)[0] for a in range(activities)])
    return things.earliest[first] <= digs.end[:, None]


def _drawn_heat(region: Region, trial: Trial, n: int, generator: np.random.Generator) -> np.ndarray:
    if "fires are hot" in trial.broken:
        return np.full((n, len(region.activities)), HEATS.index("high"))
    bounds = np.cumsum([a.heat for a in region.activities], axis=1)[:, :2]
    return (generator.random((n, len(region.activities), 1)) > bounds).sum(axis=2)


def _dug(
    region: Region,
    packs: Packs,
    trial: Trial,
    digs: Digs,
    deposits: Deposits,
    things: Things,
    lain: Lain,
    generator: np.random.Generator,
) -> Dug:
    context, litres, share = _samples(deposits, generator)
    dig = deposits.dig[context]
    per_litre = lain.pieces[context] / deposits.fill_l[context][:, None]
    wobble = generator.gamma(3 / trial.noise, trial.noise / 3, per_litre.shape)
    there = generator.poisson(per_litre * litres[:, None] * wobble)
    small = np.where(things.is_small, digs.recovery[dig][:, None], 0.5 + 0.5 * digs.recovery[dig][:, None])
    small = small * np.where(things.is_small & digs.coarse[dig][:, None], 0.25, 1.0)
    sunk = np.isin(things.part, ("nutshell", "wood")) & ~digs.heavy_sorted[dig][:, None]
    seen = generator.binomial(there, small * np.where(sunk, 0.7, 1.0))
    looked = generator.binomial(seen, np.where(things.is_wood, 1.0, share[:, None]))
    wood = np.where(things.is_wood, looked, 0).sum(axis=1, keepdims=True)
    looked = np.where(things.is_wood, generator.binomial(looked, np.minimum(1.0, 20 / np.maximum(wood, 1))), looked)
    counts, kinds = _written(looked, things, region, packs, digs, dig, generator)
    strays, stray_kinds = _strays(region, trial, deposits, context, litres, generator)
    counts, kinds = np.concatenate([counts, strays], axis=1), (*kinds, *stray_kinds)
    table = _table(counts, kinds, context, litres, share, seen, things, deposits, digs, generator)
    found = np.zeros((deposits.dig.size, len(things.taxon)))
    np.add.at(found, context, looked)
    truth, left = truths(region, digs, deposits, things, lain.pieces, lain.events, found, generator)
    modern = [i for i, kind in enumerate(kinds) if kind.condition == "uncharred"]
    later = [i for i, kind in enumerate(kinds) if kind.taxon in region.later and kind.condition == "charred"]
    wet = [i for i, kind in enumerate(kinds) if kind.condition in ("waterlogged", "desiccated", "mineralised")]
    for statement, which in (
        ("integrity.modern-seeds", modern), ("integrity.out-of-period", later), ("integrity.uncharred-ancient", wet)
    ):  # fmt: skip
        summed = np.zeros(deposits.dig.size)
        np.add.at(summed, context, counts[:, which].sum(axis=1))
        truth[statement], left[statement] = summed > 0, summed
    items = np.zeros(deposits.dig.size)
    np.add.at(items, context, looked[:, ~things.is_wood].sum(axis=1))
    floated, least = np.zeros(deposits.dig.size), np.ones(deposits.dig.size)
    np.add.at(floated, context, litres)
    np.minimum.at(least, context, share)
    return Dug(
        region=region,
        table=table,
        records=_records(region, packs, deposits, digs, context),
        truth=truth,
        left=left,
        deposits=deposits,
        litres=floated,
        items=items,
        share=least,
    )


def _samples(deposits: Deposits, generator: np.random.Generator) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Context, litres and share sorted of every sample: one to four a context, 2 to 40 litres, within its fill."""
    n = deposits.dig.size
    number = 1 + generator.binomial(3, 0.35, n)
    context = np.repeat(np.arange(n), number)
    litres = generator.choice(np.array([2.0, 5.0, 10.0, 20.0, 40.0]), context.size, p=[0.15, 0.25, 0.35, 0.15, 0.1])
    litres = np.minimum(litres, np.round(deposits.fill_l / number, 1)[context].clip(0.5))
    share = np.where(generator.random(context.size) < 0.7, 1.0, generator.choice([0.5, 0.25, 0.125], context.size))
    return context, litres, share


def _written(
    looked: np.ndarray,
    things: Things,
    region: Region,
    packs: Packs,
    digs: Digs,
    dig: np.ndarray,
    generator: np.random.Generator,
) -> tuple[np.ndarray, tuple[Kind, ...]]:
    """(samples, kinds): what the laboratory wrote of what it saw; each piece is written in one way."""
    namings = namings_of(things, region, packs)
    shares = share_written(namings, things, digs)
    sample, thing = np.nonzero(looked)
    ways = [np.flatnonzero(namings.thing == i) for i in range(len(things.taxon))]
    counts = np.zeros((looked.shape[0], len(namings.kinds)))
    width = max(way.size for way in ways)
    of_thing = np.array([np.resize(way, width) for way in ways])
    chances = shares[dig[sample][:, None], of_thing[thing]]
    drawn = generator.multinomial(looked[sample, thing], chances / chances.sum(axis=1, keepdims=True))
    np.add.at(counts, (sample[:, None], namings.kind[of_thing[thing]]), drawn)
    return counts, namings.kinds


def _strays(
    region: Region,
    trial: Trial,
    deposits: Deposits,
    context: np.ndarray,
    litres: np.ndarray,
    generator: np.random.Generator,
) -> tuple[np.ndarray, tuple[Kind, ...]]:
    """(samples, kinds): seeds of today, charred plants of later years, and what wet or dry ground kept."""
    n, disturbed = context.size, deposits.is_disturbed[context]
    some = generator.random((n, len(region.strays))) < np.where(disturbed, 0.5, 0.15)[:, None]
    fresh = some * generator.poisson(0.4 * litres[:, None], (n, len(region.strays)))
    rot = "seeds rot in" in trial.broken
    late = generator.random((n, len(region.later))) < np.where(disturbed, 0.08, 0.02 if rot else 0.002)[:, None]
    later = late * (1 + generator.poisson(0.5, late.shape))
    kinds = [kind_of(t, "seed", "uncharred") for t in region.strays]
    kinds += [kind_of(t, "fruit stone" if t.startswith("Prunus") else "seed", "charred") for t in region.later]
    columns = [fresh, later]
    if region.preservation != "charred":
        kept = deposits.is_wet[context][:, None] * generator.poisson(2.0 * litres[:, None], (n, len(region.strays)))
        columns.append(kept)
        kinds += [kind_of(t, "seed", region.preservation) for t in region.strays]
    return np.concatenate(columns, axis=1).astype(float), tuple(kinds)


def _table(
    counts: np.ndarray,
    kinds: tuple[Kind, ...],
    context: np.ndarray,
    litres: np.ndarray,
    share: np.ndarray,
    seen: np.ndarray,
    things: Things,
    deposits: Deposits,
    digs: Digs,
    generator: np.random.Generator,
) -> CountTable:
    sample, kind = np.nonzero(counts)
    counted = counts[sample, kind]
    is_weighed = np.array([k.part in ("wood", "nutshell", "acorn shell") for k in kinds])[kind]
    is_wood = np.array([k.part in ("wood", "twig", "charcoal") for k in kinds])[kind]
    all_wood = np.where(things.is_wood, seen, 0).sum(axis=1)
    identified = np.zeros(context.size)
    np.add.at(identified, sample, np.where(is_wood, counted, 0.0))
    scale = np.where(is_wood, all_wood[sample] / np.maximum(identified[sample], 1), 1.0)
    mass = np.where(is_weighed, counted * scale * 0.02 * np.exp(generator.normal(0, 0.4, counted.size)), np.nan)
    row_share = np.where(is_wood, 1.0, share[sample])
    n, contexts, dig = context.size, deposits.dig.size, deposits.dig
    worst = np.where(deposits.is_disturbed[context], generator.integers(1, 4, n), generator.integers(0, 2, n)).astype(
        float
    )
    tested = generator.random(n) < 0.4
    back = generator.binomial(50, digs.recovery[dig[context]])
    ends = digs.end.astype(float)
    units: dict[Level, np.ndarray] = {
        "sample": np.arange(n),
        "context": context,
        "feature": np.full(n, -1),
        "phase": dig[context],
        "site": np.zeros(n, int),
    }
    return CountTable(
        sample_ids=tuple(f"S{i}" for i in range(n)),
        kinds=kinds,
        row_sample=sample,
        row_kind=kind,
        counted=counted.reshape(1, -1),
        unsorted=(counted * (1 - row_share) / row_share).reshape(1, -1),
        share=row_share,
        mass_g=mass,
        is_noted=np.ones(counted.size, bool),
        class_low=np.full(counted.size, np.nan),
        class_high=np.full(counted.size, np.nan),
        places=(_PLACE,) * counted.size,
        written=("",) * counted.size,
        volume_l=litres,
        sorted_share=share,
        added=np.where(tested, 50.0, 0.0),
        recovered=np.where(tested, back, 0).astype(float),
        intrusions=np.where(generator.random(n) < 0.7, worst, np.nan),
        unit_of_sample=units,
        unit_ids={
            "sample": tuple(f"S{i}" for i in range(n)),
            "context": tuple(f"C{i}" for i in range(contexts)),
            "feature": (),
            "phase": tuple(f"P{i}" for i in range(ends.size)),
            "site": ("site",),
        },
        phase_end={
            "sample": ends[dig[context]],
            "context": ends[dig],
            "feature": np.empty(0),
            "phase": ends,
            "site": np.array([np.nan]),
        },
    )


def _records(region: Region, packs: Packs, deposits: Deposits, digs: Digs, context: np.ndarray) -> tuple[Recorded, ...]:
    """What the notebooks say of each sample; samples of a context share their record."""
    names = tuple(region.kinds)
    traits = [tuple(sorted(packs.words.context_kinds[name].traits)) for name in names]  # type: ignore[index]
    made: dict[tuple[object, ...], Recorded] = {}
    found = []
    for c in context.tolist():
        dig = deposits.dig[c]
        key = (
            int(deposits.kind[c]), int(deposits.recorded_deposit[c]), int(deposits.recorded_security[c]),
            bool(digs.heavy_sorted[dig]), bool(digs.coarse[dig]),
        )  # fmt: skip
        if key not in made:
            kind, deposit, security, heavy, coarse = key
            made[key] = Recorded(
                values={
                    "context_kind": (names[kind],),
                    "trait": traits[kind],
                    "deposit": () if deposit < 0 else (DEPOSITS[deposit],),
                    "security": () if security < 0 else (("sealed", "disturbed")[security],),
                    "preservation": (region.preservation,),
                    "heavy_fraction": ("sorted" if heavy else "not sorted",),
                    "method": ("machine",),
                    "region": packs.regions,
                },
                place=_PLACE,
                light_mesh_mm=1.0 if coarse else 0.3,
            )
        found.append(made[key])
    return tuple(found)
