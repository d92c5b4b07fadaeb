"""Who is asked: the file that is read, where problems go, and how what was read is quoted."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from narrate.model.ids import SourceKey
from narrate.problems import Place, ProblemList
from narrate.reading.numbers_written import plain_number
from narrate.reading.source_text import SourceText, shown, tell
from narrate.reading.yaml_nodes import Node, Refused, Scalar, Sequence

COMPARISONS = 3_000_000
"""Different words compared for near matches in one file: a thousand slips among three thousand names, and bounded."""


@dataclass(slots=True)
class NearWords:
    """Offers near matches, each worked out once, until it has compared enough different words."""

    left: int = COMPARISONS
    answers: dict[tuple[int, int, str, float], tuple[Collection[str], str]] = field(default_factory=dict)
    """By list, its length, the word and the cutoff; the list is kept, so that no other can take its place."""

    def to(self, word: str, known: Collection[str], cutoff: float = 0.6) -> str:
        """The known word that looks most like it; empty where none does, or where too many other slips came before."""
        asked = (id(known), len(known), word, cutoff)
        if asked not in self.answers:
            if len(word) > 80 or self.left < len(known):
                return ""
            self.left -= len(known)
            self.answers[asked] = (known, near(word, known, cutoff))
        return self.answers[asked][1]


@dataclass(slots=True, kw_only=True)
class Asking:
    """The file that is read, where problems go, and the codes that its kind of file has."""

    source: SourceText
    problems: ProblemList
    missing: str = "N201"
    unknown: str = "N202"
    wrong: str = "N203"
    known_sources: Mapping[SourceKey, object] | None = None
    """None: source keys are not checked."""
    near_words: NearWords = field(default_factory=NearWords)
    faults: int = 0
    """Problems told so far by the readers of this module."""

    def tell(self, node: Node, code: str, message: str, *, help: str = "", severity: str = "error") -> None:
        self.faults += severity == "error"
        width = node.width if isinstance(node, Scalar) else 1
        tell(
            self.source,
            self.problems,
            code,
            message,
            line=node.line,
            column=node.column,
            width=width,
            help=help,
            severity=severity,
        )

    def place(self, node: Node) -> Place:
        return self.source.place(node.line, node.column)

    def near(self, word: str, known: Collection[str], cutoff: float = 0.6) -> str:
        return self.near_words.to(word, known, cutoff)


@dataclass(frozen=True, slots=True)
class Reads:
    """One kind of value: how messages name it, and the reader, which gives None for what it refuses."""

    expected: str
    take: Callable[[Node, Asking, str, str], Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    reads: Reads
    is_needed: bool = False
    into: str = ""
    """Name in the model where it is another."""


def near(word: str, known: Iterable[str], cutoff: float = 0.6) -> str:
    """
    The known word that looks most like it, whatever the case.

    >>> near("Glum base", ["glume base", "grain"]), near("xyz", ["grain"])
    ('glume base', '')
    """
    by_lower = {str(k).lower(): str(k) for k in known}
    found = difflib.get_close_matches(word.lower(), list(by_lower), n=1, cutoff=cutoff)
    return by_lower[found[0]] if found else ""


SHORT_LIST = 12
"""Words that a message lists whole."""


def offer(meant: str, known: Collection[str], else_do: str) -> str:
    """How to mend a word that is none of the known ones: the near match, else the list where it is short."""
    if meant:
        return f"write '{meant}'"
    if 0 < len(known) <= SHORT_LIST:
        words = listed_words([f"'{word}'" for word in known])
        return f"write {words}, or {else_do}"
    return else_do


def offered(word: str) -> str:
    return f"; did you mean '{word}'?" if word else ""


def is_blank(node: Node) -> bool:
    """True for a field whose name is there and whose value was left empty."""
    return isinstance(node, Scalar) and node.text == "" and not node.is_quoted


def refuse(node: Node, asking: Asking, whose: str, name: str, expected: str, help: str = "") -> None:
    """Tells that a value is not what its field holds."""
    if not isinstance(node, Refused):
        asking.tell(node, asking.wrong, f"{whose}: {name} is {what(node)}, expected {expected}", help=help)


def what(node: Node) -> str:
    if isinstance(node, Scalar):
        return f"'{node.text}'" if node.is_quoted and _looks_like_number(node.text) else shown(node.text)
    return "a list" if isinstance(node, Sequence) else "a mapping"


def listed_words(words: list[str], last: str = " or ") -> str:
    if len(words) < 2:
        return "".join(words)
    return ", ".join(words[:-1]) + last + words[-1]


def _looks_like_number(written: str) -> bool:
    return plain_number(written.strip()) is not None
