"""Figures of the section: the charts of the dig, in literal colours for print."""

from __future__ import annotations

import re
from collections.abc import Iterator

from narrate.documents.blocks import Figure
from narrate.documents.inline import literal
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject

WIDTH_MM = 115
"""Wide enough to read, and low enough for two charts to find room among the text."""


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
            title = literal(chart.title.rstrip("."))
            yield Figure(
                caption=f"{title}.", alt=chart.alt, svg=for_print(chart.svg), note=literal(chart.note), anchor=anchor,
                width_mm=WIDTH_MM,
            )  # fmt: skip


def for_print(svg: str) -> str:
    """The drawing with the light colours themselves in place of properties of a page."""
    svg = re.sub(r"var\(--[a-z0-9-]+,\s*(#[0-9a-fA-F]{3,8})\)", r"\1", svg)
    return svg.replace("system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', ", "")
