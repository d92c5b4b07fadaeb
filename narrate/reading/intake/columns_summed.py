"""Sheets whose columns add up columns of other sheets, sample by sample: 'Nutshell' of hickory, walnut and acorn elsewhere."""

# ruff: noqa: E501

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from narrate.model.grids import Grid, address
from narrate.model.layouts import DERIVED_ROLES, Role, Table
from narrate.reading.intake.amounts_of_tables import NAMES, At, amounts_of
from narrate.reading.intake.keys_of_file import Disagreement
from narrate.reading.intake.sums_of_lines import amount

_MOST_LINES = 30
"""Lines of other tables of which all sums are tried; of more, only those that share a word (2 to the 15th sums twice)."""
_TOGETHER = 24.0
"""Bits from which the lines of a table are sums together (judgement)."""
_ADDS_UP = 0.75
"""Share of the lines of a table, and of the samples of a line, that must agree (judgement)."""
_SCALE, _BASE = 1000, 10**12
"""Amounts are held to three digits behind the point; one place for each sample in one large number."""
_GIVEN = ("counts", "count", "mass")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """The amounts of one name, by sample."""

    table: Table
    label: str
    at: Mapping[str, At]
    amounts: Mapping[str, int]
    """In thousandths; a blank is nought, and a sign too."""
    is_result: bool


@dataclass(slots=True, kw_only=True)
class _Sums:
    """The lines of a table that add up lines of others."""

    lines: Sequence[_Line]
    found: list[tuple[_Line, tuple[_Line, ...], float]] = field(default_factory=list)

    @property
    def several(self) -> int:
        """How many add up two lines or more."""
        return sum(len(of) > 1 for _, of, _ in self.found)

    @property
    def are_taken(self) -> bool:
        bits = sum(bits for *_, bits in self.found)
        return self.several >= 2 and len(self.found) >= _ADDS_UP * len(self.lines) and bits >= _TOGETHER


def with_columns_summed(
    tables: Sequence[Table], grids: Mapping[str, Grid], doubts: list[str], wrong: list[Disagreement]
) -> list[Table]:
    """The tables, those of sums of others as records of samples; each is told, and so is every sum that is none."""
    if len(tables) < 2:
        return list(tables)
    lines = {id(table): _lines(table, grids[table.sheet]) for table in tables if table.sheet in grids}
    asked = [t for t in tables if t.shape == "crossed" and not t.has_samples_across and t.sheet and id(t) in lines]
    made = list(tables)
    tried = [(t, _sums(t, tables, lines)) for t in asked]
    for table, sums in sorted(tried, key=lambda one: -one[1].several):
        gone = [t for t, other in tried if other is not sums and not any(t is kept for kept in made)]
        sums = _sums(table, [t for t in tables if not any(t is one for one in gone)], lines) if gone else sums
        if not sums.are_taken:
            continue
        made = [_as_records(t) if t is table else t for t in made]
        doubts.append(
            f"sheet {table.sheet} {_said(sums)}: its amounts are not counted beside those, and its shares and densities are not "
            "checked; give its columns the role counts in the layout if they count"
        )
        for line, of, _ in sums.found:
            wrong += _disagreements(line, of, grids[table.sheet])
    return made


def _as_records(table: Table) -> Table:
    """What a table says of its samples, without its amounts."""
    columns = {
        c: Role(name="ignored", qualifiers=("it adds up other sheets",)) if role.name in (*_GIVEN, *DERIVED_ROLES) else role
        for c, role in table.columns.items()
    }
    heads = {r for r, role in table.rows.items() if {*NAMES, "group", "quantity"} & set(role.names)}
    rows = {
        r: Role(name="finds") if role.name == "counts" else Role(name="header") if r in heads else role
        for r, role in table.rows.items()
    }
    return replace(table, shape="records", rows=rows, columns=columns)


def _said(sums: _Sums) -> str:
    """What is told of the first few sums."""
    shown = [
        f"'{line.label}' of " + " and ".join(f"'{one.label}' ({one.table.sheet})" for one in of[:3]) + (f" and {len(of) - 3} more" if len(of) > 3 else "")
        for line, of, _ in sorted(sums.found, key=lambda one: -len(one[1]))[:3]
    ]
    return f"adds up columns of other sheets in {len(sums.found)} of {len(sums.lines)} columns ({'; '.join(shown)})"


def _disagreements(line: _Line, of: Sequence[_Line], grid: Grid) -> list[Disagreement]:
    found = []
    for sample, stored in line.amounts.items():
        added = sum(one.amounts.get(sample, 0) for one in of)
        if added != stored:
            cells = ", ".join(f"sheet {one.table.sheet} {address(*one.at[sample])}" for one in of if one.amounts.get(sample))
            found.append(Disagreement(
                place=grid.place(*line.at[sample]), code="N317",
                message=f"the stored {line.label} is {stored / _SCALE:.6g}, and {cells or 'nothing'} give {added / _SCALE:.6g}, expected them to agree",
                help="narrate uses the counts; look whether a count or the stored number is wrong",
            ))  # fmt: skip
    return found


def _lines(table: Table, grid: Grid) -> list[_Line]:
    """The lines of a table that hold numbers: of a crossed one each column or row, of a list each name."""
    if table.shape != "crossed":
        held = amounts_of(table, grid)
        names = sorted(held.names) if held is not None else []
        return [
            _Line(
                table=table, label=name, is_result=False,
                at={s: cells[name].at[0] for s, cells in held.samples.items() if name in cells},
                amounts={s: round((cells[name].value or 0.0) * _SCALE) for s, cells in held.samples.items() if name in cells},
            )
            for name in names
        ] if held is not None else []  # fmt: skip
    across = table.has_samples_across
    of_samples, of_taxa = (table.columns, table.rows) if across else (table.rows, table.columns)
    samples = [n for n, role in of_samples.items() if role.name == "counts"]
    ids_at = [n for n, role in of_taxa.items() if "sample" in role.names]
    names_at = [n for n, role in of_samples.items() if set(role.names) & set(NAMES) | {"quantity"} & set(role.names)]
    cells, filled = grid.spread(), [n for n, role in of_taxa.items() if role.filled]

    def text(line: int, n: int) -> str:
        cell = cells.get((line, n) if across else (n, line))
        return cell.text if cell is not None else ""

    ids, before = {}, dict[int, str]()
    for n in samples:
        said = {i: text(i, n) or (before.get(i, "") if i in filled else "") for i in ids_at}
        before |= said
        ids[n] = "/".join(filter(None, said.values())).lower()
    found = []
    for line, role in of_taxa.items():
        if role.name not in (*_GIVEN, "total"):
            continue
        amounts: dict[str, int] = {}
        at: dict[str, At] = {}
        for n in (n for n in samples if ids[n]):
            number = amount(text(line, n), table.marks.decimal)
            amounts[ids[n]] = amounts.get(ids[n], 0) + round((number or 0.0) * _SCALE)
            at.setdefault(ids[n], (line, n) if across else (n, line))
        label = " ".join(filter(None, (text(line, n) for n in names_at)))
        if any(amounts.values()):
            found.append(_Line(table=table, label=label, at=at, amounts=amounts, is_result=role.name == "total"))
    return found


def _sums(table: Table, tables: Sequence[Table], lines: Mapping[int, Sequence[_Line]]) -> _Sums:
    """The lines of a table with the lines of others that they add up."""
    own = [line for line in lines[id(table)] if not line.is_result]
    others = [line for other in tables if other is not table and id(other) in lines for line in lines[id(other)]]
    made = _Sums(lines=own)
    ids = {sample for line in own for sample in line.amounts}
    known = {sample for line in others for sample in line.amounts}
    if len(own) < 2 or len(ids) < 3 or len(ids & known) < 0.9 * len(ids):
        return made
    for n, line in enumerate(own):
        if n - len(made.found) > (1 - _ADDS_UP) * len(own):
            break  # too many are sums of nothing
        near = [other for other in others if _words(other.label) & _words(line.label)]
        found = _summed(line, near) or _summed(line, others)
        if found is not None:
            made.found.append((line, *found))
    return made


def _words(label: str) -> set[str]:
    return {word.lower().rstrip("s") for word in re.findall(r"[^\W\d_]{3,}", label)}


def _summed(line: _Line, others: Sequence[_Line]) -> tuple[tuple[_Line, ...], float] | None:
    """The lines whose sum a line is in nearly all samples, and how little chance makes such a one; None for none."""
    samples = [sample for sample in line.amounts]
    best: tuple[tuple[_Line, ...], float] | None = None
    for asked in (samples, samples[::2], samples[1::2]):  # what is wrong in one half is not in the other
        under = [o for o in others if any(o.amounts.get(s) for s in asked) and all(o.amounts.get(s, 0) <= line.amounts[s] for s in asked)]
        of = _made_of(line, under, asked) if 0 < len(under) <= _MOST_LINES else ()
        if not of:
            continue
        agreeing = [s for s in samples if sum(o.amounts.get(s, 0) for o in of) == line.amounts[s]]
        given = [s for s in agreeing if line.amounts[s]]
        bits = sum(math.log2(1 + line.amounts[s] / _SCALE * (1 if line.amounts[s] % _SCALE == 0 else 100)) for s in given)
        bits -= len(under) + 2.0 * (len(samples) - len(agreeing))
        if len(agreeing) >= _ADDS_UP * len(samples) and bits > 0 and (best is None or bits > best[1]):
            best = (of, bits)
        if asked is samples and best is not None:
            break
    return best


def _made_of(line: _Line, under: Sequence[_Line], samples: Sequence[str]) -> tuple[_Line, ...]:
    """The fewest of some lines that add up to a line in all of some samples; none where none do."""
    asked = _number(line, samples)
    first, second = under[: len(under) // 2], under[len(under) // 2 :]
    known: dict[int, int] = {}
    for n, added in enumerate(_all_sums(first, samples)):
        if added not in known or n.bit_count() < known[added].bit_count():
            known[added] = n
    hits = [(known[asked - added], n) for n, added in enumerate(_all_sums(second, samples)) if asked - added in known]
    if not hits:
        return ()
    a, b = min(hits, key=lambda pair: pair[0].bit_count() + pair[1].bit_count())
    return (*(one for k, one in enumerate(first) if a >> k & 1), *(one for k, one in enumerate(second) if b >> k & 1))


def _number(line: _Line, samples: Sequence[str]) -> int:
    """The amounts of a line in some samples as one number, so that sums of lines are sums of numbers."""
    return sum(line.amounts.get(sample, 0) * _BASE**n for n, sample in enumerate(samples))


def _all_sums(lines: Sequence[_Line], samples: Sequence[str]) -> list[int]:
    """What each choice of some lines adds up to; bit k of its place says whether line k is in it."""
    sums = [0]
    for line in lines:
        own = _number(line, samples)
        sums += [one + own for one in sums]
    return sums
