"""Numbers of a text that count nothing: years, dates, sizes, names of places, citations, fractions."""

from __future__ import annotations

import re
from dataclasses import dataclass

from narrate.drafts.number_words import Number
from narrate.model.languages import Language

_YEARS = range(500, 2101)
_NUMBER = r"\d+(?:[.,]\d+)?"
_JOIN = r"\s*(?:,|–|—|-|/|to|a|and|y|or|o|×|x|by|por|±)\s*"
_ANYWHERE = (
    r"\d{4}-\d{2}-\d{2}|\d{1,2}[./]\d{1,2}[./]\d{2,4}|\d{1,2}:\d{2}",  # dates and hours
    r"(?:https?://|doi:|www\.)\S+|10\.\d{4,}/\S+",
    r"\b[A-Z][A-Za-z]*-\d+",  # numbers of laboratories
    rf"[–-]?{_NUMBER}\s*±\s*{_NUMBER}|\d+\s*/\s*\d+",
    r"\b(?:1[5-9]|20)\d\d[a-z]?\s*[,:]\s*\d+(?:\s*[–-]\s*\d+)?",  # a page of a work that is cited
    r"\b\d+(?:\.\d+)?\s*YR\b\s*(?:\d+/\d+)?",  # colours of soil
    r"[×x]\s?\d+\b|\b\d+\s?[×x](?!\s?\d)",  # enlargement
    r"\b\d+\s*:\s*\d+\b",
    r"\b[NSEW]\s?\d+|\b\d+\s?[NSEW]\b|#\s?\d+",  # squares of a grid
)
_SIZES = r"mm|cm|dm|m|km|µm|μm|m²|m2|m³|cm²|cm³|ha|kg|mg|ml|°(?:\s?C)?|º|h|s|kyr|ka"


@dataclass(frozen=True, slots=True, kw_only=True)
class Passed:
    """Stretches of a text whose numbers are let pass."""

    spans: tuple[tuple[int, int], ...]
    text: str
    language: Language

    def covers(self, number: Number) -> bool:
        if any(start <= number.start and number.end <= end for start, end in self.spans):
            return True
        is_article = number.in_words and re.fullmatch(self.language.typed["article"], number.written, re.IGNORECASE)
        return bool(is_article) or self._is_bare_year(number)

    def _is_bare_year(self, number: Number) -> bool:
        """A number that may be a year, without a thing behind it."""
        if number.in_words or number.decimals or number.has_mark or int(number.value) not in _YEARS:
            return False
        after = self.text[number.end :]
        if re.match(rf"[\s\u00a0]*(?:%|{self.language.typed['percent']}\b)", after):
            return False
        return re.match(rf"\s*(?:[^\w\s–-]|\Z|[\s–-]+(?:{self.language.typed['stops']}|\d)\b)", after) is not None


def no_counts(text: str, language: Language) -> Passed:
    """The stretches of a text whose numbers count nothing."""
    typed = language.typed
    names = "|".join(sorted(language.number_words, key=len, reverse=True))
    word = rf"(?:{names or '(?!)'}|{typed.get('article', '(?!)')})"
    row = rf"{_NUMBER}(?:{_JOIN}{_NUMBER})*"
    eras = rf"(?:cal\.?\s*)?(?:{typed['years']})"
    patterns = [
        *_ANYWHERE,
        rf"{row}[\s\u00a0]*{eras}(?!\w)",
        rf"\b(?:{typed['years']}|cal)\.?\s*(?:AD|CE|BC|BCE|BP)?\s*{row}",
        rf"\b(?:{typed['places']})\.?\s*(?:[A-Z]?\d+{_JOIN})*[A-Z]?{_NUMBER}",
        rf"{row}(?:st|nd|rd|th|º|ª)?\.?\s*(?:{typed['months']})(?!\w)(?:[\s,]*(?:de\s*)?\d{{4}})?",
        rf"\b(?:{typed['months']})\s*\d{{1,2}}(?:st|nd|rd|th)?(?:\s*[–-]\s*\d+)?(?:,?\s*\d{{4}})?\b",
        rf"{row}[\s\u00a0\u202f-]*(?:{_SIZES}|{typed['units']})(?![\w])",
        rf"(?:{word}[\s-]+)+(?:{typed['units']}|{typed['parts_of_one']})\b",
        rf"{row}[\s\u00a0]*(?:%|{typed['percent']})\s*(?:{typed['beside_percent']})(?!\w)",
        rf"\d+\s+(?:{typed['out_of']})\s+(?=\d)",
        rf"{_NUMBER}\s*\S+\s+(?:{typed['each']})\b",
        rf"\b{word}\s+(?:{typed['out_of']})\s+{word}\b(?!-)",
        rf"(?:{typed['dates_after']})\s+(?:\d{{4}}{_JOIN})+\d{{4}}\b(?!\s+[a-z])",
    ]
    found = []
    for pattern in patterns:
        found += [match.span() for match in re.finditer(pattern, text, 0 if "[A-Z]" in pattern else re.IGNORECASE)]
    return Passed(spans=tuple(found), text=text, language=language)
