"""Which lines a stored total adds up by its numbers alone, where no word says it: samples of a pit, all but what is doubtful."""

# ruff: noqa: E501

from __future__ import annotations

from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, read_stored
from narrate.reading.intake.sums_by_numbers import sums_among


def summed_by(ledger: Ledger, line: Line, *, of_taxa: bool) -> list[int]:
    """
    The lines of counts whose sum a total nearly always is; none where chance may have made it so.

    of_taxa:  the total stands among the taxa, and adds them up; else among the samples.
    """
    lines = ledger.taxon_lines if of_taxa else ledger.sample_lines
    cross = ledger.sample_lines if of_taxa else ledger.taxon_lines
    at = (lambda n, o: ledger.at(n, o)) if of_taxa else (lambda n, o: ledger.at(o, n))

    def amount(n: int, o: int) -> float | None:
        cell = at(n, o)
        return ledger.mass[cell] if ledger.mass.get(cell) and not ledger.count.get(cell) else ledger.count.get(cell, 0.0)

    amounts = {n: [amount(n, o) for o in cross] for n in lines}
    stored = (read_stored(ledger.cells.get(at(line.at, o)), ledger.table.marks.decimal) for o in cross)
    amounts[line.at] = [0.0 if one is None else one.number for one in stored]
    kinds = {n: ledger.small_heading(n) if ledger.across != of_taxa else "" for n in amounts}
    alike = sorted(n for n in amounts if kinds[n] == kinds[line.at] or n == line.at)
    roles = ledger.roles(of_taxa=of_taxa)
    ends = frozenset(n for n in alike if n - 1 in roles and roles[n - 1].name not in ("counts", "count", "mass"))
    found = sums_among(alike, amounts, ends=ends, of=line.at, least=_LEAST)
    return next((list(one.of) for one in found), [])


_LEAST = 4.0
"""Bits from which the numbers of a line that is a total say what it adds up (judgement): most cells must agree besides."""
