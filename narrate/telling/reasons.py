"""Reasons for readings: which are given, in whose words, and how a place named before is referred back to."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.claims import Argument
from narrate.telling import english
from narrate.telling.page import Page
from narrate.telling.plan import Reading

_PLACE = re.compile(r" in (?:a|the) (?:feature|place|pit) (?:made for|of) [a-z]+(?= |,|\)|$)")
_FIGURES = re.compile(r" ?\([^()]*\d[^()]*\)")


def reasons_for(page: Page, group: Sequence[Reading], *, most: int) -> list[str]:
    """Reasons not yet given on the page: each reading's heaviest first, then the next ones."""
    queues = [[page_text(page, a) for a in item.claim.held("for")] for item in group]
    chosen: list[str] = []
    for depth in range(max((len(queue) for queue in queues), default=0)):
        for queue in queues:
            if depth < len(queue) and len(chosen) < most and queue[depth] not in chosen:
                if without_figures(queue[depth]) not in page.reasons_told:
                    chosen.append(queue[depth])
    if len(group) == 1 and len(chosen) > 1 and (", " in "".join(chosen) or sum(len(c.split()) for c in chosen) > 30):
        chosen = chosen[:1]
    page.reasons_told.update(without_figures(text) for text in chosen)
    return _referring_back(page, chosen)


def _referring_back(page: Page, reasons: Sequence[str]) -> list[str]:
    """Reasons in which a place named before is 'there': 'wood charcoal lay in a feature made for fire'."""
    short: list[str] = []
    for reason in reasons:
        match = _PLACE.search(reason)
        before = match is not None and any(match[0] in text for text in (*page.here, *short))
        short.append(reason[: match.start()] + " there" + reason[match.end() :] if match and before else reason)
    return short


def page_text(page: Page, argument: Argument) -> str:
    """What an argument saw, in the audience's words."""
    text = argument.says_plain if page.is_plain else argument.says
    text = english.lowered((text or argument.says).strip().rstrip("."))
    text = re.sub(r"\s%", "%", text)
    text = english.small_numbers_in_words(text)
    return text if page.audience.shows_figures else _FIGURES.sub("", text)


def without_figures(text: str) -> str:
    """A reason without the figures it has in brackets, to tell whether it was given before."""
    return _FIGURES.sub("", text)
