"""Forms whose finds stand in blocks, 'Wood', 'Nutshell' and 'Seeds', each under a head of its own: one list of all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from narrate.model.grids import Area
from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.long_table import Long

_MOST_BLANK = 2
"""Blank rows between the last block and the total of all."""


def is_further_block(look: Look, area: Area, head: int, first: int) -> bool:
    """Whether a head belongs to the form of an earlier one: it says the same, or the name of a block stands over it."""
    if title_over(look, area, head) is not None:
        return True
    return set(look.texts(head, area.left, area.right)) <= {*look.texts(first, area.left, area.right), ""}


def title_over(look: Look, area: Area, head: int) -> int | None:
    """The row at once over a head that names its block: one cell of words, alone in its row."""
    row = head - 1
    if row > area.top and not any((row, c) in look.own for c in range(area.left, area.right + 1)):
        row -= 1
    own = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
    if row < area.top or len(own) != 1 or not look.is_text(row, own[0]):
        return None
    text = look.text(row, own[0])
    is_word = not heading(text) or bool(look.names.part_of(text))  # 'SEEDS' are read as names of plants elsewhere
    return row if len(text) < 50 and is_word else None


def as_one_list(look: Look, area: Area, blocks: Mapping[int, Long | None]) -> list[Long]:
    """
    The blocks of a form as one list, each under the section that its name makes; as they are where columns differ.

    blocks:  the row of each head -> its list; None where nothing was found of its kind.
    """
    found = [block for block in blocks.values() if block is not None]
    titles = {head: {title: Role(name="section")} for head in blocks
              if (title := title_over(look, area, head)) is not None}  # fmt: skip
    for head, block in blocks.items():
        if block is not None:
            block.rows = {**titles.get(head, {}), **block.rows}
    columns = _columns_of_all(found)
    if not found or columns is None:
        return found
    rows = {row: role for block in found for row, role in block.rows.items()}
    for head, block in blocks.items():
        if block is None:
            rows |= {**titles.get(head, {}), head: Role(name="header")}
            rows.update(_total_below(look, area, head))
    rows.update(_total_below(look, area, max(rows)))
    return [Long(
        shape="long", rows=dict(sorted(rows.items())), columns=dict(sorted(columns.items())),
        area=Area(top=area.top, left=area.left, bottom=max(rows), right=area.right),
        explained=sum(block.explained for block in found), score=sum(block.score for block in found),
        doubts=list(dict.fromkeys(doubt for block in found for doubt in block.doubts)),
    )]  # fmt: skip


def _columns_of_all(blocks: Sequence[Long]) -> dict[int, Role] | None:
    """The columns that serve all blocks; None where one is this in one block and that in another."""
    columns: dict[int, Role] = {}
    for block in blocks:
        for column, role in block.columns.items():
            known = columns.get(column)
            if known is None or known.name == "ignored":
                columns[column] = role
            elif known != role and role.name != "ignored":
                return None
    return columns


def _total_below(look: Look, area: Area, last: int) -> dict[int, Role]:
    """The row of the total of all blocks, behind a blank row or two."""
    for row in range(last + 1, min(last + 1 + _MOST_BLANK, area.bottom) + 1):
        texts = [text for text in look.texts(row, area.left, area.right) if text]
        if texts:
            return {row: Role(name="total")} if heading(texts[0]) == "total" else {}
    return {}
