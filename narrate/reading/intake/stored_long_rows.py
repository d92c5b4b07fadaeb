"""Rows of totals among the finds of a long table."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from functools import cached_property
from typing import TypeVar

from narrate.model.layouts import DERIVED_ROLES
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.left_out_of_totals import left_out_of
from narrate.reading.intake.stored_groups import Group, meant_words, same_words
from narrate.reading.intake.stored_heads import head_with_unit
from narrate.reading.intake.stored_lines import Line, Target, Worked
from narrate.reading.intake.stored_long_sums import LongSums
from narrate.reading.intake.stored_states import Belongs, OfState
from narrate.reading.intake.stored_sums import WHICH

_Key = TypeVar("_Key")


class LongRows(LongSums):
    """The same with the rows of totals among finds."""

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
        within = self._rows_within.get(of, [])
        choices: dict[str, tuple[list[int], Belongs | None]] = {}
        named = self._rows_named.get(words_said, []) if (words_said := self._name_said(row)) else []
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
            plants = [r for r in rows if r in self._with_finds]
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
                name: self._of_all(name, column, rows, group)
                if name.partition(",")[0] == "all" and left_out is None
                else self._of_rows(column, rows, group)
                for name, (rows, group) in choices.items()
            }
            line.targets.append(Target(at=(row, column), readings={} if kind != "total" else readings))
        for column, role in ledger.table.columns.items():
            if role.name == "total" and kind == "total" and (row, column) in ledger.cells:
                line.targets.append(Target(at=(row, column), readings=self._crossing(choices, column)))
        return line

    def _of_rows(self, column: int, rows: Iterable[int], group: Belongs | None) -> Worked | None:
        return self._sum([(self.ledger, (row, column)) for row in rows], group, "", is_whole=True)

    def _of_all(self, name: str, column: int, rows: Iterable[int], group: Belongs | None) -> Worked | None:
        """The same of all finds, or of all in one way, which are the same beside every row of totals."""
        if (name, column) not in self._all_added:
            self._all_added[name, column] = self._of_rows(column, rows, group)
        return self._all_added[name, column]

    @cached_property
    def _all_added(self) -> dict[tuple[str, int], Worked | None]:
        return {}

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

    @cached_property
    def _rows_named(self) -> Mapping[tuple[str, ...], list[int]]:
        return _grouped(self.ledger.rows, self._name_said)

    @cached_property
    def _rows_within(self) -> Mapping[str, list[int]]:
        return _grouped(self.ledger.rows, lambda row: self.ledger.sample_at((row, 0)))

    @cached_property
    def _with_finds(self) -> frozenset[int]:
        return frozenset(row for row in self.ledger.rows if self._first_find(row) is not None)

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


def _grouped(rows: Iterable[int], of: Callable[[int], _Key]) -> dict[_Key, list[int]]:
    """Rows by what they have in common, in order."""
    found: dict[_Key, list[int]] = {}
    for row in rows:
        found.setdefault(of(row), []).append(row)
    return found
