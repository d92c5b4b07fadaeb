"""How much plant material each context held per litre, with its 95% interval."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import median

from narrate.charts.frame import WIDTH, chart
from narrate.charts.lettering import shortened, width_of, wrapped
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.names import as_recorded, capitalised, clean, listed, several, three_figures
from narrate.charts.phasing import phase_mark, phase_name, phase_of, phase_order
from narrate.charts.scales import LogScale, log_scale
from narrate.model.figures import Chart
from narrate.model.findings import Findings, SubjectFindings
from narrate.model.ids import PhaseId, Subject
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.stratigraphy import Context

MOST_ROWS = 40
_ROOM, _LINE, _NONE_LANE = 200.0, 15.0, 48.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Deposit:
    context: Context
    phase: PhaseId | None
    density: Measurement
    found: SubjectFindings

    @property
    def value(self) -> float:
        return self.density.value or 0.0


def draw(findings: Findings, project: Project, packs: Packs, chart_id: str) -> Chart | None:
    """One row a context, by phase, densest first; None where no context has a density."""
    every = _in_order(_deposits(findings, project), project)
    measured = [each for each in every if each.density.value is not None]
    if not measured:
        return None
    shown = _densest(measured)
    shapes, height = _picture(shown, len(measured) - len(shown), project)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(measured),
        alt=_alt(measured),
        note=_note(every, measured),
        columns=(
            "Context", "Kind", "Phase", "Items per litre", "95% interval, from (items per litre)",
            "95% interval, to (items per litre)", "Items counted", "Sediment (litres)", "Why there is no value",
        ),
        rows=tuple(_row(each, project) for each in every),
    )  # fmt: skip


def _deposits(findings: Findings, project: Project) -> list[_Deposit]:
    deposits = []
    for context in project.contexts:
        found = findings.subjects.get(Subject(level="context", id=context.id))
        if found is not None and "density" in found.measurements:
            phase, density = phase_of(project, context), found.measurements["density"]
            deposits.append(_Deposit(context=context, phase=phase, density=density, found=found))
    return deposits


def _in_order(deposits: list[_Deposit], project: Project) -> list[_Deposit]:
    place = {phase: number for number, phase in enumerate(phase_order(project))}
    return sorted(deposits, key=lambda each: (place[each.phase], each.density.value is None, -each.value))


def _densest(measured: list[_Deposit]) -> list[_Deposit]:
    kept = sorted(measured, key=lambda each: -each.value)[:MOST_ROWS]
    chosen = {each.context.id for each in kept}
    return [each for each in measured if each.context.id in chosen]


def _picture(shown: list[_Deposit], left_out: int, project: Project) -> tuple[list[Shape], float]:
    labels = [wrapped(_label(each.context, project), 13, _ROOM, 2) for each in shown]
    values = [_with_interval(each.density) for each in shown]
    start = max(width_of(line, 13) for lines in labels for line in lines) + 14
    end = WIDTH - max(width_of(value, 12) for value in values) - 14
    has_none = any(each.value <= 0 for each in shown)
    scale = _scale(shown, start + (_NONE_LANE if has_none else 0), end)
    rows: list[Shape] = []
    y, top, lines_at = 4.0, 4.0, 0
    has_phases = {each.phase for each in shown} != {None}
    for number, (each, label, value) in enumerate(zip(shown, labels, values, strict=True)):
        if has_phases and (number == 0 or shown[number - 1].phase != each.phase):
            rows[lines_at:lines_at] = _grid(scale, start, top, y)
            heading = shortened(phase_name(project, each.phase), 13, WIDTH * 0.85)
            rows.append(Words(x=0, y=y + 16, text=heading, is_bold=True))
            y += 25
            top, lines_at = y, len(rows)
        height = max(23.0, _LINE * len(label) + 7)
        rows += _row_drawn(each, label, value, y + height / 2, scale, start, phase_mark(project, each.phase))
        y += height
    y += 4
    rows[lines_at:lines_at] = _grid(scale, start, top, y)
    axis = _axis(scale, start, end, y, has_none)
    if left_out:
        rows.append(Words(x=0, y=y + 52, text=f"and {left_out} less dense, all in the table", ink="soft"))
    return [*axis, *rows], y + (60 if left_out else 40)


def _label(context: Context, project: Project) -> str:
    """A picture may be taken out of its page, so that what is restricted bears its mark within it."""
    mark = " [restricted]" if context.id in project.disclosure.restricted_contexts else ""
    return f"{clean(context.id)}{mark} {clean(context.kind)}"


def _scale(shown: list[_Deposit], start: float, end: float) -> LogScale:
    ends = [end for each in shown for end in (each.value, each.density.low, each.density.high) if end]
    return log_scale([end for end in ends if end > 0] or [1.0], start, end)


def _row_drawn(
    each: _Deposit, label: tuple[str, ...], value: str, y: float, scale: LogScale, start: float, mark: tuple[str, str]
) -> list[Shape]:
    ink, shape = mark
    first = y + 4.5 - _LINE * (len(label) - 1) / 2
    drawn: list[Shape] = [
        Words(x=start - 14, y=first + _LINE * n, text=line, anchor="right") for n, line in enumerate(label)
    ]
    x = scale.at(each.value) if each.value > 0 else start + _NONE_LANE / 3
    low, high = each.density.low, each.density.high
    if low is not None and (high is not None or each.density.is_open_above):
        left = scale.at(low) if low > 0 else min(x, scale.start)
        right = scale.at(high) if high is not None and high > 0 else scale.end if high is None else x
        drawn.append(Stroke(points=((left, y), (right, y)), ink=ink, width=1.8))
        for tip, is_drawn in ((left, low > 0), (right, high is not None)):
            if is_drawn:
                drawn.append(Stroke(points=((tip, y - 3.5), (tip, y + 3.5)), ink=ink, width=1.8))
    drawn.append(Mark(x=x, y=y, shape=shape, ink=ink, is_open=each.value <= 0))
    return [*drawn, Words(x=WIDTH, y=y + 4.5, text=value, ink="soft", size=12, anchor="right")]


def _with_interval(density: Measurement) -> str:
    value = three_figures(density.value or 0.0)
    if density.low is None or (density.high is None and not density.is_open_above):
        return value
    upper = "∞" if density.high is None else three_figures(density.high)
    return f"{value} ({three_figures(density.low)}–{upper})"


def _grid(scale: LogScale, start: float, top: float, bottom: float) -> list[Shape]:
    """Lines behind the rows of one phase, so that none runs through a heading."""
    if bottom - top < 1:
        return []
    ticks = [Stroke(points=((scale.at(t), top), (scale.at(t), bottom)), ink="faint") for t in scale.ticks()]
    return [*ticks, Stroke(points=((start, top), (start, bottom)), width=1.2)]


def _axis(scale: LogScale, start: float, end: float, y: float, has_none: bool) -> list[Shape]:
    drawn: list[Shape] = []
    if has_none:
        drawn.append(Words(x=start + _NONE_LANE / 3, y=y + 15, text="none", ink="soft", size=12, anchor="center"))
    for tick in scale.ticks():
        x = scale.at(tick)
        drawn.append(Words(x=x, y=y + 15, text=three_figures(tick), ink="soft", size=12, anchor="center"))
    middle = (start + end) / 2
    text = "items per litre, log scale"
    return [*drawn, Words(x=middle, y=y + 33, text=text, ink="soft", size=12, anchor="center")]


def _title(measured: list[_Deposit]) -> str:
    ranked = sorted(measured, key=lambda each: -each.value)
    top = ranked[0]
    amount = f"{three_figures(top.value)} items per litre"
    if top.value <= 0:
        return "No context held any counted remains"
    if len(ranked) == 1:
        return f"Context {clean(top.context.id)} held {amount}"
    floor = top.density.low if top.density.low is not None else top.value
    level = [each for each in ranked if (each.density.high if each.density.high is not None else each.value) >= floor]
    if len(level) == 1:
        times = _times_median(top, ranked)
        return f"Context {clean(top.context.id)} held the most per litre: {amount}{times}"
    if len(level) <= 3:
        names = listed(clean(each.context.id) for each in level)
        return f"Contexts {names} held the most per litre, up to {three_figures(top.value)} items"
    return f"No one context stands out by density: {len(level)} of {len(ranked)} may be as dense as the densest"


def _times_median(top: _Deposit, ranked: list[_Deposit]) -> str:
    middle = median(each.value for each in ranked)
    if len(ranked) < 4 or middle <= 0 or top.value < 2 * middle:
        return ""
    return f", {top.value / middle:.0f} times the median of {len(ranked)} contexts"


def _alt(measured: list[_Deposit]) -> str:
    ranked = sorted(measured, key=lambda each: -each.value)
    ends = (
        f"{capitalised(_spoken(ranked[0]))} is the densest, {_spoken(ranked[-1])} the least dense."
        if len(ranked) > 1
        else f"It is {_spoken(ranked[0])}."
    )
    return f"Items per litre with intervals on a log scale, by phase, for {several(len(ranked), 'context')}. {ends}"


def _spoken(each: _Deposit) -> str:
    return f"{clean(each.context.id)} ({clean(each.context.kind)}, {three_figures(each.value)} items per litre)"


def _note(every: list[_Deposit], measured: list[_Deposit]) -> str:
    samples = sum(each.found.samples for each in measured)
    missing = len(every) - len(measured)
    without = f" {several(missing, 'context has', 'contexts have')} no value; the table says why." if missing else ""
    return (
        f"n = {several(len(measured), 'context')}, {several(samples, 'sample')}. Points: items per litre floated, "
        f"scaled up for the unsorted share. Whiskers: 95% interval from the raw count alone; they do not tell how far "
        f"samples of one context differ.{without}"
    )


def _row(each: _Deposit, project: Project) -> tuple[str, ...]:
    density, found = each.density, each.found
    items = found.measurements.get("items")
    counted = as_recorded(items.value) if items is not None else str(density.n) if density.n is not None else ""
    upper = "no upper end" if density.is_open_above else _figure(density.high)
    return (
        clean(each.context.id), clean(each.context.kind), phase_name(project, each.phase), _figure(density.value),
        _figure(density.low), upper, counted, as_recorded(found.litres), clean(density.reason),
    )  # fmt: skip


def _figure(value: float | None) -> str:
    return "" if value is None else three_figures(value)
