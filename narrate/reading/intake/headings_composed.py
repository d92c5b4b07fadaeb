"""Headings put together from words of the trade, which stand in no list: 'Flot sample', 'Archaeological phase'."""

# ruff: noqa: E501

from __future__ import annotations

import re

# Common practice, no source: the noun of a heading, which says what it heads.
_NOUNS: dict[str, str] = {
    "sample": "bag bags sample samples smp smps smpl samp spl",
    "context": "context contexts cxt ctx cntxt cntx contxt locus loci su sus us deposit layer stratum strata",
    "feature": "feature features feat feats ftr fea structure structures struct",
    "phase": "phase phases phasing period periods periodisation periodization chronology age date dating horizon era epoch",
    "volume": "volume volumes vol vols litres liters litre liter lit ltr ltrs lts",
    "site": "site sites area areas trench trenches sector square zone quadrant block",
}
# Words that stand beside the noun and change nothing of what it heads.
_BESIDE = frozenset(
    ["flot", "flotation", "floatation", "float", "floated", "bulk", "soil", "sediment", "earth", "matrix", "fill", "dirt", "archaeological", "archaeobotanical", "botanical", "environmental", "excavation", "excavated", "excavators", "field", "lab", "laboratory", "original", "main", "primary", "provisional", "broad", "approx", "approximate", "approximately", "estimated", "est", "assigned", "cultural", "ceramic", "chronological", "stratigraphic", "stratum", "processed", "taken", "sampled", "collected", "washed", "sieved", "wet", "dry", "initial", "final", "general", "specific", "analysed", "analyzed", "analysis", "studied", "plant", "charred", "macro", "macrobotanical", "the", "of", "in", "for", "a", "no", "nos", "nr", "num", "number", "numbers", "id", "ids", "code", "codes", "name", "label", "ref", "reference", "n°", "nº", "#", "l", "lt", "ltr", "cal", "ad", "bc", "bce", "ce", "bp", "site", "project", "spot", "our", "local", "regional", "relative", "absolute", "unit", "excav", "arch"]
)
_LOOKUP = {word: role for role, words in _NOUNS.items() for word in words.split()}


def composed_heading(flat: str) -> str:
    """
    The role of a heading whose words are all known, by its last noun; empty where a word is not, or nouns quarrel.

    >>> composed_heading("flot sample"), composed_heading("archaeological phase"), composed_heading("soil floated ltr")
    ('sample', 'phase', 'volume')
    >>> composed_heading("sample of barley"), composed_heading("sample date")
    ('', '')
    """
    whole = re.fullmatch(r"(?P<what>.+?) (?:of|in|per|within|from) (?:the |each |a )?(?P<of>.+)", flat)
    if whole and (what := composed_heading(whole["what"])) and composed_heading(whole["of"]):
        return what  # 'sample no. in context', 'date of context'
    words = re.split(r"[\s/&-]+", flat)
    if len(words) > 6 or not all(word in _LOOKUP or word in _BESIDE for word in words):
        return ""
    nouns = [_LOOKUP[word] for word in words if word in _LOOKUP]
    if not nouns or (nouns[-1] == "phase" and "sample" in nouns):
        return ""
    return nouns[-1]
