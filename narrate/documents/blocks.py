"""What an outline is made of: headings, paragraphs, tables and figures, without a medium."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    level: int
    """1 is the title of the section; no level is skipped."""
    text: str
    anchor: str = ""
    is_listed: bool = True
    """False: it stands in no table of contents, being the heading of one."""
    holds_figures: bool = False
    """True: the figures below it are what it is about; they stand there, and float to no other page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    text: str
    """Latin names in *italics*, **strong** words, and references to tables and figures as {anchor}."""
    kind: Literal["body", "notice", "byline", "missing", "reference", "item", "pointer"] = "body"
    """pointer: a small line below a heading that leads to tables and figures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Contents:
    """Where the table of contents stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Foot:
    """What stands at the foot of every page, before its number; at the end, where the medium has no pages."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""
    anchor: str = ""
    numbers: tuple[int, ...] = ()
    """Columns whose cells are numbers and are set to the right, so that digits of one worth stand below each other."""
    is_dense: bool = False
    """True: with little room between rows, for long lists that are looked up and not read."""
    is_wide: bool = False
    """True: on a landscape page, where the medium has pages."""
    widths: tuple[float, ...] = ()
    """Relative widths of columns; empty: by their text."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    caption: str
    alt: str
    svg: str = ""
    """Drawing with literal colours; empty for a photograph."""
    photograph: bytes = b""
    """PNG or JPEG as it is set."""
    width_mm: int = 130
    note: str = ""
    anchor: str = ""


Block = Heading | Paragraph | Table | Figure | Contents | Foot


FOOTER = "Draft for a specialist's signature."
"""At the foot of every page, where the outline says nothing more."""


def foot_of(blocks: Sequence[Block]) -> str:
    """What stands at the foot of every page."""
    return next((block.text for block in blocks if isinstance(block, Foot)), FOOTER)


def listed(blocks: Sequence[Block]) -> list[Heading]:
    """The headings that a table of contents lists: two levels below the title."""
    return [b for b in blocks if isinstance(b, Heading) and b.level in (2, 3) and b.is_listed]


def on_wide_pages(blocks: Sequence[Block]) -> list[bool]:
    """Whether each block stands on a landscape page: wide tables, and the headings and pointers right above them."""
    found: list[bool] = []
    is_wide = False
    for block in reversed(blocks):
        leads = isinstance(block, Heading) or (isinstance(block, Paragraph) and block.kind == "pointer")
        is_wide = block.is_wide if isinstance(block, Table) else is_wide and leads
        found.append(is_wide)
    return found[::-1]


class Unfit(Exception):
    """The outline cannot be set as it is: an alternative text is missing, or a reference leads nowhere."""
