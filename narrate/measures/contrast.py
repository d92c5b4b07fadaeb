"""One group of contexts held against another by the samples that hold a thing, like phases with like."""

from __future__ import annotations

import numpy as np

from narrate.measures.apart import Strata, score
from narrate.measures.column import Column, exact
from narrate.measures.intervals import wilson
from narrate.measures.selection import in_contexts
from narrate.measures.special import incomplete_gamma
from narrate.measures.units import Units
from narrate.model.rules import Selector

_NOT_BOTH = "there is no phase with samples of both groups of contexts"


def samples_of(units: Units, of: Selector) -> Column:
    """
    Samples from the kinds of context that the selector asks for, whatever they hold.

        n

    Unit: samples. Interval: none. Always has a value.
    Misleads: samples of one context are not independent.
    Source: Popper 1988, in Hastorf & Popper (eds), pp. 53–71 (from memory).
    """
    meant = in_contexts(units.table, of, units.packs)
    drawn = units.there_by_sample(of)[1] * meant[None, :]
    number = np.zeros(units.shape)
    for unit in range(len(units.ids)):
        number[:, unit] = drawn[:, units.samples_of(unit)].sum(axis=1)
    return exact(number, of=number, n=number)


def ubiquity_apart(units: Units, of: Selector, to: Selector) -> Column:
    """
    Share of samples with a thing in one group of contexts less that in another, phase by phase.

        difference = Σ wₕ (k₁ₕ/n₁ₕ − k₂ₕ/n₂ₕ);   wₕ ∝ n₁ₕ n₂ₕ / (n₁ₕ + n₂ₕ), over the phases h with samples of both

    `of` and `to` name the same plants and two groups of contexts (context_kind, context_trait, not_context_trait).
    Unit: −1 to 1. Interval: Newcombe's hybrid score on the numbers that weigh alike, n′ = 1 / Σ wₕ²/nₕ; for one phase
    it is Newcombe's own. No value: where no phase has samples of both groups.
    Misleads: samples of one context are not independent; richer samples hold more kinds of things.
    Source: Newcombe 1998, Statistics in Medicine 17:873–890; the weights are those of Mantel & Haenszel 1959 (both from
    memory); n′ is worked out here.
    """
    shape = units.shape
    value, low, high = (np.full(shape, np.nan) for _ in range(3))
    k1, k2, n = np.zeros(shape), np.zeros(shape), np.zeros(shape)
    for unit in range(len(units.ids)):
        found = two_groups(units, of, to, unit)
        if found is None:
            continue
        value[:, unit], low[:, unit], high[:, unit] = _difference(found)
        k1[:, unit], k2[:, unit] = found.with_it[:, :, 0].sum(axis=1), found.with_it[:, :, 1].sum(axis=1)
        n[:, unit] = found.samples.sum(axis=(1, 2))
    return Column(value=value, low=low, high=high, of=k1, to=k2, n=n, has_interval=True, reason=_NOT_BOTH)


def ubiquity_apart_p(units: Units, of: Selector, to: Selector) -> Column:
    """
    Chance that two groups of contexts differ at least so much in the samples that hold the thing, if the samples of a
    phase had been dealt to them at random.

        Q = d² / V;   d = Σ over phases (samples with it in the first group, less those expected), V the variance of d

    Unit: 0 to 1. Interval: none. No value: where no phase has samples of both groups.
    Misleads: where many plants are tested and the smallest value is picked; with few samples the chi-square
    distribution, from which it is taken, is rough.
    Source: Mantel & Haenszel 1959, JNCI 22:719–748 (from memory), without correction for continuity.
    """
    value, n = np.full(units.shape, np.nan), np.zeros(units.shape)
    for unit in range(len(units.ids)):
        found = two_groups(units, of, to, unit)
        if found is None:
            continue
        q, freedom = score(found)
        value[:, unit] = np.where(freedom > 0, 1 - incomplete_gamma(np.maximum(q, 0) / 2, np.full_like(q, 0.5)), 1.0)
        n[:, unit] = found.samples.sum(axis=(1, 2))
    return exact(value, n=n, reason=_NOT_BOTH)


def two_groups(units: Units, of: Selector, to: Selector, unit: int) -> Strata | None:
    """Samples of one unit counted by phase and group; None where no phase has samples of both as they were taken."""
    phases = units.table.groups.get("phase")
    own = units.samples_of(unit)
    if phases is None or not own.size:
        return None
    groups = [in_contexts(units.table, selector, units.packs)[own] for selector in (of, to)]
    shared = sorted(set(phases[own[groups[0]]].tolist()) & set(phases[own[groups[1]]].tolist()))
    if not shared:
        return None
    counted = [units.there_by_sample(selector) for selector in (of, to)]
    cells = [[group & (phases[own] == phase) for group in groups] for phase in shared]
    with_it = np.array([[counted[g][0][:, own[cell]].sum(axis=1) for g, cell in enumerate(row)] for row in cells])
    samples = np.array([[counted[g][1][:, own[cell]].sum(axis=1) for g, cell in enumerate(row)] for row in cells])
    return Strata(
        with_it=np.moveaxis(with_it, 2, 0), samples=np.broadcast_to(np.moveaxis(samples, 2, 0), _moved(with_it))
    )


def _moved(cells: np.ndarray) -> tuple[int, ...]:
    return (cells.shape[2], cells.shape[0], cells.shape[1])


def _difference(found: Strata) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Value, low and high; a phase of which no sample of one group was drawn has no weight in that draw."""
    k, n = found.with_it, found.samples
    weight = n[:, :, 0] * n[:, :, 1] / np.maximum(n.sum(axis=2), 1)
    total = weight.sum(axis=1, keepdims=True)
    with np.errstate(invalid="ignore", divide="ignore"):
        weight = np.where(total > 0, weight / total, np.nan)
        share = np.where(n > 0, k / n, 0.0)
        p = (weight[:, :, None] * share).sum(axis=1)
        alike = 1 / (np.where(n > 0, weight[:, :, None] ** 2 / n, 0.0)).sum(axis=1)
        low, high = wilson(p * alike, alike)
        value = p[:, 0] - p[:, 1]
        return (
            value,
            value - np.hypot(p[:, 0] - low[:, 0], high[:, 1] - p[:, 1]),
            value + np.hypot(high[:, 0] - p[:, 0], p[:, 1] - low[:, 1]),
        )
