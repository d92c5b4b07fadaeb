"""Text that is set out with blanks as rows of cells: a fixed-width listing, whose columns line up."""

from __future__ import annotations

import csv
import re
from collections.abc import Sequence

from narrate.problems import Place, ProblemList
from narrate.reading.intake.blocks_set_out import LEAST_COLUMNS, LEAST_LINES, Listing, kind_of, listing
from narrate.reading.intake.encodings import tell_long_cell, tell_many_cells
from narrate.reading.intake.lines_set_out import MEASURES, lines_of, set_line
from narrate.reading.intake.names_over_lines import joined_names

_SAMPLE = 200_000
"""Signs of a text by which it is judged."""
_GAP = re.compile(r"\s{2,}")
_SHIFT = re.compile(r"[ \t]{2,}|\t")


def is_set_out(text: str, separator: str) -> bool:
    """
    Whether columns are parted by blanks and by no sign: lines of numbers that line up, and hardly one with the sign.

    >>> table = "Taxon      S1   S2\\nOats        1    -\\nRye         2    3\\nBarley     10    1\\n"
    >>> is_set_out(f"{table}Pea   2    1", ","), is_set_out(f"{table}Pea         1    1", ",")
    (False, True)
    """
    texts = _sample(text)
    if _is_parted_by(separator, texts):
        return False
    found = _best(texts)
    return found.quality[0] >= LEAST_LINES and not _has_stray_column(texts, found)


def _has_stray_column(texts: Sequence[str], found: Listing) -> bool:
    """Whether one line alone stands in a column that nothing heads: its numbers have slid out of their columns."""
    for one in found.groups:
        rows = [found.cells[n] for n in one.lines if n in found.cells and n not in one.heads]
        heads = [one.columns.line(set_line(texts[n], found.measure)) for n in one.heads]
        for column in range(1, max(map(len, rows), default=0)):
            filled = [row[column] for row in rows if column < len(row) and row[column]]
            headed = any(column < len(head) and head[column] for head in heads)
            if len(filled) == 1 and len(rows) > 2 and not headed:
                return True
    return False


def tell_blanks_tried(path: str, text: str, separator: str, problems: ProblemList) -> None:
    """Tells of lines whose numbers stand between gaps of blanks that do not line up, in a text without separators."""
    texts = _sample(text)
    apart = [n for n, kind in enumerate(map(kind_of, texts)) if kind.amounts[0] and kind.pieces >= LEAST_COLUMNS]
    if len(apart) < LEAST_LINES or _is_parted_by(separator, texts):
        return
    problems.warning(
        Place(path=path, line=apart[0] + 1), "N312",
        f"{len(apart)} lines, first '{' '.join(texts[apart[0]].split())[:60]}', hold numbers with gaps of blanks "
        "between them; it was tried to part columns there, and hardly any place is blank in all of the lines, so "
        "nothing was parted; expected numbers that stand under each other, or commas, semicolons or tabs between them",
        help="print the list again in a letter of fixed width, or save it as 'CSV UTF-8'",
    )  # fmt: skip


def _sample(text: str) -> list[str]:
    lines = lines_of(text[:_SAMPLE])
    return lines[:-1] if len(text) > _SAMPLE else lines


def _is_parted_by(separator: str, texts: Sequence[str]) -> bool:
    """Whether a separator parts the lines of numbers, or at least half as many lines beside these."""
    apart = [kind_of(text).units >= LEAST_COLUMNS for text in texts]
    listed = [text for text, is_apart in zip(texts, apart, strict=True) if is_apart]
    if separator == "\t":
        shifts = [shift for text in listed for shift in _SHIFT.findall(text.strip())]
        return sum("\t" in shift for shift in shifts) > 0.7 * len(shifts)
    sign = re.escape(separator)
    others = [text for text, is_apart in zip(texts, apart, strict=True) if not is_apart]
    beside = [text for text in others if re.search(rf"{sign}(?=\S)", text)]
    # '12,5' is one number, and 'Hordeum vulgare, grain' one name
    signed = [text for text in listed if len(re.findall(rf"(?<!\d){sign}|{sign}(?=\D)", text)) > 1]
    signed += [text for text in listed if text not in signed and re.search(rf"(?<!\d){sign}\S|{sign}(?=[^\s\d])", text)]
    return len(signed) > 0.3 * len(listed) or 2 * len(beside) >= len(listed) > 0


def _best(texts: Sequence[str]) -> Listing:
    """The text read by the measure of letters by which most of its lines stand in columns."""
    measures = MEASURES if not all(map(str.isascii, texts)) else MEASURES[:1]
    return max((listing(texts, measure) for measure in measures), key=lambda one: one.quality)


def rows_of_blanks(
    path: str, text: str, problems: ProblemList, most_cells: int
) -> tuple[list[list[str]], list[int]]:
    """
    Rows as lists of cells, and the line of each. What stands in no column is a line of its own, parted at its gaps.

    A line of numbers that reaches from one column into another is kept in one piece and told.

    >>> rows_of_blanks("", "Taxon        S1   S2\\nOats          1    -\\nWild oats     2   13\\n"
    ...                "Rye          10    1\\nPea           1    1", ProblemList(), 99)[0][2]
    ['Wild oats', '2', '13']
    """
    texts = _bounded(path, lines_of(text.rstrip()), problems, most_cells)
    found = listing(texts, _best(_sample(text)).measure)
    inside = {n: one for one in found.groups for n in (*one.lines, *one.heads)}
    unfit = set(found.unfit)
    rows: list[list[str]] = []
    held = 0
    for n, line in enumerate(texts):
        pieces = found.pieces(n)
        if not pieces:
            cells = [""]
        elif n in found.cells:
            cells = found.cells[n]
        elif n in found.titles or n in unfit or (pieces < 2 and n not in inside):
            cells = [" ".join(line.split())]
        elif n in inside:
            cells = inside[n].columns.line(set_line(line, found.measure))
        else:
            cells = _GAP.split(line.strip())
        held += len(cells)
        if held > most_cells:
            tell_many_cells(path, n + 1, most_cells, problems)
            break
        rows.append(cells)
    joined_names(texts, rows)
    _tell_unfit(path, found, problems)
    return rows, list(range(1, len(rows) + 1))


def _bounded(path: str, texts: list[str], problems: ProblemList, most_cells: int) -> list[str]:
    """The lines up to one that no cell could hold, and no more than a sheet can have."""
    longest = csv.field_size_limit()
    words = 0
    for n, text in enumerate(texts):
        if len(text) > longest:
            tell_long_cell(path, n + 1, problems)
            return texts[:n]
        words += text.count(" ") + text.count("\t") + 1
        if words > 100 * most_cells or n >= most_cells:
            tell_many_cells(path, n + 1, most_cells, problems)
            return texts[:n]
    return texts


def _tell_unfit(path: str, found: Listing, problems: ProblemList) -> None:
    if not found.unfit:
        return
    first, *others = found.unfit
    more = f"; the same in lines {', '.join(str(n + 1) for n in others[:8])}" if others else ""
    more += f" and {len(others) - 8} more" if len(others) > 8 else ""
    problems.error(
        Place(path=path, line=first + 1), "N312",
        f"the line '{' '.join(found.texts[first].split())[:60]}' does not stand in the columns of the lines around it; "
        f"it is kept in one cell and none of its numbers is counted, expected each under its head{more}",
        help="move its words and numbers under their heads, with blanks between them",
    )  # fmt: skip
