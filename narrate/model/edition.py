"""Everything that one site or document is made from: what its audience may know, and no more."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.model.ids import Subject
from narrate.model.manual import MeasurePage
from narrate.model.narrative import Narrative
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.strength import Ranking
from narrate.model.studies import Studies
from narrate.model.track_record import TrackRecord
from narrate.problems import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition:
    audience: str
    """The audience that the site is for: 'review' or 'public'."""
    project: Project
    packs: Packs
    findings: Findings
    claims: Claims
    narratives: Mapping[tuple[str, Subject], Narrative]
    """By audience and subject. The review edition holds 'review' and 'report', the public one 'public'."""
    told_elsewhere: Mapping[tuple[str, Subject], Narrative] = field(default_factory=dict)
    """Narratives of other editions, for the list of words that wait for a person; empty in a public edition."""
    problems: tuple[Problem, ...] = ()
    version: str = ""
    manual: tuple[MeasurePage, ...] = ()
    """A page for every measure, linked from every number."""
    studies: Studies = Studies()
    """What is worked out of the whole dig, from the same project."""
    ranking: Ranking | None = None
    """How strong a story each sample and context tells; None in a public edition."""

    record: TrackRecord | None = None
    """How the rules fared on simulated digs; None in a public edition."""
    approved_only: bool = False
    """True where it is built from approved sentences alone; `Narrative.left_out` says how many are not shown."""

    def narrative(self, audience: str, subject: Subject) -> Narrative | None:
        return self.narratives.get((audience, subject))
