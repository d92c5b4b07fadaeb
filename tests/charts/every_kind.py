"""A chart of every kind, of a small dig, of a single row, and of a dig with 300 taxa and contexts with long names."""

from __future__ import annotations

from collections.abc import Callable

from narrate.charts import composition, density, kernels_and_cupules, months, ubiquity
from narrate.model.figures import Chart
from narrate.model.findings import Findings, SubjectFindings
from narrate.model.ids import Subject
from narrate.model.packs import Packs
from narrate.model.project import Project
from tests.charts.chart_builders import (
    a_density,
    a_measurement,
    a_project,
    a_share,
    a_tally,
    a_taxon,
    a_window,
    found_in,
    some_findings,
    some_packs,
)

KEEPINGS = ("perishable", "stored", "persists", "with the crop")


def draw(kind: str, findings: Findings, project: Project, packs: Packs, chart_id: str = "c") -> Chart | None:
    """The chart of that kind; those of one subject are of the context that comes first."""
    of_site: dict[str, Callable[..., Chart | None]] = {
        "density": density.draw, "kernels_and_cupules": kernels_and_cupules.draw, "ubiquity": ubiquity.draw,
    }  # fmt: skip
    if kind in of_site:
        return of_site[kind](findings, project, packs, chart_id)
    found = findings.of(Subject(level="context", id=project.contexts[0].id))
    return (composition if kind == "composition" else months).draw(found, packs, chart_id)


KINDS = ("composition", "density", "months", "kernels_and_cupules", "ubiquity")


def a_small_dig() -> tuple[Findings, Project, Packs]:
    """Twelve contexts in two phases, twelve plant parts."""
    packs = some_packs()
    tallies = tuple(
        a_tally(taxon, "nutshell" if taxon in ("Carya", "Quercus") else "seed", 100 - 7 * number)
        for number, taxon in enumerate(packs.taxa)
    )
    project = a_project({f"C{n:02d}": ("hearth", "early" if n < 7 else "late") for n in range(1, 13)})
    contexts = [_context(str(c.id), n, tallies) for n, c in enumerate(project.contexts)]
    phases = [
        found_in("phase", phase, *_in_samples(tallies, 20, shift), samples=20)
        for phase, shift in (("early", 1), ("late", 9))
    ]
    return some_findings(*contexts, *phases), project, packs


def a_single_row() -> tuple[Findings, Project, Packs]:
    """One context with one plant part."""
    tally = a_tally("Zea mays", "kernel", 4, samples=1, of_samples=1, ubiquity=a_share(1, 1))
    project = a_project({"C1": ("hearth", "early")}, ("Early",))
    return some_findings(_context("C1", 3, (tally,)), found_in("phase", "early", tally)), project, some_packs()


def a_crowded_dig() -> tuple[Findings, Project, Packs]:
    """300 taxa and 300 contexts, all with long names."""
    names = [f"plant number {n} with a common name that runs on to sixty-four letters"[:64] for n in range(300)]
    packs = some_packs(
        *(
            a_taxon(f"Genus{n} species", name, (a_window("seed", (n % 12 + 1, (n + 1) % 12 + 1), KEEPINGS[n % 4]),))
            for n, name in enumerate(names)
        )
    )
    tallies = tuple(a_tally(str(taxon), "seed", 1 + 3000 // (n + 1)) for n, taxon in enumerate(packs.taxa))
    phases = (f"The {age} phase of the hamlet, named at a length nobody wanted to read" for age in ("early", "late"))
    project = a_project(
        {f"Trench-{n:03d}/fill": (names[n][:50], "early" if n % 2 else None) for n in range(300)}, tuple(phases)
    )
    contexts = [_context(str(c.id), n, tallies) for n, c in enumerate(project.contexts)]
    found = [
        found_in("phase", p.id, *_in_samples(tallies, 40, 7 * k), samples=40) for k, p in enumerate(project.phases)
    ]
    return some_findings(*contexts, *found), project, packs


def _context(id: str, n: int, tallies: tuple) -> SubjectFindings:
    kernels, cupules = n * 3 % 23, n * n % 61
    ratio = a_share(kernels, kernels + cupules) if kernels + cupules else a_measurement(None, reason="no maize")
    return found_in(
        "context", id, *tallies, samples=2, density=a_density(n * n), items=a_measurement(n * n),
        kernels=a_measurement(kernels), cupules=a_measurement(cupules), kernels_per_cupule=ratio,
    )  # fmt: skip


def _in_samples(tallies: tuple, samples: int, shift: int) -> tuple:
    from dataclasses import replace

    held = [(tally, (n * 5 + shift) % samples + 1) for n, tally in enumerate(tallies)]
    return tuple(replace(tally, samples=k, of_samples=samples, ubiquity=a_share(k, samples)) for tally, k in held)
