"""Charts of a page, each drawn once, by name."""

from __future__ import annotations

from collections.abc import Callable

from markupsafe import Markup

from narrate.model.edition import Edition
from narrate.model.figures import Chart
from narrate.model.findings import SubjectFindings

FigureView = tuple[Chart, Markup]
"""A chart, and its picture as markup that is put on the page as it is: charts escape what people wrote."""


def of_subject(found: SubjectFindings, edition: Edition) -> tuple[FigureView, ...]:
    """What one subject holds, and when it ripens."""
    # matplotlib takes a second to load, and checking a project needs none of it.
    from narrate.charts import composition, months

    return _drawn((composition.draw, months.draw), (found, edition.packs), ("composition", "months"))


def of_site(names: tuple[str, ...], edition: Edition) -> tuple[FigureView, ...]:
    """Charts that set the subjects of the dig side by side: 'density', 'ubiquity', 'kernels_and_cupules'."""
    from narrate.charts import density, kernels_and_cupules, ubiquity

    draws: dict[str, Callable[..., Chart | None]] = {
        "density": density.draw,
        "ubiquity": ubiquity.draw,
        "kernels_and_cupules": kernels_and_cupules.draw,
    }
    given = (edition.findings, edition.project, edition.packs)
    return _drawn(tuple(draws[name] for name in names), given, names)


def _drawn(
    draws: tuple[Callable[..., Chart | None], ...], given: tuple[object, ...], names: tuple[str, ...]
) -> tuple[FigureView, ...]:
    charts = (draw(*given, name.replace("_", "-")) for draw, name in zip(draws, names, strict=True))
    return tuple((chart, Markup(chart.svg)) for chart in charts if chart is not None)
