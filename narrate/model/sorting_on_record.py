"""What the records say of how far samples were sorted, and where they are silent: silence is not 'all of it'."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from narrate.model.ids import SampleId
from narrate.model.sampling import Sample

_OPEN_BELOW = re.compile(r"^\s*(?:<|≤|under\b|below\b|pan\b)", re.IGNORECASE)
_NUMBER = re.compile(r"\d+(?:[.,]\d+)?|\.\d+")


@dataclass(frozen=True, slots=True, kw_only=True)
class FinerThanClasses:
    """Samples that were caught on a finer mesh than their smallest size class on record begins at."""

    smallest_mm: float
    """Where the smallest size class on record begins, in mm."""
    meshes_mm: tuple[float, ...]
    """Meshes of the light fraction of these samples, each once, the finest first."""
    samples: tuple[SampleId, ...]


def silent_on_sorting(samples: Iterable[Sample]) -> tuple[SampleId, ...]:
    """Samples with plants to sort of which no size class is on record; a sterile one was looked through."""
    return tuple(sample.id for sample in samples if not sample.size_classes and not sample.sterile)


def finer_than_classes(samples: Iterable[Sample]) -> tuple[FinerThanClasses, ...]:
    """Where a class below the smallest one on record may hold remains of which the records do not speak."""
    found: dict[float, list[Sample]] = {}
    for sample in samples:
        begins = [begins_at_mm(size.name) for size in sample.size_classes]
        mesh = sample.mesh_mm.get("light")
        known = [mm for mm in begins if mm is not None]
        if mesh is not None and known and len(known) == len(begins) and mesh < min(known):
            found.setdefault(min(known), []).append(sample)
    return tuple(
        FinerThanClasses(
            smallest_mm=mm,
            meshes_mm=tuple(sorted({sample.mesh_mm["light"] for sample in of})),
            samples=tuple(sample.id for sample in of),
        )
        for mm, of in sorted(found.items())
    )


def begins_at_mm(name: str) -> float | None:
    """
    The size in mm at which a size class begins; None where its name gives none.

    >>> begins_at_mm("0.5-1 mm"), begins_at_mm(">2 mm"), begins_at_mm("<0.5 mm"), begins_at_mm("coarse")
    (0.5, 2.0, 0.0, None)
    """
    if _OPEN_BELOW.search(name):
        return 0.0
    number = _NUMBER.search(name)
    return float(number[0].replace(",", ".")) if number else None
