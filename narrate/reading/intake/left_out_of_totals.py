"""Totals that say what they leave out: 'Summe (ohne Holzkohle)', 'Total excl. charcoal', 'Total sans charbons'."""

# ruff: noqa: E501

from __future__ import annotations

import re

_WITHOUT = re.compile(
    r"[\s,;:]*[(\[]?\s*\b(?:without|excl(?:uding|usive of|usive|udes)?|not including|not counting|except(?: for)?|minus|less"
    r"|ohne|außer|abzüglich|sans|hors|sauf|sin|excepto|excluyendo|senza|esclus[oiae]|eccetto|zonder|exclusief|uitgezonderd|bez|poza)\b"
    r"\.?\s+(?P<what>[^()\[\]]+?)\s*[)\]]?\s*$",
    re.IGNORECASE,
)
"""Common practice, no source: words before what is not added."""
_DASH = re.compile(
    r"\s+[-–−]\s+(?P<what>(?:undet|indet|unident)\w*\.?|unid\.?|unknowns?)\s*$", re.IGNORECASE
)
"""'Total - undetermined' takes those off; before other words, as in 'Total - cereals', a dash says of what it is."""
_ALL = re.compile(r"(?:the )?(?:all )?(?:other|rest|reste|doubtful|indet\w*)\b", re.IGNORECASE)


def left_out_of(label: str) -> tuple[str, str]:
    """
    A label without what it leaves out, and that; the label as it is where it leaves nothing out.

    >>> left_out_of("Summe (ohne Holzkohle)"), left_out_of("Total excl. charcoal"), left_out_of("Total cereals")
    (('Summe', 'Holzkohle'), ('Total', 'charcoal'), ('Total cereals', ''))
    >>> left_out_of("tot - undetermined"), left_out_of("Total - cereals")
    (('tot', 'undetermined'), ('Total - cereals', ''))
    """
    match = _DASH.search(label)
    if match is not None:
        return label[: match.start()].strip(), match["what"].strip()
    match = _WITHOUT.search(label)
    if match is None or match.start() == 0 or _ALL.match(match["what"]):
        return label, ""
    return label[: match.start()].strip(), match["what"].strip()
