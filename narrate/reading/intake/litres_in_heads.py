"""Litres that stand beside the id of a sample in one cell."""

from __future__ import annotations

import re

_LITRES_IN = re.compile(r"(?<![\w.])(\d+(?:[.,]\d+)?)\s*(?:l|lt|ltrs?|lit(?:re|er)s?|litros|litri)\b", re.IGNORECASE)


def litres_in(text: str) -> str:
    """
    The litres that a heading carries beside the id of a sample; empty for none.

    >>> litres_in("Context 203, 20 litres"), litres_in("Sample 4 (8.5 L)"), litres_in("Pit 2")
    ('20', '8.5', '')
    """
    match = _LITRES_IN.search(text)
    return match[1] if match else ""
