"""Signs that people put into words: where the phrases of observations stand in a note, and where they are denied."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from narrate.model.observations import NotedOf, Observation

DENIED = frozenset(("no", "not", "never", "without", "nor", "hardly", "lacks", "lacked", "neither"))
_NEAR = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Signs:
    """The phrases of all observations, ready to be looked for."""

    every: re.Pattern[str] | None
    """Any phrase of any observation: most notes hold none."""
    each: tuple[tuple[Observation, re.Pattern[str]], ...]


def signs_of(observations: Iterable[Observation]) -> Signs:
    """Patterns of all phrases; made once for all texts."""
    listed = list(observations)
    each = tuple((one, pattern(one.phrases)) for one in listed if one.phrases)
    phrases = [phrase for one in listed for phrase in one.phrases]
    return Signs(every=pattern(phrases) if phrases else None, each=each)


def signs_in(signs: Signs, text: str, of: NotedOf) -> Iterator[tuple[Observation, str, re.Match[str]]]:
    """Each observation that a text of the ground or of a find has, with its sentence and the phrase in it."""
    if not text or signs.every is None or not signs.every.search(text):
        return
    for sentence in _sentences(text):
        if any(mark in sentence for mark in "“”\"<>"):
            # Words within quotation marks are somebody else's, and markup is no note.
            continue
        for observation, phrases in signs.each:
            match = found_in(phrases, sentence) if observation.noted_of == of else None
            if match is not None:
                yield observation, sentence, match


def found_in(phrases: re.Pattern[str], sentence: str) -> re.Match[str] | None:
    """The first phrase of a sentence that is not denied there; a denial may be a phrase itself."""
    for match in phrases.finditer(sentence):
        before = re.split(r"[,;:]", sentence[: match.start()].lower())[-1].split()[-_NEAR:]
        if set(match[0].lower().split()) & DENIED or not set(before) & DENIED:
            return match
    return None


def pattern(phrases: Iterable[str]) -> re.Pattern[str]:
    """Any of some phrases as whole words; a word that ends in '*' takes any ending."""
    made = (
        r"\s+".join(f"{re.escape(word.rstrip('*'))}{'[a-z]*' if word.endswith('*') else ''}" for word in phrase.split())
        for phrase in phrases
    )
    return re.compile(rf"(?<![\w-])(?:{'|'.join(made)})(?![\w-])", re.IGNORECASE)


def _sentences(text: str) -> list[str]:
    flat = " ".join(text.split())
    return [part.strip().rstrip(".") for part in re.split(r"(?<=[.;!?])\s+", flat) if part.strip()]
