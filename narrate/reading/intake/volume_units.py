"""The unit of volumes where a note says it and not the head: 'VOL = earth floated, in tenths of a litre'; or nobody."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Role, Table
from narrate.reading.intake.header_words import OTHER_MEASURES, unit
from narrate.reading.intake.volumes_drafted import plain_or_comma

_UNITS: tuple[tuple[str, str], ...] = (
    ("dl", r"tenths? of (?:an? )?lit(?:re|er)s?|zehntel(?:n)? ?liter|dixi[eè]mes? de litre|d[eé]cimas? de litro|dl|d[eé]cilit(?:re|er|ro)s?"),
    ("ml", r"ml|mls|millilit(?:re|er|ro)s?|cc|ccm|cm3|cm³|cubic centimet(?:re|er)s?"),
    ("m3", r"m3|m³|cubic met(?:re|er)s?|kubikmeter|m[eè]tres? cubes?|metros? c[uú]bicos?"),
    ("l", r"l|lit(?:re|er|ro|ri)s?|ltrs?"),
)  # fmt: skip
_OTHER = re.compile(rf"\b(?:{OTHER_MEASURES}|kg|mg|g)\b", re.IGNORECASE)


def with_units_said(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Gives volumes without a unit at their head the one that a note of the sheet names, and tells it."""
    for n, table in enumerate(tables):
        grid = grids.get(table.sheet)
        if grid is None:
            continue
        rows, columns = dict(table.rows), dict(table.columns)
        for roles, is_row in ((rows, True), (columns, False)):
            for at, role in roles.items():
                if role.name == "volume" and role.qualifiers[:1] in (("l",), ("kg",), ("g",), ("mg",)):
                    heads = _heads(grid, table, at, is_row)
                    made = _with_unit(role, heads, grid, doubts)
                    roles[at] = made or _by_numbers(role, heads, _bare_numbers(grid, table, at, is_row), doubts)
        tables[n] = replace(table, rows=rows, columns=columns)


def _heads(grid: Grid, table: Table, at: int, is_row: bool) -> list[str]:
    """The words of a line of volumes that are no volumes."""
    cells = [cell for (r, c), cell in sorted(grid.cells.items()) if (r if is_row else c) == at]
    texts = [cell.text for cell in cells if cell.kind == "text"]
    return [text for text in texts if re.search(r"[^\W\d_]{3,}", text) and not re.search(r"\d", text)]


def _with_unit(role: Role, heads: list[str], grid: Grid, doubts: list[str]) -> Role | None:
    """The role with the unit that its head or a note names; None where neither does."""
    for head in heads:
        if _OTHER.search(head):
            doubts.append(
                f"DOUBTFUL: '{head}' gives no litres; its numbers are kept in the notes of the samples, and no density is "
                "made of them: give it the role 'volume, l' once they are litres"
            )
            return Role(name="sample note", qualifiers=(head.replace(",", " "),))
        if unit(head) or _LITRES.search(head):
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
    return None


_LITRES = re.compile(r"\b(?:l|lt|ltrs?|lit(?:re|er)s?|litros?|litri|litr[óoy]\w*|litry|litrage|dm3|dm³)\b|[升リ]", re.IGNORECASE)
_MANY = 200.0
"""Judgement: of litres hardly a sample holds as many; of millilitres most hold more."""


def _bare_numbers(grid: Grid, table: Table, at: int, is_row: bool) -> list[float]:
    """The numbers of a line; 0 for those that carry a unit of their own, or are written otherwise."""
    places = ((at, c) for c in table.columns) if is_row else ((r, at) for r in table.rows)
    texts = [grid.cells[place].text for place in places if place in grid.cells]
    return [plain_or_comma(text, ".") or 0.0 for text in texts if re.search(r"\d", text)]


def _by_numbers(role: Role, heads: list[str], numbers: list[float], doubts: list[str]) -> Role:
    """Litres, unless most numbers are too large for them: then nobody has said what they are, and that is told."""
    if not numbers or 2 * sum(number >= _MANY for number in numbers) < len(numbers):
        return role
    head = heads[0] if heads else ""
    doubts.append(
        f"DOUBTFUL: '{head}' names no unit, and numbers such as {max(numbers):g} are more than samples hold in litres; "
        "they are kept as notes, and no density is made of them: write 'volume, ml' in the layout if they are "
        "millilitres, 'volume, l' if they are litres"
    )
    return Role(name="sample note", qualifiers=(head,) if head else ())


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
