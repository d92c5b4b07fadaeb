"""A table of a package: its fields with type, unit and term, its rows and keys."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass

from narrate.files import cell_text

DWC = "http://rs.tdwg.org/dwc/terms/"


@dataclass(frozen=True, slots=True, kw_only=True)
class PackageField:
    name: str
    type: str = "string"
    """string, number, integer or boolean of Table Schema."""
    about: str = ""
    unit: str = ""
    term: str = ""
    """Name of the Darwin Core term that it fits."""
    is_needed: bool = False
    values: tuple[str, ...] = ()
    """All that may stand in it; empty: anything of its type."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PackageTable:
    name: str
    about: str
    fields: tuple[PackageField, ...]
    rows: tuple[Sequence[object], ...]
    key: tuple[str, ...] = ()
    """Fields that tell its rows apart."""
    refers: tuple[tuple[str, str, str], ...] = ()
    """Foreign keys: field, table, field there."""

    def text(self) -> str:
        """CSV; an empty cell is a missing value; text that a spreadsheet would calculate gets an apostrophe before it."""
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow([field.name for field in self.fields])
        for row in self.rows:
            writer.writerow([_cell(value) for value in row])
        return out.getvalue()


def _cell(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    return repr(value) if isinstance(value, float) else cell_text(str(value))
