"""The order in which people list ids: S2 before S10."""

from __future__ import annotations

import re


def natural(id: str) -> tuple[tuple[int, int, str], ...]:
    """
    A key that sorts runs of digits as numbers.

    >>> sorted(["S10", "S2", "a", "S02"], key=natural)
    ['S02', 'S2', 'S10', 'a']
    """
    pieces = re.findall(r"[0-9]+|[^0-9]+", id)
    key = [(0, int(p[:400]), "") if p[0] in "0123456789" else (1, 0, p) for p in pieces]
    return (*key, (2, 0, id))
