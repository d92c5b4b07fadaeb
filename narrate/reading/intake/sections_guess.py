"""Lists under one another, each under the id of its sample: 'Sample 14' over the names and counts of that sample."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.grids import Area, address
from narrate.model.layouts import Role
from narrate.reading.intake.crossed_guess import Crossed
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading

_ID = re.compile(
    r"(?P<what>sample|flot|flotation sample|context|feature|locus|fs|bag|probe|befund|muestra|échantillon|us|lot|pit)"
    r"\s*(?:no\.?|nr\.?|number|#|:)?\s*(?P<id><?\(?\[?(?=[\w.-]*\d)[\w.-]+(?:/[\w.-]+)?\]?\)?>?)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Lists:
    """One table for each sample, and the ids that are meant where a heading says more than the id."""

    tables: tuple[Crossed, ...] = ()
    mend: dict[str, str] = field(default_factory=dict)


def guess_sections(look: Look, area: Area) -> Lists:
    """The lists of an area; none where ids of samples do not head them, or where a row of ids heads the columns."""
    heads: dict[int, re.Match[str]] = {}
    for row in range(area.top, area.bottom + 1):
        own = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
        match = _ID.match(look.text(row, own[0])) if len(own) == 1 else None
        if match and (own[0] <= area.left + 1):
            heads[row] = match
    ids = [match["id"] for match in heads.values()]
    if len(heads) < 2 or len(set(ids)) < len(ids):
        return Lists()
    found: list[Crossed] = []
    mend: dict[str, str] = {}
    starts = sorted(heads)
    for start, end in zip(starts, [*(row - 1 for row in starts[1:]), area.bottom], strict=True):
        one = _one(look, area, start, end)
        if one is None:
            return Lists()
        found.append(one)
        at = next(c for c in range(area.left, area.right + 1) if (start, c) in look.own)
        word = heads[start]
        if word["id"] != look.text(start, at):
            mend[address(start, at)] = word["id"] if word["what"].lower() in ("sample", "probe") else word[0]
    return Lists(tuple(found), mend)


def _one(look: Look, area: Area, start: int, end: int) -> Crossed | None:
    names = next(c for c in range(area.left, area.right + 1) if (start, c) in look.own)
    rows = {start: Role(name="sample", filled=True)}
    counted = [
        c
        for c in range(names + 1, area.right + 1)
        if sum(look.is_amount(r, c) for r in range(start + 1, end + 1))
        > sum(look.is_text(r, c) for r in range(start + 1, end + 1))
    ]
    if len(counted) != 1:
        return None
    for row in range(start + 1, end + 1):
        label = look.text(row, names)
        if not label and not look.text(row, counted[0]):
            continue
        if heading(label) in ("taxon", "common name") and not look.is_amount(row, counted[0]):
            rows[row] = Role(name="header")
        elif heading(label) == "total":
            rows[row] = Role(name="total")
        elif label and look.is_amount(row, counted[0]):
            rows[row] = Role(name="counts")
        else:
            rows[row] = Role(name="notes" if len(label) > 40 else "section")
    lines = [r for r, role in rows.items() if role.name == "counts"]
    named = sum(look.name_score(r, names) for r in lines) / len(lines) if lines else 0.0
    if named < 0.4:
        return None
    return Crossed(
        look=look, rows=rows, columns={names: Role(name="taxon"), counted[0]: Role(name="counts")}, named=named,
        area=Area(top=start, left=names, bottom=max(rows), right=counted[0]), explained=len(lines),
        doubts=["each list stands under the id of its sample, and is read as a table of its own; "
                "what else those headings say (context, litres) is not read"],
    )  # fmt: skip
