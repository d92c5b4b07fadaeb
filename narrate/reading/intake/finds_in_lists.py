"""Weights of finds among the columns of a list of samples: 'Charcoal >4 mm (g)' beside litres and phases."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.layouts import Marks, Role, Table
from narrate.reading.intake.evidence import Look

NO_FIELD = "no field of a record holds it"
"""Why a column of a list of samples is left out."""


def with_finds_of_list(look: Look, table: Table, marks: Marks) -> Table:
    """
    The list as a table of its samples against the remains that it weighs; the list itself where it weighs none.

    marks:  what the signs of the sheet mean, for the amounts.
    """
    head = next((row for row, role in table.rows.items() if role.name == "header"), None)
    lines = [row for row, role in table.rows.items() if role.name == "finds"]
    if head is None or not any(role.name == "sample" and not role.also for role in table.columns.values()):
        return table
    weighed = [
        c for c, role in table.columns.items()
        if role.name == "ignored" and NO_FIELD in role.qualifiers and _weighs_a_find(look, head, lines, c)
    ]  # fmt: skip
    if not weighed:
        return table
    rows = {row: _as_crossed(role) for row, role in table.rows.items()}
    columns = {**table.columns, **{c: Role(name="counts") for c in weighed}}
    return replace(table, shape="crossed", rows=rows, columns=columns, marks=marks)


def _weighs_a_find(look: Look, head: int, lines: list[int], column: int) -> bool:
    """Whether a head names remains of plants and their weight, and nothing but amounts stands under it."""
    named = look.names.read(look.text(head, column))
    given = [row for row in lines if look.text(row, column)]
    is_weight = named.is_known and named.quantity == "mass" and named.unit in ("g", "mg")
    return is_weight and bool(given) and all(look.is_amount(row, column) for row in given)


def _as_crossed(role: Role) -> Role:
    if role.name == "header":
        return Role(name="taxon")
    return Role(name="counts") if role.name == "finds" else role
