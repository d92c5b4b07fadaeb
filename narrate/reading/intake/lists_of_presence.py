"""Lists that say which taxa were found in each sample, site or phase, and give no amounts: each line is a presence."""

from __future__ import annotations

from narrate.model.counts import Count
from narrate.model.grids import Area, Cell
from narrate.model.layouts import Role
from narrate.reading.intake.cell_marks import Found, Reading
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.heads_of_list import heads_in
from narrate.reading.intake.long_columns import column_role
from narrate.reading.intake.long_table import OF_SAMPLE, Long, rows_below

LISTED = Role(name="count", also=("taxon",))
"""A column of names whose every cell says that the taxon was there."""
_OF_AMOUNTS = {"count", "mass", "total", "percent", "density", "ubiquity", "derived"}
_LEAST_LINES = 6
_ANSWERS = ("yes", "no", "y", "n", "true", "false", "x")


def list_of_presence(look: Look, area: Area) -> Long | None:
    """The list at the head of an area, where its heads name taxa and samples or phases and nothing in it is counted."""
    heads = heads_in(look, area, area.top)
    taxon = next((c for c, role in heads.items() if role == "taxon"), None)
    of = next((c for wanted in (*OF_SAMPLE, "phase") for c, role in heads.items() if role == wanted), None)
    if taxon is None or of is None or set(heads.values()) & _OF_AMOUNTS:
        return None
    lines = [r for r in rows_below(look, area, area.top) if any((r, c) in look.cells for c in heads)]
    if not _says_only_names(look, lines, heads, taxon, of):
        return None
    made = {c: column_role(look, area.top, c, role, taxon, of, [], lines, heads) for c, role in heads.items()}
    columns = {c: Role(name="code") if c != of and role.name == "sample" else role for c, role in made.items()}
    columns[of] = Role(name="sample", also=() if heads[of] == "sample" else (heads[of],), filled=columns[of].filled)
    columns[taxon] = LISTED
    doubts = ["the list gives no amounts: each line is taken as a taxon that was present, and none as a count"]
    if heads[of] != "sample":
        doubts.append(f"the table names no samples; each {heads[of]} is taken as one, and ubiquity counts those")
    rows = {area.top: Role(name="header")} | {r: Role(name="finds") for r in lines if look.text(r, taxon)}
    used = Area(top=area.top, left=area.left, bottom=lines[-1], right=area.right)
    return Long(
        shape="long", rows=rows, columns=dict(sorted(columns.items())), area=used, explained=len(lines),
        score=float(len(lines)), doubts=doubts,
    )  # fmt: skip


def _says_only_names(look: Look, lines: list[int], heads: dict[int, str], taxon: int, of: int) -> bool:
    """Whether the lines name taxa, several to each sample, and carry no numbers beside keys, ids and answers."""
    names = [look.text(r, taxon) for r in lines]
    if len(lines) < _LEAST_LINES or not all(names) or 2 * len({look.text(r, of) for r in lines}) > len(lines):
        return False
    if sum(look.name_score(r, taxon) >= 0.45 for r in lines) < 0.5 * len(lines):
        return False
    others = [c for c, role in heads.items() if c not in (taxon, of) and not role]
    return not any(_holds_amounts(look, lines, c) for c in others)


def _holds_amounts(look: Look, lines: list[int], column: int) -> bool:
    """Whether a column under a head that nobody knows holds amounts in most cells, and not only yes and no."""
    texts = [look.text(r, column) for r in lines if look.text(r, column)]
    amounts = sum(look.is_amount(r, column) for r in lines)
    return 2 * amounts > len(texts) and not all(text.lower() in _ANSWERS for text in texts)


def of_listed(role: Role, cell: Cell) -> Reading | None:
    """The presence that a name in a list without amounts is; None in any other column."""
    if role.name != "count" or "taxon" not in role.names:
        return None
    return Reading(found=(Found(count=Count(written=cell.text, amount="noted as present")),))
