"""Text files that Japanese, Chinese and Korean programs save where nobody asks for UTF-8: told by their usual letters."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class _EastAsian:
    name: str
    codec: str
    is_usual: Callable[[str], bool]
    """Whether a letter is one that any text in this encoding is mostly made of."""


def _in(codec: str, first: int, last: int) -> Callable[[str], bool]:
    """Whether a letter is among the usual ideographs of a standard, whose rows begin with one of these bytes."""

    def is_in(letter: str) -> bool:
        raw = letter.encode(codec, "ignore")
        return len(raw) == 2 and first <= raw[0] <= last

    return is_in


def _is_kana(letter: str) -> bool:
    return "\u3040" <= letter <= "\u30ff"


def _is_hangul(letter: str) -> bool:
    return "\uac00" <= letter <= "\ud7a3"


def _is_mark(letter: str) -> bool:
    """Marks, numbers in rings and letters of full width, which all of them have."""
    spans = (("\u3000", "\u303f"), ("\uff01", "\uff60"), ("\u2460", "\u24ff"))
    return letter in "℃×±" or any(first <= letter <= last for first, last in spans)


_JAPANESE, _CHINESE, _TAIWANESE = _in("cp932", 0x88, 0x97), _in("gb2312", 0xB0, 0xD7), _in("big5", 0xA4, 0xC6)
# Of those that fit alike the first is taken: rows of Hangul are rows of usual Chinese letters too.
# The rows of the more usual ideographs: JIS X 0208 level 1, GB 2312 level 1, Big5 level 1 (from memory).
_ENCODINGS = (
    _EastAsian(name="Shift-JIS (Japanese)", codec="cp932", is_usual=lambda one: _is_kana(one) or _JAPANESE(one)),
    _EastAsian(name="EUC-KR (Korean)", codec="cp949", is_usual=_is_hangul),
    _EastAsian(name="GBK (Chinese)", codec="gb18030", is_usual=_CHINESE),
    _EastAsian(name="Big5 (Chinese)", codec="cp950", is_usual=_TAIWANESE),
    _EastAsian(name="EUC-JP (Japanese)", codec="euc_jp", is_usual=lambda one: _is_kana(one) or _JAPANESE(one)),
)
_LEAST_LETTERS, _MOST_USUAL, _MOST_BESIDE = 10, 0.85, 0.75
"""Letters that are enough, and how many of them must be usual ones, and stand beside another (judgement)."""


def east_asian_encoding(content: bytes) -> tuple[str, str, str] | None:
    """
    The text, and the name and codec of the East Asian encoding that its letters speak for; None for no such text.

    Where a text of another script is taken for one, hardly a letter is a usual one, and most stand alone.

    >>> east_asian_encoding("アワ,炭化種子,オオムギ".encode("cp932"))
    ('アワ,炭化種子,オオムギ', 'Shift-JIS (Japanese)', 'cp932')
    >>> east_asian_encoding("рожь,овес,семена,ячмень".encode("koi8-r")) is None
    True
    >>> east_asian_encoding("Größe, Hüllspelze, Körner".encode("cp1252")) is None
    True
    """
    if any(_is_cyrillic(content.decode(codec, "replace")) for codec in ("koi8-r", "cp1251")):
        return None
    found: list[tuple[float, tuple[str, str, str]]] = []
    for one in _ENCODINGS:
        try:
            text = content.decode(one.codec)
        except UnicodeDecodeError:
            continue
        share = _usual(text, one.is_usual)
        if share:
            found.append((share, (text, one.name, one.codec)))
    return max(found, key=lambda pair: pair[0])[1] if found else None


def _is_cyrillic(text: str) -> bool:
    """Whether nearly all signs beyond ASCII are Cyrillic letters, and none in a word is a capital behind a small one."""
    beyond = [sign for sign in text if not sign.isascii()]
    letters = sum(bool(re.match("[А-яЁё]", sign)) for sign in beyond)
    return letters >= 0.95 * len(beyond) and re.search(r"[а-яё][А-ЯЁ]", text) is None


def _usual(text: str, is_usual: Callable[[str], bool]) -> float:
    """The share of usual letters among those beyond ASCII; nought for a text that is none of this encoding."""
    at = [n for n, letter in enumerate(text) if not letter.isascii() and not _is_mark(letter)]
    if len(at) < _LEAST_LETTERS:
        return 0.0
    places = {n for n, letter in enumerate(text) if not letter.isascii()}
    beside = sum(n - 1 in places or n + 1 in places for n in at) / len(at)
    usual = sum(is_usual(text[n]) for n in at) / len(at)
    return usual if usual >= _MOST_USUAL and beside >= _MOST_BESIDE else 0.0
