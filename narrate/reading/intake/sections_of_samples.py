"""Lines of one cell between samples, such as 'Phase II' or 'House 3': what they say holds for all samples below."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading

_MAY_BE = ("ignored", "section", "notes", "title", "counts", "finds")
_ROLES = ("phase", "site", "feature")
_NONE = re.compile(
    r"(?:un-?(?:phased|dated|stratified|provenanced|known)|not (?:phased|dated)|no phase|undat(?:iert|é)|sans phase"
    r"|sin fase|u/s)\.?",
    re.IGNORECASE,
)


def says_none(text: str) -> bool:
    """
    Whether the head of a section says that nothing is known of where its samples belong.

    >>> says_none("Unphased"), says_none("Phase II")
    (True, False)
    """
    return bool(_NONE.fullmatch(text.strip()))


def with_sections_of_samples(look: Look, table: Table) -> Table:
    """The table with such lines as heads of sections, and what they are of; as it is where they do not read alike."""
    is_of_samples = table.shape in ("long", "records") or not table.has_samples_across
    lines = [row for row, role in table.rows.items() if role.name in ("counts", "finds")]
    if not is_of_samples or not lines:
        return table
    width = range(look.columns)
    heads: dict[int, str] = {}
    for row in range(max(min(lines) - 1, 0), max(lines)):
        role = table.rows.get(row)
        texts = [look.text(row, c) for c in width if (row, c) in look.own]
        if len(texts) == 1 and (role is None or role.name in _MAY_BE):
            heads[row] = texts[0]
    said = {row: _role_of(text) for row, text in heads.items()}
    known = [role for role in said.values() if role]
    if len(known) < 2 or len(set(known)) > 1 or len(set(heads.values())) < 2:
        return table
    rows = {row for row, text in heads.items() if said[row] or says_none(text)}
    made = {row: Role(name="section", also=(known[0],)) for row in rows}
    return replace(table, rows=dict(sorted({**table.rows, **made}.items())))


def _role_of(text: str) -> str:
    """
    >>> _role_of("Phase IV (latest)"), _role_of("House 3:"), _role_of("late fill of the ditch"), _role_of("2 Phase")
    ('phase', 'feature', '', '')
    """
    bare = re.sub(r"\s*[(\[].*", "", text).strip(" :.-")
    words = re.sub(r"[\s.#]*(?:\d+[a-z]?|[IVX]+[a-z]?|[A-Z])$", "", bare)
    role = heading(words) if words != bare and words else ""
    return role if role in _ROLES else ""
