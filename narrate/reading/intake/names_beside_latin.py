"""Names of East Asian tables, which stand before or behind the Latin ones: '粟 Setaria italica', 'Oryza sativa（稻）'."""

# ruff: noqa: E501

from __future__ import annotations

import re

_LETTERS = r"[\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af]"
_OWN = rf"{_LETTERS}[\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af·・?/,、() ]*"
_LATIN = r"(?:cf\.? |aff\.? )?[A-Za-z][A-Za-z][^\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af]*"
_BEFORE = re.compile(rf"(?P<own>{_OWN}?)[\s/,，(]*(?P<latin>{_LATIN}?)\)?(?P<behind>\({_OWN}?\))?")
_BEHIND = re.compile(rf"(?P<latin>{_LATIN}?)[\s/,，(]*(?P<own>{_OWN}?)\)?")


def beside_latin(name: str) -> tuple[str, str]:
    """
    The Latin name and the other one of a text that holds both; nothing and nothing for other texts.

    >>> beside_latin("粟 Setaria italica"), beside_latin("Oryza sativa (稻)"), beside_latin("酸浆属? cf. Physalis sp.")
    (('Setaria italica', '粟'), ('Oryza sativa', '稻'), ('cf. Physalis sp.', '酸浆属?'))
    >>> beside_latin("Oryza sativa"), beside_latin("稻"), beside_latin("イネ(Oryza sativa)")
    (('', ''), ('', ''), ('Oryza sativa', 'イネ'))
    >>> beside_latin("水稻 Oryza sativa (小穗轴)")
    ('Oryza sativa', '水稻(小穗轴)')
    """
    if name.isascii() or not re.search(_LETTERS, name):
        return "", ""
    match = _BEFORE.fullmatch(name.strip()) or _BEHIND.fullmatch(name.strip())
    behind = match.groupdict().get("behind") or "" if match else ""
    return (match["latin"].strip(), match["own"].strip() + behind) if match else ("", "")


_PIECES = re.compile(r"[\s(]*(?:破片|碎片|残片|残块|碎块|破碎|残)\)?\s*$")


def says_pieces_beside(own: str) -> bool:
    """
    Whether an East Asian name ends in a word for pieces.

    >>> says_pieces_beside("イネ 穎果(破片)"), says_pieces_beside("オニグルミ 核 破片"), says_pieces_beside("粟")
    (True, True, False)
    """
    return bool(_PIECES.search(own))


def last_part(own: str) -> str:
    """
    The word for a part that an East Asian name ends in, or that stands behind it in brackets; empty for none.

    >>> last_part("核桃楸壳"), last_part("稻穗轴"), last_part("稻(小穗轴)"), last_part("粟")
    ('壳', '穗轴', '小穗轴', '')
    """
    own = _PIECES.sub("", own).strip()
    match = re.search(r"(小穗轴|小穂軸|穗轴|穂軸|果壳|核壳|果核|种子|種子|穎果|頴果|颖果|炭化米|果实|果実|核|壳)\)?\??$", own)
    return match[1] if match and match.start() > 0 else ""
