"""How wide words will be, without a font at hand: readers bring their own."""

from __future__ import annotations

from functools import lru_cache
from unicodedata import east_asian_width

from narrate.charts.marks import ITALIC, ROMAN

# Widths in parts of the font size, a little above those of DejaVu Sans, the widest of the common system fonts.
_WIDTHS = {"ijl|'.,:;!I": 0.33, "ft()[]r-/ ": 0.42, "mwMW@%": 0.96, "ABCDEFGHJKLNOPQRSTUVXYZ&#": 0.74}
_BY_LETTER = {letter: width for letters, width in _WIDTHS.items() for letter in letters}


@lru_cache(maxsize=65_536)
def width_of(text: str, size: float, is_bold: bool = False) -> float:
    """Width that the text needs at most, in units of the svg."""
    return sum(map(_letter, text)) * size * (1.1 if is_bold else 1.0)


@lru_cache(maxsize=16_384)
def wrapped(text: str, size: float, room: float, lines: int = 3) -> tuple[str, ...]:
    """
    The text in at most so many lines that fit the room; what does not fit ends in '…'.

    Breaks at spaces, and inside a word only where the word alone is too long.
    """
    done: list[str] = []
    for word in text.split():
        for piece in _pieces(word, size, room):
            joined = f"{done[-1]} {piece}" if done else piece
            if done and width_of(joined, size) <= room:
                done[-1] = joined
            else:
                done.append(piece)
    if len(done) > lines:
        done = [*done[: lines - 1], shortened(" ".join(done[lines - 1 :]), size, room)]
    return _with_italics_closed(done)


def shortened(text: str, size: float, room: float) -> str:
    """The text, cut with '…' where it would not fit the room."""
    if width_of(text, size) <= room:
        return text
    while text and width_of(text + "…", size) > room:
        text = text[:-1]
    return text.rstrip() + "…"


@lru_cache(maxsize=65_536)
def _letter(letter: str) -> float:
    if letter in (ITALIC, ROMAN):
        return 0.0
    if east_asian_width(letter) in "WF":
        return 1.0
    return _BY_LETTER.get(letter, 0.65)


def _pieces(word: str, size: float, room: float) -> list[str]:
    if width_of(word, size) <= room:
        return [word]
    pieces = [""]
    for letter in word:
        if width_of(pieces[-1] + letter, size) > room and pieces[-1]:
            pieces.append("")
        pieces[-1] += letter
    return pieces


def _with_italics_closed(lines: list[str]) -> tuple[str, ...]:
    """Every line opens and closes its own italics."""
    closed: list[str] = []
    is_italic = False
    for line in lines:
        line = (ITALIC if is_italic else "") + line
        is_italic = line.count(ITALIC) > line.count(ROMAN)
        closed.append(line + (ROMAN if is_italic else ""))
    return tuple(closed)
