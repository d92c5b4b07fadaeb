"""Text, and the claims that each sentence rests on."""

from __future__ import annotations

from dataclasses import dataclass, replace
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
    is_approved: bool = False
    """True where its words were approved and nothing behind them has changed since; the narrative says by whom."""
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
    lapses: tuple[str, ...] = ()
    """What changed behind it since it was approved, in words."""
    left_out: int = 0
    """Sentences left out because nobody has approved them: only where it is built from approved words alone."""

    @property
    def has_lapsed(self) -> bool:
        """True where it was approved and something behind it has changed since."""
        return bool(self.lapses)

    def sentences(self) -> tuple[Sentence, ...]:
        return tuple(s for section in self.sections for paragraph in section.paragraphs for s in paragraph)

    def approved_alone(self) -> Narrative:
        """The same without the sentences that nobody has approved, and how many they were."""
        sections = tuple(
            replace(section, paragraphs=kept)
            for section in self.sections
            if (kept := tuple(k for p in section.paragraphs if (k := tuple(s for s in p if s.is_approved))))
        )
        alone = replace(self, sections=sections)
        approved = alone.sentences()
        return replace(
            alone, summary=approved[0] if approved else None, left_out=len(self.sentences()) - len(approved)
        )

    @property
    def text(self) -> str:
        """Markdown of the whole: headings and paragraphs."""
        blocks: list[str] = []
        for section in self.sections:
            if section.heading:
                blocks.append(f"## {section.heading}")
            blocks.extend(" ".join(s.text for s in paragraph) for paragraph in section.paragraphs)
        return "\n\n".join(blocks)
