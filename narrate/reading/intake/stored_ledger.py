"""The amounts of a table by cell, by sample and by section: what stored totals are worked out again from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from narrate.model.grids import Cell, Grid, at_of
from narrate.model.layouts import DERIVED_ROLES, Role, Table
from narrate.model.sampling import Sample
from narrate.problems import Place
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.cell_masses import read_mass
from narrate.reading.intake.cell_reading import read_cell
from narrate.reading.intake.halves import half_written
from narrate.reading.intake.header_words import heading, quantity, unit
from narrate.reading.intake.said import Said
from narrate.reading.intake.shares_drafted import share_sorted
from narrate.reading.intake.sheet_finds import Find, SheetFinds
from narrate.reading.intake.stored_places import At
from narrate.reading.intake.tallies import TALLY, tally_texts
from narrate.reading.intake.volumes_drafted import litres


@dataclass(slots=True)
class Ledger:
    """One table: what its cells of counts hold, and which lines it has."""

    grid: Grid
    table: Table
    finds: SheetFinds
    cells: Mapping[At, Cell]
    rows: list[int] = field(default_factory=list)
    columns: list[int] = field(default_factory=list)
    count: dict[At, float | None] = field(default_factory=dict)
    """None: a sign, or something that is no number."""
    mass: dict[At, float] = field(default_factory=dict)
    finds_at: dict[At, list[Find]] = field(default_factory=dict)
    across: bool = False
    """True where samples are columns."""
    _small: dict[int, str] = field(default_factory=dict)
    _sections: dict[tuple[int, bool], str] = field(default_factory=dict)
    _numbers: dict[int, list[int]] = field(default_factory=dict)
    """Column of strokes -> the columns of numbers of the same sample, once it was asked for."""
    _is_tallied: bool = False

    def __post_init__(self) -> None:
        self._is_tallied = bool(tally_texts(self.grid))
        self.across = self.table.has_samples_across
        self.rows = [r for r, role in self.table.rows.items() if role.name in ("counts", "finds")]
        self.columns = [
            c
            for c, role in self.table.columns.items()
            if role.name in ("counts", "count", "mass") and self.small_heading(c) not in ("percent", "density")
        ]
        rows = set(self.rows)
        for find in self.finds.finds:
            at = at_of(find.place)
            if at[0] in rows:
                self.finds_at.setdefault(at, []).append(find)
        for row in self.rows:
            for column in self.columns:
                if (row, column) in self.cells:
                    self._take(row, column)

    def _take(self, row: int, column: int) -> None:
        at = (row, column)
        found = self.finds_at.get(at)
        if self._is_of_strokes(column):
            numbers = self._numbers_beside(column)
            if found is None or not numbers:
                return  # a number stands beside the strokes
            at = (row, numbers[0])  # the total is that of the numbers
        if found is None:
            if self._is_weighed(row, column):
                return
            # Set aside, as bone is; or not read.
            role = self.table.columns[column]
            if role.name == "mass":
                weighed = read_mass(self.cells[row, column], self.table.marks, (*role.qualifiers, "g")[0]).found
                if (grams := sum(one.mass_g or 0.0 for one in weighed)) > 0:
                    self.mass[at] = grams
                return
            found_in = read_cell(self.cells[row, column], self.table.marks, is_tallied=self._is_tallied).found
            counts = [one.count for one in found_in]
            if not found_in:
                self.count[at] = None
        else:
            counts = [find.found.count for find in found]
            masses = [find.found.mass_g for find in found if find.found.mass_g is not None]
            if masses:
                self.mass[at] = sum(masses)
            if "mass" in (self.small_heading(column), self.table.columns[column].name):
                return  # 'tr' under grams is no sign of a number
        total, marks = 0.0, self.table.marks
        for count in counts:
            if count is None or count.amount == "not looked for":
                continue
            half = half_written(count.written, marks.decimal, has_halves=bool(marks.halves))
            if half is not None:
                self.count[at] = half
                return
            is_class = count.at_least is not None or count.at_most is not None
            if count.amount == "noted as present" and not is_class and any(c is not None and c.number for c in counts):
                continue  # '12 + frags': the pieces that nobody counted are in no sum
            if count.amount == "noted as present":
                # Half an item is no count, and a sum takes it in all the same.
                number = number_of(count.written, self.table.marks.decimal)
                if number is not None and not number.is_integer():
                    total += number
                    self.count[at] = total
                    continue
                self.count[at] = None
                return
            total += count.number or 0
            self.count[at] = total

    def _is_weighed(self, row: int, column: int) -> bool:
        """Whether the head of a line of taxa ends in a unit of weight: 'Charcoal (g)', which no count takes in."""
        return unit(self.head(row if self.has_taxa_in_rows else column)) in ("g", "mg", "kg")

    def _is_of_strokes(self, column: int) -> bool:
        return TALLY in self.table.columns[column].qualifiers or self.small_heading(column) == "count, tally"

    def _numbers_beside(self, column: int) -> list[int]:
        if column not in self._numbers:
            ids = self.finds.sample_ids
            same = [c for c in self.columns if ids.get(("c", c)) == ids.get(("c", column))]
            self._numbers[column] = [c for c in same if not self._is_of_strokes(c)]
        return self._numbers[column]

    def small_heading(self, column: int) -> str:
        """What a small heading over a column says: count, mass, percent, density; empty where it says nothing."""
        if column not in self._small:
            self._small[column] = quantity(self.small_text(column))
        return self._small[column]

    def small_text(self, column: int) -> str:
        """The small heading over a column as written."""
        row = next((r for r, role in self.table.rows.items() if role.name == "quantity"), None)
        cell = self.cells.get((row, column)) if row is not None else None
        return cell.text if cell is not None else ""

    @property
    def has_taxa_in_rows(self) -> bool:
        return self.across or self.table.shape != "crossed"

    @property
    def taxon_lines(self) -> list[int]:
        return self.rows if self.has_taxa_in_rows else self.columns

    @property
    def sample_lines(self) -> list[int]:
        return self.columns if self.across else self.rows

    def at(self, taxon_line: int, sample_line: int) -> At:
        return (taxon_line, sample_line) if self.across else (sample_line, taxon_line)

    def roles(self, *, of_taxa: bool) -> Mapping[int, Role]:
        """The roles of the lines that hold taxa, or of those that hold samples."""
        return self.table.rows if of_taxa == self.has_taxa_in_rows else self.table.columns

    # ---- sections and runs

    def section_of(self, line: int, *, of_taxa: bool = True) -> str:
        """The head of the section that a line stands in; empty for none."""
        key = (line, of_taxa)
        if key not in self._sections:
            roles = self.roles(of_taxa=of_taxa)
            heads = [n for n, role in roles.items() if n < line and "section" in role.names]
            self._sections[key] = self.head(max(heads), of_taxa=of_taxa) if heads else ""
        return self._sections[key]

    def head(self, line: int, *, of_taxa: bool = True) -> str:
        """The first words of a line."""
        is_row = of_taxa == self.has_taxa_in_rows
        for other in sorted(self.table.columns if is_row else self.table.rows):
            cell = self.cells.get((line, other) if is_row else (other, line))
            if not is_row and self.table.rows[other].name in ("title", "notes", "ignored"):
                continue
            if cell is not None and cell.kind == "text" and any(letter.isalpha() for letter in cell.text):
                return cell.text
        return ""

    def is_under_head(self, row: int) -> bool:
        """Whether nothing stands between a row and the head of its section: a block of a form that was left empty."""
        above = [self.table.rows[r].name for r in sorted(self.table.rows) if r < row]
        return next((name for name in reversed(above) if name not in ("header", "blank", "title")), "") == "section"

    def run_before(self, line: int, *, of_taxa: bool) -> list[int]:
        """The lines of counts between a line and the section or result before it."""
        return self._run(sorted((n for n in self.roles(of_taxa=of_taxa) if n < line), reverse=True), of_taxa)[::-1]

    def run_behind(self, line: int, *, of_taxa: bool) -> list[int]:
        """The lines of counts between a line and the section or result behind it."""
        return self._run(sorted(n for n in self.roles(of_taxa=of_taxa) if n > line), of_taxa)

    def _run(self, ordered: list[int], of_taxa: bool) -> list[int]:
        roles, found = self.roles(of_taxa=of_taxa), []
        for n in ordered:
            if roles[n].name == "section" or roles[n].name in DERIVED_ROLES:
                break
            if roles[n].name in ("counts", "count", "mass", "finds"):
                found.append(n)
        return found

    # ---- samples

    def sample_at(self, at: At) -> str:
        return self.finds.sample_ids.get(("r", at[0])) or self.finds.sample_ids.get(("c", at[1])) or ""

    def sample_of_line(self, line: int) -> str:
        """The sample of a line, be it one of counts or of results beside them."""
        is_row = not self.across
        known = self.finds.sample_ids.get(("r" if is_row else "c", line))
        if known:
            return known
        said = []
        for other, role in (self.table.columns if is_row else self.table.rows).items():
            if "sample" not in role.names:
                continue
            cell = self.cells.get((line, other) if is_row else (other, line))
            before = line
            while cell is None and role.filled and before > 0 and not self._begins_total(before, other, is_row):
                before -= 1
                cell = self.cells.get((before, other) if is_row else (other, before))
            if cell is not None:
                said.append(cell.text)
        id = "/".join(dict.fromkeys(said))
        return id if id in self.finds.sample_ids.values() else ""

    def _begins_total(self, line: int, at: int, is_row: bool) -> bool:
        """Whether 'Site Total' stands over (or before) the ids of a line: what is blank there is no id of the last."""
        over = (n for n in (self.table.columns if is_row else self.table.rows) if n < at)
        cells = (self.grid.cells.get((line, n) if is_row else (n, line)) for n in over)
        return any(cell is not None and heading(cell.text) == "total" for cell in cells)


@dataclass(frozen=True, slots=True)
class Litres:
    """The soil of one sample, and where that is written."""

    litres: float
    place: Place


def soil(facts: Iterable[Mapping[str, Mapping[str, list[Said]]]], samples: Mapping[str, Sample]) -> dict[str, Litres]:
    """The litres of each sample: those that a sheet of the file says, where it says one thing, else of its record."""
    found: dict[str, Litres] = {}
    for said_of in facts:
        for id, said in said_of.items():
            if len({litres(one.text, one.unit or "l") for one in said.get("volume", [])}) > 1:
                continue
            for one in said.get("volume", [])[:1]:
                value = litres(one.text, one.unit or "l")
                if value is not None:
                    found.setdefault(id, Litres(value, one.place))
    for id, sample in samples.items():
        if sample.volume_l is not None:
            found.setdefault(id, Litres(sample.volume_l, sample.place))
    return found


def shares_sorted(facts: Iterable[Mapping[str, Mapping[str, list[Said]]]]) -> dict[str, float]:
    """The share of each sample that was sorted, where one figure says it."""
    found: dict[str, float] = {}
    for said_of in facts:
        for id, said in said_of.items():
            texts = {(one.text, one.unit) for one in said.get("sorted", [])}
            share = share_sorted(*texts.pop()) if len(texts) == 1 else None
            if share is not None and share < 1:
                found[id] = share
    return found
