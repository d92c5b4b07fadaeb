"""XLSX workbooks as grids. The one module that knows the library behind it; hostile files are refused."""

from __future__ import annotations

import datetime
import io
import re
import warnings
import zipfile
import zlib
from typing import Any

from narrate.model.grids import Area, Cell, Grid, column_number
from narrate.problems import Place, ProblemList
from narrate.reading.intake.number_formats import shown_date, shown_number
from narrate.reading.intake.sheet_ends import last_row

MOST_BYTES = 60_000_000
"""Of a workbook as it lies on the disk."""
MOST_UNPACKED = 250_000_000
MOST_OF_A_PART = 120_000_000
"""Bytes of one sheet or of the shared texts, unpacked: more than a million cells take."""
MOST_STEPS = 3_000_000
"""Cells looked at in one workbook, empty ones included."""
MOST_CELLS = 1_000_000
"""Cells with something in them."""
MOST_COLUMNS = 4_000
_SHEETS = 60


class _TooLarge(Exception):
    """A sheet that goes on far beyond what a count sheet can be."""


def read_workbook(path: str, content: bytes, problems: ProblemList) -> tuple[Grid, ...]:
    """All sheets of a workbook in order; those that hold nothing are left out."""
    if not _is_sound(path, content, problems):
        return ()
    import openpyxl

    faults = (
        zipfile.BadZipFile, zlib.error, SyntaxError, KeyError, ValueError, TypeError, IndexError, AttributeError,
        EOFError, OSError, NotImplementedError, RuntimeError, OverflowError,
        openpyxl.utils.exceptions.InvalidFileException, AssertionError, UnicodeError, RecursionError,
    )  # fmt: skip
    # What a damaged workbook makes the library raise is not bounded by its documentation; these were met with.
    # Faults of XML are syntax errors to either of the two readers that the library may use.
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            return _grids(path, content, openpyxl.load_workbook, problems)
    except _TooLarge as fault:
        problems.error(
            Place(path=path),
            "N310",
            f"{fault}, expected a count sheet; nothing of it was read",
            help="copy the table alone into a new workbook",
        )
    except faults as fault:
        problems.error(
            Place(path=path),
            "N310",
            f"the workbook is damaged and cannot be read ({_short(fault)}), expected a whole XLSX workbook",
            help="fetch it again, or open it in a spreadsheet program and save it anew as XLSX",
        )
    return ()


def _short(fault: Exception) -> str:
    text = " ".join(str(fault).split())
    return text[:80] or type(fault).__name__


def _is_sound(path: str, content: bytes, problems: ProblemList) -> bool:
    """Whether the archive is one that may be unpacked, judged from its list of contents."""
    place = Place(path=path)
    if len(content) > MOST_BYTES:
        held, most = len(content) / 1e6, MOST_BYTES / 1e6
        message = f"the workbook holds {held:.0f} million bytes, expected at most {most:.0f} million"
        problems.error(place, "N310", message, help="copy the table alone into a new workbook")
        return False
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            parts = archive.infolist()
            names = {part.filename for part in parts}
            total = sum(part.file_size for part in parts)
            largest = max((part.file_size for part in parts), default=0)
            if total > MOST_UNPACKED or largest > MOST_OF_A_PART:
                problems.error(
                    place,
                    "N310",
                    f"the workbook unpacks to {total / 1e6:.0f} million bytes, expected at most "
                    f"{MOST_UNPACKED / 1e6:.0f} million, and was not unpacked",
                    help="copy the table alone into a new workbook",
                )
                return False
            if any(part.flag_bits & 1 for part in parts):
                problems.error(
                    place,
                    "N310",
                    "the workbook is protected by a password, expected one that opens without",
                    help="open it with the password and save it without one",
                )
                return False
            if not any(name.startswith("xl/") for name in names):
                what = "an OpenDocument file" if "content.xml" in names else "an archive that holds no workbook"
                problems.error(
                    place,
                    "N310",
                    f"the file is {what}, expected an XLSX workbook",
                    help="save the sheet as XLSX or 'CSV UTF-8'",
                )
                return False
            if any(name.lower().endswith(".bin") and "xl/worksheets" in name for name in names):
                problems.error(
                    place, "N310", "the file is a binary workbook (XLSB), expected XLSX", help="save it as XLSX"
                )
                return False
            for part in parts:
                if part.filename.endswith((".xml", ".rels")):
                    with archive.open(part) as opened:
                        if re.search(rb"<!(?:DOCTYPE|ENTITY)", opened.read(4096)):
                            problems.error(
                                place,
                                "N310",
                                f"the part {part.filename} of the workbook declares entities, which no spreadsheet "
                                "program writes, and was not read, expected plain parts",
                                help="open it in a spreadsheet program and save it anew as XLSX",
                            )
                            return False
            if any("vbaproject" in name.lower() for name in names):
                problems.warning(
                    place,
                    "N310",
                    "the workbook carries macros; they are neither run nor kept, and only the cells are read; "
                    "expected none",
                    help="nothing need be done; save it as XLSX to be rid of them",
                )
    except (zipfile.BadZipFile, zlib.error, EOFError, OSError, ValueError, NotImplementedError, RuntimeError) as fault:
        problems.error(
            place,
            "N310",
            f"the workbook is cut short or damaged ({_short(fault)}), expected a whole XLSX workbook",
            help="fetch it again, or open it in a spreadsheet program and save it anew as XLSX",
        )
        return False
    return True


def _grids(path: str, content: bytes, load: Any, problems: ProblemList) -> tuple[Grid, ...]:
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        book = load(io.BytesIO(content), read_only=True, data_only=True, keep_links=False)
        formulas = None
        found: list[Grid] = []
        steps = [0, 0]
        for sheet in book.worksheets[:_SHEETS]:
            part = sheet._worksheet_path
            xml = archive.read(part.lstrip("/"))
            if re.search(rb"<(?:\w+:)?f[ >/]", xml) and formulas is None:
                formulas = load(io.BytesIO(content), read_only=True, data_only=False, keep_links=False)
            written = formulas[sheet.title] if formulas is not None else None
            grid = _grid(path, sheet, written, xml, steps, problems)
            if grid.cells:
                found.append(grid)
        if not found:
            problems.error(
                Place(path=path),
                "N310",
                "the workbook holds no cell with anything in it, expected a count sheet",
                help="look whether it was saved before it was filled in",
            )
        return tuple(found)


def _grid(path: str, sheet: Any, written: Any, xml: bytes, steps: list[int], problems: ProblemList) -> Grid:
    # What the file says of its own extent may be wrong by a million rows.
    sheet.reset_dimensions()
    last = last_row(xml)
    formulas = _formulas(written, last, steps) if written is not None else {}
    cells: dict[tuple[int, int], Cell] = {}
    for row in sheet.iter_rows(max_row=last) if last != 0 else ():
        steps[0] += len(row) or 1
        if steps[0] > MOST_STEPS:
            raise _TooLarge(
                f"sheet {sheet.title} goes on for more than {MOST_STEPS // 1_000_000} million cells, most of them empty"
            )
        for cell in row:
            value = cell.value
            if value is None:
                continue
            at = (cell.row - 1, cell.column - 1)
            made = _cell(cell, value, formulas.get(at, ""))
            if made is not None:
                cells[at] = made
    for at, formula in formulas.items():
        if at not in cells:
            cells[at] = Cell("", None, "no result", "", formula)
    steps[1] += len(cells)
    if steps[1] > MOST_CELLS:
        raise _TooLarge(f"the workbook holds more than {MOST_CELLS:,} cells")
    columns = max((column for _, column in cells), default=-1) + 1
    if columns > MOST_COLUMNS:
        raise _TooLarge(f"sheet {sheet.title} has {columns:,} columns")
    return Grid(
        path=path,
        sheet=sheet.title,
        cells=cells,
        rows=max((row for row, _ in cells), default=-1) + 1,
        columns=columns,
        merged=_merged(xml),
        hidden_rows=frozenset(
            int(n) - 1 for n in re.findall(rb'<(?:\w+:)?row\b[^>]*?\br="(\d+)"[^>]*\bhidden="(?:1|true)"', xml)
        ),
        hidden_columns=_hidden_columns(xml),
        is_hidden=sheet.sheet_state != "visible",
    )


def _cell(cell: Any, value: Any, formula: str) -> Cell | None:
    if isinstance(value, bool):
        return Cell("TRUE" if value else "FALSE", None, "truth", "", formula)
    if isinstance(value, int | float):
        format = cell.number_format or ""
        general = format in ("", "General")
        number = float(value)
        if number != number or number in (float("inf"), float("-inf")):
            return Cell(str(value), None, "fault", "", formula)
        return Cell(
            shown_number(number, "" if general else format), number, "number", "" if general else format, formula
        )
    if isinstance(value, datetime.datetime | datetime.date | datetime.time | datetime.timedelta):
        return Cell(shown_date(value), None, "date", cell.number_format or "", formula)
    text = " ".join(str(value).replace("\xa0", " ").split())
    if not text:
        return None
    if cell.data_type == "e":
        return Cell(text, None, "fault", "", formula)
    return Cell(text, None, "text", "", formula)


def _formulas(sheet: Any, last: int | None, steps: list[int]) -> dict[tuple[int, int], str]:
    sheet.reset_dimensions()
    found: dict[tuple[int, int], str] = {}
    for row in sheet.iter_rows(max_row=last):
        steps[0] += len(row) or 1
        if steps[0] > MOST_STEPS:
            raise _TooLarge(
                f"sheet {sheet.title} goes on for more than {MOST_STEPS // 1_000_000} million cells, most of them empty"
            )
        for cell in row:
            if cell.value is not None and cell.data_type == "f":
                found[(cell.row - 1, cell.column - 1)] = str(getattr(cell.value, "text", cell.value) or "=")
    return found


def _merged(xml: bytes) -> tuple[Area, ...]:
    found = []
    for reference in re.findall(rb'<(?:\w+:)?mergeCell\b[^>]*?\bref="([A-Z]{1,3}\d{1,7}:[A-Z]{1,3}\d{1,7})"', xml)[
        :20_000
    ]:
        first, last = (re.fullmatch(r"([A-Z]+)(\d+)", end) for end in reference.decode().split(":"))
        if first and last:
            area = Area(
                top=int(first[2]) - 1,
                left=column_number(first[1]),
                bottom=int(last[2]) - 1,
                right=column_number(last[1]),
            )
            if (area.bottom - area.top + 1) * (area.right - area.left + 1) <= 100_000:
                found.append(area)
    return tuple(found)


def _hidden_columns(xml: bytes) -> frozenset[int]:
    found: set[int] = set()
    for element in re.findall(rb"<(?:\w+:)?col\b[^>]*>", xml[:200_000]):
        said = dict(re.findall(rb'(\w+)="([^"]*)"', element))
        if (
            said.get(b"hidden") in (b"1", b"true")
            and said.get(b"min", b"").isdigit()
            and said.get(b"max", b"").isdigit()
        ):
            found.update(range(int(said[b"min"]) - 1, min(int(said[b"max"]), MOST_COLUMNS)))
    return frozenset(found)
