"""Ids that one sheet of a workbook writes with a word or letter before them and the list of samples without."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Table

_BEFORE = re.compile(r"^\W*(?P<word>[^\W\d_]{1,9})?[\W_]*(?=\d)")
_LEADING = re.compile(r"^(\D*)0+(?=\d)")
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
        made.append(_with_noughts(table, ids, known, doubts))
    return made


def without_noughts(id: str) -> str:
    """
    An id without the noughts before its number.

    >>> without_noughts("0012"), without_noughts("S01"), without_noughts("1.01"), without_noughts("0")
    ('12', 'S1', '1.01', '0')
    """
    return _LEADING.sub(r"\1", id)


def _with_noughts(table: Table, ids: Mapping[str, None], known: frozenset[str], doubts: list[str]) -> Table:
    """The table with the ids of the list for those that differ from them by noughts before the number: 12 and 0012."""
    alike: dict[str, list[str]] = {}
    for id in dict.fromkeys([*(id for id in ids if id not in table.ids), *sorted(known)]):
        alike.setdefault(without_noughts(id), []).append(id)
    groups = [ones for ones in alike.values() if len(ones) > 1 and any(one in ids and one not in known for one in ones)]
    meant = {ones[0]: ones[1] for ones in groups if len(ones) == 2 and ones[1] in known and ones[1] not in ids}
    if meant:
        first, more = next(iter(meant.items())), f" and {len(meant) - 1} more" if len(meant) > 1 else ""
        doubts.append(
            f"sheet {table.sheet}: ids that differ by noughts before the number are taken for those of the list of "
            f"samples, '{first[0]}' for {first[1]}{more}; see 'ids' in the layout"
        )
    for ones in groups:
        if ones[0] not in meant:
            listed = ", ".join(repr(one) for one in ones)
            doubts.append(
                f"DOUBTFUL: sheet {table.sheet}: the ids {listed} of the counts and the list of samples differ by "
                "noughts alone, and are taken for samples of their own; say which are the same under 'ids'"
            )
    return replace(table, ids={**table.ids, **meant})


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
