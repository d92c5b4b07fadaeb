"""
Grammar of any language but English, from the tables of its pack: articles, gender, lists, numbers, years.

English, whose sentences are built from many more pieces, has its own in `english` and `numbers`. Pure functions.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from narrate.model.languages import Gender, Language, Noun
from narrate.model.style import THOUSANDS, before_present
from narrate.telling import english

MARKS: Mapping[str, str] = {str(name): mark for name, mark in THOUSANDS.items()}
"""Marks of thousands by name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grammar:
    """A language at work. Names of its tables are those of `grammar:` in packs/languages/<id>/grammar.yaml."""

    language: Language
    era: str = ""
    """AD, CE or BP where the project chose one."""
    dash: str = "–"
    """Between the two ends of a range."""

    def table(self, name: str, otherwise: str = "") -> str:
        return self.language.grammar.get(name, otherwise)

    def listed(self, items: Iterable[str], *, word: str = "and") -> str:
        """
        'a, b y c'; the joining word takes its other form before the sounds that the pack names.

        Where one of the last two has the word in itself a comma stands before it: 'a y b, y c'.

        word:  'and' or 'or'.
        """
        parts = [item for item in items if item]
        if len(parts) < 2:
            return "".join(parts)
        last = re.sub(r"^[^\w]+", "", parts[-1])
        before = self.table(f"{word}_before")
        changes = bool(before) and re.match(before, last, re.IGNORECASE) is not None
        joined = self.table(f"{word}_changed") if changes else self.table(word)
        own = [f" {self.table(word)} ", f" {self.table(f'{word}_changed')} "]
        bare = [re.sub(r"\([^)]*\)", "", part) for part in parts]
        comma = "," if any(mark in part for part in bare[-2:] for mark in own if mark.strip()) else ""
        return f"{', '.join(parts[:-1])}{comma} {joined} {parts[-1]}"

    def the(self, noun: Noun, *, plural: bool = False) -> str:
        """The noun with its definite article: 'el hogar', 'las fosas'; 'el arma' where the pack names the sound."""
        sounds = self.table("the_stressed_before")
        name = noun.many if plural else noun.one
        if not plural and noun.gender == "f" and sounds and re.match(sounds, name, re.IGNORECASE):
            return f"{self.table('the_stressed')} {name}"
        return f"{self.table(f'the_{self._form(noun.gender, plural)}')} {name}"

    def quantity(self, number: int, noun: Noun, *, exactly: bool = False) -> str:
        """'una semilla', 'diez granos', 'unas 140 semillas': exact below 100, then rounded to ten and said to be so."""
        if number == 1:
            return f"{self.table(f'one_{noun.gender}', '1')} {noun.one}"
        many = self.figure(number) if exactly and number >= 100 else self.about(number, noun.gender)
        return f"{many} {noun.many or noun.one}"

    def about(self, number: int, gender: Gender = "m") -> str:
        """A count for visitors: a word where it is small, a rounded figure where it is not."""
        if 0 <= number < len(self.language.numbers):
            return self.language.numbers[number] if number != 1 else self.table(f"one_{gender}", "1")
        if number < 100:
            return str(number)
        rounded = 10 * math.floor(number / 10 + 0.5)
        text = self.figure(rounded)
        return text if rounded == number else f"{self.table(f'about_{gender}')} {text}"

    def figure(self, value: float) -> str:
        """'1.340', '18,5': marks of thousands and decimals as the pack has them, thousands from five figures on."""
        whole, _, decimals = f"{value:.1f}".partition(".")
        if len(whole) >= int(self.table("thousands_from", "4")):
            groups = f"{int(whole):,}".replace(",", MARKS.get(self.table("thousands"), ""))
        else:
            groups = whole
        return groups if decimals == "0" else f"{groups}{self.table('decimal')}{decimals}"

    def years(self, start: int | None, end: int | None, dates: str = "cal") -> str:
        """
        '950–1050 d. C.', '100 a. C.–50 d. C.'; nothing where neither end is known.

        An era that the project chose is used where the language has words for it; years before present only of
        calibrated dates, as in English.
        """
        known = [year for year in (start, end) if year is not None]
        present = self.table("before_present") if self.era == "BP" and dates.startswith("cal") else ""
        if present and known:
            return f"{self.dash.join(str(before_present(year)) for year in known)} {present}"
        after, before = self.table("after_christ"), self.table("before_christ")
        if self.era == "CE":
            after, before = self.table("after_ce", after), self.table("before_ce", before)
        told = [(abs(year), after if year > 0 else before) for year in known]
        if not told:
            return ""
        if len(told) == 2 and told[0][1] == told[1][1]:
            return f"{told[0][0]}{self.dash}{told[1][0]} {after if told[0][1] == after else before}"
        return self.dash.join(f"{year} {era}" for year, era in told)

    def finished(self, text: str) -> str:
        """One sentence: contractions made, a capital first, one full stop at the end."""
        for pair in self.table("contractions").split(";"):
            long, _, short = pair.strip().partition("=")
            if long:
                text = re.sub(rf"(?<!\w){re.escape(long)} ", f"{short} ", text)
        done = english.finished(text)
        # An era that ends in a full stop ends the sentence too.
        return re.sub(r"\.\.$", ".", done)

    def _form(self, gender: Gender, plural: bool) -> str:
        return f"{gender or 'm'}{'s' if plural else ''}"
