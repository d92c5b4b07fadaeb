"""
Intervals of shares of samples, and of the difference of two such shares.

The room that measures has them too. They stand here a second time because telling may not import that room, and the
spread of plants over samples is counted while it is told. Tests hold the two equal.
"""

from __future__ import annotations

import math

Z95 = 1.959963984540054


def wilson(successes: int, n: int, *, z: float = Z95) -> tuple[float, float]:
    """
    95 % interval of a share of samples.

    Source: Wilson, E. B. 1927, Journal of the American Statistical Association 22:209–212; Newcombe 1998, method 3.

    >>> [round(x, 4) for x in wilson(81, 263)]
    [0.2553, 0.3662]
    """
    if n <= 0:
        raise ValueError("an interval needs at least one sample")
    p = successes / n
    middle = (p + z * z / (2 * n)) / (1 + z * z / n)
    half = z * math.sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / (1 + z * z / n)
    return (max(0.0, middle - half), min(1.0, middle + half))


def newcombe(first: tuple[int, int], second: tuple[int, int]) -> tuple[float, float]:
    """
    95 % interval of the second share minus the first, each given as (successes, n).

    Source: Newcombe, R. G. 1998, Statistics in Medicine 17:873–890, method 10 (hybrid score).

    >>> [round(x, 4) for x in newcombe((48, 80), (56, 70))]
    [0.0524, 0.3339]
    """
    low_1, high_1 = wilson(*first)
    low_2, high_2 = wilson(*second)
    share_1, share_2 = first[0] / first[1], second[0] / second[1]
    down = math.sqrt((share_2 - low_2) ** 2 + (high_1 - share_1) ** 2)
    up = math.sqrt((high_2 - share_2) ** 2 + (share_1 - low_1) ** 2)
    return share_2 - share_1 - down, share_2 - share_1 + up
