"""Count sheets in the plain long form: one row for each taxon, part and condition of a sample."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from narrate.model.counts import Count, CountRow
from narrate.model.packs import Words
from narrate.model.plants import Identification
from narrate.model.sampling import Sample
from narrate.problems import Place, ProblemList
from narrate.reading.count_cells import EXPECTED, Refusal, is_dash, read_count
from narrate.reading.count_header import Header, read_header
from narrate.reading.fields import NEAR_MATCHES, find_word, near, offered
from narrate.reading.numbers_written import number_help, plain_number
from narrate.reading.source_text import LINE_END, SourceText, shown, tell
from narrate.reading.taxa import Identifier

KEPT_PROBLEMS = 10_000
"""Problems told for one sheet; of the rest the number is told."""

_CELL_CHARACTERS = 100_000
"""A longer cell is a quotation mark that was never closed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What rows are held against."""

    words: Words
    samples: Mapping[str, Sample]
    sample_ids: frozenset[str]
    """Also those whose records could not be read whole."""
    identifier: Identifier


def read_count_sheet(source: SourceText, known: Known, problems: ProblemList) -> list[CountRow]:
    """Rows of one sheet, in its order; rows with an error are left out, and the errors told."""
    sheet = _Sheet(source=source, known=known, problems=problems)
    rows = sheet.rows()
    sheet.tell_unknown_names()
    if sheet.left_out:
        problems.error(
            source.place(),
            "N303",
            f"{sheet.left_out} more problems in this sheet are not listed, expected a sheet without any",
            help="mend those that are listed first; many of one kind often have one cause",
        )
    return rows


class _Refused(Exception):
    """A row that cannot be read; its problem is told."""


@dataclass(slots=True)
class _Sheet:
    source: SourceText
    known: Known
    problems: ProblemList
    header: Header = field(default_factory=lambda: Header(at={}, width=0))
    line: int = 0
    """First line of the row that is read."""
    end: int = 0
    told: int = 0
    left_out: int = 0
    near_left: int = NEAR_MATCHES
    unknown_names: dict[str, list[Any]] = field(default_factory=dict)
    """Name -> first line, column, rows, identification."""
    has_dash: bool = False
    unclassed: set[str] = field(default_factory=set)
    cells: dict[tuple[str, str], Any] = field(default_factory=dict)
    """(column, text) -> what it means, so that each distinct text is worked out once."""

    # ---- rows

    def rows(self) -> list[CountRow]:
        found: list[CountRow] = []
        records = self._records()
        for cells in records:
            if not any(cell.strip() for cell in cells):
                continue
            header = read_header(cells, self.source, self.line, self.problems)
            if header is None:
                return []
            self.header = header
            break
        else:
            if not self.told:
                self.problems.error(
                    self.source.place(),
                    "N307",
                    "the sheet is empty, expected a header and rows",
                    help="write a first line such as sample,taxon,part,count, or delete the file",
                )
            return []
        columns = [(name, self.header.at.get(name, -1)) for name in _DEFAULTS]
        width = self.header.width
        has_rows = False
        for cells in records:
            if len(cells) != width:
                if any(cell.strip() for cell in cells):
                    has_rows = True
                    self._ragged(cells)
                continue
            given = {name: cells[at].strip() if at >= 0 else "" for name, at in columns}
            if not any(given.values()) and not any(cell.strip() for cell in cells):
                continue
            has_rows = True
            try:
                self._check_nameless(cells)
                found.append(self._row(given, cells))
            except _Refused:
                continue
        if not has_rows and not self.told:
            self.problems.error(
                self.source.place(),
                "N307",
                "the sheet has a header and no rows, expected at least one row",
                help="add the rows, or delete the file",
            )
        return found

    def _records(self) -> Iterator[list[str]]:
        """Rows as lists of cells; stops with a problem where quotation marks leave the rest unclear."""
        delimiter = "\t" if self.source.path.lower().endswith(".tsv") else ","
        reader = csv.reader(io.StringIO(self.source.text, newline=""), delimiter=delimiter, strict=True)
        while True:
            self.line = self.end + 1
            try:
                cells = next(reader)
            except StopIteration:
                return
            except csv.Error as fault:
                self._broken_quotes(str(fault))
                return
            self.end = reader.line_num
            if any(len(cell) > _CELL_CHARACTERS for cell in cells):
                self._broken_quotes("")
                return
            yield cells

    def _broken_quotes(self, said: str) -> None:
        text = self.source.line(self.line)
        is_open = "unexpected end" in said or "limit" in said or not said
        what = "is opened and not closed" if is_open else "stands inside a cell"
        self._tell(
            "N302",
            f"a quotation mark {what}, expected marks around whole cells; the rows from here on were not read",
            column=text.find('"') + 1,
            help='write a quotation mark inside a cell twice: ""',
        )

    def _ragged(self, cells: list[str]) -> None:
        where = "more" if len(cells) > self.header.width else "fewer"
        self._tell(
            "N302",
            f"the row has {len(cells)} cells, {where} than the header, expected {self.header.width}",
            column=1,
            width=len(self.source.line(self.line)),
            help="put a text that holds the separator in quotation marks" if where == "more" else "add the missing separators",
        )

    def _check_nameless(self, cells: list[str]) -> None:
        """Cells under a column without a name would be lost."""
        if len(self.header.at) == self.header.width:
            return
        named = set(self.header.at.values())
        header_line = self.cells.setdefault(("", "header"), self._header_cells())
        for position, cell in enumerate(cells):
            if position not in named and cell.strip() and not header_line[position].strip():
                self._refuse(position, cells, f"{shown(cell)} stands under a column without a name, expected nothing there")

    def _header_cells(self) -> list[str]:
        delimiter = "\t" if self.source.path.lower().endswith(".tsv") else ","
        rows = csv.reader(io.StringIO(self.source.text, newline=""), delimiter=delimiter, strict=True)
        return next(cells for cells in rows if any(cell.strip() for cell in cells))

    def _row(self, given: dict[str, str], cells: list[str]) -> CountRow:
        read: dict[str, Any] = {}
        is_whole = True
        for name, (take, default) in _DEFAULTS.items():
            text = given[name]
            key = (name, text)
            if not text:
                if name in _NEEDED:
                    is_whole = False
                    self._cell_problem(name, cells, f"{name} is empty, expected {_NEEDED[name]}", "fill the cell in")
                read[name] = default
            elif key in self.cells:
                read[name] = self.cells[key]
            else:
                try:
                    value = take(self, text, cells)
                except _Refused:
                    is_whole = False
                    continue
                read[name] = value
                if name != "note":
                    self.cells[key] = value
        if not is_whole or (sample := read["sample"]) is None:
            raise _Refused
        count, mass_g = self._amounts(given["count"], read, cells)
        name = read["taxon"]
        if isinstance(name, _Unknown):
            self._count_unknown(name, cells)
            name = name.identification
        return CountRow(
            sample=sample.id,
            identification=name,
            part=read["part"],
            count=count,
            mass_g=mass_g,
            condition=read["condition"],
            completeness=read["completeness"],
            size_class=read["size_class"],
            fraction=read["fraction"],
            proportion_sorted=self._proportion(sample, read["size_class"], read["fraction"], cells),
            note=read["note"],
            place=Place(path=self.source.path, line=self.line),
        )

    # ---- cells

    def take_sample(self, text: str, cells: list[str]) -> Sample | None:
        sample = self.known.samples.get(text)
        if sample is None and text not in self.known.sample_ids:
            meant = self._near(text, self.known.samples, 0.75)
            help = f"write '{meant}'" if meant else "describe the sample in records/, or mend its id here"
            self._cell_problem(
                "sample", cells, f"sample {shown_id(text)} is described by no record{offered(meant)}", help, "N304"
            )
            raise _Refused
        return sample

    def take_taxon(self, text: str, cells: list[str]) -> Identification | _Unknown:
        found = self.known.identifier.identify(text)
        return found if self.known.identifier.is_known(found) else _Unknown(found)

    def take_part(self, text: str, cells: list[str]) -> str:
        return self._word("part", "parts", text, cells, self.known.words.part_lookup)

    def take_condition(self, text: str, cells: list[str]) -> str:
        return self._word("condition", "conditions", text, cells, self.known.words.condition_lookup)

    def take_completeness(self, text: str, cells: list[str]) -> str:
        return self._closed("completeness", _COMPLETENESS, text, cells)

    def take_fraction(self, text: str, cells: list[str]) -> str:
        return self._closed("fraction", _FRACTIONS, text, cells)

    def take_count(self, text: str, cells: list[str]) -> Count:
        found = read_count(text)
        if isinstance(found, Refusal):
            self._cell_problem("count", cells, f"count is {shown(text)}, expected {EXPECTED}", found.help)
            raise _Refused
        if is_dash(text) and not self.has_dash:
            self.has_dash = True
            self._cell_problem(
                "count",
                cells,
                f"count is '{text}', read as looked for and absent here and below, expected 0 for that",
                "write 0; leave the row out if it was not looked for",
                severity="warning",
            )
        return found

    def take_mass(self, text: str, cells: list[str]) -> float:
        found = plain_number(text)
        if found is None or found < 0:
            help = number_help(text) or "write grams as a number with a point; say in the note that it was too light to weigh"
            self._cell_problem("mass_g", cells, f"mass_g is {shown(text)}, expected a number of grams", help)
            raise _Refused
        return found

    def take_text(self, text: str, cells: list[str]) -> str:
        return text

    def _word(self, name: str, list_name: str, text: str, cells: list[str], lookup: Mapping[str, str]) -> str:
        found = find_word(lookup, text)
        if found is None:
            meant = self._near(text, lookup)
            help = f"write '{lookup[meant]}'" if meant else f"write another word, or add it to packs/words/ of the project"
            self._cell_problem(
                name, cells, f"{name} {shown(text)} is not in the list of {list_name}{offered(meant)}", help, "N402"
            )
            raise _Refused
        return found

    def _closed(self, name: str, words: Mapping[str, str], text: str, cells: list[str]) -> str:
        found = words.get(text.lower())
        if found is None:
            known = dict.fromkeys(words.values())
            meant = self._near(text, known)
            help = f"write '{meant}'" if meant else ""
            self._cell_problem(
                name, cells, f"{name} is {shown(text)}, expected {' or '.join(known)}{offered(meant)}", help
            )
            raise _Refused
        return found

    def _amounts(self, written: str, read: dict[str, Any], cells: list[str]) -> tuple[Count, float | None]:
        """The count and the grams, held against each other."""
        count, mass_g = read["count"], read["mass_g"]
        if count is None:
            if mass_g is None:
                self._refuse_cell(
                    "count", cells, f"count is empty and no mass is given, expected {EXPECTED}", "leave the row out if there is nothing"
                )
            if mass_g == 0:
                self._refuse_cell(
                    "mass_g", cells, "mass_g is 0 and nothing was counted, expected a number above 0",
                    "write x under count if it was seen and too light to weigh, 0 if it was looked for and not found",
                )
            return _WEIGHED, mass_g
        if mass_g and count.amount in ("looked for and absent", "not looked for"):
            self._refuse_cell(
                "count", cells, f"count is {shown(written)} and mass_g is {mass_g:g}, expected no mass where there is nothing",
                "leave count blank if it was weighed and not counted",
            )
        return count, mass_g

    def _proportion(self, sample: Sample, size_class: str, fraction: str, cells: list[str]) -> float:
        """Share of the row's size class that was sorted. Size classes are those of the light fraction."""
        key = (f"proportion {fraction}", f"{sample.id}\n{size_class}")
        found = self.cells.get(key)
        if found is None:
            found = self.cells[key] = self._worked_out_proportion(sample, size_class, fraction, cells)
        if found < 0:
            meant = self._near(size_class, [known.name for known in sample.size_classes])
            self._refuse_cell(
                "size_class",
                cells,
                f"size_class {shown(size_class)} is none of sample '{sample.id}'{offered(meant)}",
                f"write '{meant}'" if meant else f"known are {', '.join(k.name for k in sample.size_classes)}",
                "N306",
            )
        return found  # type: ignore[no-any-return]

    def _worked_out_proportion(self, sample: Sample, size_class: str, fraction: str, cells: list[str]) -> float:
        if fraction == "heavy" or not sample.size_classes:
            return 1.0
        if not size_class:
            # A record may list only what was sorted in part; if it lists whole classes too, a row belongs to one of them.
            shares = [known.proportion_sorted for known in sample.size_classes]
            if min(shares) < 1 and max(shares) == 1:
                self._cell_problem(
                    "size_class" if "size_class" in self.header.at else "sample",
                    cells,
                    f"rows of sample '{sample.id}' name no size class though some were sorted in part; they are taken "
                    "as sorted whole, expected the name of a size class",
                    f"write one of {', '.join(known.name for known in sample.size_classes)}",
                    "N306",
                    severity="warning",
                )
            return 1.0
        flat = _flat_class(size_class)
        for known in sample.size_classes:
            if _flat_class(known.name) == flat:
                return known.proportion_sorted
        return -1.0

    # ---- names that no pack knows

    def _count_unknown(self, name: _Unknown, cells: list[str]) -> None:
        written = name.identification.written
        if written in self.unknown_names:
            self.unknown_names[written][2] += 1
        else:
            line, column, width = self._where(self.header.at["taxon"], cells)
            self.unknown_names[written] = [line, column, 1, name.identification, width]

    def tell_unknown_names(self) -> None:
        """One warning for each name, at its first row."""
        lookup = self.known.identifier.lookup
        for written, (line, column, rows, identification, width) in self.unknown_names.items():
            part = self.known.identifier.unknown_part(identification)
            meant = self._near(part, lookup)
            known = f"{lookup[meant]}" if meant else ""
            counted = f"; {rows} rows are counted as written" if rows > 1 else "; it is counted as written"
            self._tell(
                "N401",
                f"taxon {shown(written)} is in no taxon pack in use{counted}, and no rule can speak of it"
                + (f"; did you mean '{known}'?" if known else ""),
                line=line,
                column=column,
                width=width,
                help=f"write '{known}', or describe the plant in packs/taxa/ of the project"
                if known
                else "write a name that the pack knows, or describe the plant in packs/taxa/ of the project",
                severity="warning",
            )

    # ---- telling

    def _near(self, word: str, known: Any, cutoff: float = 0.6) -> str:
        if self.near_left <= 0 or len(word) > 80:
            return ""
        self.near_left -= 1
        return near(word, known, cutoff)

    def _refuse_cell(self, name: str, cells: list[str], message: str, help: str, code: str = "N303") -> None:
        self._cell_problem(name, cells, message, help, code)
        raise _Refused

    def _refuse(self, position: int, cells: list[str], message: str) -> None:
        line, column, width = self._where(position, cells)
        self._tell("N303", message, line=line, column=column, width=width, help="name the column, or empty the cell")
        raise _Refused

    def _cell_problem(
        self, name: str, cells: list[str], message: str, help: str, code: str = "N303", severity: str = "error"
    ) -> None:
        line, column, width = self._where(self.header.at.get(name, 0), cells)
        self._tell(code, message, line=line, column=column, width=width, help=help, severity=severity)

    def _where(self, position: int, cells: list[str]) -> tuple[int, int, int]:
        """Line, column and width of a cell as written; only worked out for problems."""
        raw = "\n".join(self.source.line(number) for number in range(self.line, max(self.line, self.end) + 1))
        delimiter = "\t" if self.source.path.lower().endswith(".tsv") else ","
        start, end = _cell_spans(raw, delimiter)[position]
        before = raw[:start]
        line = self.line + before.count("\n")
        column = start - (before.rfind("\n") + 1) + 1
        return line, column, max(1, len(LINE_END.split(raw[start:end])[0]))

    def _tell(
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


@dataclass(frozen=True, slots=True)
class _Unknown:
    """A name that no pack knows, so that each of its rows is counted."""

    identification: Identification


_WEIGHED = Count(written="", amount="weighed only")
_COMPLETENESS = {"whole": "whole", "fragment": "fragment", "w": "whole", "f": "fragment", "fragments": "fragment", "frag": "fragment"}
_FRACTIONS = {"light": "light", "heavy": "heavy", "light fraction": "light", "heavy fraction": "heavy", "lf": "light", "hf": "heavy"}
_NEEDED = {"sample": "the id of a sample", "taxon": "a scientific name", "part": "a plant part"}
_DEFAULTS: dict[str, tuple[Callable[[_Sheet, str, list[str]], Any], Any]] = {
    "sample": (_Sheet.take_sample, None),
    "taxon": (_Sheet.take_taxon, None),
    "part": (_Sheet.take_part, None),
    "count": (_Sheet.take_count, None),
    "mass_g": (_Sheet.take_mass, None),
    "condition": (_Sheet.take_condition, "charred"),
    "completeness": (_Sheet.take_completeness, "whole"),
    "size_class": (_Sheet.take_text, ""),
    "fraction": (_Sheet.take_fraction, "light"),
    "note": (_Sheet.take_text, ""),
}
"""Column -> its reader, and what a blank cell means."""


def shown_id(text: str) -> str:
    return f"'{text}'" if len(text) <= 60 else f"'{text[:57]}…'"


def _flat_class(name: str) -> str:
    return "".join(name.lower().split()).replace("–", "-")


def _cell_spans(raw: str, delimiter: str) -> list[tuple[int, int]]:
    """Where each cell of a row begins and ends, quotation marks included."""
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
