"""Stored results in long tables and in lists of samples: total rows, and columns worked out beside each row."""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.model.layouts import DERIVED_ROLES
from narrate.reading.intake.stored_by_sample import NO_VOLUME
from narrate.reading.intake.stored_groups import Group, is_unnamed, meant_words
from narrate.reading.intake.stored_heads import head_with_unit
from narrate.reading.intake.stored_lines import Line, Target, Worked
from narrate.reading.intake.stored_long_rows import LongRows
from narrate.reading.intake.stored_long_sums import Piece
from narrate.reading.intake.stored_rates import per_litre, scaled, share
from narrate.reading.intake.stored_sums import OF_TAXA, WHICH
from narrate.reading.intake.words_in_names import says_pieces

ELSEWHERE = "no counts of the sample are in this file"


class LongLines(LongRows):
    """The lines of results of a long table, or of a list of samples whose counts stand in other tables."""

    def lines(self) -> Iterable[Line]:
        for row, role in self.ledger.table.rows.items():
            if role.name in DERIVED_ROLES:
                yield self._total_row(row, role.name)
        for column, role in self.ledger.table.columns.items():
            if role.name in DERIVED_ROLES:
                yield self._column(column, role.name)

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
