"""Heads that say how many of the counts beside them are something: 'of which fragments', 'davon Fragmente'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import lru_cache

# Common practice, no source: 'of which' in eleven languages.
_SUBSET = re.compile(
    r"[(\[]?\s*(?:of (?:which|these|those|them|the above)|thereof|therein|incl(?:\.|usive|uding)?|included|in(?:klusive|kl\.?)|"
    r"davon|darunter|hiervon|dont|parmi (?:lesquel(?:le)?s|eux|elles)|de (?:los|las) (?:cuales|que)|de (?:ellos|ellas)|de[il]? (?:cui|quali)|delle quali|dei quali|di cui|tra cui|"
    r"waarvan|daarvan|waaronder|d?[ao]s quais|dos quais|das quais|w tym|z tego|z toho|z čeho|od toga|varav|därav|heraf|deraf|hvorav|derav|ebből|bunlardan|由中|其中|うち)"
    r"[\s:]+(?P<what>.*[^\W\d_].*)|(?P<what2>.*[^\W\d_])\s+(?:thereof|of these|of them|of which|davon|inclu(?:s|ded))",
    re.IGNORECASE,
)


_INCLUSION = re.compile(
    r"[\s,;]*[(\[]?\s*\b(?:incl(?:\.|uding|usive)?|inkl(?:\.|usive)?|einschl(?:\.|ießlich)?|mit|y compris|avec|con|incluyendo|compresi|met)\s+"
    r"(?P<what>(?:the )?(?:frag|bruch|framm|broken)\w*\.?)\s*[)\]]?$",
    re.IGNORECASE,
)


@lru_cache(maxsize=4096)
def without_inclusion(text: str) -> str:
    """
    A head without the words that fragments are in its counts.

    >>> without_inclusion("Count incl. fragments"), without_inclusion("Anzahl (mit Bruchstücken)"), without_inclusion("Count")
    ('Count', 'Anzahl', 'Count')
    """
    return _INCLUSION.sub("", text) or text


@lru_cache(maxsize=4096)
def is_subset(text: str) -> bool:
    """
    Whether a head says that its numbers are in others already.

    >>> [is_subset(t) for t in ("of which fragments", "davon Fragmente", "dont fragments", "di cui frammenti (n)")]
    [True, True, True, True]
    >>> [is_subset(t) for t in ("Fragments", "Count incl. fragments", "MNI", "Dont know", "Inclusions")]
    [False, False, False, False, False]
    """
    flat = " ".join(text.replace("_", " ").split())
    return len(flat) <= 60 and not re.match(r"don'?t know", flat, re.IGNORECASE) and bool(_SUBSET.fullmatch(flat))
