"""Work on many units that may be done in shares."""

from __future__ import annotations

import numpy as np

SHARES = 2
MANY = 40
"""Units from which work on them is shared out."""


def shares_of(units: np.ndarray) -> list[np.ndarray]:
    """The units in equal shares; few of them, or none, in one. What comes of a unit never hangs on its share."""
    return np.array_split(units, SHARES) if units.size >= MANY else [units]
