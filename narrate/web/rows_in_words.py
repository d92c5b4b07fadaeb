"""Rows of count sheets in short: what one says of its plant, and the numbers of many."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.counts import CountRow


def row_text(row: CountRow) -> str:
    """What a row says of its plant: part, count as written, and what is out of the ordinary."""
    parts = [row.part, row.count.written or "not counted"]
    if row.mass_g is not None:
        parts.append(f"{row.mass_g:g} g")
    parts += [word for word, usual in ((row.condition, "charred"), (row.completeness, "whole")) if word != usual]
    if row.size_class:
        parts.append(row.size_class)
    return ", ".join(parts)


def line_ranges(lines: Iterable[str]) -> str:
    """
    Numbers in short.

    >>> line_ranges(["12", "13", "14", "18"]), line_ranges(["3", "4"]), line_ranges(["H4", ""])
    ('12–14, 18', '3, 4', 'H4')
    """
    runs: list[list[str]] = []
    for line in filter(None, lines):
        if runs and line.isdecimal() and runs[-1][-1].isdecimal() and int(line) == int(runs[-1][-1]) + 1:
            runs[-1].append(line)
        else:
            runs.append([line])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)
