"""What the amount of a find is: counted or weighed, and which of a number and its strokes is taken."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

from narrate.model.grids import address
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.header_words import is_unit_of_mass, quantity, unit
from narrate.reading.intake.kinds_of_amounts import kind_of_amount
from narrate.reading.intake.names_of_table import NamedLines
from narrate.reading.intake.parts_of_finds import without_weight
from narrate.reading.intake.said import Line
from narrate.reading.intake.tallies import TALLY, of_strokes
from narrate.reading.intake.volumes_of_finds import is_unit_of_volume, unit_of_volume
from narrate.reading.intake.written_names import WrittenName


class Amounts(NamedLines):
    """The lines of one table with what their amounts are."""

    def _is_of_strokes(self, column: int, by_column: Mapping[int, Line]) -> bool:
        """Whether a column is headed as strokes beside one of numbers."""
        said = by_column.get(column, {}).get("quantity", ())
        return TALLY in self.table.columns[column].qualifiers or any(quantity(o.text) == "count, tally" for o in said)

    def _numbers_beside(self, columns: list[int], by_column: Mapping[int, Line]) -> dict[int, list[int]]:
        """Each column of strokes -> the columns of numbers of the same sample."""
        ids = self.out.sample_ids
        of_strokes = [c for c in columns if self._is_of_strokes(c, by_column)]
        numbers: dict[str | None, list[int]] = {}
        for column in columns if of_strokes else ():
            of_sample = numbers.setdefault(ids.get(("c", column)), [])
            of_sample += [] if column in of_strokes else [column]
        return {column: numbers[ids.get(("c", column))] for column in of_strokes}

    def _is_beside_number(self, row: int, column: int, numbers: Sequence[int]) -> bool:
        """Whether an amount stands beside strokes: it is taken, and strokes that say another number are told."""
        others = [c for c in numbers if (row, c) in self.cells]
        beside = [self.cells[row, c] for c in others]
        if not beside:
            return False
        counted, own = of_strokes(self.cells[row, column]), self.cells[row, column].text
        said = {number_of(cell.text, self.table.marks.decimal) for cell in beside} - {None}
        if counted and said and counted not in said:
            place = self.grid.place(row, column)
            self.told.warning(
                "N317", f"tally {place}", place,
                f"the tally '{own}' has {counted} strokes, and {address(row, others[0])} says {beside[0].text}, "
                "expected them to agree",
                "narrate uses the number; look which of the two is right",
            )  # fmt: skip
        return True

    def _quantity(self, row: int, column: int, name: WrittenName, by_row: Line, by_column: Line) -> tuple[str, str]:
        for role in (self.table.columns[column], self.table.rows[row]):
            if role.name == "mass":
                return "mass", role.qualifiers[0] if role.qualifiers else "g"
            if volume := unit_of_volume(role.qualifiers):
                return "other", volume
        for line in (by_column, by_row):
            heads = line.get("quantity")
            if heads:
                what = "mass" if kind_of_amount(heads[0].text) == "mass" else quantity(heads[0].text)
                if is_unit_of_volume(heads[0].text):
                    return "other", unit_of_volume(heads[0].text.split()) or "ml"
                if what == "mass":
                    return "mass", unit(heads[0].text) or "g"
                if name.quantity == "mass" and what.startswith("count") and not self._has_weights_apart:
                    return "mass", name.unit  # 'Wood (g)' under 'whole' and 'frags'
                in_part = next((unit(one.text) for one in by_row.get("part", ()) if quantity(one.text) == "mass"), "")
                if name.part and in_part and what.startswith("count"):
                    return "mass", in_part  # 'Charcoal', 'weight (g)', under 'n'
                if not what and name.quantity == "mass":
                    return "mass", name.unit  # a name merged over the column of amounts
                if what.startswith("count") or not what:
                    return "count", ""
                return what, ""
        if name.quantity:
            return name.quantity, name.unit
        for line in (by_row, by_column):
            for said in line.get("part", ()):
                if name.part and (is_unit_of_mass(said.text) or quantity(said.text) == "mass"):
                    # charcoal in 'g'; the 'g' of barley is a grain
                    return "mass", unit(said.text) or "g"
                if weighed := without_weight(said.text)[1]:
                    return "mass", weighed  # 'fragments (g)'
        for line in (by_row, by_column):
            for head in line.get("section", ()):
                # 'Nutshell (g)' as the head of a section holds for all lines below it.
                section = self.names.read(head.text)
                if section.quantity:
                    return section.quantity, section.unit
        return "count", ""

    @cached_property
    def _has_weights_apart(self) -> bool:
        """Whether weights have small headings of their own: then a unit in a name is of those alone."""
        rows = {r for r, role in self.table.rows.items() if "quantity" in role.names}
        return any(r in rows and quantity(cell.text) == "mass" for (r, _), cell in self.cells.items())
