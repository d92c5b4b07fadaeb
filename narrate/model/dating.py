"""What would make a good radiocarbon sample, best first."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import ContextId, SampleId
from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class DatingCandidate:
    rank: int
    """1 is best; candidates that nothing tells apart share a rank."""
    sample: SampleId
    context: ContextId
    taxon: str
    part: str
    items: int
    mass_g: float | None
    """Grams as weighed, of the row; None where it was not weighed, so that it must be weighed first."""
    lifespan: str
    """one season, a few years, or many years."""
    security: str
    deposit: str
    merits: tuple[str, ...]
    doubts: tuple[str, ...]
    places: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class DatingRanking:
    candidates: tuple[DatingCandidate, ...]
    refused: tuple[tuple[str, int], ...]
    """Why rows were left out, and how many of them."""
