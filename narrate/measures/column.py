"""One measure of all units at once."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """
    Values of shape (replicates, units). NaN is "no value" and stays inside this room and `judging`; what leaves is a
    `Measurement` with None and a reason.
    """

    value: np.ndarray
    low: np.ndarray
    high: np.ndarray
    """Ends of the 95 % interval; equal to the value where the measure has no interval. Infinity: open above."""
    of: np.ndarray | None = None
    """Raw items, grams or samples of the first selection."""
    to: np.ndarray | None = None
    n: np.ndarray | None = None
    """What the value rests on."""
    has_interval: bool = False
    reason: str = ""
    """Why a unit may have no value."""


def exact(
    value: np.ndarray,
    *,
    of: np.ndarray | None = None,
    to: np.ndarray | None = None,
    n: np.ndarray | None = None,
    reason: str = "",
) -> Column:
    """A column without doubt: what was counted, weighed or written down."""
    return Column(value=value, low=value, high=value, of=of, to=to, n=n, reason=reason)
