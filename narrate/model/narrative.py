"""Text, and the claims that each sentence rests on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from narrate.model.ids import Subject


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    text: str
    """Markdown, one sentence with its full stop. Only Latin names are in *italics*."""
    refs: tuple[str, ...]
    """What it rests on: claim ids, or '<subject>/measure.<name>', '<subject>/found.<taxon>.<part>',
    '<subject>/record'. Never empty."""
    standing: Literal["drafted", "edited", "own"] = "drafted"
    """Drafted by the rules; edited by the analyst; or her own words, tied to no claim."""
    stale: tuple[str, ...] = ()
    """For edited sentences: what changed behind them since she wrote them, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """Paragraphs under one heading; an empty heading means none."""

    id: str
    heading: str
    paragraphs: tuple[tuple[Sentence, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Narrative:
    subject: Subject
    audience: str
    title: str
    summary: Sentence | None
    """One sentence for lists and cards."""
    sections: tuple[Section, ...]
    is_edited: bool = False
    """True where the analyst's own words stand in place of the draft, or of part of it."""
    approved_by: str = ""
    approved_on: str = ""
    has_lapsed: bool = False
    """True where it was approved and the figures behind it have changed since."""

    def sentences(self) -> tuple[Sentence, ...]:
        return tuple(s for section in self.sections for paragraph in section.paragraphs for s in paragraph)

    @property
    def text(self) -> str:
        """Markdown of the whole: headings and paragraphs."""
        blocks: list[str] = []
        for section in self.sections:
            if section.heading:
                blocks.append(f"## {section.heading}")
            blocks.extend(" ".join(s.text for s in paragraph) for paragraph in section.paragraphs)
        return "\n\n".join(blocks)
