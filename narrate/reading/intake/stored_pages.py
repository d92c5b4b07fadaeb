"""Stored totals of samples whose taxa stand in several tables, as on the pages of a listing: over all of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from narrate.reading.intake.stored_formulas import summed_by_formulas
from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, Target, Worked
from narrate.reading.intake.stored_places import cells_said

_OVER_ALL = "all tables"


def with_other_tables(lines: Iterable[Line], own: Ledger, ledgers: Sequence[Ledger]) -> list[Line]:
    """The lines of a crossed table; totals of samples also with what the samples have in other tables of the sheet."""
    others = [
        one for one in ledgers
        if one is not own and one.table.shape == "crossed" and one.table.sheet == own.table.sheet and one.columns
    ]  # fmt: skip
    elsewhere: dict[str, float | None] = {}
    for one in others:
        for at, number in one.count.items():
            id = one.sample_at(at)
            before = elsewhere.get(id, 0.0)
            elsewhere[id] = before + number if before is not None and number is not None else None
    alike = [own, *(one for one in others if one.across == own.across)]
    found = list(lines)
    for line in found:
        if line.is_row != own.across:
            continue
        if taxa := _of_several_tables(line, alike):
            line.why_not = line.why_not or "lines of another table are in it"
            line.targets = [_by_formula(target, line, taxa, alike) for target in line.targets]
        elif elsewhere and line.kind == "total":
            line.targets = [_target(target, own, elsewhere) for target in line.targets]
            line.guesses |= {_OVER_ALL}
    return found


def _of_several_tables(line: Line, ledgers: Sequence[Ledger]) -> list[int]:
    """The lines of taxa that the formulas of a line of results add up, where some stand in other tables; else none."""
    own, *others = ledgers
    taxa = [taxon for one in ledgers for taxon in one.taxon_lines]
    targets = [target.at for target in line.targets]
    lines = summed_by_formulas(own.cells, targets, taxa, in_rows=own.across) if others else []
    return lines if not set(lines) <= set(own.taxon_lines) else []


def _by_formula(target: Target, line: Line, lines: Sequence[int], ledgers: Sequence[Ledger]) -> Target:
    """A total of counts as its formula says; no other result, and none with a sign among its counts, is checked."""
    own = ledgers[0]
    sample = target.at[1] if own.across else target.at[0]
    crosses = own.roles(of_taxa=False).get(sample)
    samples = own.sample_lines if crosses is not None and crosses.name == "total" else [sample]
    cells = [*dict.fromkeys(one.at(t, s) for t in lines for s in samples for one in ledgers if t in one.taxon_lines)]
    numbers = [one.count.get(at, 0.0) for at in cells for one in ledgers]
    is_weighed = any(at in one.mass and at not in one.count for at in cells for one in ledgers)
    if line.kind != "total" or None in numbers or is_weighed or not {*samples} <= {*own.sample_lines}:
        return Target(at=target.at, readings={})
    worked = Worked(value=sum(number or 0.0 for number in numbers), said=f"the counts in {cells_said(cells)}")
    return Target(at=target.at, readings={"by its formulas": worked})


def _target(target: Target, own: Ledger, elsewhere: dict[str, float | None]) -> Target:
    id = own.sample_of_line(target.at[1] if own.across else target.at[0])
    here, other = target.readings.get("all"), elsewhere.get(id)
    if here is None or other is None:
        return target
    worked = Worked(value=here.value + other, said=f"{here.said} with those of {id} in the other tables of the sheet")
    return Target(at=target.at, readings={**target.readings, _OVER_ALL: worked})
