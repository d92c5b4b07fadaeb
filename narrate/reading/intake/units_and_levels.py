"""Which of several headings of contexts names them: a unit and its level do so together."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping

_UNIT = re.compile(
    r"(?:(?:excavation|exc\.?|ex|test|dig) ?)?(?:units?|squares?|sq|xus?|tus?|pits?|trenches|trench|quads?|quadrants?|sondage|"
    r"cuadros?|cuadr[ií]culas?|carrés?|quadrat[oi]?|sondeo|unidad)(?: ?(?:no|nr|#|id|n°)\.?)?",
    re.IGNORECASE,
)
_LEVEL = re.compile(
    r"(?:(?:arbitrary|exc\.?) ?)?(?:levels?|levs?|lvls?|lv|spits?|niveaux?|nivel(?:es)?|livell[oi]|planum|abstich)(?: ?(?:no|nr|#|id|n°)\.?)?",
    re.IGNORECASE,
)


_LAYER = re.compile(r"(?:layers?|strat(?:um|a)|capas?|couches?|estratos?|strat[oi]|camadas?|schicht(?:en)?|lag(?:en)?|lager)(?: ?(?:no|nr|#|id|n°)\.?)?", re.IGNORECASE)


_LOCUS = re.compile(r"(?:loc(?:us|i)|lots?|baskets?)(?: ?(?:no|nr|#|id|n°)\.?)?", re.IGNORECASE)
"""Numbered within each square: locus 18 of BP48 is another than locus 18 of BR44."""


def kinds_for_contexts(texts: Mapping[int, list[str]], has_others: bool) -> tuple[int, ...]:
    """
    The lines headed as contexts that say of what kind they are, beside a line that names features or contexts by numbers.

    >>> kinds_for_contexts({1: ["ditch fill", "hearth"], 2: ["S14", "S17"]}, True), kinds_for_contexts({1: ["fill"]}, False)
    ((1,), ())
    """
    worded = [at for at, said in texts.items() if any(said) and not any(re.search(r"\d", text) for text in said)]
    worded = [at for at in worded if all(len(text) > 2 for text in texts[at] if text)]
    return tuple(worded) if has_others or len(worded) < len(texts) else ()


def naming_contexts(heads: Mapping[int, str]) -> tuple[int, ...]:
    """
    The lines, of all that are headed as contexts, that name them: one of its own, or a unit with its level.

    >>> naming_contexts({1: "Unit", 2: "Level"}), naming_contexts({1: "Unit", 2: "Context"}), naming_contexts({3: "Level"})
    ((1, 2), (2,), (3,))
    >>> naming_contexts({1: "Square", 2: "Locus"}), naming_contexts({2: "Locus"})
    ((1, 2), (2,))
    """
    layers = [at for at, text in heads.items() if _LAYER.fullmatch(text.strip(" .:"))]
    units = [at for at, text in heads.items() if _UNIT.fullmatch(text.strip(" .:"))]
    levels = [at for at, text in heads.items() if _LEVEL.fullmatch(text.strip(" .:"))]
    loci = [at for at, text in heads.items() if units and _LOCUS.fullmatch(text.strip(" .:"))]
    plain = [at for at in heads if at not in (*units, *levels, *loci) and not (units and at in layers)]
    if plain:
        return (plain[0],)
    if loci:
        return (units[0], loci[0])
    if units and (levels or layers):
        return (units[0], *layers[:1], *levels[:1])
    return tuple((units or levels)[:1])
