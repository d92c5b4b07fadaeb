"""
A second model of digs, written by a hand that had not read the rules: what it says is true follows from what happened.

Fires of households (`other_households`) come to lie in hearths, dumps, middens and fills; layers are reworked; part is
dug, floated and named (`other_laboratory`). Truths are worked out from the fires that reached each fill, never from
counts. Numbers without a source are judgement.
"""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace

import numpy as np

from narrate.judging.facts import Recorded
from narrate.measures.count_table import CountTable
from narrate.model.packs import Packs
from tests.trials.other_households import MONTHS, SOILS, Lived, Table, lived, read
from tests.trials.other_laboratory import Found, Laboratory, found_in
from tests.trials.other_regions import Life

CONTEXTS = 24
"""Contexts dug of each site."""
KINDS = {
    # kind of context: (how often, how it came to be, litres of its fill)
    "hearth": (0.14, "primary", 25), "firepit": (0.06, "primary", 40), "roasting pit": (0.03, "primary", 120),
    "smudge pit": (0.05, "smudge", 12), "burned area": (0.03, "heap", 40), "ash dump": (0.08, "dump", 60),
    "refuse pit": (0.13, "dump", 300), "storage pit": (0.12, "dump", 500), "pit": (0.10, "dump", 200),
    "midden": (0.09, "midden", 1500), "floor": (0.05, "floor", 80), "burned structure": (0.08, "house", 200),
    "posthole": (0.04, "stray", 15), "ditch": (0.02, "stray", 2000), "layer": (0.02, "stray", 800),
}  # fmt: skip
DEPOSIT_OF = {"primary": 0, "smudge": 0, "heap": 0, "dump": 1, "midden": 1, "floor": 1, "house": 3, "stray": 2}
"""Index among primary, secondary, tertiary, de facto."""
SEASONS = {
    # Months as the words are used of the temperate year; September belongs to both of its neighbours, as the equinox
    # divides it.
    "season.spring": (3, 4, 5), "season.early-summer": (6, 7), "season.late-summer": (8, 9),
    "season.autumn": (9, 10, 11), "season.winter": (12, 1, 2),
}  # fmt: skip
_SHRUBS = ("Cercocarpus", "Corylus avellana", "Salix", "Rhus", "Artemisia tridentata", "Atriplex", "Purshia")
"""Wood of shrubs, which is brush on any fire."""
_APART = ((3, 4, 5), (6, 7), (8,), (9,), (10, 11), (12, 1, 2))
"""The same with September on its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherDug:
    """What the other worlds hand over: what `told` asks of a run of digs."""

    table: CountTable
    records: tuple[Recorded, ...]
    truth: dict[str, np.ndarray]
    left: dict[str, np.ndarray]
    deposits: SimpleNamespace
    litres: np.ndarray
    items: np.ndarray
    share: np.ndarray


@dataclass(frozen=True, slots=True, kw_only=True)
class Fills:
    """The contexts of one site."""

    kind: np.ndarray
    how: np.ndarray
    litres: np.ndarray
    weight: np.ndarray
    """(contexts, fires): share of what each fire left that lies in each context."""
    event: np.ndarray
    """Which event each fire belongs to: its own, or the burning of a whole house."""
    is_here: np.ndarray
    """(contexts, fires): whether it burned where it lies."""
    is_disturbed: np.ndarray


def other_worlds(life: Life, packs: Packs, sites: int, seed: int) -> OtherDug:
    """`sites` sites of a region, 24 contexts each; the same seed gives the same."""
    generator = np.random.default_rng(seed)
    table = read(life)
    ends, fills, laid, truths, lefts = [], [], [], [], []
    for _ in range(sites):
        end = int(generator.choice(life.ends))
        past = lived(life, table, end, generator)
        filled = _fills(table, past, generator)
        pieces = generator.poisson(filled.weight @ past.charred).astype(float) * generator.lognormal(0.0, 0.5)
        truth, left = _truths(table, past, filled)
        for column, value in zip((ends, fills, laid, truths, lefts), (end, filled, pieces, truth, left), strict=True):
            column.append(value)  # type: ignore[attr-defined]
    how = np.concatenate([f.how for f in fills])
    disturbed = np.concatenate([f.is_disturbed for f in fills])
    found = found_in(
        Laboratory(life=life, table=table, packs=packs, ends=np.array(ends), contexts=CONTEXTS),
        np.concatenate(laid),
        np.concatenate([f.litres for f in fills]),
        np.concatenate([f.kind for f in fills]),
        np.array([DEPOSIT_OF[h] for h in how]),
        disturbed,
        tuple(KINDS),
        generator,
    )
    return _handed_over(found, truths, lefts, disturbed)


def _handed_over(
    found: Found, truths: list[dict[str, np.ndarray]], lefts: list[dict[str, np.ndarray]], disturbed: np.ndarray
) -> OtherDug:
    names = truths[0]
    truth = {name: np.concatenate([t[name] for t in truths]) for name in names}
    share = {name: np.concatenate([s[name] for s in lefts]) for name in names}
    truth["integrity.disturbed"] = disturbed
    truth["integrity.modern-seeds"] = found.modern > 0
    truth["integrity.out-of-period"] = found.late > 0
    left = {name: (found.pieces * of).sum(axis=1) for name, of in share.items()}
    left |= {
        "integrity.disturbed": found.items * disturbed,
        "integrity.modern-seeds": found.modern,
        "integrity.out-of-period": found.late,
    }
    return OtherDug(
        table=found.table,
        records=found.records,
        truth=truth,
        left=left,
        deposits=SimpleNamespace(deposit=found.deposit),
        litres=found.litres,
        items=found.items,
        share=found.share,
    )


def _fills(table: Table, past: Lived, generator: np.random.Generator) -> Fills:
    n, fires = CONTEXTS, past.act.size
    rows, names = list(KINDS.values()), list(KINDS)
    kind = generator.choice(len(rows), n, p=np.array([r[0] for r in rows]) / sum(r[0] for r in rows))
    how = np.array([rows[k][1] for k in kind])
    households = len(past.fields)
    where = table.where[past.act]
    is_house = np.isin(where, ("store", "timber", "rodent"))
    weight, here = np.zeros((n, fires)), np.zeros((n, fires), bool)
    event = np.arange(fires)
    event[is_house] = (fires + past.household)[is_house]
    for c in range(n):
        h, month = int(generator.integers(households)), int(generator.integers(MONTHS))
        burned = np.unique(past.household[where == "timber"])
        if how[c] == "house" and burned.size:
            h = int(generator.choice(burned))
        how[c] = _possible(how[c], past, h, where)
        kind[c] = {("floor", "burned structure"): names.index("floor"), ("dump", "smudge pit"): names.index("pit")}.get(
            (str(how[c]), names[kind[c]]), kind[c]
        )
        mine = past.household == h
        weight[c] = _LAY[how[c]](past, where, mine, month, generator)
        here[c] = (weight[c] > 0) if how[c] in ("primary", "smudge", "heap") else is_house & (how[c] == "house")
    disturbed = generator.random(n) < 0.18
    # Roots, burrows and later digging bring up to a fifth of a fill from anywhere on the site.
    foreign = generator.uniform(0.02, 0.2, n) * disturbed
    any_fire = (generator.random((n, fires)) < 0.05) * 1.0
    total = np.maximum((weight @ past.charred).sum(axis=1), 1.0)
    of_any = np.maximum((any_fire @ past.charred).sum(axis=1), 1.0)
    weight = weight + any_fire * (foreign * total / of_any)[:, None]
    litres = np.array([rows[k][2] for k in kind]) * generator.lognormal(0.0, 0.5, n)
    return Fills(kind=kind, how=how, litres=litres, weight=weight, event=event, is_here=here, is_disturbed=disturbed)


def _possible(how: str, past: Lived, household: int, where: np.ndarray) -> str:
    """A house that never burned has a floor with trodden litter; no smudge fire, an old pit with dumped ash."""
    mine = where[past.household == household]
    if how == "house" and "timber" not in mine:
        return "floor"
    return "dump" if how == "smudge" and "smudge" not in mine else how


def _last(past: Lived, which: np.ndarray, month: int, number: int) -> np.ndarray:
    """The last `number` fires of some up to a month, or its first ones if there were none before."""
    at = np.flatnonzero(which)
    before = at[past.month[at] <= month]
    return before[-number:] if before.size else at[:number]


def _hearth(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    """A hearth keeps its last fires; each raking-out takes most of what the earlier ones left."""
    return _kept(past, _last(past, mine & (where == "hearth"), month, 2 + int(generator.poisson(8))), generator)


def _smudge(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    return _kept(past, _last(past, mine & (where == "smudge"), month, 1 + int(generator.poisson(0.5))), generator)


def _heap(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    return _kept(past, _last(past, mine & (where == "heap"), month, 1 + int(generator.poisson(3))), generator)


def _kept(past: Lived, at: np.ndarray, generator: np.random.Generator) -> np.ndarray:
    weight = np.zeros(past.act.size)
    raked = generator.uniform(0.6, 0.95)
    weight[at] = generator.uniform(0.2, 0.8) * raked ** np.arange(at.size)[::-1]
    return weight


def _dumped(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    """A pit is filled over one to ten months with what was raked from hearths and burned on heaps, ruins among it."""
    months = int(generator.choice([1, 1, 2, 4, 10]))
    is_daily = ~np.isin(where, ("store", "timber", "rodent"))
    within = (past.month >= month) & (past.month < month + months) & (generator.random(past.act.size) < 0.6)
    whose = mine | ((generator.random() < 0.3) & (past.household == 0))
    weight = whose * within * is_daily * generator.uniform(0.05, 0.4)
    if generator.random() < 0.15:
        weight = weight + (mine & ~is_daily) * generator.uniform(0.0, 0.05)
    return weight


def _midden(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    """A midden layer gathers months of all households; older layers are dug up into it."""
    months = int(generator.integers(4, 13))
    within = (past.month >= month - months) & (past.month <= month)
    is_daily = ~np.isin(where, ("store", "timber", "rodent"))
    fresh = within * (generator.random(past.act.size) < 0.5) * generator.uniform(0.05, 0.3)
    old = (past.month < month - months) * (generator.random(past.act.size) < 0.3) * generator.uniform(0.0, 0.1)
    return (fresh + old) * np.where(is_daily, 1.0, 0.05)


def _floor(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    """What was trodden in around the hearth."""
    within = (past.month >= month - 3) & (past.month <= month) & (generator.random(past.act.size) < 0.5)
    return mine * within * (where == "hearth") * generator.uniform(0.01, 0.08)


def _house(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    burned = mine & np.isin(where, ("store", "timber", "rodent"))
    fallen = burned * generator.beta(1, 1.5, past.act.size)
    return fallen + _floor(past, where, mine, int(past.month[burned].max()), generator)


def _stray(past: Lived, where: np.ndarray, mine: np.ndarray, month: int, generator: np.random.Generator) -> np.ndarray:
    """Soil that had lain elsewhere: a little of very many fires."""
    some = (generator.random(past.act.size) < generator.uniform(0.05, 0.5)) * generator.uniform(0.005, 0.05)
    return some * np.where(np.isin(where, ("store", "timber", "rodent")), 0.1, 1.0)


_LAY = {
    "primary": _hearth, "smudge": _smudge, "heap": _heap, "dump": _dumped, "midden": _midden, "floor": _floor,
    "house": _house, "stray": _stray,
}  # fmt: skip


def _truths(table: Table, past: Lived, fills: Fills) -> tuple[dict[str, np.ndarray], dict[str, np.ndarray]]:
    """
    Statement -> whether it is true of each context, and the share of each thing's pieces there that makes it true.

    A statement about what people did is true of a context if its pieces are one in a hundred of those in the fill, and
    one piece at least; wood is measured against wood, all else against the rest. A statement about the fill as a whole
    is true if it holds of more than half of the pieces.
    """
    all_laid = fills.weight @ past.charred
    names = sorted(set().union(*table.truths))
    laid = {}
    shrubs = np.isin(table.taxon, _SHRUBS) & table.is_wood
    for name in names:
        of = np.array([name in truths for truths in table.truths])[past.act]
        laid[name] = fills.weight[:, of] @ past.charred[of]
        if name in ("fuel.wood", "deposit.building-timber"):
            laid[name] = laid[name] * table.is_wood
        elif name == "fuel.brush":
            at_hearth = np.isin(table.where, ("hearth", "smudge"))[past.act]
            laid[name] += (fills.weight[:, at_hearth & ~of] @ past.charred[at_hearth & ~of]) * shrubs
        elif name != "food.greens":  # Greens leave nothing but the fire that they were boiled on.
            laid[name] = laid[name] * ~table.is_wood
    had = past.is_in_season & np.array([bool(months) for months in table.months])[None, :, None]

    def gathered_in(months: tuple[int, ...]) -> np.ndarray:
        return fills.weight @ (past.charred * had[:, :, [m - 1 for m in months]].any(axis=2))

    of_weeds = all_laid * table.is_weed
    laid["field.weeds-with-crop"] = of_weeds
    for h, flags in enumerate(past.fields):
        mine = past.household == h
        of_field = (fills.weight[:, mine] @ past.charred[mine]) * (table.is_weed | _of_harvest(table))
        for flag in flags:
            laid[flag] = laid.get(flag, 0.0) + of_field
    for flag in (
        *SOILS.values(),
        "field.autumn-sown",
        "field.spring-sown",
        "field.cut-low",
        "field.cut-high",
        "field.uprooted",
    ):
        laid.setdefault(flag, np.zeros_like(all_laid))
    for name, months in SEASONS.items():
        laid[name] = gathered_in(months)
    rest = all_laid[:, ~table.is_wood].sum(axis=1)
    least = {"fuel.wood": all_laid[:, table.is_wood].sum(axis=1), "fuel.brush": all_laid.sum(axis=1)}
    truth = {name: of.sum(axis=1) >= np.maximum(1.0, 0.01 * least.get(name, rest)) for name, of in laid.items()}
    every = np.maximum(all_laid, 1e-9)
    left = {name: np.minimum(of / every, 1.0) for name, of in laid.items()}
    # September belongs to two seasons, so that more than one asks for two that are not neighbours in it.
    some = np.stack([gathered_in(months).sum(axis=1) >= np.maximum(1.0, 0.01 * rest) for months in _APART])
    around = np.maximum(some[2].astype(int) + some[4], some[3])
    truth["season.more-than-one"] = some[[0, 1, 5]].sum(axis=0) + around >= 2
    left["season.more-than-one"] = np.maximum.reduce([left[name] for name in SEASONS])
    truth |= _of_deposit(table, past, fills)
    whole = np.ones_like(all_laid)
    left |= {name: whole for name in truth if name not in left}
    return truth, left


def _of_harvest(table: Table) -> np.ndarray:
    """Things that came off a field."""
    staples = ("kernel", "cupule", "cob", "bean", "grain", "glume", "fork", "rachis", "node", "base", "pea", "lentil")
    return np.array(
        [not w and key.rsplit(" ", 1)[-1] in staples for key, w in zip(table.keys, table.is_weed, strict=True)]
    )


def _of_deposit(table: Table, past: Lived, fills: Fills) -> dict[str, np.ndarray]:
    pieces = fills.weight * past.charred.sum(axis=1)[None, :]
    total = pieces.sum(axis=1)
    something = total >= 1.0
    here = np.where(fills.is_here, pieces, 0.0).sum(axis=1) > 0.5 * total
    largest = np.array([np.bincount(fills.event, weights=of).max() for of in pieces])
    is_routine = ((pieces >= 1.0).sum(axis=1) >= 8) & (largest < 0.25 * total)
    timber = np.array([key.startswith("timber ") for key in table.keys])
    wood = fills.weight @ past.charred[:, table.is_wood].sum(axis=1)
    built = fills.weight @ past.charred[:, timber].sum(axis=1)
    owner = np.zeros((total.size, len(past.fields)))
    for h in range(len(past.fields)):
        owner[:, h] = pieces[:, past.household == h].sum(axis=1)
    return {
        "deposit.burned-in-place": here & something,
        "deposit.redeposited": ~here & something,
        "deposit.single-event": (largest > 0.5 * total) & something,
        "deposit.slow-build-up": is_routine & something,
        "deposit.building-timber": (built > 0.5 * wood) & (built >= 1.0),
        "deposit.cess": np.zeros(total.size, bool),
        "field.disturbed-ground": ((owner >= 1.0) & past.yards).any(axis=1),
    }
