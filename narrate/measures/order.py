"""Correspondence analysis, and how alike two assemblages are."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from narrate.measures.units import Units
from narrate.model.order import Likeness, Ordination, PointsOfAxis, Rows
from narrate.model.rules import Selector

LEAST_ITEMS = 30
"""Items that a sample needs (after Bogaard 2004; from memory; a default to check)."""
LEAST_SHARE = 0.05
"""Share of the samples that a plant must be in (after Bogaard 2004 and Lange 1990; from memory; a default to check)."""


def ordination(
    units: Units, of: Selector | None = None, *, least_items: int = LEAST_ITEMS, least_share: float = LEAST_SHARE
) -> Ordination:
    """
    Correspondence analysis of units and of the plants and parts in them; poor samples and rare plants are set aside.

    units:        samples, or units of another level.
    least_items:  items that a unit needs.
    least_share:  share of the units left that a plant must be in; never fewer than two of them.
    Misleads:     one odd sample makes an axis of its own: look at the contributions before you read an axis. Raw counts
                  are used, so that a rich sample weighs more.
    Source:       the habits: Bogaard 2004; Lange 1990; Colledge 2001 (from memory). The analysis: `correspondence`.
    """
    names, plants, counts = counted_table(units, of or Selector())
    rich = counts.sum(axis=1) >= least_items
    counts = counts[rich]
    common = (counts > 0).sum(axis=0) >= max(2, math.ceil(least_share * len(counts) - 1e-9))
    counts = counts[:, common]
    held = counts.sum(axis=1) > 0
    kept = np.flatnonzero(rich)[held]
    is_kept = set(kept.tolist())
    aside = tuple(name for place, name in enumerate(names) if place not in is_kept)
    rare = tuple(name for name, is_common in zip(plants, common, strict=True) if not is_common)
    if held.sum() < 3 or common.sum() < 3:
        nothing = Ordination(inertias=(), total_inertia=0.0, items=float(counts.sum()), rows=None, columns=None)
        return _aside(nothing, aside, rare, least_items, least_share, "fewer than three samples or plants are left")
    found = correspondence(
        counts[held],
        [names[i] for i in kept],
        [name for name, is_common in zip(plants, common, strict=True) if is_common],
    )
    return _aside(found, aside, rare, least_items, least_share, "")


def correspondence(table: np.ndarray, rows: Sequence[str], columns: Sequence[str]) -> Ordination:
    """
    Simple correspondence analysis of a table of counts.

        S = D_r^(−½) (P − r cᵀ) D_c^(−½) = U Σ Vᵀ;   P = table/total, r and c its row and column sums;
        principal inertias σ², principal coordinates D_r^(−½) U Σ and D_c^(−½) V Σ

    table:   counts; every row and every column holds something.
    Source:  Greenacre 1984, Theory and Applications of Correspondence Analysis.

    >>> found = correspondence(np.array([[4, 2, 3, 2], [4, 3, 7, 4], [25, 10, 12, 4], [18, 24, 33, 13], [10, 6, 7, 2]]),
    ...     "ABCDE", "wxyz")
    >>> [round(i, 6) for i in found.inertias]
    [0.074759, 0.010017, 0.000414]
    """
    counts = np.asarray(table, float)
    p = counts / counts.sum()
    r, c = p.sum(axis=1), p.sum(axis=0)
    if np.any(r <= 0) or np.any(c <= 0):
        raise ValueError("every row and every column of the table must hold something")
    residuals = (p - np.outer(r, c)) / np.sqrt(np.outer(r, c))
    u, sigma, vt = np.linalg.svd(residuals, full_matrices=False)
    # The last axis of the smaller side has no inertia: row and column sums are taken out. A table of even
    # rows has fewer still.
    keep = np.flatnonzero(sigma > 1e-12)[: min(counts.shape) - 1]
    u, sigma, v = u[:, keep], sigma[keep], vt[keep].T
    total = float((residuals**2).sum())
    along = u / np.sqrt(r)[:, None]
    flip = np.sign(along[np.argmax(np.abs(along), axis=0), np.arange(sigma.size)])
    return Ordination(
        inertias=tuple(float(s * s) for s in sigma),
        total_inertia=total,
        items=float(counts.sum()),
        rows=_points(tuple(rows), r, u * flip, sigma, (residuals**2).sum(axis=1)),
        columns=_points(tuple(columns), c, v * flip, sigma, (residuals**2).sum(axis=0)),
    )


def likeness(units: Units, of: Selector | None = None) -> Likeness:
    """
    Brainerd–Robinson and Sørensen coefficients of every two units of a level, on plants and parts as counted.

    Misleads: closed percentages: one plant in bulk makes two pits look alike or apart, whatever else they hold. Shared
    presence grows with the number of items.
    Source:   `brainerd_robinson` and `sorensen`.
    """
    names, _, counts = counted_table(units, of or Selector())
    return Likeness(
        names=names, brainerd_robinson=_by_rows(brainerd_robinson(counts)), sorensen=_by_rows(sorensen(counts > 0))
    )


def brainerd_robinson(counts: np.ndarray) -> np.ndarray:
    """
    Likeness of every two rows by their percentages: 200 the same, 0 nothing shared.

        BR = 200 − Σ |pᵢₖ − pⱼₖ|;   p in percent

    counts:  (units, things).
    Source:  Robinson 1951, American Antiquity 16:293–301; Brainerd 1951, American Antiquity 16:301–313 (from memory).

    >>> brainerd_robinson(np.array([[8, 6, 6], [2, 3, 5]])).round(6).tolist()
    [[200.0, 160.0], [160.0, 200.0]]
    """
    counts = np.asarray(counts, float)
    with np.errstate(invalid="ignore", divide="ignore"):
        percent = (
            100 * counts / np.where(counts.sum(axis=1, keepdims=True) > 0, counts.sum(axis=1, keepdims=True), np.nan)
        )
    return np.stack([200 - np.abs(percent - row).sum(axis=1) for row in percent]) if len(percent) else np.zeros((0, 0))


def sorensen(there: np.ndarray) -> np.ndarray:
    """
    Likeness of every two rows by the things they share.

        S = 2c / (a + b);   a and b things of the two, c those of both

    there:   (units, things) of truth values.
    Source:  Sørensen 1948; as used for sites in Gremillion, Excavating Occaneechi Town, "Site comparisons".

    >>> sorensen(np.array([[True, True, False], [True, False, True]])).tolist()
    [[1.0, 0.5], [0.5, 1.0]]
    """
    x = np.asarray(there, float)
    own = x.sum(axis=1)
    with np.errstate(invalid="ignore", divide="ignore"):
        return 2 * (x @ x.T) / (own[:, None] + own[None, :])


def counted_table(units: Units, of: Selector) -> tuple[tuple[str, ...], tuple[str, ...], np.ndarray]:
    """Names of the units, names of the plants and parts, and items as counted, of shape (units, plants and parts)."""
    table, rows = units.table, units.rows(of)
    labels: dict[str, int] = {}
    code = []
    for kind in table.kinds:
        name = f"{kind.taxon or '/'.join(kind.either) or kind.written}, {kind.part}"
        code.append(labels.setdefault(name, len(labels)))
    counts = np.zeros((len(units.ids), len(labels)))
    if rows.size:
        np.add.at(counts, (units.unit_of(rows), np.array(code, np.intp)[table.row_kind[rows]]), table.counted[0, rows])
    found = counts.sum(axis=0) > 0
    return units.ids, tuple(name for name, is_found in zip(labels, found, strict=True) if is_found), counts[:, found]


def _points(
    names: tuple[str, ...], masses: np.ndarray, vectors: np.ndarray, sigma: np.ndarray, inertias: np.ndarray
) -> PointsOfAxis:
    coordinates = vectors * sigma / np.sqrt(masses)[:, None]
    with np.errstate(invalid="ignore", divide="ignore"):
        qualities = masses[:, None] * coordinates**2 / np.where(inertias > 1e-15, inertias, np.nan)[:, None]
    return PointsOfAxis(
        names=names,
        masses=tuple(masses.tolist()),
        distances=tuple(np.sqrt(inertias / masses).tolist()),
        inertias=tuple(inertias.tolist()),
        coordinates=_by_rows(coordinates),
        contributions=_by_rows(vectors**2),
        qualities=_by_rows(qualities),
    )


def _by_rows(table: np.ndarray) -> Rows:
    return tuple(tuple(float(x) if np.isfinite(x) else None for x in row) for row in table)


def _aside(
    found: Ordination,
    samples: tuple[str, ...],
    plants: tuple[str, ...],
    least_items: int,
    least_share: float,
    reason: str,
) -> Ordination:
    return replace(
        found,
        samples_set_aside=samples,
        plants_set_aside=plants,
        least_items=least_items,
        least_share=least_share,
        reason=reason,
    )
