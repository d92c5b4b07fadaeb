"""Charts of a page, each drawn once, by name. Those for visitors are drawn of an edition in plain words."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache, partial

from markupsafe import Markup

from narrate.model.claims import Claim
from narrate.model.edition import Edition
from narrate.model.figures import Chart
from narrate.model.findings import SubjectFindings
from narrate.model.ids import SITE, Subject
from narrate.web.plain import led_by_common_names
from narrate.web.wording import Wording
from narrate.web.writing import Writing, writing_of

FigureView = tuple[Chart, Markup]
"""A chart, and its picture as markup that is put on the page as it is: charts escape what people wrote."""


OF_SITE = (
    "density",
    "ubiquity",
    "kernels_and_cupules",
    "ring",
    "months",
    "rarefaction",
    "likeness_map",
    "triangle",
    "companions",
)
"""Charts that set the subjects of the dig side by side."""


def of_subject(found: SubjectFindings, edition: Edition) -> tuple[FigureView, ...]:
    """What one subject holds, and when it ripens."""
    # Loaded when asked for: checking a project needs no chart.
    from narrate.charts import composition, months

    name = _phase_name(found.subject, edition)
    draws = tuple(partial(draw, name=name) for draw in (composition.draw, months.draw))
    return _drawn(draws, (found, edition.packs), ("composition", "months"), edition)


def of_claims(claims: tuple[Claim, ...], edition: Edition) -> tuple[FigureView, ...]:
    """What speaks for and against each claim that holds of one subject."""
    from narrate.charts import balance

    draw = partial(balance.draw, is_plain=_is_plain(edition))
    return _drawn((draw,), (claims, edition.packs), ("balance",), edition)


def of_site(names: tuple[str, ...], edition: Edition) -> tuple[FigureView, ...]:
    """Charts that set the subjects of the dig side by side, by the names of their modules."""
    from narrate.charts import (
        companions,
        density,
        kernels_and_cupules,
        likeness_map,
        months,
        rarefaction,
        reliability,
        ring,
        triangle,
        ubiquity,
    )

    site = edition.findings.of(Subject(level="site", id=SITE))
    is_plain = _is_plain(edition)
    project, packs, studies = edition.project, edition.packs, edition.studies
    side_by_side = (edition.findings, project, packs)
    draws: dict[str, Callable[[str], Chart | None]] = {
        "companions": lambda id: companions.draw(studies.associations, id, is_plain=is_plain),
        "density": lambda id: density.draw(*side_by_side, id),
        "kernels_and_cupules": lambda id: kernels_and_cupules.draw(*side_by_side, id, is_plain=is_plain),
        "likeness_map": lambda id: likeness_map.draw(studies.ordination, project, id, is_plain=is_plain),
        "months": lambda id: months.draw(site, packs, id),
        "rarefaction": lambda id: rarefaction.draw(studies.rarefaction, project, id, is_plain=is_plain),
        "reliability": lambda id: reliability.draw(edition.record, id) if edition.record else None,
        "ring": lambda id: ring.draw(studies.seasons, id),
        "triangle": lambda id: triangle.draw(studies.triangle, project, id),
        "ubiquity": lambda id: ubiquity.draw(*side_by_side, id),
    }
    return tuple(_view(chart, edition) for name in names if (chart := draws[name](name.replace("_", "-"))) is not None)


def _is_plain(edition: Edition) -> bool:
    return edition.audience == "public"


def _phase_name(subject: Subject, edition: Edition) -> str:
    """A phase as readers know it, such as 'the Early hamlet'; nothing for other subjects, which go by their ids."""
    named = next((p.name for p in edition.project.phases if subject == Subject(level="phase", id=p.id)), "")
    return f"the {named}" if named and not named.lower().startswith("the ") else named


def _drawn(
    draws: tuple[Callable[..., Chart | None], ...], given: tuple[object, ...], names: tuple[str, ...], edition: Edition
) -> tuple[FigureView, ...]:
    charts = (draw(*given, name.replace("_", "-")) for draw, name in zip(draws, names, strict=True))
    return tuple(_view(chart, edition) for chart in charts if chart is not None)


def _view(chart: Chart, edition: Edition) -> FigureView:
    if _is_plain(edition):
        chart = led_by_common_names(chart, edition.packs)
    written = retold(with_known_in_words(chart, Wording(edition)), writing_of(edition))
    return written, Markup(slim(written.svg))


def with_known_in_words(chart: Chart, wording: Wording) -> Chart:
    """The chart with codes for how well something is known written out in its table."""
    if "How well known" not in chart.columns:
        return chart
    place = chart.columns.index("How well known")
    rows = tuple((*row[:place], wording.known(row[place]), *row[place + 1 :]) for row in chart.rows)
    return replace(chart, rows=rows)


def retold(chart: Chart, writing: Writing) -> Chart:
    """The chart with the numbers of its picture, its words and its table as the project writes them."""
    if writing == Writing():
        return chart
    return replace(
        chart,
        svg=re.sub(r">([^<]+)<", lambda found: f">{writing.retold(found[1])}<", chart.svg),
        title=writing.retold(chart.title),
        alt=writing.retold(chart.alt),
        note=writing.retold(chart.note),
        columns=tuple(writing.retold(name) for name in chart.columns),
        rows=tuple(tuple(writing.retold(cell) for cell in row) for row in chart.rows),
    )


def slim(svg: str) -> str:
    """
    The picture with its commonest styles as classes of the site's stylesheet, which halves its size.

    >>> slim('<text style="font-size: 12px; fill: var(--chart-soft,#6a6056); opacity: 1" x="1">a</text>')
    '<text class="z12 f-soft" style="opacity: 1" x="1">a</text>'
    """
    return re.sub(r' style="([^"]*)"', _classed, svg)


def _classed(found: re.Match[str]) -> str:
    return _as_classes(found[1])


@lru_cache(maxsize=4_096)
def _as_classes(style: str) -> str:
    classes: list[str] = []
    rest: list[str] = []
    for said in filter(None, (part.strip() for part in style.split(";"))):
        name, _, value = (part.strip() for part in said.partition(":"))
        ink = _INK.fullmatch(value)
        if ink and name in ("fill", "stroke"):
            classes.append(f"{name[0] if name == 'fill' else 'k'}-{ink[1]}")
        elif said in _CLASSES:
            classes.append(_CLASSES[said])
        else:
            rest.append(said)
    as_class = f' class="{" ".join(classes)}"' if classes else ""
    as_style = f' style="{"; ".join(rest)}"' if rest else ""
    return as_class + as_style


_INK = re.compile(r"var\(--chart-([a-z0-9]+),#[0-9a-f]{6}\)")
_CLASSES = {
    "fill: none": "f-none",
    "text-anchor: middle": "mid",
    "text-anchor: end": "end",
    "font-weight: 700": "bold",
    "font-size: 11px": "z11",
    "font-size: 12px": "z12",
    "font-size: 13px": "z13",
}
"""Styles that the stylesheet knows as classes."""
