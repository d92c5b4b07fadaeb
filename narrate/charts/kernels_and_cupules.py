"""Maize kernels against cupules by context, with the line on which whole ears would lie."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from narrate.charts.frame import WIDTH, chart
from narrate.charts.lettering import shortened, width_of
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.names import as_recorded, capitalised, clean, in_words, listed, several, three_figures
from narrate.charts.phasing import legend, phase_mark, phase_name, phase_of, phase_order
from narrate.charts.scales import LogScale, log_scale
from narrate.model.figures import Chart
from narrate.model.findings import Findings
from narrate.model.ids import PhaseId, Subject
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs
from narrate.model.project import Project

WHOLE_EAR = 2.0
"""Kernels to a cupule: spikelets of maize are paired, two to a cupule. Geometry of the ear; from memory."""

_LEFT, _LANE, _SIDE = 70.0, 46.0, 452.0

_Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Point:
    context: str
    phase: PhaseId | None
    kernels: float
    cupules: float
    ratio: Measurement | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Called:
    """What readers call the plant and the two parts."""

    crop: str = "maize"
    cupule: str = "cupule"
    cupules: str = "cupules"
    columns: tuple[str, str] = ("Cupules (items)", "Kernels per cupule")


_PLAINLY = _Called(
    crop="corn",
    cupule="bit of cob",
    cupules="bits of cob",
    columns=("Bits of cob (items)", "Kernels per bit of cob"),
)


def draw(findings: Findings, project: Project, packs: Packs, chart_id: str, *, is_plain: bool = False) -> Chart | None:
    """One point a context that holds kernels or cupules; None where none does. `is_plain`: told to visitors."""
    called = _PLAINLY if is_plain else _Called()
    points = _points(findings, project)
    if not points:
        return None
    shapes, height = _picture(points, project, called)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(points, called),
        alt=_alt(points, project, called),
        note=_note(points, called),
        columns=(
            "Context", "Phase", "Kernels (items)", *called.columns,
            "95% interval, from", "95% interval, to",
        ),
        rows=tuple(_row(point, project) for point in points),
    )  # fmt: skip


def _points(findings: Findings, project: Project) -> list[_Point]:
    points = []
    for context in project.contexts:
        found = findings.subjects.get(Subject(level="context", id=context.id))
        measured = found.measurements if found is not None else {}
        amounts = [measured[name].value for name in ("kernels", "cupules") if name in measured]
        if len(amounts) == 2 and None not in amounts and any(amounts):
            kernels, cupules = (float(amount or 0) for amount in amounts)
            phase, ratio = phase_of(project, context), measured.get("kernels_per_cupule")
            points.append(_Point(context=clean(context.id), phase=phase, kernels=kernels, cupules=cupules, ratio=ratio))
    return points


def _picture(points: list[_Point], project: Project, called: _Called) -> tuple[list[Shape], float]:
    phases = [phase for phase in phase_order(project) if any(point.phase == phase for point in points)]
    entries = [(*phase_mark(project, phase), shortened(phase_name(project, phase), 12, WIDTH - 40)) for phase in phases]
    drawn, top = legend(entries, WIDTH, 2) if phases != [None] else ([], 4.0)
    x, y = _scales(points, top + 20)
    across, up = _lane(x, x.start - _LANE / 2), _lane(y, y.start + _LANE / 2)
    bottom = y.start + _LANE
    drawn += _axes(x, y, bottom, called)
    line, line_boxes = _whole_ears(x, y, called)
    drawn += line
    placed = _placed(points, across, up)
    taken = [(px - 6, py - 6, px + 6, py + 6) for px, py, _ in placed]
    lanes = [(x.start - 1, y.end, x.start + 1, bottom), (x.start - _LANE, y.start - 1, x.end, y.start + 1)]
    frame = (x.start - _LANE, y.end - 8, WIDTH, bottom)
    drawn += [_mark(point, px, py, project) for px, py, point in placed]
    return [*drawn, *_labels(placed, taken, [lanes, line_boxes], frame)], bottom + 42


def _scales(points: list[_Point], top: float) -> tuple[LogScale, LogScale]:
    """Scales of equal steps, so that a line of one ratio rises at 45 degrees."""
    amounts = [amount for point in points for amount in (point.kernels, point.cupules) if amount > 0]
    both = log_scale([*amounts, 1.0, 20.0], 0, 1)
    left, low = _LEFT + _LANE, both.low * 0.7
    return (
        LogScale(low=low, high=both.high, start=left, end=left + _SIDE),
        LogScale(low=low, high=both.high, start=top + _SIDE, end=top),
    )


def _lane(scale: LogScale, none: float) -> Callable[[float], float]:
    """Place of an amount; none at all has a lane of its own, because a log scale has no zero."""
    return lambda amount: scale.at(amount) if amount > 0 else none


def _axes(x: LogScale, y: LogScale, bottom: float, called: _Called) -> list[Shape]:
    left = x.start - _LANE
    drawn: list[Shape] = []
    for tick in x.ticks():
        across, up = x.at(tick), y.at(tick)
        drawn.append(Stroke(points=((across, y.end), (across, bottom)), ink="faint"))
        drawn.append(Stroke(points=((left, up), (x.end, up)), ink="faint"))
        text = three_figures(tick)
        drawn.append(Words(x=across, y=bottom + 16, text=text, ink="soft", size=12, anchor="center"))
        drawn.append(Words(x=left - 8, y=up + 4, text=text, ink="soft", size=12, anchor="right"))
    drawn += [
        Stroke(points=((x.start, y.end), (x.start, bottom)), ink="soft", dash=(2.0, 3.0)),
        Stroke(points=((left, y.start), (x.end, y.start)), ink="soft", dash=(2.0, 3.0)),
        Stroke(points=((left, y.end), (left, bottom), (x.end, bottom)), width=1.2),
        Words(x=x.start - _LANE / 2, y=bottom + 16, text="none", ink="soft", size=12, anchor="center"),
        Words(x=left - 8, y=y.start + _LANE / 2 + 4, text="none", ink="soft", size=12, anchor="right"),
        _axis_words((left + x.end) / 2, bottom + 35, f"{called.cupules} counted, log scale", 0.0),
        _axis_words(14, (y.end + bottom) / 2, "kernels counted, log scale", 90.0),
    ]
    return drawn


def _axis_words(x: float, y: float, text: str, angle: float) -> Words:
    return Words(x=x, y=y, text=text, ink="soft", size=12, anchor="center", angle=angle)


def _whole_ears(x: LogScale, y: LogScale, called: _Called) -> tuple[list[Shape], list[_Box]]:
    """The line of two kernels to a cupule with its words above the plot, and the places that the line takes."""
    first, last = max(x.low, y.low / WHOLE_EAR), min(x.high, y.high / WHOLE_EAR)
    ends = ((x.at(first), y.at(first * WHOLE_EAR)), (x.at(last), y.at(last * WHOLE_EAR)))
    text = f"whole ears: 2 kernels to a {called.cupule}"
    words = Words(x=x.end, y=y.end - 7, text=text, size=12, anchor="right")
    steps = [step / 60 for step in range(61)]
    (x0, y0), (x1, y1) = ends
    middles = [(x0 + (x1 - x0) * step, y0 + (y1 - y0) * step) for step in steps]
    boxes = [(px - 3, py - 3, px + 3, py + 3) for px, py in middles]
    return [Stroke(points=ends, ink="ink", width=1.4, dash=(6.0, 4.0)), words], boxes


def _placed(
    points: list[_Point], across: Callable[[float], float], up: Callable[[float], float]
) -> list[tuple[float, float, _Point]]:
    """Places of the points; those of different phases that fall together step aside."""
    placed: list[tuple[float, float, _Point]] = []
    seen: dict[tuple[float, float], list[PhaseId | None]] = {}
    for point in points:
        phases = seen.setdefault((point.cupules, point.kernels), [])
        if point.phase not in phases:
            phases.append(point.phase)
        step = phases.index(point.phase)
        placed.append((across(point.cupules) + 7 * step, up(point.kernels), point))
    return placed


def _mark(point: _Point, x: float, y: float, project: Project) -> Mark:
    ink, shape = phase_mark(project, point.phase)
    return Mark(x=x, y=y, shape=shape, ink=ink)


def _labels(
    placed: list[tuple[float, float, _Point]], taken: list[_Box], lines: list[list[_Box]], frame: _Box
) -> list[Shape]:
    """
    Ids beside their points, where there is room; points on the same place share one label.

    A label crosses the edge of a lane, or the line of whole ears, only where it finds no other room.
    """
    together: dict[tuple[float, float], list[str]] = {}
    for x, y, point in placed:
        together.setdefault((x, y), []).append(point.context)
    drawn: list[Shape] = []
    boxes = list(taken)
    for (x, y), names in together.items():
        text = shortened(_one_label(names), 12, 170)
        spots = _spots(x, y, width_of(text, 12))
        free = [spot for spot in spots if _is_free(spot[2], boxes, frame)]
        # Fewest lines crossed, the whole ears counting most; among equals the first place.
        spot = min(
            free, key=lambda spot: [not _is_free(spot[2], line, frame) for line in reversed(lines)], default=None
        )
        if spot is not None:
            drawn.append(Words(x=spot[0], y=spot[1], text=text, size=12))
            boxes.append(spot[2])
    return drawn


def _one_label(names: list[str]) -> str:
    every = listed(names)
    is_short = len(names) == 1 or (len(names) < 4 and width_of(every, 12) <= 130)
    return every if is_short else f"{names[0]} +{len(names) - 1}"


def _spots(x: float, y: float, width: float) -> list[tuple[float, float, _Box]]:
    corners = (
        (x + 9, y + 4), (x - 9 - width, y + 4), (x - width / 2, y - 10), (x - width / 2, y + 19),
        (x + 7, y - 7), (x + 7, y + 16), (x - 7 - width, y - 7), (x - 7 - width, y + 16),
    )  # fmt: skip
    return [(left, base, (left, base - 10, left + width, base + 3)) for left, base in corners]


def _is_free(box: _Box, taken: list[_Box], frame: _Box) -> bool:
    inside = box[0] >= frame[0] and box[1] >= frame[1] and box[2] <= frame[2] and box[3] <= frame[3]
    return inside and not any(
        box[0] < other[2] and other[0] < box[2] and box[1] < other[3] and other[1] < box[3] for other in taken
    )


def _title(points: list[_Point], called: _Called) -> str:
    below = sum(_is_below(point) for point in points)
    above = sum(_is_above(point) for point in points)
    contexts = several(len(points), f"context with {called.crop}", f"contexts with {called.crop}")
    if not any(point.ratio is not None and (point.ratio.value is not None or point.ratio.reason) for point in points):
        return f"Kernels against {called.cupules} in {contexts}"
    if below and below >= above:
        more = f"; in {in_words(above)}, clearly more" if above else ""
        return f"In {in_words(below)} of {contexts}, clearly fewer kernels lay than whole ears hold{more}"
    if above:
        more = f"; in {in_words(below)}, clearly fewer" if below else ""
        return f"In {in_words(above)} of {contexts}, clearly more kernels lay than whole ears hold{more}"
    return f"{capitalised(contexts)}: in none do kernels and {called.cupules} clearly depart from whole ears"


def _is_below(point: _Point) -> bool:
    return point.ratio is not None and point.ratio.high is not None and point.ratio.high < WHOLE_EAR


def _is_above(point: _Point) -> bool:
    return point.ratio is not None and point.ratio.low is not None and point.ratio.low > WHOLE_EAR


def _alt(points: list[_Point], project: Project, called: _Called) -> str:
    most = max(points, key=lambda point: point.cupules)
    under = sum(point.kernels < WHOLE_EAR * point.cupules for point in points)
    over = sum(point.kernels > WHOLE_EAR * point.cupules for point in points)
    return (
        f"Kernels against {called.cupules} for {several(len(points), 'context')} on log scales, with a line where "
        f"whole ears would lie: {under} below it, {over} above it. {most.context} has the most {called.cupules} "
        f"({as_recorded(most.cupules)}, with {several(int(most.kernels), 'kernel')})."
    )


def _note(points: list[_Point], called: _Called) -> str:
    items = sum(point.kernels + point.cupules for point in points)
    return (
        f"n = {several(len(points), 'context')}, {items:,.0f} items as counted. Below the line lie deposits "
        f"with more cob than whole ears would leave, above it more kernel. 'Clearly': the 95% interval of kernels per "
        f"{called.cupule} excludes 2. Kernels break at high heat sooner than {called.cupules}, which lowers points "
        f"without any human choice. Two to a {called.cupule} is the geometry of the ear, a default to check."
    )


def _row(point: _Point, project: Project) -> tuple[str, ...]:
    ratio = point.ratio
    value = "" if ratio is None else ratio.reason if ratio.value is None else three_figures(ratio.value)
    low = "" if ratio is None or ratio.low is None else three_figures(ratio.low)
    high = "" if ratio is None or ratio.high is None else three_figures(ratio.high)
    if ratio is not None and ratio.is_open_above:
        high = "no upper end"
    return (
        point.context, phase_name(project, point.phase), as_recorded(point.kernels), as_recorded(point.cupules),
        clean(value), low, high,
    )  # fmt: skip
