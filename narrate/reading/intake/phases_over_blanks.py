"""Blanks beside phases and dates: they go on from the one before only where each group has its phase written once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

from narrate.model.grids import Cell, Grid
from narrate.model.layouts import Role, Table

_Cells = Mapping[tuple[int, int], Cell]


def phases_over_blanks(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Leaves the fill of phases out where no groups show, and tells it where they do. Merged cells are no blanks."""
    for n, table in enumerate(tables):
        cells = grids[table.sheet].spread()
        for name, others in (("rows", table.columns), ("columns", table.rows)):
            roles: dict[int, Role] = {**getattr(tables[n], name)}
            lines = [at for at, one in sorted(others.items()) if one.name in ("counts", "count", "finds")]
            filled = [at for at, one in roles.items() if one.filled and one.names == ("phase",)]
            for at in filled:
                starts = _starts(cells, roles, lines, is_row=name == "rows")
                texts = _texts(cells, at, starts, is_row=name == "rows")
                if all(texts) or not any(texts):
                    continue
                if _are_groups(texts) or _goes_on_beside(cells, roles, at, starts, is_row=name == "rows"):
                    blanks = sum(not text for text in texts)
                    words = ", ".join(dict.fromkeys(filter(None, texts)))
                    doubts.append(
                        f"DOUBTFUL: a phase or date ({words[:60]}) is written once over several samples, and {blanks} "
                        "blank ones are taken as of the one before: leave 'filled' out of its role if they have no date"
                    )
                else:
                    roles[at] = replace(roles[at], filled=False)
            tables[n] = replace(tables[n], rows=roles) if name == "rows" else replace(tables[n], columns=roles)


def _texts(cells: _Cells, at: int, lines: list[int], *, is_row: bool) -> list[str]:
    places = ((at, line) if is_row else (line, at) for line in lines)
    return [cells[place].text if place in cells else "" for place in places]


def _starts(cells: _Cells, roles: Mapping[int, Role], lines: list[int], *, is_row: bool) -> list[int]:
    """The lines at which a sample begins; all of them where none is named."""
    ids = [_texts(cells, at, lines, is_row=is_row) for at, one in roles.items() if "sample" in one.names]
    named = list(zip(lines, zip(*ids, strict=True), strict=True)) if ids else []
    given = [(line, id) for line, id in named if any(id)]
    return [line for n, (line, id) in enumerate(given) if n == 0 or id != given[n - 1][1]] or lines


def _are_groups(texts: list[str]) -> bool:
    """Whether at least two phases are written, the first at the start, and none of them twice side by side."""
    written = [text for text in texts if text]
    is_again = any(a == b != "" for a, b in pairwise(texts))
    return bool(texts[0]) and len(written) >= 2 and len(set(written)) >= 2 and not is_again


def _goes_on_beside(cells: _Cells, roles: Mapping[int, Role], at: int, starts: list[int], *, is_row: bool) -> bool:
    """Whether the head of a group is blank wherever the phase is: 'Feature 1' written once as well."""
    blank = {line for line, text in zip(starts, _texts(cells, at, starts, is_row=is_row), strict=True) if not text}
    for other, one in roles.items():
        if other != at and one.filled and "sample" not in one.names:
            beside = _texts(cells, other, starts, is_row=is_row)
            if blank <= {line for line, text in zip(starts, beside, strict=True) if not text}:
                return True
    return False
