"""Tables that add up others: a sheet 'Combined' of 'Light' and 'Heavy', a sheet by phase of all samples; none is counted twice."""

# ruff: noqa: E501

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from narrate.model.grids import Grid
from narrate.model.layouts import Role, Table
from narrate.reading.intake.amounts_of_tables import At, Cells, TableAmounts, amounts_of
from narrate.reading.intake.keys_of_file import Disagreement
from narrate.reading.intake.stored_places import cells_said
from narrate.reading.intake.sums_by_numbers import DOUBTED, Summed, sums_among
from narrate.reading.intake.sums_held import added_up, held_against

_MOST_TABLES = 12
_ALIKE = 0.6
"""Share of ids and of names from which two tables are of the same samples or of the same plants (judgement)."""
_ADDS_UP = 0.75
"""Share of the lines of a table that must be sums of samples (judgement)."""
_TOGETHER = 24.0
"""Bits from which they are so together (judgement)."""


@dataclass(slots=True, kw_only=True)
class SummedTables:
    """What is made of the tables of a file, and what is told."""

    tables: list[Table]
    doubts: list[str]
    left_out: list[str]
    wrong: list[Disagreement]


def with_tables_summed(tables: Sequence[Table], grids: Mapping[str, Grid]) -> SummedTables:
    """Tables that are the sums of others as stored totals, and tables of sums of samples left out, with what is wrong."""
    made = SummedTables(tables=list(tables), doubts=[], left_out=[], wrong=[])
    if len(tables) < 2:
        return made
    held = [one for table in tables if (one := amounts_of(table, grids.get(table.sheet))) is not None]
    if not 1 < len(held) <= _MOST_TABLES:
        return made
    for one in list(held):
        others = [other for other in held if other is not one and _is_of_same(one, other)]
        found = _combined(one, others) if len(others) > 1 else None
        if found is not None and found.is_taken:
            held.remove(one)
            as_totals = _as_totals(one.table)
            made.tables = [as_totals if table is one.table else table for table in made.tables]
            made.doubts.append(
                f"{_said(one)} adds up {_listed([others[n - 1] for n in found.of])} cell by cell ({found.agreeing} of {found.given} "
                "amounts): taken for stored totals, checked and not counted; write counts for it in the layout if it is none"
            )
        elif found is not None:
            made.doubts.append(
                f"DOUBTFUL: {_said(one)} may add up {_listed([others[n - 1] for n in found.of])} ({found.agreeing} of {found.given} "
                "amounts), and is read as counts: write total for it in the layout if it does, or they count twice"
            )
    for one in list(held):
        others = [other for other in held if other is not one and _is_of_other_samples(one, other)]
        groups = _groups(one, others) if others else {}
        names = _sums_of_names(one, others) if others and len(groups) < len(one.samples) else None
        if groups or names is not None:
            held.remove(one)
            made.tables = [table for table in made.tables if table is not one.table]
            made.wrong += _wrong(one, others, groups) if names is None else names
            of = f" ({_of_groups(one, others, groups)})" if groups else ""
            said = f"gives sums of groups of the samples of {_listed(others)}{of}"
            made.left_out.append(f"{_said(one)}: {said}")
            made.doubts.append(f"{_said(one)} {said}; it is not read: give its table its roles in the layout if it counts")
    return made


def _as_totals(table: Table) -> Table:
    """A table whose amounts are results."""
    names = ("counts", "count", "mass")
    columns = {c: Role(name="total") if role.name in names else role for c, role in table.columns.items()}
    return replace(table, columns=columns)


def _said(one: TableAmounts) -> str:
    rows = f"rows {min(one.table.rows) + 1} to {max(one.table.rows) + 1}"
    return f"{one.where}, {rows}," if one.table.sheet else f"the table of {rows}"


def _listed(others: Sequence[TableAmounts]) -> str:
    return " and ".join(dict.fromkeys(other.where for other in others))


def _is_of_same(one: TableAmounts, other: TableAmounts) -> bool:
    """Whether most samples and names of a table stand in another one."""
    ids, own = set(one.samples) & set(other.samples), set(one.samples)
    return len(ids) >= _ALIKE * min(len(own), len(other.samples)) and _share_of_names(other, one) >= _ALIKE


def _share_of_names(one: TableAmounts, other: TableAmounts) -> float:
    return len(one.names & other.names) / len(one.names) if one.names else 0.0


def _combined(one: TableAmounts, others: Sequence[TableAmounts]) -> Summed | None:
    """Tables of the same samples whose sum a table is, cell by cell."""
    all_of = [one, *others]
    keys = list(dict.fromkeys((id, name) for table in all_of for id, cells in table.samples.items() for name in cells))
    nothing = Cells()
    amounts = {n: [table.samples.get(id, {}).get(name, nothing).value for id, name in keys] for n, table in enumerate(all_of)}
    return next(iter(sums_among(list(amounts), amounts, of=0)), None)


def _is_of_other_samples(one: TableAmounts, other: TableAmounts) -> bool:
    """Whether a table has most names of another one, under other ids, and fewer of those."""
    shared = set(one.samples) & set(other.samples)
    return not shared and len(one.samples) < len(other.samples) and _share_of_names(one, other) >= _ALIKE


def _lines_of(others: Sequence[TableAmounts]) -> list[tuple[TableAmounts, str]]:
    return [(other, id) for other in others for id in other.samples]


def _groups(one: TableAmounts, others: Sequence[TableAmounts]) -> dict[str, Summed]:
    """Id of a table -> the samples of others that it adds up; nothing where most of its ids add up none."""
    lines = _lines_of(others)
    names = sorted(one.names | {name for other in others for name in other.names})
    amounts = {n: _vector(other.samples[id], names) for n, (other, id) in enumerate(lines)}
    found: dict[str, Summed] = {}
    for id, cells in one.samples.items():
        own = len(lines)
        sums = sums_among([*range(own), own], {**amounts, own: _vector(cells, names)}, of=own, least=0.0)
        found |= {id: sums[0]} if sums else {}
    given = [id for id, cells in one.samples.items() if any(cell.value for cell in cells.values())]
    bits = sum(summed.bits for summed in found.values())
    is_one = len(given) == 1 and bool(found) and next(iter(found.values())).is_taken
    are_several = len(given) > 1 and len(found) >= _ADDS_UP * len(given) and bits >= _TOGETHER
    is_sure = any(summed.bits >= DOUBTED for summed in found.values())
    return found if is_one or (are_several and is_sure) else {}


def _sums_of_names(one: TableAmounts, others: Sequence[TableAmounts]) -> list[Disagreement] | None:
    """What disagrees, by name, where a table adds up in nearly all names to what others hold; None where it does not."""
    names = sorted(one.names | {name for other in others for name in other.names})
    lines = [_vector(other.samples[id], names) for other, id in _lines_of(others)]
    own = added_up([_vector(cells, names) for cells in one.samples.values()])
    found = held_against(own, lines)
    if found.several < 3 or found.agreeing < 0.74 * found.given or found.bits < _TOGETHER:
        return None
    wrong = []
    for name, mine, added in zip(names, own, added_up(lines), strict=True):
        stored = [cells[name] for cells in one.samples.values() if name in cells]
        at = [cell for cells in stored for cell in cells.at]
        parts = [(other, other.samples[id][name]) for other, id in _lines_of(others) if name in other.samples[id]]
        if mine is not None and added is not None and abs(mine - added) > 1e-6 and at:
            wrong.append(_disagreement(one, at[0], f"sums of {name} in {cells_said(at)} are", mine, parts, added))
    return wrong


def _disagreement(
    one: TableAmounts, at: At, what: str, stored: float, parts: Sequence[tuple[TableAmounts, Cells]], added: float
) -> Disagreement:
    return Disagreement(
        place=one.grid.place(*at), code="N317",
        message=f"the stored {what} {stored:.6g}, and the counts in {_places(parts)} give {added:.6g}, expected them to agree",
        help="narrate uses the counts; look whether a count or the stored number is wrong",
    )  # fmt: skip


def _vector(cells: Mapping[str, Cells], names: Sequence[str]) -> list[float | None]:
    nothing = Cells()
    return [cells.get(name, nothing).value for name in names]


def _of_groups(one: TableAmounts, others: Sequence[TableAmounts], groups: Mapping[str, Summed]) -> str:
    lines = _lines_of(others)
    shown = []
    for id, summed in list(groups.items())[:4]:
        ids = [lines[n][0].written[lines[n][1]] for n in summed.of]
        of = f"{ids[0]} to {ids[-1]}" if len(ids) > 3 else ", ".join(ids)
        shown.append(f"'{one.written[id]}' of {of}")
    return "; ".join(shown) + (f"; and {len(groups) - 4} more" if len(groups) > 4 else "")


def _wrong(one: TableAmounts, others: Sequence[TableAmounts], groups: Mapping[str, Summed]) -> list[Disagreement]:
    """What is told of each amount that the samples of its group do not give."""
    lines = _lines_of(others)
    found: list[Disagreement] = []
    for id, summed in groups.items():
        own = one.samples[id]
        for name in dict.fromkeys([*own, *(name for n in summed.of for name in lines[n][0].samples[lines[n][1]])]):
            parts = [(other, cells) for n in summed.of for other, sample in [lines[n]] if (cells := other.samples[sample].get(name))]
            values = [cells.value for _, cells in parts]
            stored = own.get(name)
            if None in values or (stored is not None and stored.value is None):
                continue
            added, number = sum(value or 0.0 for value in values), (stored.value or 0.0) if stored else 0.0
            if abs(added - number) > 1e-6 and stored is not None and stored.at:
                what = f"sum of {name} in {one.written[id]} is"
                found.append(_disagreement(one, stored.at[0], what, number, parts, added))
    return found


def _places(parts: Sequence[tuple[TableAmounts, Cells]]) -> str:
    """The cells of counts, sheet by sheet."""
    by_table: dict[str, list[tuple[int, int]]] = {}
    for other, cells in parts:
        by_table.setdefault(f"sheet {other.table.sheet} " if other.table.sheet else "", []).extend(cells.at)
    return " and ".join(f"{sheet}{cells_said(at)}" for sheet, at in by_table.items())
