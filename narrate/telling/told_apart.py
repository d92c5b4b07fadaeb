"""No paragraph of one subject that stands in another as well."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Sentence
from narrate.telling import english


def _made_distinct(told: dict[Subject, Narrative], within: str) -> dict[Subject, Narrative]:
    """No two contexts share a paragraph: one that another context has word for word names its own context."""
    seen: set[str] = set()
    distinct: dict[Subject, Narrative] = {}
    for subject, narrative in told.items():
        if subject.level != "context":
            distinct[subject] = narrative
            continue
        sections = []
        for section in narrative.sections:
            paragraphs = tuple(_distinct(paragraph, seen, subject.id, within) for paragraph in section.paragraphs)
            sections.append(replace(section, paragraphs=paragraphs))
        distinct[subject] = replace(narrative, sections=tuple(sections))
    return distinct


def _distinct(paragraph: tuple[Sentence, ...], seen: set[str], id: str, within: str) -> tuple[Sentence, ...]:
    text = " ".join(sentence.text for sentence in paragraph)
    if text in seen and paragraph:
        first = paragraph[0]
        named = within.replace("{id}", english.literal(id)).replace("{text}", english.lowered(first.text))
        paragraph = (replace(first, text=named), *paragraph[1:])
        text = " ".join(sentence.text for sentence in paragraph)
    seen.add(text)
    return paragraph
