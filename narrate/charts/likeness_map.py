"""Samples and plants on the first two axes of a correspondence analysis: what lies together was found together."""

from __future__ import annotations

from narrate.charts.frame import WIDTH, chart
from narrate.charts.lettering import shortened, width_of
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.names import clean, percent, several
from narrate.charts.phasing import legend, phase_mark, phase_name, phase_of
from narrate.model.figures import Chart
from narrate.model.ids import PhaseId
from narrate.model.order import Ordination, PointsOfAxis
from narrate.model.project import Project

MOST_NAMED = 14
"""Plants that are named in the picture, those that make most of the two axes; all are in the table."""
_HIGH, _EDGE = 400.0, 16.0


def draw(found: Ordination | None, project: Project, chart_id: str, *, is_plain: bool = False) -> Chart | None:
    """
    Samples as marks of their phase, plants as open rings with names; None where there are no two axes.

    is_plain:  told to visitors.
    """
    if found is None or found.rows is None or found.columns is None or len(found.inertias) < 2:
        return None
    shapes, height = _picture(found.rows, found.columns, project)
    shares = tuple(inertia / found.total_inertia for inertia in found.inertias[:2])
    aside = (
        f" Set aside: {several(len(found.samples_set_aside), 'sample')} with fewer than {found.least_items} items and "
    )
    aside += f"{several(len(found.plants_set_aside), 'plant part')} in too few samples."
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(found.columns, shares),
        alt=_alt(found, shares),
        note=(
            f"n = {several(len(found.rows.names), 'sample')}, {several(len(found.columns.names), 'plant part')}, "
            f"{found.items:,.0f} items. Axes show {percent(shares[0])} and {percent(shares[1])} of the "
            f"{'differences' if is_plain else 'inertia'}. Filled marks are samples, shaped by phase; rings are "
            f"plants.{aside} One odd sample can make an axis of its own."
        ),
        columns=("Kind", "Name", "Axis 1", "Axis 2", "Share of axis 1 (%)", "Share of axis 2 (%)"),
        rows=(*_rows("sample", found.rows), *_rows("plant part", found.columns)),
    )


def _pair(row: tuple[float | None, ...]) -> tuple[float, float]:
    return row[0] or 0.0, row[1] or 0.0


def _rows(kind: str, points: PointsOfAxis) -> tuple[tuple[str, ...], ...]:
    return tuple(
        (kind, clean(name), *(f"{v:.2f}" for v in _pair(at)), *(f"{v * 100:.1f}" for v in _pair(made)))
        for name, at, made in zip(points.names, points.coordinates, points.contributions, strict=True)
    )


def _weight(points: PointsOfAxis, index: int) -> float:
    return sum(_pair(points.contributions[index]))


def _picture(samples: PointsOfAxis, plants: PointsOfAxis, project: Project) -> tuple[list[Shape], float]:
    every = [_pair(row) for points in (samples, plants) for row in points.coordinates]
    low = [min(point[axis] for point in every) for axis in (0, 1)]
    span = [max(max(point[axis] for point in every) - low[axis], 1e-9) for axis in (0, 1)]
    # One scale for both axes, as distances between points are what is read.
    unit = min((WIDTH - 2 * _EDGE) / span[0], (_HIGH - 2 * _EDGE) / span[1])
    left, top = (WIDTH - span[0] * unit) / 2, (_HIGH - span[1] * unit) / 2

    def place(point: tuple[float, float]) -> tuple[float, float]:
        return left + (point[0] - low[0]) * unit, _HIGH - top - (point[1] - low[1]) * unit

    zero = place((0.0, 0.0))
    drawn: list[Shape] = [
        Stroke(points=((0, zero[1]), (WIDTH, zero[1])), ink="faint"),
        Stroke(points=((zero[0], 0), (zero[0], _HIGH)), ink="faint"),
        Words(x=WIDTH - 4, y=zero[1] - 5, text="axis 1", ink="soft", size=11, anchor="right"),
        Words(x=zero[0] + 5, y=12, text="axis 2", ink="soft", size=11),
    ]
    context_of = {sample.id: sample.context for sample in project.samples}
    phases = {context.id: phase_of(project, context) for context in project.contexts}
    present: dict[PhaseId | None, None] = {}
    for name, row in zip(samples.names, samples.coordinates, strict=True):
        x, y = place(_pair(row))
        phase = phases.get(context_of.get(name))  # type: ignore[call-overload, arg-type]
        present[phase] = None
        ink, shape = phase_mark(project, phase)
        drawn.append(Mark(x=x, y=y, ink=ink, shape=shape, size=4.5))
    drawn += _plants(plants, [place(_pair(row)) for row in plants.coordinates])
    named = [(*phase_mark(project, id), phase_name(project, id)) for id in present]
    words, height = legend(named, WIDTH, _HIGH + 12)
    return [*drawn, *words], height + 4


def _plants(plants: PointsOfAxis, places: list[tuple[float, float]]) -> list[Shape]:
    drawn: list[Shape] = [Mark(x=x, y=y, ink="leaf", is_open=True, size=3.5) for x, y in places]
    ranked = sorted(range(len(places)), key=lambda i: (-_weight(plants, i), plants.names[i]))
    taken: list[tuple[float, float, float]] = []
    for index in ranked[:MOST_NAMED]:
        x, y = places[index]
        text = shortened(clean(plants.names[index]), 11, 170)
        wide = width_of(text, 11)
        start = x + 7 if x + 7 + wide < WIDTH else x - 7 - wide
        for down in (4.0, -7.0, 15.0):
            if all(abs(y + down - other) > 11 or start > far or start + wide < near for near, far, other in taken):
                drawn.append(Words(x=start, y=y + down, text=text, size=11))
                taken.append((start, start + wide, y + down))
                break
    return drawn


def _ends(plants: PointsOfAxis) -> tuple[str, str]:
    heavy = [i for i in range(len(plants.names)) if (plants.contributions[i][0] or 0.0) >= 1 / len(plants.names)]
    ordered = sorted(heavy or range(len(plants.names)), key=lambda i: plants.coordinates[i][0] or 0.0)
    return clean(plants.names[ordered[0]]), clean(plants.names[ordered[-1]])


def _title(plants: PointsOfAxis, shares: tuple[float, ...]) -> str:
    first, last = _ends(plants)
    return f"Samples differ most between {first} and {last}: that axis shows {percent(shares[0])} of the differences"


def _alt(found: Ordination, shares: tuple[float, ...]) -> str:
    assert found.rows is not None and found.columns is not None
    first, last = _ends(found.columns)
    return (
        f"A map of {several(len(found.rows.names), 'sample')} and "
        f"{several(len(found.columns.names), 'plant part')} on two axes "
        f"that show {percent(sum(shares))} of the differences; axis 1 runs from {first} to {last}."
    )
