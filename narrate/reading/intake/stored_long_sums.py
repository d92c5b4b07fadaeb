"""Counts of long tables added up for the results that stand among them and beside them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from narrate.model.grids import Grid
from narrate.reading.intake.shares_in_heads import SORTED, as_share
from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.stored_added import WEIGHT, each_amount
from narrate.reading.intake.stored_ledger import Ledger, Litres
from narrate.reading.intake.stored_lines import Worked
from narrate.reading.intake.stored_places import At, Later, cells_said
from narrate.reading.intake.stored_states import Belongs, states_of
from narrate.reading.intake.written_names import NameReader

Piece = tuple[Ledger, At]
"""A cell of counts of one of the tables."""


class LongSums:
    """What the counts of a long table give, or of a list of samples whose counts stand in other tables."""

    def __init__(
        self,
        ledger: Ledger,
        ledgers: Sequence[Ledger],
        names: NameReader,
        litres: Mapping[str, Litres],
        shares: Mapping[str, float],
    ) -> None:
        self.ledger, self.names, self.litres, self.shares = ledger, names, litres, shares
        self.states = states_of(ledger.finds.finds)
        self.is_records = ledger.table.shape == "records"
        self.own = list(ledgers) if self.is_records else [ledger]
        self.by_sample: dict[str, list[Piece]] = {}
        for one in self.own:
            for id in one.finds.sample_ids.values():
                self.by_sample.setdefault(id, [])
            for at in sorted({*one.count, *one.mass}):
                self.by_sample.setdefault(one.sample_at(at), []).append((one, at))
        self.all = [piece for pieces in self.by_sample.values() for piece in pieces]

    def _id_of(self, row: int) -> str:
        known = self.ledger.finds.sample_ids.get(("r", row))
        if known:
            return known
        said = []
        for column, role in self.ledger.table.columns.items():
            cell = self.ledger.cells.get((row, column))
            if "sample" in role.names and cell is not None:
                said.append(cell.text)
        return "/".join(dict.fromkeys(said))

    def _first_find(self, row: int) -> Find | None:
        for column in self.ledger.columns:
            for find in self.ledger.finds_at.get((row, column), ()):
                return find
        return None

    def _of_taxon(self, find: Find | None) -> list[Piece]:
        """All cells of counts of one taxon."""
        if find is None:
            return []
        meant = self._taxon(find)
        return [(one, at) for one, at in self.all if any(self._taxon(f) == meant for f in one.finds_at.get(at, ())[:1])]

    def _taxon(self, find: Find | None) -> str:
        if find is None:
            return ""
        return find.name.identification.taxon or find.name.identification.written.lower()

    def _sum(self, pieces: list[Piece], group: Belongs | None, label: str, *, is_whole: bool = False) -> Worked | None:
        """
        The sum of counts, or of weights where the label says so or nothing was counted.

        is_whole:  all the cells are named, blank ones too.
        """
        is_mass = bool(WEIGHT.search(label)) or not any(at in one.count for one, at in pieces)
        total, cells, more, doubtful = 0.0, [], [], []
        for one, at in pieces:
            value = one.mass.get(at, 0.0) if is_mass else one.count.get(at, 0.0)
            finds = one.finds_at.get(at, ())
            answers = {group.holds(find) for find in finds} if group is not None else {"yes"}
            if answers <= {"no"}:
                continue
            if value is None:
                return None
            if group is not None and answers == {"yes", "no"}:  # the pieces of '12 (3)'
                each = each_amount(finds, value, is_mass=is_mass)
                total += sum(amount or 0.0 for find, amount in each if group.holds(find) == "yes")
                cells.append((one, at))
            elif answers == {"yes"}:
                total += value
                if is_whole or at in (one.mass if is_mass else one.count):
                    cells.append((one, at))
            elif value:
                more.append(value)
                doubtful.append((one, at))
        what = "weights" if is_mass and any(one.mass for one, _ in pieces) else "counts"
        said = Later(lambda: f"the {what} in {self._said(cells)}") if cells else f"no {what}"
        return Worked(value=total, said=said, perhaps=tuple(more), perhaps_said=self._said(doubtful) if more else "")

    def _said(self, pieces: list[Piece]) -> str:
        """Cells by name, with the sheet where it is another than that of the stored result."""
        by_grid: dict[str, tuple[Grid, list[At]]] = {}
        for one, at in pieces:
            by_grid.setdefault(one.grid.sheet, (one.grid, []))[1].append(at)
        said = []
        for grid, places in by_grid.values():
            sheet = f"sheet {grid.sheet}, " if grid.sheet != self.ledger.grid.sheet else ""
            said.append(f"{sheet}{cells_said(places)}")
        return " and ".join(said)

    def _scaled_up(self, pieces: list[Piece]) -> Worked | None:
        """The sum of counts, each divided by the share of its sieve class that was sorted, where heads say it."""
        total, is_scaled = 0.0, False
        for one, at in pieces:
            said = [text for text in one.table.columns[at[1]].qualifiers if text.startswith(SORTED)]
            share = as_share(said[0].removeprefix(SORTED)) if said else None
            number = one.count.get(at, 0.0)
            if number is None:
                return None
            total += number / float(share or 1)
            is_scaled = is_scaled or share is not None
        said_of = f"the counts in {self._said(pieces)}, scaled up for the shares sorted,"
        return Worked(value=float(f"{total:.12g}"), said=said_of) if is_scaled else None
