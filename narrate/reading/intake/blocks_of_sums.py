"""The few lines behind or before all others that together add up to them: columns of phases behind those of samples."""

# ruff: noqa: E501

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from narrate.reading.intake.sums_by_numbers import TAKEN
from narrate.reading.intake.sums_held import Amounts, Held, added_up, held_against


def block_of_sums(lines: Sequence[int], amounts: Mapping[int, Amounts]) -> tuple[tuple[int, ...], Held] | None:
    """
    The first or the last few lines that together add up to all others, as the columns of phases behind those of samples do.

    >>> samples = {1: [4, 9, 8, 20], 2: [7, 30, 1, 0], 3: [6, 0, 55, 15], 4: [9, 41, 12, 60]}
    >>> block_of_sums([1, 2, 3, 4, 5, 6], {**samples, 5: [10, 9, 63, 35], 6: [16, 71, 13, 60]})[0]
    (5, 6)
    """
    width = max((len(amounts[line]) for line in lines), default=0)
    total = [sum(amounts[line][k] or 0.0 for line in lines) for k in range(width)]
    order = sorted((k for k in range(width) if total[k]), key=lambda k: -total[k])[:5]
    cost = 2.0 + math.log2(2.0 * len(lines)) if lines else 0.0
    best: tuple[tuple[int, ...], Held] | None = None
    for way in (list(reversed(lines)), list(lines)):
        sums = [0.0] * len(order)
        for size, line in enumerate(way[: (len(lines) - 1) // 2], start=1):
            sums = [one + (amounts[line][k] or 0.0) for one, k in zip(sums, order, strict=True)]
            if size < 2 or sum(abs(2 * one - total[k]) < 0.06 for one, k in zip(sums, order, strict=True)) < 2:
                continue
            block = tuple(sorted(way[:size], key=list(lines).index))
            rest = [amounts[line] for line in lines if line not in block]
            found = held_against(added_up([amounts[line] for line in block]), rest)
            is_one = found.several > 2 and found.agreeing >= 0.74 * found.given and found.bits - cost >= TAKEN
            if is_one and (best is None or found.bits > best[1].bits):
                best = (block, found)
    return best
