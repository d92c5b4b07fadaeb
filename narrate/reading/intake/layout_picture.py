"""The sheet as a picture in letters, with the role of each row and column beside it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from narrate.model.grids import Grid, column_name
from narrate.model.layouts import Role, Table

_MOST_COLUMNS = 9
_WIDTH = 13


def picture(grid: Grid, table: Table, not_checked: Mapping[str, str] | None = None) -> str:
    """
    A table as it was understood.

    Long runs of rows and columns of one role are drawn by their first ones and one line of dots.

    not_checked:  rows and columns of stored results that were not worked out again, and why.
    """
    columns = _shown(table.columns, 3, 2)
    rows = _shown(table.rows, 4, 2)
    heads = ["" if c is None else column_name(c) for c in columns]
    roles = ["…" if c is None else str(table.columns[c]) for c in columns]
    lines = [_line("", "", heads), _line("", "role", roles, width=_WIDTH)]
    lines.append("-" * len(lines[-1]))
    for row in rows:
        if row is None:
            lines.append(_line("…", "", ["…" if c is not None else "" for c in columns]))
            continue
        texts = ["…" if c is None else grid.text(row, c) for c in columns]
        lines.append(_line(str(row + 1), str(table.rows[row]), texts))
    title = f"sheet {grid.sheet}" if grid.sheet else grid.path
    unsure = [f"not checked: {line}: {why}" for line, why in (not_checked or {}).items()]
    return "\n".join([f"{title}: {_words(table)}", *lines, *unsure])


def _words(table: Table) -> str:
    if table.shape == "crossed":
        across = table.has_samples_across
        return "taxa are rows, samples are columns" if across else "samples are rows, taxa are columns"
    return {"long": "one row for each find", "records": "one row for each sample, no finds"}[table.shape]


def _line(number: str, role: str, texts: Iterable[str], width: int = _WIDTH) -> str:
    cells = "  ".join(_fit(text, width) for text in texts)
    return f"{number:>5} {_fit(role, 18)}| {cells}".rstrip()


def _fit(text: str, width: int) -> str:
    return text.ljust(width) if len(text) <= width else text[: width - 1] + "…"


def _shown(roles: Mapping[int, Role], first: int, last: int) -> list[int | None]:
    """The numbers to draw; None stands for a run that is left out."""
    ordered = sorted(roles)
    found: list[int | None] = []
    start = 0
    while start < len(ordered):
        end = start
        while end + 1 < len(ordered) and roles[ordered[end + 1]].name == roles[ordered[start]].name:
            end += 1
        run = ordered[start : end + 1]
        found += run if len(run) <= first + last + 1 else [*run[:first], None, *run[-last:]]
        start = end + 1
    return found
