"""Heads of sieve classes that say what share of the class was sorted: '0,5 mm (1/4)', '0.5 mm, 25 % sorted', '>1 mm x4'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

SORTED = "sorted "
"""Before the share, behind the role of a column."""
_SIZE = r"[<>≤≥]?\s*\d+(?:[.,]\d+)?\s*(?:[-–]\s*\d+(?:[.,]\d+)?)?\s*(?:mm|µm|um)|[<>≤≥]\s*\d+(?:[.,]\d+)?"
# Common practice, no source.
_DONE = (
    r"(?:sorted|scanned|examined|analy[sz]ed|sub-?sample[d]?|split|sortiert|ausgelesen|untersucht|teilprobe|tri[ée]e?s?|sous-échantillon|"
    r"revisad[oa]s?|separad[oa]s?|analizad[oa]s?|submuestra|analizzat[oaie]|selezionat[oaie]|sottocampione|uitgezocht|gesorteerd|przebran[aey])"
)
_SHARE = (
    rf"(?:{_DONE}\s*:?\s*)?(?P<share>1\s*/\s*\d{{1,3}}|[2-9]\s*/\s*\d{{1,3}}|\d{{1,3}}(?:[.,]\d+)?\s*%|[½¼⅓⅛¾⅔]|0[.,]\d+|1\s*:\s*\d{{1,3}}|[x×*]\s*\d{{1,3}})"
    rf"(?:\s*(?:of it |of the flot )?{_DONE})?"
)
_HEAD = re.compile(rf"\s*(?P<size>{_SIZE})\s*[,;:]?\s*(?:[(\[]\s*{_SHARE}\s*[)\]]|(?<=[\s,;:]){_SHARE.replace('?P<share>', '?P<open>')})\s*", re.I)
_PARTS_OF_ONE = {"½": "1/2", "¼": "1/4", "⅓": "1/3", "⅛": "1/8", "¾": "3/4", "⅔": "2/3"}


@lru_cache(maxsize=4096)
def size_and_share(text: str) -> tuple[str, str]:
    """
    The sieve class that a head names and the share of it that was sorted; the text as it is and '' where it says none.

    >>> size_and_share("0,5 mm (1/4)"), size_and_share("0.5 mm, 25% sorted"), size_and_share(">1 mm [x4]")
    (('0,5 mm', '1/4'), ('0.5 mm', '25%'), ('>1 mm', '1/4'))
    >>> size_and_share("2 mm"), size_and_share("S 12 (1/4)")
    (('2 mm', ''), ('S 12 (1/4)', ''))
    """
    match = _HEAD.fullmatch(text)
    if match is None:
        return text, ""
    said = (match["share"] or match["open"]).replace(" ", "")
    said = _PARTS_OF_ONE.get(said, said.replace(":", "/"))
    if said[0] in "x×*":
        said = f"1/{said[1:]}"
    return match["size"].strip(), said


def as_share(text: str) -> Fraction | None:
    """
    A share as a number above 0 and up to 1.

    >>> as_share("1/4"), as_share("25%"), as_share("0,5"), as_share("4")
    (Fraction(1, 4), Fraction(1, 4), Fraction(1, 2), None)
    """
    flat = text.replace(" ", "").replace(",", ".")
    try:
        found = Fraction(flat.removesuffix("%")) / (100 if flat.endswith("%") else 1)
    except (ValueError, ZeroDivisionError):
        return None
    return found if 0 < found <= 1 else None
