"""Ids without a label over lists of finds: 'X1021, posthole, 8 l' over each list, under which its finds stand."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from narrate.model.grids import Area
from narrate.reading.intake.evidence import Look, form_of_id, looks_like_id
from narrate.reading.intake.kind_words_abroad import kind_of

_LITRES = re.compile(r"\d+(?:[.,]\d+)? ?(?:l|lt|ltr|lit(?:er|re|ros|ri)s?)\.?", re.IGNORECASE)
_MOST_CELLS = 6
"""Cells of a line that says whose list stands under it."""


def ids_over_lists(look: Look, area: Area, heads: Sequence[int]) -> Mapping[int, dict[str, tuple[int, int]]]:
    """
    For the head of each list: role -> the cell of the line over it that says so of its sample.

    Empty unless each of two lists or more has an id of its own there, with letters and figures, and all of one form.
    """
    found: dict[int, dict[str, tuple[int, int]]] = {}
    ids: list[str] = []
    for head in heads:
        row = head - 1
        own = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
        id = look.text(row, own[0]) if own else ""
        if not looks_like_id(id) or not re.search(r"[^\W\d_]", id) or len(own) > _MOST_CELLS:
            return {}
        ids.append(id)
        found[head] = {"sample": (row, own[0])}
        for c in own[1:]:
            text = look.text(row, c)
            role = "volume" if _LITRES.fullmatch(text) else "kind" if kind_of(text, look.names.packs.words) else ""
            if role:
                found[head].setdefault(role, (row, c))
    is_sure = len(ids) > 1 and len(set(ids)) == len(ids) and len(set(map(form_of_id, ids))) == 1
    return found if is_sure else {}
