"""Grain, chaff and weed seeds of each context as a point in a triangle."""

from __future__ import annotations

from narrate.charts.frame import WIDTH, chart
from narrate.charts.lettering import width_of
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.names import capitalised, clean, percent, several, subject_name
from narrate.charts.phasing import legend, phase_mark, phase_name, phase_of
from narrate.model.fields import TrianglePoint
from narrate.model.figures import Chart
from narrate.model.project import Project

_SIDE, _TOP = 360.0, 26.0
_HIGH = _SIDE * 3**0.5 / 2
_CORNERS = ("grain", "chaff or cob", "weed seeds")


def draw(points: tuple[TrianglePoint, ...], project: Project, chart_id: str) -> Chart | None:
    """One point a context with enough of the three; None where there is none."""
    if not points:
        return None
    shapes, height = _picture(points, project)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(points),
        alt=_alt(points),
        note=(
            f"n = {several(len(points), 'context')} with at least {min(p.n for p in points)} pieces of "
            "grain, chaff or cob, "
            "and seeds of field weeds. A point near a corner is nearly all of that; shape and colour tell the phase. "
            "Shares after the diagram of M. Jones 1985; burning loses chaff before grain."
        ),
        columns=("Context", "Grain (%)", "Chaff or cob (%)", "Weed seeds (%)", "Pieces and seeds (n)"),
        rows=tuple(
            (clean(p.subject.id), f"{p.grain * 100:.0f}", f"{p.chaff * 100:.0f}", f"{p.weed * 100:.0f}", f"{p.n}")
            for p in points
        ),
    )


def _at(point: TrianglePoint) -> tuple[float, float]:
    left = (WIDTH - _SIDE) / 2
    return left + _SIDE * (point.chaff + point.grain / 2), _TOP + _HIGH * (1 - point.grain)


def _picture(points: tuple[TrianglePoint, ...], project: Project) -> tuple[list[Shape], float]:
    left, bottom = (WIDTH - _SIDE) / 2, _TOP + _HIGH
    top, right = (WIDTH / 2, _TOP), (left + _SIDE, bottom)
    drawn: list[Shape] = []
    for share in (0.25, 0.5, 0.75):
        y = bottom - _HIGH * share
        inset = _SIDE / 2 * share
        drawn.append(Stroke(points=((left + inset, y), (left + _SIDE - inset, y)), ink="faint"))
        at = left + _SIDE * share
        drawn.append(
            Stroke(points=((at, bottom), (at + (_SIDE - _SIDE * share) / 2, bottom - _HIGH * (1 - share))), ink="faint")
        )
        drawn.append(Stroke(points=((at, bottom), (at - _SIDE * share / 2, bottom - _HIGH * share)), ink="faint"))
    drawn.append(Stroke(points=((left, bottom), top, right, (left, bottom)), width=1.2))
    drawn += [
        Words(x=top[0], y=_TOP - 9, text=_CORNERS[0], anchor="center", is_bold=True),
        Words(x=right[0], y=bottom + 24, text=_CORNERS[1], anchor="center", is_bold=True),
        Words(x=left, y=bottom + 24, text=_CORNERS[2], anchor="center", is_bold=True),
    ]
    phases = {context.id: phase_of(project, context) for context in project.contexts}
    taken: list[tuple[float, float, float]] = []
    for point in points:
        x, y = _at(point)
        ink, shape = phase_mark(project, phases.get(point.subject.id))  # type: ignore[call-overload]
        drawn.append(Mark(x=x, y=y, ink=ink, shape=shape, size=5.5))
        text = clean(point.subject.id)
        wide = width_of(text, 11)
        # A name that would lie on another is left to the table.
        if all(abs(y - other_y) > 11 or x + 9 > far or x + 9 + wide < near for near, far, other_y in taken):
            drawn.append(Words(x=x + 9, y=y + 4, text=text, size=11, ink="soft"))
            taken.append((x + 9, x + 9 + wide, y))
    present = dict.fromkeys(phases.get(point.subject.id) for point in points)  # type: ignore[call-overload]
    named = [(*phase_mark(project, id), phase_name(project, id)) for id in present]
    words, height = legend(named, WIDTH, bottom + 40)
    return [*drawn, *words], height + 4


def _title(points: tuple[TrianglePoint, ...]) -> str:
    most = [sum(max((p.grain, 0), (p.chaff, 1), (p.weed, 2))[1] == corner for p in points) for corner in range(3)]
    corner = most.index(max(most))
    if len(points) == 1:
        return f"{capitalised(subject_name(points[0].subject))} holds more {_CORNERS[corner]} than the other two"
    return f"{most[corner]} of {len(points)} contexts hold more {_CORNERS[corner]} than either of the other two"


def _alt(points: tuple[TrianglePoint, ...]) -> str:
    rows = "; ".join(
        f"{clean(p.subject.id)} grain {percent(p.grain)}, chaff or cob {percent(p.chaff)}, weeds {percent(p.weed)}"
        for p in points[:5]
    )
    rest = f"; and {len(points) - 5} more" if len(points) > 5 else ""
    return f"A triangle with grain at the top, chaff or cob at the right and weed seeds at the left: {rows}{rest}."
