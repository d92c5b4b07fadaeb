"""Figures of the example project, kind by kind, and one of the same content drawn the usual way."""

from __future__ import annotations

import io
from collections.abc import Callable
from functools import partial
from pathlib import Path

from narrate.charts import composition, density, kernels_and_cupules, months, ubiquity
from narrate.measures.findings import find
from narrate.pipeline.judged import read

EXAMPLE = Path(__file__).parents[2] / "example_project"
TAXA = [f"Taxon {number}" for number in range(15)]


def kinds() -> dict[str, Callable[[], int]]:
    """For each kind a run that draws it for all it can be drawn for, and gives how many that were."""
    reading = read(EXAMPLE)
    assert reading.project is not None and reading.packs is not None
    project, packs = reading.project, reading.packs
    findings = find(project, packs)
    subjects = list(findings.subjects.values())

    def of_subjects(draw: Callable[..., object]) -> int:
        return sum(draw(found, packs, "x") is not None for found in subjects)

    def of_site(draw: Callable[..., object]) -> int:
        return int(draw(findings, project, packs, "x") is not None)

    return {
        "composition": partial(of_subjects, composition.draw),
        "months": partial(of_subjects, months.draw),
        "density": partial(of_site, density.draw),
        "ubiquity": partial(of_site, ubiquity.draw),
        "kernels_and_cupules": partial(of_site, kernels_and_cupules.draw),
    }


def usual() -> int:
    """A bar chart of 15 taxa with pyplot and tight layout, as an svg."""
    import matplotlib

    matplotlib.use("svg")
    from matplotlib import pyplot

    figure, axes = pyplot.subplots(figsize=(6.4, 4))
    axes.barh(TAXA, [float(number * number % 37 + 1) for number in range(len(TAXA))])
    axes.set_xlabel("items")
    axes.set_title("What lay here")
    figure.tight_layout()
    figure.savefig(io.BytesIO(), format="svg")
    pyplot.close(figure)
    return 1
