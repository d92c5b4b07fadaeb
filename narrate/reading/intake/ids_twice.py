"""Ids that stand over two columns of different contexts, among others that stand once: the context goes before them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from narrate.model.grids import address
from narrate.model.layouts import Table
from narrate.reading.intake.evidence import Look

_APART = ("quantity", "size class", "fraction", "part", "condition", "completeness", "taxon", "cf")
"""Rows and columns that tell the columns of one sample apart."""
_FEW = 0.35
"""Share of the ids of a sheet that may stand twice before the ids are not what tells its samples apart."""

Lines = list[tuple[str, tuple[int, int], str]]
"""The id of each line of counts, where it was written, and its context."""


def ids_apart(look: Look, tables: Sequence[Table]) -> tuple[dict[str, str], list[str]]:
    """What is mended at the ids, as 'H5' -> '1021/45', and what an analyst should know of it."""
    lines: Lines = [line for table in tables if table.shape == "crossed" for line in _lines(look, table)]
    several = Counter(id for id, _, _ in lines)
    twice = {id for id, n in several.items() if n > 1}
    contexts: dict[str, list[str]] = {id: [c for one, _, c in lines if one == id] for id in twice}
    apart = {id for id, found in contexts.items() if all(found) and len(set(found)) == len(found)}
    if not apart or len(apart) > _FEW * len(several) or len(several) < 4:
        return {}, []
    before = f"{look.grid.sheet}!" if look.grid.sheet else ""
    mend = {before + address(*at): f"{context}/{id}" for id, at, context in lines if id in apart}
    doubts = [
        f"DOUBTFUL: the id '{id}' stands over {len(contexts[id])} columns or rows of different contexts "
        f"({', '.join(contexts[id])}); they are taken for samples of their own, with the context before the id; "
        "see 'mend' in the layout, and write the id alone there if they are one sample"
        for id in sorted(apart)
    ]
    return mend, doubts


def _lines(look: Look, table: Table) -> Lines:
    across = table.has_samples_across
    heads, counted = (table.rows, table.columns) if across else (table.columns, table.rows)
    if any(role.name in _APART for role in heads.values()):
        return []
    ids = [n for n, role in heads.items() if "sample" in role.names]
    said = [n for n, role in heads.items() if role.name in ("context", "feature") and not role.filled]
    if len(ids) != 1 or not said:
        return []
    found: Lines = []
    for line in sorted(n for n, role in counted.items() if role.name == "counts"):
        at, of = _at(ids[0], line, across), _at(said[0], line, across)
        if _text(look, at) and at in _own(look):
            found.append((_text(look, at), at, _text(look, of)))
    return found


def _at(head: int, line: int, across: bool) -> tuple[int, int]:
    return (head, line) if across else (line, head)


def _text(look: Look, at: tuple[int, int]) -> str:
    return look.text(*at)


def _own(look: Look) -> Mapping[tuple[int, int], object]:
    return look.grid.cells
