"""Words that claim more than the evidence bears: found in drafts, where they are faults, and in the analyst's edits."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES, Grade
from narrate.model.languages import Language, Overclaim

_NEAR = 3
"""Words before a phrase among which a negation takes it back: 'this does not prove'."""

_QUOTED = re.compile(r"“[^”]*”")


@dataclass(frozen=True, slots=True, kw_only=True)
class Overclaimed:
    """A phrase of a text that says too much, with its place in the text."""

    start: int
    end: int
    words: str
    """As written."""
    sort: str
    """certainty, grade, absence, eating or season."""
    why: str
    instead: str

    @property
    def says(self) -> str:
        """
        One line for a person.

        >>> Overclaimed(start=0, end=6, words="proves", sort="certainty", why="it does not", instead="supports").says
        "'proves' claims more than the evidence bears: it does not"
        """
        return f"'{self.words}' claims more than the evidence bears: {self.why}"


def overclaimed(text: str, language: Language, grades: Sequence[Grade] | None = None) -> tuple[Overclaimed, ...]:
    """
    Phrases of a text that claim more than what it rests on, in the order of the text.

    text:      a sentence or a paragraph; what stands in “quotation marks” is another's and is passed over.
    grades:    those of the claims that it rests on; the firmest counts. None, or none given: it is not known what it
               rests on, and only what no grade allows is found.
    """
    blank = _QUOTED.sub(lambda match: " " * len(match[0]), text)
    found: dict[tuple[int, int], Overclaimed] = {}
    for phrase in language.overclaims:
        if phrase.needs is not None and (not grades or _bears(phrase.needs, grades)):
            continue
        for match in re.finditer(rf"(?<!\w)(?:{phrase.pattern})(?!\w)", blank, re.IGNORECASE):
            words = match[0].strip()
            start = match.start() + len(match[0]) - len(match[0].lstrip())
            inside = any(s <= start and start + len(words) <= e for s, e in found)
            if not inside and not _is_taken_back(blank[: match.start()], language, phrase):
                found[(start, start + len(words))] = _of(phrase, start, words)
    return tuple(found[place] for place in sorted(found))


def _bears(needs: Grade, grades: Sequence[Grade]) -> bool:
    return max(GRADE_NAMES.index(grade) for grade in grades) >= GRADE_NAMES.index(needs)


def _is_taken_back(before: str, language: Language, phrase: Overclaim) -> bool:
    """Whether a negation stands just before in the same clause; what denies a use is a negation of its own."""
    if phrase.sort == "absence":
        # 'That is no sign that plants were not used' keeps the reader from concluding it.
        clause = re.split(r"[.;:!?]", before)[-1].lower()
        return bool(re.search(r"\b(?:no sign|not mean|not say|not tell|not show|does not follow|whether)\b", clause))
    clause = re.split(r"[.;:!?,]", before)[-1].lower().split()
    near = clause[-_NEAR:]
    return any(word in language.negations or word.endswith(("n't", "n’t")) for word in near)


def _of(phrase: Overclaim, start: int, words: str) -> Overclaimed:
    return Overclaimed(
        start=start, end=start + len(words), words=words, sort=phrase.sort, why=phrase.why, instead=phrase.instead
    )
