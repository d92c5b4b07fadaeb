"""Problems of one count sheet: each with its row, its cell and a pointer, and not without end."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field

from narrate.model.plants import Identification
from narrate.problems import ProblemList
from narrate.reading.asking import NearWords
from narrate.reading.count_header import Header
from narrate.reading.source_text import LINE_END, SourceText, shown, tell
from narrate.reading.taxa import Identifier

KEPT_PROBLEMS = 10_000
"""Problems told for one sheet; of the rest the number is told."""


class RefusedRow(Exception):
    """A row that cannot be read; its problem is told."""


@dataclass(frozen=True, slots=True)
class UnknownName:
    """A name that no pack knows, so that each of its rows is counted."""

    identification: Identification


@dataclass(slots=True)
class Unread:
    """What of the count sheets could not be read, so that no sample is told to lack rows that it has."""

    samples: set[str] = field(default_factory=set)
    """Samples named in rows that were refused."""
    sheets: set[str] = field(default_factory=set)
    """Sheets that were not read to their end."""
    undescribed: set[str] = field(default_factory=set)
    """Samples of rows that no record describes, while not all records could be read."""
    names: set[str] = field(default_factory=set)
    """Names that no pack knows, while it is not known which region packs are in use."""


@dataclass(slots=True)
class _Rows:
    """Where a name stands first, and how often."""

    identification: Identification
    line: int
    column: int
    width: int
    rows: int = 1


@dataclass(slots=True, kw_only=True)
class SheetProblems:
    """Tells problems of the row that is read; the reader of the sheet keeps `line` and `end` up to date."""

    source: SourceText
    problems: ProblemList
    header: Header = field(default_factory=lambda: Header(at={}, width=0))
    line: int = 0
    """First line of the row."""
    end: int = 0
    """Its last line; cells in quotation marks may run over several."""
    told: int = 0
    left_out: int = 0
    near_words: NearWords = field(default_factory=NearWords)
    names: dict[str, _Rows] = field(default_factory=dict)
    unread: Unread = field(default_factory=Unread)

    @property
    def delimiter(self) -> str:
        return "\t" if self.source.path.lower().endswith(".tsv") else ","

    def near(self, word: str, known: Collection[str], cutoff: float = 0.6) -> str:
        return self.near_words.to(word, known, cutoff)

    def refuse(self, column: str, cells: Sequence[str], message: str, help: str = "", code: str = "N303") -> None:
        """Tells an error of a cell; the row with it is left out."""
        self.cell(column, cells, message, help, code)
        raise RefusedRow

    def cell(
        self,
        column: str,
        cells: Sequence[str],
        message: str,
        help: str = "",
        code: str = "N303",
        *,
        severity: str = "error",
    ) -> None:
        self.at(self.header.at.get(column, 0), cells, message, help, code, severity=severity)

    def at(
        self,
        position: int,
        cells: Sequence[str],
        message: str,
        help: str,
        code: str = "N303",
        *,
        severity: str = "error",
    ) -> None:
        line, column, width = self._where(position)
        self.tell(code, message, line=line, column=column, width=width, help=help, severity=severity)

    def tell(
        self,
        code: str,
        message: str,
        *,
        line: int = 0,
        column: int = 0,
        width: int = 1,
        help: str = "",
        severity: str = "error",
    ) -> None:
        if self.told >= KEPT_PROBLEMS:
            self.left_out += 1
            return
        self.told += 1
        tell(
            self.source,
            self.problems,
            code,
            message,
            line=line or self.line,
            column=column,
            width=width,
            help=help,
            severity=severity,
        )

    def count_unknown(self, name: UnknownName) -> None:
        written = name.identification.written
        if written in self.names:
            self.names[written].rows += 1
        else:
            self.names[written] = _Rows(name.identification, *self._where(self.header.at["taxon"]))

    def tell_unknown_names(self, identifier: Identifier) -> None:
        """One warning for each name, at its first row."""
        for written, found in self.names.items():
            meant = self.near(identifier.unknown_part(found.identification), identifier.lookup)
            known = identifier.lookup[meant] if meant else ""
            counted = f"its {found.rows} rows are" if found.rows > 1 else "it is"
            self.tell(
                "N401",
                f"taxon {shown(written)} is in no taxon pack in use; {counted} counted as written, and no rule can "
                "speak of it" + (f"; did you mean '{known}'?" if known else ""),
                line=found.line,
                column=found.column,
                width=found.width,
                help=f"write '{known}', or describe the plant in packs/taxa/ of the project"
                if known
                else "write a name that the pack knows, or describe the plant in packs/taxa/ of the project",
                severity="warning",
            )

    def leave_out(self, cells: Sequence[str]) -> None:
        """Notes the sample of a row that was refused."""
        at = self.header.at["sample"]
        if at < len(cells):
            self.unread.samples.add(cells[at].strip())

    def tell_left_out(self) -> None:
        if self.left_out:
            self.problems.error(
                self.source.place(),
                "N303",
                f"{self.left_out} more problems in this sheet are not listed, expected a sheet without any",
                help="mend those that are listed first; many of one kind often have one cause",
            )

    def _where(self, position: int) -> tuple[int, int, int]:
        """Line, column and width of a cell as written; only worked out for problems."""
        raw = "\n".join(self.source.line(number) for number in range(self.line, max(self.line, self.end) + 1))
        spans = cell_spans(raw, self.delimiter)
        start, end = spans[min(position, len(spans) - 1)]
        before = raw[:start]
        column = start - (before.rfind("\n") + 1) + 1
        return self.line + before.count("\n"), column, max(1, len(LINE_END.split(raw[start:end])[0]))


def cell_spans(raw: str, delimiter: str) -> list[tuple[int, int]]:
    """
    Where each cell of a row begins and ends, quotation marks included.

    >>> cell_spans('S1,"a, b",3', ",")
    [(0, 2), (3, 9), (10, 11)]
    """
    spans: list[tuple[int, int]] = []
    start, is_quoted = 0, False
    for at, sign in enumerate(raw):
        if sign == '"':
            is_quoted = not is_quoted
        elif sign == delimiter and not is_quoted:
            spans.append((start, at))
            start = at + 1
    spans.append((start, len(raw)))
    return spans
