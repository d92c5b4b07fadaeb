"""Sorts of wild seeds, the triangle of grain, chaff and weeds, and the order of samples, as tables."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.deposit.csv_text import Row, Table
from narrate.measures.fields import field_shares, triangle_points
from narrate.measures.units import Units
from narrate.model.order import Ordination, PointsOfAxis


def field_shares_table(levels: Iterable[Units]) -> Table:
    columns = (
        "level",
        "subject",
        "attribute",
        "value",
        "seeds",
        "of seeds with it known",
        "share (0-1)",
        "low",
        "high",
        "seeds with it unknown",
    )
    rows = [
        (
            f.subject.level,
            f.subject.id,
            f.attribute,
            f.value,
            f.of,
            f.share.n,
            f.share.value,
            f.share.low,
            f.share.high,
            f.unknown,
        )
        for units in levels
        for f in field_shares(units)
        if f.share.n
    ]
    return columns, rows


def triangle_table(levels: Iterable[Units]) -> Table:
    columns = ("level", "subject", "grain (0-1)", "chaff (0-1)", "weeds (0-1)", "x", "y", "n")
    rows = [
        (p.subject.level, p.subject.id, p.grain, p.chaff, p.weed, p.x, p.y, p.n)
        for units in levels
        for p in triangle_points(units)
    ]
    return columns, rows


def points_table(found: Ordination, points: PointsOfAxis | None) -> Table:
    axes = min(4, len(found.inertias))
    shares = [inertia / found.total_inertia for inertia in found.inertias[:axes]]
    columns = (
        "name",
        "mass",
        "inertia",
        *(f"axis {a + 1} ({shares[a]:.1%} of the inertia)" for a in range(axes)),
        *(f"contribution to axis {a + 1} (0-1)" for a in range(axes)),
        *(f"quality on axis {a + 1} (0-1)" for a in range(axes)),
        "set aside",
    )
    is_rows = points is found.rows
    aside = found.samples_set_aside if is_rows else found.plants_set_aside
    why = (
        f"fewer than {found.least_items} items" if is_rows else f"in fewer than {found.least_share:.0%} of the samples"
    )
    rows: list[Row] = []
    if points is not None:
        for i, name in enumerate(points.names):
            parts = (points.coordinates[i], points.contributions[i], points.qualities[i])
            values = [part[a] for part in parts for a in range(axes)]
            rows.append((name, points.masses[i], points.inertias[i], *values, ""))
    blank = ("",) * (len(columns) - 2)
    rows += [(name, *blank, why) for name in aside]
    return columns, rows or [("", *blank, found.reason)]
