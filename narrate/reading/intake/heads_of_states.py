"""Headings that say of which remains something is counted or processed: 'Number of waterlogged taxa', 'Litres screened'."""

# ruff: noqa: E501

from __future__ import annotations

import re

# Common practice, no source: words for kinds of plants in eight languages.
_TAXA = (
    r"(?:taxa|taxons|taxones|táxones|táxons?|taxonów|taksonów|species|speci[eè]s|especies|espécies|espèces|specie|genera|families|"
    r"arten|pflanzenarten|soorten|plantensoorten|gatunków|tipos|(?:plant |seed |morpho)?types)"
)
_NUMBER = (
    r"(?:(?:total |min |minimum |max )?(?:number|no|nr|n|n°|nº|#|count|sum)(?: of)?|anzahl(?: der| an)?|zahl der|aantal|liczba|"
    r"(?:nombre|nbre|nb|número|numero|núm|num|n[º°o])(?: total)?(?: (?:de|di|d))?|richness(?: of)?)"
)
_STATE = r"(?:[^\W\d_][\w-]*(?: (?:and|und|et|y|e|en|i|&) [^\W\d_][\w-]*)?)"
_COUNTED = re.compile(
    rf"{_NUMBER} (?:(?:different|identified|verschiedene[rn]?|différents|diferentes|distintos|diversi|różnych|verschillende) )?"
    rf"(?:{_STATE} )?{_TAXA}(?: {_STATE})?(?: (?:rows?|lines?|n))?"
    rf"|{_STATE} {_TAXA} (?:n|no|count|number)|{_TAXA} (?:richness|count)",
    re.IGNORECASE,
)

_LITRES = r"(?:l|lt|ltrs?|lit(?:re|er)s?|litros?|litri|litrów|litry)"
_PROCESSED = (
    r"(?:(?:wet|dry|water|machine)[- ])?(?:screened|sieved|floated|flotated|washed|processed|sampled|collected|excavated|examined|taken)"
    r"|(?:aus)?(?:geschlämmt|gesiebt|flotiert|bearbeitet|entnommen)e?|cribad[oa]s?|tamizad[oa]s?|flotad[oa]s?|procesad[oa]s?|lavad[oa]s?"
    r"|tamisée?s?|flottée?s?|traitée?s?|prélevée?s?|lavée?s?|setacciat[oi]|flottat[oi]|lavat[oi]|trattat[oi]|prelevat[oi]"
    r"|gezeefde?|geslibde?|verwerkte?|gewassen|bemonsterde?|przesian[eych]+|przepłukan[eych]+|flotowan[eych]+|przebadan[eych]+|pobran[eych]+"
    r"|crivad[oa]s?|peneirad[oa]s?|flutuad[oa]s?|processad[oa]s?|tratad[oa]s?"
)
_OF_SOIL = re.compile(
    rf"{_LITRES} (?:(?:of|de|di|van) )?(?:(?:soil|sediment|earth|erde|sedimento?|tierra|terra|terre|grond|gleby|osadu|solo) )?(?:{_PROCESSED})"
    rf"|(?:{_PROCESSED}) (?:{_LITRES}|(?:vol|volumen|volume)(?: {_LITRES})?)",
    re.IGNORECASE,
)

# Common practice, no source: how a column is headed that says which of two states each find is in.
_CHARRED = frozenset(
    ["c", "ch", "chd", "char", "carb", "charred", "carbonised", "carbonized", "burnt", "v", "vk", "verk", "verkohlt", "verkoold", "k", "carbonisé", "carbonisée", "carbonizado", "carbonizada", "carbonizzato", "carbonizzata", "quemado", "combusto", "zwęglone", "zw"]
)
_NOT_CHARRED = frozenset(
    ["u", "un", "uc", "unc", "unch", "unchd", "unchar", "uncharr", "uncarb", "uncharred", "uncarbonised", "uncarbonized", "unburnt", "w", "wl", "waterlogged", "min", "mineralised", "mineralized", "d", "des", "desiccated", "dry", "modern", "uv", "unv", "unverk", "unverkohlt", "o", "onv", "onverkoold", "nc", "ncarb", "subf", "subfossil", "rezent", "recent", "imbibé", "desecado", "dessecado", "disseccato", "niezwęglone", "nz", "m"]
)


def _are_states(flat: str) -> bool:
    """Whether a heading names charred beside another state: 'ch/un', 'charred / waterlogged', 'v/u'; 'c/m' may be amounts."""
    words = [word.strip() for word in re.split(r"[/|&+]| or | oder | ou | of | o ", flat)]
    words = [re.sub(r"^(?:not|non|nicht|niet|no|não|nie)[ -](?=\w)", "un", word) for word in words]
    charred = [word for word in words if word in _CHARRED]
    others = [word for word in words if word in _NOT_CHARRED or (word.startswith("un") and word[2:] in _CHARRED)]
    return len(charred) == 1 and len(others) == len(words) - 1 > 0 and flat != "c/m"


def heading_of_states(flat: str) -> str:
    """
    The role of a heading in lower case that asks for states, counts taxa of one, or gives litres processed; or empty.

    >>> [heading_of_states(text) for text in ("ch/un", "c / u", "verk/unverk", "charred/waterlogged", "w/f", "c/n")]
    ['condition', 'condition', 'condition', 'condition', '', '']

    >>> heading_of_states("number of waterlogged taxa rows"), heading_of_states("anzahl verkohlter arten")
    ('derived', 'derived')
    >>> heading_of_states("liters screened"), heading_of_states("litros cribados"), heading_of_states("number of seeds")
    ('volume', 'volume', '')
    """
    if _are_states(flat):
        return "condition"
    if _COUNTED.fullmatch(flat):
        return "derived"
    return "volume" if _OF_SOIL.fullmatch(flat) else ""
