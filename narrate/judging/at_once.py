"""Work on many units that may be done in shares, all at once, by whoever was handed in to do so."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

import numpy as np

AtOnce = Callable[[Sequence[Callable[[], Any]]], list[Any]]
"""Does some jobs and gives what each gave, in their order; no job sees what another changes."""

SHARES = 2
MANY = 40
"""Units from which work on them is shared out."""


def in_turn(jobs: Sequence[Callable[[], Any]]) -> list[Any]:
    """One job after another."""
    return [job() for job in jobs]


def shares_of(units: np.ndarray) -> list[np.ndarray]:
    """The units in equal shares; few of them, or none, in one. What comes of a unit never hangs on its share."""
    return np.array_split(units, SHARES) if units.size >= MANY else [units]
