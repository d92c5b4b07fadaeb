"""Results that stand behind the totals of a table under words that no list of heads knows: 'Presences per context'."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look, looks_like_id

_OF_SAMPLES = ("context", "feature", "phase", "volume", "kind", "site")


def results_behind_totals(
    look: Look, rows: Mapping[int, Role], columns: Mapping[int, Role], sample_row: int
) -> dict[int, str]:
    """
    Columns of amounts behind a total that are no samples, with their heads: words where the others have ids, and none
    of the contexts, phases and litres that most of the others have.
    """
    counts = [c for c, role in columns.items() if role.name == "counts"]
    totals = [c for c, role in columns.items() if role.name == "total"]
    facts = [r for r, role in rows.items() if role.name in _OF_SAMPLES and r != sample_row]
    found: dict[int, str] = {}
    for column in counts if totals and facts else ():
        text = look.text(sample_row, column)
        others = [c for c in counts if c != column]
        before = [c for c in others if c < min(totals)]
        if column < min(totals) or len(before) < 0.5 * len(counts) or not _is_of_words(text):
            continue
        are_ids = sum(looks_like_id(look.text(sample_row, c)) for c in before) >= 0.8 * len(before)
        said = [r for r in facts if sum((r, c) in look.cells for c in before) >= 0.8 * len(before)]
        if are_ids and said and not any((r, column) in look.cells for r in said):
            found[column] = text
    return found


def _is_of_words(text: str) -> bool:
    """
    Whether a head is of several words and no id.

    >>> [_is_of_words(t) for t in ("Presences per context", "Pit 14 lower", "S 12", "Unstratified")]
    [True, False, False, False]
    """
    return len(re.findall(r"[^\W\d_]{3,}", text)) >= 2 and not re.search(r"\d", text) and not looks_like_id(text)
