"""Unknowns of simulated digs, drawn from wide ranges: habits, fields, deposits, work in the field and laboratory."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from narrate.model.packs import Packs
from narrate.trials.activities import TRAITS_OF_ALL, Activity, Region, Trial

DEPOSITS = ("primary", "secondary", "tertiary", "de facto")
SOILS = ("rich", "poor", "acid", "lime-rich", "clay", "wet")

BREAKABLE = {
    "kernels outlast cobs": "kernels survive every heat as well as cupules do",
    "weeds grow anywhere": "weeds keep to no season, soil or height",
    "records are careless": "kind of deposit and security are recorded at random in one context of two",
    "names are careless": "one name in five is another plant",
    "everything is mixed": "every deposit holds sweepings of many activities",
    "seeds rot in": "a tenth of the charred seeds are later than the deposit",
    "fires are hot": "all fires burned at high heat",
    "one seed in ten comes back": "flotation lost nine small seeds of ten",
}
"""Assumptions of the model, each with what is put in its place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Digs:
    """One value for every dig."""

    habit: np.ndarray
    """(digs, activities): how much more often than the table says; often 0: not every hamlet did everything."""
    richness: np.ndarray
    end: np.ndarray
    """Last year of its phase."""
    autumn: np.ndarray
    soil: np.ndarray
    """(digs, soils): whether its fields were of that sort."""
    low_cut: np.ndarray
    uprooted: np.ndarray
    little_tilled: np.ndarray
    stray: np.ndarray
    """How readily a weed grows where it does not belong, 0 to 1."""
    recovery: np.ndarray
    """Share of small seeds that flotation brought back: 6 to 98 % have been reported (Wagner 1982, abstract, read)."""
    coarse: np.ndarray
    doubtful: np.ndarray
    """Share of names given as 'cf.'."""
    to_genus: np.ndarray
    """Share of items named to the genus alone."""
    wrong: np.ndarray
    """Share of items named as a look-alike."""
    heavy_sorted: np.ndarray


@dataclass(frozen=True, slots=True, kw_only=True)
class Deposits:
    """One value for every context, dig by dig."""

    dig: np.ndarray
    kind: np.ndarray
    """Index in the region's kinds."""
    deposit: np.ndarray
    """Index in DEPOSITS: what it truly is."""
    is_disturbed: np.ndarray
    fill_l: np.ndarray
    is_wet: np.ndarray
    """Whether the ground preserved what fire did not touch (wet or very dry)."""
    recorded_deposit: np.ndarray
    """Index in DEPOSITS as recorded; −1: not recorded."""
    recorded_security: np.ndarray
    """0 sealed, 1 disturbed, −1 not recorded."""


def drawn_digs(region: Region, trial: Trial, generator: np.random.Generator) -> Digs:
    """Digs with habits, fields, flotation and laboratory of their own. Ranges are judgement unless said otherwise."""
    n, acts = trial.digs, len(region.activities)
    does = generator.random((n, acts)) < generator.uniform(0.35, 0.95, (n, 1))
    does |= np.array([a.rate >= 0.9 for a in region.activities])
    habit = np.ones((n, acts)) if trial.is_usual else does * generator.gamma(1.2, 1 / 1.2, (n, acts))
    anywhere = "weeds grow anywhere" in trial.broken
    wrong = 0.2 if "names are careless" in trial.broken else generator.beta(1, 40, n)
    recovery = 0.06 + 0.92 * generator.beta(4, 2, n)
    return Digs(
        habit=habit,
        richness=trial.richness * np.exp(generator.normal(0, 0.7 * trial.noise, n)),
        end=generator.choice(np.array(region.ends), n),
        autumn=generator.random(n) < region.sow,
        soil=generator.random((n, len(SOILS))) < np.array([0.4, 0.3, 0.25, 0.3, 0.25, 0.25]),
        low_cut=generator.random(n) < 0.6,
        uprooted=generator.random(n) < 0.15,
        little_tilled=generator.random(n) < 0.25,
        stray=np.full(n, 1.0) if anywhere else generator.beta(1.5, 6, n),
        recovery=np.full(n, 0.1) if "one seed in ten comes back" in trial.broken else recovery,
        coarse=generator.random(n) < 0.15,
        doubtful=generator.beta(1.2, 14, n),
        to_genus=generator.beta(2, 10, n),
        wrong=np.broadcast_to(np.asarray(wrong, float), n).copy(),
        heavy_sorted=generator.random(n) < 0.75,
    )


_OF_TRAIT = (
    # trait, chance of primary, secondary, tertiary, de facto; the first trait that a kind has counts. Judgement.
    ("thermal", (0.70, 0.20, 0.10, 0.0)),
    ("refuse", (0.05, 0.75, 0.20, 0.0)),
    ("storage", (0.05, 0.45, 0.20, 0.30)),
    ("water", (0.05, 0.55, 0.40, 0.0)),
    ("surface", (0.35, 0.40, 0.25, 0.0)),
    ("cut", (0.05, 0.45, 0.50, 0.0)),
    ("", (0.10, 0.40, 0.50, 0.0)),
)


def drawn_deposits(region: Region, packs: Packs, trial: Trial, generator: np.random.Generator) -> Deposits:
    """Contexts of all digs: their kind, how they truly formed, and what the records say of that."""
    n = trial.digs * trial.contexts
    names = tuple(region.kinds)
    weight = np.array([region.kinds[name] for name in names], float)
    kind = generator.choice(len(names), n, p=weight / weight.sum())
    chances = np.array([_chances(name, packs.words.context_kinds[name].traits) for name in names])  # type: ignore[index]
    deposit = (generator.random((n, 1)) > np.cumsum(chances[kind], axis=1)[:, :3]).sum(axis=1)
    is_disturbed = generator.random(n) < 0.15
    careless = 0.5 if "records are careless" in trial.broken else 0.07
    said = np.where(generator.random(n) < careless, generator.integers(0, 4, n), deposit)
    slips = 0.5 if "records are careless" in trial.broken else 0.02
    secure = np.where(generator.random(n) < slips, generator.integers(0, 2, n), is_disturbed.astype(int))
    wet = {"charred": 0.0, "waterlogged": 0.5, "desiccated": 0.7}[region.preservation]
    return Deposits(
        dig=np.repeat(np.arange(trial.digs), trial.contexts),
        kind=kind,
        deposit=deposit,
        is_disturbed=is_disturbed,
        fill_l=np.exp(generator.normal(np.log(40), 0.8, n)),
        is_wet=generator.random(n) < wet,
        recorded_deposit=np.where(generator.random(n) < 0.15, -1, said),
        recorded_security=np.where(generator.random(n) < 0.15, -1, secure),
    )


def _chances(kind: str, traits: frozenset[str]) -> tuple[float, float, float, float]:
    if kind == "burned structure":
        return (0.15, 0.10, 0.05, 0.70)
    return next(chances for trait, chances in _OF_TRAIT if trait == "" or trait in traits)


def affinity(region: Region, packs: Packs) -> np.ndarray:
    """(kinds, activities): how readily an activity leaves its remains in a kind of context, in place or swept there."""
    kinds = packs.words.context_kinds
    return np.array([[_readiness(a, k, kinds[k].traits) for a in region.activities] for k in region.kinds])  # type: ignore[index]


def _readiness(activity: Activity, kind: str, traits: frozenset[str]) -> float:
    named = [activity.at[word] for word in (kind, *traits, "any") if word in activity.at]
    return max([*named, 0.0])


def swept(region: Region, packs: Packs) -> np.ndarray:
    """(kinds,): how much of everybody's sweepings reaches a kind of context."""
    kinds = packs.words.context_kinds
    return np.array(
        [max(TRAITS_OF_ALL.get(word, 0.0) for word in (*kinds[k].traits, "any")) for k in region.kinds]  # type: ignore[index]
    )
