"""Stored totals, percentages, densities and ubiquities, worked out again from the counts. Never trusted."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from narrate.model.grids import Cell, Grid
from narrate.model.layouts import DERIVED_ROLES, Layout, Table
from narrate.model.sampling import Sample
from narrate.reading.intake.mending import mended
from narrate.reading.intake.said import Said
from narrate.reading.intake.sheet_finds import SheetFinds
from narrate.reading.intake.stored_again import SecondTable
from narrate.reading.intake.stored_blocks import with_names_again
from narrate.reading.intake.stored_crossed import CrossedLines
from narrate.reading.intake.stored_ledger import Ledger, shares_sorted, soil
from narrate.reading.intake.stored_lines import Line, fits, joint_reading, named, tell_line
from narrate.reading.intake.stored_long import LongLines
from narrate.reading.intake.stored_numbers_alone import with_numbers_alone
from narrate.reading.intake.stored_pages import with_other_tables
from narrate.reading.intake.stored_places import At
from narrate.reading.intake.stored_soil import soil_lines
from narrate.reading.intake.told import Told
from narrate.reading.intake.written_names import NameReader


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadTable:
    """A table of a file and what was read in it."""

    grid: Grid
    table: Table
    finds: SheetFinds


def check_stored(
    tables: Sequence[ReadTable], layout: Layout, names: NameReader, told: Told, samples: Mapping[str, Sample]
) -> None:
    """Tells every stored result that the counts do not give; what is not worked out again is noted in the finds."""
    if not any(_has_results(one.table) for one in tables):
        return
    ledgers = [Ledger(one.grid, one.table, one.finds, mended(one.grid, layout)) for one in tables]
    facts: list[Mapping[str, Mapping[str, list[Said]]]] = [one.finds.facts for one in tables]
    litres, shares = soil(facts, samples), shares_sorted(facts)

    def crossed(own: Ledger) -> CrossedLines:
        return CrossedLines(own, names, litres, shares, len(samples))

    def lines_of(own: Ledger, others: Sequence[Ledger]) -> Iterable[Line]:
        if own.table.shape == "crossed" and not own.columns:
            return SecondTable(own, [other for other in others if other is not own], litres).lines()
        if own.table.shape == "crossed":
            lines = with_other_tables(crossed(own).lines(), own, others)
            return with_names_again(lines, own, others, lambda one: crossed(one).totals_of_samples())
        return LongLines(own, others, names, litres, shares).lines()

    with_results = [ledger for ledger in ledgers if _has_results(ledger.table)]
    worked = [(ledger, with_numbers_alone(ledger, ledgers, lines_of)) for ledger in with_results]
    joint = _joint_readings(worked)
    for ledger, lines in worked:
        for line in lines:
            said = joint.get(_sister_key(ledger, line), "")
            if said and not ledger.table.about and not fits(line, said, ledger.cells, ledger.table.marks.decimal):
                said = ""  # what other samples of a list leave out makes no total of this one wrong
            why = tell_line(line, ledger.grid, ledger.cells, ledger.table.marks.decimal, told, said)
            if why:
                ledger.finds.not_checked[named(line)] = why
        for line in soil_lines(ledger, ledgers):
            tell_line(line, ledger.grid, ledger.cells, ledger.table.marks.decimal, told)


def _sister_key(ledger: Ledger, line: Line) -> tuple[str, str, bool, int]:
    """What the same line has alike in all forms of one kind, or in all samples of a list."""
    if not ledger.table.about and line.is_row:
        names = [c for c, role in ledger.table.columns.items() if {"taxon", "genus", "part"} & set(role.names)]
        texts = (cell.text for c in names if (cell := ledger.cells.get((line.at, c))) is not None)
        return ("/".join(texts).lower(), line.kind, True, id(ledger))
    return (line.label.lower(), line.kind, line.is_row, -1 if line.is_row else line.at)


def _joint_readings(worked: Sequence[tuple[Ledger, list[Line]]]) -> dict[tuple[str, str, bool, int], str]:
    """Line of forms, or of samples of a list -> the reading that most agree with: each alone has one total."""
    sisters: dict[tuple[str, str, bool, int], list[tuple[Line, Mapping[At, Cell], str]]] = {}
    for ledger, lines in worked:
        if ledger.table.shape != "long":
            continue
        for line in lines if ledger.table.about else [line for line in lines if line.is_row]:
            known = sisters.setdefault(_sister_key(ledger, line), [])
            known.append((line, ledger.cells, ledger.table.marks.decimal))
    return {key: joint_reading(lines) for key, lines in sisters.items() if len(lines) > 2}


def _has_results(table: Table) -> bool:
    return any(role.name in (*DERIVED_ROLES, "quantity") for role in (*table.rows.values(), *table.columns.values()))
