"""Headings of ratios: 'grain:chaff', 'weeds / cereals'. Their numbers are worked out, and are of no find."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import cache

# Common practice, no source: what such ratios are made of, in a few languages.
_GROUPS = frozenset(
    ["wild", "weed", "weeds", "cereal", "cereals", "crop", "crops", "wheat", "wheats", "barley", "emmer", "einkorn", "spelt", "rye", "oat", "oats", "millet", "millets", "maize", "corn", "pulse", "pulses", "legume", "legumes", "nut", "nuts", "fruit", "fruits", "domestic", "domesticated", "domesticates", "cultivated", "cultivars", "cultigens", "hulled", "naked", "native", "starchy", "oily", "getreide", "unkraut", "unkräuter", "wildpflanzen", "kulturpflanzen", "weizen", "gerste", "céréale", "céréales", "adventices", "sauvages", "cultivées", "blé", "orge", "cereales", "malezas", "malas", "hierbas", "silvestres", "cultivadas", "trigo", "cebada", "cereali", "infestanti", "selvatiche", "grano", "orzo", "granen", "onkruid", "onkruiden", "wilde", "gewassen", "tarwe", "gerst"]
)
_PARTS = frozenset(
    ["grain", "grains", "chaff", "glume", "glumes", "base", "bases", "rachis", "rachises", "internode", "internodes", "spikelet", "spikelets", "fork", "forks", "straw", "culm", "culms", "node", "nodes", "kernel", "kernels", "cupule", "cupules", "cob", "cobs", "seed", "seeds", "nutshell", "nutshells", "nutmeat", "nutmeats", "wood", "charcoal", "shell", "shells", "korn", "körner", "spelz", "spelzen", "spreu", "hüllspelzenbasen", "graine", "graines", "balle", "balles", "grano", "granos", "paja", "glumas", "semi", "semillas", "korrel", "korrels", "kaf", "kafbases", "zaden"]
)
_BESIDE = frozenset(["free", "threshing", "all", "total", "of", "the", "ratio", "index", "and", "&", "other", "large", "small", "big", "heavy", "light"])
_HALVES = re.compile(
    r"\s*(?:ratio(?: of)?[ :]+)?(?P<first>[^\W\d_][^:/\d()]{1,34}?)\s*(?P<sign>:|/| to | per )\s*(?P<second>[^\W\d_][^:/\d()]{1,34}?)\s*(?:[(]?ratio[)]?)?\s*",
    re.IGNORECASE,
)


_UNIT = r"(?:wts?|weights?|mass|mg|g|gms?|grams?|n|nr|#|cts?|counts?|nos?|numbers?|mni|nisp|items)\.?"
_UNITS = re.compile(rf"\s*[(\[](?:by |in )?{_UNIT}(?:\s*[/:]\s*{_UNIT})?[)\]]\s*$", re.IGNORECASE)


@cache
def is_ratio(text: str) -> bool:
    """
    Whether a heading is of a ratio, by its words alone; 'wheat: grain' is a name with its part.

    >>> [is_ratio(t) for t in ("grain:chaff", "wild : cereal", "Wheat:Barley", "Nut:wood (wt)", "Nutshell:wood (g/g)", "Nut:wood (ct)")]
    [True, True, True, True, True, True]
    >>> [is_ratio(t) for t in ("wheat: grain", "Hordeum: rachis", "grain/chaff", "Sample: 12", "Cereals: grain")]
    [False, False, False, False, False]
    """
    first, sign, second = _halves(text)
    if sign != ":":
        return False
    is_of_wood = first == "group" and bool(re.search(r":\s*(?:wood|charcoal)\b", text, re.IGNORECASE))
    return is_of_wood or (first, second) in (("group", "group"), ("part", "part"), ("part", "group"))


@cache
def may_be_ratio(text: str) -> bool:
    """
    Whether a heading may be of a ratio, if its numbers are no whole ones: 'cereals: grain' over 0.65.

    >>> [may_be_ratio(t) for t in ("grain/chaff", "Weeds per grain", "wheat: grain", "Fragmentation index", "Hordeum")]
    [True, True, True, True, False]
    """
    if re.search(r"\b(?:ratio|index|indice|indeks|quotient|verhältnis|rapport|verhouding|rapporto|razón|coefficient)\b", text, re.IGNORECASE):
        return True
    first, _, second = _halves(text)
    return bool(first and second)


def _halves(text: str) -> tuple[str, str, str]:
    match = _HALVES.fullmatch(_UNITS.sub("", text))
    if not match:
        return "", "", ""
    return _sort(match["first"]), match["sign"].strip(), _sort(match["second"])


def _sort(half: str) -> str:
    """'part', 'group' or nothing: what the words of half a ratio are."""
    words = [word for word in re.split(r"[\s_.-]+", half.lower()) if word and word not in _BESIDE]
    if not words or not all(word in _GROUPS or word in _PARTS for word in words):
        return ""
    return "part" if words[-1] in _PARTS else "group"
