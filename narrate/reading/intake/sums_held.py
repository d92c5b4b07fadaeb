"""A line of numbers held against the sum of others, cell by cell, and how little chance makes them agree."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

Amounts = Sequence["float | None"]
"""The numbers of one line; None: a sign that is no number."""

LOOSEST = 0.06
"""More than any sum may be off for each number in it, whose looseness then need not be worked out."""
_DISAGREES = 2.0
"""Bits that a cell which does not agree takes off (judgement)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """A line held against the sum of others, cell by cell."""

    agreeing: int
    several: int
    """Cells that agree with the sum of two amounts or more."""
    given: int
    bits: float


def held_against(own: Amounts, parts: Sequence[Amounts]) -> Held:
    """
    How a line agrees with the sum of others.

    >>> found = held_against([12, 0, 40], [[5, 0, 20], [7, 0, 19]])
    >>> found.agreeing, found.several, found.given, round(found.bits, 1)
    (1, 1, 2, 1.7)
    """
    agreeing = several = given = 0
    bits = 0.0
    for mine, values in zip(own, zip(*parts, strict=True), strict=True):
        known = [value for value in values if value]
        if mine is None or (not mine and not known):
            continue
        added = sum(known)
        off = abs(mine - added)
        loose = _looseness(mine, known) if off <= LOOSEST * (1 + len(known)) else 0.0
        is_same = off <= loose
        if not is_same and None in values and mine >= added:
            continue  # a sign that is no number may be in it
        given += 1
        if is_same:
            agreeing += 1
            several += len(known) > 1
            bits += math.log2(1.0 + mine / max(1.0, 2.0 * loose)) * (1.0 if len(known) > 1 else 0.5)
        else:
            bits -= _DISAGREES
            if given - agreeing > 0.5 * len(own):
                break  # whatever comes, most of its cells do not agree
    return Held(agreeing=agreeing, several=several, given=given, bits=bits)


def added_up(lines: Iterable[Amounts]) -> list[float | None]:
    """Lines added up cell by cell; None where a sign is among them."""
    return [None if None in cells else sum(value or 0.0 for value in cells) for cells in zip(*lines, strict=True)]


def _looseness(own: float, parts: Sequence[float]) -> float:
    """How far a sum may be off for the digits that its parts show."""
    if float(own).is_integer() and all(float(part).is_integer() for part in parts):
        return 1e-6
    digits = max(len(f"{number:.6f}".rstrip("0").partition(".")[2]) for number in (own, *parts))
    return 0.5 * 10.0**-digits * (1 + len(parts)) + 1e-9
