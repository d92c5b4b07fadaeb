"""Where in the ground and when: phases, features and contexts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from narrate.model.ids import ContextId, FeatureId, PhaseId
from narrate.model.images import Image
from narrate.problems import Place

Deposit = Literal["primary", "secondary", "tertiary", "de facto", "unknown"]
DEPOSITS: tuple[Deposit, ...] = ("primary", "secondary", "tertiary", "de facto", "unknown")
Security = Literal["sealed", "open", "disturbed", "unknown"]
SECURITIES: tuple[Security, ...] = ("sealed", "open", "disturbed", "unknown")


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """A stretch of time that the project tells apart."""

    id: PhaseId
    name: str
    start: int | None = None
    """Calendar year; negative is BC; there is no year 0."""
    end: int | None = None
    dates: str = ""
    """The calendar as the project writes it, such as 'cal AD'."""
    basis: str = ""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """The smallest excavated unit: a fill, a floor, a layer."""

    id: ContextId
    kind: str
    """A kind of context from the words, such as 'hearth'."""
    feature: FeatureId | None = None
    phase: PhaseId | None = None
    deposit: Deposit = "unknown"
    security: Security = "unknown"
    description: str = ""
    note: str = ""
    location: Mapping[str, str] = field(default_factory=dict)
    """Restricted by default: never in a public output."""
    images: tuple[Image, ...] = ()
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Feature:
    """Contexts that make one thing: a pit, a hearth, a ditch."""

    id: FeatureId
    contexts: tuple[ContextId, ...]
