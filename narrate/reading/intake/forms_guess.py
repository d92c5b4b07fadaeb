"""Forms of the bench: a list of finds under lines such as 'Sample, 12.3, Context, 1045', one form a sample."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from narrate.model.grids import Area, Cell, address
from narrate.model.layouts import Role
from narrate.reading.intake.blocks_of_form import (
    as_one_list,
    head_role,
    is_block_head,
    is_further_block,
    sections_within,
    title_in,
    title_over,
    total_below,
)
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.forms_said import (
    OF_ID,
    behind_label,
    id_in_words,
    is_labelled,
    remarks_below,
    role_at,
    rows_of_work,
    said_behind_colons,
    said_in_words,
    said_over,
)
from narrate.reading.intake.header_words import heading, quantity
from narrate.reading.intake.heads_by_content import SIZES, content_role
from narrate.reading.intake.ids_over_lists import ids_over_lists
from narrate.reading.intake.least_numbers import is_least_number
from narrate.reading.intake.long_guess import guess_long
from narrate.reading.intake.long_table import Long

_MOST_LINES = 12
"""Lines between the id of a sample and the head of its list."""


_OF_WORK = "it says who did the work, and when"


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """One form: its list, and the cells that say something of its sample."""

    found: Long
    about: dict[str, str]
    mend: dict[str, str] = field(default_factory=dict)
    """Cell -> id, where a cell says 'Sample 12' and means 12."""


def guess_forms(look: Look, area: Area) -> list[Form]:
    """The forms of an area, from top to bottom; empty where a list names its samples itself, or none does."""
    heads = [row for row in range(area.top, area.bottom + 1) if _is_head(look, area, row)]
    starts: dict[int, dict[str, tuple[int, int]]] = {}
    blocks: dict[int, list[int]] = {}
    by_bare_ids = ids_over_lists(look, area, heads)
    for n, head in enumerate(heads):
        first = heads[n - 1] + 1 if n else area.top
        over = range(max(first, head - _MOST_LINES), head)
        said = said_over(look, area, over) or said_in_words(look, area, head - 1)
        said = said or said_behind_colons(look, area, over) or by_bare_ids.get(head, {})
        if "sample" in said:
            starts[head], blocks[head] = said, [head]
        elif starts and is_further_block(look, area, head, max(starts)):
            blocks[max(starts)].append(head)
        elif not is_block_head(look, area, head):
            return []
    forms: list[Form] = []
    for head, said in starts.items():
        behind = next((row for row in starts if row > head), None)
        lists = _lists_of_form(look, area, blocks[head], behind, said)
        if not lists:
            return []
        forms += lists
    return forms


def _lists_of_form(
    look: Look, area: Area, heads: list[int], behind: int | None, said: dict[str, tuple[int, int]]
) -> list[Form]:
    """The lists of one form: one, or several side by side or in blocks that differ; empty where one is no list."""
    id = id_in_words(look, *said["sample"])
    if OF_ID.match(look.text(*said["sample"])) and is_labelled(look, *said["sample"]):
        id = ""  # 'Sample no.: FS 14' gives the whole of the id
    id = id or behind_label(look.text(*said["sample"]), "sample")
    about = {role_at(look, role, at): address(*at) for role, at in said.items()}
    mend = {address(*said["sample"]): id} if id else {}
    mend |= {address(*at): value for role, at in said.items()
             if role != "sample" and (value := behind_label(look.text(*at), role))}  # fmt: skip
    found: list[Long] = []
    blocks: dict[int, Long | None] = {}
    for n, head in enumerate(heads):
        bottom = _bottom(look, area, head, heads[n + 1] if n + 1 < len(heads) else behind)
        if n + 1 < len(heads):
            bottom = min(bottom, (title_over(look, area, heads[n + 1]) or heads[n + 1]) - 1)
        beside = _lists_beside(look, area, head)
        for left, right in beside:
            list_area = Area(top=head, left=left, bottom=bottom, right=right)
            one = _list_of(look, list_area, id or look.text(*said["sample"]))
            if one is None and len(heads) == 1:
                return []
            if one is not None:
                titles = title_in(look, list_area) if len(beside) > 1 else {}
                rest = replace(list_area, bottom=area.bottom if behind is None else behind - 1)
                below = total_below(look, rest, max(one.rows)) if n + 1 == len(heads) else {}
                one.rows = {**titles, **one.rows, **below}
                found.append(one)
            blocks[head] = one if len(beside) == 1 else None
    if len(heads) > 1 and sum(block is not None for block in blocks.values()) == len(found):
        found = as_one_list(look, area, blocks)
    rows = {row: Role(name="title") for row in {row for row, _ in said.values()}}
    work = rows_of_work(look, area, range(min(rows, default=heads[0]), heads[0]))
    rows |= {row: Role(name="ignored", qualifiers=(_OF_WORK,)) for row in work if row not in rows}
    last = max((row for one in found for row in one.rows), default=area.bottom)
    ends = area.bottom if behind is None else min(area.bottom, behind - _MOST_LINES)
    for label, at in remarks_below(look, area, range(last + 1, ends + 1)).items():
        about[f"sample note, {label}"] = address(*at)
        rows[at[0]] = Role(name="title")
    for one in found:
        one.rows = dict(sorted({**rows, **one.rows}.items()))
    return [Form(found=one, about=about, mend=mend) for one in found]


def _lists_beside(look: Look, area: Area, head: int) -> list[tuple[int, int]]:
    """First and last column of each list of a form; a list goes on in a second one beside it, under the same head."""
    starts = [c for c in range(area.left, area.right + 1) if heading(look.text(head, c)) in ("taxon", "common name")]
    if len(starts) < 2:
        return [(area.left, area.right)]
    ends = [*(c - 1 for c in starts[1:]), area.right]
    texts = [[t for c in range(a, b + 1) if (t := look.text(head, c))] for a, b in zip(starts, ends, strict=True)]
    most = {text for one in texts for text in one[1:]}
    are_of_amounts = all(quantity(text) or heading(text) in ("count", "mass") for text in most)
    is_same = all(one == texts[0] and len(one) > 1 for one in texts)
    if is_same or (are_of_amounts and all(one[0] == texts[0][0] and one[1:] for one in texts)):
        return list(zip(starts, ends, strict=True))
    return [(area.left, area.right)]


def _is_head(look: Look, area: Area, row: int) -> bool:
    """Whether a row heads a list of finds that has no column of samples: names, and parts or conditions or counts."""
    written = {c: text for c in range(area.left, area.right + 1) if (text := look.text(row, c))}
    if any(look.is_amount(row, c) and not SIZES.fullmatch(text) for c, text in written.items()):
        return False  # a line of counts
    roles = [heading(text) for text in written.values()]
    texts = [c for c in range(area.left, area.right + 1) if look.is_text(row, c)]
    sizes = [c for c, text in written.items() if SIZES.fullmatch(text)]
    is_of_sizes = len(sizes) > 1 and len({look.text(row, c) for c in sizes}) == len(sizes)
    is_listed = set(roles) & {"taxon", "common name"} and (
        set(roles) & {"part", "count", "mass", "condition"}
        or is_of_sizes
        or any(map(is_least_number, written.values()))
        or any(quantity(text).startswith("count, ") for text in written.values())
        or any(content_role([look.text(row, c)], look) == "condition" for c in texts)
    )
    # '>2' and '>1' stand over counts by sieve class
    is_of_words = len(roles) >= 2 and (len(texts) >= 2 or is_of_sizes)
    is_listed = is_listed or is_block_head(look, area, row)
    return bool(is_listed) and is_of_words and not set(roles) & {"sample", "context", "feature"}


def _bottom(look: Look, area: Area, head: int, behind: int | None) -> int:
    """The last row of a list: before a blank row, or before the lines that belong to the next form."""
    last = head
    for row in range(head + 1, (area.bottom if behind is None else behind - 1) + 1):
        if not any((row, c) in look.own for c in range(area.left, area.right + 1)):
            break
        said = said_over(look, area, range(row, row + 1)) or said_in_words(look, area, row)
        if behind is not None and "sample" in said:
            break
        last = row
    return last


def _list_of(look: Look, area: Area, sample: str) -> Long | None:
    """The list read as any other with one row for each find, with the id of the form in a column that is lent to it."""
    lent = area.right + 1
    cells = {at: cell for at, cell in look.cells.items() if area.holds(*at)}
    cells[area.top, lent] = Cell("Sample")
    if is_block_head(look, area, area.top):
        cells[area.top, min(c for r, c in cells if r == area.top)] = Cell("Taxon")
    sections = sections_within(look, area)
    for row in range(area.top + 1, area.bottom + 1):
        own = [look.text(row, c) for c in range(area.left, area.right + 1) if (row, c) in look.own]
        is_key = len(own) == 1 and "=" in own[0]  # 'v = verkohlt' is a key, and no find
        is_head = row == area.top + 1 and all(map(quantity, own))
        if own and not is_key and not is_head and row not in sections:
            cells[row, lent] = Cell(sample)
    kept = frozenset(at for at in look.own if area.holds(*at)) | {at for at in cells if at[1] == lent}
    with_ids = Look(look.grid, look.names, cells, look.rows, lent + 1, False, kept, look.signs)
    found = guess_long(with_ids, replace(area, right=lent))
    if found is None or not any(found.rows.get(row, _NONE).name == "header" for row in (area.top, area.top + 1)):
        return None
    found.columns = {c: role for c, role in found.columns.items() if c != lent}
    found.rows.update(dict.fromkeys(sections, Role(name="section")))
    if found.rows[area.top].name == "header":
        found.rows[area.top] = head_role(look, area, area.top)
    return found


_NONE = Role(name="")
