"""Lists under one another, each under the id of its sample: 'Sample 14' over the names and counts of that sample."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.grids import Area, address
from narrate.model.layouts import DERIVED_ROLES, Role
from narrate.reading.intake.crossed_guess import Crossed
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading, quantity
from narrate.reading.intake.heads_in_pieces import pieces_of
from narrate.reading.intake.litres_in_heads import litres_in

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
    heads = heads if len(heads) >= 2 else _over_repeated_heads(look, area)
    ids = [match["id"] for match in heads.values()]
    if len(heads) < 2 or len(set(ids)) < len(ids):
        return Lists()
    found: list[Crossed] = []
    mend: dict[str, str] = {}
    starts = sorted(heads)
    for start, end in zip(starts, [*(row - 1 for row in starts[1:]), area.bottom], strict=True):
        one = _one(look, area, start, end, heads[start])
        if one is None:
            return Lists()
        found.append(one)
        at = next(c for c in range(area.left, area.right + 1) if (start, c) in look.own)
        word = heads[start]
        if word["id"] != look.text(start, at):
            mend[address(start, at)] = word["id"] if word["what"].lower() in ("sample", "probe") else word[0]
    return Lists(tuple(found), mend)


_TITLE = re.compile(r"(?P<id>(?P<what>\S+).*)")


def _over_repeated_heads(look: Look, area: Area) -> dict[int, re.Match[str]]:
    """Single cells over heads that say the same each time ('Taxon', 'Count'): each names the sample of its list."""
    texts = {row: look.texts(row, area.left, area.right) for row in range(area.top, area.bottom + 1)}
    heads = [
        row for row, own in texts.items()
        if heading(next(filter(None, own), "")) == "taxon" and any(quantity(text) for text in own)
    ]  # fmt: skip
    again = [row for row in heads if sum(texts[row] == texts[other] for other in heads) > 1]
    found: dict[int, re.Match[str]] = {}
    for row in again:
        over = [text for text in texts.get(row - 1, []) if text]
        match = _TITLE.fullmatch(over[0]) if len(over) == 1 and over[0] == texts[row - 1][0] else None
        if match is None or len(over[0]) > 60:
            return {}
        found[row - 1] = match
    return found


def _one(look: Look, area: Area, start: int, end: int, word: re.Match[str]) -> Crossed | None:
    names = next(c for c in range(area.left, area.right + 1) if (start, c) in look.own)
    also = tuple(role for role in (heading(word["what"]),) if role in ("context", "feature"))
    also += ("volume",) if litres_in(look.text(start, names)) else ()
    pieces = pieces_of(look.text(start, names))
    also += tuple(role for role in pieces if len(pieces) > 1 and role not in ("sample", *also))
    rows = {start: Role(name="sample", also=also, filled=True)}
    counted = [
        c
        for c in range(names + 1, area.right + 1)
        if sum(look.is_amount(r, c) for r in range(start + 1, end + 1))
        >= max(1, sum(look.is_text(r, c) for r in range(start + 1, end + 1)))
    ]
    head = next((r for r in range(start + 1, min(start + 3, end) + 1) if heading(look.text(r, names)) == "taxon"), None)
    whats: dict[int, str] = {}
    if head is not None:
        whats = {c: quantity(look.text(head, c)) or heading(look.text(head, c)) for c in counted}
    if not counted or (len(counted) > 1 and not all(whats.get(c) for c in counted)):
        return None
    columns = {names: Role(name="taxon")}
    for c in range(names + 1, area.right + 1):
        said = heading(look.text(head, c)) if head is not None else ""
        if c in counted:
            what = whats.get(c, "")
            columns[c] = Role(name=what if what in DERIVED_ROLES else "counts")
        elif said in ("part", "condition", "common name", "family", "completeness", "size class", "code", "note"):
            columns[c] = Role(name={"note": "taxon note"}.get(said, said))
    if len(counted) > 1 and head is not None:
        rows[head] = Role(name="quantity")
    for row in range(start + 1, end + 1):
        label = look.text(row, names)
        amounts = any(look.is_amount(row, c) for c in counted)
        if row in rows or (not label and not amounts):
            continue
        if heading(label) in ("taxon", "common name") and not amounts:
            rows[row] = Role(name="header")
        elif heading(label) == "total":
            rows[row] = Role(name="total")
        elif label and amounts:
            rows[row] = Role(name="counts")
        else:
            rows[row] = Role(name="notes" if len(label) > 40 else "section")
    lines = [r for r, role in rows.items() if role.name == "counts"]
    named = sum(look.name_score(r, names) for r in lines) / len(lines) if lines else 0.0
    if named < 0.4:
        return None
    return Crossed(
        look=look, rows=rows, columns=columns, named=named,
        area=Area(top=start, left=names, bottom=max(rows), right=max(columns)), explained=len(lines),
        doubts=["each list stands under the id of its sample, and is read as a table of its own; "
                "of what else those headings say, contexts, phases and litres are read and the rest is not"],
    )  # fmt: skip
