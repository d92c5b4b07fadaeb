"""Ids that carry more than the id: 'Pit 1 (n)' beside 'Pit 1 (g)'. The layout says which is which."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.grids import address
from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import quantity, unit

_TAIL = re.compile(r"^(?P<id>.*\w[>\])]?)(?P<gap>[\s,;:_]*[(\[]|[\s,;:_-]+)(?P<what>[^()\[\]]{1,12})[)\]]?$")


def split_heads(look: Look, table: Table) -> tuple[Table, dict[str, str], list[str]]:
    """The table with columns of weights and shares told apart, the ids that are meant, and what was doubtful."""
    if table.shape != "crossed" or not table.has_samples_across:
        return table, {}, []
    if any(role.name == "quantity" for role in table.rows.values()):
        return table, {}, []
    rows = [r for r, role in table.rows.items() if "sample" in role.names]
    columns = [c for c, role in table.columns.items() if role.name == "counts"]
    if len(rows) != 1 or len(columns) < 2:
        return table, {}, []
    row = rows[0]
    found = {c: _split(look.text(row, c)) for c in columns}
    if not all(found.values()):
        return table, {}, []
    ids = {c: one[0] for c, one in found.items() if one}
    whats = {c: quantity(one[1]) for c, one in found.items() if one}
    if len(set(ids.values())) == len(columns) and len(set(whats.values())) > 1:
        return table, {}, []
    made = dict(table.columns)
    for c in columns:
        if whats[c] == "mass":
            one = found[c]
            made[c] = Role(name="mass", qualifiers=(unit(one[1]) or "g" if one else "g",))
        elif whats[c] in ("percent", "density"):
            made[c] = Role(name=whats[c])
        elif whats[c].startswith("count, "):
            made[c] = Role(name="counts", qualifiers=(whats[c].removeprefix("count, "),))
    before = f"{table.sheet}!" if table.sheet else ""
    mend = {f"{before}{address(row, c)}": ids[c] for c in columns}
    doubt = f"the ids in row {row + 1} end in what is given (n, g, %); the id without it is under 'mend' in the layout"
    return replace(table, columns=made), mend, [doubt]


def _split(text: str) -> tuple[str, str] | None:
    match = _TAIL.match(text.strip())
    if match and quantity(match["what"]):
        return match["id"].strip(" ,;:_"), match["what"]
    return None
