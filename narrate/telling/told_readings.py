"""The readings of all contexts, phases and the dig that the texts tell as readings: lists hold to the same rule."""

from __future__ import annotations

from collections import Counter

from narrate.model.claims import Claim, Claims
from narrate.model.ids import FILED, SITE, StatementId, Subject
from narrate.model.project import Project
from narrate.telling.plan import TOO_FEW, standing

ABOUT_DEPOSITS = ("integrity", "work")
"""Questions that remains too few to be read still bear on."""


def told_readings(project: Project, claims: Claims) -> list[Claim]:
    """
    Claims that some text tells as a reading.

    A hint is none, and neither is what is left out; a context too poor to be read carries none; and what a phase bears
    out, be it as a hint, is told of the whole dig only where every phase with samples reads it.
    """
    held = [c for c in claims.all_holding(FILED) if _is_told(claims, c)]
    phase_of = {context.id: context.phase for context in project.contexts}
    phases = {phase for sample in project.samples if (phase := phase_of.get(sample.context)) is not None}
    if len(phases) < 2:
        return [c for c in held if standing(c) == "reading"]
    of_phases = {c.statement for c in held if c.about.level == "phase"}
    read = Counter(c.statement for c in held if c.about.level == "phase" and standing(c) == "reading")
    return [c for c in held if standing(c) == "reading" and not _is_of_phases(c, of_phases, read, len(phases))]


def _is_told(claims: Claims, claim: Claim) -> bool:
    if claim.verdict != "holds" or claim.grade == "not supported":
        return False
    return claim.question in ABOUT_DEPOSITS or not is_too_few(claims, claim.about)


def is_too_few(claims: Claims, subject: Subject) -> bool:
    """Whether the remains of a subject are too few to be read on their own."""
    found = claims.find(subject, StatementId(TOO_FEW))
    return found is not None and found.verdict == "holds"


def _is_of_phases(claim: Claim, of_phases: set[StatementId], read: Counter[StatementId], phases: int) -> bool:
    if claim.about != Subject(level="site", id=SITE) or claim.statement not in of_phases:
        return False
    return read[claim.statement] < phases
