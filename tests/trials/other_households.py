"""
Households of the other worlds: one field each, stores that fill and empty by the month, and fires with a temperature.

Its tables owe nothing to those that the weights were fitted on; what it shares with them is told in DEVELOPERS.md ("The
blind test"). Numbers without a source are judgement.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tests.trials.other_regions import Life

MONTHS = 24
"""Two years of a household are lived through."""
SMALL, LARGE = 75.0, 25.0
"""What the pieces in the tables are multiplied by: daily fires, and mishaps, stores and houses. Set so that half of the
contexts yield some 15 to 40 items from 10 to 20 litres, as samples of settlements often do (a few items a litre is
usual; from memory)."""

# part: (°C at which half of the pieces are ash, width of the logistic in °C, whether it is larger than 2 mm).
# Order after Boardman & Jones 1990 (grain outlasts glume bases, these outlast rachis and straw) and, for maize, Goette
# et al. 1994 (kernels fail first); nutshell and wood after everyday experience; from memory, figures judgement.
PARTS = {
    "kernel": (345, 28, True), "cupule": (430, 40, False), "cob": (390, 40, True), "grain": (370, 35, True),
    "sprouted grain": (355, 32, True), "detached sprout": (300, 25, False), "glume base": (345, 32, False),
    "spikelet fork": (350, 32, False), "rachis internode": (325, 28, False), "culm node": (315, 28, False),
    "culm base": (330, 28, False), "culm": (330, 30, True), "seed": (355, 38, False), "achene": (345, 36, False),
    "nutlet": (370, 40, False), "fruit": (340, 35, False), "pod segment": (350, 35, True), "capsule": (310, 28, True),
    "nutshell": (480, 50, True), "acorn shell": (390, 45, True), "nutmeat": (330, 30, True),
    "fruit stone": (440, 45, True), "rind": (340, 35, True), "tuber": (325, 30, True), "rhizome": (340, 35, True),
    "leaf": (300, 28, True), "thorn": (390, 40, True), "stem": (320, 30, True), "dung": (340, 40, True),
    "wood": (460, 60, True), "twig": (400, 50, True),
}  # fmt: skip
CHARS_AT = (235.0, 14.0)
"""°C at which half of the pieces char at all, and the width (Braadbaart 2008: from some 220 °C; from memory)."""

SOILS = {
    "rich": "field.fertile", "poor": "field.poor", "acid": "field.acid", "lime": "field.lime-rich",
    "clay": "field.clay", "fallow": "field.little-tilled", "wet": "field.wet",
}  # fmt: skip

_OF_HOUSES = ("store", "timber", "rodent")
"""Where things burn only with the whole house."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A region's tables read: columns of things and of acts."""

    keys: tuple[str, ...]
    taxon: tuple[str, ...]
    part: tuple[str, ...]
    months: tuple[tuple[int, ...], ...]
    is_weed: np.ndarray
    is_wood: np.ndarray
    travels: tuple[str, ...]
    leanings: tuple[frozenset[str], ...]
    acts: tuple[str, ...]
    share: np.ndarray
    rate: np.ndarray
    """(acts, 12)."""
    celsius: np.ndarray
    where: np.ndarray
    store: tuple[str, ...]
    contents: tuple[tuple[tuple[str, float], ...], ...]
    truths: tuple[frozenset[str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lived:
    """Everything that was burned at one site: one entry a fire."""

    household: np.ndarray
    month: np.ndarray
    act: np.ndarray
    charred: np.ndarray
    """(fires, things): pieces that came out of the fire as charcoal."""
    is_in_season: np.ndarray
    """(fires, things, 12): months in which what was burned had been gathered by people."""
    fields: tuple[frozenset[str], ...]
    """Of every household: what is true of its field and harvest."""
    yards: np.ndarray
    """Of every household: whether weeds grow in its yard or its field lies by the houses."""


def read(life: Life) -> Table:
    """The tables of a region, its weeds, yard plants and wood appended to its things."""
    things = [[cell.strip() for cell in line.split("|")] for line in life.things.strip().splitlines()]
    rows = [
        (key, taxon, part, tuple(int(m) for m in months.split()), "", frozenset[str]())
        for key, taxon, part, months in things
    ]
    for line in life.weeds.strip().splitlines():
        taxon, part, travels, lean = (cell.strip() for cell in line.split("|"))
        rows.append((f"weed {taxon} {part}", taxon, part, (), travels, frozenset(lean.split())))
    part_of = {taxon: part for _, taxon, part, *_ in rows}
    rows += [(f"yard {t}", t, part_of.get(t, "seed"), (), "", frozenset()) for t in life.yard]
    for group, names, part in (
        ("wood", life.wood, "wood"),
        ("timber", life.timber, "wood"),
        ("brush", life.brush, "wood"),
    ):
        rows += [(f"{group} {t}", t, part, (), "", frozenset()) for t in names]
    acts = [[cell.strip() for cell in line.split("|")] for line in life.acts.strip().splitlines()]
    contents = [
        tuple((item.strip().rsplit(" ", 1)[0], float(item.strip().rsplit(" ", 1)[1])) for item in act[6].split(","))
        for act in acts
    ]
    return Table(
        keys=tuple(r[0] for r in rows),
        taxon=tuple(r[1] for r in rows),
        part=tuple(r[2] for r in rows),
        months=tuple(r[3] for r in rows),
        is_weed=np.array([r[0].startswith("weed ") for r in rows]),
        is_wood=np.array([r[2] == "wood" for r in rows]),
        travels=tuple(r[4] for r in rows),
        leanings=tuple(r[5] for r in rows),
        acts=tuple(a[0] for a in acts),
        share=np.array([float(a[1]) for a in acts]),
        rate=np.array([[int(d) for d in a[2]] for a in acts], float),
        celsius=np.array([float(a[3]) for a in acts]),
        where=np.array([a[4] for a in acts]),
        store=tuple(a[5] for a in acts),
        contents=tuple(contents),
        truths=tuple(frozenset(a[7].split()) for a in acts),
    )


def lived(life: Life, table: Table, end: int, generator: np.random.Generator) -> Lived:
    """Two to four households live for two years; every fire is one event."""
    n = int(generator.integers(2, 5))
    made = [_field(table, generator) for _ in range(n)]
    wheat = str(generator.choice(["emmer", "spelt"]))
    # Beans reach the north-east after some AD 1250 (Hart & Scarry 1999, as commonly cited; from memory).
    lacks = {"bean"} if life.name.startswith("eastern") and end <= 1250 else set()
    of_act = np.stack([_contents(table, weeds, flags, wheat, lacks, generator) for weeds, flags in made])
    rate, level = _calendar(life, table, n, generator)
    household, month, act = _drawn(generator.poisson(rate), generator)
    last = _fires_of_houses(table, n, rate, generator)
    household, month, act = (np.concatenate(pair) for pair in zip((household, month, act), last, strict=True))
    size = generator.gamma(0.9, 1 / 0.9, household.size) * _stored(table, level, household, month, act)
    is_large = np.array(["food.cooking-accident" in t for t in table.truths]) | np.isin(table.where, _OF_HOUSES)
    size = size * np.where(is_large, LARGE, SMALL)[act] * generator.lognormal(0.0, 0.8)
    fresh, gathered = _gathered(table, month, act, generator)
    brought = of_act[household, act] * size[:, None] * fresh
    brought = brought * generator.gamma(1.0, 1.0, brought.shape)
    celsius = table.celsius[act] + generator.normal(0, 40, act.size)
    return Lived(
        household=household,
        month=month,
        act=act,
        charred=generator.poisson(brought * _survives(table, celsius, generator)).astype(float),
        is_in_season=gathered,
        fields=tuple(flags for _, flags in made),
        yards=generator.random(n) < 0.85,
    )


def _field(table: Table, generator: np.random.Generator) -> tuple[np.ndarray, frozenset[str]]:
    """The weeds of one household's field, as relative numbers, and what is true of the field."""
    fertility, sour = (
        generator.choice(["rich", "poor", ""], p=[0.35, 0.3, 0.35]),
        generator.choice(["acid", "lime", ""], p=[0.3, 0.25, 0.45]),
    )
    ground = {str(fertility), str(sour)} - {""}
    ground |= {name for name, chance in (("clay", 0.25), ("fallow", 0.25), ("wet", 0.2)) if generator.random() < chance}
    season = "autumn" if generator.random() < 0.55 else "spring"
    cut = str(generator.choice(["field.cut-low", "field.cut-high", "field.uprooted"], p=[0.55, 0.35, 0.1]))
    abundance = np.exp(generator.normal(0, 1.2, len(table.keys))) * (generator.random(len(table.keys)) < 0.65)
    for i in np.flatnonzero(table.is_weed):
        lean = table.leanings[i]
        abundance[i] *= np.prod([4.0 if soil in ground else 0.35 for soil in lean & set(SOILS)])
        if lean & {"autumn", "spring"}:
            abundance[i] *= 3.0 if season in lean else 0.2
        if cut == "field.cut-high" and "low" in lean:
            abundance[i] *= 0.08
        if "root" in lean:
            abundance[i] *= 8.0 if cut == "field.uprooted" else 0.5
    return abundance * table.is_weed, frozenset({SOILS[g] for g in ground} | {f"field.{season}-sown", cut})


def _contents(
    table: Table, weeds: np.ndarray, field: frozenset[str], wheat: str, lacks: set[str], generator: np.random.Generator
) -> np.ndarray:
    """(acts, things): pieces that one fire of each act gets, for one household."""
    travels = np.array(table.travels)
    groups = {"@weeds": weeds} | {f"@{way}": weeds * (travels == way) for way in ("small", "big", "headed")}
    for name in ("yard", "wood", "timber", "brush"):
        of_group = np.array([key.startswith(f"{name} ") for key in table.keys])
        groups[f"@{name}"] = of_group * generator.gamma(0.8, 1.0, len(table.keys))
    found = np.zeros((len(table.acts), len(table.keys)))
    usual = weeds.sum() / max(float(table.is_weed.sum()), 1.0)
    for a, contents in enumerate(table.contents):
        for name, pieces in contents:
            if name.startswith("@"):
                group, total = groups[name], groups[name].sum()
                weedy = min(usual, 3.0) if name in ("@weeds", "@small", "@big", "@headed") else 1.0
                found[a] += pieces * weedy * group / max(total, 1e-9)
            elif name not in lacks:
                key = f"{wheat} {name[1:]}" if name.startswith("%") else name
                found[a, table.keys.index(key)] += pieces * _of_cut(key, field)
    return found


def _of_cut(key: str, field: frozenset[str]) -> float:
    if key == "straw base":
        return 6.0 if "field.uprooted" in field else 1.0 if "field.cut-low" in field else 0.05
    return 0.35 if key == "straw node" and "field.cut-high" in field else 1.0


def _calendar(
    life: Life, table: Table, n: int, generator: np.random.Generator
) -> tuple[np.ndarray, dict[str, np.ndarray]]:
    """(households, months, acts) events expected, and how full each store is in every month."""
    level: dict[str, np.ndarray] = {"": np.ones((n, MONTHS))}
    for line in life.stores.splitlines():
        name, harvest, lasts = (cell.strip() for cell in line.split("|"))
        size = generator.lognormal(0.0, 0.35, (n, MONTHS // 12 + 1))
        month = np.arange(MONTHS)
        since, year = (month + 1 - int(harvest)) % 12, (month + 13 - int(harvest)) // 12
        level[name] = np.clip(size[:, year] - since / float(lasts), 0.0, None)
    habit = (generator.random((n, len(table.acts))) < table.share) * generator.gamma(2.0, 0.5, (n, len(table.acts)))
    calendar = table.rate[:, np.arange(MONTHS) % 12].T
    full = np.stack([np.minimum(level[store] * 2, 1.0) for store in table.store], axis=2)
    return 0.6 * habit[:, None, :] * calendar[None] * full, level


def _drawn(events: np.ndarray, generator: np.random.Generator) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    household, month, act = np.nonzero(events)
    times = events[household, month, act]
    found = np.stack([np.repeat(column, times) for column in (household, month, act)])
    order = np.lexsort((generator.random(found.shape[1]), found[1]))
    return found[0][order], found[1][order], found[2][order]


def _fires_of_houses(
    table: Table, n: int, rate: np.ndarray, generator: np.random.Generator
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """A third of the houses burn in some month: timber, stores, and what a rodent had hidden."""
    rows = []
    for h in np.flatnonzero(generator.random(n) < 0.35):
        month = int(generator.integers(0, MONTHS))
        for a in np.flatnonzero(np.isin(table.where, _OF_HOUSES)):
            chance = {"timber": 1.0, "store": 0.6, "rodent": 0.3}[str(table.where[a])] * table.share[a]
            if generator.random() < chance:
                rows.append((h, month, a))
    found = np.array(rows, int).reshape(-1, 3)
    return found[:, 0], found[:, 1], found[:, 2]


def _stored(
    table: Table, level: dict[str, np.ndarray], household: np.ndarray, month: np.ndarray, act: np.ndarray
) -> np.ndarray:
    """A store that burns holds as much as the month has left of it; daily work does not depend on it."""
    full = np.stack([level[store] for store in table.store])[act, household, month]
    return np.where(table.where[act] == "store", full, 1.0)


def _gathered(
    table: Table, month: np.ndarray, act: np.ndarray, generator: np.random.Generator
) -> tuple[np.ndarray, np.ndarray]:
    """
    Whether each thing was to be had for each fire, and the months in which it had been gathered.

    What came out of a store was gathered in one month of its harvest; what was gathered for the day, in that month.
    """
    ripe = np.zeros((len(table.keys), 12), bool)
    for i, months in enumerate(table.months):
        ripe[i, [m - 1 for m in months]] = True
    bound = ripe.any(axis=1)
    is_fresh = np.array([store == "" for store in table.store]) & ~np.isin(table.where, _OF_HOUSES)
    harvest = np.zeros_like(ripe)
    for i in np.flatnonzero(bound):
        harvest[i, int(generator.choice(np.flatnonzero(ripe[i])))] = True
    now = np.eye(12, dtype=bool)[month % 12]
    fresh = is_fresh[act][:, None]
    there = np.where(fresh & bound, ripe[:, month % 12].T, True)
    gathered = np.where(fresh[:, :, None], now[:, None, :] & ripe[None], harvest[None])
    return there, gathered


def _survives(table: Table, celsius: np.ndarray, generator: np.random.Generator) -> np.ndarray:
    """(fires, things): share of the pieces that chars and is not burned to ash."""
    half = np.array([PARTS[part][0] for part in table.part], float)
    width = np.array([PARTS[part][1] for part in table.part], float)
    heat = celsius[:, None]
    charred = 1 / (1 + np.exp(-(heat - CHARS_AT[0]) / CHARS_AT[1]))
    kept = 1 / (1 + np.exp(((heat - half) / width).clip(-50, 50)))
    return charred * kept * generator.beta(2, 2, celsius.size)[:, None]
