"""A table with one row for each find, as worked out, and where one ends."""

from __future__ import annotations

from dataclasses import dataclass, field

from narrate.model.grids import Area
from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading

OF_SAMPLE = ("sample", "context", "feature", "site")


@dataclass(slots=True, kw_only=True)
class Long:
    """A long table as worked out."""

    shape: str
    rows: dict[int, Role]
    columns: dict[int, Role]
    area: Area
    explained: int = 0
    score: float = 0.0
    doubts: list[str] = field(default_factory=list)


def rows_below(look: Look, area: Area, row: int) -> list[int]:
    """Rows under a head, up to the last that holds anything or to a head of another table."""
    own = look.texts(row, area.left, area.right)
    last = row
    gap = 0
    for r in range(row + 1, area.bottom + 1):
        texts = look.texts(r, area.left, area.right)
        if not any(texts):
            gap += 1
            if gap > 3:
                break
            continue
        roles = [heading(t) for t in texts if t]
        is_head = (
            len(roles) >= 3
            and sum(bool(role) for role in roles) >= 0.7 * len(roles)
            and not any(look.is_amount(r, c) for c in range(area.left, area.right + 1))
        )
        if texts != own and is_head:
            break
        gap = 0
        last = r
    return list(range(row + 1, last + 1))
