"""Depths are places within a deposit, and no sites: they stay with the samples as notes."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Role, Table
from narrate.reading.intake.header_words import flat_heading

# Common practice, no source: the word in eleven languages.
_DEPTH = re.compile(
    r"(?:depth|level cm|profondeur|profundidad|profondità|profundidade|tiefe|diepte|djup|dybde|głębokość|深度|深さ)"
    r"(?: ?(?:m|cm|mm|bs|bd))*"
)
_OTHER = Role(name="")


def is_depth(head: str) -> bool:
    """
    Whether a heading asks for a depth.

    >>> [is_depth(head) for head in ("Depth (cm)", "Depth cm", "Tiefe [m]", "Level", "Site")]
    [True, True, True, False, False]
    """
    return bool(_DEPTH.fullmatch(flat_heading(head)))


def depths_as_notes(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Rows and columns of depths among those of sites become notes of the samples, which is told."""
    for n, table in enumerate(tables):
        cells = grids[table.sheet].spread()
        for name in ("rows", "columns"):
            roles: dict[int, Role] = {**getattr(tables[n], name)}
            if not any(role.name == "site" for role in roles.values()):
                continue
            found = {
                (r if name == "rows" else c): cell.text
                for (r, c), cell in sorted(cells.items(), reverse=True)
                if roles.get(r if name == "rows" else c, _OTHER).name == "site" and is_depth(cell.text)
            }
            if not found:
                continue
            notes = {at: Role(name="sample note", qualifiers=(head,)) for at, head in found.items()}
            made = {**roles, **notes}
            tables[n] = replace(tables[n], rows=made) if name == "rows" else replace(tables[n], columns=made)
            heads_said = ", ".join(f"'{head}'" for head in found.values())
            doubts.append(f"{heads_said}: a depth is no site, and is kept in the notes of the samples")
