"""The door of the room: every narrative of a project for one audience."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.telling import english, setting
from narrate.telling.contexts import context_sections, summary_sentence
from narrate.telling.features import feature_sections
from narrate.telling.names import Names
from narrate.telling.page import Dig, Page
from narrate.telling.phases import phase_sections
from narrate.telling.plan import readings
from narrate.telling.readability import grade
from narrate.telling.review import review_sections
from narrate.telling.samples import sample_sections
from narrate.telling.site import site_sections
from narrate.telling.surroundings import surroundings


def narratives(
    project: Project, packs: Packs, findings: Findings, claims: Claims, audience: str
) -> dict[Subject, Narrative]:
    """
    A narrative for every sample, context, feature of several contexts, phase, and for the whole dig.

    audience: id of an audience of the packs. The same input gives the same words.
    """
    listed = packs.words.preservations.get(project.preservation)
    ancient = frozenset(listed or ("charred", "partly charred"))
    dig = Dig(
        project=project,
        packs=packs,
        findings=findings,
        claims=claims,
        audience=packs.audiences[audience],
        keys=subject_keys(project),
        ancient=ancient,
        surroundings=surroundings(project, packs, findings, ancient),
    )
    told: dict[Subject, Narrative] = {}
    for position, sample in enumerate(project.samples):
        _tell(told, dig, "sample", sample.id, position, lambda page, s=sample: sample_sections(page, s))
    for position, context in enumerate(project.contexts):
        _tell(told, dig, "context", context.id, position, lambda page, c=context: _context(page, c))
    for position, feature in enumerate(f for f in project.features() if len(f.contexts) > 1):
        _tell(told, dig, "feature", feature.id, position, lambda page, f=feature: feature_sections(page, f))
    for position, phase in enumerate(project.phases):
        _tell(told, dig, "phase", phase.id, position, lambda page, p=phase: _phase(page, p))
    _tell(told, dig, "site", SITE, 0, _site)
    return _made_distinct(told)


def _tell(
    told: dict[Subject, Narrative], dig: Dig, level: str, id: str, position: int,
    sections: Callable[[Page], tuple[Section, ...]],
) -> None:  # fmt: skip
    subject = Subject(level=level, id=id)  # type: ignore[arg-type]
    if dig.found(subject) is None:
        return
    written = sections(new_page(dig, subject, position))
    if dig.audience.register == "plain" and grade(_text(written)) > GRADE_AT_MOST:
        # Glosses in brackets are what makes a plain page hard; a page that is too hard goes without them.
        bare = new_page(dig, subject, position)
        bare.names.may_gloss = False
        without = sections(bare)
        written = without if grade(_text(without)) < grade(_text(written)) else written
    title = title_of(dig, subject)
    brief = new_page(dig, subject, position)
    held = readings(brief, dig.claims.about(subject))
    summary = summary_sentence(brief, english.literal(title), held)
    told[subject] = Narrative(subject=subject, audience=dig.audience.id, title=title, summary=summary, sections=written)


GRADE_AT_MOST = 8.0
"""Reading grade that a page for visitors should not pass."""


def _text(sections: tuple[Section, ...]) -> str:
    return " ".join(s.text for section in sections for paragraph in section.paragraphs for s in paragraph)


def new_page(dig: Dig, subject: Subject, position: int) -> Page:
    return Page(dig=dig, subject=subject, position=position, names=Names(audience=dig.audience, packs=dig.packs))


def title_of(dig: Dig, subject: Subject) -> str:
    """The title as plain text, unescaped: 'Hearth C12', 'Sample S014', 'Late hamlet'."""
    names = Names(audience=dig.audience, packs=dig.packs)
    if subject.level == "sample":
        return f"Sample {subject.id}"
    if subject.level == "feature":
        return f"Feature {subject.id}"
    if subject.level == "phase":
        return next((phase.name for phase in dig.project.phases if phase.id == subject.id), subject.id)
    if subject.level == "site":
        return dig.project.title
    kind = next((c.kind for c in dig.project.contexts if c.id == subject.id), "")
    known = names.kind_known(kind)
    is_plain = dig.audience.register == "plain"
    word = "place" if is_plain else "context"
    if known is not None and kind != "other":
        word = known.plain if is_plain else known.id
    return english.capitalised(f"{word} {subject.id}")


def _context(page: Page, context: object) -> tuple[Section, ...]:
    if not page.is_review:
        return context_sections(page, context)  # type: ignore[arg-type]
    brackets = setting.phase_brackets(page, page.dig.project.phase(context.phase))  # type: ignore[attr-defined]
    samples = page.dig.project.samples_of(context.id)  # type: ignore[attr-defined]
    return review_sections(page, setting.context_name(page, context), brackets, samples, context)  # type: ignore[arg-type]


def _phase(page: Page, phase: object) -> tuple[Section, ...]:
    if not page.is_review:
        return phase_sections(page, phase)  # type: ignore[arg-type]
    inside = {c.id for c in page.dig.project.contexts if c.phase == phase.id}  # type: ignore[attr-defined]
    samples = [s for s in page.dig.project.samples if s.context in inside]
    name = english.literal(phase.name)  # type: ignore[attr-defined]
    return review_sections(page, f"the {name}", "", samples, None)


def _site(page: Page) -> tuple[Section, ...]:
    if not page.is_review:
        return site_sections(page)
    return review_sections(page, "the whole dig", "", page.dig.project.samples, None)


def _made_distinct(told: dict[Subject, Narrative]) -> dict[Subject, Narrative]:
    """No two contexts share a paragraph: one that another context has word for word names its own context."""
    seen: set[str] = set()
    distinct: dict[Subject, Narrative] = {}
    for subject, narrative in told.items():
        if subject.level != "context":
            distinct[subject] = narrative
            continue
        sections = []
        for section in narrative.sections:
            paragraphs = tuple(_distinct(paragraph, seen, subject.id) for paragraph in section.paragraphs)
            sections.append(replace(section, paragraphs=paragraphs))
        distinct[subject] = replace(narrative, sections=tuple(sections))
    return distinct


def _distinct(paragraph: tuple[Sentence, ...], seen: set[str], id: str) -> tuple[Sentence, ...]:
    text = " ".join(sentence.text for sentence in paragraph)
    if text in seen and paragraph:
        first = paragraph[0]
        named = f"In {english.literal(id)}, {english.lowered(first.text)}"
        paragraph = (replace(first, text=named), *paragraph[1:])
        text = " ".join(sentence.text for sentence in paragraph)
    seen.add(text)
    return paragraph
