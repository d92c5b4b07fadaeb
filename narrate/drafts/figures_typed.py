"""Numbers that the analyst typed, held against the figures behind her sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from narrate.drafts.number_words import Number, numbers_in

_YEARS = range(500, 2101)
_ERA_AFTER = re.compile(r"\s*(?:–|-|to|±)?\s*\d*\s*(?:cal\.?\s*)?(?:BP|BC|BCE|AD|CE)\b")
_ERA_BEFORE = re.compile(r"\b(?:AD|CE|cal|BP)\.?\s*(?:\d+\s*(?:–|-|to|and|or)\s*)?(?:AD|CE)?\s*\Z")
_PLUS_MINUS = re.compile(r"\s*±|.*±\s*\Z")
_OF_A_PLACE = re.compile(
    r"\b(?:contexts?|samples?|features?|phases?|pits?|hearths?|fills?|layers?|floors?|areas?|units?|trench(?:es)?|figures?|"
    r"figs?|tables?|plates?|pages?|pp?|chapters?|sections?)\.?\s*(?:\w+\s*(?:,|and|to|–|-)\s*)*\Z"
    r"|\bnos?\.\s*\Z|\b(?:1[5-9]|20)\d\d[a-z]?[,:]\s*\Z",
    re.IGNORECASE,
)
"""What names something; the last, a page of a work that is cited."""
_MONTH = re.compile(
    r"\s*(?:January|February|March|April|May|June|July|August|September|October|November|December)\b"
)
_SIZE = re.compile(r"\s*(?:(?:–|-|×|x|by|to)\s*\d+(?:\.\d+)?\s*)?(?:mm|cm|m|km|µm|°)(?![\w])")
_THING_AFTER = re.compile(r"\s+(?:[A-Za-z]+ly\s+)?([a-z]+)")
_NO_THINGS = frozenset(
    (
        *("and", "to", "or", "in", "by", "with", "the", "when", "until", "is", "was", "were", "had", "years"),
        *("a", "an", "at", "of", "for", "from", "as", "while", "than", "it", "they", "we"),
    )
)
_ABOUT = re.compile(r"\b(?:about|around|roughly|some|circa|approximately|c\.|ca\.)\s*\Z", re.IGNORECASE)
_ABOVE = re.compile(r"\b(?:over|more than|at least|above)\s*(?:an?\s*)?\Z", re.IGNORECASE)
_BELOW = re.compile(r"\b(?:under|(?:less|fewer) than|nearly|almost|up to|at most|below)\s*(?:an?\s*)?\Z", re.IGNORECASE)
_PERCENT = re.compile(r"[\s\u00a0\u202f]*(?:%|per\s?cent\b)|\s*(?:–|-|to)\s*\d+(?:\.\d+)?\s*(?:%|per\s?cent\b)")
_OF_UNIT = (
    ("litres", re.compile(r"[\s\u00a0-]*(?:lit(?:re|er)s?|[lL])(?![\w])")),
    ("grams", re.compile(r"[\s\u00a0-]*(?:g|grams?|grammes?)(?![\w])")),
    ("samples", re.compile(r"\s+(?:flotation\s+|soil\s+)?samples?\b")),
)
_PART_OF_ONE = re.compile(r"[\s-]+(?:thirds?|quarters?|fifths?|tenths?|times)\b", re.IGNORECASE)
_OUT_OF = re.compile(r"\btimes out of\s*\Z", re.IGNORECASE)


def strange_numbers(
    text: str,
    drafted: str,
    figures: Mapping[str, str],
    *,
    names: Iterable[str] = (),
    common: Mapping[str, Sequence[float]] | None = None,
) -> tuple[str, ...]:
    """
    Numbers of edited text, as written, that agree with neither the draft nor any figure behind it.

    Years, dates, sizes of meshes, and numbers of contexts, samples and tables are let pass. A number agrees if it is
    one of the figures, to the decimals that it has; after 'about' or 'more than', to the figures that it has. Small
    numbers in words ('two readings') are looked at only before a thing that is counted here.

    names:   what the figures count, for small numbers in words: 'maize cupules'.
    common:  what is true of the whole subject, by unit: 'litres', 'grams', 'samples'.

    >>> strange_numbers("There were 15 cupules, against 3 kernels.", "12 cupules to 3 kernels.", {"cupules": "12"})
    ('15',)
    """
    known = [(number.value, drafted[number.end :]) for number in numbers_in(drafted)]
    known += [(number.value, "") for value in figures.values() for number in numbers_in(value)]
    things = {word for name in (*names, *figures) for word in re.findall(r"[a-z]{4,}", name.lower())}
    strange = []
    for number in numbers_in(text):
        before, after = text[: number.start], text[number.end :]
        if _is_no_figure(number, before, after) or (number.in_words and not _is_counted(number, before, after, things)):
            continue
        if not _agrees(number, _of_its_kind(after, known, common or {}), before):
            strange.append(number.written)
    return tuple(dict.fromkeys(strange))


def _is_no_figure(number: Number, before: str, after: str) -> bool:
    """Years, dates, radiocarbon ages, sizes, and numbers that name something."""
    if number.in_words:
        return False
    if _ERA_AFTER.match(after) or _ERA_BEFORE.search(before):
        return True
    if _PLUS_MINUS.match(after) or _PLUS_MINUS.match(before[-4:]):
        return True
    if _OF_A_PLACE.search(before) or _MONTH.match(after) or _SIZE.match(after):
        return True
    return _is_year(number, after)


def _is_year(number: Number, after: str) -> bool:
    if number.decimals or number.has_mark or int(number.value) not in _YEARS or _PERCENT.match(after):
        return False
    thing = _THING_AFTER.match(after)
    return thing is None or thing[1] in _NO_THINGS


def _is_counted(number: Number, before: str, after: str, things: set[str]) -> bool:
    """Whether a number in words is one of things: from ten on always; below, before a thing that the figures count."""
    if _PART_OF_ONE.match(after) or _OUT_OF.search(before):
        return False
    if number.value >= 10:
        return True
    return any(word in things for word in re.findall(r"[a-z]+", after.lower())[:3])


def _of_its_kind(after: str, known: Sequence[tuple[float, str]], common: Mapping[str, Sequence[float]]) -> list[float]:
    """What a number may agree with: litres with litres, percentages with percentages and shares of one."""
    for unit, pattern in _OF_UNIT:
        if pattern.match(after) and unit in common:
            return [*common[unit], *(value for value, behind in known if pattern.match(behind))]
    if _PERCENT.match(after):
        return [value * 100 for value, _ in known if 0 <= value <= 1] + [value for value, _ in known]
    return [value for value, behind in known if not _PERCENT.match(behind)]


def _agrees(number: Number, known: Iterable[float], before: str) -> bool:
    return any(_is_rounded(number, value, before) for value in known)


def _is_rounded(number: Number, value: float, before: str) -> bool:
    """The value itself, or to the decimals typed; after 'about' and the like, to the figures typed."""
    if value == number.value:
        return True
    if value != int(value) and abs(value - number.value) <= 0.5 * 10**-number.decimals + 1e-9:
        return True
    written = f"{int(number.value)}"
    is_in_dozens = "dozen" in number.written.lower()
    step = 12 if is_in_dozens else 10 ** (len(written) - len(written.rstrip("0")))
    if _ABOUT.search(before) or is_in_dozens:
        return abs(value - number.value) <= step / 2
    if _ABOVE.search(before):
        return number.value <= value < number.value + step
    return bool(_BELOW.search(before)) and number.value - step < value <= number.value
