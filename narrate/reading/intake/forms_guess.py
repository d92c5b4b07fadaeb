"""Forms of the bench: a list of finds under lines such as 'Sample, 12.3, Context, 1045', one form a sample."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from narrate.model.grids import Area, Cell, address
from narrate.model.layouts import SAMPLE_ROLES, Role
from narrate.reading.intake.blocks_of_form import as_one_list, is_further_block, title_over
from narrate.reading.intake.crossed_body import with_unit
from narrate.reading.intake.evidence import Look, looks_like_id
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.heads_by_content import SIZES, content_role
from narrate.reading.intake.kind_words_abroad import kind_of
from narrate.reading.intake.long_guess import guess_long
from narrate.reading.intake.long_table import Long

_DAY = re.compile(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2} [A-Z][a-z]{2} \d{4}")
_MOST_LINES = 12
"""Lines between the id of a sample and the head of its list."""


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
    for n, head in enumerate(heads):
        first = heads[n - 1] + 1 if n else area.top
        over = range(max(first, head - _MOST_LINES), head)
        said = _said_over(look, area, over) or _said_in_words(look, area, head - 1)
        if "sample" in said:
            starts[head], blocks[head] = said, [head]
        elif starts and is_further_block(look, area, head, max(starts)):
            blocks[max(starts)].append(head)
        else:
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
    if _OF_ID.match(look.text(*said["sample"])) and _is_labelled(look, *said["sample"]):
        id = ""  # 'Sample no.: FS 14' gives the whole of the id
    about = {_role(look, role, at): address(*at) for role, at in said.items()}
    mend = {address(*said["sample"]): id} if id else {}
    mend |= {address(*at): value for role, at in said.items()
             if role != "sample" and (value := _behind_label(look.text(*at), role))}  # fmt: skip
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
            found += [one] if one is not None else []
            blocks[head] = one if len(beside) == 1 else None
    if len(heads) > 1 and sum(block is not None for block in blocks.values()) == len(found):
        found = as_one_list(look, area, blocks)
    rows = {row: Role(name="title") for row in {row for row, _ in said.values()}}
    for one in found:
        one.rows = dict(sorted({**rows, **one.rows}.items()))
    return [Form(found=one, about=about, mend=mend) for one in found]


def _lists_beside(look: Look, area: Area, head: int) -> list[tuple[int, int]]:
    """First and last column of each list of a form; a list goes on in a second one beside it, under the same head."""
    starts = [c for c in range(area.left, area.right + 1) if heading(look.text(head, c)) in ("taxon", "common name")]
    ends = [*(c - 1 for c in starts[1:]), area.right]
    texts = [[t for c in range(a, b + 1) if (t := look.text(head, c))] for a, b in zip(starts, ends, strict=True)]
    if len(starts) > 1 and all(one == texts[0] and len(one) > 1 for one in texts):
        return list(zip(starts, ends, strict=True))
    return [(area.left, area.right)]


def _is_head(look: Look, area: Area, row: int) -> bool:
    """Whether a row heads a list of finds that has no column of samples: names, and parts or conditions or counts."""
    roles = [heading(look.text(row, c)) for c in range(area.left, area.right + 1) if look.text(row, c)]
    texts = [c for c in range(area.left, area.right + 1) if look.is_text(row, c)]
    sizes = [c for c in range(area.left, area.right + 1) if SIZES.fullmatch(look.text(row, c))]
    is_of_sizes = len(sizes) > 1 and len({look.text(row, c) for c in sizes}) == len(sizes)
    is_listed = set(roles) & {"taxon", "common name"} and (
        set(roles) & {"part", "count", "mass", "condition"}
        or is_of_sizes
        or any(content_role([look.text(row, c)], look) == "condition" for c in texts)
    )
    # '>2' and '>1' stand over counts by sieve class
    is_of_words = len({*texts, *sizes}) == len(roles) >= 2 and (len(texts) >= 2 or is_of_sizes)
    return bool(is_listed) and is_of_words and not set(roles) & {"sample", "context", "feature"}


def _said_over(look: Look, area: Area, rows: range) -> dict[str, tuple[int, int]]:
    """Role -> the cell behind its label, of all labels in some rows; 'Sample' before 'Context' and 'Volume'."""
    found: dict[str, tuple[int, int]] = {}
    for row in rows:
        plain = _labels_and_values(look, area, row)
        if plain:
            found.update({role: at for role, at in plain.items() if role not in found})
            continue
        column = area.left
        pairs: dict[str, tuple[int, int]] = {}
        known = 0
        while column < area.right:
            role = heading(look.text(row, column)) if (row, column) in look.own else ""
            value = next((c for c in range(column + 1, min(column + 3, area.right) + 1) if (row, c) in look.own), None)
            said = look.text(row, value) if value is not None else ""
            is_value = bool(said) and (not heading(said) or looks_like_id(said))
            if role == "phase" and _DAY.fullmatch(said):
                role = "note"  # the day of the work, and no date of the remains
            if role in SAMPLE_ROLES and value is not None and is_value:
                pairs.setdefault(role, (row, value))
                known += 2
                column = value + 1
            elif role and value is not None and is_value:
                known += 2  # 'Date', 'Sorted by'
                column = value + 1
            else:
                column += 1
        known += _kind_behind(look, area, pairs, row)
        # A row with more in it than labels and what they head, such as several ids, is of a table.
        if known == sum((row, c) in look.own for c in range(area.left, area.right + 1)):
            found.update({role: at for role, at in pairs.items() if role not in found})
    return found


def _kind_behind(look: Look, area: Area, pairs: dict[str, tuple[int, int]], row: int) -> int:
    """1 where the last cell of a row says what was dug, behind its number ('Befund, 41, Grube'); it joins the pairs."""
    last = max((c for c in range(area.left, area.right + 1) if (row, c) in look.own), default=area.left)
    is_behind = any(role in ("feature", "context") and at[1] == last - 1 for role, at in pairs.items())
    said = look.text(row, last)
    is_kind = bool(kind_of(said, look.names.packs.words))
    if not is_behind or len(pairs) < 2 or not _WORDS.fullmatch(said) or (heading(said) and not is_kind):
        return 0
    pairs.setdefault("kind" if is_kind else "sample note", (row, last))
    return 1


_WORDS = re.compile(r"[^\W\d_]{3,}(?:[ -][^\W\d_]+){0,3}")


def _labels_and_values(look: Look, area: Area, row: int) -> dict[str, tuple[int, int]]:
    """
    Role -> the cell behind its label, in a row of labels and values by turns; empty for other rows.

    Labels that nobody knows ('Datum', 'Fototag') are passed over where others of the row are known.
    """
    pairs = _pairs_of(look, row, [c for c in range(area.left, area.right + 1) if (row, c) in look.own])
    if not 1 <= len(pairs) <= 6:
        return {}
    labels = [look.text(row, c) for c, _ in pairs]
    roles = [heading(label) for label in labels]
    is_worded = all(look.is_text(row, c) and re.search(r"[^\W\d_]{2}", look.text(row, c)) for c, _ in pairs)
    if not is_worded or not set(roles) & set(SAMPLE_ROLES) or 2 * sum(map(bool, roles)) < len(roles):
        return {}
    values = [look.text(row, c) for _, c in pairs]
    if any(role in SAMPLE_ROLES and heading(value) in ("taxon", "count", "part", "sample") and not looks_like_id(value)
           for role, value in zip(roles, values, strict=True)):
        return {}  # a head of a list
    found: dict[str, tuple[int, int]] = {}
    for (_, at), role, value in zip(pairs, roles, values, strict=True):
        if role in SAMPLE_ROLES and not (role == "phase" and _DAY.fullmatch(value)):
            found.setdefault(role, (row, at))
    return found


def _pairs_of(look: Look, row: int, columns: list[int]) -> list[tuple[int, int]]:
    """Labels and the values behind them, by turns; a day of work may stand between them without a label."""
    pairs: list[tuple[int, int]] = []
    n = 0
    while n < len(columns):
        if _is_day(look, row, columns[n]):
            n += 1
            continue
        if _is_label(look, row, columns[n]) and (n + 1 == len(columns) or _is_label(look, row, columns[n + 1])):
            n += 1  # 'Vol (L)' with nothing behind it
            continue
        if n + 1 == len(columns):
            return []
        pairs.append((columns[n], columns[n + 1]))
        n += 2
    return pairs


def _is_label(look: Look, row: int, column: int) -> bool:
    text = look.text(row, column)
    return heading(text) in ("sample", "context", "volume", "feature", "phase") and not looks_like_id(text)


def _is_day(look: Look, row: int, column: int) -> bool:
    return look.cells[row, column].kind == "date" or bool(_DAY.fullmatch(look.text(row, column)))


_SAMPLE = re.compile(
    r"(?:sample|smp|flot|flotation sample|soil sample|fs|bag|probe|muestra|échantillon|campione|monster|prøve)"
    r"\s*(?:no\.?|nr\.?|number|n°|#|:)?\s*(?P<id>(?=[\w.-]*\d)[\w.-]+(?:/[\w.-]+)?|(?<=\s)[^\W\d_])",
    re.IGNORECASE,
)
_LITRES = re.compile(r"(?:ca\.?|c\.|~)?\s*\d+(?:[.,]\d+)?\s*(?:l|lt|ltrs?|lit(?:re|er|ro)s?)\.?", re.IGNORECASE)


_OF_ID = re.compile(r"(?:fs|bag)\b", re.IGNORECASE)
"""Before the number of a field specimen, and part of it."""


def _is_labelled(look: Look, row: int, column: int) -> bool:
    return any(heading(look.text(row, c)) == "sample" for c in range(max(0, column - 2), column))


def id_in_words(look: Look, row: int, column: int) -> str:
    """The id in a cell that says 'Sample 12'; empty for a cell that holds nothing but the id."""
    match = _SAMPLE.fullmatch(look.text(row, column).strip())
    return match["id"] if match else ""


def _behind_label(text: str, role: str) -> str:
    """The value in a cell that says 'Context: 1008'; empty where no label of that role stands before it."""
    label, colon, value = text.partition(":")
    return value.strip() if colon and heading(label) == role else ""


def _said_in_words(look: Look, area: Area, row: int) -> dict[str, tuple[int, int]]:
    """Role -> cell of a line whose cells carry their labels: 'Sample 3, Feature 8, 12 litres, zone A'."""
    columns = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
    if row < area.top or [c for c in columns if id_in_words(look, row, c)] != columns[:1] or not columns:
        return {}  # several ids in a row are of a table with samples across
    found = {"sample": (row, columns[0])}
    for column in columns[1:]:
        text = look.text(row, column)
        role = heading(re.sub(r"\s*#?\s*[\w.-]*\d[\w.-]*$", "", text)) if re.search(r"\d", text) else ""
        if _LITRES.fullmatch(text):
            found.setdefault("volume", (row, column))
        elif role in SAMPLE_ROLES and role != "sample":
            found.setdefault(role, (row, column))
        elif not heading(text):
            found.setdefault("sample note", (row, column))
    return found


def _role(look: Look, role: str, at: tuple[int, int]) -> str:
    label = next((look.text(at[0], c) for c in range(at[1] - 1, -1, -1) if look.text(at[0], c)), "")
    return str(with_unit(role, label))


def _bottom(look: Look, area: Area, head: int, behind: int | None) -> int:
    """The last row of a list: before a blank row, or before the lines that belong to the next form."""
    last = head
    for row in range(head + 1, (area.bottom if behind is None else behind - 1) + 1):
        if not any((row, c) in look.own for c in range(area.left, area.right + 1)):
            break
        said = _said_over(look, area, range(row, row + 1)) or _said_in_words(look, area, row)
        if behind is not None and "sample" in said:
            break
        last = row
    return last


def _list_of(look: Look, area: Area, sample: str) -> Long | None:
    """The list read as any other with one row for each find, with the id of the form in a column that is lent to it."""
    lent = area.right + 1
    cells = {at: cell for at, cell in look.cells.items() if area.holds(*at)}
    cells[area.top, lent] = Cell("Sample")
    for row in range(area.top + 1, area.bottom + 1):
        own = [look.text(row, c) for c in range(area.left, area.right + 1) if (row, c) in look.own]
        if own and not (len(own) == 1 and "=" in own[0]):  # 'v = verkohlt' is a key, and no find
            cells[row, lent] = Cell(sample)
    kept = frozenset(at for at in look.own if area.holds(*at)) | {at for at in cells if at[1] == lent}
    with_ids = Look(look.grid, look.names, cells, look.rows, lent + 1, False, kept, look.signs)
    found = guess_long(with_ids, replace(area, right=lent))
    if found is None or found.rows.get(area.top, Role(name="")).name != "header":
        return None
    found.columns = {c: role for c, role in found.columns.items() if c != lent}
    return found
