"""What wild seeds say of crop fields, and whether they came with the crop."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import Subject
from narrate.model.measurement import Measurement


@dataclass(frozen=True, slots=True, kw_only=True)
class Association:
    """A part of a crop and a weed, over samples."""

    crop: str
    crop_part: str
    weed: str
    both: int
    only_crop: int
    only_weed: int
    neither: int
    phi: float
    """−1 never together, 0 as chance would have it, 1 always together."""
    expected_phi: float
    """Mean phi of the permutations: what rich and poor samples, and phases that differ, alone make of it."""
    p: float
    p_holm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Associations:
    samples: int
    rows: tuple[Association, ...]
    """Strongest first."""
    left_out: int
    """Pairs not tested, because one of them is in too few samples or in all but too few."""
    permutations: int
    seed: int
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldShare:
    """Share of wild seeds of one sort among those whose sort is known."""

    subject: Subject
    attribute: str
    """sow, soil, height, life, seed or field_weed."""
    value: str
    share: Measurement
    of: int
    """Seeds of that sort."""
    unknown: int
    """Wild seeds whose sort the packs do not know; they are in no share."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TrianglePoint:
    """Where a unit lies in a triangle of grain (top), chaff (right) and weeds (left)."""

    subject: Subject
    grain: float
    chaff: float
    weed: float
    """Shares that add up to 1."""
    x: float
    y: float
    n: int
    """Pieces and seeds counted."""
