"""Numbers that the analyst typed, held against the figures behind her sentence where they count the same thing."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from narrate.drafts.no_counts import Passed, no_counts
from narrate.drafts.number_words import Number, numbers_in
from narrate.drafts.things_counted import group_around, of_another_thing, shared, things_of, things_typed
from narrate.model.languages import Language

_RANGE = re.compile(r"\s*[–—-]\s*|\s+\w{1,3}\s+")


def strange_numbers(
    text: str,
    drafted: str,
    figures: Mapping[str, str],
    language: Language,
    *,
    names: Iterable[str] = (),
    common: Mapping[str, Sequence[float]] | None = None,
    elsewhere: Sequence[tuple[str, float]] = (),
) -> tuple[str, ...]:
    """
    Numbers of edited text, as written, that count what the sentence counts and agree with no figure of it.

    A number is held against figures only where what it counts is plain: a thing that the draft or its figures name
    ('15 cupules', 'cupules: 15'), litres, grams, samples, a percentage. Years, dates, sizes, ordinals, fractions and
    all else that people number are let pass. A number agrees if it is one of the figures, their sum, or one of them
    rounded to the decimals that it has; after 'about' or 'more than', to the figures that it has.

    language:   how numbers are written in it; without its file numbers.yaml nothing is looked at.
    names:      what the figures count: 'maize cupules'.
    common:     what is true of the whole subject, by unit: 'litres', 'grams', 'samples'.
    elsewhere:  what else the subject holds: name and count.

    '15' of "There were 15 cupules, against 3 kernels." is strange beside the draft "12 cupules to 3 kernels.".
    """
    if not language.typed:
        return ()
    counted = things_of(drafted, (*names, *figures), language)
    known = [(number.value, drafted[number.end :]) for number in numbers_in(drafted, language)]
    known += [(float(value), "") for value in figures.values() if re.fullmatch(r"-?\d+(?:\.\d+)?(?:e\+\d+)?", value)]
    numbers, passed = numbers_in(text, language), no_counts(text, language)
    holder = _Held(known, common or {}, elsewhere, language)
    strange = [
        number.written
        for number in numbers
        if not passed.covers(number) and not _agrees(number, numbers, text, counted, holder, passed)
    ]
    return tuple(dict.fromkeys(strange))


class _Held:
    """The figures that numbers of a sentence are held against, by what they count."""

    def __init__(
        self,
        known: Sequence[tuple[float, str]],
        common: Mapping[str, Sequence[float]],
        elsewhere: Sequence[tuple[str, float]],
        language: Language,
    ) -> None:
        self.common, self.elsewhere, self.language = common, elsewhere, language
        self.percent = re.compile(rf"[\s\u00a0\u202f]*(?:%|(?:{language.typed['percent']})\b)", re.IGNORECASE)
        self.shares = [value * 100 for value, after in known if 0 <= value <= 1 and not after]
        if any(self.percent.match(after) for _, after in known):
            self.shares += [value for value, after in known if after and value <= 100]
        self.plain = [value for value, after in known if not self.percent.match(after)]
        self.of_units = {unit: [v for v, after in known if self.unit(after) == unit] for unit in common}

    def unit(self, after: str) -> str:
        """Litres, grams or samples, where a number is followed by them."""
        for unit in ("litres", "grams", "samples"):
            if re.match(rf"[\s\u00a0\u202f-]*(?:{self.language.typed[unit]})(?![\w/])", after):
                return unit
        return ""

    def of_things(self, things: frozenset[str]) -> list[float]:
        """Counts of the subject whose names share a word with what is counted, and their sum."""
        counts = [value for name, value in self.elsewhere if shared(things, name)]
        return [*counts, sum(counts)] if counts else []


def _agrees(
    number: Number, numbers: Sequence[Number], text: str, counted: frozenset[str], held: _Held, passed: Passed
) -> bool:
    group = group_around(number, numbers, text, passed)
    before, after = text[: group[0].start], text[group[-1].end :]
    nearest = text[: number.start]
    unit = held.unit(after)
    if held.percent.match(after):
        values = held.shares
        of_other = of_another_thing(held.percent.sub("", after, count=1), counted, held.language)
        return not values or of_other or any(_is_rounded(number, v, nearest, held.language) for v in values)
    if unit:
        return _agrees_in(unit, number, nearest, held)
    things = things_typed(before, after, counted, held.language)
    if not things:
        return True
    values = [*held.plain, *held.of_things(things)]
    if len(group) > 1 and _RANGE.fullmatch(text[group[0].end : group[1].start]) and _is_count(things, held):
        low, high = group[0].value, group[-1].value
        if any(low <= value <= high for value in values):
            return True
    return any(_is_rounded(number, value, nearest, held.language) for value in values)


def _is_count(things: frozenset[str], held: _Held) -> bool:
    """Whether a range stands for a count, which may lie anywhere in it; ends of an interval are figures themselves."""
    return any(shared(things, name) for name, _ in held.elsewhere)


def _agrees_in(unit: str, number: Number, before: str, held: _Held) -> bool:
    """Litres and grams agree with the subject's; samples with those drafted, or with any up to all."""
    values = [*held.common.get(unit, ()), *held.of_units.get(unit, ())]
    if not values:
        return True
    if unit == "samples" and not held.of_units.get(unit) and number.value <= max(values):
        return True
    return any(_is_rounded(number, value, before, held.language) for value in values)


def _is_rounded(number: Number, value: float, before: str, language: Language) -> bool:
    """The value itself, or to the decimals typed; after 'about' and the like, to the figures typed."""
    if value == number.value:
        return True
    if value != int(value) and abs(value - number.value) <= 0.5 * 10**-number.decimals + 1e-9:
        return True
    written = f"{int(number.value)}"
    is_in_dozens = number.in_words and any(
        word in number.written.lower() for word, worth in language.number_times.items() if worth < 100
    )
    step = 12 if is_in_dozens else 10 ** (len(written) - len(written.rstrip("0")))
    if _hedged("about", before, language) or is_in_dozens:
        return abs(value - number.value) <= step / 2
    if _hedged("above", before, language):
        return number.value <= value < number.value + step
    return _hedged("below", before, language) and number.value - step < value <= number.value


def _hedged(how: str, before: str, language: Language) -> bool:
    article = language.typed.get("article", "(?!)")
    pattern = rf"(?<!\w)(?:{language.typed[how]})(?!\w)\s*(?:(?:{article})\s+)?\Z"
    return re.search(pattern, before, re.IGNORECASE) is not None
