"""Words and signs that names in lists carry beside the taxon: parts, conditions, sizes, units, authors, footnotes."""

# ruff: noqa: E501, SIM905

from __future__ import annotations

import re
from collections.abc import Mapping

# The alternative family names that the International Code of Nomenclature allows (Art. 18.5 of the Shenzhen Code;
# quoted from memory), and older spellings in use with them.
OLD_FAMILIES: Mapping[str, str] = {
    "gramineae": "Poaceae",
    "graminae": "Poaceae",
    "cruciferae": "Brassicaceae",
    "leguminosae": "Fabaceae",
    "papilionaceae": "Fabaceae",
    "umbelliferae": "Apiaceae",
    "compositae": "Asteraceae",
    "labiatae": "Lamiaceae",
    "palmae": "Arecaceae",
    "guttiferae": "Clusiaceae",
    "chenopodiaceae": "Amaranthaceae",
}

# Common practice, no source: cereals that nobody could tell, where 'indet.' stands behind the word.
CEREALS_UNTOLD = frozenset("gabona cereali cereale cereales cereais céréales céréale getreide granen graan zboże zboża obilniny".split())

# Common practice, no source: words of lists for parts that the word packs name otherwise.
MORE_PARTS: Mapping[str, str] = {
    "silicula": "pod", "siliculae": "pod", "silicle": "pod", "siliqua": "pod", "silique": "pod", "schötchen": "pod", "schote": "pod", "schoten": "pod", "silicule": "pod", "silícula": "pod", "siliquetta": "pod", "hauwtje": "pod", "hauwtjes": "pod", "capsule segment": "pod segment", "siliqua segment": "pod segment", "pod joint": "pod segment", "frond": "leaf", "fronds": "leaf",
    "shoot": "stem", "shoots": "stem", "shoot tip": "stem", "pit": "fruit stone", "pits": "fruit stone", "rachis node": "rachis internode", "rachis nodes": "rachis internode",
    "rachii": "rachis internode", "glb": "glume base", "gl base": "glume base", "gl bases": "glume base", "glume b": "glume base", "rach": "rachis internode", "rach int": "rachis internode", "spkl fork": "spikelet fork", "spk fork": "spikelet fork", "spikelet base": "spikelet fork", "spikelet bases": "spikelet fork", "pip": "seed", "pips": "seed", "fruitstone": "fruit stone", "fruitstones": "fruit stone", "tail grain": "grain",
    "caryops": "grain", "korn": "grain", "körner": "grain", "same": "seed", "samen": "seed", "spelzbasis": "glume base",
    "spelzbasen": "glume base", "ährchengabel": "spikelet fork", "ährchengabeln": "spikelet fork", "schale": "nutshell",
    "stroh": "straw", "paja": "straw", "paille": "straw", "paglia": "straw", "stein": "fruit stone", "steine": "fruit stone", "endocarpio": "fruit stone",
    "endocarpios": "fruit stone", "meat": "nutmeat", "meats": "nutmeat", "beam": "wood", "beams": "wood", "peanut shell": "pod", "peanut shells": "pod",
    "holzkohle": "charcoal", "caryopse": "grain", "graine": "seed", "graines": "seed", "base de glume": "glume base",
    "bases de glume": "glume base", "furca": "spikelet fork", "semilla": "seed", "semillas": "seed", "cariópside": "grain", "sclerote": "fungal sclerotium", "charcoal frags": "charcoal", "wood charcoal": "charcoal",
}  # fmt: skip
# Common practice, no source: letters for conditions, beside those of the word packs.
SHORT_CONDITIONS: Mapping[str, str] = {
    "w": "waterlogged", "wl": "waterlogged", "m": "mineralised", "min": "mineralised", "d": "desiccated", "ch": "charred",
    "chd": "charred", "char": "charred", "un": "uncharred", "unchd": "uncharred",
    "carb": "charred", "uc": "uncharred", "uncarb": "uncharred", "unchar": "uncharred", "uncharr": "uncharred", "noncarb": "uncharred", "unch": "uncharred", "unc": "uncharred", "u": "uncharred",
    "miner": "mineralised", "minér": "mineralised", "mineral": "mineralised", "dess": "desiccated", "desec": "desiccated", "desic": "desiccated", "dessic": "desiccated",
    "wlog": "waterlogged", "wlogged": "waterlogged", "verk": "charred", "unverk": "uncharred",
    "vk": "charred", "uv": "uncharred", "uvk": "uncharred", "subf": "waterlogged", "subfoss": "waterlogged", "charr": "charred",
    "charring": "charred", "carbonisation": "charred", "carbonization": "charred", "waterlogging": "waterlogged", "mineralisation": "mineralised", "mineralization": "mineralised", "desiccation": "desiccated",
}  # fmt: skip
AUTHOR = re.compile(
    r"\s+(?:\([^)]*\)\s*)?(?:[A-Z][\w-]*\.|L\.|&|ex|et|f\.|[A-Z][a-zü]+\.)(?:\s*(?:[A-Z][\w-]*+\.?|&|ex|f\.))*(?=\s|/|$)|\s+\([A-Z][^)]*\.\)"
)
"""Authors behind an epithet: 'L.', 'Schübl.', '(L.) Moench'; only ones with a point, so that no name is lost."""

CONDITIONS = re.compile(
    r"\b(un-?charred|un-?carb\b|un-?carboni[sz]ed|un-?burn(?:t|ed)|(?:not|non)[ -](?:charred|carboni[sz]ed|burn(?:t|ed))"
    r"|(?:part(?:ly|ially)?|semi|half|incompletely)[ -](?:charred|carboni[sz]ed|burn(?:t|ed))|charred|carboni[sz]ed|burnt|burned|minerali[sz]ed|waterlogged|desiccated|dessicated|modern"
    r"|(?:nicht |niet |non |no |não )?(?:un-?|on-?)?(?:verkohlte?s?|verkoolde?|carbonisée?s?|carbonizad[oa]s?|carbonizzat[oiae]|u?forkulle(?:de?|t)|o?förkolna(?:de?|t)|angekohlt)"
    r"|(?:ne)?(?:zuhelnatěl|karbonizovan)\w+|kömürleşm(?:em)?iş|(?:μη[ -])?απανθρακωμέν\w+|mineralizovan\w+|mineralleşmiş"
    r"|min[eé]rali[sz]+(?=\.)|min[eé]rali(?:siert|sée?s?|zad[oa]s?|zzat[oiae]|serat|sert|seret|serade|serede)|gemineraliseerde?|waterverzadigde?|imbib(?:ée?s?|it[oiae])|desecad[oa]s?|desséchée?s?)\b",
    re.IGNORECASE,
)
FRAGMENTS = re.compile(
    r"[\s,(–—-]+(?:frags?\.?|fragments?|fragmenter|brottstycken?|brudstykker?|bruddstykker?|kırık(?:lar)?|θραύσμα(?:τα)?|fragmentos?|fragmenten?|frammenti|frammento|frammentat[oaie]|fragmenté?e?s?|fragmentad[oa]s?|fragmentiert|fragment[yó]w?|ułam(?:ek|ki)|trozos?|bruchstücke?|fragm\.?|fr[ga]mt?\.?|frgt?\.?|fgm\.?|fgts?|framm\.?|bruchst\.?|zlom(?:ek|ky)|úlom(?:ek|ky)|töredék(?:ek)?|broken)\)?$|[\s(（]*(?:碎块|碎片|残块|残片|破碎|破片)[)）]?$", re.IGNORECASE
)
_OF_PIECES = re.compile(r"frag|framm|碎块|碎片|残块|残片|破片|^\W*(?:fr|zl|úl)\.\s|fr[ga]m\b|fgts?\b|\bfrgt?\b|\bfgm\b|zlom|úlom|töredék|bruchst|ułam|\bkırık|θραύσμ|brottstyck|brudd?styk|\btrozos?\b|\bbroken\b", re.IGNORECASE)
WHOLE = re.compile(r"[\s,(-]+(?:whole|complete|entire)\)?$", re.IGNORECASE)
SIZE = re.compile(
    r"[(\[]?\s*((?:[<>≤≥]\s*\d+(?:[.,]\d+)?\s*mm|\d+(?:[.,]\d+)?\s*[-–]\s*\d+(?:[.,]\d+)?\s*mm|[<>≤≥]\s*\d+(?:[.,]\d+)?|\b(?:over|under|larger than|smaller than)\s*\d+(?:[.,]\d+)?\s*mm)|(?:small|medium|large)(?= *[)\]]))\s*[)\]]?",
    re.IGNORECASE,
)
_OF_WEIGHT = r"(?:[\s,]+(?:weight|wt\.?|mass|gewicht|poids|peso|vægt|vikt|waga))?"
"""'Wood weight (g)' weighs wood: the word for weighing is no part of the name."""
UNIT = re.compile(
    rf"{_OF_WEIGHT}[\s,]*[(\[]\s*(?:(?:weight|wt\.?|mass)[, ]+)?(?:in )?(g|gr|gms?|mg|wt|wt\.? ?g|weight|weight ?g|grams?|克|毫升|ml|cc|vol|n|no\.?|count|ct|#)(?:[,，;]\s*[<>≥]?\s*\d+(?:[.,]\d+)?\s*(?:mm|毫米))?\s*[)\]]\s*$|[\s_,-]+(wt|weight|wt\.? ?\(?g\)?|ct|count)\s*$|\s+(g|gms?|grams|mg|(?-i:n))\s*$",
    re.IGNORECASE,
)
TAIL = re.compile(
    r"[_.](?:(?P<mass>(?:(?:dry_)?(?:weight|wt|mass|gewicht|gew|poids|peso|masse|masa|waga)[_.]?)?(?:in_)?(?:g|gr|grams?|gramm|grammes|gramos|grammi|gram|mg)|weight|wt|mass|gewicht|poids|peso)"
    r"|(?P<count>n|no|nr|ct|count|counts|num|number|nb|anz|anzahl|nombre|cantidad|numero|aantal|liczba|nisp|mni|qty)"
    r"|(?P<sign>pres(?:ent|ence)?|presence_absence|present_absent|p_?a|abundance|abund|score|präsenz|présence|presencia|presenza|presente|présente?|presenti|vorhanden|anwesend|aanwezig|obecność|obecn[ey]))[.]?$"
    r"|\s*[(](?P<sign2>pres(?:ent|ence)?|pres(?:ence|ent) ?/ ?abs(?:ence|ent)|p ?/ ?a|\+ ?/ ?-|abundance)[)]$",
    re.IGNORECASE,
)
"""What columns of databases carry behind a name: carya_nutshell_g, dung_presence."""
FOOTNOTE = re.compile(r"(?<=\w)[*†‡§¹²³]+\s*$|^[*†‡]+\s*")
# Common practice, no source: what lists call remains that nobody could name.
INDETERMINATE = re.compile(
    r"(?:indet|indeterminable|indeterminables|indéterminables?|indéterminée?s?|indeterminad[oa]s?|indeterminabil[ei]s?|indeterminabile|indeterminat[oiae]|"
    r"unbestimmbar|unbestimmte?|onbepaald|ondetermineerbaar|niet determineerbaar|ubestemte?|obestämda?|nieoznaczone|neurčeno|belirsiz|"
    r"non identifiée?s?|no identificad[oa]s?|non identificat[oi]|não identificad[oa]s?|not identified|non? determinabil[ei]|no determinables?)",
    re.IGNORECASE,
)
TWO_PARTS = re.compile(r"[^\W\d_]{3,}/[^\W\d_]{3,}")
SORTS = frozenset(
    "hulled naked large small medium cf wild domestic cultivated immature twisted straight indet unknown type charred "
    "uncharred burnt germinated sprouted".split()
)
"""Words in brackets that say what sort of grain or seed is meant, and no part."""


def says_pieces(text: str) -> bool:
    """
    Whether the words for a part say that it is in pieces.

    >>> says_pieces("nocciolo frammento"), says_pieces("glume base frag."), says_pieces("grain")
    (True, True, False)
    """
    return bool(_OF_PIECES.search(text))


def tail_quantity(tail: re.Match[str]) -> str:
    return "mass" if tail["mass"] else "count"


def tail_unit(tail: re.Match[str]) -> str:
    return "" if not tail["mass"] else "mg" if tail["mass"].lower().endswith("mg") else "g"


def without_match(pattern: re.Pattern[str], name: str) -> tuple[str, str]:
    match = pattern.search(name)
    if not match:
        return name, ""
    rest = (name[: match.start()] + " " + name[match.end() :]).strip()
    return " ".join(re.sub(r"[(\[]\s*[)\]]", "", rest).split()).strip(" ,;–—-"), match[1].strip()


_BEFORE = re.compile(
    r"(?:frags?\.?|fragm\.?|fr[ga]mt?\.?|frgt?\.?|fgm\.?|fgt\.?|fr\.|framm\.?|bruchst\.?|zlom(?:ek|ky)|úlom(?:ek|ky)|zl\.|úl\.|ułam\.|ułamek|trozo|fragments?|fragmentos?|frammenti|frammento|fragmenten?|fragmenty?|bruchstücke?|pieces?|bits|brokken|stukken|trozos|pezzi|ułamki|kawałki|éclats?|kırık|θραύσμα(?:τα)?|brudstykker? af|brottstycken? av)"
    r"\s*(?:(?:of|de|du|des|di|von|van|vom|del|della|delle|dell[’']|d[’'])\s*)?[(\s]\s*(?P<part>[^()]+?)\s*\)?",
    re.IGNORECASE,
)
_COMPOUND = re.compile(r"(?P<part>[^\W\d_]{3,}?|[^\W\d_]{1,3}(?=-))s?-?(?:fragment(?:en?|er)?|fragm?\.?|frgm?t?\.?|fgm\.?|bruch(?:st\.|stücke?)?|fr\.)", re.IGNORECASE)
_BEHIND = re.compile(r"(?P<part>[^\W\d_]{1,20}) (?:fg|frgm?|fragm?s?|fgm|fgt|fr\.)\.?", re.IGNORECASE)


def whole_of_pieces(text: str) -> str:
    """
    The part that pieces are of, where words for pieces stand before it, in one word with it, or in short behind it;
    empty for none.

    >>> [whole_of_pieces(t) for t in ("frag. de caryopse", "Kornbruch", "frammento di guscio", "Fragment (Korn)", "grain")]
    ['caryopse', 'Korn', 'guscio', 'Korn', '']
    >>> whole_of_pieces("kırık tane"), whole_of_pieces("skalfragment"), whole_of_pieces("Schalenfrgm."), whole_of_pieces("Korn-Fragm.")
    ('tane', 'skal', 'Schalen', 'Korn')
    >>> whole_of_pieces("Ka Fg"), whole_of_pieces("Ns frgm."), whole_of_pieces("immature fruit")
    ('Ka', 'Ns', '')
    """
    flat = text.strip()
    match = _BEFORE.fullmatch(flat) or _COMPOUND.fullmatch(flat) or _BEHIND.fullmatch(flat)
    return match["part"] if match is not None else ""

LEAVES = re.compile(
    r"[\s,(]+(?:à )?(?:f(?:euill(?:es|age)|\.)? ?(?:cadu[cq]\w*|persistant\w*)|caducifoli\w*|caducifogli\w*|sempervirent\w*|semprevir\w*"
    r"|sempreverd\w*|siempreverde|perennifoli\w*|deciduous|evergreen|(?:sommer|winter|immer)grün\w*|bladverliezend\w*)\.?[)]?"
    r"(?: (?:type|typ|tipo))?\.?$",
    re.IGNORECASE,
)
"""Common practice, no source: words behind a genus of trees for how its leaves last, in a few languages."""
