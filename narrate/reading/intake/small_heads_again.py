"""Rows of small headings that come again inside a table: 'Nutshell, Ct., Wt., Ct., Wt.' over each block of names."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading, quantity


def repeats_small_heads(look: Look, row: int, columns: Sequence[int], above: Sequence[int]) -> bool:
    """Whether a row holds nothing but 'n' and 'g' behind its label, as one of the rows over the names does."""
    own: dict[int, str] = {}
    for column in columns:
        text = look.text(row, column)
        if text and not quantity(text):
            return False
        if text:
            own[column] = text
    return len(own) >= 2 and any(all(look.text(r, c) == text for c, text in own.items()) for r in above)


def band_role(look: Look, row: int, names: int) -> Role:
    """What such a row is inside the table: the head of a section where its label is a word of its own."""
    return Role(name="section") if _heads_block(look, look.text(row, names)) else Role(name="header")


def with_first_section(look: Look, rows: dict[int, Role], names: int, bands: Sequence[int]) -> dict[int, Role]:
    """The rows with the label of the first small headings as the head of a section, where later ones head others."""
    small = [r for r, role in rows.items() if role.name == "quantity" and (not bands or r < bands[0])]
    sections = [r for r in bands if rows[r].name == "section"]
    if len(small) != 1 or not sections:
        return rows
    label = look.text(small[0], names)
    if not _heads_block(look, label):
        return rows
    return {**rows, small[0]: replace(rows[small[0]], also=(*rows[small[0]].also, "section"))}


def _heads_block(look: Look, label: str) -> bool:
    """Whether a label is a word for what is below it and not the head of the column of names; 'Seeds' is one too."""
    return bool(label) and (not heading(label) or bool(look.names.part_of(label)))
