"""Statements with the claims of the phases that bear them out, as the dig tells them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES, Claim, Claims
from narrate.model.ids import Subject
from narrate.model.project import Project
from narrate.model.stratigraphy import Phase
from narrate.telling.page import Page
from narrate.telling.plan import Reading, is_hint


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseReading:
    """One statement and the claims of the phases that bear it out."""

    statement: str
    claims: tuple[tuple[Phase, Claim], ...]

    @property
    def weakest(self) -> Claim:
        return min((claim for _, claim in self.claims), key=lambda claim: GRADE_NAMES.index(claim.grade))

    @property
    def is_of_one_grade(self) -> bool:
        return len({claim.grade for _, claim in self.claims}) == 1


def as_readings(page: Page, claims: Sequence[Claim]) -> list[Reading]:
    """Claims as readings of which no plant is named."""
    statements = page.dig.packs.statements
    return [Reading(claim=c, statement=statements[c.statement], behind=()) for c in claims]


def refs_of(readings: Sequence[PhaseReading]) -> list[str]:
    return [claim.id for reading in readings for _, claim in reading.claims]


def is_hint_of_all_phases(project: Project, claims: Claims, claim: Claim) -> bool:
    """Whether all phases that make a reading of the dig only hint at it, so that the dig is told no more than that."""
    if claim.about.level != "site":
        return False
    found = (claims.find(Subject(level="phase", id=phase.id), claim.statement) for phase in project.phases)
    held = [one for one in found if one is not None and one.verdict == "holds"]
    return bool(held) and all(is_hint(one) for one in held)


def held_elsewhere(page: Page, phase: Phase, statement: str) -> list[Claim]:
    """Claims of contexts of other phases that make a reading, more firmly than that it would fit."""
    elsewhere = [c for c in page.dig.project.contexts if c.phase not in (None, phase.id)]
    found = [page.dig.claims.find(Subject(level="context", id=c.id), statement) for c in elsewhere]
    held = [c for c in found if c is not None and c.verdict == "holds" and GRADE_NAMES.index(c.grade) > 1]
    return [c for c in held if not is_hint(c)]
