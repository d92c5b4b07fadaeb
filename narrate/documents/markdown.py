"""The section as Markdown with pipe tables, as common converters take it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from narrate.documents.blocks import Block, Contents, Figure, Foot, Heading, Table, foot_of, listed
from narrate.documents.inline import labels, runs


def markdown(blocks: Sequence[Block], files: Mapping[str, str] | None = None) -> str:
    """
    The text of the section; tables and figures are numbered in order.

    files:  anchor of a figure -> path of its picture, as the text shall name it.
    """
    known = labels(blocks)
    names = iter(known.values())
    parts: list[str] = []
    for block in blocks:
        if isinstance(block, Heading):
            parts.append(f"{'#' * block.level} {_inline(block.text, known)}")
        elif isinstance(block, Table):
            parts.append(_table(block, next(names), known))
        elif isinstance(block, Figure):
            name = next(names)
            where = (files or {}).get(block.anchor, f"{block.anchor}.png")
            caption = f"{name}. {_inline(f'{block.caption} {block.note}'.strip(), known)}"
            parts.append(f"![{_escaped(block.alt)}]({where})\n\n{caption}")
        elif isinstance(block, Contents):
            parts.append("\n".join(_entry(b, known) for b in listed(blocks)))
        elif isinstance(block, Foot):
            continue
        elif block.kind == "item":
            parts.append(f"- {_inline(block.text, known)}")
        else:
            parts.append(_inline(block.text, known))
    text = "\n\n".join([*parts, "---", _escaped(foot_of(blocks))]) + "\n"
    return re.sub(r"(?m)^(- .*)\n\n(?=- )", r"\1\n", text)


def _entry(heading: Heading, known: Mapping[str, str]) -> str:
    return f"{'    ' * (heading.level - 2)}- {_inline(heading.text, known)}"


def _table(table: Table, name: str, known: Mapping[str, str]) -> str:
    lines = [f"{name}. {_inline(table.caption, known)}", "", _row(table.columns, known)]
    rulers = ("--:" if number in table.numbers else "---" for number in range(len(table.columns)))
    lines.append("| " + " | ".join(rulers) + " |")
    lines += [_row(row, known) for row in table.rows]
    return "\n".join(lines + (["", _inline(table.note, known)] if table.note else []))


def _row(cells: Sequence[str], known: Mapping[str, str]) -> str:
    return "| " + " | ".join(_inline(cell, known).replace("|", "\\|").replace("\n", " ") for cell in cells) + " |"


_MARKS = {"": "", "latin": "*", "strong": "**", "title": "*"}


def _inline(text: str, known: Mapping[str, str]) -> str:
    pieces = (f"{_MARKS[r.style]}{_escaped(r.text)}{_MARKS[r.style]}" for r in runs(text, known))
    found = "".join(pieces)
    # A line that begins with a mark of lists or headings is text here.
    return re.sub(r"^(\d+)([.)] )|^([#+>-])(?=\s)", lambda m: f"{m[1]}\\{m[2]}" if m[1] else f"\\{m[3]}", found)


def _escaped(text: str) -> str:
    return re.sub(r"([\\*_`\[\]<>~^$])", r"\\\1", text).replace("\n", " ")
