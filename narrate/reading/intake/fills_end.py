"""Where a blank that means 'as before' no longer does: at a new sample, where the sheet writes repeated words out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from narrate.model.grids import Cell
from narrate.model.layouts import Role

_COARSER: Mapping[str, tuple[str, ...]] = {"context": ("feature", "site"), "feature": ("site",)}
"""What each of these lies in, so that none goes on from one of those into the next."""


def ends_of_fill(
    cells: Mapping[tuple[int, int], Cell],
    own: Mapping[tuple[int, int], Cell],
    at: int,
    roles: Mapping[int, Role],
    lines: Sequence[int],
    *,
    is_row: bool,
) -> set[int]:
    """
    The lines at which a blank under a row or column that is filled means nothing.

    cells:  all cells, those that are merged in every place that they cover; own: each where it was written.
    at:     the row or column that is filled; lines: the columns or rows of finds that it speaks of.

    'Late, Late, Early, blank' over four samples: who writes 'Late' twice leaves the last one blank on purpose. And a
    layer is never that of the feature before. Where the head of a group is blank too, the group goes on.
    """
    role = roles[at]
    if "sample" in role.names:
        return set()

    def place(line: int, of: int) -> tuple[int, int]:
        return (line, of) if is_row else (of, line)

    def begins(names: tuple[str, ...]) -> set[int]:
        found: set[int] = set()
        for other, one in roles.items():
            if other == at or not set(names) & set(one.names):
                continue
            texts = [(line, cells[place(line, other)].text) for line in lines if place(line, other) in cells]
            found |= {line for (_, before), (line, text) in pairwise(texts) if text and text != before}
        return found

    new_samples = begins(("sample",))
    written = [own[place(line, at)].text for line in lines if place(line, at) in own and own[place(line, at)].text]
    starts = [line for line in lines if line in new_samples or line == lines[0]]
    at_starts = [cells[place(line, at)].text for line in starts if place(line, at) in cells]
    is_written_out = len(written) > 2 and any(a == b for a, b in pairwise(at_starts) if a) and written == [
        text for line in lines if place(line, at) in cells and (text := cells[place(line, at)].text)
    ]  # fmt: skip
    over = [n for n, one in roles.items() if n != at and one.filled and "sample" not in one.names]
    blank = [{line for line in starts if place(line, n) not in cells} for n in over]
    goes_on = {line for lines_of_group in blank if 10 * len(lines_of_group) > 3 * len(starts) for line in lines_of_group}
    ends = new_samples - goes_on if is_written_out else set()
    for name in role.names:
        ends |= begins(_COARSER.get(name, ()))
    return ends
