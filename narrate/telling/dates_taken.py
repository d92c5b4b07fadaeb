"""Radiocarbon dates that were taken from a context, quoted from the account of dates where the context is told."""

from __future__ import annotations

import re

from narrate.model.ids import ContextId
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import english
from narrate.telling.page import Page

IN_SHORT = "dates"
"""Audiences with a heading of that id are told what the dates say in one place."""
_RANGES = re.compile(r";\s*cal\b")
_ENTRY = re.compile(r"^\s*[-*•]\s+", re.MULTILINE)


def date_sentences(page: Page, context: Context) -> list[Sentence]:
    """
    'A radiocarbon date was taken from it: “…”', for specialists, in the words of the account; in a report, which holds
    the whole account, without the ranges.
    """
    entries = [] if page.is_plain else entries_of(page.dig.project.report.get("radiocarbon", ""), context.id)
    if not entries:
        return []
    has_ranges = all(_RANGES.search(entry) for entry in entries)
    is_short = IN_SHORT in page.audience.headings and has_ranges
    if is_short:
        entries = [_RANGES.split(entry)[0] for entry in entries]
    quoted = "; ".join(f"“{english.literal(entry)}”" for entry in entries)
    quoted += ", of which the calibrated ranges stand with the dates of the project" if is_short else ""
    was = "a radiocarbon date was" if len(entries) == 1 else "radiocarbon dates were"
    is_one = "a radiocarbon date of this context is" if len(entries) == 1 else "radiocarbon dates of this context are"
    return page.say([page.record], f"{was} taken from this context: {quoted}", f"{is_one} {quoted}")


def entries_of(account: str, id: ContextId) -> list[str]:
    """
    The entries of a list of dates that name a context; nothing where the account is no list.

    >>> entries_of("Two.\\n- X-1: acorn, from C3; 900 BP\\n- X-2: seed,\\n  from C12; 700 BP\\n\\nAll.", "C12")
    ['X-2: seed, from C12; 700 BP']
    """
    texts = [" ".join(text.split("\n\n")[0].split()) for text in _ENTRY.split(account)[1:]]
    return [text.rstrip(".;") for text in texts if re.search(rf"(?<![\w.-]){re.escape(id)}(?![\w-])", text)]
