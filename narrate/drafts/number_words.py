"""Numbers as a person writes them in English: digits with any mark between thousands, and words."""

from __future__ import annotations

import re
from dataclasses import dataclass

_ONES = (
    *("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"),
    *("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_WORTH = {word: n for n, word in enumerate(_ONES)} | {word: 10 * n for n, word in enumerate(_TENS, start=2)}
_TIMES = {"hundred": 100, "thousand": 1000, "dozen": 12}
_WORD = rf"(?:{'|'.join((*_WORTH, *_TIMES))})"
_MARK = "[,'’\u00a0\u2009\u202f]"
_DIGITS = re.compile(rf"(?<![\w.])(?:\d{{1,3}}(?:{_MARK}\d{{3}})+(?!\d)|\d+)(?:\.\d+)?(?![\w]|[.,]\d)")
_WORDS = re.compile(
    rf"(?<![\w-])(?:an?\s+(?=hundred|thousand|dozen))?{_WORD}(?:(?:-|\s+and\s+|\s+){_WORD})*(?![\w])", re.IGNORECASE
)


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


def numbers_in(text: str) -> tuple[Number, ...]:
    """
    All numbers of a text in its order; parts of ids (C12, S014) are none.

    >>> [n.written for n in numbers_in("C12 held 1,204 cupules, twenty-three kernels and 12.5 g (AD 950–1050).")]
    ['1,204', 'twenty-three', '12.5', '950', '1050']
    """
    found = [_of_digits(match) for match in _DIGITS.finditer(text)]
    found += [number for match in _WORDS.finditer(text) for number in _of_words(match)]
    return tuple(sorted(found, key=lambda number: number.start))


def _of_digits(match: re.Match[str]) -> Number:
    plain = re.sub(_MARK, "", match[0])
    decimals = len(plain.partition(".")[2])
    return Number(
        written=match[0],
        value=float(plain),
        decimals=decimals,
        start=match.start(),
        end=match.end(),
        has_mark=len(plain) < len(match[0]),
    )


def _of_words(match: re.Match[str]) -> list[Number]:
    """The numbers of a row of words: 'twelve and fifteen' are two, 'a hundred and five' is one."""
    found: list[list[re.Match[str]]] = []
    last, joined = 0, False
    for word in re.finditer(r"[a-z]+", match[0], re.IGNORECASE):
        said = word[0].lower()
        if said in ("a", "an"):
            found.append([word])
            last = 0
        elif said == "and":
            joined = True
        else:
            worth = _TIMES.get(said) or _WORTH[said]
            is_begun = bool(found) and (last == 0 or _follows(last, said, worth, joined))
            found[-1].append(word) if is_begun else found.append([word])
            last, joined = worth, False
    return [_number(words, match.start()) for words in found]


def _follows(last: int, said: str, worth: int, joined: bool) -> bool:
    """Whether a word goes on with the number: forty-one, four hundred, hundred and five."""
    if said in _TIMES:
        return not joined and (last < worth or said == "dozen")
    return worth < last and (last >= 100 or (last >= 20 and worth < 10 and not joined)) and last != _TIMES["dozen"]


def _number(words: list[re.Match[str]], at: int) -> Number:
    value, whole = 0, 0
    for word in (found[0].lower() for found in words):
        if word in _TIMES:
            value = (value or 1) * _TIMES[word]
            if word == "thousand":
                whole, value = whole + value, 0
        else:
            value += _WORTH.get(word, 0)
    written = words[0].string[words[0].start() : words[-1].end()]
    start, end = at + words[0].start(), at + words[-1].end()
    return Number(written=written, value=float(whole + value), decimals=0, start=start, end=end, in_words=True)
