"""Count sheets in the plain long form: one row for each taxon, part and condition of a sample."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from narrate.model.counts import Count, CountRow
from narrate.model.sampling import Sample
from narrate.problems import Place, ProblemList
from narrate.reading.asking import offered
from narrate.reading.count_cells import EXPECTED
from narrate.reading.count_columns import COLUMN_READERS, Cells, Known
from narrate.reading.count_header import Header, read_header
from narrate.reading.sheet_problems import RefusedRow, SheetProblems, UnknownName, Unread
from narrate.reading.source_text import SourceText, shown

_UNREAD = object()
_WEIGHED = Count(written="", amount="weighed only")


def read_count_sheet(
    source: SourceText, known: Known, problems: ProblemList, unread: Unread | None = None
) -> list[CountRow]:
    """
    Rows of one sheet, in its order. Rows with an error are left out; the errors are told, each with its cell.

    unread:  is told which samples and sheets that concerns.
    """
    telling = SheetProblems(source=source, problems=problems, unread=unread or Unread())
    rows = list(_rows(telling, known))
    if known.has_unread_regions:
        telling.unread.names.update(telling.names)
    else:
        telling.tell_unknown_names(known.identifier)
    telling.tell_left_out()
    return rows


def _rows(telling: SheetProblems, known: Known) -> Iterator[CountRow]:
    records = _records(telling)
    header = _header(records, telling)
    if header is None:
        telling.unread.sheets.add(telling.source.path)
        return
    telling.header = header
    reader = _RowReader(telling=telling, on=Cells(known=known, problems=telling), header=header)
    width = header.width
    has_rows = False
    for cells in records:
        if cells == header.cells:
            telling.tell(
                "N302",
                "the header stands here again, expected it in the first row alone",
                column=1,
                width=len(telling.source.line(telling.line)),
                help="delete the row",
            )
            continue
        if len(cells) != width:
            if any(cells):
                has_rows = True
                _ragged(cells, telling)
                telling.leave_out(cells)
            continue
        try:
            row = reader.row(cells)
        except RefusedRow:
            row = None
            telling.leave_out(cells)
        if row is not None:
            yield row
        has_rows = has_rows or row is not None or any(cell.strip() for cell in cells)
    if not has_rows and not telling.told:
        _empty(
            telling, "the sheet has a header and no rows, expected at least one row", "add the rows, or delete the file"
        )


def _header(records: Iterator[list[str]], telling: SheetProblems) -> Header | None:
    for cells in records:
        if any(cell.strip() for cell in cells):
            return read_header(cells, telling.source, telling.line, telling.problems)
    if not telling.told:
        help = "write a first line such as sample,taxon,part,count, or delete the file"
        _empty(telling, "the sheet is empty, expected a header and rows", help)
    return None


def _empty(telling: SheetProblems, message: str, help: str) -> None:
    telling.problems.error(telling.source.place(), "N307", message, help=help)


def _records(telling: SheetProblems) -> Iterator[list[str]]:
    """Rows as lists of cells; stops with a problem where quotation marks leave the rest unclear."""
    text = io.StringIO(telling.source.text, newline="")
    reader = csv.reader(text, delimiter=telling.delimiter, strict=True)
    try:
        for cells in reader:
            telling.line, telling.end = telling.end + 1, reader.line_num
            yield cells
    except csv.Error as fault:
        telling.line = telling.end + 1
        telling.unread.sheets.add(telling.source.path)
        _broken_quotes(str(fault), telling)


def _broken_quotes(said: str, telling: SheetProblems) -> None:
    if "limit" in said and '"' not in telling.source.line(telling.line):
        telling.tell(
            "N302",
            f"a cell holds more than {csv.field_size_limit():,} signs, expected a name, a number or a remark; the rows "
            "from here on were not read",
            help="shorten the cell, or look whether a separator or a line end is missing",
        )
        return
    is_open = "unexpected end" in said or "limit" in said
    what = "is opened and not closed" if is_open else "stands inside a cell"
    telling.tell(
        "N302",
        f"a quotation mark {what}, expected marks around whole cells; the rows from here on were not read",
        column=telling.source.line(telling.line).find('"') + 1,
        help='write a quotation mark inside a cell twice: ""',
    )


def _ragged(cells: list[str], telling: SheetProblems) -> None:
    width = telling.header.width
    has_more = len(cells) > width
    telling.tell(
        "N302",
        f"the row has {len(cells)} cells, {'more' if has_more else 'fewer'} than the header, expected {width}",
        column=1,
        width=len(telling.source.line(telling.line)),
        help="put a text that holds the separator in quotation marks" if has_more else "add the missing separators",
    )


@dataclass(slots=True, kw_only=True)
class _RowReader:
    """
    Reads rows of one sheet.

    Sheets say the same things over and over, so each distinct text of a column is worked out once and then looked up:
    that is what makes half a million rows quick.
    """

    telling: SheetProblems
    on: Cells
    header: Header
    columns: list[tuple[str, int, dict[str, Any]]] = field(default_factory=list)
    """Column, its position (-1: not in this sheet), and what its texts mean as far as they are known."""
    nameless: tuple[int, ...] = ()
    proportions: dict[tuple[str, str, str], float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        at = self.header.at
        for name, column in COLUMN_READERS.items():
            known = {} if column.needed else {"": column.blank}
            self.columns.append((name, at.get(name, -1), known))
        self.nameless = self.header.nameless

    def row(self, cells: list[str]) -> CountRow | None:
        """None where nothing is written, or where the sample's own record could not be read; RefusedRow on an error."""
        if self.nameless:
            self._check_nameless(cells)
        values = [known[""] if at < 0 else known.get(cells[at], _UNREAD) for _, at, known in self.columns]
        if _UNREAD in values:
            if not any(cell.strip() for cell in cells):
                return None
            self._read_cells(values, cells)
        sample, name, part, count, mass_g, condition, completeness, size_class, fraction, note = values
        if sample is None:
            return None
        if count is None or mass_g is not None:
            count = self._held_together(count, mass_g, cells)
        if type(name) is UnknownName:
            self.telling.count_unknown(name)
            name = name.identification
        share = self.proportions.get((sample.id, size_class, fraction))
        if share is None:
            share = self._proportion(sample, size_class, fraction, cells)
        return CountRow(
            sample=sample.id,
            identification=name,
            part=part,
            count=count,
            mass_g=mass_g,
            condition=condition,
            completeness=completeness,
            size_class=size_class,
            fraction=fraction,
            proportion_sorted=share,
            note=note,
            place=Place(path=self.telling.source.path, line=self.telling.line),
        )

    def _read_cells(self, values: list[Any], cells: list[str]) -> None:
        """Works out the cells not met before; all of a row's problems are told before it is refused."""
        is_whole = True
        for i, (name, at, known) in enumerate(self.columns):
            if values[i] is not _UNREAD:
                continue
            try:
                values[i] = self._read_cell(name, cells[at].strip(), cells)
            except RefusedRow:
                is_whole = False
                continue
            if name != "note":
                known[cells[at]] = values[i]
        if not is_whole:
            raise RefusedRow

    def _read_cell(self, name: str, text: str, cells: list[str]) -> Any:
        column = COLUMN_READERS[name]
        if not text:
            if column.needed:
                self.telling.refuse(name, cells, f"{name} is empty, expected {column.needed}", "fill the cell in")
            return column.blank
        if "\n" in text and name != "note":
            help = "close the quotation mark in the line where it is opened"
            self.telling.refuse(name, cells, f"{name} runs over several lines, expected one line", help)
        return column.read(text, self.on, cells)

    def _check_nameless(self, cells: Sequence[str]) -> None:
        """Cells under a column without a name would be lost."""
        for position in self.nameless:
            if cells[position].strip():
                message = (
                    f"{shown(cells[position].strip())} stands under a column without a name, expected nothing there"
                )
                self.telling.at(position, cells, message, "name the column, or empty the cell")
                raise RefusedRow

    def _held_together(self, count: Count | None, mass_g: float | None, cells: list[str]) -> Count:
        """The count, where it and the grams do not speak against each other."""
        if count is None and mass_g is None:
            self.telling.refuse(
                "count",
                cells,
                f"count is empty and no mass is given, expected {EXPECTED}",
                "write 0 if it was looked for and not found; else leave the row out",
            )
        if count is None and mass_g == 0:
            self.telling.refuse(
                "mass_g",
                cells,
                "mass_g is 0 and nothing was counted, expected a number above 0",
                "write x under count if it was seen and too light to weigh, 0 if it was looked for and not found",
            )
        if mass_g and count is not None and count.amount in ("looked for and absent", "not looked for"):
            self.telling.refuse(
                "count",
                cells,
                f"count is {shown(count.written)} and mass_g is {mass_g:g}, expected no mass where there is nothing",
                "leave count blank if it was weighed and not counted",
            )
        return _WEIGHED if count is None else count

    def _proportion(self, sample: Sample, size_class: str, fraction: str, cells: list[str]) -> float:
        """Share of the row's size class that was sorted. Size classes are those of the light fraction."""
        share = 1.0
        if fraction == "light" and sample.size_classes:
            share = self._class_share(sample, size_class, cells)
        self.proportions[(sample.id, size_class, fraction)] = share
        return share

    def _class_share(self, sample: Sample, size_class: str, cells: list[str]) -> float:
        if not size_class:
            self._warn_unclassed(sample, cells)
            return 1.0
        flat = _flat_class(size_class)
        for known in sample.size_classes:
            if _flat_class(known.name) == flat:
                return known.proportion_sorted
        names = [known.name for known in sample.size_classes]
        meant = self.telling.near(size_class, names)
        self.telling.refuse(
            "size_class",
            cells,
            f"size_class {shown(size_class)} is none of sample '{sample.id}'{offered(meant)}",
            f"write '{meant}'" if meant else f"known are {', '.join(names)}",
            "N306",
        )
        return 1.0

    def _warn_unclassed(self, sample: Sample, cells: list[str]) -> None:
        """A record may list only what was sorted in part; if it lists more, each row belongs to one of them."""
        shares = [known.proportion_sorted for known in sample.size_classes]
        if min(shares) < 1 and max(shares) == 1:
            self.telling.cell(
                "size_class" if "size_class" in self.header.at else "sample",
                cells,
                f"rows of sample '{sample.id}' name no size class though one was sorted in part; they are taken as "
                "sorted whole, expected the name of a size class",
                f"write one of {', '.join(known.name for known in sample.size_classes)}",
                "N306",
                severity="warning",
            )


def _flat_class(name: str) -> str:
    return "".join(name.lower().split()).replace("–", "-")
