"""Problems that were found without the text at hand, given the line as written and a pointer."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from pathlib import Path

from narrate.problems import Place, Problem, ProblemList
from narrate.reading.files import read_text
from narrate.reading.source_text import SourceText

_UNKNOWN = re.compile(r".*'([^']+)' is not known")


def pointed(root: Path, problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """
    The problems with their lines as written.

    Where a word is said to be unknown, the place is where it stands first from the line of the problem
    on.
    """

    @cache
    def source(path: str) -> SourceText | None:
        return read_text(root, path, ProblemList())

    return tuple(
        _pointed(problem, source(problem.place.path)) if problem.place.line else problem for problem in problems
    )


def _pointed(problem: Problem, source: SourceText | None) -> Problem:
    if source is None or problem.excerpt or problem.place.sheet or problem.place.cell:
        return problem
    unknown = _UNKNOWN.match(problem.message)
    found = _first(unknown[1], source, problem.place.line) if unknown else None
    if found is None:
        return replace(problem, excerpt=_shown(source, problem.place.line))
    line, column, width = found
    place = Place(path=problem.place.path, line=line, column=column)
    return replace(problem, place=place, excerpt=_shown(source, line), width=width)


def _first(word: str, source: SourceText, line: int) -> tuple[int, int, int] | None:
    pattern = re.compile(rf"(?<![\w.]){re.escape(word)}(?!\w)", re.IGNORECASE)
    for number in range(line, source.text.count("\n") + 2):
        match = pattern.search(source.line(number))
        if match:
            return number, match.start() + 1, match.end() - match.start()
    return None


def _shown(source: SourceText, line: int) -> str:
    text = source.line(line).rstrip()
    return text if len(text) <= 160 else ""
