"""The section as Markdown with pipe tables, as common converters take it."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.documents.blocks import Block, Heading, Table


def markdown(blocks: Sequence[Block]) -> str:
    """The text of the section; tables are numbered in order."""
    parts: list[str] = []
    tables = 0
    for block in blocks:
        if isinstance(block, Heading):
            parts.append(f"{'#' * block.level} {block.text}")
        elif isinstance(block, Table):
            tables += 1
            parts.append(_table(block, tables))
        else:
            parts.append(block.text)
    return "\n\n".join(parts) + "\n"


def _table(table: Table, number: int) -> str:
    lines = [f"Table {number}. {table.caption}", "", _row(table.columns), _row(tuple("---" for _ in table.columns))]
    lines += [_row(row) for row in table.rows]
    return "\n".join(lines + (["", table.note] if table.note else []))


def _row(cells: Sequence[str]) -> str:
    return "| " + " | ".join(cell.replace("\\", "\\\\").replace("|", "\\|").replace("\n", " ") for cell in cells) + " |"
