"""What a remark beside an amount or a name says plainly: a condition, pieces, a doubt."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, lru_cache


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    """What a remark says of a find; empty where it says nothing that a field holds."""

    condition: str = ""
    completeness: str = ""
    is_doubtful: bool = False
    of_some: str = ""
    """The condition that it gives to some of the items and not to all: '2 of them uncharred'."""

    @property
    def says_nothing(self) -> bool:
        return not (self.condition or self.completeness or self.is_doubtful or self.of_some)


_CONDITIONS: tuple[tuple[str, str], ...] = (
    ("uncharred", r"\b(?:un-?(?:charred|carboni[sz]ed|burnt|burned)|(?:not|non)[ -](?:charred|carboni[sz]ed|burnt|burned)|uc|un-?(?:carb|char)|(?:not|non)[ -](?:carb|char)"
        r"|un-?verkohlte?[rsn]?|on-?verkoolde?|u-?forkulle(?:de?|t)|o-?förkolna(?:de?|t)|μη[ -]απανθρακωμέν\w*|(?:nicht|niet|no|non|não|ikke|inte|ej|pas|sin|sans|senza|sem|ohne|zonder)[ -](?:verkohlte?[rsnm]?|verkohlung|verkoling|carbonizar|carbonisation|carbonizzazione|carbonizar|quemar|queimar|verkoolde?|carbon(?:isée?s?|izad[oa]s?|izzat[oiae])|quemad[oa]s?|brûlée?s?|combust[oiae]|forkulle(?:t|de)|förkolna(?:d|t|de))|nie ?(?:zwęglon|spalon)\w*|ne(?:zuhelnatěl|spálen|karbonizovan|pougljen|zoglenel|karbonizira)\w*|nem szenült|karbonlaşmamış|kömürleşmemiş)\b"),
    ("partly charred", r"\b(?:part(?:ly|ially)?|semi|half|incompletely)[ -](?:charred|carboni[sz]ed|burnt|burned)\b|\b(?:angekohlt|teilverkohlt|halbverkohlt|(?:teilweise|gedeeltelijk|deels|parcialmente|parzialmente|partiellement|semi)[ -](?:verkohlt|verkoold|carbon(?:isée?s?|izad[oa]s?|izzat[oiae])))\b"),
    ("mineralised", r"\bminerali[sz]ed\b|\bmineral[ -]replaced\b|\bmin[eé]rali(?:siert|sierte|sée?s?|zad[oa]s?|zzat[oiae]|serede?|serade?|seret|serat|sert)\b|\bmineralizovan\w*|\bmineralleşmiş\b|\bορυκτοποιημέν\w*|\bgemineraliseerde?\b|\bzmineralizowan\w*|\bmin[eé]rali[sz]+(?=\.)"),
    ("waterlogged", r"\bwater-?logged\b|\banoxic\b|\bwaterverzadigde?\b|\bfeucht ?erhalten(?:e[rsn]?)?\b|\bwassergesättigte?[rsn]?\b|\bvandmættede?\b|\bvattenmätta(?:d|de|t)\b|\bsaturad[oa]s? de agua\b|\buwodnion\w*|\bimbib(?:ée?s?|it[oiae])\b|\bgorgée?s? d'eau\b|\bencharcad[oa]s?\b"),
    ("desiccated", r"\b(?:desiccated|dessicated|des?secad[oa]s?|disseccat[oiae]|gedroogde?|desséchée?s?|essiccat[oiae]|ausgetrocknet|ingedroogd)\b"),
    ("charred", r"\b(?:charred|carboni[sz]ed|burnt|burned|verkohlte?[rsn]?|verkoolde?|carbonisée?s?|carbonizad[oa]s?|carbonizzat[oiae]|quemad[oa]s?|brûlée?s?|combust[oiae]|forkulle(?:de?|t)|förkolna(?:de?|t)|απανθρακωμέν\w*|zwęglon\w*|spalon\w*|zuhelnatěl\w*|spálen\w*|karbonizovan\w*|pougljen\w*|zoglenel\w*|szenült|karbonlaşmış|kömürleşmiş)\b"),
)  # fmt: skip
"""Ordered: 'uncharred' and 'partly charred' are taken out before 'charred' is looked for."""
_MODERN = re.compile(
    r"\W*(?:prob(?:ably|\.)?|poss(?:ibly|\.)?|likely)?\W*(?:modern|recent|fresh|intrusive|rezent|moderne?|récente?|reciente|moderno|subrecent)"
    r"(?: (?:seeds?|grains?|specimens?|intrusions?|intrusive|contaminants?|contamination|material))?\W*",
    re.IGNORECASE,
)
"""'Modern' alone is a condition; 'held against modern seeds' is not."""
_SOME = re.compile(
    r"\d|½|\b(?:some|several|most(?:ly)?|few|half|one|two|three|part of|majority|mainly|rest|others?|mix(?:ed|ture)?)\b",
    re.IGNORECASE,
)
_PIECES = re.compile(
    r"(?:(?:all|only|nur|alle|in|as|en|tous|solo|sólo|todos|tutti|só|alleen|tylko) )?(?:f|fg|fr|frags?\.?|fragm\.?|fragments?|fragmented|broken|bits|pieces"
    r"|fragmente|fragmentiert|fragmenter(?:ad|at|ade|et|ede|t)|bruchstücke?|bruchstücken|zerbrochen|fragmenté?e?s?|fragmentos?|fragmentad[oa]s?|roto?s?|rota?s?|framment[oi]|frammentat[oiae]|fragmenten|gebroken|fragment[yó]w?|ułamki|kawałki|kırık(?:lar)?|θραύσμα(?:τα)?|zlom(?:ek|ky)|úlom(?:ek|ky)|töredék(?:es)?|brottstycken?|brudd?stykker?)"
    r"(?: (?:only|alone|nur|seulement|seuls?|sol[oa]mente|sólo|solo|soltanto|alleen|tylko))?",
    re.IGNORECASE,
)
_DOUBT = re.compile(
    r"\??cf\.?|\?+|(?:id(?:entification)?\.?\s*)?(?:uncertain|doubtful|tentative|unsure|possible|possibly|probable|probably)"
    r"(?: id(?:entification)?\.?)?|(?:uncertain|tentative|doubtful|possible|probable)(?:ly)? identifi(?:cation|ed)",
    re.IGNORECASE,
)


@cache
def remark(text: str) -> Remark:
    """
    What a remark says.

    >>> remark("uncharred").condition, remark("not charred").condition, remark("modern seed").condition
    ('uncharred', 'uncharred', 'uncharred')
    >>> remark("held against modern seeds").says_nothing, remark("2 of them uncharred").of_some, remark("cf.").is_doubtful
    (True, 'uncharred', True)
    >>> remark("charred and uncharred").condition, remark("identified from fragments").completeness
    ('', 'fragment')
    """
    flat = " ".join(text.split()).strip()
    found = conditions_in(flat)
    if _MODERN.fullmatch(flat):
        found = ("uncharred",)
    condition = found[0] if len(found) == 1 else ""
    if len(found) > 1 or (condition and _SOME.search(flat)):
        return Remark(of_some=" and ".join(found))
    bare = flat.strip(" ()[],;:.")
    is_pieces = bool(_PIECES.fullmatch(bare) or re.search(r"\b(?:identified|counted|based) (?:from|on|as) frag", bare, re.I))
    return Remark(
        condition=condition, completeness="fragment" if is_pieces else "", is_doubtful=bool(_DOUBT.fullmatch(bare))
    )


def says_pieces(remarks: Iterable[str]) -> bool:
    """
    Whether a remark on a find, or a part of it between commas, says no more than that it is in pieces.

    >>> says_pieces(["Fragmente"]), says_pieces(["eroded, broken"]), says_pieces(["two fragments"]), says_pieces(["f"])
    (True, True, False, False)
    """
    pieces = (text.strip() for whole in remarks for text in re.split(r"[;,]", whole))
    return any(len(text) > 2 and bool(remark(text).completeness) for text in pieces)


@lru_cache(maxsize=4096)
def conditions_in(text: str) -> tuple[str, ...]:
    """
    The conditions that a text names, each once.

    >>> conditions_in("partly charred"), conditions_in("charred/uncharred"), conditions_in("well preserved")
    (('partly charred',), ('uncharred', 'charred'), ())
    """
    return _parted(text)[0]


def telling(conditions: Iterable[str]) -> list[str]:
    """
    Conditions, each once, without 'uncharred' where one beside it says what has kept the remains instead.

    >>> telling(["waterlogged", "uncharred"]), telling(["charred", "uncharred"])
    (['waterlogged'], ['charred', 'uncharred'])
    """
    found = list(dict.fromkeys(conditions))
    said = {"waterlogged", "mineralised", "desiccated"} & set(found)
    return [one for one in found if one != "uncharred"] if said and len(found) == 2 else found


def without_conditions(text: str) -> str:
    """
    A text without the conditions that it names.

    >>> without_conditions("not charred, eroded").strip(" ,")
    'eroded'
    """
    return _parted(text)[1]


def conditions_at(text: str) -> list[tuple[int, str]]:
    """
    The conditions that a text names, each with where it stands in it, in their order.

    >>> conditions_at("charred seeds, uncharred ones")
    [(0, 'charred'), (15, 'uncharred')]
    """
    rest = text.lower()
    found = []
    for condition, pattern in _CONDITIONS:
        for match in re.finditer(pattern, rest):
            found.append((match.start(), condition))
        rest = re.sub(pattern, lambda match: " " * len(match[0]), rest)
    return sorted(found)


@cache
def _parted(text: str) -> tuple[tuple[str, ...], str]:
    rest = text.lower()
    found = []
    for condition, pattern in _CONDITIONS:
        without = re.sub(pattern, " ", rest)
        if without != rest:
            found.append(condition)
            rest = without
    return tuple(found), rest
