"""What stands in a cell that a place names, with the words that head its row and column, in one line."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from narrate.model.grids import Grid
from narrate.problems import Place, ProblemList
from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.grids import grids_of_file

_MOST_WORDS = 3


def cell_row(root: Path, place: Place) -> str:
    """Such as 'Zea mays | kernel | S4: 12'; empty where the file has gone away in the meantime."""
    file = root / place.path
    try:
        state = file.stat()
    except OSError:
        return ""
    for grid in _grids(file, place.path, state.st_mtime_ns, state.st_size):
        if grid.sheet == place.sheet:
            return _written(grid, place.line - 1, place.column - 1)
    return ""


@lru_cache(maxsize=8)
def _grids(file: Path, path: str, changed: int, size: int) -> tuple[Grid, ...]:
    return grids_of_file(file, path, ProblemList())


def _written(grid: Grid, line: int, column: int) -> str:
    row = grid.lines.index(line + 1) if grid.lines and line + 1 in grid.lines else line
    cells = grid.spread()
    before = [
        cells[row, c].text for c in range(column) if (row, c) in cells and not looks_like_amount(cells[row, c].text)
    ]
    above = [cells[r, column].text for r in range(row) if (r, column) in cells]
    words = [*dict.fromkeys(before[:_MOST_WORDS]), *dict.fromkeys(above[:_MOST_WORDS])]
    return f"{' | '.join(words)}: {grid.text(row, column)}" if words else grid.text(row, column)
