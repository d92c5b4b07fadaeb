"""Samples and plants put in order by what they share."""

from __future__ import annotations

from dataclasses import dataclass

Rows = tuple[tuple[float | None, ...], ...]
"""A table by rows; None where there is no value."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PointsOfAxis:
    """Rows, or columns, of a correspondence analysis. Tables have one row a point and one column an axis."""

    names: tuple[str, ...]
    masses: tuple[float, ...]
    distances: tuple[float, ...]
    """Chi-square distance of each profile from the mean profile."""
    inertias: tuple[float, ...]
    coordinates: Rows
    """Principal coordinates; axes are turned so that the largest of them is positive."""
    contributions: Rows
    """Share of the axis's inertia that each point makes up; each column adds up to 1."""
    qualities: Rows
    """Share of each point's own inertia that each axis shows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ordination:
    """A correspondence analysis of samples and plants."""

    inertias: tuple[float, ...]
    """Principal inertias, largest first."""
    total_inertia: float
    items: float
    """Sum of the table; items × total inertia is chi-square."""
    rows: PointsOfAxis | None
    columns: PointsOfAxis | None
    samples_set_aside: tuple[str, ...] = ()
    """Samples with too few items."""
    plants_set_aside: tuple[str, ...] = ()
    """Plants and parts in too few samples."""
    least_items: int = 0
    least_share: float = 0.0
    reason: str = ""
    """Why there is no analysis."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Likeness:
    """How alike every two units are."""

    names: tuple[str, ...]
    brainerd_robinson: Rows
    """0 nothing shared, 200 the same percentages; None where a unit holds nothing counted."""
    sorensen: Rows
    """0 no plant shared, 1 the same plants; None where neither holds any."""
