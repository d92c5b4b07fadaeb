"""Any sheet as grids: which kind of file it is, whatever its name says."""

from __future__ import annotations

from pathlib import Path

from narrate.model.grids import Cell, Grid
from narrate.problems import Place, ProblemList
from narrate.reading.intake.broken_letters import put_at_cells, tell_broken_letters
from narrate.reading.intake.columns_of_blanks import is_set_out, rows_of_blanks, tell_blanks_tried
from narrate.reading.intake.encodings import find_separator, read_letters, rows_of_text, separator_name
from narrate.reading.intake.row_names import has_unheaded_row_names, is_parted_by_blanks
from narrate.reading.intake.workbooks import MOST_BYTES, MOST_CELLS, MOST_COLUMNS, read_workbook
from narrate.reading.layout_beside import WORKBOOK_ENDINGS

TEXT_ENDINGS = (".csv", ".tsv", ".txt", ".tab")
ENDINGS = (*TEXT_ENDINGS, *WORKBOOK_ENDINGS)

_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_OTHER: tuple[tuple[bytes, str], ...] = (
    (b"%PDF", "a PDF document"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"\x1f\x8b", "a compressed file"),
    (b"Rar!", "a compressed file"),
    (b"7z\xbc\xaf", "a compressed file"),
    (b"{\\rtf", "a text document (RTF)"),
    (b"SQLite format 3", "a database"),
)


def grids_of_file(file: Path, path: str, problems: ProblemList) -> tuple[Grid, ...]:
    """
    All sheets of a file that hold anything; none, with a problem, where it cannot be read. The file is only read.

    path:  how problems name it.
    """
    try:
        size = file.stat().st_size
        if size > MOST_BYTES:
            problems.error(
                Place(path=path),
                "N310",
                f"the file holds {size / 1e6:.0f} million bytes, expected a count sheet of at most "
                f"{MOST_BYTES / 1e6:.0f} million",
                help="keep the count sheet in a file of its own",
            )
            return ()
        content = file.read_bytes()
    except OSError as fault:
        problems.error(
            Place(path=path),
            "N310",
            f"the file cannot be opened ({(fault.strerror or 'no reason given').lower()}), expected a count sheet",
            help="check that the file is there and that you may read it",
        )
        return ()
    return grids_of(path, content, problems)


def grids_of(path: str, content: bytes, problems: ProblemList) -> tuple[Grid, ...]:
    """The same for bytes. What the bytes are counts for more than the ending of the name."""
    place = Place(path=path)
    ending = Path(path).suffix.lower()
    if not content.strip(b"\xef\xbb\xbf \t\r\n"):
        problems.error(place, "N310", "the file is empty, expected a count sheet", help="look whether it was saved")
        return ()
    if content.startswith(_OLE):
        _tell_old_office(place, content, problems)
        return ()
    for beginning, what in _OTHER:
        if content.startswith(beginning):
            problems.error(
                place, "N310", f"the file is {what}, expected a table as text or XLSX", help="put the table itself here"
            )
            return ()
    if content[:200].lstrip().lower().startswith((b"<html", b"<!doctype html", b"<table", b"<?xml")):
        problems.error(
            place,
            "N310",
            "the file is a web page or XML, whatever its ending says; expected a table as text or XLSX",
            help="open it in a spreadsheet program and save it as XLSX or 'CSV UTF-8'",
        )
        return ()
    if content.startswith(b"PK\x03\x04") or content.startswith(b"PK\x05\x06"):
        if ending in TEXT_ENDINGS:
            problems.warning(
                place,
                "N310",
                f"the file ends in {ending} and is a workbook; it is read as XLSX; expected text",
                help="rename it",
            )
        grids = read_workbook(path, content, problems)
        for grid in grids:
            tell_broken_letters(grid, problems)
        return grids
    if ending not in TEXT_ENDINGS:
        message = f"the file ends in {ending or 'nothing'} and is not a workbook; it is read as text; expected XLSX"
        problems.warning(place, "N310", message, help="rename it, or fetch it again if it should be a workbook")
    return _text_grid(path, content, problems)


def _tell_old_office(place: Place, content: bytes, problems: ProblemList) -> None:
    if b"E\x00n\x00c\x00r\x00y\x00p\x00t\x00e\x00d\x00P\x00a\x00c\x00k" in content:
        problems.error(
            place,
            "N310",
            "the workbook is protected by a password, expected one that opens without",
            help="open it with the password and save it without one",
        )
    else:
        problems.error(
            place,
            "N310",
            "the file is an old office document (XLS or the like), expected XLSX",
            help="open it in a spreadsheet program and save it as XLSX",
        )


def _text_grid(path: str, content: bytes, problems: ProblemList) -> tuple[Grid, ...]:
    before = len(problems.found)
    read = read_letters(path, content, problems)
    if read is None:
        return ()
    by_single_blanks = is_parted_by_blanks(read.text)
    separator = " " if by_single_blanks else find_separator(read.text)
    usual = "\t" if path.lower().endswith((".tsv", ".tab")) else ","
    is_of_blanks = not by_single_blanks and is_set_out(read.text, separator)
    if separator != usual and not is_of_blanks and not path.lower().endswith(".txt"):
        problems.warning(
            Place(path=path, line=1),
            "N312",
            f"the cells are parted by {separator_name(separator)} and are read so; expected {separator_name(usual)}",
            help="nothing need be done",
        )
    if is_of_blanks:
        message = "the columns are parted by blanks and are read so; expected commas, semicolons or tabs between them"
        help = "look whether the picture has the right columns"
        problems.warning(Place(path=path, line=1), "N312", message, help=help)
        rows, lines = rows_of_blanks(path, read.text, problems, MOST_CELLS)
    else:
        if not by_single_blanks:
            tell_blanks_tried(path, read.text, separator, problems)
        rows, lines = rows_of_text(path, read.text, separator, problems, MOST_CELLS)
    if has_unheaded_row_names(rows):
        problems.warning(
            Place(path=path, line=1), "N312",
            f"the first line has {len(rows[0])} cells and every other {len(rows[0]) + 1}; its words are taken as the "
            "heads of the cells behind the first, as statistical programs write names of rows, expected a head for "
            "each",
            help="look whether the picture has the right heads",
        )  # fmt: skip
        rows[0] = ["", *rows[0]]
    widest = max((len(row) for row in rows), default=0)
    if widest > MOST_COLUMNS:
        problems.error(
            Place(path=path),
            "N310",
            f"the sheet has {widest:,} columns, expected a count sheet of at most {MOST_COLUMNS:,}",
            help="keep the count sheet in a file of its own",
        )
        return ()
    cells: dict[tuple[int, int], Cell] = {}
    for r, row in enumerate(rows):
        for c, text in enumerate(row):
            flat = " ".join(text.split())
            if flat:
                cells[(r, c)] = Cell(flat)
    if not cells:
        problems.error(Place(path=path), "N310", "the sheet holds no cell with anything in it, expected a count sheet")
        return ()
    columns = max(c for _, c in cells) + 1
    grid = Grid(path=path, cells=cells, rows=max(r for r, _ in cells) + 1, columns=columns, lines=tuple(lines))
    put_at_cells(grid, problems, before)
    tell_broken_letters(grid, problems)
    return (grid,)
