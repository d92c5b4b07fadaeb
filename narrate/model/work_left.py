"""
The work that is left on a subject: what pays, and what was left undone whatever it would bring.

Every list of next steps, of the review as of the report, is made from here, so that none knows of work that another
does not.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.claims import Claims
from narrate.model.ids import SITE, ContextId, PhaseId, SampleId, StatementId, Subject
from narrate.model.next_steps import NextStep
from narrate.model.project import Project
from narrate.model.sampling import Sample

SORT_HEAVY, SORT_CLASS, ASKED, KEPT, DATE_OWN = "sort.heavy", "sort.class", "asked", "kept", "date.own"

ASKS = re.compile(
    r"\b(?:re-?float|(?:float|sort|weigh|count|identify|check|look at)\s+(?:the|its|this|these|them|it|another|again)\b"
    r"|(?:still|yet|has|have|needs?|waits?)\s+to\s+be\s+(?:floated|sorted|weighed|counted|identified|checked)"
    r"|not\s+yet\s+(?:floated|sorted|weighed|counted|identified|checked))",
    re.IGNORECASE,
)
"""Words by which a note asks for work (judgement of the makers)."""


KEPT_BACK = re.compile(
    r"\b(?:(?:blocks?|lumps?|slabs?)\s+(?:was|were)\s+(?:lifted|kept|set aside)"
    r"|lifted\s+(?:whole|in\s+plaster|as\s+a\s+block)"
    r"|monoliths?\s+(?:was|were)\s+taken)",
    re.IGNORECASE,
)
"""Words by which a note says that something was kept whole and not floated (judgement of the makers)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftUndone:
    """Work on some samples that was not done, as the records say."""

    id: str
    """sort.heavy, sort.class, asked or kept."""
    samples: tuple[SampleId, ...]
    size_class: str = ""
    proportion_sorted: float = 0.0
    """Of the size class."""
    quote: str = ""
    """What the note of the sample asks for, or says was kept, in its own words."""


def paying(claims: Claims, subject: Subject) -> tuple[NextStep, ...]:
    """
    Work that would firm something up, the best first.

    Where remains are too few to be read, nothing is read of them whatever is written down about the deposit, so that
    no record is asked for to that end.
    """
    steps = [step for step in claims.steps.get(subject, ()) if step.pays]
    few = claims.find(subject, StatementId("integrity.too-few"))
    if few is not None and few.verdict == "holds":
        steps = [step for step in steps if not step.id.startswith("record.")]
    return tuple(steps)


def own_dates(claims: Claims) -> tuple[NextStep, ...]:
    """Finds of doubtful age in all contexts that should be dated by themselves."""
    found = [
        step
        for subject, steps in claims.steps.items()
        if subject.level == "context"
        for step in steps
        if step.id == DATE_OWN
    ]
    return tuple(sorted(found, key=lambda step: step.about.id))


def left_undone(project: Project, subject: Subject) -> tuple[LeftUndone, ...]:
    """What the records of a subject's samples say is not done: what notes ask for, heavy fractions, size classes."""
    samples = samples_of(project, subject)
    found = [
        LeftUndone(id=id, samples=(sample.id,), quote=quote)
        for id, words in ((ASKED, ASKS), (KEPT, KEPT_BACK))
        for sample in samples
        for quote in _clauses(sample.note, words)
    ]
    heavy = tuple(s.id for s in samples if s.heavy_fraction is not None and s.heavy_fraction.sorted is False)
    if heavy:
        found.append(LeftUndone(id=SORT_HEAVY, samples=heavy))
    groups: dict[tuple[str, float], list[SampleId]] = {}
    for sample in samples:
        for size in sample.size_classes:
            if size.proportion_sorted < 1:
                groups.setdefault((size.name, size.proportion_sorted), []).append(sample.id)
    found += [
        LeftUndone(id=SORT_CLASS, samples=tuple(ids), size_class=name, proportion_sorted=share)
        for (name, share), ids in groups.items()
    ]
    return tuple(found)


def samples_of(project: Project, subject: Subject) -> Sequence[Sample]:
    """The samples of a subject, in the order of the records."""
    if subject.level == "sample":
        return [sample for sample in project.samples if sample.id == subject.id]
    if subject.level == "context":
        return project.samples_of(ContextId(subject.id))
    if subject.id == SITE:
        return project.samples
    phases = {context.id: context.phase for context in project.contexts}
    if subject.level == "phase":
        return [sample for sample in project.samples if phases.get(sample.context) == PhaseId(subject.id)]
    members = {context.id for context in project.contexts if context.feature == subject.id}
    return [sample for sample in project.samples if sample.context in members]


def _clauses(note: str, words: re.Pattern[str]) -> list[str]:
    """
    The clauses of a note that ask for work, or that speak of what was kept whole.

    >>> _clauses("Some went over the lip; float the reserve first. Half of it was sorted.", ASKS)
    ['float the reserve first']
    >>> _clauses("The whole of the lens. A block was lifted in plaster before the rest was floated.", KEPT_BACK)
    ['A block was lifted in plaster before the rest was floated']
    """
    clauses = re.split(r"(?<=[.;!?])\s+", " ".join(note.split()))
    return [clause.rstrip(".;!? ") for clause in clauses if words.search(clause)]
