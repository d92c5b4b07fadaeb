"""Lines of a list of finds that are sums of others by their numbers: 'Whole lot' in each sample, 'All samples' of each name."""

# ruff: noqa: E501

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.amounts_in_pieces import Pieced, pieced
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.sums_in_pieces import found_in_pieces
from narrate.reading.intake.sums_of_lines import Lines, amount, found_in, likelier_by_words, said_of

_NAMES = ("taxon", "genus", "epithet", "code", "common name", "family", "part", "condition", "completeness", "size class", "fraction")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """A row of finds: which sample, which name, and what stands under each head of amounts."""

    at: int
    sample: str
    name: str
    amounts: Mapping[int, float | None]
    pieces: Mapping[int, Pieced | None]


def with_sums_of_list(look: Look, table: Table) -> tuple[Table, list[str]]:
    """The list with the rows of its sums as totals, and what is told of them."""
    rows = _rows(look, table)
    doubts: list[str] = []
    for by_name in (True, False):
        lines, members, cells = _lines(look, rows, by_name=by_name)
        taken: set[int] = set()
        for one in found_in(lines) if len(lines.lines) > 2 else []:
            doubts.append(said_of(one, lines))
            taken |= set(members[one.line]) if one.is_taken else set()
        left = [n for n in lines.lines if not taken & set(members[n])]
        for one, said in found_in_pieces(replace(lines, lines=left), _pieces(rows, members, cells)) if len(left) > 2 else []:
            doubts.append(said)
            taken |= set(members[one.line]) if one.is_taken else set()
        rows = [row for row in rows if row.at not in taken]
        roles = {r: Role(name="total") if r in taken else role for r, role in table.rows.items()}
        table = replace(table, rows=roles)
    return table, doubts


def _rows(look: Look, table: Table) -> list[_Row]:
    at = {name: [c for c, role in table.columns.items() if name in role.names] for name in ("sample", *_NAMES)}
    counted = [c for c, role in table.columns.items() if {"count", "mass"} & set(role.names)]
    if table.shape != "long" or not counted or not at["sample"]:
        return []
    found: list[_Row] = []
    sample = ""
    for r in [r for r, role in table.rows.items() if role.name == "finds"]:
        own = "/".join(filter(None, (look.text(r, c) for c in at["sample"])))
        is_filled = any(table.columns[c].filled for c in at["sample"])
        sample = own or (sample if is_filled else "")
        name = " ".join(filter(None, (look.text(r, c) for role in _NAMES for c in at[role])))
        amounts = {c: amount(look.text(r, c), table.marks.decimal) for c in counted}
        pieces = {c: pieced(look.text(r, c), table.marks.decimal) for c in counted}
        found.append(_Row(at=r, sample=sample, name=name, amounts=amounts, pieces=pieces))
    return found


def _pieces(
    rows: list[_Row], members: Mapping[int, list[int]], cells: Mapping[int, Mapping[int, int]]
) -> dict[int, list[Pieced | None]]:
    """Whole items and pieces of each line, where its rows tell them apart; cells: row -> column -> place in the line."""
    width = max((n for own in cells.values() for n in own.values()), default=-1) + 1
    by_row = {row.at: row for row in rows}
    found: dict[int, list[Pieced | None]] = {}
    for line, own in members.items():
        found[line] = [None] * width
        added = [Pieced(0.0, 0.0)] * width
        for row in (by_row[at] for at in own):
            for c, n in cells[row.at].items():
                one = row.pieces[c] or Pieced(row.amounts[c] or 0.0, 0.0)
                added[n] = Pieced(added[n].whole + one.whole, added[n].pieces + one.pieces)
                found[line][n] = added[n] if row.pieces[c] or found[line][n] else None
    return found


def _lines(
    look: Look, rows: list[_Row], *, by_name: bool
) -> tuple[Lines, dict[int, list[int]], dict[int, dict[int, int]]]:
    """
    The names of a list as lines over its samples, or its samples over its names; the rows of each line, and for each row
    where its amounts stand in the line.
    """
    of = {row.at: (row.name, row.sample) if by_name else (row.sample, row.name) for row in rows}
    labels = dict(enumerate(dict.fromkeys(line for line, _ in of.values())))
    number = {label: n for n, label in labels.items()}
    cells = list(dict.fromkeys((other, c) for row in rows for other in [of[row.at][1]] for c in row.amounts))
    amounts: dict[int, dict[tuple[str, int], float | None]] = {n: {} for n in labels}
    members: dict[int, list[int]] = {n: [] for n in labels}
    for row in rows:
        line, other = of[row.at]
        members[number[line]].append(row.at)
        for c, value in row.amounts.items():
            before = amounts[number[line]].get((other, c), 0.0)
            amounts[number[line]][other, c] = None if value is None or before is None else before + value
    places = {n: f"row {members[n][0] + 1}" + (f" and {len(members[n]) - 1} more" if len(members[n]) > 1 else "") for n in labels}
    lines = Lines(
        across="sample" if by_name else "name", role="finds", lines=list(labels), labels=labels, forms=labels,
        places=places, crosses=[f"'{other}'" for other, _ in cells], amounts={n: [found.get(cell, 0.0) for cell in cells] for n, found in amounts.items()},
        likelier=likelier_by_words(look, list(labels), labels, by_name), ends=frozenset({0}), runs={},
    )  # fmt: skip
    number_of = {cell: n for n, cell in enumerate(cells)}
    return lines, members, {row.at: {c: number_of[of[row.at][1], c] for c in row.amounts} for row in rows}
