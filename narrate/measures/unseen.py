"""Taxa that were not seen, and how much of the deposit those that were seen make up."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column
from narrate.measures.groups import by_taxon, is_once, is_seen, is_twice
from narrate.measures.intervals import Z
from narrate.measures.selection import named
from narrate.measures.units import Units
from narrate.model.rules import Selector

NOTHING = "nothing was counted"


def chao1(units: Units, of: Selector) -> Column:
    """
    The least number of taxa in the deposit, those not seen included (Chao1, bias-corrected form, without (N − 1)/N).

        S + f₁(f₁ − 1) / 2(f₂ + 1);   S taxa counted, f₁ of them once and f₂ twice

    Unit: taxa. Interval: log-normal on the unseen, from S upwards. No value: where nothing was counted.
    Misleads: it is a lower bound and not an estimate. It takes every item for as likely to survive and to be named as
    any other, which charring does not grant; counts that lump what could not be named lower f₁.
    Source: Chao 1984, Scandinavian Journal of Statistics 11:265–270; Chao 1987, Biometrics 43:783–791 (from memory).
    """
    of = named(of)
    groups = by_taxon(units, of)
    total = groups.total_items
    seen, once, twice = (groups.sum_of(f) for f in (is_seen, is_once, is_twice))
    value = np.where(total > 0, seen + unseen(once, twice), np.nan)
    low, high = _chao1_ends(seen, once, twice)
    low, high = (np.where(total > 0, part, np.nan) for part in (low, high))
    return Column(value=value, low=low, high=high, of=seen, to=once, n=total, has_interval=True, reason=NOTHING)


def coverage(units: Units, of: Selector) -> Column:
    """
    Share of the items of the deposit that belong to taxa already seen.

        C = 1 − f₁/N · (N − 1) f₁ / [(N − 1) f₁ + 2 f₂]

    Unit: 0 to 1. Interval: ± 1.96 √V, V = [f₁ + 2 f₂ − f₁²/N] / N², within 0 to 1 (Good's form, which is near it). No
    value: where nothing was counted.
    Misleads: it speaks of items, not of taxa: a coverage of 0.99 may still miss many rare plants.
    Source: Chao & Jost 2012, Ecology 93:2533–2547; Good 1953, Biometrika 40:237–264 (both from memory).
    """
    of = named(of)
    groups = by_taxon(units, of)
    total = groups.total_items
    once, twice = groups.sum_of(is_once), groups.sum_of(is_twice)
    with np.errstate(invalid="ignore", divide="ignore"):
        n = np.where(total > 0, total, np.nan)
        most = (n - 1) * once
        twice_or_one = np.where(twice > 0, 2 * twice, 2.0)
        value = 1 - once / n * np.where(once > 0, most / (most + twice_or_one), 0)
        half = Z * np.sqrt(np.maximum(once + 2 * twice - once**2 / n, 0)) / n
    return Column(
        value=value,
        low=np.clip(value - half, 0, 1),
        high=np.clip(value + half, 0, 1),
        of=once,
        to=twice,
        n=total,
        has_interval=True,
        reason=NOTHING,
    )


def unseen(once: np.ndarray, twice: np.ndarray) -> np.ndarray:
    """
    The least number of taxa not seen, f₁(f₁ − 1)/2(f₂ + 1).

    Source: Chao 1984 (bias-corrected; from memory).

    >>> unseen(np.array([4.0]), np.array([3.0])).tolist()
    [1.5]
    """
    return once * (once - 1) / (2 * (twice + 1))


def _chao1_ends(seen: np.ndarray, once: np.ndarray, twice: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Chao 1987: the unseen are taken for log-normal; where none is once, nothing unseen is allowed for."""
    extra = unseen(once, twice)
    b = twice + 1
    variance = (
        once * (once - 1) / (2 * b)
        + once * (2 * once - 1) ** 2 / (4 * b**2)
        + once**2 * twice * (once - 1) ** 2 / (4 * b**4)
    )
    with np.errstate(invalid="ignore", divide="ignore"):
        factor = np.exp(Z * np.sqrt(np.log1p(np.where(extra > 0, variance / extra**2, 0))))
        low, high = seen + extra / factor, seen + extra * factor
    return np.where(extra > 0, low, seen), np.where(extra > 0, high, seen)
