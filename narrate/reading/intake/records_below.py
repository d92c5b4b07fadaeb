"""A block under a crossed table that repeats its ids and says more of the samples, such as litres. Taxa run down."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.grids import Area
from narrate.model.layouts import SAMPLE_ROLES, Role
from narrate.reading.intake.crossed_body import with_unit
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.heads_by_content import content_role

_FURTHEST = 40
"""Rows under a table in which its ids are looked for again."""
_NUMBER_OF = re.compile(r"(?:no|n|nr|num|number|anzahl|nombre|número)s?\.? (?:of|de|der|di) ", re.IGNORECASE)

_KIND = re.compile(r"kinds?|types?|art|tipo|sorte?", re.IGNORECASE)


def records_below(look: Look, area: Area, roles: Mapping[int, Role], counts: list[int], bottom: int) -> dict[int, Role]:
    """
    The roles of the rows of such a block; none where the ids do not come again, each in its own column.

    roles:  the roles of the rows of the table; bottom: its last row.
    """
    ids = [row for row, role in roles.items() if "sample" in role.names]
    if len(ids) != 1 or len(counts) < 3:
        return {}
    wanted = {c: look.text(ids[0], c) for c in counts if look.text(ids[0], c)}
    for row in range(bottom + 1, min(bottom + _FURTHEST, area.bottom) + 1):
        same = sum(look.text(row, c) == id for c, id in wanted.items())
        if len(set(wanted.values())) >= 3 and same >= 0.8 * len(wanted):
            return _block(look, area, roles, counts, bottom, row)
    return {}


def _block(
    look: Look, area: Area, roles: Mapping[int, Role], counts: list[int], bottom: int, ids: int
) -> dict[int, Role]:
    found: dict[int, Role] = {}
    known = {name for role in roles.values() for name in role.names}
    gap = 0
    for row in range(ids + 1, area.bottom + 1):
        texts = [look.text(row, c) for c in counts if (row, c) in look.cells]
        labels = (look.text(row, c) for c in range(area.left, area.right + 1) if c not in counts)
        label = next((text for text in labels if text), "")
        if not texts:
            gap += 1
            if label or gap > 1:
                break
            continue
        if _NUMBER_OF.match(label):
            found[row] = Role(name="ignored", qualifiers=("a number of samples, and of no finds",))
            continue
        role = heading(label) or ("kind" if _KIND.fullmatch(label.strip()) else "")
        role = role if role in SAMPLE_ROLES else content_role(texts, look)
        if role in SAMPLE_ROLES and role not in (*known, "sample"):
            found[row] = with_unit(role, label)
            known.add(role)
        else:
            found[row] = Role(name="ignored", qualifiers=("its heading says nothing known",))
    if not any(role.name != "ignored" for role in found.values()):
        return {}
    over = {
        row: Role(name="title") for row in range(bottom + 1, ids)
        if any((row, c) in look.cells for c in range(area.left, area.right + 1))
    }  # fmt: skip
    return {**over, ids: Role(name="header"), **found}
