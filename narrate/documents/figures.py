"""Figures of the section: the charts of the dig, in literal colours for print."""

from __future__ import annotations

import re
from collections.abc import Iterator

from narrate.documents.blocks import Figure
from narrate.documents.inline import literal
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject

WIDTH_MM = 140
"""At this width the smallest letters of a chart stand 8 points high, those of its labels 8.6."""


def figures(edition: Edition) -> Iterator[Figure]:
    """What the dig holds, and how dense the contexts are; none where there is nothing to draw."""
    from narrate.charts import composition, density

    project, packs = edition.project, edition.packs
    site = edition.findings.of(Subject(level="site", id=SITE))
    for anchor, chart in (
        (
            "composition",
            composition.draw(site, packs, "composition", preservation=project.preservation, name="the whole dig"),
        ),
        ("density", density.draw(edition.findings, project, packs, "density")),
    ):
        if chart is not None:
            yield Figure(
                caption=f"{literal(_percent(chart.title).rstrip('.'))}.",
                alt=_percent(chart.alt),
                svg=for_print(chart.svg),
                note=literal(_percent(chart.note)),
                anchor=anchor,
                width_mm=WIDTH_MM,
            )


def for_print(svg: str) -> str:
    """The drawing with the light colours themselves in place of properties of a page."""
    svg = _percent(re.sub(r"var\(--[a-z0-9-]+,\s*(#[0-9a-fA-F]{3,8})\)", r"\1", svg))
    return svg.replace("system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', ", "")


def _percent(text: str) -> str:
    """Shares as the text of the section writes them: '95%'."""
    return re.sub(r"(?<=\d)[ \u00a0\u202f]%", "%", text)
