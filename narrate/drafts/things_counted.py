"""What a number counts: the words behind it, or those before it in 'cupules: 15'."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from narrate.drafts.no_counts import Passed
from narrate.drafts.number_words import Number, numbers_in
from narrate.model.languages import Language

_WORD = re.compile(r"[^\W\d_]{2,}")
_WORDS_OF_A_THING = 5


def things_of(drafted: str, names: Iterable[str], language: Language) -> frozenset[str]:
    """Stems of all that the figures and the draft of a sentence count, without words for any piece of anything."""
    words = [word for name in names if "/" not in name for word in _WORD.findall(name.lower())]
    for number in numbers_in(drafted, language):
        words += _phrase(drafted[number.end :], language)
    before = [_before(drafted[: number.start], language, "*") for number in numbers_in(drafted, language)]
    words += [word for found in before for word in found]
    stops = re.compile(language.typed["stops"], re.IGNORECASE)
    return frozenset(_stem(word) for word in words if len(word) > 2 and not stops.fullmatch(word))


def things_typed(before: str, after: str, counted: Iterable[str], language: Language) -> frozenset[str]:
    """What a number counts, where that is among what is counted; empty where it counts something else or nothing."""
    words, generic = _phrase(after, language), re.compile(language.typed["generic"], re.IGNORECASE)
    if words and generic.fullmatch(words[0]) and len(words) > 1:
        words = words[1:]
    found = {_stem(word) for word in words} & set(counted)
    if found:
        joined = re.search(rf"\A[^,;:.()]*?\s(?:{language.typed['joins']})\s+([^\W\d_]+)", after, re.IGNORECASE)
        found |= {_stem(joined[1])} & set(counted) if joined else set()
    if not found and not words:
        found = {_stem(word) for word in _before(before, language)} & set(counted)
    return frozenset(found)


def of_another_thing(after: str, counted: Iterable[str], language: Language) -> bool:
    """Whether a share is said of what the sentence does not count: 'of the slope', and not 'of it'."""
    match = re.match(rf"\s*(?:{language.typed['of']})\s+((?:[^\W\d_]+\s*)+)", after, re.IGNORECASE)
    words = match[1].split() if match else []
    stops = re.compile(language.typed["stops"], re.IGNORECASE)
    first = next((word for word in words[:2] if not stops.fullmatch(word)), "")
    return bool(first) and _stem(first) not in set(counted)


def shared(things: Iterable[str], name: str) -> bool:
    return bool(set(things) & {_stem(word) for word in _WORD.findall(name.lower())})


def group_around(number: Number, numbers: Sequence[Number], text: str, passed: Passed) -> list[Number]:
    """Numbers that share what they count: '10 to 15 cupules', '38–58%'."""
    at = numbers.index(number)
    first, last = at, at
    while first and _joins(numbers[first - 1], numbers[first], text, passed):
        first -= 1
    while last + 1 < len(numbers) and _joins(numbers[last], numbers[last + 1], text, passed):
        last += 1
    return list(numbers[first : last + 1])


def _joins(one: Number, other: Number, text: str, passed: Passed) -> bool:
    small = passed.language.typed["small"]
    between = text[one.end : other.start]
    return (
        re.fullmatch(rf"\s*[–—-]\s*|\s+(?:{small})\s+", between) is not None
        and not passed.covers(one)
        and not passed.covers(other)
    )


def _phrase(after: str, language: Language) -> list[str]:
    """The words of the thing behind a number, up to a mark or a small word: 'charred fragments of oak'."""
    words: list[str] = []
    stops, of = re.compile(language.typed["stops"], re.IGNORECASE), language.typed["of"]
    rest = after
    while len(words) < _WORDS_OF_A_THING:
        match = re.match(rf"[\s\u00a0\u202f*_-]+(?:(?:{of})\s+)?\*?([^\W\d_]+)", rest)
        if match is None:
            break
        word = match[1].lower()
        if stops.fullmatch(word) and not (words and words[-1].endswith("ed") and word == "and"):
            break
        words.append(word)
        rest = rest[match.end() :]
    return words


def _before(before: str, language: Language, links_needed: str = "+") -> list[str]:
    """The thing in 'cupules number 15', 'cupules (n = 15)', 'a density of 9.4'."""
    links = language.typed["links"]
    thing, link = r"((?:[^\W\d_]+[\s-]+){0,2}[^\W\d_]{3,})", rf"(?:\s*[(:=]|\s*\b(?:{links})\b){links_needed}\s*\Z"
    match = re.search(thing + link, before, re.IGNORECASE)
    return _WORD.findall(match[1].lower()) if match else []


def _stem(word: str) -> str:
    """
    A word without the ends of the plural, so that one and many are the same.

    >>> _stem("cupules") == _stem("cupule"), _stem("grasses") == _stem("grass"), _stem("berries") == _stem("berry")
    (True, True, True)
    """
    return re.sub("y$", "i", re.sub("[es]+$", "", word.lower()))
