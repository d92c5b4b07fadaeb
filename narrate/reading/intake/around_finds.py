"""What rows and columns say of the finds in a cell beside their names, worked out once for all cells that share it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from narrate.model.layouts import Role
from narrate.reading.intake.kinds_of_amounts import kind_of_amount
from narrate.reading.intake.not_plants import class_aside, says_no_plant
from narrate.reading.intake.pieces_of_finds import Pieces
from narrate.reading.intake.remarks import remark, says_pieces
from narrate.reading.intake.said import Line
from narrate.reading.intake.written_names import WrittenName

_OF_FINDS = (
    "part", "condition", "completeness", "size class", "fraction", "quantity", "note", "taxon note", "cf",
    "common name", "group", "section",
)  # fmt: skip
"""Roles that say something of the finds of a line, and not of its sample."""
_UNDER_CF = re.compile(r"cf\.?", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """What stands around a cell of finds. What nothing says is empty."""

    part: str
    """Words for a part, as written."""
    quantity: str
    """Words for what was counted or weighed, as written."""
    aside: str
    """What it is that is no plant, where the group or a note of the row says so."""
    qualifiers: Mapping[str, str]
    section: WrittenName | None
    completeness: str
    are_pieces: bool
    """Whether a note says that the finds are in pieces."""
    size_class: str
    fraction: str
    remarks: Sequence[str]
    notes: Sequence[str]
    is_doubtful: bool
    """Whether a small heading or a note says that the name is in doubt."""


class AroundFinds(Pieces):
    """The lines of one table with what stands around their cells."""

    @cached_property
    def _arounds(self) -> dict[tuple[object, object], Around]:
        return {}

    @cached_property
    def _kinds(self) -> dict[tuple[str, int], object]:
        return {}

    def _around(self, row: int, column: int, by_row: Line, by_column: Line) -> Around:
        """What stands around a cell; lines that say the same of their finds share it, such as those of bare ids."""
        if self.conditions.is_paired:
            return self._made(row, column, by_row, by_column)
        key = (
            self._kind("r", row, self.table.rows[row], by_row),
            self._kind("c", column, self.table.columns[column], by_column),
        )
        found = self._arounds.get(key)
        if found is None:
            found = self._arounds[key] = self._made(row, column, by_row, by_column)
        return found

    def _kind(self, way: str, at: int, role: Role, line: Line) -> object:
        """What lines have in common that say nothing of their finds; one that says something is of its own kind."""
        kind = self._kinds.get((way, at))
        if kind is None:
            is_silent = not any(said in line for said in _OF_FINDS)
            kind = self._kinds[way, at] = (role.name, *role.qualifiers) if is_silent else at
        return kind

    def _made(self, row: int, column: int, by_row: Line, by_column: Line) -> Around:
        lines, place = (by_row, by_column), self.grid.place(row, column)
        noted = [said for role in ("note", "taxon note") for line in lines for said in line.get(role, ())]
        remarks = [said.text for said in noted]
        words = self._first("quantity", by_row, by_column)
        notes: list[str] = []
        fraction = self._fraction(by_row, by_column, notes)
        notes += ["an estimate"] if kind_of_amount(words) == "estimate" else []
        answers = [f"{said.unit}: {said.text}" if said.unit else said.text for said in noted]
        return Around(
            part=self._first("part", by_row, by_column),
            quantity=words,
            aside=_no_plant(lines),
            qualifiers=self._qualifiers(row, column, by_row, by_column),
            section=self.parts.section(by_row, by_column),
            completeness=self._completeness(by_row, by_column),
            are_pieces=says_pieces(remarks),
            size_class=self._size(by_row, by_column),
            fraction=fraction,
            remarks=remarks,
            notes=[*notes, *self.conditions.kept_words(lines, place), *answers],
            is_doubtful=_is_under_cf(lines) or _is_doubted(remarks),
        )


def _no_plant(lines: tuple[Line, Line]) -> str:
    """What the section, the group or a note of a row says that it is, where that is no plant."""
    by_row, _ = lines
    kind = next((aside for said in by_row.get("group", ()) if (aside := class_aside(said.text))), "")
    if any(says_no_plant(said.text) for line in lines for said in line.get("section", ())):
        kind = kind or "what stands under a head that calls it no plant"
    if any(says_no_plant(said.text) for said in by_row.get("note", ())):
        return kind or "what a note calls no plant"
    return kind


def _is_doubted(remarks: Sequence[str]) -> bool:
    """Whether a note of the find says that its name is in doubt: 'cf.', 'tentative ID'."""
    return any(remark(text).is_doubtful for whole in remarks for text in re.split(r"[;,]", whole))


def _is_under_cf(lines: tuple[Line, Line]) -> bool:
    """Whether a small heading over the cell says 'cf.'."""
    return any(_UNDER_CF.fullmatch(one.text.strip()) for line in lines for one in line.get("cf", ()))
