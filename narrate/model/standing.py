"""Who said what in a narrative, in numbers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from narrate.model.narrative import Narrative


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Sentences of one or more narratives, by who said them and who answers for them."""

    narratives: int
    sentences: int
    drafted: int
    """By the rules, word for word."""
    edited: int
    """Drafts that the analyst changed."""
    own: int
    """The analyst's own, tied to no claim."""
    approved: int
    """Of all these: approved, and nothing behind them has changed since."""
    stale: int
    """Of all these: changed by the analyst, and what they rest on has changed since."""
    lapsed: int
    """Narratives whose approval has lapsed."""

    @property
    def waiting(self) -> int:
        """Sentences that nobody has approved."""
        return self.sentences - self.approved


def standing(narratives: Iterable[Narrative]) -> Standing:
    """The standing of some narratives together."""
    told = [narrative for narrative in narratives if narrative.sentences()]
    sentences = [sentence for narrative in told for sentence in narrative.sentences()]
    return Standing(
        narratives=len(told),
        sentences=len(sentences),
        drafted=sum(sentence.standing == "drafted" for sentence in sentences),
        edited=sum(sentence.standing == "edited" for sentence in sentences),
        own=sum(sentence.standing == "own" for sentence in sentences),
        approved=sum(sentence.is_approved for sentence in sentences),
        stale=sum(bool(sentence.stale) for sentence in sentences),
        lapsed=sum(narrative.has_lapsed for narrative in told),
    )
