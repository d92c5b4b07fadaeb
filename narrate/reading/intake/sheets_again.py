"""Tables of a workbook that say again what others say: sheets that were superseded, copies, sums by phase, and sums of lists."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from narrate.model.grids import Grid
from narrate.model.layouts import SAMPLE_ROLES, Table
from narrate.reading.intake.cell_marks import number_of

# Common practice, no source: how people mark what is not to be used any more, and what sums others up.
_SUPERSEDED = re.compile(
    r"\b(?:superseded|obsolete|outdated|deprecated|do(?: not|n'?t) use|not in use|replaced by|void|previous version|"
    r"veraltet|überholt|ersetzt durch|nicht (?:mehr )?(?:verwenden|benutzen)|périmée?|obsolète|ne (?:plus|pas) utiliser|remplacée? par|"
    r"obsolet[oa]s?|no (?:usar|utilizar)|sustituid[oa] por|non (?:usare|utilizzare)|sostituit[oa] da|niet (?:meer )?gebruiken|vervangen door|"
    r"brug ikke|använd (?:inte|ej)|nie używać)\b",
    re.IGNORECASE,
)  # fmt: skip
_OLD_NAME = re.compile(
    r"\b(?:old|backup|bak|archived?|draft|copy|alt|alte|kopie|ancien(?:ne)?|copie|viej[oa]|antigu[oa]|copia|vecchi[oa]|oud|kopi|gammal|gammel)\b",
    re.IGNORECASE,
)
_SUMMARY = re.compile(
    r"\b(?:summar(?:y|ies)|totals?|overview|pooled|synth[eè]se|récapitulatif|zusammenfassung|übersicht|resumen|riepilogo|sintesi|"
    r"resumo|samenvatting|overzicht|sammanfattning|oversigt|podsumowanie)\b",
    re.IGNORECASE,
)
_ALIKE = 0.6
"""Share of ids, of names or of amounts from which two tables are held to be of the same finds."""

_ADDS_UP = 0.75
"""Share of the names of a table of sums that must be the sums of others."""
_LEAST = 6
"""Amounts of a table that may be a copy of another."""


@dataclass(frozen=True, slots=True)
class _Held:
    """What a crossed table holds: amounts by name and sample."""

    table: Table
    where: str
    words: str
    """Its titles, and the name of its sheet."""
    ids: frozenset[str]
    names: frozenset[str]
    amounts: Mapping[tuple[str, str], str]


def without_repeats(
    tables: Sequence[Table], grids: Mapping[str, Grid], doubts: list[str], left_out: list[str]
) -> list[Table]:
    """The tables but those of sheets that repeat others; each that is left out is told, with the reason."""
    if len(tables) < 2:
        return list(tables)
    held = [one for table in tables if (one := _held(table, grids)) is not None]
    gone: list[_Held] = []
    groups = _groups_of_records(tables, grids)
    lists = [of_list for table in tables if (of_list := _listed(table, grids)) is not None]
    for one in held:
        summed = next((why for of_list in lists if (why := _sums_of_list(one, of_list))), "")
        if summed:
            gone.append(one)
            left_out.append(f"{one.where}: {summed}")
            doubts.append(f"{one.where} {summed}; it is not read: give its table its roles in the layout if it counts")
            continue
        others = [other for other in held if other is not one and other not in gone and _is_elsewhere(one, other)]
        before = held[: held.index(one)]
        if others and (why := _why(one, others, before, groups)):
            gone.append(one)
            left_out.append(f"{one.where}: {why}")
            doubts.append(f"{one.where} {why}; it is not read: give its tables their roles in the layout if it counts")
    return [table for table in tables if not any(table is one.table for one in gone)]


def _is_elsewhere(one: _Held, other: _Held) -> bool:
    return one.table.sheet != other.table.sheet


def _why(one: _Held, others: Sequence[_Held], before: Sequence[_Held], groups: Mapping[str, frozenset[str]]) -> str:
    """Why a table is not read beside others; empty where it is."""
    again = [other for other in others if _share(one.ids, other.ids) >= _ALIKE and _share(one.names, other.names) >= _ALIKE]
    if again:
        is_old = bool(_OLD_NAME.search(one.table.sheet)) and not _OLD_NAME.search(again[0].table.sheet)
        if _SUPERSEDED.search(one.words) or is_old:
            return f"is marked as one that is not in use, and repeats the samples of {again[0].where}"
        first = next((other for other in again if other in before and not _is_older(other)), None)
        return _copied(one, first) if first is not None else ""
    named = frozenset().union(*(other.names for other in others))
    is_of_same_taxa = _share(one.names, named) >= _ALIKE
    if not is_of_same_taxa or any(one.ids & other.ids for other in others):
        return ""
    for role, values in groups.items():
        if len(one.ids) >= 2 and one.ids <= values:
            return f"has a {role} for each sample: sums of the counts of other sheets"
    if _SUMMARY.search(one.words) and _adds_up(one, others):
        return f"is headed '{one.words[:60].strip()}': sums of the counts of other sheets"
    return ""


def _copied(one: _Held, first: _Held) -> str:
    """What is told of a table most of whose amounts stand in another one before it; empty where they do not."""
    same = sum(first.amounts.get(at) == text for at, text in one.amounts.items())
    if len(one.amounts) < _LEAST or same < _ALIKE * len(one.amounts):
        return ""
    differ = len(one.amounts) - same
    rest = f"; {differ} of its amounts differ, which is DOUBTFUL" if differ else ""
    return f"repeats {same} of its {len(one.amounts)} amounts from {first.where}{rest}"


def _adds_up(one: _Held, others: Sequence[_Held]) -> bool:
    """Whether what a table holds of most of its names is the sum of what others hold of them."""
    own, of_others = _sums([one]), _sums(others)
    return bool(own) and sum(abs(of_others.get(name, -1.0) - value) < 0.5 for name, value in own.items()) >= _ADDS_UP * len(own)


def _sums(held: Sequence[_Held]) -> dict[str, float]:
    """Name -> the sum of the plain numbers under it."""
    found: dict[str, float] = {}
    for one in held:
        for (name, _), text in one.amounts.items():
            found[name] = found.get(name, 0.0) + (number_of(text, ".") or 0.0)
    return found


@dataclass(frozen=True, slots=True)
class _List:
    """What a list of finds holds: the sum of its plain numbers by name and sample, with the part and without."""

    sheet: str
    sums: Mapping[tuple[str, str], float]


def _listed(table: Table, grids: Mapping[str, Grid]) -> _List | None:
    grid = grids.get(table.sheet)
    if grid is None or table.shape != "long" or not table.sheet:
        return None
    at = {name: [c for c, role in table.columns.items() if name in role.names] for name in ("sample", "taxon", "part", "count")}
    if not (at["sample"] and at["taxon"] and at["count"]):
        return None
    sums: dict[tuple[str, str], float] = {}
    sample = ""
    for r, role in sorted(table.rows.items()):
        if role.name != "finds":
            continue
        sample = _flat(grid.text(r, at["sample"][0])) or sample
        taxon, part = (_flat(" ".join(filter(None, (grid.text(r, c) for c in at[name])))) for name in ("taxon", "part"))
        number = sum(number_of(grid.text(r, c), ".") or 0.0 for c in at["count"])
        for name in {taxon, f"{taxon} {part}".strip()}:
            sums[name, sample] = sums.get((name, sample), 0.0) + number
    return _List(table.sheet, sums)


def _sums_of_list(one: _Held, of_list: _List) -> str:
    """What is told of a table that sums up a list of single finds on another sheet; empty where it does not."""
    amounts = {at: number for at, text in one.amounts.items() if (number := number_of(text, "."))}
    if one.table.sheet == of_list.sheet or len(amounts) < _LEAST:
        return ""
    differ = [at for at, number in amounts.items() if abs(of_list.sums.get(at, 0.0) - number) > 0.5]
    if len(differ) > (1 - _ADDS_UP) * len(amounts):
        return ""
    listed = ", ".join(f"{name} in {sample}" for name, sample in differ[:5])
    rest = f"; {len(differ)} differ from it, which is DOUBTFUL: {listed}" if differ else ""
    return f"sums up the finds that sheet {of_list.sheet} lists one by one ({len(amounts)} amounts{rest}), and its totals are not checked"


def _is_older(other: _Held) -> bool:
    return bool(_SUPERSEDED.search(other.words) or _OLD_NAME.search(other.table.sheet))


def _share(own: frozenset[str], other: frozenset[str]) -> float:
    return len(own & other) / len(own) if own else 0.0


def _groups_of_records(tables: Sequence[Table], grids: Mapping[str, Grid]) -> dict[str, frozenset[str]]:
    """What records say of samples, but their ids and contexts: role -> its values."""
    found: dict[str, set[str]] = {}
    for table in tables:
        grid = grids.get(table.sheet)
        for column, role in table.columns.items() if table.shape == "records" and grid is not None else ():
            for name in set(role.names) & set(SAMPLE_ROLES) & {"phase", "feature", "kind", "site"}:
                lines = [r for r, line in table.rows.items() if line.name == "finds"]
                found.setdefault(name, set()).update(_flat(grid.text(r, column)) for r in lines)  # type: ignore[union-attr]
    return {role: frozenset(values - {""}) for role, values in found.items()}


def _held(table: Table, grids: Mapping[str, Grid]) -> _Held | None:
    grid = grids.get(table.sheet)
    if grid is None or table.shape != "crossed" or not table.sheet:
        return None
    across = table.has_samples_across
    of_ids = table.rows if across else table.columns
    of_names = table.columns if across else table.rows
    id_at = [n for n, role in of_ids.items() if "sample" in role.names]
    name_at = [n for n, role in of_names.items() if set(role.names) & {"taxon", "genus", "epithet", "part"}]
    rows = [r for r, role in table.rows.items() if role.name == "counts"]
    columns = [c for c, role in table.columns.items() if role.name == "counts"]

    def said(at: list[int], line: int, is_row: bool) -> str:
        return _flat(" ".join(filter(None, (grid.text(line, n) if is_row else grid.text(n, line) for n in at))))

    ids = {n: said(id_at, n, not across) for n in (columns if across else rows)}
    names = {n: said(name_at, n, across) for n in (rows if across else columns)}
    amounts = {
        (names[r if across else c], ids[c if across else r]): grid.text(r, c)
        for r in rows for c in columns if grid.text(r, c) not in ("", "0", "-")
    }  # fmt: skip
    titles = [grid.text(r, c) for r, role in table.rows.items() if role.name in ("title", "ignored") for c in range(grid.columns)]
    return _Held(
        table=table, where=f"sheet {table.sheet}", words=" ".join(filter(None, [table.sheet, *titles])),
        ids=frozenset(ids.values()) - {""}, names=frozenset(names.values()) - {""}, amounts=amounts,
    )  # fmt: skip


def _flat(text: str) -> str:
    return " ".join(text.lower().split())
