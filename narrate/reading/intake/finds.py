"""A sheet read by its layout: every cell of counts with its sample, its name and all else that rows and columns say."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property

from narrate.model.grids import Cell, Grid, address, at_of
from narrate.model.layouts import Layout, Table
from narrate.problems import Place
from narrate.reading.intake.cell_marks import SIGNS, Reading
from narrate.reading.intake.cell_masses import read_mass
from narrate.reading.intake.cell_reading import read_cell
from narrate.reading.intake.lists_of_presence import of_listed
from narrate.reading.intake.merged_counts import merged_counts, written
from narrate.reading.intake.not_plants import says_nothing_found
from narrate.reading.intake.pending import blanks_of_pending
from narrate.reading.intake.pieces_of_finds import weights_of_pieces
from narrate.reading.intake.presence_said import instead_of_blank, of_presence
from narrate.reading.intake.printed_forms import is_printed_form
from narrate.reading.intake.said import Line
from narrate.reading.intake.sheet_finds import SheetFinds
from narrate.reading.intake.standing_finds import Named, Standing, StandingFinds
from narrate.reading.intake.sterile_drafted import keep_nothing_found
from narrate.reading.intake.tallies import tally_texts
from narrate.reading.intake.thousands import has_decimals
from narrate.reading.intake.told import Told
from narrate.reading.intake.volumes_of_finds import read_volume
from narrate.reading.intake.written_names import NameReader

_NO_FINDS = ("", "0", "0.0", "-", "–", "NA", "N/A", "NULL")
"""Amounts beside 'No plant remains'."""
_SHARE = re.compile(r"[<>~≈]?\s*(?:ca?\.\s*)?\d{1,3}(?:[.,]\d+)?\s*%")


def read_finds(grid: Grid, table: Table, layout: Layout, names: NameReader, told: Told) -> SheetFinds:
    """All finds of a table, in the order of its rows. What cannot be read is told."""
    return _Reader(grid, table, layout, names, told).read()


class _Reader(StandingFinds):
    @cached_property
    def _readings(self) -> dict[tuple[object, ...], Reading]:
        return {}

    def read(self) -> SheetFinds:
        table = self.table
        self.is_tallied = bool(tally_texts(self.grid))
        amounts = (r for r, role in table.rows.items() if role.name in ("counts", "finds"))
        self.has_decimals = has_decimals(self._texts_of_counts(amounts))
        rows = [r for r, role in table.rows.items() if role.name in ("counts", "finds")]
        columns = [c for c, role in table.columns.items() if role.name in ("counts", "count", "mass")]
        by_row = self._lines(rows, table.columns, is_row=True)
        by_column = self._lines(columns, table.rows, is_row=False)
        if table.shape == "records":
            self._section_lines(rows, by_row, table.rows, is_row=True)
            for row in rows:
                self._facts(by_row[row], "")
            return self.out
        self._section_lines(rows, by_row, table.rows, is_row=True)
        self._section_lines(columns, by_column, table.columns, is_row=False)
        self._tell_not_plants()
        taxon_in_rows = any(set(r.names) & {"taxon", "genus", "code", "common name"} for r in table.columns.values())
        name_lines = by_row if taxon_in_rows else by_column
        names = self._names(name_lines)
        self._take_everyday_names(name_lines)
        sample_ids = self.out.sample_ids = self._sample_ids(by_row, by_column, rows, columns)
        self._shares_of_columns(columns)
        if table.shape == "crossed":
            self.cells = {**self.cells, **blanks_of_pending(self.cells, rows, columns, sample_ids)}
        is_crossed = table.shape != "long"
        is_printed = is_printed_form(table, self.layout)
        numbers_beside = self._numbers_beside(columns, by_column)
        self._set_merged_aside(rows, columns, names if taxon_in_rows else {})
        for row in rows:
            has_amount = False
            for column in columns:
                cell = self.cells.get((row, column)) if is_crossed else self._amount(row, column, columns, by_row[row])
                if cell is None:
                    continue
                has_amount = True
                if column in numbers_beside and self._is_beside_number(row, column, numbers_beside[column]):
                    continue
                line_at = row if taxon_in_rows else column
                sample = sample_ids.get(("r", row)) or sample_ids.get(("c", column)) or ""
                self._cell(row, column, cell, sample, names.get(line_at), by_row[row], by_column[column])
            named = names.get(row)
            is_silent = has_amount or named is None or says_nothing_found(named[2].text)
            if table.shape == "long" and columns and not is_silent and not is_printed:
                self.told.warning(
                    "N313", "no amount", self.grid.place(row, columns[0]),
                    "the row names a find and gives no amount; it is not read, expected a count, a sign or a weight",
                    "fill it in, or say under 'mend' in the layout what was there",
                )  # fmt: skip
        self._count_names()
        if table.shape == "long":
            self.out.finds = weights_of_pieces(self.out.finds)
        keep_nothing_found(self.out, by_row)
        return self.out

    def _texts_of_counts(self, rows: Iterable[int]) -> list[str]:
        across = [c for c, role in self.table.columns.items() if role.name in ("counts", "count")]
        return [self.cells[r, c].text for r in rows for c in across if (r, c) in self.cells]

    def _set_merged_aside(self, rows: list[int], columns: list[int], names: Mapping[int, Named | None]) -> None:
        """Counts that are merged over several cells are given to none of them, and told."""
        for area, (places, is_mended) in merged_counts(self.grid, self.cells, rows, columns).items():
            if self._is_of_one_sample(places, names):
                others = sorted(places)[1:]
                self.cells = {at: cell for at, cell in self.cells.items() if at not in others}
                continue
            self.cells = {at: cell for at, cell in self.cells.items() if at not in places}
            if is_mended:
                continue
            over = written(area)
            self.told.error(
                "N313", f"merged {over}", self.grid.place(area.top, area.left),
                f"'{self.grid.text(area.top, area.left)}' stands in one cell that is merged over {over}, where several "
                "counts should be; it is given to none of them, expected a cell for each count",
                f'say under mend in the layout whose it is, such as mend: {{"{address(*places[0])}": "3"}}',
            )  # fmt: skip

    def _is_of_one_sample(self, places: Sequence[tuple[int, int]], names: Mapping[int, Named | None]) -> bool:
        """Whether a sign or a weight is merged over the columns of one sample, such as those of whole ones and pieces."""
        text, rows = self.cells[places[0]].text, {r for r, _ in places}
        ids = {self.out.sample_ids.get(("c", c)) for _, c in places}
        is_sign = text in self.table.marks.key or bool(SIGNS.fullmatch(text))
        named = [names.get(r) for r in rows]
        is_weight = all(one is not None and one[0].quantity == "mass" for one in named)
        return (is_sign or is_weight) and len(rows) == 1 and len(ids) == 1 and None not in ids

    def _amount(self, row: int, column: int, columns: list[int], by_row: Line) -> Cell | None:
        """The cell of an amount, or the word beside it where that says what was found: 'present' beside a blank."""
        cell, said = self.cells.get((row, column)), by_row.get("quantity")
        if not said or column != next((c for c in columns if self.table.columns[c].name != "mass"), None):
            return cell
        if any((row, c) in self.cells for c in columns if c != column):
            return cell
        return instead_of_blank(cell, self.cells.get(at_of(said[0].place)))

    def _cell(
        self,
        row: int,
        column: int,
        cell: Cell,
        sample: str,
        named: Named | None,
        by_row: Line,
        by_column: Line,
    ) -> None:
        if not sample:
            return
        if named is None:
            aside = self._around(row, column, by_row, by_column).aside
            if aside:  # 'Bone' under 'Class', and no name beside it
                self.out.set_aside.setdefault(aside, []).append(self.grid.place(row, column))
            elif cell.text and cell.text not in ("0", "-"):
                kind = f"no name {row}" if self.table.has_samples_across else f"no name c{column}"
                self.told.error(
                    "N314", kind, self.grid.place(row, column),
                    f"'{cell.text}' has no name of a taxon beside it; it is not read, expected a name",
                    "fill the name in under 'mend' in the layout, or give the row or column another role there",
                )  # fmt: skip
            return
        standing = self._standing(row, column, named, by_row, by_column)
        where = standing.where
        if standing.says_nothing and cell.text in _NO_FINDS:
            return  # 'No plant remains, 0': the sample is known, and holds no find
        if standing.aside:
            self.out.set_aside.setdefault(standing.aside, []).append(where.place)
            return
        if not standing.is_plant and _SHARE.fullmatch(cell.text):
            self.out.set_aside.setdefault("a share of the flot", []).append(where.place)
            return  # 'Roots 60%'
        what = standing.what
        if what in ("percent", "density"):
            return
        reading = self._reading(cell, column, standing)
        place = self.grid.place(row, column)
        if reading.refusal is not None:
            expected = "grams" if what == "mass" else "a count, a sign or nothing"
            shown = f"'{cell.text}'" if cell.text else "a formula without a saved value"
            self.told.error(
                "N313", f"unread {cell.kind} {cell.text if cell.kind == 'text' else ''}", place,
                f"{where.text}, sample {sample}: the cell holds {shown}, expected {expected}", reading.refusal.help,
            )  # fmt: skip
            return
        self._tell_quirks(reading, place)
        is_unsaid = self.table.shape == "long" and cell.text not in self.table.marks.key
        if is_unsaid and any(one.count is not None and one.count.amount == "not looked for" for one in reading.found):
            self.told.warning(
                "N313", f"no number {cell.text}", place,
                f"'{cell.text}' stands for a number that nobody gives; the find is in no count and in no presence, "
                "expected a count or a sign",
                f'if it was there uncounted, write under cells in the layout: key: {{"{cell.text}": present}}',
            )  # fmt: skip
        for one in reading.found:
            self._add(one, sample, standing, place)

    def _reading(self, cell: Cell, column: int, standing: Standing) -> Reading:
        """What a cell means, by what is counted or weighed there; cells that hold the same share it."""
        role, words = self.table.columns[column], "" if standing.what == "mass" else standing.around.quantity
        key = (cell, standing.what, standing.unit, words, role.name, role.also)
        known = self._readings.get(key)
        if known is None:
            known = self._readings[key] = self._read_cell(cell, column, standing.what, standing.unit, words)
        return known

    def _read_cell(self, cell: Cell, column: int, what: str, unit: str, words: str) -> Reading:
        marks = self.table.marks
        if what == "mass":
            reading = read_mass(cell, marks, unit)
        elif what == "other":
            reading = read_volume(cell, unit)
        else:
            reading = read_cell(cell, marks, is_tallied=self.is_tallied, has_decimals=self.has_decimals)
        return of_presence(of_listed(self.table.columns[column], cell) or reading, cell, words)

    def _tell_quirks(self, reading: Reading, place: Place) -> None:
        for quirk in reading.quirks:
            self.told.warning("N313", quirk.kind, place, quirk.message, quirk.help)
