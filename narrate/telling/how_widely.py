"""How widely something turned up, in words that keep to the share of samples."""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.model.claims import Evidence

SHARES = ((0.9, "nearly all"), (0.6, "most"), (0.4, "many"), (0.15, "several"), (0.0, "a few"))
"""Share of samples from which a word may be used (judgement of the makers)."""

_WIDELY = re.compile(
    r"\b(?:nearly everywhere(?: we looked)?|in most of the places we looked|in (?:many|several) places)\b"
)
_OF_SAMPLES = ("ubiquity", "samples_with")


def share_word(k: float, n: int) -> str:
    """
    The word for k of n samples.

    >>> [share_word(k, 49) for k in (49, 45, 33, 20, 8, 3)]
    ['all', 'nearly all', 'most', 'many', 'several', 'a few']
    """
    return "all" if k == n else next(word for least, word in SHARES if k / n >= least)


def word_of(evidence: Iterable[Evidence]) -> str:
    """The word for the smallest share of samples that a rule looked at; empty where it looked at none."""
    shares = [(e.of, e.n) for e in evidence if e.measure.startswith(_OF_SAMPLES) and e.of is not None and e.n]
    return share_word(*min(shares, key=lambda pair: pair[0] / pair[1])) if shares else ""


def widely_told(text: str, evidence: Iterable[Evidence]) -> str:
    """'Seeds turned up in most of the samples' for 'seeds turned up nearly everywhere', where the share is known."""
    known = tuple(evidence)
    word = word_of(known) if _WIDELY.search(text) else ""
    text = _WIDELY.sub(f"in {word} of the samples", text) if word else text
    shares = [e.value for e in known if e.measure.startswith("share.") and e.value is not None]
    return _MUCH.sub(part_word(shares[0]), text) if len(shares) == 1 else text


PARTS = ((1 / 2, "half"), (1 / 3, "a third"), (1 / 4, "a quarter"), (1 / 5, "a fifth"))
_MUCH = re.compile(r"^(?:much|many)(?= of the )")


def part_word(share: float) -> str:
    """
    How much a share is, in a word that visitors can picture.

    >>> [part_word(share) for share in (0.6, 0.28, 0.25, 0.1)]
    ['more than half', 'more than a quarter', 'more than a fifth', 'some']
    """
    return next((f"more than {word}" for least, word in PARTS if share > least), "some")
