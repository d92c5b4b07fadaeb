"""What was counted, row by row, as written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from narrate.model.ids import PartId, SampleId
from narrate.model.plants import Identification
from narrate.problems import Place

Amount = Literal["counted", "noted as present", "looked for and absent", "not looked for", "weighed only"]
Fraction = Literal["light", "heavy"]
Completeness = Literal["whole", "fragment"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """A cell of the count column: what was written and what it means. Presence is never a number."""

    written: str
    amount: Amount
    number: int | None = None
    """Items counted; None unless `amount` is 'counted'."""
    at_least: int | None = None
    """For an abundance class with a key: its lower end."""
    at_most: int | None = None
    scale: str = ""
    """Name of the scale that an abundance class belongs to; 'ends as written' where its sign says its ends."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AbundanceScale:
    """A scale of abundance that a project uses in its sheets."""

    id: str
    classes: Mapping[str, tuple[int | None, int | None]]
    """Sign -> lower and upper end in items; None where the class is open."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AbundanceClass:
    """What one sign of a scale means."""

    scale: str
    at_least: int | None
    at_most: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CountRow:
    """One row of a count sheet."""

    sample: SampleId
    identification: Identification
    part: PartId
    count: Count
    mass_g: float | None = None
    condition: str = "charred"
    completeness: Completeness = "whole"
    size_class: str = ""
    fraction: Fraction = "light"
    proportion_sorted: float = 1.0
    """Share of the size class that was sorted, from the sample's record."""
    note: str = ""
    place: Place
