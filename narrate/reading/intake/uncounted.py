"""Cells that say that something is there and not how many: 'not counted', 'many', 'vials'; and letters of double width."""

# ruff: noqa: E501

from __future__ import annotations

import re

_WIDE = {code: code - 0xFEE0 for code in range(0xFF01, 0xFF5F)} | {0x3000: 0x20}

# Common practice, no source: how laboratories write that they did not count.
_WORDS = re.compile(
    r"(?:present,? )?(?:not|un|non)[ -]?(?:counted|quantified)|no contad[oa]s?|sin contar|non compt[ée]e?s?|non dénombrée?s?|non contat[oiae]|nicht (?:aus)?gez[äa]e?hlt|ungez[äa]e?hlt|niet geteld"
    r"|n[ãa]o contad[oa]s?|nie liczono|nepočítáno|ej räknade?|ikke talt|lots?|(?:very )?many|numerous|massenhaft|unz[äa]e?hlige|very many|innumerable|nombreux|muchos|muchas|molti|molte|muit[oa]s|mange|många"
    r"|多|少|有|多数|多量|大量|少量|少数|若干|微量|未計数|未计数|有り|あり",
    re.IGNORECASE,
)
_HOLDERS = re.compile(
    r"(?:\d+|a|one|½|half a)?\s*(?:(?:small|large|full|half|glass|plastic) )*"
    r"(?:vials?|tubes?|bags?|jars?|box(?:es)?|packets?|capsules? full|envelopes?|handfuls?|spoonfuls?|tea ?spoons?|cups?|dish(?:es)?|trays?|cans?|bottles?"
    r"|frascos?|bols(?:as|itas?)|bolsas?|sobres?|viales?|röhrchen|gläschen|tüten?|beutel|schachteln?|sachets?|tubes? pleins?|flacons?|buisjes?|zakjes?|potjes?|provetta|provette|bustin[ae]|sacchett[oi])",
    re.IGNORECASE,
)


def narrow(text: str) -> str:
    """
    The text with letters of double width, as East Asian writing has them, made plain.

    >>> narrow("＋＋"), narrow("（３）"), narrow("½")
    ('++', '(3)', '½')
    """
    return text.translate(_WIDE) if not text.isascii() else text


def says_uncounted(text: str) -> bool:
    """
    Whether a cell says that there is something, and gives no number of items.

    >>> says_uncounted("not counted"), says_uncounted("1 vial"), says_uncounted("多数"), says_uncounted("12 seeds")
    (True, True, True, False)
    """
    flat = text.strip().strip("()[].").lower()
    return bool(_WORDS.fullmatch(flat) or (_HOLDERS.fullmatch(flat) and flat not in ("a", "one")))
