"""What the weeds of the crops say of the fields."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from narrate.measures.column import Column
from narrate.measures.findings import as_measurement
from narrate.measures.intervals import wilson
from narrate.measures.units import Units
from narrate.model.fields import FieldShare, TrianglePoint
from narrate.model.ids import Subject
from narrate.model.rules import Selector

WILD = Selector(status=("native", "introduced", "either"), role=("propagule",))
WEEDS = Selector(status=("native", "introduced", "either"), role=("propagule",), field_weed=("strong", "moderate"))
GRAIN = Selector(status=("crop",), part=("grain", "sprouted grain", "kernel"))  # type: ignore[arg-type]
CHAFF = Selector(status=("crop",), role=("chaff", "cob"))
SORTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("field_weed", ("strong", "moderate", "weak", "none")),
    ("sow", ("autumn", "spring", "both")),
    ("soil", ("sandy", "clay", "acid", "lime-rich", "wet", "dry", "rich", "poor")),
    ("height", ("low", "medium", "tall", "twining")),
    ("life", ("annual", "biennial", "perennial")),
    (
        "seed",
        (
            "small free light",
            "small headed light",
            "small headed heavy",
            "small free heavy",
            "big headed heavy",
            "big free heavy",
        ),
    ),
)
"""Sorts of wild seeds that are told as shares; the last are the six of G. Jones 1984, in van Zeist & Casparie (eds),
Plants and Ancient Man, pp. 43–61 (from memory)."""


def field_shares(units: Units, of: Selector = WILD) -> tuple[FieldShare, ...]:
    """
    Shares of wild seeds by field weed, sowing season, soil, height, life and the six sorts of seed, for every unit.

        share = seeds of the sort / seeds whose sort the packs know

    Gives:     shares with Wilson intervals; seeds whose sort nobody knows are told beside, and are in no share.
    Misleads:  below ten weed seeds nothing may be said, below thirty no percentage; a sort of soil is named for where a
               plant thrives, not for where alone it grows. Seeds of several soils count under each of them.
    Source:    G. Jones 1984, in van Zeist & Casparie (eds), pp. 43–61, for seed sorts; van der Veen 1992 (from memory).
    """
    found = []
    whole = units.counted(of)[0]
    for attribute, values in SORTS:
        words = tuple(dict.fromkeys(values))
        known_rows = [_sorted_as(of, attribute, value) for value in words]
        known = _any_of(units, known_rows)
        for value, selector in zip(words, known_rows, strict=True):
            column = _share_among(units, selector, known)
            found += [
                FieldShare(
                    subject=Subject(level=units.level, id=id),
                    attribute=attribute,
                    value=value,
                    share=as_measurement("share", column, unit),
                    of=int(column.of[0, unit]),  # type: ignore[index]
                    unknown=int(whole[unit] - column.to[0, unit]),  # type: ignore[index]
                )
                for unit, id in enumerate(units.ids)
            ]
    return tuple(found)


def triangle(grain: np.ndarray, chaff: np.ndarray, weed: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """
    Where shares of grain, chaff and weeds lie in a triangle with side 1: grain on top, chaff right, weeds left.

        x = b + a/2;   y = a √3/2;   a, b, c the shares of grain, chaff and weeds

    grain, chaff, weed:  amounts of any size; they are made to add up to 1. NaN where all are 0.
    Misleads:  samples in the middle are mixtures, not a stage; closed sums make any three things look related.
    Source:    geometry; the criticism of such diagrams: van der Veen & Jones 2006, VHA 15:217–228.

    >>> x, y = triangle(np.array([1.0, 0, 0, 1]), np.array([0.0, 1, 0, 1]), np.array([0.0, 0, 1, 1]))
    >>> x.round(4).tolist(), y.round(4).tolist()
    ([0.5, 1.0, 0.0, 0.5], [0.866, 0.0, 0.0, 0.2887])
    """
    grain, chaff, weed = (np.asarray(part, float) for part in (grain, chaff, weed))
    total = grain + chaff + weed
    with np.errstate(invalid="ignore", divide="ignore"):
        a, b = grain / np.where(total > 0, total, np.nan), chaff / np.where(total > 0, total, np.nan)
    return b + a / 2, a * np.sqrt(3) / 2


def triangle_points(
    units: Units, grain: Selector = GRAIN, chaff: Selector = CHAFF, weed: Selector = WEEDS, least: int = 30
) -> tuple[TrianglePoint, ...]:
    """
    Every unit with enough grain, chaff and weed seeds, as a point of the triangle.

    chaff:   by what each piece stands for: a spikelet fork is two glume bases.
    least:   pieces and seeds that a unit needs (a default).
    Source:  the diagram of M. Jones 1985, in Barker & Gamble (eds), Beyond Domestication, as van der Veen & Jones 2006
             describe it.
    """
    parts = [units.counted(grain)[0], units.weighted(chaff)[0], units.counted(weed)[0]]
    raw = parts[0] + units.counted(chaff)[0] + parts[2]
    x, y = triangle(*parts)
    total = sum(parts)
    return tuple(
        TrianglePoint(
            subject=Subject(level=units.level, id=id),
            grain=float(parts[0][i] / total[i]),
            chaff=float(parts[1][i] / total[i]),
            weed=float(parts[2][i] / total[i]),
            x=float(x[i]),
            y=float(y[i]),
            n=int(raw[i]),
        )
        for i, id in enumerate(units.ids)
        if raw[i] >= least
    )


def _sorted_as(of: Selector, attribute: str, value: str) -> Selector:
    return replace(of, **{attribute: (value,)})  # type: ignore[arg-type]


def _any_of(units: Units, selectors: Sequence[Selector]) -> np.ndarray:
    """Rows that any of the selectors means, sorted by unit."""
    rows = np.unique(np.concatenate([units.rows(s) for s in selectors]))
    return rows[np.argsort(units.unit_of(rows), kind="stable")] if rows.size else rows


def _share_among(units: Units, of: Selector, known: np.ndarray) -> Column:
    """The share of a selection among rows, as the measure `share` gives it among a selector."""
    k, n = units.counted(of), units.sum_of(units.table.counted[:, known], known)
    low, high = wilson(k, n)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = k / np.where(n > 0, n, np.nan)
    return Column(
        value=value, low=low, high=high, of=k, to=n, n=n, has_interval=True, reason="no seed whose sort is known"
    )
