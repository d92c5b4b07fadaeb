"""Stored totals, percentages, densities and ubiquities, worked out again from the counts. Never trusted."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.grids import Cell, Grid, address
from narrate.model.layouts import DERIVED_ROLES, Layout, Table
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.cell_reading import read_cell
from narrate.reading.intake.finds import SheetFinds, mended
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.records_draft import litres
from narrate.reading.intake.signed_totals import bounds_of
from narrate.reading.intake.told import Told

_TOLERANCE = 0.006
"""Half a unit of the last digit that is shown is allowed; this is for numbers that show no digits after the point."""


def check_stored(grid: Grid, table: Table, layout: Layout, finds: SheetFinds, told: Told) -> None:
    """Tells every stored result of a crossed table that the counts do not give."""
    if table.shape != "crossed" or not any(
        role.name in DERIVED_ROLES or role.name == "quantity"
        for role in (*table.rows.values(), *table.columns.values())
    ):
        return
    _Checking(grid, table, layout, finds, told).check()


class _Checking:
    def __init__(self, grid: Grid, table: Table, layout: Layout, finds: SheetFinds, told: Told) -> None:
        self.grid, self.table, self.finds, self.told = grid, table, finds, told
        self.cells = mended(grid, layout)
        rows = [r for r, role in table.rows.items() if role.name == "counts"]
        columns = [c for c, role in table.columns.items() if role.name == "counts" and not self._is_other(c)]
        self.rows, self.columns = rows, columns
        self.value: dict[tuple[int, int], float | None] = {(r, c): self._count(r, c) for r in rows for c in columns}

    def _is_other(self, column: int) -> bool:
        """A column of weights or shares among those of counts."""
        row = next((r for r, role in self.table.rows.items() if role.name == "quantity"), None)
        cell = self.cells.get((row, column)) if row is not None else None
        return cell is not None and quantity(cell.text) in ("mass", "percent", "density")

    def _count(self, row: int, column: int) -> float | None:
        """The number of a cell; 0 for blanks and absence, None for signs that are no numbers."""
        cell = self.cells.get((row, column))
        if cell is None:
            return 0.0
        found = read_cell(cell, self.table.marks).found
        total = 0.0
        if not found:
            return None
        for one in found:
            if one.count is None or one.count.amount == "not looked for":
                continue
            if one.count.amount == "noted as present":
                return None
            total += one.count.number or 0
        return total

    def check(self) -> None:
        for row, role in self.table.rows.items():
            if role.name in DERIVED_ROLES:
                for column in self.columns:
                    self._one(
                        row,
                        column,
                        role.name,
                        [(r, column) for r in self._above(row)],
                        self._label(row, 0),
                        column,
                        is_row=True,
                    )
        for column, role in self.table.columns.items():
            if role.name in DERIVED_ROLES:
                for row in self.rows:
                    self._one(
                        row,
                        column,
                        role.name,
                        [(row, c) for c in self.columns],
                        self._label(0, column),
                        row,
                        is_row=False,
                    )

    def _above(self, row: int) -> list[int]:
        """The rows that a row of totals adds up: since the last section for a subtotal, else all."""
        return self.rows

    def _label(self, row: int, column: int) -> str:
        roles: Mapping[int, object] = self.table.columns if not column else self.table.rows
        for at in sorted(roles):
            cell = self.cells.get((row, at) if not column else (at, column))
            if cell is not None and cell.kind == "text" and not re.fullmatch(r"[\d.,%\s]+", cell.text):
                return cell.text
        return ""

    def _one(
        self, row: int, column: int, kind: str, of: list[tuple[int, int]], label: str, line: int, *, is_row: bool
    ) -> None:
        cell = self.cells.get((row, column))
        if cell is None or not of:
            return
        stored = _stored(cell, self.table.marks.decimal)
        bounds = bounds_of(cell.text, self.table.marks.decimal) if stored is None and cell.kind == "text" else None
        if stored is None and bounds is None:
            return
        values = [self.value.get(at) for at in of]
        if any(value is None for value in values):
            if kind != "ubiquity":
                return
        numbers = [value or 0.0 for value in values]
        worked = self._worked(kind, label, numbers, values, row, column, is_row=is_row)
        if not worked or any(_holds(stored, bounds, one, cell.text) for one in worked):
            return
        ends = f"{address(*of[0])} to {address(*of[-1])}"
        self.told.warning(
            "N317", f"stored {kind} {address(row, column)}", self.grid.place(row, column),
            f"the stored {label or kind} is {cell.text}, and the counts in {ends} give {worked[0]:.6g}, expected "
            "them to agree",
            "narrate uses the counts; look whether a count or the stored number is wrong",
        )  # fmt: skip

    def _worked(
        self,
        kind: str,
        label: str,
        numbers: list[float],
        values: list[float | None],
        row: int,
        column: int,
        *,
        is_row: bool,
    ) -> list[float]:
        """What the stored number may be by the counts; the first is what is told. Empty where nothing can be said."""
        total = sum(numbers)
        present = sum(1 for value in values if value is None or value > 0)
        if kind == "total":
            if _of_some(label):
                return []
            sums = [total]
            if is_row:
                part = self._section_sum(row, column)
                sums = [part, total] if re.search(r"sub", label, re.IGNORECASE) else [total, part]
                if re.search(r"tax|species|types", label, re.IGNORECASE):
                    sums = [float(present)]
            elif re.search(r"sample", label, re.IGNORECASE):
                sums = [float(present)]
            else:
                sums.append(self._group_sum(row, column))
            return sums
        along_samples = is_row != self.table.has_samples_across
        has_pairs = any(role.name == "quantity" for role in self.table.rows.values())
        if (kind in ("ubiquity", "percent") and not along_samples) or (kind == "ubiquity" and has_pairs):
            return []
        if kind == "ubiquity":
            share = 100 * present / len(values) if values else 0.0
            return [share, float(present), share / 100]
        if kind == "percent":
            beside = max((c for c in self.columns if c < column), default=None)
            if not is_row and beside is not None and any(role.name == "quantity" for role in self.table.rows.values()):
                of_sample = sum(self.value.get((r, beside)) or 0.0 for r in self.rows)
                own = self.value.get((row, beside)) or 0.0
                return [100 * own / of_sample, own / of_sample] if of_sample else []
            whole = sum(v or 0.0 for v in self.value.values())
            return [100 * total / whole, total / whole] if whole else []
        if kind == "density" and is_row:
            return [total / volume for volume in [self._litres(column)] if volume]
        if kind == "density" and not is_row:
            volume = sum(self._litres(c) or 0.0 for c in self.columns)
            sample_volume = self._litres_of_line(row)
            return [total / v for v in (sample_volume, volume) if v]
        return []

    def _section_sum(self, row: int, column: int) -> float:
        """The sum of the counts since the section head or subtotal before."""
        total = 0.0
        for r in range(row - 1, min(self.table.rows) - 1, -1):
            role = self.table.rows.get(r)
            if role is None or role.name in ("section", *DERIVED_ROLES):
                if role is not None:
                    break
                continue
            if role.name == "counts":
                total += self.value.get((r, column)) or 0.0
        return total

    def _group_sum(self, row: int, column: int) -> float:
        """The sum of the counts to the left, back to the total before."""
        total = 0.0
        for c in range(column - 1, min(self.table.columns) - 1, -1):
            role = self.table.columns.get(c)
            if role is None or role.name != "counts":
                break
            total += self.value.get((row, c)) or 0.0
        return total

    def _litres(self, column: int) -> float | None:
        for r, role in self.table.rows.items():
            if "volume" in role.names:
                cell = self.cells.get((r, column))
                return (
                    litres(cell.text, role.qualifiers[0] if role.qualifiers else "l", self.table.marks.decimal)
                    if cell
                    else None
                )
        return None

    def _litres_of_line(self, row: int) -> float | None:
        for c, role in self.table.columns.items():
            if "volume" in role.names:
                cell = self.cells.get((row, c))
                return (
                    litres(cell.text, role.qualifiers[0] if role.qualifiers else "l", self.table.marks.decimal)
                    if cell
                    else None
                )
        return None


def _of_some(label: str) -> bool:
    """True for a total of some of the taxa, such as 'Total cereals'; which they are the sheet does not say."""
    words = re.sub(r"[^a-z ]", " ", label.lower()).split()
    return any(word not in _PLAIN_WORDS for word in words)


_PLAIN_WORDS = frozenset(
    (
        "all charred column count counts finds for grand items n nisp no number of overall plant "
        "quantity remains row sample samples seeds somme species specimens sub subtotal sum summe sums "
        "taxa the tot total totals types"
    ).split()
)
"""Words that may stand in the label of a total of everything."""


def _stored(cell: Cell | None, decimal: str) -> float | None:
    if cell is None or cell.kind in ("date", "fault", "no result", "truth"):
        return None
    if cell.number is not None:
        return cell.number * (100 if cell.text.endswith("%") else 1)
    return number_of(cell.text.rstrip("% "), decimal)


def _holds(stored: float | None, bounds: tuple[float, float] | None, worked: float, text: str) -> bool:
    if bounds is not None:
        return bounds[0] <= worked <= bounds[1]
    return stored is not None and _agree(stored, worked, text)


def _agree(stored: float, worked: float, text: str) -> bool:
    """Whether two numbers are the same within half a unit of the last digit that is shown."""
    decimals = re.search(r"[.,](\d+)", text)
    step = 10.0 ** -len(decimals[1]) if decimals else 1.0
    allowed = 0.5 * step + 1e-9 if decimals or abs(worked - round(worked)) > 1e-9 else _TOLERANCE
    return abs(stored - worked) <= allowed
