"""One event that several rules and notes tell of: an audience with words for it is told of it once a page."""

from __future__ import annotations

from narrate.telling.page import Page

NAMED = "one event "
"""How the audience's lists of such words begin: 'one event house fire', its wordings parted by ' | '."""


def is_event_told(page: Page, text: str) -> bool:
    """Whether the page has told the event that a reason or a note speaks of, in the same words or in others."""
    for name in page.audience.words:
        wordings = page.turns(name) if name.startswith(NAMED) else []
        if text in wordings and any(page.has_told(wording) for wording in wordings):
            return True
    return False
