"""Exhibit labels: the short texts for people who stand before a case, each with the figure that goes with it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property

from markupsafe import Markup

from narrate.model.edition import Edition
from narrate.model.findings import SubjectFindings
from narrate.model.ids import Subject
from narrate.model.refs import subject_keys
from narrate.web import figures
from narrate.web.evidence import Opener
from narrate.web.filters import inline

AUDIENCE = "label"
"""The audience whose narratives are exhibit labels."""


@dataclass(frozen=True, kw_only=True)
class LabelView:
    """One label, as it is printed on a sheet of its own."""

    id: str
    """Name of its subject, such as 'C13'."""
    name: str
    kind: str
    """Such as 'hearth'; empty for phases and the dig."""
    paragraphs: tuple[Markup, ...]
    words: int
    target: str
    """The page that tells the whole story of it."""
    evidence: str
    found: SubjectFindings = field(repr=False)
    """Has a sum of its own among what keys of pages are made of: with its places it is long."""
    approved: str
    """Who approved the whole of it, and when; empty where nobody did or what it rests on has changed since."""
    pictured: Edition = field(repr=False)
    """The edition that figures are drawn of."""

    @cached_property
    def figures(self) -> tuple[figures.FigureView, ...]:
        """What it held; empty where nothing can be drawn."""
        return figures.of_subject(self.found, self.pictured)[:1]


def labelled(edition: Edition) -> tuple[Subject, ...]:
    """Subjects with a label, in the order of the dig: contexts first, then phases and the whole."""
    return tuple(
        subject
        for subject in subject_keys(edition.project)
        if (told := edition.narrative(AUDIENCE, subject)) is not None and told.sentences()
    )


def label_names(edition: Edition) -> Iterable[str]:
    """Names of all labels."""
    keys = subject_keys(edition.project)
    return [keys[subject] for subject in labelled(edition)]


def labels(opener: Opener) -> tuple[LabelView, ...]:
    """Every label of an edition."""
    return tuple(_label(opener, subject) for subject in labelled(opener.edition))


def _label(opener: Opener, subject: Subject) -> LabelView:
    edition = opener.edition
    narrative = edition.narrative(AUDIENCE, subject)
    assert narrative is not None
    said = [[sentence.text for sentence in paragraph] for part in narrative.sections for paragraph in part.paragraphs]
    found = edition.findings.of(subject)
    context = edition.project.context(subject.id) if subject.level == "context" else None  # type: ignore[arg-type]
    is_approved = not narrative.has_lapsed and all(sentence.is_approved for sentence in narrative.sentences())
    approved = narrative.approved_by if is_approved else ""
    return LabelView(
        id=opener.keys[subject],
        name=opener.wording.subject(subject),
        kind="" if context is None else opener.wording.kind(context),
        paragraphs=tuple(inline(" ".join(sentences)) for sentences in said if sentences),
        words=sum(len(sentence.split()) for sentences in said for sentence in sentences),
        target=opener.links.to("page", "story") if subject.level == "site" else opener.target(subject),
        evidence=opener.evidence_page(subject),
        found=found,
        approved=f"{approved} on {narrative.approved_on}" if approved and narrative.approved_on else approved,
        pictured=opener.pictured,
    )
