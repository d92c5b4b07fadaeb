"""Where a sheet of a workbook ends: programs write a million rows that hold a border or a colour, and nothing else."""

from __future__ import annotations

import re

FEW_ROWS = 1_000
"""So many empty rows behind the last value are simply read."""
_VALUES = (b"<v>", b"<v ", b"<is>", b"<is ", b"<f>", b"<f ", b"<f/")
_ROW = re.compile(rb"<row\b([^>]*)>")
_NUMBER = re.compile(rb'\br="(\d{1,7})"')


def last_row(xml: bytes) -> int | None:
    """
    The number of the last row that holds a value or a formula, 0 for none; None where all of the sheet must be read.

    All is read where few rows follow, and where the part is cut short, gives names of another kind, or leaves the
    numbers of rows out: a fault is then found by whoever reads it.

    >>> rows = b'<row r="1"><c r="A1"><v>3</v></c></row>' + b"".join(b'<row r="%d"/>' % n for n in range(2, 2000))
    >>> last_row(b"<worksheet><sheetData>" + rows + b"</sheetData></worksheet>"), last_row(b"<worksheet>" + rows)
    (1, None)
    """
    if re.search(rb"<\w+:row\b", xml[:200_000]) or not xml.rstrip().endswith(b"</worksheet>"):
        return None
    end = max(xml.rfind(value) for value in _VALUES)
    if xml.count(b"<row", max(end, 0)) <= FEW_ROWS:
        return None
    if end < 0:
        return 0
    rows = _ROW.findall(xml, 0, end)
    numbers = [match for row in rows if (match := _NUMBER.search(row))]
    if len(numbers) < len(rows):
        return None
    return max((int(match[1]) for match in numbers), default=0)
