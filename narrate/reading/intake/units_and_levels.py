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


def naming_contexts(heads: Mapping[int, str]) -> tuple[int, ...]:
    """
    The lines, of all that are headed as contexts, that name them: one of its own, or a unit with its level.

    >>> naming_contexts({1: "Unit", 2: "Level"}), naming_contexts({1: "Unit", 2: "Context"}), naming_contexts({3: "Level"})
    ((1, 2), (2,), (3,))
    """
    layers = [at for at, text in heads.items() if _LAYER.fullmatch(text.strip(" .:"))]
    units = [at for at, text in heads.items() if _UNIT.fullmatch(text.strip(" .:"))]
    levels = [at for at, text in heads.items() if _LEVEL.fullmatch(text.strip(" .:"))]
    plain = [at for at in heads if at not in units and at not in levels and not (units and at in layers)]
    if plain:
        return (plain[0],)
    if units and (levels or layers):
        return (units[0], *layers[:1], *levels[:1])
    return tuple((units or levels)[:1])
