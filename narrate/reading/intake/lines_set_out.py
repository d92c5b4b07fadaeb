"""Lines of a text that is set out with blanks: their words, and the places on the line in which each stands."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from functools import lru_cache
from itertools import accumulate
from typing import NamedTuple

from narrate.reading.intake.cell_marks import looks_like_amount

_WORD = re.compile(r"\S+")
_TAB = 8
_STROKES = frozenset("-=_*.|+")


def _columns(letter: str) -> int:
    if unicodedata.combining(letter):
        return 0
    return 2 if unicodedata.east_asian_width(letter) in "WF" else 1


Measure = Callable[[str], int]
MEASURES: tuple[Measure, ...] = (
    lambda letter: 1,
    _columns,
    lambda letter: len(letter.encode("utf-8", "replace")),
)
"""How wide a letter is: one place, as many as a screen gives it, or as its bytes. Programs fill up by each of them."""


class Words(NamedTuple):
    """Words with single blanks between them, and the places where they begin and end."""

    start: int
    end: int
    text: str


class SetLine(NamedTuple):
    """What stands on one line of a text."""

    words: tuple[Words, ...]
    pieces: tuple[Words, ...]
    """What two blanks or more part."""
    units: tuple[Words, ...]
    """The pieces, without the amounts that stand a single blank behind other words, and these amounts."""
    amounts: tuple[int, int]
    """How many pieces and how many units behind the first are amounts."""


_WORDS_BEFORE = r"^[ \t]*[^\W\d_](?:(?!\s\d)[^\n])*?"
_LEADERS = re.compile(rf"{_WORDS_BEFORE}(?P<dots>(?<!\.)\.{{4,}}+|(?: \.){{4,}}+)(?=[ \t]+\S|[ \t]*$)")
"""'Zea mays ........   12': dots that lead from a name to its numbers."""
_SHORT_LEADERS = re.compile(rf"{_WORDS_BEFORE}(?P<dots>(?<=\S )\.{{2,3}}+)(?=[ \t]+\S|[ \t]*$)")
"""The same behind long names, where other lines have long ones; elsewhere '..' may stand for nothing found."""
_LEAST_LED = 3


def lines_of(text: str) -> list[str]:
    """
    The lines of a text as editors number them; a form feed is no line end and takes no place, and leading dots are blanks.

    >>> lines_of("Rubus sp. (bramble) .....  14  ..  3"), lines_of("Oak . . . .  5"), lines_of("Oats  12  ..  3")
    (['Rubus sp. (bramble)        14  ..  3'], ['Oak          5'], ['Oats  12  ..  3'])
    """
    lines = re.split(r"\r\n|\n|\r", text.replace("\f", ""))
    bare = [_without_leaders(line, _LEADERS) for line in lines]
    are_led = sum(a != b for a, b in zip(lines, bare, strict=True)) >= _LEAST_LED
    are_dotted = any(re.search(r"\s\.{2,3}(?!\.)(?:\s.*)?\s\.{2,3}(?:\s|$)|\d\s+\.{2,3}(?:\s|$)", line) for line in bare)
    return [_without_leaders(line, _SHORT_LEADERS) for line in bare] if are_led and not are_dotted else bare


def _without_leaders(line: str, leaders: re.Pattern[str]) -> str:
    match = leaders.match(line) if ".." in line or " . ." in line else None
    return line if match is None else line[: match.start("dots")] + " " * len(match["dots"]) + line[match.end("dots") :]


@lru_cache(maxsize=4096)
def set_line(text: str, measure: Measure = MEASURES[0]) -> SetLine:
    """
    The words of a line by their places. Lines are kept as text and taken apart again when they are needed.

    >>> [unit.text for unit in set_line("Wild oats    12 1034   .  worn, one").units]
    ['Wild oats', '12', '1034', '.', 'worn, one']
    """
    flat = text.expandtabs(_TAB)
    words = [Words(match.start(), match.end(), match[0]) for match in _WORD.finditer(flat)]
    if not flat.isascii() and measure is not MEASURES[0]:
        places = [0, *accumulate(measure(letter) for letter in flat)]
        words = [Words(places[start], places[end], said) for start, end, said in words]
    pieces: list[Words] = []
    units: list[Words] = []
    for word in words:
        is_near = bool(pieces) and word.start - pieces[-1].end == 1
        _add(pieces, word, is_near)
        _add(units, word, is_near and not (looks_like_amount(word.text) or looks_like_amount(units[-1].text)))
    amounts = (sum(looks_like_amount(one.text) for one in found[1:]) for found in (pieces, units))
    return SetLine(tuple(words), tuple(pieces), tuple(units), (next(amounts), next(amounts)))


def _add(found: list[Words], word: Words, is_near: bool) -> None:
    if is_near:
        last = found.pop()
        word = Words(last.start, word.end, f"{last.text} {word.text}")
    found.append(word)


def is_rule(text: str) -> bool:
    """
    Whether a line is drawn and says nothing.

    >>> is_rule("-----  ----+----"), is_rule("Oats ---- 3"), is_rule("   .     -")
    (True, False, False)
    """
    if text.lstrip()[:1] not in _STROKES:
        return False
    strokes = [stroke for stroke in re.split(r"[\s|+]+", text) if stroke]
    return bool(strokes) and all(len(stroke) >= 3 and set(stroke) <= _STROKES for stroke in strokes)
