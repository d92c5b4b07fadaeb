"""Classes of abundance beside the counts that they are of: 'Quantity' 64, 'Abundance' 4."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence

from narrate.reading.intake.evidence import Look

# Common practice, no source: what classes are headed with in seven languages.
_CLASSES = re.compile(
    r"(?:relative )?(?:abund(?:ance|\.)?|abondance|abundancia|abbondanza|abundância|häufigkeit|abundantie)"
    r"(?:[ _](?:class|code|score|scale|index|rank|klasse|classe|clase|index))?",
    re.IGNORECASE,
)


def signs_for_counts(
    look: Look, below: Sequence[int], heads: Mapping[int, str], amounts: Collection[int]
) -> dict[int, str]:
    """
    The columns of signs that the file explains, and that stand for the counts of lines which have none: counts too.

    amounts:  the columns whose heads speak of counts.
    """
    numbers = {r for r in below for c in amounts if look.is_amount(r, c) and look.text(r, c) not in look.signs}
    found = {}
    for column in (c for c, role in heads.items() if role in ("", "count") and numbers):
        lines = [r for r in below if look.text(r, column)]
        if len(lines) > 1 and not numbers & set(lines) and all(look.text(r, column) in look.signs for r in lines):
            found[column] = "count"
    return found


def with_abundance_beside(heads: Mapping[int, str], texts: Mapping[int, str], doubts: list[str]) -> dict[int, str]:
    """
    The heads of a list in which a class of abundance beside a count is drawn from it, and is not added to it.

    >>> with_abundance_beside({0: "count", 1: "count"}, {0: "Quantity", 1: "Abundance"}, [])
    {0: 'count', 1: 'derived'}
    >>> with_abundance_beside({0: "taxon", 1: "count"}, {0: "Taxon", 1: "Abundance"}, [])
    {0: 'taxon', 1: 'count'}
    """
    classes = [c for c, role in heads.items() if role in ("count", "") and _CLASSES.fullmatch(texts[c].strip())]
    if not classes or not any(role == "count" and column not in classes for column, role in heads.items()):
        return dict(heads)
    doubts.append(
        f"'{texts[classes[0]]}' stands beside counts and is taken for a class that was drawn from them: it is not added; "
        "give it the role 'count' in the layout if other things were counted there"
    )
    return {**heads, **dict.fromkeys(classes, "derived")}
