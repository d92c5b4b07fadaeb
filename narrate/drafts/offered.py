"""What an analyst's file was last offered, and what she made of it: the memory between two runs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from narrate.drafts.basis import Figures
from narrate.drafts.draft_file import Approval


@dataclass(frozen=True, slots=True, kw_only=True)
class Drafted:
    """One sentence as narrate drafted it."""

    key: str
    text: str
    refs: tuple[str, ...]
    figures: Figures
    heading: str
    paragraph: int
    """Number of its paragraph in the draft."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Signed:
    """An approval, the words that it covers, and all that they rested on."""

    approval: Approval
    lines: Mapping[str, Figures]
    """Words of each line -> the figures behind it, as they were at the run before the approval was written: what she
    had before her eyes."""
    ground: Figures
    """All figures behind the draft of that run, whether or not she kept its sentence."""
    claims: Figures
    """Grades of all claims in force for the subject at that run."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Base:
    """What the analyst's file was last offered, and what she made of it."""

    sentences: Mapping[str, Drafted] = field(default_factory=dict)
    """The draft behind each mark, as it was when she last had it in hand; in the order of the draft."""
    latest: Mapping[str, Figures] = field(default_factory=dict)
    """The figures behind each drafted sentence at the last run."""
    texts: Mapping[str, str] = field(default_factory=dict)
    """The words of each drafted sentence at the last run."""
    seen: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Her own lines at the last run, by their marks; a mark stands on several where she split a sentence."""
    claims: Figures = field(default_factory=dict)
    """Grades of all claims in force for the subject at the last run."""
    signed: Signed | None = None
