"""The cells of a sheet as they were meant: merged ones everywhere they cover, mended ones as the layout says."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.grids import Cell, Grid, column_number
from narrate.model.layouts import Layout


def mended(grid: Grid, layout: Layout) -> Mapping[tuple[int, int], Cell]:
    """The cells, merged ones everywhere they cover, with what the layout says was really typed."""
    cells = grid.spread()
    if not layout.mend:
        return cells
    found = dict(cells)
    for where, text in layout.mend.items():
        sheet, mark, cell = where.rpartition("!")
        match = re.fullmatch(r"\$?([A-Za-z]{1,3})\$?(\d{1,7})", cell)
        if match is None or (mark and sheet.strip("'") != grid.sheet):
            continue
        at = _at(match)
        if text.strip():
            found[at] = Cell(" ".join(text.split()))
        else:
            found.pop(at, None)
    return found


def _at(match: re.Match[str]) -> tuple[int, int]:
    return int(match[2]) - 1, column_number(match[1])
