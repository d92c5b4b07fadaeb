"""Names and amounts side by side, each pair of columns one sample: 'Taxon, n | Taxon, n' under the samples' ids."""

from __future__ import annotations

from narrate.model.grids import Area
from narrate.model.layouts import Role
from narrate.reading.intake.crossed_guess import Crossed
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading, quantity

_TOP = 20
"""Rows in which the head of such lists is looked for."""


def guess_pairs(look: Look, area: Area) -> list[Crossed]:
    """One table for each list; empty where no lists stand side by side under ids of samples."""
    for row in range(area.top, min(area.top + _TOP, area.bottom) + 1):
        blocks = _blocks(look, area, row)
        if len(blocks) < 2:
            continue
        id_row = _row_of_ids(look, area, row, blocks)
        if id_row is None:
            continue
        found = [_one(look, block, id_row, row, area.bottom) for block in blocks]
        return [one for one in found if one is not None]
    return []


def _blocks(look: Look, area: Area, row: int) -> list[tuple[int, int]]:
    """(column of names, last column) of each list whose head stands in a row."""
    starts = [c for c in range(area.left, area.right + 1) if heading(look.text(row, c)) in ("taxon", "common name")]
    if len({look.text(row, c) for c in starts}) != 1:
        return []
    ends = [*(c - 1 for c in starts[1:]), area.right]
    blocks = []
    for start, end in zip(starts, ends, strict=True):
        while end > start and not look.text(row, end):
            end -= 1
        heads = [look.text(row, c) for c in range(start + 1, end + 1)]
        if not heads or not all(quantity(text) or heading(text) in ("count", "mass") for text in heads):
            return []
        blocks.append((start, end))
    return blocks


def _row_of_ids(look: Look, area: Area, row: int, blocks: list[tuple[int, int]]) -> int | None:
    """The nearest row above in which each list has a text of its own."""
    for above in range(row - 1, area.top - 1, -1):
        texts = [{look.text(above, c) for c in range(start, end + 1)} - {""} for start, end in blocks]
        if all(len(one) == 1 for one in texts) and len({next(iter(one)) for one in texts}) == len(blocks):
            return above
    return None


def _one(look: Look, block: tuple[int, int], id_row: int, head_row: int, bottom: int) -> Crossed | None:
    names, end = block
    rows = {id_row: Role(name="sample", filled=True), head_row: Role(name="quantity")}
    columns = {names: Role(name="taxon")}
    for column in range(names + 1, end + 1):
        what = quantity(look.text(head_row, column))
        is_result = what in ("percent", "density")
        columns[column] = Role(name=what if is_result else "counts")
    counts = [c for c, role in columns.items() if role.name == "counts"]
    for row in range(head_row + 1, bottom + 1):
        label = look.text(row, names)
        amounts = any(look.is_amount(row, c) for c in counts)
        if not label and not amounts:
            continue
        if heading(label) == "total":
            rows[row] = Role(name="total")
        elif amounts and label:
            rows[row] = Role(name="counts")
        else:
            rows[row] = Role(name="notes" if len(label) > 40 else "section")
    lines = [r for r, role in rows.items() if role.name == "counts"]
    named = sum(look.name_score(r, names) for r in lines) / len(lines) if lines else 0.0
    if named < 0.3:
        return None
    return Crossed(
        look=look, rows=dict(sorted(rows.items())), columns=columns, named=named,
        area=Area(top=id_row, left=names, bottom=max(rows), right=end),
        explained=sum(look.is_amount(r, c) for r in lines for c in counts),
        doubts=["lists stand side by side, each with its own names; each is read as one sample"],
    )  # fmt: skip
