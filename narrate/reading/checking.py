"""What checks across files look at, and how they tell what they find."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from narrate.model.packs import Words
from narrate.model.project import Project
from narrate.problems import Place, ProblemList
from narrate.reading.asking import NearWords
from narrate.reading.project_file import ProjectFile
from narrate.reading.records import Records
from narrate.reading.sheet_problems import Unread
from narrate.reading.sheet_says import SheetSays
from narrate.reading.source_text import SourceText

Pointed = tuple[Place, int]
"""Where a value stands, with line and column, and how wide it is."""
LONGEST_VALUE = 200
"""Lines of a value in which a word is looked for."""


@dataclass(slots=True, kw_only=True)
class Checking:
    """What the checks look at, and where they tell what they find."""

    root: Path
    project_file: ProjectFile
    project: Project
    records: Records
    words: Words
    sources: Mapping[str, SourceText]
    problems: ProblemList
    unread: Unread = field(default_factory=Unread)
    sheet_says: SheetSays = field(default_factory=SheetSays)
    near_words: NearWords = field(default_factory=NearWords)
    unread_phases: list[str] = field(default_factory=list)
    """Phases of contexts that are none of those read, while not all phases could be read."""
    unread_contexts: list[str] = field(default_factory=list)
    """Contexts that no record describes, while not all records could be read."""
    unread_rows: list[str] = field(default_factory=list)
    """Samples without rows, while not all sheets could be read."""

    def near(self, word: str, known: Sequence[str]) -> str:
        return self.near_words.to(word, known, 0.7)

    def error(self, place: Place | Pointed, code: str, message: str, help: str = "", about: str = "") -> None:
        at, excerpt, width = self._pointed(place, about)
        self.problems.error(at, code, message, help=help, excerpt=excerpt, width=width)

    def warning(self, place: Place | Pointed, code: str, message: str, help: str = "", about: str = "") -> None:
        at, excerpt, width = self._pointed(place, about)
        self.problems.warning(at, code, message, help=help, excerpt=excerpt, width=width)

    def found_in(self, pointed: Pointed, text: str) -> Pointed:
        """Where `text` stands in a value that begins at a place and may run over several lines."""
        place, _ = pointed
        source = self.sources.get(place.path)
        for line in range(place.line, place.line + LONGEST_VALUE) if source else ():
            at = source.line(line).find(text, place.column - 1 if line == place.line else 0)  # type: ignore[union-attr]
            if at >= 0:
                return Place(path=place.path, line=line, column=at + 1), len(text)
        return pointed

    def _pointed(self, place: Place | Pointed, about: str) -> tuple[Place, str, int]:
        """The place, the line as written, and the width of what is meant."""
        if isinstance(place, Place):
            excerpt, width = self._shown(place, about)
            return self._at(place, excerpt, about), excerpt, width
        at, width = place
        excerpt, _ = self._shown(at, "")
        return at, excerpt, max(1, min(width, len(excerpt) - at.column + 1))

    def _shown(self, place: Place, about: str) -> tuple[str, int]:
        source = self.sources.get(place.path)
        excerpt = source.line(place.line).rstrip()[:160] if source else ""
        return excerpt, max(1, len(about)) if about in excerpt else 1

    def _at(self, place: Place, excerpt: str, about: str) -> Place:
        """The place, with the column of what the problem is about if it stands in that line."""
        if about and about in excerpt:
            return Place(path=place.path, line=place.line, column=excerpt.index(about) + 1)
        return place
