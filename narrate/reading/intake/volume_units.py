"""The unit of volumes where a note says it and not the head: 'VOL = earth floated, in tenths of a litre'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Role, Table
from narrate.reading.intake.header_words import unit

_UNITS: tuple[tuple[str, str], ...] = (
    ("dl", r"tenths? of (?:an? )?lit(?:re|er)s?|zehntel(?:n)? ?liter|dixi[eè]mes? de litre|d[eé]cimas? de litro|dl|d[eé]cilit(?:re|er|ro)s?"),
    ("ml", r"ml|mls|millilit(?:re|er|ro)s?|cc|ccm|cm3|cm³|cubic centimet(?:re|er)s?"),
    ("m3", r"m3|m³|cubic met(?:re|er)s?|kubikmeter|m[eè]tres? cubes?|metros? c[uú]bicos?"),
    ("l", r"l|lit(?:re|er|ro|ri)s?|ltrs?"),
)  # fmt: skip
_OTHER = re.compile(r"\b(?:buckets?|gallons?|quarts?|pints?|bushels?|eimer|seaux?|cubos?|emmers?|bags?)\b", re.IGNORECASE)


def with_units_said(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Gives volumes without a unit at their head the one that a note of the sheet names, and tells it."""
    for n, table in enumerate(tables):
        grid = grids.get(table.sheet)
        if grid is None:
            continue
        rows, columns = dict(table.rows), dict(table.columns)
        for roles, is_row in ((rows, True), (columns, False)):
            for at, role in roles.items():
                if role.name == "volume" and role.qualifiers[:1] == ("l",):
                    roles[at] = _with_unit(role, _heads(grid, table, at, is_row), grid, doubts)
        tables[n] = replace(table, rows=rows, columns=columns)


def _heads(grid: Grid, table: Table, at: int, is_row: bool) -> list[str]:
    """The words of a line of volumes that are no volumes."""
    cells = [cell for (r, c), cell in sorted(grid.cells.items()) if (r if is_row else c) == at]
    return [cell.text for cell in cells if cell.kind == "text" and re.match(r"[^\W\d_]{3,}[^\d]*$", cell.text)]


def _with_unit(role: Role, heads: list[str], grid: Grid, doubts: list[str]) -> Role:
    for head in heads:
        if unit(head):
            return role
        said = _said_of(head, grid)
        if not said:
            continue
        found = re.search(r"\b(?:in|en|as)\s+(.*)", said)
        words = found[1] if found else said
        for name, pattern in _UNITS:
            if re.search(rf"(?<![\w/])(?:{pattern})(?![\w/])", words, re.IGNORECASE) and not _OTHER.search(words):
                if name != "l":
                    doubts.append(f"the sheet says of '{head}': '{said[:80]}'; its numbers are taken as {name}")
                return replace(role, qualifiers=(name,))
        if _OTHER.search(words):
            doubts.append(
                f"DOUBTFUL: the sheet says of '{head}': '{said[:80]}'; its numbers are no litres and are left out: "
                "give them the role 'volume, l' once they are litres"
            )
            return Role(name="sample note")
    return role


def _said_of(head: str, grid: Grid) -> str:
    """What a note says of a head: 'VOL = ...' in one cell, or 'VOL' before '= ...'."""
    for (row, column), cell in sorted(grid.cells.items()):
        match = re.match(rf"\W*{re.escape(head)}\W*\s*(?:=|:)\s*(.+)", cell.text, re.IGNORECASE)
        if match:
            return match[1]
        beside = grid.text(row, column + 1)
        if cell.text.rstrip(" :=").lower() == head.lower() and (beside.startswith("=") or cell.text.endswith(("=", ":"))):
            return beside.lstrip("= ")
    return ""
