"""Tables with the same ids whose titles name the place that each is of: the titles become part of the ids."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading

_OF_PAPER = {
    "table", "tab", "figure", "fig", "sheet", "page", "appendix", "part", "list", "continued", "cont", "tabelle",
    "tableau", "cuadro",
}  # fmt: skip
"""Words of titles that name a piece of paper and no place."""
_PLACES = ("site", "feature", "context", "phase", "kind")


def apart_by_titles(look: Look, tables: list[Table]) -> tuple[list[Table], list[str]]:
    """
    The tables, those of the same ids with their titles joined to them; and what was worked out.

    Two houses with a hearth each have two hearths. Titles are joined only where they name places of one kind, such as
    'House 1' and 'House 2', so that 'Whole' and 'Fragments' over the same samples stay what they are.
    """
    titled = [(n, table, _title(look, table)) for n, table in enumerate(tables)]
    made, doubts = list(tables), []
    for n, table, title in titled:
        if title is None:
            continue
        alike = [
            other
            for m, known, other in titled
            if m != n and other is not None and _names_another_place(title[1], other[1])
            and _ids(look, known) & _ids(look, table)
        ]  # fmt: skip
        if not alike:
            continue
        made[n] = replace(table, rows={**table.rows, title[0]: Role(name="sample", filled=True)})
        doubts.append(f"the ids under '{title[1]}' stand under '{alike[0][1]}' too; the title is taken into them")
    return made, doubts


def _title(look: Look, table: Table) -> tuple[int, str] | None:
    """The row and text of the one title over a table with samples across, within its own columns."""
    if table.shape != "crossed" or not table.has_samples_across:
        return None
    first = next((row for row, role in sorted(table.rows.items()) if "sample" in role.names), None)
    texts = [
        (row, look.text(row, c))
        for row, role in table.rows.items()
        if role.name == "title" and first is not None and row < first
        for c in table.columns
        if (row, c) in look.own and look.text(row, c)
    ]
    return texts[0] if len(texts) == 1 and len(texts[0][1]) <= 40 else None


def _names_another_place(title: str, other: str) -> bool:
    """
    Whether two titles name two places of one kind.

    >>> _names_another_place("House 1", "House 2"), _names_another_place("Table 1", "Table 2")
    (True, False)
    >>> _names_another_place("Pit A", "Pit B"), _names_another_place("Whole", "Fragments")
    (True, False)
    """
    words, others = (re.findall(r"[^\W\d_]{2,}", text.lower()) for text in (title, other))
    if title == other or not words or set(words) & _OF_PAPER:
        return False
    if words == others:
        return True
    return heading(title) in _PLACES and heading(title) == heading(other)


def _ids(look: Look, table: Table) -> set[str]:
    rows = [row for row, role in table.rows.items() if "sample" in role.names]
    counted = [c for c, role in table.columns.items() if role.name == "counts"]
    return {look.text(row, c) for row in rows for c in counted} - {""}
