"""For whom something is told, and in what manner."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Audience:
    id: str
    title: str
    register: str
    """'trade' uses the specialists' clauses, 'plain' those for visitors."""
    frames: Mapping[str, tuple[str, ...]]
    """Grade -> frames around a clause or a noun phrase: '{clause}', '{noun}'."""
    shows_figures: bool
    shows_intervals: bool
    shows_latin: str
    """'first' (italic Latin after the common name on first use), 'lead' (Latin leads), 'no'."""
    shows_doubts_first: bool
    discloses: str
    """'everything' or 'public': what may be loaded for it."""
    plan: tuple[str, ...]
    """Questions in the order of telling."""
    headings: Mapping[str, str]
    """Question -> heading; a question without one gets none."""
    words: Mapping[str, str]
    """Phrases of this audience by name, such as 'no_remains'."""
    glossary: Mapping[str, str]
    """Trade word -> how this audience has it explained."""
    words_at_least: int | None = None
    words_at_most: int | None = None
    """Length of one text where it is held to one, as on a panel; then only what fits is told."""
    language: str = "en"
    """Folder of `packs/languages` whose words it is told in."""
    place: Place
