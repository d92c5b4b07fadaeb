"""Ids have types of their own, so that a sample id cannot be passed where a context id is wanted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NewType

SampleId = NewType("SampleId", str)
ContextId = NewType("ContextId", str)
FeatureId = NewType("FeatureId", str)
PhaseId = NewType("PhaseId", str)
TaxonId = NewType("TaxonId", str)
"""The accepted scientific name, or the name of a group such as 'cheno-am'."""
PartId = NewType("PartId", str)
StatementId = NewType("StatementId", str)
RuleId = NewType("RuleId", str)
SourceKey = NewType("SourceKey", str)

Level = Literal["sample", "context", "feature", "phase", "site"]
LEVELS: tuple[Level, ...] = ("sample", "context", "feature", "phase", "site")

FILED: tuple[Level, ...] = ("context", "phase", "site")
"""Levels whose narratives stand in files, where an analyst may change and approve them; a sample's is too short."""

SITE = "site"
"""The id of the one subject of level 'site': the whole dig."""


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Subject:
    """What a claim, a measurement or a narrative is about."""

    level: Level
    id: str
