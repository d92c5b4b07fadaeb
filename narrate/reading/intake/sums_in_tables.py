"""Rows and columns of a table that are the sums of others by their numbers, whatever stands over them."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from narrate.model.layouts import DERIVED_ROLES, Role, Table
from narrate.reading.intake.amounts_in_pieces import pieced
from narrate.reading.intake.amounts_of_tables import NAMES
from narrate.reading.intake.blocks_of_sums import block_of_sums
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.left_over import lines_named
from narrate.reading.intake.sums_by_numbers import Summed, sums_among
from narrate.reading.intake.sums_in_lists import with_sums_of_list
from narrate.reading.intake.sums_in_pieces import found_in_pieces
from narrate.reading.intake.sums_of_lines import Lines, amount, found_in, likelier_by_words, said_of, said_of_block

_PLACES = ("context", "feature", "phase", "site", "kind")
_SMALL = ("completeness", "condition", "size class", "fraction", "part", "quantity")
_COUNTED = ("counts", "count", "mass")
IDS_JOINED = "no row alone tells the samples apart"
"""How it begins what is told of ids that are put together."""


def with_sums(look: Look, table: Table) -> tuple[Table, list[str]]:
    """The table with its sums as totals, and what is told of each; what is in doubt stays, and is told too."""
    if any(re.fullmatch(r"\d+", sign) for sign in table.marks.key):
        return table, []  # numbers are classes
    if table.shape == "crossed":
        return _of_crossed(look, table)
    return with_sums_of_list(look, table)


def _of_crossed(look: Look, table: Table) -> tuple[Table, list[str]]:
    """Each side of a table twice: who sums up both sides has a sum of sums where they cross."""
    doubts: dict[tuple[bool, int], str] = {}
    taxa_are_rows = table.has_samples_across
    for turn, is_row in enumerate((taxa_are_rows, not taxa_are_rows, taxa_are_rows)):
        if turn == 2 and not any(key[0] != is_row for key in doubts):
            break  # nothing was found that crosses them
        for lines in _kinds(look, table, is_row):
            roles = dict(table.rows if is_row else table.columns)
            block = block_of_sums(lines.lines, lines.amounts)
            if block is not None:
                roles.update({line: Role(name="total") for line in block[0]})
                doubts[is_row, block[0][0]] = said_of_block(*block, lines)
            for one in found_in(lines) if block is None else []:
                if one.is_taken:
                    roles[one.line] = Role(name="total")
                doubts[is_row, one.line] = said_of(one, lines)
            for one, said in _in_pieces(look, table, lines, roles, is_row):
                if one.is_taken:
                    roles[one.line] = Role(name="total")
                doubts[is_row, one.line] = said
            sums = _unread_sums(look, table, is_row, roles)
            roles.update({line: Role(name="total") for line in sums})
            roles.update({line: Role(name="sample") for line in _ids_beside(look, table, is_row, roles) if sums})
            table = replace(table, rows=roles) if is_row else replace(table, columns=roles)
    return _with_ids_alone(look, table), list(doubts.values())


def _in_pieces(
    look: Look, table: Table, lines: Lines, roles: Mapping[int, Role], is_row: bool
) -> list[tuple[Summed, str]]:
    """The lines that are left and are sums of the whole items or the pieces in the cells of others."""
    if not any(pieced(text, table.marks.decimal) for text in {cell.text for cell in look.cells.values()}):
        return []
    cross = [n for n, role in (table.columns if is_row else table.rows).items() if role.name in _COUNTED]
    left = [line for line in lines.lines if roles[line].name in _COUNTED]
    texts = {line: [look.text(line, o) if is_row != look.is_turned else look.text(o, line) for o in cross] for line in left}
    cells = {line: [pieced(text, table.marks.decimal) for text in own] for line, own in texts.items()}
    return found_in_pieces(replace(lines, lines=left), cells) if len(left) > 2 else []


def joins_ids(table: Table) -> bool:
    """Whether ids are put together of two lines."""
    return sum("sample" in role.names for role in (*table.rows.values(), *table.columns.values())) > 1


def _with_ids_alone(look: Look, table: Table) -> Table:
    """Contexts are no part of ids any more where only sums had no id of their own."""
    across = table.has_samples_across
    roles, others = (table.rows, table.columns) if across else (table.columns, table.rows)
    ids = [n for n, role in roles.items() if role.name == "sample" and not role.also]
    joined = {n: replace(role, name=role.also[0], also=role.also[1:]) for n, role in roles.items()
              if role.name == "sample" and role.also}  # fmt: skip
    lines = [n for n, role in others.items() if role.name in _COUNTED]
    texts = [look.text(ids[0], n) if across else look.text(n, ids[0]) for n in lines] if len(ids) == 1 else []
    has_sums = any(role.name == "total" for role in others.values())
    if not has_sums or not joined or not all(texts) or len(set(texts)) < len(lines):
        return table
    return replace(table, rows={**roles, **joined}) if across else replace(table, columns={**roles, **joined})


def _unread_sums(look: Look, table: Table, is_row: bool, roles: Mapping[int, Role]) -> list[int]:
    """Lines that are left out, or taken for a second line of ids, and are the sums of all lines of counts."""
    of = replace(table, rows=roles) if is_row else replace(table, columns=roles)
    found = []
    cross = [n for n, role in (table.columns if is_row else table.rows).items() if role.name in _COUNTED]
    for line in [n for n, role in roles.items() if role.name in ("ignored", "sample")]:
        texts = (look.text(line, n) if is_row != look.is_turned else look.text(n, line) for n in cross)
        if any(amount(text, table.marks.decimal) is None for text in texts):
            continue
        tried = {**roles, line: Role(name="counts")}
        for lines in _kinds(look, replace(of, rows=tried) if is_row else replace(of, columns=tried), is_row):
            if line in lines.lines and len(lines.lines) > 3 and all(v is not None for v in lines.amounts[line]):
                sums = sums_among(lines.lines, lines.amounts, ends=lines.ends, of=line)
                found += [one.line for one in sums if one.is_taken and len(one.of) == len(lines.lines) - 1]
    return found


def _ids_beside(look: Look, table: Table, is_row: bool, roles: Mapping[int, Role]) -> list[int]:
    """The line of ids that was left out where sums were taken for ids; none where ids are there."""
    if any("sample" in role.names for role in (*roles.values(), *(table.columns if is_row else table.rows).values())):
        return []
    cross = [n for n, role in (table.columns if is_row else table.rows).items() if role.name in _COUNTED]
    for line in [n for n, role in roles.items() if role.name == "ignored"]:
        texts = [look.text(line, n) if is_row else look.text(n, line) for n in cross]
        if all(texts) and len(set(texts)) == len(texts):
            return [line]
    return []


def _kinds(look: Look, table: Table, is_row: bool) -> Iterable[Lines]:
    """The lines of counts along one side of a table, each kind of amount by itself: 'n' and 'g' are not added."""
    roles, others = (table.rows, table.columns) if is_row else (table.columns, table.rows)
    lines = [n for n, role in roles.items() if role.name in _COUNTED]
    cross = [n for n, role in others.items() if role.name in _COUNTED]
    of_taxa = is_row == table.has_samples_across

    def text(line: int, other: int) -> str:
        return look.text(line, other) if is_row != look.is_turned else look.text(other, line)

    where: dict[tuple[str, ...], list[int]] = {}

    def said(line: int, names: tuple[str, ...]) -> str:
        if names not in where:
            where[names] = [n for n, role in others.items() if set(role.names) & set(names)]
        return " ".join(" ".join(filter(None, (text(line, n) for n in where[names]))).split())

    labels = {n: said(n, NAMES if of_taxa else ("sample",)) for n in lines}
    amounts = {n: [amount(text(n, o), table.marks.decimal) for o in cross] for n in lines}
    heads = [n for n, role in roles.items() if set(role.names) & {*NAMES, "sample"}]
    crosses = [_cross(look, o, heads, is_row=not is_row) for o in cross]
    kinds = {n: quantity(said(n, ("quantity",))) or roles[n].name.replace("counts", "") for n in lines}
    places = {n: lines_named("row" if is_row else "column", [n]) for n in lines}
    forms = {n: f"{said(n, ('sample',))} {said(n, _SMALL)}" if not of_taxa else labels[n] for n in lines}
    counted = max(kinds.values(), key=list(kinds.values()).count, default="")
    if counted == "":  # 'Whole' over a sum behind samples that have no such head
        kinds = {n: "" if kind.startswith("count") else kind for n, kind in kinds.items()}
    for kind in dict.fromkeys(kinds.values()):
        own = [n for n in lines if kinds[n] == kind or (kind == counted and kinds[n] == "")]
        runs = _runs(own, lambda n, role: said(n, (role,)), ("family", "group", "part", "condition") if of_taxa else (*_PLACES, *_SMALL))
        yield Lines(
            across="sample" if of_taxa else "name", role="counts", lines=own, labels=labels, forms=forms, places=places, crosses=crosses,
            amounts=amounts, likelier=likelier_by_words(look, own, labels, of_taxa), ends=_ends(roles, own, runs), runs=runs,
        )  # fmt: skip


def _cross(look: Look, line: int, heads: Sequence[int], *, is_row: bool) -> str:
    """How a line that crosses others is named."""
    label = " ".join(filter(None, (look.text(line, n) if is_row else look.text(n, line) for n in heads)))
    return f"'{label}' ({lines_named('row' if is_row else 'column', [line])})"


def _runs(lines: Sequence[int], said: Callable[[int, str], str], roles: Iterable[str]) -> dict[str, list[int]]:
    """The lines that share what is said of them by one of some roles."""
    found: dict[str, list[int]] = {}
    for role in roles:
        for line in lines:
            text = said(line, role)
            if text:
                found.setdefault(f"{role} {text}", []).append(line)
    return {key: of for key, of in found.items() if 1 < len(of) < len(lines)}


def _ends(roles: Mapping[int, Role], lines: Sequence[int], runs: Mapping[str, Sequence[int]]) -> frozenset[int]:
    """The lines that a head, a result or a blank stands before, or with which a group begins."""
    known = sorted(roles)
    before = {line: known[n - 1] for n, line in enumerate(known) if n}
    parted = {n for n in lines if n in before and roles[before[n]].name in ("section", "blank", *DERIVED_ROLES)}
    return frozenset(parted | {run[0] for run in runs.values()} | set(lines[:1]))


