"""Lists without heads under lines such as 'Sample 12, Trench B, (134), 40 L': one list a sample."""

from __future__ import annotations

import re

from narrate.model.grids import Area, address
from narrate.model.layouts import Role
from narrate.reading.intake.evidence import NAMED, Look
from narrate.reading.intake.forms_guess import Form
from narrate.reading.intake.forms_said import id_in_words
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.heads_in_pieces import pieces_of
from narrate.reading.intake.long_table import Long

_NOTHING = re.compile(
    r"\b(?:no|nothing|none|sterile|empty|nil|keine?|nichts|leer|steril|rien|aucune?|stérile|vide|sin|nada|estéril|vac[ií]o|"
    r"senza|sterile|nessun\w*|geen|niets|leeg|ingen|tom)\b",
    re.IGNORECASE,
)


def guess_lists_under_lines(look: Look, area: Area) -> list[Form]:
    """The lists of an area; empty where no lines of ids part it into lists of names beside amounts."""
    starts = [row for row in range(area.top, area.bottom + 1) if _is_line_of_id(look, area, row)]
    ids = [id_in_words(look, row, _first(look, area, row)) for row in starts]
    if len(starts) < 2 or len(set(ids)) < len(ids):
        return []
    ends = [*(row - 1 for row in starts[1:]), area.bottom]
    lines = [row for start, end in zip(starts, ends, strict=True) for row in range(start + 1, end + 1)]
    columns = _columns(look, area, lines)
    if columns is None:
        return []
    forms = [_form(look, area, start, end, columns) for start, end in zip(starts, ends, strict=True)]
    filled = sum(form.found.shape == "long" for form in forms)
    return forms if filled >= 0.6 * len(forms) else []


def _first(look: Look, area: Area, row: int) -> int:
    return next((c for c in range(area.left, area.right + 1) if (row, c) in look.own), area.left)


def _is_line_of_id(look: Look, area: Area, row: int) -> bool:
    """Whether a line begins with 'Sample 12' and says words of it, or nothing more."""
    own = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
    if not own or not id_in_words(look, row, own[0]) or len(own) > 6:
        return False
    others = own[1:]
    return not any(id_in_words(look, row, c) or look.name_score(row, c) >= NAMED for c in others)


def _columns(look: Look, area: Area, lines: list[int]) -> dict[int, Role] | None:
    """Roles of the columns, by what stands in them under all the lines of ids: names, one of amounts, parts, notes."""
    lines = [r for r in lines if heading(look.text(r, _first(look, area, r))) != "total"]
    columns = range(area.left, area.right + 1)
    named = {c: sum(look.name_score(r, c) >= NAMED for r in lines) for c in columns}
    names = max(named, key=lambda c: named[c])
    given = {c: [r for r in lines if look.text(r, c)] for c in columns}
    amounts = [c for c in columns if given[c] and sum(look.is_amount(r, c) for r in given[c]) >= 0.7 * len(given[c])]
    if named[names] < 0.6 * len(given[names]) or len(amounts) != 1 or amounts[0] <= names:
        return None
    found = {names: Role(name="taxon"), amounts[0]: Role(name="count")}
    for c in columns:
        if c in found or not given[c]:
            continue
        parts = sum(bool(look.names.part_of(look.text(r, c))) for r in given[c])
        found[c] = Role(name="part" if parts >= 0.6 * len(given[c]) else "note")
    return dict(sorted(found.items()))


def _form(look: Look, area: Area, start: int, end: int, columns: dict[int, Role]) -> Form:
    """One list with what the line over it says of its sample; a list of nothing is a sample without finds."""
    names, count = (next(c for c, role in columns.items() if role.name == name) for name in ("taxon", "count"))
    rows = {start: Role(name="title")}
    for row in range(start + 1, end + 1):
        own = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
        if not own:
            continue
        if heading(look.text(row, own[0])) == "total":
            rows[row] = Role(name="total")
        elif look.text(row, names) and (look.text(row, count) or not _NOTHING.search(look.text(row, names))):
            rows[row] = Role(name="finds") if look.text(row, count) else Role(name="section")
        else:
            rows[row] = Role(name="notes")
    at = _first(look, area, start)
    id = id_in_words(look, start, at)
    about = {"sample": address(start, at)}
    for c in range(at + 1, area.right + 1):
        if (start, c) in look.own:
            pieces = pieces_of(look.text(start, c))
            keys = {"volume": "volume, l"}
            about.update({keys.get(role, role): address(start, c) for role in pieces})
            if not pieces:
                about.setdefault("sample note", address(start, c))
    has_finds = any(role.name == "finds" for role in rows.values())
    found = Long(
        shape="long" if has_finds else "records",
        rows=rows if has_finds else {start: Role(name="finds")},
        columns=columns if has_finds else {names: Role(name="ignored", qualifiers=("it says that nothing was found",))},
        area=Area(top=start, left=area.left, bottom=end, right=area.right),
        explained=sum(role.name == "finds" for role in rows.values()),
        doubts=["each list stands under the line of its sample, and is read as a table of its own"],
    )
    return Form(found=found, about=about, mend={address(start, at): id})
