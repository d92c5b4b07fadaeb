"""What changed between two states of a project: in data, claims and words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from narrate.problems import Problem

Kind = Literal["added", "removed", "renamed", "changed"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    kind: Kind
    subject: str
    """Whose: 'sample S014', 'S014, Zea mays, kernel', 'C12/fuel.maize-cob', 'C12'."""
    what: str = ""
    """Which field of it; empty where the whole is meant."""
    before: str = ""
    after: str = ""
    before_at: str = ""
    """Where the old stands, such as 'counts/light.csv:12'; or by whom it was said."""
    after_at: str = ""
    reasons: tuple[str, ...] = ()
    """Why, in figures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Changes of one sort."""

    title: str
    changes: tuple[Change, ...]
    note: str = ""
    """Why these could not be compared, or not wholly."""


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """One of the two."""

    name: str
    """The folder, and the revision where it is one of version control."""
    problems: tuple[Problem, ...] = ()
    is_read: bool = True
    """False where nothing of it could be read."""

    @property
    def errors(self) -> tuple[Problem, ...]:
        return tuple(problem for problem in self.problems if problem.severity == "error")


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes:
    old: State
    new: State
    parts: tuple[Part, ...]

    @property
    def is_nothing(self) -> bool:
        return not any(part.changes or part.note for part in self.parts)
