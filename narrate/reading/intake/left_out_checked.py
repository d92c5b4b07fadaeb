"""Lines of numbers that a layout leaves out because nobody knew what they are: told whenever the sheet is read."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.grids import Grid
from narrate.model.layouts import Layout
from narrate.problems import ProblemList
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.left_over import lines_named, lines_unknown
from narrate.reading.intake.written_names import NameReader


def tell_left_out(grids: Iterable[Grid], layout: Layout, names: NameReader, problems: ProblemList) -> None:
    """Warns of rows and columns that hold numbers under the counts and have a reason of intake's beside 'ignored'."""
    by_sheet = {grid.sheet: grid for grid in grids}
    for table in layout.tables:
        grid = by_sheet.get(table.sheet)
        ignored = [role for role in (*table.rows.values(), *table.columns.values()) if role.name == "ignored"]
        if grid is None or not any(role.qualifiers for role in ignored):
            continue
        found, _ = lines_unknown(Look.of(grid, names, frozenset(table.marks.key)), [table])
        for (what, reason), lines in found.items():
            first = lines[0][0]
            at = (first, min(table.columns, default=0)) if what == "row" else (min(table.rows, default=0), first)
            words = ", ".join(f"'{label[:30]}'" for _, label in lines[:6] if label) or "no heading"
            said = f"{lines_named(what, [n for n, _ in lines])} ({words})"
            problems.warning(
                grid.place(*at), "N315",
                f"{said} {'hold' if len(lines) > 1 else 'holds'} numbers and "
                f"{'are' if len(lines) > 1 else 'is'} left out: {reason}, expected a role in the layout",
                help="say in the layout what it is, such as counts; write 'ignored' alone there if it is no find",
            )  # fmt: skip
