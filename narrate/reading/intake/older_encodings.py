"""Which older encoding a text file was saved in, told by the letters and signs inside its words."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from itertools import pairwise

# Common practice, no source: the letters beyond a to z of the languages that each encoding serves.
_WESTERN = {
    "German": "äöüß", "French": "àâæçéèêëîïôœùûüÿ", "Spanish": "áéíóúüñç", "Catalan": "àáçèéíïñòóúü",
    "Portuguese": "áâãàçéêíóôõúü", "Italian": "àèéìíîòóùú", "Dutch": "äáèéëïíöóüú", "Danish": "æøåéäöü",
    "Swedish": "åäöéüø", "Icelandic": "áðéíóúýþæö", "Irish": "áéíóú", "Finnish": "åäöšž", "Albanian": "çë",
}  # fmt: skip
_CENTRAL = {
    "Polish": "ąćęłńóśźż", "Czech": "áčďéěíňóřšťúůýž", "Slovak": "áäčďéíĺľňóôŕšťúýž", "Hungarian": "áéíóöőúüű",
    "Croatian": "čćđšž", "Romanian": "ăâîşţ", "German": "äöüß",
}  # fmt: skip
_RUSSIAN = "абвгдеёжзийклмнопрстуфхцчшщъыьэюяіїєґўђјљњћџѓќѕ"
_GREEK = "αβγδεζηθικλμνξοπρστυφχψωάέήίόύώϊϋΐΰς"


@dataclass(frozen=True, slots=True, kw_only=True)
class Older:
    """One encoding from before UTF-8."""

    name: str
    codec: str
    languages: dict[str, str]
    is_other_script: bool = False


# In the order in which they are taken where the letters tell no difference.
_OLDER = (
    Older(name="Windows-1252", codec="cp1252", languages=_WESTERN),
    Older(name="Windows-1250 (Central European)", codec="cp1250", languages=_CENTRAL),
    Older(name="ISO 8859-2 (Central European)", codec="iso8859-2", languages=_CENTRAL),
    Older(name="Windows-1254 (Turkish)", codec="cp1254", languages={"Turkish": "âçğıiîöşüû"}),
    Older(name="Windows-1257 (Baltic)", codec="cp1257", languages={
        "Lithuanian": "ąčęėįšųūž", "Latvian": "āčēģīķļņšūž", "Estonian": "äõöüšž"}),
    Older(name="Windows-1251 (Cyrillic)", codec="cp1251", languages={"Cyrillic": _RUSSIAN}, is_other_script=True),
    Older(name="Windows-1253 (Greek)", codec="cp1253", languages={"Greek": _GREEK}, is_other_script=True),
    Older(name="Mac Roman", codec="mac_roman", languages=_WESTERN),
    Older(name="DOS code page 850", codec="cp850", languages=_WESTERN),
    Older(name="DOS code page 852", codec="cp852", languages=_CENTRAL),
)  # fmt: skip
_LETTER, _SIGN, _LEAST = 1, 2, 2
"""What a letter that the language lacks counts against an encoding, what a sign inside a word does, and by how much
another must be better than Windows-1252 to be taken."""
_HAS_ALWAYS = {"Icelandic": "áéíóúæ"}
"""Letters of which any text of a language holds one; without them 'buðday' is Turkish."""
_JOINING = "'’`´-‐‑–·_\u00ad"
_NEVER_FIRST = "³¹¶¿"
"""Signs in Windows-1252 that are letters in Central European encodings, before a small letter: '³upina'."""
_WORD = re.compile(rb"[A-Za-z\x80-\xff]+")


def older_encoding(content: bytes) -> tuple[str, Older]:
    """
    The text, and the encoding that its words speak for: Windows-1252 unless another fits them clearly better.

    >>> older_encoding("Korn, Größe".encode("cp1252"))[1].name
    'Windows-1252'
    >>> older_encoding("pszenica płaskurka".encode("cp1250"))[1].name
    'Windows-1250 (Central European)'
    >>> older_encoding("пшеница, ячмень".encode("cp1251"))[0]
    'пшеница, ячмень'
    """
    words = Counter(word for word in _WORD.findall(content) if len(word) > 1 and not word.isascii())
    scores = [(_against(words, older), n) for n, older in enumerate(_OLDER)]
    best, n = min(scores)
    chosen = _OLDER[n] if best + _LEAST <= scores[0][0] else _OLDER[0]
    try:
        return content.decode(chosen.codec), chosen
    except UnicodeDecodeError:
        return content.decode("latin-1"), Older(name="Latin-1", codec="latin-1", languages=_WESTERN)


def _against(words: Counter[bytes], older: Older) -> int:
    """How much in words speaks against an encoding: in the language of it that fits them best."""
    signs = 0
    letters: Counter[str] = Counter()
    for raw, n in words.items():
        try:
            word = raw.decode(older.codec)
        except UnicodeDecodeError:
            signs += n * _SIGN
            continue
        signs += n * _signs_inside(word, older)
        for letter in word.lower():
            if not letter.isascii() and letter.isalpha():
                letters[letter] += n
    return signs + min(_unusual(letters, language, known) for language, known in older.languages.items())


def _unusual(letters: Counter[str], language: str, known: str) -> int:
    lacks = language in _HAS_ALWAYS and letters and not set(letters) & set(_HAS_ALWAYS[language])
    return sum(n for letter, n in letters.items() if letter not in known) + (_LEAST if lacks else 0)


def _signs_inside(word: str, older: Older) -> int:
    """What signs count where a word has letters: '³' in 'p³askurka', a capital in 'prÓba', two scripts in one word."""
    letters = [n for n, sign in enumerate(word) if sign.isalpha()]
    if not letters:
        return 0
    inside = sum(sign not in _JOINING and not sign.isalpha() for sign in word[letters[0] : letters[-1]])
    found = _SIGN * inside
    found += _LETTER * (word[0] in _NEVER_FIRST and word[1].islower())
    found += _SIGN * sum(not b.isascii() and b.isupper() and a.islower() for a, b in pairwise(word))
    if older.is_other_script:
        found += _SIGN * (len({word[n].isascii() for n in letters}) > 1)
    return found
