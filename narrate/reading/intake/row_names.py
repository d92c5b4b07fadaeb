"""Tables as statistical programs write them: names of the rows without a head over them, cells parted by one blank."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Sequence

_LEAST_LINES = 3
_LEAST_CELLS = 3


def is_parted_by_blanks(text: str) -> bool:
    """
    Whether single blanks part the cells, with words in quotation marks: the same number of cells in each line.

    >>> is_parted_by_blanks('"sample" "taxon" "n"\\n"1" "S1" "Zea mays" 4\\n"2" "S1" "Iva annua" 1\\n')
    True
    >>> is_parted_by_blanks("Maize kernels 4\\nWild beans 2\\nOak wood 1\\nOak bark 1\\n")
    False
    """
    lines = [line for line in text[:200_000].splitlines() if line.strip()]
    lines = lines[:-1] if len(text) > 200_000 else lines
    if len(lines) < _LEAST_LINES or not all(re.match(r'"[^"]*"(?: |$)', line) for line in lines[:200]):
        return False
    try:
        widths = {len(cells) for cells in csv.reader(io.StringIO("\n".join(lines[1:])), delimiter=" ", strict=True)}
        head = len(next(csv.reader([lines[0]], delimiter=" ", strict=True)))
    except csv.Error:
        return False
    return len(widths) == 1 and min(widths) >= _LEAST_CELLS and widths & {head, head + 1} == widths


def has_unheaded_row_names(rows: Sequence[Sequence[str]]) -> bool:
    """
    Whether the first line has one cell less than all others, and these begin with names of their own.

    >>> has_unheaded_row_names([["sample", "n"], ["1", "S1", "4"], ["2", "S1", "1"], ["7", "S2", "3"]])
    True
    >>> has_unheaded_row_names([["sample", "n"], ["S1", "4", "worn"], ["S1", "1", "worn"], ["S2", "3", "worn"]])
    False
    """
    lines = [row for row in rows if any(cell.strip() for cell in row)]
    if len(lines) <= _LEAST_LINES:
        return False
    head, *others = lines
    names = [row[0].strip() for row in others]
    return (
        head is rows[0]
        and all(len(row) == len(head) + 1 for row in others)
        and all(cell.strip() for cell in head)
        and not any(re.fullmatch(r"[\d.,+-]+", cell.strip()) for cell in head)
        and all(names) and len(set(names)) == len(names)
        and all(row[-1].strip() for row in others)
    )  # fmt: skip
