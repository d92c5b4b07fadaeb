"""Forms whose finds stand in blocks, 'Wood', 'Nutshell' and 'Seeds', each under a head of its own: one list of all."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from narrate.model.grids import Area
from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.group_heads import names_a_group
from narrate.reading.intake.header_words import heading, quantity
from narrate.reading.intake.long_table import Long

_MOST_BLANK = 15
"""Blank rows between a list and its total: lists beside each other are of different lengths."""


_NOBODY_KNOWS = re.compile(r"\b(?:un(?:id|known|det)|in(?:det|dét)|unbest|no ident|non ident)", re.IGNORECASE)
"""'Unidentified seeds' is a name among others."""


def is_further_block(look: Look, area: Area, head: int, first: int) -> bool:
    """Whether a head belongs to the form of an earlier one: it says the same, or the name of a block stands over it."""
    if title_over(look, area, head) is not None or is_block_head(look, area, head):
        return True
    return set(look.texts(head, area.left, area.right)) <= {*look.texts(first, area.left, area.right), ""}


def names_block(look: Look, text: str) -> bool:
    """Whether words say what a block is of and name no plant: 'WOOD', 'Nutshell', 'Seeds and fruits', 'Charred'."""
    read = look.names.read(text)
    if not text or _NOBODY_KNOWS.search(text) or (read.is_known and read.identification.taxon != "Indeterminate"):
        return False
    is_part = read.part not in ("", "indeterminate")
    return is_part or bool(look.names.condition_of(text)) or names_a_group(text)


def is_block_head(look: Look, area: Area, row: int) -> bool:
    """Whether the name of a block stands where the word for names would: 'Wood, Count, Weight'."""
    texts = [text for text in look.texts(row, area.left, area.right) if text]
    return len(texts) > 1 and all(quantity(t) or heading(t) in ("count", "mass") for t in texts[1:]) and (
        names_block(look, texts[0]) and not quantity(texts[0])
    )  # fmt: skip


def sections_within(look: Look, area: Area) -> list[int]:
    """
    Rows of a list that hold the name of a block and nothing else: in capitals, or two behind totals or blanks.

    Names of groups ('Crops') are heads in a list that begins with one.
    """
    columns = range(area.left, area.right + 1)
    rows = range(area.top + 1, area.bottom + 1)
    lines = {r: [look.text(r, c).strip() for c in columns if (r, c) in look.own] for r in rows}
    alone = [r for r, own in lines.items() if len(own) == 1 and names_block(look, own[0])]
    firsts = [own[0] for r, own in lines.items() if own and r not in alone]
    are_large = sum(text.isupper() for text in firsts) >= 0.4 * len(firsts)
    large = [r for r in alone if lines[r][0].isupper() and not are_large]
    behind = [r for r in alone if r not in large and (not lines.get(r - 1) or heading(lines[r - 1][0]) == "total")]
    single = [r for r, own in lines.items() if len(own) == 1 and not look.names.part_of(own[0])]
    groups = [r for r in single if names_a_group(lines[r][0])]
    is_headed = bool(groups) and not any(lines[r] for r in rows if r < groups[0])
    heads = [r for r in single if r in groups or not look.names.read(lines[r][0]).is_known] if is_headed else []
    return sorted({*large, *heads, *(behind if len(behind) + len(large) > 1 else [])})


def title_in(look: Look, area: Area) -> dict[int, Role]:
    """The row at once over a list that stands beside others, where one cell over its columns names it."""
    own = [c for c in range(area.left, area.right + 1) if (area.top - 1, c) in look.own]
    is_title = len(own) == 1 and names_block(look, look.text(area.top - 1, own[0]))
    return {area.top - 1: Role(name="section")} if is_title else {}


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
            rows |= {**titles.get(head, {}), head: head_role(look, area, head)}
            rows.update(total_below(look, area, head))
    rows.update(total_below(look, area, max(rows)))
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


def head_role(look: Look, area: Area, head: int) -> Role:
    return Role(name="header", also=("section",) if is_block_head(look, area, head) else ())


def total_below(look: Look, area: Area, last: int) -> dict[int, Role]:
    """The row of the total of a list or of all blocks, behind blank rows."""
    for row in range(last + 1, min(last + 1 + _MOST_BLANK, area.bottom) + 1):
        texts = [text for text in look.texts(row, area.left, area.right) if text]
        if texts:
            return {row: Role(name="total")} if heading(texts[0]) == "total" else {}
    return {}
