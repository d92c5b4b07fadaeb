"""What the rows and columns of a table say of each line of finds, and the heads of sections over them."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.grids import Cell, Grid, column_number
from narrate.model.layouts import FIND_ROLES, SAMPLE_ROLES, TAXON_ROLES, Layout, Role, Table
from narrate.reading.intake.conditions_of_finds import Conditions
from narrate.reading.intake.fills_end import ends_of_fill
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.heads_in_pieces import IN_PIECES, piece_for, pieces_of
from narrate.reading.intake.litres_in_heads import litres_in
from narrate.reading.intake.mending import mended
from narrate.reading.intake.not_plants import not_a_plant
from narrate.reading.intake.parts_of_finds import Parts
from narrate.reading.intake.said import Line, Said
from narrate.reading.intake.sections_of_samples import says_none
from narrate.reading.intake.sheet_finds import SheetFinds
from narrate.reading.intake.told import Told
from narrate.reading.intake.written_names import NameReader

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


_NO_PHASE = re.compile(
    r"[-–—?.]+|un(?:dated|phased|known|certain)|not (?:dated|phased|known)|none|n\.?[/ ]?[ad]\.?|undatiert|unbestimmt|unbekannt|"
    r"non dat[ée]e?|indétermin[ée]e?|sin (?:fecha|datar)|s/?f|non datat[oa]|ongedateerd|onbekend|odaterad|okänd|udateret|ukendt|indet\.?",
    re.IGNORECASE,
)
"""Common practice, no source: what stands for a phase that nobody knows."""


class Lines:
    """The lines of one table, as its layout has them."""

    def __init__(self, grid: Grid, table: Table, layout: Layout, names: NameReader, told: Told) -> None:
        self.grid, self.table, self.layout, self.names, self.told = grid, table, layout, names, told
        self.cells = mended(grid, layout)
        self.out = SheetFinds()
        self.conditions = Conditions(table, layout, names, told)
        self.parts = Parts(table, names, told)
        self.sections_in_rows = table.shape == "long" or not table.has_samples_across

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
            own = self.grid.cells
            ends = ends_of_fill(self.cells, own, at, roles, between, is_row=is_row) if role.filled else set()
            for line in between:
                r, c = (line, at) if is_row else (at, line)
                cell = self.cells.get((r, c))
                if cell is not None and cell.text:
                    before = (cell, r, c)
                elif line in ends:
                    before = None
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
                    if name == "phase" and _NO_PHASE.fullmatch(said.text.strip()):
                        continue
                    is_mixed = "quantity" in wanted and bool({"condition", "part"} & set(wanted))
                    if is_mixed and (name == "quantity") != bool(quantity(said.text)):
                        continue  # 'ct' and 'g' under some names, 'C' and 'U' or 'grain' under others
                    if is_mixed and name == "part" and not self.names.part_of(said.text):
                        continue  # a name that is merged down beside them
                    one = said
                    if IN_PIECES in role.qualifiers:
                        piece = piece_for(name, said.text, role.qualifiers)
                        if not piece:
                            continue
                        one = Said(piece, said.place, "l" if name == "volume" else "")
                    elif name != "sample" and "sample" in wanted and (piece := self._piece(name, at_row, at_column)):
                        one = Said(piece, said.place, "l" if name == "volume" else "")
                    elif name == "volume" and role.name != "volume":
                        litres = litres_in(self.grid.text(at_row, at_column))
                        if not litres:
                            continue
                        one = Said(litres, said.place, "l")
                    found[line].setdefault(name, []).append(one)
        if self.table.about and is_row != (self.table.shape == "crossed" and self.table.has_samples_across):
            self._say_about(found)
        return found

    def _piece(self, role: str, row: int, column: int) -> str:
        """What a cell that says several things of a sample says of a role, whatever id stands under mend for it."""
        pieces = pieces_of(self.grid.text(row, column))
        return pieces.get(role, "") if len(pieces) > 1 else ""

    def _say_about(self, found: dict[int, Line]) -> None:
        """Adds what single cells say of the one sample of the table."""
        for key, named in self.table.about.items():
            role, _, unit = (piece.strip() for piece in key.partition(","))
            named, _, words = (piece.strip() for piece in named.partition(","))
            match = re.fullmatch(r"([A-Z]{1,3})(\d{1,7})", named.upper())
            at = (int(match[2]) - 1, column_number(match[1])) if match else (-1, -1)
            cell = self.cells.get(at)
            if named == "sheet" and words and words in self.grid.sheet:
                at, cell = (0, 0), Cell(self.grid.sheet)
            if cell is None or not cell.text or words not in cell.text:
                self.told.error(
                    "N311", f"about {key}", self.layout.place,
                    f"about says that '{role}' stands in '{named}', and nothing does, expected a cell such as B2",
                    "mend the cell under 'about' in the layout",
                )  # fmt: skip
                continue
            pieces = pieces_of(cell.text)
            text = words or (pieces[role] if len(pieces) > 1 and role in pieces else cell.text)
            if role == "phase" and _NO_PHASE.fullmatch(text.strip()):
                continue
            for line in found.values():
                line.setdefault(role, []).append(Said(text, self.grid.place(*at), unit))

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
        band: Said | None = None
        """The last head that says a condition: it holds for heads that follow it at once, and for those behind them."""
        is_over_heads = has_lines = False
        of_samples: dict[str, Said] = {}
        others = self.table.columns if is_row else self.table.rows
        for at in sorted(roles):
            role = roles[at]
            if "section" in role.names:
                said = self._head_of_section(at, others, is_row)
                if said is None:
                    continue
                if self.names.read(said.text).condition or len(self.names.read(said.text).conditions_apart) > 1:
                    band, is_over_heads = said, False
                elif band is not None and not has_lines and current is band:
                    is_over_heads = True
                elif not is_over_heads and not (band and _is_large(band.text) and not _is_large(said.text)):
                    band = None
                current, has_lines = said, False
                # 'Unphased' ends what the head before it said of the samples.
                known = {} if says_none(said.text) else dict.fromkeys((n for n in role.also if n != "section"), said)
                of_samples = {**{n: s for n, s in of_samples.items() if n not in role.also}, **known}
            elif at in wanted and current is not None:
                has_lines = True
                found[at].setdefault("section", []).extend(
                    [current, band] if band is not None and band is not current else [current]
                )
                for name, one in of_samples.items():
                    found[at].setdefault(name, []).append(one)

    def _head_of_section(self, at: int, others: Mapping[int, Role], is_row: bool) -> Said | None:
        """The first words of a line of a section."""
        for other in sorted(others):
            r, c = (at, other) if is_row else (other, at)
            cell = self.cells.get((r, c))
            if cell is not None and cell.text:
                return Said(cell.text, self.grid.place(r, c))
        return None

    def _tell_not_plants(self) -> None:
        for roles, others, is_row in (
            (self.table.rows, self.table.columns, True),
            (self.table.columns, self.table.rows, False),
        ):
            for at, role in roles.items():
                if role.name != "not plants":
                    continue
                places = [(at, other) if is_row else (other, at) for other in sorted(others)]
                held = [(place, self.cells[place].text) for place in places if place in self.cells]
                kinds = [(kind, place) for place, text in held if (kind := not_a_plant(text))]
                kind, place = kinds[0] if kinds else ("what stands among things that are no plants", held[0][0])
                self.out.set_aside.setdefault(kind, []).append(self.grid.place(*place))


def _is_large(text: str) -> bool:
    """Whether a head begins in capitals, as heads over heads do."""
    return text.split(" ")[0].isupper()
