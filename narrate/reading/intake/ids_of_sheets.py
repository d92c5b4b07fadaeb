"""Ids that one sheet of a workbook writes with a word or letter before them and the list of samples without."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Table

_BEFORE = re.compile(r"^\W*(?P<word>[^\W\d_]{1,9})?[\W_]*(?=\d)")
_LEAST = 0.8
"""Share of the ids of a table that must stand in the list once the word before them is taken off."""


def ids_listed(tables: Sequence[Table], grids: Mapping[str, Grid]) -> frozenset[str]:
    """The ids that lists of samples give; where two columns make an id, with '/' between them."""
    found: set[str] = set()
    for table in tables:
        grid = grids.get(table.sheet)
        if table.shape != "records" or grid is None:
            continue
        columns = [c for c, role in table.columns.items() if "sample" in role.names]
        for row in (r for r, role in table.rows.items() if role.name == "finds"):
            found.add("/".join(text for c in columns if (text := grid.text(row, c))))
    return frozenset(found - {""})


def with_known_ids(tables: Sequence[Table], grids: Mapping[str, Grid], doubts: list[str]) -> list[Table]:
    """The tables; those whose ids are the ones of the list of samples but for a word before them, with those ids."""
    known = ids_listed(tables, grids)
    made = []
    for table in tables:
        ids = _ids(table, grids) if table.shape != "records" and known else {}
        strange = [id for id in ids if id not in known]
        meant = _meant(strange, set(known) - set(ids))
        if len(strange) >= 2 and len(meant) >= _LEAST * len(strange):
            first = next(iter(meant.items()))
            doubts.append(
                f"sheet {table.sheet}: {len(meant)} ids stand in the list of samples without what is written before "
                f"them, such as '{first[0]}' for {first[1]}; they are taken for the same, see 'ids' in the layout"
            )
            table = replace(table, ids={**table.ids, **meant})
        made.append(table)
    return made


def _meant(strange: Sequence[str], known: set[str]) -> dict[str, str]:
    """Id as written -> the id of the list; only where the word before is one and no two become the same."""
    marked = {re.sub(r"[-._ ]", "/", id): id for id in known}
    other = {id: marked[flat] for id in strange if (flat := re.sub(r"[-._ ]", "/", id)) in marked}
    if len(other) >= _LEAST * len(strange) and len(marked) == len(known) and len(set(other.values())) == len(other):
        return other  # '12-1' of a list of contexts and numbers
    bare = {_bare(id): id for id in known}
    words = {(_BEFORE.match(id) or [""])[0] for id in strange} - {""}
    found = {id: bare[_bare(id)] for id in strange if _bare(id) in bare}
    is_plain = len(words) <= 1 and len(set(found.values())) == len(found) and len(bare) == len(known)
    return {id: other for id, other in found.items() if id != other} if is_plain else {}


def _bare(id: str) -> str:
    return _BEFORE.sub("", id).lower()


def _ids(table: Table, grids: Mapping[str, Grid]) -> dict[str, None]:
    """The ids of a table as written, where one row or column gives them."""
    grid = grids.get(table.sheet)
    at_rows = [r for r, role in table.rows.items() if "sample" in role.names]
    at_columns = [c for c, role in table.columns.items() if "sample" in role.names]
    if grid is None or len(at_rows) + len(at_columns) != 1:
        return {}
    rows = [r for r, role in table.rows.items() if role.name in ("counts", "finds")]
    columns = [c for c, role in table.columns.items() if role.name == "counts"]
    texts = [grid.text(r, at_columns[0]) for r in rows] if at_columns else [grid.text(at_rows[0], c) for c in columns]
    return dict.fromkeys(text for text in texts if text)
