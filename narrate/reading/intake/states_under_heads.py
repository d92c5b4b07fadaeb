"""Columns headed 'State' or 'Status': of states of remains where their cells say so, else of countries or groups."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import flat_heading
from narrate.reading.intake.heads_by_content import says_state

_HEADS = ("state", "states", "status")
# Two-letter codes of the United States Postal Service, from memory: those that may be read as states of remains too.
_COUNTRY = ("DE", "DC", "MD", "ME", "MI", "MN", "MO", "MS", "NC", "SC", "WA", "WI", "WV")


def are_states(head: str, texts: Iterable[str], look: Look) -> bool:
    """
    Whether a column under such a head holds letters or words of conditions, whatever blanks and '?' are among them.

    'C, W, D' under 'Status' may be cultivated, wild and domesticated: there a word or the letter for uncharred must be.
    """
    head = flat_heading(head)
    given = {text.strip() for text in texts} - {"", "?", "-"} if head in _HEADS else set()
    if not given or given <= set(_COUNTRY):
        return False
    if not all(says_state(text, look) or look.names.condition_of(text) for text in given):
        return False
    is_plain = any(len(text) > 2 or look.names.condition_of(text) == "uncharred" for text in given)
    return is_plain or head != "status"
