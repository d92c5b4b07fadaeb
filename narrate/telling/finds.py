"""Pieces of the names of finds: plant and part joined, brackets joined, grams. Pure functions."""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.model.findings import Tally

PIECES = re.compile(r"^(\w+) of (an? )?(.+)$")
"""'bits of nutshell', 'half of a seed': the plant goes before the last part."""


def with_plant(plant: str, noun: str) -> str:
    """
    The plant before the part, no word said twice.

    >>> with_plant("hickory", "nutshell"), with_plant("corn", "corn cob"), with_plant("oak", "acorn shell")
    ('hickory nutshell', 'corn cob', 'acorn shell')
    >>> with_plant("hazelnut", "nutshell"), with_plant("wild grass", "grains"), with_plant("maypop seed", "seeds")
    ('hazelnut shell', 'wild grass grains', 'maypop seeds')
    """
    words, first = plant.split(), noun.split()[0]
    last = words[-1].lower()
    if f"{last} " in f"{noun.lower()} " or first.startswith("acorn"):
        return noun
    if last.endswith("nut") and first == "nutshell":
        return f"{plant} {noun.replace('nutshell', 'shell', 1)}"
    if last == first or f"{last}s" == first:
        return " ".join([*words[:-1], noun])
    return f"{plant} {noun}"


def within(tail: str, more: str) -> str:
    """One pair of brackets for the Latin and what else is said of the find."""
    if not more:
        return tail
    return f"{tail[:-1]}, {more})" if tail else f" ({more})"


def grams(mass: float) -> str:
    return f"{mass:.2f}".rstrip("0").rstrip(".") if mass < 1 else f"{mass:.1f}"


def total(tallies: Iterable[Tally]) -> int:
    """Items of some tallies, as counted."""
    return sum(tally.counted for tally in tallies)
