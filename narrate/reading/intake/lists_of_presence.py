"""Lists that say which taxa were found in each sample, site or phase, and give no amounts: each line is a presence."""

from __future__ import annotations

import re

from narrate.model.counts import Count
from narrate.model.grids import Area, Cell, column_name
from narrate.model.layouts import SAMPLE_ROLES, Role, Table
from narrate.reading.intake.answers import are_yes_and_no
from narrate.reading.intake.cell_marks import Found, Reading
from narrate.reading.intake.evidence import NAMED, Look
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.heads_of_list import heads_in
from narrate.reading.intake.long_columns import column_role
from narrate.reading.intake.long_table import OF_SAMPLE, Long, rows_below

LISTED = Role(name="count", also=("taxon",))
"""A column of names whose every cell says that the taxon was there."""
_OF_AMOUNTS = {"count", "mass", "total", "percent", "density", "ubiquity", "derived"}
_LEAST_LINES = 6
_MOST_TITLES = 4
_LONGEST_HEAD = 40
_ANSWERS = ("yes", "no", "y", "n", "true", "false", "x")


def list_of_presence(look: Look, area: Area) -> Long | None:
    """The list at the head of an area, where its heads name taxa and samples or phases and nothing in it is counted."""
    first = range(area.top, min(area.top + _MOST_TITLES, area.bottom) + 1)
    head = next((row for row in first if _cells(look, area, row) > 1), -1)
    heads = heads_in(look, area, head) if head >= 0 else {}
    taxon = next((c for c, role in heads.items() if role == "taxon"), None)
    of = next((c for wanted in (*OF_SAMPLE, "phase") for c, role in heads.items() if role == wanted), None)
    if taxon is None or of is None or set(heads.values()) & _OF_AMOUNTS:
        return None
    rows = _rows(look, area, head, (taxon, of))
    lines = [r for r, role in rows.items() if role.name == "finds"]
    if not _says_only_names(look, lines, heads, taxon, of):
        return None
    columns = {c: column_role(look, head, c, role, taxon, of, [], lines, heads) for c, role in heads.items()}
    of_finds = [c for c, role in columns.items() if c != of and _is_of_finds(look, lines, role, c, of)]
    columns.update(dict.fromkeys(of_finds, Role(name="note")))
    columns[of] = Role(name="sample", also=() if heads[of] == "sample" else (heads[of],), filled=columns[of].filled)
    asked = _asked_of_finds(look, head, lines, heads)
    columns.update({c: Role(name="note", qualifiers=(look.text(head, c),)) for c in asked})
    columns[taxon] = LISTED
    used = Area(top=area.top, left=area.left, bottom=max(rows), right=area.right)
    return Long(
        shape="long", rows=rows, columns=dict(sorted(columns.items())), area=used, explained=len(lines),
        score=float(len(lines)), doubts=[*_doubts(look, lines, heads, of), *_of_answers(look, head, asked)],
    )  # fmt: skip


def _cells(look: Look, area: Area, row: int) -> int:
    return sum((row, c) in look.own for c in range(area.left, area.right + 1))


def _rows(look: Look, area: Area, head: int, of: tuple[int, int]) -> dict[int, Role]:
    """Titles over the head, and below it the lines of the list, heads of sections in it and notes behind it."""
    taxon, sample = of
    rows = {r: Role(name="title") for r in range(area.top, head) if _cells(look, area, r)} | {head: Role(name="header")}
    below = [row for row in rows_below(look, area, head) if _cells(look, area, row)]
    alone = {row for row in below if _cells(look, area, row) == 1}
    is_filled = not all((row, sample) in look.own for row in below if row not in alone)  # an id, once over its names
    for row in below:
        if row not in alone or (is_filled and (row, taxon) in look.own and look.name_score(row, taxon) >= NAMED):
            rows[row] = Role(name="finds")
        else:
            is_note = len(next(filter(None, look.texts(row, area.left, area.right)))) > _LONGEST_HEAD
            rows[row] = Role(name="notes" if is_note else "section")
    return rows


def _is_of_finds(look: Look, lines: list[int], role: Role, column: int, of: int) -> bool:
    """Whether a column that should speak of samples says different things of one, or is another id."""
    said: dict[str, set[str]] = {}
    for row in lines:
        said.setdefault(look.text(row, of), set()).add(look.text(row, column))
    return role.name == "sample" or (role.name in SAMPLE_ROLES and any(len(texts) > 1 for texts in said.values()))


def _doubts(look: Look, lines: list[int], heads: dict[int, str], of: int) -> list[str]:
    doubts = ["the list gives no amounts: each line is taken as a taxon that was present, and none as a count"]
    if heads[of] != "sample":
        doubts.append(f"the table names no samples; each {heads[of]} is taken as one, and ubiquity counts those")
    ids = dict.fromkeys(look.text(r, of) for r in lines)
    for id in ids:
        pieces = {piece.strip() for piece in re.split("[,;&]", id)}
        if len(pieces) > 1 and pieces & set(ids):
            doubts.append(f"DOUBTFUL: '{id}' names several, and is kept as one of its own; mend its cell if it is not")
    return doubts


def _of_answers(look: Look, head: int, asked: list[int]) -> list[str]:
    return [
        f"DOUBTFUL: column {column_name(c)} ('{look.text(head, c)}') says yes or no of each line and is no amount; "
        "what it asks is not known: it is kept as a note of the finds; take the lines out that it says are none"
        for c in asked
    ]


def _says_only_names(look: Look, lines: list[int], heads: dict[int, str], taxon: int, of: int) -> bool:
    """Whether the lines name taxa, several to each sample, and carry no numbers beside keys, ids and answers."""
    names = [look.text(r, taxon) for r in lines]
    if len(lines) < _LEAST_LINES or not all(names) or 2 * len({look.text(r, of) for r in lines}) > len(lines):
        return False
    others = [c for c, role in heads.items() if c not in (taxon, of) and not role]
    named = sum(look.name_score(r, taxon) >= NAMED for r in lines)
    if named < 0.5 * len(lines) and not _are_codes(names):
        return False
    return not any(_holds_amounts(look, lines, c) for c in others)


def _are_codes(names: list[str]) -> bool:
    """Whether all names are single words in capitals, some of them in several samples: codes of taxa."""
    return len(set(names)) < len(names) and all(re.fullmatch(r"[A-Z]{4,12}\d{0,2}", name) for name in names)


def _asked_of_finds(look: Look, head: int, lines: list[int], heads: dict[int, str]) -> list[int]:
    """Columns under heads that nobody knows that say yes or no of each line, and both of them."""
    found = []
    for column in [c for c, role in heads.items() if not role and look.text(head, c)]:
        if are_yes_and_no(look.text(r, column) for r in lines if look.text(r, column)):
            found.append(column)
    return found


def _holds_amounts(look: Look, lines: list[int], column: int) -> bool:
    """Whether a column under a head that nobody knows holds amounts in most cells, and not only yes and no."""
    texts = [look.text(r, column) for r in lines if look.text(r, column)]
    amounts = sum(look.is_amount(r, column) for r in lines)
    return 2 * amounts > len(texts) and not all(text.lower() in _ANSWERS for text in texts)


def is_list_of_answers(look: Look, head: int, labels: list[int], lines: list[int], counted: list[int]) -> bool:
    """Whether yes and no stand in one column, beside ids or phases under a head of their own: no amounts."""
    said = {heading(text) for c in labels if (text := look.text(head, c))}
    texts = (look.text(row, c) for row in lines for c in counted)
    return len(counted) == 1 and bool(said & {*OF_SAMPLE, "phase"}) and are_yes_and_no(texts)


def is_listed(table: Table) -> bool:
    """Whether a table is such a list."""
    return LISTED in table.columns.values()


def of_listed(role: Role, cell: Cell) -> Reading | None:
    """The presence that a name in a list without amounts is; None in any other column."""
    if role.name != "count" or "taxon" not in role.names:
        return None
    return Reading(found=(Found(count=Count(written=cell.text, amount="noted as present")),))
