"""Lines of a list of finds that are sums of others by their numbers: 'Whole lot' in each sample, 'All samples' of each name."""

# ruff: noqa: E501

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.sums_of_lines import Lines, amount, found_in, likelier_by_words, said_of

_NAMES = ("taxon", "genus", "epithet", "code", "common name", "family", "part", "condition", "completeness", "size class", "fraction")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """A row of finds: which sample, which name, and what stands under each head of amounts."""

    at: int
    sample: str
    name: str
    amounts: Mapping[int, float | None]


def with_sums_of_list(look: Look, table: Table) -> tuple[Table, list[str]]:
    """The list with the rows of its sums as totals, and what is told of them."""
    rows = _rows(look, table)
    doubts: list[str] = []
    for by_name in (True, False):
        lines, members = _lines(look, rows, by_name=by_name)
        taken: set[int] = set()
        for one in found_in(lines) if len(lines.lines) > 2 else []:
            doubts.append(said_of(one, lines))
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
        found.append(_Row(at=r, sample=sample, name=name, amounts=amounts))
    return found


def _lines(look: Look, rows: list[_Row], *, by_name: bool) -> tuple[Lines, dict[int, list[int]]]:
    """The names of a list as lines over its samples, or its samples over its names; and the rows of each line."""
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
    return lines, members
