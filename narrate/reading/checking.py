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
from narrate.reading.source_text import SourceText


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
    near_words: NearWords = field(default_factory=NearWords)

    def near(self, word: str, known: Sequence[str]) -> str:
        return self.near_words.to(word, known, 0.7)

    def error(self, place: Place, code: str, message: str, help: str = "", about: str = "") -> None:
        excerpt, width = self._shown(place, about)
        self.problems.error(self._at(place, excerpt, about), code, message, help=help, excerpt=excerpt, width=width)

    def warning(self, place: Place, code: str, message: str, help: str = "", about: str = "") -> None:
        excerpt, width = self._shown(place, about)
        self.problems.warning(self._at(place, excerpt, about), code, message, help=help, excerpt=excerpt, width=width)

    def _shown(self, place: Place, about: str) -> tuple[str, int]:
        source = self.sources.get(place.path)
        excerpt = source.line(place.line).rstrip()[:160] if source else ""
        return excerpt, max(1, len(about)) if about in excerpt else 1

    def _at(self, place: Place, excerpt: str, about: str) -> Place:
        """The place, with the column of what the problem is about if it stands in that line."""
        if about and about in excerpt:
            return Place(path=place.path, line=place.line, column=excerpt.index(about) + 1)
        return place
