"""Numbers as a person writes them: digits with any mark between thousands, and words of a language."""

from __future__ import annotations

import re
from dataclasses import dataclass

from narrate.model.languages import Language


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """One number of a text."""

    written: str
    value: float
    decimals: int
    start: int
    end: int
    in_words: bool = False
    has_mark: bool = False
    """Written with a mark between thousands."""


def numbers_in(text: str, language: Language) -> tuple[Number, ...]:
    """
    All numbers of a text in its order; parts of ids (C12, S014) and ordinals (12th, twenty-first) are none.

    'C12 held 1,204 cupules, twenty-three kernels and 12.5 g (AD 950–1050)' holds 1204, 23, 12.5, 950 and 1050.
    """
    mark, comma = language.typed.get("thousands", ","), language.grammar.get("decimal", ".")
    digits = re.compile(rf"(?<![\w.,])(?:\d{{1,3}}(?:{mark}\d{{3}})+(?!\d)|\d+)(?:{re.escape(comma)}\d+)?(?!\w|[.,]\d)")
    found = [_of_digits(match, mark, comma) for match in digits.finditer(text)]
    if language.number_words:
        found += [number for match in _words(language).finditer(text) for number in _of_words(match, language)]
    return tuple(sorted(found, key=lambda number: number.start))


def _words(language: Language) -> re.Pattern[str]:
    """A row of words of numbers, not followed by what makes it an ordinal: 'twenty-first'."""
    names = sorted((*language.number_words, *language.number_times), key=len, reverse=True)
    times = "|".join(map(re.escape, language.number_times)) or "(?!)"
    word, join = f"(?:{'|'.join(map(re.escape, names))})", language.typed.get("joins", "(?!)")
    article, ordinal = language.typed.get("article", "(?!)"), language.typed.get("ordinal", "(?!)")
    return re.compile(
        rf"(?<![\w-])(?:(?:{article})\s+(?=(?:{times})\b))?{word}\b(?:(?:-|\s+(?:{join})\s+|\s+){word}\b)*"
        rf"(?!-(?:{ordinal})\b|\w)",
        re.IGNORECASE,
    )


def _of_digits(match: re.Match[str], mark: str, comma: str) -> Number:
    whole, _, rest = match[0].partition(comma)
    plain = re.sub(mark, "", whole)
    return Number(
        written=match[0],
        value=float(f"{plain}.{rest or 0}"),
        decimals=len(rest),
        start=match.start(),
        end=match.end(),
        has_mark=len(plain) < len(whole),
    )


def _of_words(match: re.Match[str], language: Language) -> list[Number]:
    """The numbers of a row of words: 'twelve and fifteen' are two, 'a hundred and five' is one."""
    join = re.compile(language.typed.get("joins", "(?!)"), re.IGNORECASE)
    found: list[list[re.Match[str]]] = []
    last, joined = 0, False
    for word in re.finditer(r"[^\W\d_]+", match[0]):
        said = word[0].lower()
        worth = language.number_times.get(said) or language.number_words.get(said)
        if join.fullmatch(said):
            joined = True
            continue
        if worth is None:
            found.append([word])
            last = 0
            continue
        is_begun = bool(found) and (last == 0 or _follows(last, said, worth, joined, language))
        found[-1].append(word) if is_begun else found.append([word])
        last, joined = worth, False
    return [_number(words, match.start(), language) for words in found]


def _follows(last: int, said: str, worth: int, joined: bool, language: Language) -> bool:
    """Whether a word goes on with the number: forty-one, four hundred, hundred and five, treinta y uno."""
    if said in language.number_times:
        return not joined and (last < worth or worth < 100)
    if worth >= last or (last in language.number_times.values() and last < 100):
        return False
    joins_tens = language.grammar.get("joins_tens") == "yes"
    return last >= 100 or (last >= 20 and worth < 10 and joined == joins_tens)


def _number(words: list[re.Match[str]], at: int, language: Language) -> Number:
    value, whole = 0, 0
    for word in (found[0].lower() for found in words):
        if word in language.number_times:
            value = (value or 1) * language.number_times[word]
            if language.number_times[word] >= 1000:
                whole, value = whole + value, 0
        else:
            value += language.number_words.get(word, 0)
    written = words[0].string[words[0].start() : words[-1].end()]
    start, end = at + words[0].start(), at + words[-1].end()
    return Number(written=written, value=float(whole + value), decimals=0, start=start, end=end, in_words=True)
