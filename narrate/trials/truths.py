"""What is true of each context of simulated digs, statement by statement."""

from __future__ import annotations

import numpy as np

from narrate.trials.activities import Region
from narrate.trials.remains import Things
from narrate.trials.worlds import DEPOSITS, SOILS, Deposits, Digs

SEASONS = {
    "season.spring": (3, 4, 5),
    "season.early-summer": (5, 6, 7),
    "season.late-summer": (7, 8, 9),
    "season.autumn": (8, 9, 10, 11),
    "season.winter": (12, 1, 2),
}
"""Months that each statement speaks of, as its meaning in the packs says."""


def truths(
    region: Region,
    digs: Digs,
    deposits: Deposits,
    things: Things,
    pieces: np.ndarray,
    events: np.ndarray,
    found: np.ndarray,
    generator: np.random.Generator,
) -> tuple[dict[str, np.ndarray], dict[str, np.ndarray]]:
    """
    Statement -> True for each context of which it is true, and statement -> items of it that were counted there.

    pieces:  (contexts, things) expected in the whole deposit; an activity counts where it left one piece or more.
    found:   (contexts, things) counted by the laboratory.
    """
    acts = region.activities
    of_act = np.eye(len(acts))[things.activity]
    lies, counted = pieces @ of_act, found @ of_act
    did = lies >= 1.0
    truth: dict[str, np.ndarray] = {}
    left: dict[str, np.ndarray] = {}
    for statement in sorted({s for a in acts for s in a.true}):
        which = [i for i, a in enumerate(acts) if statement in a.true]
        truth[statement] = did[:, which].any(axis=1)
        left[statement] = counted[:, which].sum(axis=1)
    weeds = found[:, things.is_weed].sum(axis=1)
    truth |= _fields(digs, deposits, pieces[:, things.is_weed].sum(axis=1) >= 1.0)
    left |= dict.fromkeys(_FIELD, weeds)
    truth |= _seasons(things, pieces, generator)
    gathered = np.array([bool(m) for m in things.months])
    left |= dict.fromkeys((*SEASONS, "season.more-than-one", "season.stored-only"), found[:, gathered].sum(axis=1))
    truth |= _deposits(region, deposits, things, lies, events, pieces)
    left |= dict.fromkeys(_DEPOSIT, found[:, ~things.is_wood].sum(axis=1))
    truth["integrity.disturbed"] = deposits.is_disturbed
    truth["integrity.poor-recovery"] = digs.recovery[deposits.dig] < 0.5
    left |= dict.fromkeys(("integrity.disturbed", "integrity.poor-recovery"), found.sum(axis=1))
    return truth, left


_FIELD = (
    "field.autumn-sown", "field.spring-sown", "field.cut-low", "field.cut-high", "field.uprooted", "field.fertile",
    "field.poor", "field.acid", "field.lime-rich", "field.clay", "field.wet", "field.little-tilled",
)  # fmt: skip
_DEPOSIT = ("deposit.single-event", "deposit.slow-build-up", "deposit.redeposited", "deposit.burned-in-place")


def _fields(digs: Digs, deposits: Deposits, has_weeds: np.ndarray) -> dict[str, np.ndarray]:
    """The fields of a dig are what its crops grew on; told of a context where weeds came in with a crop."""
    dig = deposits.dig
    of_soil: dict[str, np.ndarray] = dict(zip(SOILS, digs.soil.T, strict=True))
    of_dig: dict[str, np.ndarray] = {
        "field.autumn-sown": digs.autumn,
        "field.spring-sown": ~digs.autumn,
        "field.cut-low": digs.low_cut | digs.uprooted,
        "field.cut-high": ~digs.low_cut & ~digs.uprooted,
        "field.uprooted": digs.uprooted,
        "field.fertile": of_soil["rich"],
        "field.poor": of_soil["poor"],
        "field.acid": of_soil["acid"],
        "field.lime-rich": of_soil["lime-rich"],
        "field.clay": of_soil["clay"],
        "field.wet": of_soil["wet"],
        "field.little-tilled": digs.little_tilled,
    }
    return {statement: has_weeds & is_so[dig] for statement, is_so in of_dig.items()}


def _seasons(things: Things, pieces: np.ndarray, generator: np.random.Generator) -> dict[str, np.ndarray]:
    """Each thing that was gathered was gathered in one of its months, now and then a month early or late."""
    gathered = [i for i, months in enumerate(things.months) if months]
    there = pieces[:, gathered] >= 0.5
    choice = generator.random(there.shape)
    early = generator.choice([-1, 0, 1], there.shape, p=[0.07, 0.86, 0.07])
    month = np.empty(there.shape, int)
    for column, thing in enumerate(gathered):
        months = np.array(things.months[thing])
        month[:, column] = months[(choice[:, column] * months.size).astype(int)]
    month = (month - 1 + early) % 12 + 1
    had = np.zeros((there.shape[0], 12), bool)
    rows, columns = np.nonzero(there)
    had[rows, month[rows, columns] - 1] = True
    truth = {s: np.asarray(had[:, [m - 1 for m in months]].any(axis=1)) for s, months in SEASONS.items()}
    # One stay of two months explains a deposit if all its months lie in some pair of neighbours.
    within = np.stack([~np.delete(had, [m, (m + 1) % 12], axis=1).any(axis=1) for m in range(12)])
    truth["season.more-than-one"] = np.asarray(had.any(axis=1) & ~within.any(axis=0))
    perishable = there & ~things.keeps[gathered]
    truth["season.stored-only"] = np.asarray(had.any(axis=1) & ~perishable.any(axis=1))
    return truth


def _deposits(
    region: Region, deposits: Deposits, things: Things, lies: np.ndarray, events: np.ndarray, pieces: np.ndarray
) -> dict[str, np.ndarray]:
    """How a deposit formed. 'Most of the remains' is seven pieces of ten, fuel wood left out: it is everywhere."""
    food = pieces[:, ~things.is_wood] @ np.eye(len(region.activities))[things.activity[~things.is_wood]]
    total = food.sum(axis=1)
    with np.errstate(invalid="ignore", divide="ignore"):
        largest = np.where(total > 0, (food * (events == 1)).max(axis=1) / total, 0.0)
    single = largest >= 0.7
    true_deposit = np.array(DEPOSITS)[deposits.deposit]
    in_place = np.isin(true_deposit, ("primary", "de facto"))
    return {
        "deposit.single-event": single,
        "deposit.slow-build-up": ~single & (events.sum(axis=1) >= 5),
        "deposit.redeposited": ~in_place,
        "deposit.burned-in-place": in_place & (lies.sum(axis=1) >= 1.0),
    }
