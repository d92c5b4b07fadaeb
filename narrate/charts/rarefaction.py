"""How many kinds of plants to expect among fewer items: whether more counting would still bring more kinds."""

from __future__ import annotations

from narrate.charts.frame import WIDTH, chart
from narrate.charts.inks import series
from narrate.charts.lettering import width_of
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.names import capitalised, several
from narrate.charts.phasing import phase_name
from narrate.charts.scales import LinearScale
from narrate.model.figures import Chart
from narrate.model.ids import PhaseId
from narrate.model.project import Project
from narrate.model.studies import RarefactionCurve

_TOP, _HEIGHT, _LEFT = 14.0, 240.0, 44.0


def draw(
    curves: tuple[RarefactionCurve, ...], project: Project, chart_id: str, *, is_plain: bool = False
) -> Chart | None:
    """One curve a phase, with a mark at its end; None where nothing was counted. `is_plain`: told to visitors."""
    if not curves:
        return None
    kinds = "kinds of plant" if is_plain else "taxa"
    shapes, height = _picture(curves, project, kinds)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(curves, project),
        alt=_alt(curves, project, kinds),
        note=(
            f"n = {sum(c.items for c in curves):,} items other than wood. A curve is the number of {kinds} to expect "
            f"among so many items drawn at random{'' if is_plain else ' (rarefaction)'}; where it has gone flat, more "
            "of the same would add little. Items of one sample lie in clusters, so true spread is wider."
        ),
        columns=("Phase", "Items drawn", "Kinds of plant to expect" if is_plain else "Taxa to expect"),
        rows=tuple((_named(c, project), f"{n}", f"{taxa:.1f}") for c in curves for n, taxa in c.points),
    )


def _named(curve: RarefactionCurve, project: Project) -> str:
    if curve.subject.level == "site":
        return "the whole dig"
    return phase_name(project, PhaseId(curve.subject.id))


def _picture(curves: tuple[RarefactionCurve, ...], project: Project, kinds: str) -> tuple[list[Shape], float]:
    names = [_named(curve, project) for curve in curves]
    end = WIDTH - min(max(width_of(name, 12) for name in names) + 24, 190)
    across = LinearScale(top=max(max(c.items for c in curves), 10), start=_LEFT, end=end)
    up = LinearScale(top=max(max(c.taxa for c in curves), 5), start=_TOP + _HEIGHT, end=_TOP)
    drawn: list[Shape] = []
    for tick in up.ticks():
        drawn.append(Stroke(points=((_LEFT, up.at(tick)), (end, up.at(tick))), ink="faint"))
        drawn.append(Words(x=_LEFT - 8, y=up.at(tick) + 4, text=f"{tick:g}", ink="soft", size=12, anchor="right"))
    for tick in across.ticks():
        drawn.append(
            Words(x=across.at(tick), y=_TOP + _HEIGHT + 18, text=f"{tick:,g}", ink="soft", size=12, anchor="center")
        )
    drawn.append(Stroke(points=((_LEFT, _TOP + _HEIGHT), (end, _TOP + _HEIGHT)), width=1.2))
    drawn.append(
        Words(x=(_LEFT + end) / 2, y=_TOP + _HEIGHT + 36, text="items drawn", ink="soft", size=12, anchor="center")
    )
    drawn.append(Words(x=14, y=_TOP + _HEIGHT / 2, text=kinds, ink="soft", size=12, anchor="center", angle=90))
    taken: list[float] = []
    for number, (curve, name) in enumerate(zip(curves, names, strict=True)):
        ink, shape = series(number)
        points = tuple((across.at(n), up.at(taxa)) for n, taxa in curve.points)
        if len(points) > 1:
            drawn.append(Stroke(points=points, ink=ink, width=2.0, dash=() if number % 2 == 0 else (6.0, 3.0)))
        x, y = points[-1]
        drawn.append(Mark(x=x, y=y, ink=ink, shape=shape, size=5.5))
        at = y + 4
        while any(abs(at - other) < 14 for other in taken):
            at += 14
        taken.append(at)
        drawn.append(Words(x=x + 11, y=at, text=name, size=12))
    return drawn, _TOP + _HEIGHT + 44


def _still_rising(curve: RarefactionCurve) -> float:
    """Taxa that the last tenth of the items added."""
    nine_tenths = curve.items * 0.9
    before = max((point for point in curve.points if point[0] <= nine_tenths), default=curve.points[0])
    after = curve.points[-1]
    if after[0] == before[0]:
        return 0.0
    return (after[1] - before[1]) / (after[0] - before[0]) * curve.items * 0.1


def _title(curves: tuple[RarefactionCurve, ...], project: Project) -> str:
    rising = [curve for curve in curves if _still_rising(curve) >= 1]
    if not rising:
        return "The last tenth of the items added less than one kind of plant: more counting would add little"
    names = " and ".join(_named(curve, project) for curve in rising[:2])
    more = f" and {len(rising) - 2} more" if len(rising) > 2 else ""
    return f"{capitalised(names)}{more}: the count of kinds was still rising when counting stopped"


def _alt(curves: tuple[RarefactionCurve, ...], project: Project, kinds: str) -> str:
    one = "taxon" if kinds == "taxa" else "kind of plant"
    rows = "; ".join(f"{_named(c, project)} {several(c.taxa, one, kinds)} among {c.items:,} items" for c in curves[:6])
    return f"Curves of {kinds} to expect against items drawn, ending at: {rows}."
