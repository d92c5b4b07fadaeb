"""Lists of finds without a head, told by what stands in their columns."""

from __future__ import annotations

from narrate.model.grids import Area
from narrate.model.layouts import SAMPLE_ROLES, Role
from narrate.reading.intake.evidence import Look, looks_like_id
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.heads_by_content import content_role
from narrate.reading.intake.long_table import Long


def list_without_head(look: Look, area: Area) -> Long | None:
    """A long list without a head: a column of names, a column of ids that repeat, a column of whole numbers."""
    if area.right - area.left > 8 or area.bottom - area.top < 3:
        return None
    rows = [
        r
        for r in range(area.top, area.bottom + 1)
        if any((r, c) in look.cells for c in range(area.left, area.right + 1))
    ]
    texts = {c: [look.text(r, c) for r in rows] for c in range(area.left, area.right + 1)}
    named = {c: sum(look.name_score(r, c) for r in rows) / len(rows) for c in texts}
    taxon = max(named, key=lambda c: named[c])
    is_headed = any(heading(look.text(r, taxon)) in ("taxon", "genus", *SAMPLE_ROLES) for r in rows)
    if named[taxon] < 0.6 or is_headed:
        return None
    amounts = [
        c
        for c in texts
        if c != taxon and all(look.is_amount(r, c) for r in rows if (r, c) in look.cells) and any(texts[c])
    ]
    ids = [
        c
        for c in texts
        if c not in (taxon, amounts[-1] if amounts else -1)
        and all(looks_like_id(t) for t in texts[c] if t)
        and any(texts[c])
    ]
    ids = [c for c in ids if len(set(texts[c])) <= 0.8 * len(rows)]
    if not amounts or not ids:
        return None
    count = amounts[-1]
    sample = ids[0]
    if count == sample:
        return None
    columns = {c: Role(name="ignored", qualifiers=("no heading",)) for c in texts if any(texts[c])}
    columns[taxon], columns[sample], columns[count] = Role(name="taxon"), Role(name="sample"), Role(name="count")
    for c in texts:
        said = content_role([t for t in texts[c] if t], look)
        if c not in (taxon, sample, count) and said in ("part", "condition", "completeness", "size class", "fraction"):
            columns[c] = Role(name=said)
    return Long(
        shape="long", rows={r: Role(name="finds") for r in rows}, columns=columns,
        area=area, explained=len(rows), score=len(rows) * 1.5,
        doubts=["the sheet has no head; the columns were told apart by what stands in them"],
    )  # fmt: skip
