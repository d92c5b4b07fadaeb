"""The outline of the interpretive section, the same for every medium."""

from __future__ import annotations

from collections.abc import Iterator

from narrate.documents.blocks import Block, Heading, Paragraph
from narrate.documents.tables import counts_by_context, sample_register
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.model.stratigraphy import Context
from narrate.telling.explanation import source_line

CAUTION = (
    "This section is a draft for the signature of a qualified specialist. Information on the location of sites and on "
    "burials follows the laws and consultation that apply where the work was done."
)

RESTRICTED = (
    "**Restricted: not for release.** Take this context and its samples out before the section leaves the team."
)


_LEVELS = ("site", "phase", "context")
"""Subjects whose narratives stand in the section."""


def outline(edition: Edition) -> tuple[Block, ...]:
    """Headings, paragraphs and tables of the section in order."""
    return tuple(_blocks(edition))


def _blocks(edition: Edition) -> Iterator[Block]:
    project = edition.project
    yield Heading(level=1, text=f"Plant remains: {project.title}")
    yield Paragraph(text=f"*{CAUTION}*")
    if edition.approved_only:
        told = (n for (audience, s), n in edition.narratives.items() if audience == "report" and s.level in _LEVELS)
        waiting = sum(narrative.left_out for narrative in told)
        yield Paragraph(text=f"*{_approved_alone(waiting)}*")
    if project.authors:
        yield Paragraph(text="; ".join(f"{a.name}, {a.role}" if a.role else a.name for a in project.authors))
    if project.summary:
        yield Paragraph(text=project.summary)
    yield Heading(level=2, text="Samples and recovery")
    yield sample_register(edition)
    yield Heading(level=2, text="Results")
    yield from _told(edition, Subject(level="site", id=SITE), 3)
    for phase in project.phases:
        yield Heading(level=2, text=phase.name)
        yield from _told(edition, Subject(level="phase", id=phase.id), 3)
        for context in project.contexts:
            if context.phase == phase.id:
                yield from _context(edition, context)
    undated = [context for context in project.contexts if project.phase(context.phase) is None]
    if undated:
        yield Heading(level=2, text="Contexts without a phase")
        for context in undated:
            yield from _context(edition, context)
    yield Heading(level=2, text="Tables")
    yield counts_by_context(edition)
    yield Heading(level=2, text="Sources")
    yield from (Paragraph(text=source_line(key, edition.packs)) for key in cited(edition))


def _approved_alone(waiting: int) -> str:
    if not waiting:
        return "Every sentence of this section was read and approved."
    left_out = "one sentence that waits" if waiting == 1 else f"{waiting:,} sentences that wait"
    return f"Approved sentences alone; {left_out} for approval {'is' if waiting == 1 else 'are'} left out."


def _context(edition: Edition, context: Context) -> Iterator[Block]:
    yield Heading(level=3, text=f"{context.id}, {context.kind}")
    if context.id in edition.project.disclosure.restricted_contexts:
        yield Paragraph(text=RESTRICTED)
    yield from _told(edition, Subject(level="context", id=context.id), 4)


def cited(edition: Edition) -> tuple[str, ...]:
    """Keys of the sources behind claims that hold, by author and year."""
    keys = {key for claim in edition.claims if claim.verdict == "holds" for key in claim.sources}
    return tuple(sorted(keys, key=lambda key: source_line(key, edition.packs).lower()))


def _told(edition: Edition, subject: Subject, level: int) -> Iterator[Block]:
    narrative: Narrative | None = edition.narrative("report", subject)
    for section in narrative.sections if narrative else ():
        if section.heading:
            yield Heading(level=level, text=section.heading)
        for paragraph in section.paragraphs:
            yield Paragraph(text=" ".join(sentence.text for sentence in paragraph))
