"""Stored results in long tables and in lists of samples: total rows, and columns worked out beside each row."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from narrate.model.grids import Grid
from narrate.model.layouts import DERIVED_ROLES
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.left_out_of_totals import left_out_of
from narrate.reading.intake.shares_in_heads import SORTED, as_share
from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.stored_added import WEIGHT, each_amount
from narrate.reading.intake.stored_by_sample import NO_VOLUME
from narrate.reading.intake.stored_groups import Group, is_unnamed, meant_words, same_words
from narrate.reading.intake.stored_heads import head_with_unit
from narrate.reading.intake.stored_ledger import Ledger, Litres
from narrate.reading.intake.stored_lines import Line, Target, Worked
from narrate.reading.intake.stored_places import At, cells_said
from narrate.reading.intake.stored_rates import per_litre, scaled, share
from narrate.reading.intake.stored_states import Belongs, OfState, states_of
from narrate.reading.intake.stored_sums import OF_TAXA, WHICH
from narrate.reading.intake.words_in_names import says_pieces
from narrate.reading.intake.written_names import NameReader

ELSEWHERE = "no counts of the sample are in this file"

Piece = tuple[Ledger, At]
"""A cell of counts of one of the tables."""


class LongLines:
    """The lines of results of a long table, or of a list of samples whose counts stand in other tables."""

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

    def lines(self) -> Iterable[Line]:
        for row, role in self.ledger.table.rows.items():
            if role.name in DERIVED_ROLES:
                yield self._total_row(row, role.name)
        for column, role in self.ledger.table.columns.items():
            if role.name in DERIVED_ROLES:
                yield self._column(column, role.name)

    # ---- rows of totals among finds

    def _total_row(self, row: int, kind: str) -> Line:
        ledger = self.ledger
        texts = [ledger.cells[row, c].text for c in sorted(ledger.table.columns) if (row, c) in ledger.cells]
        label = next((text for text in texts if heading(text) in DERIVED_ROLES), ledger.head(row))
        line = Line(kind=kind, is_row=True, at=row, label=label)
        if kind != "total":
            line.why_not = "it is no total"
        label, without = left_out_of(label)
        left_out = Group(without, self.names) if without else None
        if left_out is not None and not left_out.is_known:
            label, left_out = line.label, None
        id = self._sample_said(row, label)
        words = meant_words(label.replace(id, " ") if id else label)
        before, behind = ledger.run_before(row, of_taxa=True), ledger.run_behind(row, of_taxa=True)
        last = next((r for r in sorted(ledger.rows, reverse=True) if r < row), None)
        of = id or (ledger.sample_at((last, 0)) if last is not None else "")
        within = [r for r in ledger.rows if ledger.sample_at((r, 0)) == of]
        choices: dict[str, tuple[list[int], Belongs | None]] = {}
        named = [r for r in ledger.rows if self._name_said(row) and self._name_said(r) == self._name_said(row)]
        above = [r for r in ledger.rows if r < row]
        guessed = {"since": before, "behind": behind, "sample before": within, "all": ledger.rows, "above": above}
        if named and not id:
            choices = {"name": (named, None)}
        elif words:
            head = [r for r in within if same_words(ledger.section_of(r), label)]
            group = Group(label.replace(id, " ") if id else label, self.names)
            if head:
                choices = {"section": (head, None)}
            elif group.is_known and any(group.holds(f) == "yes" for fs in ledger.finds_at.values() for f in fs):
                choices = {"kind here": (within, group), "kind": (ledger.rows, group)}
            line.guesses = frozenset(guessed)
            line.why_not = line.why_not or WHICH
        elif id:
            choices = {"sample": (within, None)}
        if (not id or words) and "name" not in choices:
            empty = {"since"} if ledger.is_under_head(row) else set()
            choices |= {n: (rows, None) for n, rows in guessed.items() if (rows or n in empty) and n not in choices}
        if left_out is not None:
            choices = {n: ([r for r in rows if not self._is_of(r, left_out)], of) for n, (rows, of) in choices.items()}
        for name, (rows, of_group) in list(choices.items()):
            plants = [r for r in rows if self._first_find(r) is not None]
            if plants and len(plants) < len(rows):  # bone that stands among the finds
                choices[f"{name}, plants"] = (plants, of_group)
        line.guesses |= {f"{name}, plants" for name in line.guesses}
        for name, (rows, of_group) in list(choices.items()):
            for way, state in self.states.items():
                # A 'Summe' of a form may be of the charred remains alone; the first readings come first.
                choices[f"{name}, {way}"] = (rows, OfState(of_group, **state))
                line.guesses |= {f"{name}, {way}"}
        line.guesses |= {f"{name} scaled up" for name in line.guesses}
        for column in ledger.columns:
            readings = {
                name: self._sum([(ledger, (r, column)) for r in rows], group, "", is_whole=True)
                for name, (rows, group) in choices.items()
            }
            line.targets.append(Target(at=(row, column), readings={} if kind != "total" else readings))
        for column, role in ledger.table.columns.items():
            if role.name == "total" and kind == "total" and (row, column) in ledger.cells:
                line.targets.append(Target(at=(row, column), readings=self._crossing(choices, column)))
        return line

    def _crossing(
        self, choices: Mapping[str, tuple[list[int], Belongs | None]], column: int
    ) -> dict[str, Worked | None]:
        """A total of rows in a column of totals: of all columns of counts, or weights, as they are or scaled up."""
        found: dict[str, Worked | None] = {}
        label = head_with_unit(self.ledger, column)
        for name, (rows, group) in choices.items():
            pieces = [(self.ledger, (r, c)) for r in rows for c in self.ledger.columns]
            pieces = [piece for piece in pieces if piece[1] in self.ledger.count or piece[1] in self.ledger.mass]
            found[name] = self._sum(pieces, group, label)
            found[f"{name} scaled up"] = self._scaled_up(pieces) if group is None else None
        return found

    def _is_of(self, row: int, group: Group) -> bool:
        find = self._first_find(row)
        return find is not None and group.holds(find) == "yes"

    def _name_said(self, row: int) -> tuple[str, ...]:
        """What stands in a row for the name and the part of a find; empty where no name does."""
        columns = self.ledger.table.columns
        at = {c for c, role in columns.items() if set(role.names) & {"taxon", "genus", "epithet", "part"}}
        said = [cell.text if (cell := self.ledger.cells.get((row, c))) is not None else "" for c in sorted(at)]
        is_named = any((row, c) in self.ledger.cells for c in at if "part" not in columns[c].names)
        return tuple(said) if is_named else ()

    def _sample_said(self, row: int, label: str) -> str:
        """The sample that a row of totals names, in its own cell or in its label: 'Total S1'; empty for none."""
        known = set(self.ledger.finds.sample_ids.values())
        own = self._id_of(row)
        if own in known:
            return own
        texts = [label, own]
        return max((id for id in known for text in texts if re.search(rf"(?<!\w){re.escape(id)}(?!\w)", text)),
                   key=len, default="")  # fmt: skip

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

    # ---- columns beside finds, or in a list of samples

    def _column(self, column: int, kind: str) -> Line:
        ledger = self.ledger
        line = Line(kind=kind, is_row=False, at=column, label=head_with_unit(ledger, column))
        counts_taxa = bool(OF_TAXA.search(line.label)) and kind in ("total", "derived")
        words = meant_words(re.sub(OF_TAXA, "", line.label))
        group = Group(re.sub(OF_TAXA, "", line.label), self.names) if words else None
        if group is not None and not (group.is_known and self._has_any(group)):
            line.why_not = WHICH
        elif not self.all:
            line.why_not = "the counts are not in this file"
        elif kind == "derived" and not counts_taxa:
            line.why_not = "it is no total, share, density or ubiquity"
        for row in ledger.rows:
            readings: dict[str, Worked | None] = {}
            id = self._id_of(row)
            if not line.why_not or line.why_not in (ELSEWHERE, NO_VOLUME):
                if self.is_records and id not in self.by_sample:
                    line.why_not = ELSEWHERE
                elif self.is_records:
                    readings = self._of_sample(line, id, group, counts_taxa)
                else:
                    readings = self._of_find(line, row, id, group)
            line.targets.append(Target(at=(row, column), readings=readings))
        return line

    def _has_any(self, group: Group) -> bool:
        return any(group.holds(find) == "yes" for one in self.own for finds in one.finds_at.values() for find in finds)

    def _of_sample(self, line: Line, id: str, group: Group | None, counts_taxa: bool) -> dict[str, Worked | None]:
        """What a list of samples says of one of them, by the counts of the other tables."""
        pieces = self.by_sample[id]
        if counts_taxa and group is None:
            return self._numbers_of_taxa(pieces)
        found = self._rates(line, self._sum(pieces, group, line.label), pieces, id)
        if group is None and says_pieces(line.label):  # of all remains, or of what is in pieces beside whole ones
            broken = Group("", self.names, ("fragment",))
            more = self._rates(line, self._sum(pieces, broken, line.label), pieces, id)
            found |= {f"{name} in pieces": worked for name, worked in more.items()}
        return found

    def _of_find(self, line: Line, row: int, id: str, group: Group | None) -> dict[str, Worked | None]:
        """What a column of a long table says beside one find: of the find, of its sample or of its taxon."""
        ledger = self.ledger
        own = [(ledger, (row, c)) for c in ledger.columns]
        pieces = self.by_sample.get(id, [])
        part = self._sum(own, None, line.label, is_whole=True)
        if line.kind == "ubiquity":
            return self._ubiquity(row)
        if line.kind != "total":
            head = ledger.section_of(row)
            block = [(one, at) for one, at in pieces if one is ledger and ledger.section_of(at[0]) == head]
            of_block = self._rates(line, part, block, id) if head and line.kind == "percent" else {}
            of_block = {name.replace("sample", "section"): worked for name, worked in of_block.items()}
            return self._rates(line, part, pieces, id) | of_block | {
                f"sample {name}": worked
                for name, worked in self._rates(line, self._sum(pieces, group, line.label), pieces, id).items()
            }
        first = self._first_find(row)
        same = self._of_taxon(first)
        choices = {"row": own, "sample": pieces, "taxon": same, "all": self.all}
        found = {name: self._sum(of, group, line.label, is_whole=name == "row") for name, of in choices.items()}
        return {**found, "row scaled up": self._scaled_up(own)} if group is None else found

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

    def _rates(self, line: Line, part: Worked | None, pieces: list[Piece], id: str) -> dict[str, Worked | None]:
        if line.kind == "total":
            return {"all": part}
        if line.kind == "density":
            line.why_not = line.why_not or NO_VOLUME
            soil = [self.litres[id]] if id in self.litres else []
            dense = per_litre(part, soil, line.label, self.ledger.grid)
            return {"all": dense, "scaled up": scaled(dense, self.shares.get(id)) or dense}
        if line.kind != "percent":
            return {}
        found: dict[str, Worked | None] = {}
        for name, of in (("sample", pieces), ("all", self.all)):
            base = self._sum(of, None, line.label)
            found[f"{name} %"], found[f"{name} share"] = share(part, base, 100), share(part, base, 1)
        return found

    def _ubiquity(self, row: int) -> dict[str, Worked | None]:
        first = self._first_find(row)
        cells = self._of_taxon(first)
        present = {one.sample_at(at) for one, at in cells if one.mass.get(at) or one.count.get(at, 0.0) != 0}
        samples = len(self.by_sample)
        if not samples or first is None:
            return {}
        said = f"the counts in {self._said(cells)}"
        n = float(len(present))
        return {
            "percent": Worked(value=100 * n / samples, said=said), "number": Worked(value=n, said=said, of=samples),
            "share": Worked(value=n / samples, said=said),
        }  # fmt: skip

    def _numbers_of_taxa(self, pieces: list[Piece]) -> dict[str, Worked | None]:
        there = [(one, at) for one, at in pieces if one.mass.get(at) or one.count.get(at, 0.0) != 0]
        finds = [find for one, at in there for find in one.finds_at.get(at, ())]
        said = f"the counts in {self._said(pieces)}" if pieces else "no counts"
        named = [find for find in finds if not is_unnamed(find)]
        return {
            "names": Worked(value=float(len({self._taxon(f) for f in finds})), said=said),
            "known names": Worked(value=float(len({self._taxon(f) for f in named})), said=said),
            "lines": Worked(value=float(len(there)), said=said),
        }

    # ---- sums

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
        return Worked(
            value=total, said=f"the {what} in {self._said(cells)}" if cells else f"no {what}", perhaps=tuple(more),
            perhaps_said=self._said(doubtful),
        )  # fmt: skip

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
