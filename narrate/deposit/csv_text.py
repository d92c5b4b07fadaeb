"""Tables as CSV text that a spreadsheet opens safely."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable, Sequence

from narrate.files import cell_text

Row = Sequence[object]
Table = tuple[Sequence[str], Iterable[Row]]
"""Names of columns, and rows."""


def csv_text(columns: Sequence[str], rows: Iterable[Row]) -> str:
    """One line a row; nothing is blank but what has no value."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(columns)
    for row in rows:
        writer.writerow([_cell(value) for value in row])
    return out.getvalue()


_AS: tuple[tuple[type, Callable[..., str]], ...] = (
    (bool, lambda value: "yes" if value else "no"),
    (float, lambda value: f"{value:.6g}"),
    (int, str),
)


def _cell(value: object) -> str:
    if value is None:
        return ""
    for kind, written in _AS:
        if isinstance(value, kind):
            return written(value)
    return cell_text(str(value))
