"""English words in the singular, as near as endings tell."""

from __future__ import annotations

import re


def one_of(word: str) -> str:
    """
    The singular of an English word.

    >>> [one_of(w) for w in ("cereals", "berries", "grasses", "chaff", "pulses", "mosses", "radishes", "Rumex")]
    ['cereal', 'berry', 'grass', 'chaff', 'pulse', 'moss', 'radish', 'Rumex']
    """
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if re.search(r"(?:ss|x|ch|sh)es$", word):
        return word[:-2]
    return word[:-1] if word.endswith("s") and not word.endswith(("ss", "us", "is")) and len(word) > 3 else word
