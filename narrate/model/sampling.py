"""Sediment taken from one context and floated, and how it was processed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from narrate.model.ids import ContextId, SampleId
from narrate.model.images import Image
from narrate.problems import Place

AMOUNTS = ("none", "few", "some", "many")
"""The scale of modern intrusions, in order."""
SMALLEST_VOLUME_L, LARGEST_VOLUME_L = 0.05, 1000.0
"""Flotation samples outside this range are probably in another unit. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeClass:
    """One sieve class of the light fraction and how much of it was sorted."""

    name: str
    proportion_sorted: float
    """Above 0 and at most 1."""
    written: str = ""
    """As the record says it, such as '1/4'."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LightFraction:
    mass_g: float | None = None
    volume_ml: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HeavyFraction:
    sorted: bool | None = None
    """None: the record does not say."""
    finds: Mapping[str, str] = field(default_factory=dict)
    """What colleagues found in it, as written: sherds, debitage, bone_g …"""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecoveryTest:
    """A known number of marked charred seeds added before flotation."""

    added: int
    recovered: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Sample:
    id: SampleId
    context: ContextId
    volume_l: float | None = None
    """Sediment as floated, in litres. None: not recorded, so no density."""
    method: str = ""
    mesh_mm: Mapping[str, float] = field(default_factory=dict)
    light_fraction: LightFraction | None = None
    size_classes: tuple[SizeClass, ...] = ()
    """Empty: all of the light fraction was sorted."""
    heavy_fraction: HeavyFraction | None = None
    modern_intrusions: Mapping[str, str] = field(default_factory=dict)
    """rootlets, insects, worm_casts, rodent_signs … -> none | few | some | many."""
    recovery_test: RecoveryTest | None = None
    sterile: bool = False
    """Looked through and nothing found: kept, because it counts in ubiquity."""
    wood_fragments_identified: int | None = None
    images: tuple[Image, ...] = ()
    note: str = ""
    place: Place

    def proportion_sorted(self, size_class: str) -> float:
        """Share of a size class that was sorted; 1 where the record names no such class."""
        for known in self.size_classes:
            if known.name == size_class:
                return known.proportion_sorted
        return 1.0
