"""The year as a ring: how much of what was found could have been gathered in each month."""

from __future__ import annotations

from math import cos, pi, sin

from narrate.charts.frame import WIDTH, chart
from narrate.charts.marks import Patch, Shape, Stroke, Words
from narrate.charts.names import MONTH_NAMES, MONTHS, months_in_words, several
from narrate.model.figures import Chart
from narrate.model.seasons import Seasons

_INNER, _OUTER, _MIDDLE = 52.0, 168.0, (WIDTH / 2, 206.0)


def draw(found: Seasons | None, chart_id: str) -> Chart | None:
    """A sector a month; None where no months are known for anything that was found."""
    if found is None or not found.windows:
        return None
    binding = [sum(month in w.any_source for w in found.windows if w.binds) for month in range(1, 13)]
    every = [sum(month in w.any_source for w in found.windows) for month in range(1, 13)]
    return chart(
        chart_id=chart_id,
        shapes=_picture(every, binding),
        height=_MIDDLE[1] * 2,
        title=_title(every, binding, len(found.windows)),
        alt=_alt(every, binding),
        note=(
            f"n = {several(len(found.windows), 'plant part')} with known months; {len(found.unknown)} found have none. "
            "The length of a sector counts plant parts that could be gathered in that month. Solid: does not keep, so "
            "it speaks of the season, whether or not anybody used it; hatched: keeps, or stays on the plant, so that "
            "storage may hide when it was burned."
        ),
        columns=(
            "Month",
            "Plant parts that can be gathered",
            "Of these, do not keep",
            "Of these, kept or persistent",
        ),
        rows=tuple((MONTH_NAMES[m], str(every[m]), str(binding[m]), str(every[m] - binding[m])) for m in range(12)),
    )


def _point(month: float, radius: float) -> tuple[float, float]:
    angle = 2 * pi * month / 12 - pi / 2
    return _MIDDLE[0] + radius * cos(angle), _MIDDLE[1] + radius * sin(angle)


def _arc(start: float, end: float, radius: float) -> list[tuple[float, float]]:
    return [_point(start + (end - start) * step / 6, radius) for step in range(7)]


def _sector(month: int, low: float, high: float) -> tuple[tuple[float, float], ...]:
    start, end = month + 0.04, month + 0.96
    return (*_arc(start, end, low), *reversed(_arc(start, end, high)))


def _picture(every: list[int], binding: list[int]) -> list[Shape]:
    top = max(*every, 3)
    reach = (_OUTER - _INNER) / top
    drawn: list[Shape] = []
    for share in (0.5, 1.0):
        circle = tuple(_point(step / 4, _INNER + (_OUTER - _INNER) * share) for step in range(49))
        drawn.append(Stroke(points=circle, ink="faint"))
    for month in range(12):
        low = _INNER + binding[month] * reach
        high = _INNER + every[month] * reach
        if high > low:
            drawn.append(Patch(points=_sector(month, low, high), ink="ochre", hatch="///"))
        if binding[month]:
            drawn.append(Patch(points=_sector(month, _INNER, low), ink="leaf"))
        x, y = _point(month + 0.5, _OUTER + 20)
        drawn.append(Words(x=x, y=y + 4, text=MONTHS[month], anchor="center", is_bold=every[month] == max(every)))
        x, y = _point(month + 0.5, _INNER - 12)
        drawn.append(Words(x=x, y=y + 4, text=str(every[month]), anchor="center", size=11, ink="soft"))
    return drawn


def _title(every: list[int], binding: list[int], parts: int) -> str:
    """'Most' where more than half of the plant parts with known months ripen in the fullest months."""
    peak = [month + 1 for month in range(12) if every[month] == max(every)]
    start = f"Most plant parts with known months could be gathered in {months_in_words(peak)}"
    if max(every) * 2 <= parts:
        start = f"More plant parts could be gathered in {months_in_words(peak)} than in other months"
    if not any(binding):
        return f"{start}; all of it keeps, so storage may hide when it was burned"
    speaks = [month + 1 for month in range(12) if binding[month]]
    return f"{start}; what does not keep speaks of {months_in_words(speaks)}"


def _alt(every: list[int], binding: list[int]) -> str:
    told = ", ".join(f"{MONTH_NAMES[m]} {every[m]} ({binding[m]} of them do not keep)" for m in range(12))
    return f"A ring of twelve months with the plant parts that can be gathered in each: {told}."
