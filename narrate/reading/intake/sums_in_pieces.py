"""Sums over cells such as '5 (2)' and '12+3f': of the whole items in them, of the pieces, or of both together."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from narrate.reading.intake.amounts_in_pieces import Pieced
from narrate.reading.intake.sums_by_numbers import Summed
from narrate.reading.intake.sums_held import Amounts
from narrate.reading.intake.sums_of_lines import Lines, found_in, said_of

_LEAST_PIECED = 3
"""Cells that must tell whole items from pieces before sums are tried over either (judgement)."""


def found_in_pieces(lines: Lines, cells: Mapping[int, Sequence[Pieced | None]]) -> list[tuple[Summed, str]]:
    """
    The lines of plain numbers that add up the whole items, the pieces or both of others, with what is told of each.

    cells:  of each line, as many as it has amounts; None for those that tell no pieces.
    """
    apart = {line for line, own in cells.items() if any(own)}
    if sum(one is not None for own in cells.values() for one in own) < _LEAST_PIECED:
        return []
    found: dict[int, tuple[Summed, str]] = {}
    for line in [line for line in lines.lines if line not in apart]:
        for what in ("whole items", "pieces", "items, whole and in pieces,"):
            left = [other for other in lines.lines if other not in found]
            amounts = {other: _of(what, lines.amounts[other], cells[other], other == line) for other in left}
            tried = replace(lines, lines=left, amounts=amounts)
            for one in found_in(tried, of=line):
                if line not in found or one.bits > found[line][0].bits:
                    found[line] = (one, said_of(one, tried, of_what=what))
    return list(found.values())


def _of(what: str, amounts: Amounts, cells: Sequence[Pieced | None], is_sum: bool) -> Amounts:
    """The numbers of a line that is added, or those of the line that may be the sum, as they are."""
    if is_sum:
        return amounts
    if what == "pieces":
        return [one.pieces if one is not None else 0.0 for one in cells]
    both = what != "whole items"
    return [
        number if one is None else one.whole + one.pieces if both else one.whole
        for number, one in zip(amounts, cells, strict=True)
    ]
