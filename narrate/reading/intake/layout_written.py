"""NAME.layout.yaml as text: a layout with the words that explain it, to be edited by hand."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping
from typing import Any

from narrate.model.grids import column_name
from narrate.model.layouts import Layout, Role, Table
from narrate.reading.intake.layout_file import CHOICES, FORMAT


def layout_text(layout: Layout, sheet_name: str) -> str:
    """The layout as YAML with the words that explain it."""
    lines = [
        f"# How narrate reads {sheet_name}. Worked out by 'narrate intake'; edit it, and intake and check obey it.",
        "# Each row (a number) and column (a letter) of a table has a role; what has none is no part of it.",
        f"format: {FORMAT}",
        "tables:",
    ]
    for table in layout.tables:
        lines += _table_lines(table)
    lines += ["# names: a name or code as written -> the name that it stands for; accept or mend names here"]
    lines += _mapping_lines("names", layout.names, 0)
    if layout.conditions:
        lines += ["# conditions: a word of the sheet -> the condition that it stands for"]
        lines += _mapping_lines("conditions", layout.conditions, 0)
    lines += ["# mend: what was really typed in a cell, such as H4: \"10-12\" (in workbooks 'Sheet!H4')"]
    lines += _mapping_lines("mend", layout.mend, 0)
    if layout.left_out:
        lines += ["left_out:", *(f"  - {_quoted(text)}" for text in layout.left_out)]
    return "\n".join(lines) + "\n"


def _table_lines(table: Table) -> list[str]:
    lines = []
    if table.sheet:
        lines.append(f"sheet: {_quoted(table.sheet)}")
    lines.append(f"shape: {table.shape}".ljust(24) + "# " + _SHAPE_WORDS[table.shape])
    lines.append("rows:")
    lines += [f"  {name}: {_quoted(str(role))}" for name, role in _runs(table.rows, lambda n: str(n + 1))]
    lines.append("columns:")
    lines += [f"  {name}: {_quoted(str(role))}" for name, role in _runs(table.columns, column_name)]
    if table.about:
        lines.append("about:".ljust(24) + "# cells that say something of the one sample of the table")
        lines += _mapping_lines("about", table.about, 0)[1:]
    if table.shape != "records":
        marks = table.marks
        lines.append("cells:")
        lines += [f"  {line}" for line in _mapping_lines("key", marks.key, 0)]
        if marks.footnotes:
            lines += [f"  {line}" for line in _mapping_lines("footnotes", marks.footnotes, 0)]
        lines += [f"  {name}: {_quoted(getattr(marks, name))}" for name in CHOICES]
        lines += _mapping_lines("parts", table.parts, 0)
        if table.ids:
            lines.append("ids:".ljust(24) + "# a key of the sheet -> the id that the sample is known by")
            lines += _mapping_lines("ids", table.ids, 0)[1:]
        lines.append(f"condition: {table.condition}")
    return [("  - " if n == 0 else "    ") + line for n, line in enumerate(lines)]


_SHAPE_WORDS = {
    "crossed": "taxa against samples",
    "long": "one row for each find",
    "records": "one row for each sample, no finds",
}


def _mapping_lines(name: str, mapping: Mapping[str, str], indent: int) -> list[str]:
    if not mapping:
        return [f"{name}: {{}}"]
    return [f"{name}:", *(f"  {_quoted(key)}: {_quoted(value)}" for key, value in mapping.items())]


def _runs(roles: Mapping[int, Role], name: Any) -> Iterable[tuple[str, Role]]:
    """Neighbours of one role as one entry, such as '5-20'."""
    ordered = sorted(roles.items())
    start = 0
    while start < len(ordered):
        end = start
        while (
            end + 1 < len(ordered)
            and ordered[end + 1][0] == ordered[end][0] + 1
            and ordered[end + 1][1] == ordered[start][1]
        ):
            end += 1
        first, last = name(ordered[start][0]), name(ordered[end][0])
        yield (first if start == end else f"{first}-{last}"), ordered[start][1]
        start = end + 1


def _quoted(text: str) -> str:
    """A text as a YAML scalar, in quotes unless it is plainly words."""
    if (
        re.fullmatch(r"[A-Za-z][\w /.;-]*(?:, [\w /.;()>-]+)*", text)
        and ": " not in text
        and not text.endswith((" ", ":"))
    ):
        return text
    return json.dumps(text, ensure_ascii=False)
