"""What an outline is made of: headings, paragraphs and tables, in Markdown text and without a medium."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    level: int
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    text: str
    """Markdown; Latin names in *italics*."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


Block = Heading | Paragraph | Table
