"""The scale of what was sorted: whether the numbers of a row or column are percent or shares of one."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import PERCENT, PERCENT_OR_SHARE, SHARE, SHARE_OR_PERCENT, Role, Table
from narrate.reading.intake.left_over import lines_named
from narrate.reading.intake.volumes_drafted import plain_or_comma

# Common practice, no source: words for percent and for shares in heads.
_OF_PERCENT = re.compile(r"%|\bp(?:er)?\.?c(?:en)?t|prozent|pour ?cent|por ?ciento|per ?cento|procent", re.IGNORECASE)
_OF_SHARES = re.compile(
    r"fraction|proportion|\bshare|\bportion|\banteil|\bpart\b|split|fracci[oó]n|proporci[oó]n|proportie|frazione|proporzione|ułamek",
    re.IGNORECASE,
)


def with_scales_of_shares(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Tells rows and columns of what was sorted whose numbers gainsay the scale of their head, and marks them so."""
    for n, table in enumerate(tables):
        grid = grids.get(table.sheet)
        if grid is None:
            continue
        rows, columns = dict(table.rows), dict(table.columns)
        for roles, others, what in ((rows, columns, "row"), (columns, rows, "column")):
            for at, role in roles.items():
                if role.name == "sorted" and not role.qualifiers:
                    roles[at] = _with_scale(role, _texts(grid, at, others, what), lines_named(what, [at]), doubts)
        tables[n] = replace(table, rows=rows, columns=columns)


def _texts(grid: Grid, at: int, others: Mapping[int, Role], what: str) -> list[str]:
    places = ((at, n) if what == "row" else (n, at) for n in sorted(others))
    return [grid.cells[place].text for place in places if place in grid.cells]


def _with_scale(role: Role, texts: list[str], where: str, doubts: list[str]) -> Role:
    head = next((text for text in texts if re.search(r"[^\W\d_]{2}", text)), "")
    found = [number for text in texts if (number := plain_or_comma(text, ".")) is not None and number > 0]
    scale = scale_of(head, found)
    if scale:
        odd = next(n for n in found if (n <= 1) == (scale == PERCENT_OR_SHARE) and n != 100)
        doubts.append(
            f"DOUBTFUL: {where} ('{head}') gives what was sorted, and {odd:g} in it may be percent or a share of one; "
            f"such numbers are not taken: write 'sorted, {PERCENT}' or 'sorted, {SHARE}' for it in the layout"
        )
    return replace(role, qualifiers=(scale,)) if scale else role


def scale_of(head: str, numbers: list[float]) -> str:
    """
    The scales that numbers under a head leave open; empty where they leave nothing open.

    >>> scale_of("% sorted", [50, 25, 100]), scale_of("% sorted", [0.25, 50]), scale_of("Fraction sorted", [12.5, 100])
    ('', '% or share', 'share or %')
    >>> scale_of("Fraction sorted", [0.5, 1]), scale_of("Sorted", [0.5, 1]), scale_of("Sorted", [50, 100])
    ('', '', '')
    >>> scale_of("Sorted", [4, 8]), scale_of("% sorted", [100, 100])
    ('share or %', '')
    """
    plain = [number for number in numbers if number != 100]
    if not plain:
        return ""
    small, large = [n for n in plain if n <= 1], [n for n in plain if n > 1]
    if _OF_PERCENT.search(head):
        return PERCENT_OR_SHARE if small else ""
    if _OF_SHARES.search(head):
        return SHARE_OR_PERCENT if large else ""
    if small and (large or 100 in numbers) and any(n < 1 for n in small):
        return PERCENT_OR_SHARE
    return SHARE_OR_PERCENT if large and max(large) < 20 else ""
