"""How often claims were right on simulated digs, against the support that they had."""

from __future__ import annotations

from narrate.charts.frame import WIDTH, chart
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.scales import LinearScale
from narrate.model.figures import Chart
from narrate.model.track_record import Line, TrackRecord

_TOP, _HEIGHT, _LEFT, _RIGHT = 14.0, 260.0, 56.0, 24.0
_LEAST = 0.5
"""Support below one half makes no claim, so the sheet begins there."""
FEW = 20


def draw(record: TrackRecord, chart_id: str) -> Chart | None:
    """A mark for each step of support with its 95% interval; None where no step holds twenty claims."""
    lines = tuple(line for line in record.of("support") if line.hits.claims >= FEW)
    if not lines:
        return None
    under = [line for line in lines if line.hits.high < _middle(line)]
    return chart(
        chart_id=chart_id,
        shapes=_picture(lines),
        height=_TOP + _HEIGHT + 46,
        title=_title(under),
        alt="Share of claims that were right, by support: "
        + "; ".join(f"{line.name} {100 * line.hits.rate:.0f}% of {line.hits.claims:,}" for line in lines)
        + ".",
        note=(
            f"n = {sum(line.hits.claims for line in lines):,} claims on simulated digs. Bars: exact 95% intervals. "
            "On the slanting line a claim is right as often as its support says. "
            f"Steps of fewer than {FEW} claims are left out."
        ),
        columns=("Support", "Claims", "Right", "Share", "95% interval"),
        rows=tuple(
            (
                line.name,
                f"{line.hits.claims:,}",
                f"{line.hits.right:,}",
                f"{100 * line.hits.rate:.1f}%",
                f"{100 * line.hits.low:.1f}–{100 * line.hits.high:.1f}%",
            )
            for line in lines
        ),
    )


def _middle(line: Line) -> float:
    low, high = (float(end) for end in line.name.split(" to "))
    return (low + high) / 2


def _title(under: list[Line]) -> str:
    if not under:
        return "At no step of support were claims clearly right less often than it says"
    steps = " and ".join(line.name for line in under[:3])
    return f"Claims were clearly right less often than their support says at {steps}"


def _picture(lines: tuple[Line, ...]) -> list[Shape]:
    across = LinearScale(top=1 - _LEAST, start=_LEFT, end=WIDTH - _RIGHT)
    up = LinearScale(top=1 - _LEAST, start=_TOP + _HEIGHT, end=_TOP)
    drawn: list[Shape] = []
    for tenth in range(5, 11):
        value = tenth / 10
        x, y = across.at(value - _LEAST), up.at(value - _LEAST)
        drawn.append(Stroke(points=((_LEFT, y), (WIDTH - _RIGHT, y)), ink="faint"))
        drawn.append(Words(x=_LEFT - 8, y=y + 4, text=f"{tenth * 10}%", ink="soft", size=12, anchor="right"))
        drawn.append(Words(x=x, y=_TOP + _HEIGHT + 18, text=f"{value:.1f}", ink="soft", size=12, anchor="center"))
    corner = (across.at(0), up.at(0)), (across.at(1 - _LEAST), up.at(1 - _LEAST))
    drawn.append(Stroke(points=corner, ink="soft", width=1.2, dash=(6.0, 3.0)))
    middle = (_LEFT + WIDTH - _RIGHT) / 2
    drawn.append(Words(x=middle, y=_TOP + _HEIGHT + 38, text="support", ink="soft", size=12, anchor="center"))
    for line in lines:
        x = across.at(_middle(line) - _LEAST)
        low, high = (up.at(max(end - _LEAST, 0.0)) for end in (line.hits.low, line.hits.high))
        drawn.append(Stroke(points=((x, low), (x, high)), width=2.0))
        drawn.append(Mark(x=x, y=up.at(max(line.hits.rate - _LEAST, 0.0)), ink="ink", shape="circle", size=5.5))
    return drawn
