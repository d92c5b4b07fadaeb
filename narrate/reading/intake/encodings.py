"""Text files whatever program saved them: encoding, broken letters, separator. What is not plain is always told."""

from __future__ import annotations

import csv
import io
from collections import Counter
from dataclasses import dataclass

from narrate.problems import Place, ProblemList
from narrate.reading.intake.east_asian_encodings import east_asian_encoding
from narrate.reading.intake.older_encodings import Older, older_encoding

SEPARATORS = (",", ";", "\t", "|")
_NAMES = {" ": "blanks", ",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars"}
_CELL_LINES = 40
"""A cell with more lines is a quotation mark that was never closed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadText:
    text: str
    encoding: str


def read_letters(path: str, content: bytes, problems: ProblemList) -> ReadText | None:
    """The text of a file in UTF-8, UTF-16 with its mark, or else the older encoding of its words, which is told."""
    place = Place(path=path)
    for mark, encoding in ((b"\xef\xbb\xbf", "utf-8"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16")):
        if content.startswith(mark):
            return _marked(path, content, mark, encoding, problems)
    if b"\x00" in content:
        at = content.index(b"\x00")
        problems.error(
            Place(path=path, line=content[:at].count(b"\n") + 1),
            "N310",
            f"the file holds the byte 0x00 at position {at + 1}, so it is not text; expected a table as text or XLSX",
            help="open it in the program that made it and save the sheet as XLSX or 'CSV UTF-8'",
        )
        return None
    try:
        text = content.decode("utf-8")
        encoding = "utf-8"
    except UnicodeDecodeError as fault:
        east_asian = east_asian_encoding(content)
        if east_asian is not None:
            text, name, codec = east_asian
            older = Older(name=name, codec=codec, languages={})
        else:
            text, older = older_encoding(content)
        encoding = _named(older.name, content)
        _tell_older(path, content, fault.start, text, older, problems)
    if "\x1b" in text or sum(text.count(chr(n)) for n in range(1, 9)) > len(text) / 200:
        problems.error(
            place,
            "N310",
            "the file holds control characters throughout, so it is not text; expected a table as text or XLSX",
            help="open it in the program that made it and save the sheet as XLSX or 'CSV UTF-8'",
        )
        return None
    return ReadText(text=text, encoding=encoding)


def _marked(path: str, content: bytes, mark: bytes, encoding: str, problems: ProblemList) -> ReadText | None:
    try:
        text = content[len(mark) :].decode("utf-8") if encoding == "utf-8" else content.decode("utf-16")
    except UnicodeDecodeError as fault:
        if encoding == "utf-8":
            return read_letters(path, content[len(mark) :], problems)
        problems.error(
            Place(path=path),
            "N310",
            f"the file begins like UTF-16 text and breaks off at byte {fault.start + 1}; expected a whole file",
            help="fetch the file again, or save it as 'CSV UTF-8'",
        )
        return None
    if encoding == "utf-16":
        problems.warning(
            Place(path=path),
            "N312",
            "the file is UTF-16 text and is read as that; expected UTF-8",
            help="saving the sheet again as 'CSV UTF-8' settles it",
        )
    return ReadText(text=text, encoding=encoding)


def _tell_older(path: str, content: bytes, first: int, text: str, older: Older, problems: ProblemList) -> None:
    """What the file is read as, at the first byte that shows it: where another encoding would give another word."""
    usual = content.decode("cp1252", errors="replace")
    is_usual = older.codec in ("cp1252", "latin-1")
    start = first if is_usual else next((n for n, sign in enumerate(text) if sign != usual[n]), first)
    word, other = _word_around(text, start), _word_around(usual, start)
    beside = "" if is_usual else f" (Windows-1252 would make it '{other}')"
    problems.warning(
        Place(path=path, line=content[:start].count(b"\n") + 1),
        "N312",
        f"byte 0x{content[start]:02X} is not UTF-8; the file is read as {_named(older.name, content)}, so that the "
        f"byte is '{text[start : start + 1] or '?'}' in '{word}'{beside}; expected UTF-8",
        help="look whether the word is right; saving the sheet again as 'CSV UTF-8' settles it",
    )


def _named(name: str, content: bytes) -> str:
    has_windows_signs = any(0x80 <= byte <= 0x9F for byte in content)
    return f"{name} (Latin-1 reads the same here)" if name == "Windows-1252" and not has_windows_signs else name


def _word_around(text: str, at: int) -> str:
    start = max((text.rfind(sign, 0, at) for sign in ' ,;\t\n"'), default=-1) + 1
    ends = [end for sign in ' ,;\t\r\n"' if (end := text.find(sign, at)) >= 0]
    return text[start : min(ends, default=len(text))][:40]


def find_separator(text: str) -> str:
    """
    The sign that parts the cells: the one that gives most rows the same number of cells.

    >>> find_separator("a;b;c\\n1,5;2;3\\n2,5;3;4\\n")
    ';'
    """
    lines = [line for line in text[:200_000].splitlines() if line.strip()][:200]
    best, best_score = ",", 0.0
    for separator in SEPARATORS:
        widths: Counter[int] = Counter()
        try:
            for cells in csv.reader(io.StringIO("\n".join(lines)), delimiter=separator):
                widths[len(cells)] += 1
        except csv.Error:
            continue
        rows = sum(widths.values()) or 1
        wide = {width: n for width, n in widths.items() if width > 1}
        if not wide:
            continue
        width, often = max(wide.items(), key=lambda item: (item[1], item[0]))
        score = often / rows + 0.4 * sum(wide.values()) / rows + min(width, 20) / 200
        if score > best_score:
            best, best_score = separator, score
    return best


def separator_name(separator: str) -> str:
    return _NAMES[separator]


def rows_of_text(
    path: str, text: str, separator: str, problems: ProblemList, most_cells: int
) -> tuple[list[list[str]], list[int]]:
    """Rows as lists of cells, and the line on which each begins. Stops, with a problem, at quotes that do not close."""
    rows: list[list[str]] = []
    lines: list[int] = []
    # Marks inside a cell that are not doubled are common and harmless; one that is never closed is not.
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=_is_strict(text, separator))
    end = cells_read = 0
    while True:
        try:
            cells = next(reader)
        except StopIteration:
            break
        except csv.Error as fault:
            if "limit" in str(fault) and '"' not in text:
                tell_long_cell(path, end + 1, problems)
            else:
                _open_quote(path, end + 1, problems)
            break
        if reader.line_num - end > _CELL_LINES:
            _open_quote(path, end + 1, problems)
            break
        cells_read += len(cells)
        if cells_read > most_cells:
            tell_many_cells(path, end + 1, most_cells, problems)
            break
        rows.append(cells)
        lines.append(end + 1)
        end = reader.line_num
    return rows, lines


def _is_strict(text: str, separator: str) -> bool:
    """Whether the file breaks no rule of quotation marks but, perhaps, that the last one must be closed."""
    try:
        for _ in csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True):
            pass
    except csv.Error as fault:
        return "unexpected end" in str(fault)
    return True


def tell_many_cells(path: str, line: int, most: int, problems: ProblemList) -> None:
    """A sheet that goes on beyond what a count sheet can be."""
    problems.error(
        Place(path=path, line=line),
        "N310",
        f"the sheet holds more than {most:,} cells, expected a count sheet; the rest was not read",
        help="keep the count sheet in a file of its own",
    )


def tell_long_cell(path: str, line: int, problems: ProblemList) -> None:
    """A cell, or a line of a listing, that is longer than any text that somebody would write in one."""
    problems.error(
        Place(path=path, line=line),
        "N310",
        f"a cell holds more than {csv.field_size_limit():,} signs, expected a name, a number or a remark; the rows "
        "from here on were not read",
        help="shorten the cell, or look whether a separator or a line end is missing",
    )


def _open_quote(path: str, line: int, problems: ProblemList) -> None:
    problems.error(
        Place(path=path, line=line),
        "N310",
        "a quotation mark is opened and not closed, expected marks around whole cells; the rows from here on "
        "were not read",
        help='write a quotation mark inside a cell twice: ""',
    )
