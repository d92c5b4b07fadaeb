"""Lines of one cell between samples, such as 'Phase II' or 'House 3': what they say holds for all samples below."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.period_words import names_a_period, names_a_phase

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


def with_sections_of_samples(look: Look, table: Table, doubts: list[str] | None = None) -> Table:
    """
    The table with such lines as heads of sections, and what they are of; as it is where they do not read alike.

    Lines of one cell over samples that nobody knows what to make of are told among the doubts.
    """
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
    has_phases = any("phase" in role.names for role in (*table.columns.values(), *table.rows.values()))
    if not has_phases:
        # 'Early Pueblo II', 'Level III': with no number behind a word for phases, and for all samples to the next.
        periods = {row: "phase" for row, text in heads.items() if names_a_period(text) or names_a_phase(text)}
        if len(periods) > sum(role == "phase" for role in said.values()):
            said = {**{row: role if role == "phase" else "" for row, role in said.items()}, **periods}
    known = [role for role in said.values() if role]
    if len(known) < 2 or len(set(known)) > 1 or len(set(heads.values())) < 2:
        _tell_bands(look, table, heads, lines, doubts if doubts is not None else [])
        return table
    rows = {row for row, text in heads.items() if said[row] or says_none(text)}
    rows |= _others_of_the_kind(look, table, heads, rows, lines, known[0], doubts if doubts is not None else [])
    made = {row: Role(name="section", also=(known[0],)) for row in rows}
    return replace(table, rows=dict(sorted({**table.rows, **made}.items())))


def _others_of_the_kind(
    look: Look, table: Table, heads: dict[int, str], known: set[int], lines: list[int], role: str, doubts: list[str]
) -> set[int]:
    """
    Lines that stand as those that are known do, and whose words are not: told, and taken for the same.

    If they were passed over, the samples below them would be of the phase before.
    """
    first = {row: next(c for c in range(look.columns) if (row, c) in look.own) for row in heads}
    width = {first[row] for row in known}
    others = {
        row for row in heads
        if row not in known and row + 1 in lines and first[row] in width and len(heads[row]) <= 50
        and row > min(known) and (table.rows.get(row) is None or table.rows[row].name != "counts")
    }  # fmt: skip
    if 2 * len(others) > len(known):
        return set()
    where = f"sheet {look.grid.sheet}: " if look.grid.sheet else ""
    doubts.extend(
        f"{where}row {row + 1} ('{heads[row]}') stands over samples as the lines do that say a {role}, and is taken for "
        "one"
        for row in sorted(others)
    )
    return others


def _tell_bands(look: Look, table: Table, heads: dict[int, str], lines: list[int], doubts: list[str]) -> None:
    """Tells lines of one cell over the samples, each with samples of its own below, that no role was found for."""
    bands = {
        row: text for row, text in heads.items()
        if row + 1 in lines and table.rows.get(row) is not None and table.rows[row].name == "ignored"
    }  # fmt: skip
    if len(bands) < 2 or len(set(bands.values())) < 2 or table.shape != "crossed":
        return
    listed = ", ".join(f"'{text}'" for text in list(bands.values())[:6])
    where = f"sheet {look.grid.sheet}: " if look.grid.sheet else ""
    doubts.append(
        f"DOUBTFUL: {where}the lines {listed} stand over groups of samples, and say nothing that is known; write "
        f"'section and phase', or 'section and site', for rows {', '.join(str(row + 1) for row in bands)} in the layout"
    )


def _role_of(text: str) -> str:
    """
    >>> _role_of("Phase IV (latest)"), _role_of("House 3:"), _role_of("late fill of the ditch"), _role_of("2 Phase")
    ('phase', 'feature', '', '')
    """
    bare = re.sub(r"\s*[(\[].*", "", text).strip(" :.-")
    words = re.sub(r"[\s.#]*(?:\d+[a-z]?|[IVX]+[a-z]?|[A-Z])$", "", bare)
    role = heading(words) if words != bare and words else ""
    return role if role in _ROLES else ""
