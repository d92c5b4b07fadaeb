"""What every context of the dig held, summed up once, so that each can be set against the others."""

from __future__ import annotations

import statistics
from collections.abc import Mapping
from dataclasses import dataclass

from narrate.model.findings import Findings, Tally
from narrate.model.ids import Subject
from narrate.model.packs import Packs
from narrate.model.project import Project


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """The contexts that held remains."""

    kinds: Mapping[Subject, str]
    """Context -> its kind, in the project's order."""
    densities: Mapping[Subject, float]
    """Items per litre, of contexts whose volume is known."""
    median_density: float | None
    holders: Mapping[str, frozenset[Subject]]
    """Genus, or taxon where there is none -> contexts that hold it."""


def surroundings(project: Project, packs: Packs, findings: Findings, ancient: frozenset[str]) -> Surroundings:
    """The contexts with remains, their densities, and which of them hold which plants."""
    kinds: dict[Subject, str] = {}
    densities: dict[Subject, float] = {}
    holders: dict[str, set[Subject]] = {}
    for context in project.contexts:
        subject = Subject(level="context", id=context.id)
        found = findings.subjects.get(subject)
        if found is None or not found.samples_with_remains:
            continue
        kinds[subject] = context.kind
        density = found.measurements.get("density")
        if density is not None and density.value is not None:
            densities[subject] = density.value
        for tally in found.tallies:
            if tally.condition in ancient and tally.taxon is not None:
                holders.setdefault(genus_of(tally, packs), set()).add(subject)
    return Surroundings(
        kinds=kinds,
        densities=densities,
        median_density=statistics.median(densities.values()) if densities else None,
        holders={genus: frozenset(subjects) for genus, subjects in holders.items()},
    )


def genus_of(tally: Tally, packs: Packs) -> str:
    """The genus of a find; the taxon itself where it has none."""
    taxon = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return (taxon.genus or taxon.id) if taxon is not None else tally.written
