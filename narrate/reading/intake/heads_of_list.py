"""The heads of a list together: a word that a database writes before each is left off where it hides what they say."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence

from narrate.model.grids import Area
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.states_under_heads import are_states

_PREFIX = re.compile(r"([^\W\d_]{2,12})[_.:](?=[^\W\d])")

_NUMBER = re.compile(r"[_.:](?:no|nr|num|number|id)$", re.IGNORECASE)
"""'OBJ_NO' is the number of a thing, and no number of things."""


def heads_in(look: Look, area: Area, row: int) -> dict[int, str]:
    """Column -> the role that the head in a row speaks for; empty where it speaks for none."""
    texts = {c: look.text(row, c) for c in range(area.left, area.right + 1) if look.text(row, c)}
    return roles_of_heads(texts)


def with_states(look: Look, rows: Sequence[int], row: int, heads: Mapping[int, str]) -> dict[int, str]:
    """The heads with 'State' over 'charred' or 'C, U' read as a condition, and as no part of a country."""
    made = dict(heads)
    for c, role in heads.items():
        if role in ("site", "group") and are_states(look.text(row, c), (look.text(r, c) for r in rows), look):
            made[c] = "condition"
    return made


def roles_of_heads(texts: Mapping[int, str]) -> dict[int, str]:
    """
    The same from the texts.

    A table's name before its fields comes again and again ('OBJ_QTY', 'OBJ_COND', 'tblFind.Taxon'), and is left off
    where a head says nothing with it. One such head alone may be anything, such as a code of a plant.

    >>> roles_of_heads({0: "OBJ_NAME", 1: "OBJ_QTY", 2: "PROV_FLOT_BAG", 3: "PROV_NOTES"})
    {0: 'taxon', 1: 'count', 2: 'sample', 3: 'sample note'}
    >>> roles_of_heads({0: "HOR_GR", 1: "TRI_GR", 2: "AVE_FL"})
    {0: '', 1: '', 2: ''}
    """
    roles = {c: heading(text) for c, text in texts.items()}
    before = {c: match[1] for c, text in texts.items() if (match := _PREFIX.match(text))}
    several = {word for word, n in Counter(before.values()).items() if n >= 2}
    bare = {
        c: heading(_PREFIX.sub("", texts[c], count=1))
        for c, word in before.items() if not roles[c] and word in several and not _NUMBER.search(texts[c])
    }  # fmt: skip
    if len({role for role in bare.values() if role}) < 3:
        return roles
    return {c: bare.get(c) or role for c, role in roles.items()}
