"""A sheet read by its layout: every cell of counts with its sample, its name and all else that rows and columns say."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from narrate.model.grids import Cell, Grid, address
from narrate.model.layouts import FIND_ROLES, SAMPLE_ROLES, TAXON_ROLES, Layout, Role, Table
from narrate.problems import Place
from narrate.reading.intake.cell_marks import Found, Reading
from narrate.reading.intake.cell_masses import read_mass
from narrate.reading.intake.cell_reading import read_cell
from narrate.reading.intake.conditions_of_finds import Conditions
from narrate.reading.intake.header_words import quantity, unit
from narrate.reading.intake.mending import mended
from narrate.reading.intake.name_footnotes import read_footed
from narrate.reading.intake.name_spelling import genus_of
from narrate.reading.intake.not_plants import not_a_plant
from narrate.reading.intake.parts_of_finds import Parts
from narrate.reading.intake.plant_words_abroad import WIDE_PARTS
from narrate.reading.intake.remarks import conditions_in
from narrate.reading.intake.said import Line, Said
from narrate.reading.intake.told import Told
from narrate.reading.intake.written_names import NameReader, WrittenName


@dataclass(frozen=True, slots=True, kw_only=True)
class Find:
    """One amount of one thing in one sample."""

    sample: str
    name: WrittenName
    is_cf: bool
    part: str
    condition: str
    completeness: str
    size_class: str
    fraction: str
    found: Found
    note: str
    place: Place


@dataclass(slots=True)
class SheetFinds:
    """What one table holds."""

    finds: list[Find] = field(default_factory=list)
    facts: dict[str, dict[str, list[Said]]] = field(default_factory=dict)
    """Sample -> role -> everything that is said of it."""
    set_aside: dict[str, list[Place]] = field(default_factory=dict)
    """Kind of thing that is no plant -> where."""
    names: dict[str, tuple[WrittenName, Place, int]] = field(default_factory=dict)
    """Name as written -> itself, its first place, how many finds."""
    missing_parts: dict[str, int] = field(default_factory=dict)
    """Part that was taken because the sheet names none -> finds."""
    missing_at: Place | None = None
    """The name of the first find for which a part was taken."""
    sample_ids: dict[tuple[str, int], str] = field(default_factory=dict)
    """'r' or 'c', and the row or column -> the sample that it is of."""
    not_checked: dict[str, str] = field(default_factory=dict)
    """Row or column of stored results -> why they were not worked out again."""


SORTED_OF_CLASS = "sorted of class"
"""Beside the roles of samples: the share sorted of one size class, whose name stands as the unit."""


def read_finds(grid: Grid, table: Table, layout: Layout, names: NameReader, told: Told) -> SheetFinds:
    """All finds of a table, in the order of its rows. What cannot be read is told."""
    return _Reader(grid, table, layout, names, told).read()


_STRUCTURE = (
    "title",
    "header",
    "blank",
    "notes",
    "ignored",
    "section",
    "counts",
    "count",
    "mass",
    "finds",
    "not plants",
)


class _Reader:
    def __init__(self, grid: Grid, table: Table, layout: Layout, names: NameReader, told: Told) -> None:
        self.grid, self.table, self.layout, self.names, self.told = grid, table, layout, names, told
        self.cells = mended(grid, layout)
        self.out = SheetFinds()
        self.conditions = Conditions(table, layout, names, told)
        self.parts = Parts(table, names, told, self.out.missing_parts)
        self.sections_in_rows = table.shape == "long" or not table.has_samples_across

    def read(self) -> SheetFinds:
        table = self.table
        rows = [r for r, role in table.rows.items() if role.name in ("counts", "finds")]
        columns = [c for c, role in table.columns.items() if role.name in ("counts", "count", "mass")]
        by_row = self._lines(rows, table.columns, is_row=True)
        by_column = self._lines(columns, table.rows, is_row=False)
        if table.shape == "records":
            for row in rows:
                self._facts(by_row[row], "")
            return self.out
        self._section_lines(rows, by_row, table.rows, is_row=True)
        self._section_lines(columns, by_column, table.columns, is_row=False)
        self._tell_not_plants()
        taxon_in_rows = any(set(r.names) & {"taxon", "genus", "code", "common name"} for r in table.columns.values())
        name_lines = by_row if taxon_in_rows else by_column
        names = self._names(name_lines)
        sample_ids = self.out.sample_ids = self._sample_ids(by_row, by_column, rows, columns)
        for row in rows:
            has_amount = False
            for column in columns:
                cell = self.cells.get((row, column))
                line_at = row if taxon_in_rows else column
                sample = sample_ids.get(("r", row)) or sample_ids.get(("c", column)) or ""
                if cell is None:
                    continue
                has_amount = True
                self._cell(row, column, cell, sample, names.get(line_at), by_row[row], by_column[column])
            if table.shape == "long" and columns and not has_amount and names.get(row) is not None:
                self.told.warning(
                    "N313", "no amount", self.grid.place(row, columns[0]),
                    "the row names a find and gives no amount; it is not read, expected a count, a sign or a weight",
                    "fill it in, or say under 'mend' in the layout what was there",
                )  # fmt: skip
        return self.out

    # ---- what rows and columns say

    def _lines(self, lines: list[int], roles: Mapping[int, Role], *, is_row: bool) -> dict[int, Line]:
        """For each row (or column) of counts: role -> what the columns (or rows) of that role say of it."""
        found: dict[int, Line] = {line: {} for line in lines}
        for at, role in roles.items():
            wanted = [
                n
                for n in role.names
                if n not in _STRUCTURE and (n in SAMPLE_ROLES or n in TAXON_ROLES or n in FIND_ROLES)
            ]
            if not wanted:
                continue
            before: tuple[Cell, int, int] | None = None
            between = self._between(lines, is_row)
            over = [((n, at) if is_row else (at, n)) for n in lines]
            if role.filled and lines and not any(place in self.cells for place in over):
                # The list of a sample may have its id over its names.
                between = [n for n in sorted(self.table.rows if is_row else self.table.columns) if n <= lines[-1]]
            for line in between:
                r, c = (line, at) if is_row else (at, line)
                cell = self.cells.get((r, c))
                if cell is not None and cell.text:
                    before = (cell, r, c)
                elif not role.filled:
                    continue
                if before is None or line not in found:
                    continue
                # A cell that a fill or a merge stands for keeps the place where it was written.
                said_cell, at_row, at_column = before if cell is None else (cell, r, c)
                said = Said(
                    said_cell.text, self.grid.place(at_row, at_column), role.qualifiers[0] if role.qualifiers else ""
                )
                for name in wanted:
                    one = said
                    if name == "volume" and "sample" in wanted:
                        litres = litres_in(self.grid.text(at_row, at_column))
                        if not litres:
                            continue
                        one = Said(litres, said.place, "l")
                    found[line].setdefault(name, []).append(one)
        return found

    def _between(self, lines: list[int], is_row: bool) -> list[int]:
        """The lines of counts and those between them, whose cells a blank may mean too."""
        roles = self.table.rows if is_row else self.table.columns
        return [at for at in sorted(roles) if lines and lines[0] <= at <= lines[-1]]

    def _section_lines(
        self, lines: list[int], found: dict[int, Line], roles: Mapping[int, Role], *, is_row: bool
    ) -> None:
        """Adds the section head that stands before each line."""
        wanted = set(lines)
        current: Said | None = None
        others = self.table.columns if is_row else self.table.rows
        for at in sorted(roles):
            role = roles[at]
            if role.name == "section":
                for other in sorted(others):
                    r, c = (at, other) if is_row else (other, at)
                    cell = self.cells.get((r, c))
                    if cell is not None and cell.text:
                        current = Said(cell.text, self.grid.place(r, c))
                        break
            elif at in wanted and current is not None:
                found[at].setdefault("section", []).append(current)

    def _tell_not_plants(self) -> None:
        for roles, others, is_row in (
            (self.table.rows, self.table.columns, True),
            (self.table.columns, self.table.rows, False),
        ):
            for at, role in roles.items():
                if role.name != "not plants":
                    continue
                for other in sorted(others):
                    r, c = (at, other) if is_row else (other, at)
                    cell = self.cells.get((r, c))
                    kind = not_a_plant(cell.text) if cell is not None else ""
                    if kind:
                        self.out.set_aside.setdefault(kind, []).append(self.grid.place(r, c))
                        break

    # ---- samples

    def _sample_ids(
        self, by_row: dict[int, Line], by_column: dict[int, Line], rows: list[int], columns: list[int]
    ) -> dict[tuple[str, int], str]:
        found: dict[tuple[str, int], str] = {}
        in_rows = any("sample" in line for line in by_row.values()) or any(
            "sample" in role.names for role in self.table.columns.values()
        )
        lines = by_row if in_rows else by_column
        mark = "r" if in_rows else "c"
        for at, line in lines.items():
            said = line.get("sample")
            if not said:
                if self._has_any(at, rows, columns, in_rows):
                    place = self._place_of_missing(at, in_rows)
                    self.told.error(
                        "N314", f"no sample {mark}{at}", place,
                        f"{'row' if in_rows else 'column'} "
                        f"{address(at, at).lstrip('ABCDEFGHIJKLMNOPQRSTUVWXYZ') if in_rows else re.sub(r'[0-9]', '', address(0, at))} "
                        "holds counts and has no sample id; it is not read, expected an id",
                        f'say it under \'mend\' in the layout: "{place.cell}": the id; or give it another role there',
                    )  # fmt: skip
                continue
            id = "/".join(dict.fromkeys(one.text for one in said))
            found[mark, at] = id
            self._facts(line, id)
        if self.table.shape == "crossed":
            self._tell_repeated_ids({at: id for (_, at), id in found.items()}, lines, by_column)
        return found

    def _tell_repeated_ids(
        self, ids: Mapping[int, str], lines: dict[int, Line], by_column: dict[int, Line]
    ) -> None:
        """An id over two lines that nothing else tells apart, and ids that differ by a star alone."""
        first: dict[tuple[object, ...], int] = {}
        for at, id in ids.items():
            line = lines[at]
            apart = ("quantity", "size class", "fraction", "part", "condition", "completeness", "taxon", "cf")
            own = self.table.columns.get(at) if lines is by_column else self.table.rows.get(at)
            said_of_line = (own.name, *own.qualifiers) if own is not None else ()
            key = (id, said_of_line, *(tuple(said.text for said in line.get(role, ())) for role in apart))
            place = line["sample"][0].place
            before = first.setdefault(key, at)
            # One heading written over several columns means one sample.
            if before != at and place != lines[before]["sample"][0].place:
                self.told.warning(
                    "N314", f"twice {id}", place,
                    f"the sample id '{id}' stands here and in {lines[before]['sample'][0].place.cell}; their "
                    "counts are added and their "
                    "litres are not, expected each id once",
                    f'if they are two samples, say so under \'mend\' in the layout: "{place.cell}": "{id} (2)"',
                )  # fmt: skip
            bare = id.rstrip("*†' ")
            if bare != id and bare in ids.values():
                self.told.warning(
                    "N314", f"starred {id}", place,
                    f"the sample ids '{id}' and '{bare}' differ by a sign alone; they are kept as two samples, "
                    "expected ids that tell why",
                    f"if {id} is sample {bare} floated again, say so under 'mend' in the layout: "
                    f'"{place.cell}": "{bare}"',
                )  # fmt: skip

    def _has_any(self, at: int, rows: list[int], columns: list[int], in_rows: bool) -> bool:
        places = ((at, c) for c in columns) if in_rows else ((r, at) for r in rows)
        return any(place in self.cells for place in places)

    def _place_of_missing(self, at: int, in_rows: bool) -> Place:
        roles = self.table.columns if in_rows else self.table.rows
        other = next((n for n, role in roles.items() if "sample" in role.names), 0)
        return self.grid.place(at, other) if in_rows else self.grid.place(other, at)

    def _facts(self, line: Line, id: str) -> None:
        if not id:
            said = line.get("sample") or line.get("context")
            if not said:
                return
            id = said[0].text if line.get("sample") else "\x00" + said[0].text
        facts = self.out.facts.setdefault(id, {})
        sizes, shares = line.get("size class"), line.get("sorted")
        if sizes and shares:
            # Each sieve class may have been sorted to a share of its own.
            facts.setdefault(SORTED_OF_CLASS, []).append(Said(shares[0].text, shares[0].place, sizes[0].text))
        for role in SAMPLE_ROLES:
            for said in line.get(role, ()):
                facts.setdefault(role, []).append(said)

    # ---- names

    def _names(self, lines: dict[int, Line]) -> dict[int, tuple[WrittenName, bool, Said] | None]:
        """The name of each line, its cf. from a column of its own, and where it stands."""
        found: dict[int, tuple[WrittenName, bool, Said] | None] = {}
        genus = ""
        # Where names have columns of their own, a line without one is known to its family; no running number names it.
        is_named = any(line.get("taxon") or line.get("genus") for line in lines.values())
        order = ("family", "common name", "epithet") if is_named else ("code", "common name", "epithet")
        for at, line in lines.items():
            said = next((line[role][0] for role in ("taxon", "genus", *order) if line.get(role)), None)
            if said is None:
                found[at] = None
                continue
            text = said.text
            if line.get("taxon") and len(line["taxon"]) > 1:
                text = " ".join(dict.fromkeys(one.text for one in line["taxon"]))
            if line.get("genus"):
                epithet = line["epithet"][0].text if line.get("epithet") else ""
                text = f"{line['genus'][0].text} {epithet}".strip()
                said = line["genus"][0]
            elif not line.get("taxon") and not is_named and line.get("code"):
                given = self.layout.names.get(text, "")
                common = line.get("common name")
                if not given and common:
                    said, text = common[0], common[0].text
            cf = line.get("cf")
            is_cf = bool(cf) and bool(re.search(r"cf|\?|uncertain|possible|prob|^y|^x|^1", cf[0].text, re.IGNORECASE))
            read, unexplained = read_footed(text, genus, self.names, self.table.marks.footnotes)
            if unexplained:
                self.told.warning(
                    "N313", f"footnote of {text}", said.place,
                    f"'{text}' carries a footnote sign, kept in the note, expected a plain name",
                    "look the footnote up, and say under cells in the layout what it says: "
                    f'footnotes: {{"{unexplained}": uncharred}}',
                )  # fmt: skip
            if read.note.startswith("part written "):
                part = read.note.removeprefix("part written ")
                self.told.warning(
                    "N402", f"part {part}", said.place,
                    f"part '{part}' is not in the list of parts; it is kept in the note, and the part is taken as "
                    "'indeterminate', expected a part",
                    "write the part that is meant behind the name, under names in the layout: "
                    f'"{text}": the name with a part of the list',
                )  # fmt: skip
            genus = genus_of(text) or genus
            found[at] = (read, is_cf, said)
        return found

    # ---- cells

    def _cell(
        self,
        row: int,
        column: int,
        cell: Cell,
        sample: str,
        named: tuple[WrittenName, bool, Said] | None,
        by_row: Line,
        by_column: Line,
    ) -> None:
        if not sample:
            return
        if named is None:
            if cell.text and cell.text not in ("0", "-"):
                kind = f"no name {row}" if self.table.has_samples_across else f"no name c{column}"
                self.told.error(
                    "N314", kind, self.grid.place(row, column),
                    f"'{cell.text}' has no name of a taxon beside it; it is not read, expected a name",
                    "fill the name in under 'mend' in the layout, or give the row or column another role there",
                )  # fmt: skip
            return
        name, is_cf, where = named
        kind = not_a_plant(where.text)
        if kind:
            self.out.set_aside.setdefault(kind, []).append(where.place)
            return
        what, unit_of = self._quantity(row, column, name, by_row, by_column)
        if what == "other":
            self.told.warning(
                "N315", f"other {where.text}", self.grid.place(row, column),
                f"'{where.text}' gives volumes of remains, which no field of a find holds; they are not read, "
                "expected counts or grams",
                "nothing need be done; the note of a record can hold them",
            )  # fmt: skip
        if what in ("percent", "density", "other"):
            return
        reading = read_mass(cell, self.table.marks, unit_of) if what == "mass" else read_cell(cell, self.table.marks)
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
        for one in reading.found:
            self._add(one, sample, name, is_cf, where, by_row, by_column, place)

    def _quantity(self, row: int, column: int, name: WrittenName, by_row: Line, by_column: Line) -> tuple[str, str]:
        for role in (self.table.columns[column], self.table.rows[row]):
            if role.name == "mass":
                return "mass", role.qualifiers[0] if role.qualifiers else "g"
        for line in (by_column, by_row):
            said = line.get("quantity")
            if said:
                what = quantity(said[0].text)
                if what == "mass":
                    return "mass", unit(said[0].text) or "g"
                if what.startswith("count") or not what:
                    return "count", ""
                return what, ""
        if name.quantity:
            return name.quantity, name.unit
        for line in (by_row, by_column):
            for said in line.get("section", ()):
                # 'Nutshell (g)' as the head of a section holds for all lines below it.
                section = self.names.read(said.text)
                if section.quantity:
                    return section.quantity, section.unit
        return "count", ""

    def _tell_quirks(self, reading: Reading, place: Place) -> None:
        for quirk in reading.quirks:
            self.told.warning("N313", quirk.kind, place, quirk.message, quirk.help)

    def _add(
        self,
        one: Found,
        sample: str,
        name: WrittenName,
        is_cf: bool,
        where: Said,
        by_row: Line,
        by_column: Line,
        place: Place,
    ) -> None:
        qualifiers = self._qualifiers(place, by_row, by_column)
        notes = [n for n in (one.note, name.note, qualifiers.get("note", "")) if n]
        section = self.parts.section(by_row, by_column)
        before = sum(self.out.missing_parts.values())
        part = qualifiers.get("part") or self.parts.of_find(name, section, by_row, by_column, notes)
        if self.out.missing_at is None and sum(self.out.missing_parts.values()) > before:
            self.out.missing_at = where.place
        lines = (by_row, by_column)
        remarks = [said.text for role in ("note", "taxon note") for line in lines for said in line.get(role, ())]
        condition = self.conditions.of_find(one, name, where, qualifiers, section, lines, remarks, sample, place)
        if condition is None:
            return
        completeness = (
            one.completeness
            or self._completeness(by_row, by_column)
            or name.completeness
            or qualifiers.get("completeness", "")
            or "whole"
        )
        size = self._first("size class", by_row, by_column) or name.size_class or qualifiers.get("size class", "")
        fraction = self._fraction(by_row, by_column, notes)
        notes += self.conditions.kept_words(lines) + remarks
        written = name.identification.written
        first = self.out.names.get(written)
        self.out.names[written] = (name, first[1] if first else where.place, (first[2] if first else 0) + 1)
        self.out.finds.append(
            Find(
                sample=sample,
                name=name,
                is_cf=is_cf or one.is_doubtful or _is_under_cf(by_row, by_column),
                part=part,
                condition=condition,
                completeness=completeness,
                size_class=size,
                fraction=fraction,
                found=one,
                note="; ".join(dict.fromkeys(notes)),
                place=place,
            )
        )

    def _qualifiers(self, place: Place, by_row: Line, by_column: Line) -> dict[str, str]:
        found: dict[str, str] = {}
        for role in (self.table.columns.get(place.column - 1), self._row_role(place)):
            for text in role.qualifiers if role is not None and role.name in ("counts", "count") else ():
                lower = text.lower().rstrip("s.")
                if lower.startswith("frag") or lower in ("fr", "f"):
                    found["completeness"] = "fragment"
                elif lower in ("whole", "w", "complete"):
                    found["completeness"] = "whole"
                elif self.names.condition_of(text) or conditions_in(text):
                    found["condition"] = text
                elif lower in WIDE_PARTS:
                    found["part"], found["note"] = "indeterminate", f"part written {text}"
                elif self.names.part_of(text.replace("_", " ")):
                    found["part"] = self.names.part_of(text.replace("_", " "))
                    if re.search(r"(?:\b|_)frags?", text, re.IGNORECASE):
                        found["completeness"] = "fragment"
                else:
                    found["size class"] = text
        for line in (by_column, by_row):
            for said in line.get("quantity", ()):
                what = quantity(said.text)
                if what.startswith("count, "):
                    found["completeness"] = what.removeprefix("count, ")
        return found

    def _row_role(self, place: Place) -> Role | None:
        digits = re.sub(r"\D", "", place.cell)
        return self.table.rows.get(int(digits) - 1) if digits else None

    def _first(self, role: str, by_row: Line, by_column: Line) -> str:
        return next((said.text for line in (by_row, by_column) for said in line.get(role, ())), "")

    def _completeness(self, by_row: Line, by_column: Line) -> str:
        text = self._first("completeness", by_row, by_column).lower()
        if re.match(r"fr|f$|broken|bits?", text):
            return "fragment"
        return "whole" if re.match(r"w|complete|intact|entire", text) else ""

    def _fraction(self, by_row: Line, by_column: Line, notes: list[str]) -> str:
        text = self._first("fraction", by_row, by_column)
        lower = text.lower()
        if re.match(r"h|resid", lower):
            return "heavy"
        if text and not re.match(r"l|flot|float|fine|coarse|$", lower):
            notes.append(f"fraction {text}")
        return "light"


_LITRES_IN = re.compile(r"(?<![\w.])(\d+(?:[.,]\d+)?)\s*(?:l|lt|ltrs?|lit(?:re|er)s?|litros|litri)\b", re.IGNORECASE)


def litres_in(text: str) -> str:
    """
    The litres that a heading carries beside the id of a sample; empty for none.

    >>> litres_in("Context 203, 20 litres"), litres_in("Sample 4 (8.5 L)"), litres_in("Pit 2")
    ('20', '8.5', '')
    """
    match = _LITRES_IN.search(text)
    return match[1] if match else ""


def _is_under_cf(by_row: Line, by_column: Line) -> bool:
    """Whether a small heading over the cell says 'cf.'."""
    said = [one.text for line in (by_row, by_column) for one in line.get("cf", ())]
    return any(re.fullmatch(r"cf\.?", text.strip(), re.IGNORECASE) for text in said)


def amounts_of(finds: list[Find]) -> Iterator[tuple[Find, int]]:
    """Finds that were counted, with their numbers."""
    for find in finds:
        if find.found.count is not None and find.found.count.number is not None:
            yield find, find.found.count.number
