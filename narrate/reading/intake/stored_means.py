"""Stored means of taxa: what a taxon has in all samples, or in those of one phase, by the number of samples."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Worked

_MEAN = re.compile(
    r"\b(?:mean|average|avg|moyennes?|mittel(?:wert)?e?|durchschnitt\w*|media|promedio|średni\w*|gemiddelde?|medelv\w+"
    r"|gennemsnit\w*|průměr\w*|ortalama)\b|平均",
    re.IGNORECASE,
)
"""Common practice, no source: words for means in several languages."""
_FACTS = ("phase", "context", "feature", "kind", "site")


def is_of_means(heads: list[str]) -> bool:
    """
    Whether the heads of a line of results say that they are means.

    >>> is_of_means(["Mean number", "Early", "(n=4)"]), is_of_means(["Mittelwert"]), is_of_means(["Median"])
    (True, True, False)
    """
    return any(map(_MEAN.search, heads))


def samples_of_means(ledger: Ledger, heads: list[str]) -> dict[str, list[int]]:
    """
    Way to read a line of means -> the lines of samples that it may be of; the one that its heads say alone.

    'Early' beside 'Mean number' is of the samples whose phase is Early.
    """
    found: dict[str, list[int]] = {}
    for s in ledger.sample_lines:
        facts = ledger.finds.facts.get(ledger.sample_of_line(s), {})
        for text in {one.text for name in _FACTS for one in facts.get(name, ())}:
            found.setdefault(text.strip().lower(), []).append(s)
    words = {text.strip(" .:()").lower() for text in heads}
    named = {f"mean of {text}": of for text, of in found.items() if text in words}
    others = {f"mean of {text}": of for text, of in found.items() if 1 < len(of) < len(ledger.sample_lines)}
    return named or {"mean of all": ledger.sample_lines, **others}


def mean(ledger: Ledger, added: Worked | None, of: list[int]) -> Worked | None:
    """A sum by the number of samples that its lines are of."""
    n = len({ledger.sample_of_line(s) or str(s) for s in of})
    if added is None:
        return None
    said = f"{added.said} over {n} samples"
    return replace(added, value=added.value / n, said=said, perhaps=tuple(more / n for more in added.perhaps))
