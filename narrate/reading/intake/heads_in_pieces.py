"""What one cell says of a sample in several pieces: 'US 204 / Prél. 3 / 12 L', 'Trench A, (101), 40 L, Period I'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

IN_PIECES = "in pieces"
"""Behind a role of a layout: each cell says several things, told apart by their words."""

_LITRES = r"(?:l|lt|ltrs?|lit(?:re|er)s?|litros?|litri|ml|cc)\b\.?"
_ID = r"(?:(?:no|nr|n°|nº)\.?\s*|#\s*)?(?=[\w./-]*\d)\w[\w./-]*"
_WORDS: tuple[tuple[str, str], ...] = (
    ("sample", r"samples?|smp|smpl|spl|flot|fs|bag|probe|pr|pr[ée]l|pr[ée]l[eè]vement|[ée]ch|[ée]chantillon|muestra|mstra|campione|camp|amostra|monster|prøve|prov|próba|minta|vzorek"),
    ("context", r"us|ue|su|context|cxt|ctx|cont|locus|loc|befund|bef|kontext|contexte?|contesto|layer|schicht|couche|strat(?:um)?|level|niveau|spit|unit|spoor|lager|warstwa"),
    ("feature", r"feature|feat|pit|structure|str|fosse|fait|grube|house|maison|haus|oven|hearth|ditch|posthole|obiekt|anl(?:äg|æg)?g?"),
    ("site", r"trench|tr|area|sector|secteur|sektor|square|zone|sondage|schnitt|operation|op|cata|areal"),
    ("phase", r"phase|ph|period|per|p[ée]riode|periodo|per[ií]odo|fase|horizon|stage"),
)  # fmt: skip
"""Common practice, no source: the words before a number that say what it is of."""


@cache
def pieces_of(text: str) -> dict[str, str]:
    """
    Role -> the piece of a text that speaks of it; what nobody knows is left out.

    >>> pieces_of("US 204 Prél. 3 env. 10 L")
    {'volume': 'env. 10 L', 'sample': 'Prél. 3', 'context': 'US 204'}
    >>> pieces_of("Trench A, (101), 2 buckets of 10 L, Period II")
    {'volume': '2 buckets of 10 L', 'phase': 'Period II', 'context': 'Trench A (101)'}
    """
    found: dict[str, str] = {}
    rest = text
    about = r"(?:env\.?|ca\.?|c\.|etwa|circa|about|approx\.?|~|≈|[<>])?\s*"
    times = r"(?:\d+\s*(?:[x×]|(?:buckets?|bags?|eimer|seaux|cubos)\s*(?:of|à|de|von|@)?)\s*)?"
    litres = re.search(rf"(?<![\w.,]){about}{times}\d+(?:[.,]\d+)?\s*{_LITRES}", rest, re.IGNORECASE)
    if litres:
        found["volume"] = litres[0].strip()
        rest = rest[: litres.start()] + " , " + rest[litres.end() :]
    rest = re.sub(r"\bvol(?:ume|umen)?\b\.?[^,;/]*", " , ", rest, flags=re.IGNORECASE)
    for role, words in _WORDS:
        tail = r"(?:[IVX]+[a-z]?|\d+\w?|[A-Z])\b" if role == "phase" else rf"(?:{_ID}|[A-Z]\b)" if role == "site" else _ID
        match = re.search(rf"(?<!\w)(?i:{words})\b\.?\s*(?:{tail})", rest)
        if match:
            found[role] = match[0].strip()
            rest = rest[: match.start()] + " , " + rest[match.end() :]
    pointed = re.search(r"<\d+[a-z]?>", rest)
    if pointed and "sample" not in found:
        found["sample"] = pointed[0]
    bracket = re.search(r"[(\[]\d+[a-z]?[)\]]", rest)
    if bracket and "context" not in found:
        site = found.pop("site", "")
        found["context"] = f"{site} {bracket[0]}".strip()
    return found


def roles_in_pieces(texts: Sequence[str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """
    (roles that most texts of a row of heads speak for beside the sample, qualifiers of its role in a layout).

    Nothing where no piece tells the samples apart. Where numbers begin anew in each pit, the pit is part of the id.

    >>> roles_in_pieces(["US 4 Prél. 1 12 L", "US 4 Prél. 2 8,5 L"])
    (('context', 'volume'), ('in pieces',))
    >>> roles_in_pieces(["Pit 1 Sample 1, 5 L", "Pit 2 Sample 1, 8 L"]), roles_in_pieces(["Pit 1 Sample 1", "Pit 2 Sample 1"])
    ((('feature', 'volume'), ('in pieces', 'with feature')), ((), ()))
    """
    read = [pieces_of(text) for text in texts if text]
    if len(read) < 2 or not all("sample" in one for one in read):
        return (), ()
    several = len({one["sample"] for one in read})
    before = next(
        (role for role in ("context", "feature", "site") if len({(one.get(role), one["sample"]) for one in read}) == len(read)),
        "",
    )  # fmt: skip
    if several < len(read) and not before:
        return (), ()
    roles = ("context", "feature", "site", "phase", "volume")
    found = tuple(role for role in roles if sum(role in one for one in read) >= 0.6 * len(read))
    if not {"volume", "phase"} & set(found):
        return (), ()  # 'Context 4, Sample 12' is an id as it stands
    return found, (IN_PIECES, *((f"with {before}",) if several < len(read) else ()))


def piece_for(role: str, text: str, qualifiers: Sequence[str]) -> str:
    """What a cell says of a role, by the qualifiers of its line; empty where it says nothing of it."""
    pieces = pieces_of(text)
    more = [pieces.get(one.removeprefix("with "), "") for one in qualifiers if one.startswith("with ")]
    return " ".join(filter(None, [*(more if role == "sample" else ()), pieces.get(role, "")]))
