"""Stored totals, percentages, densities and ubiquities, worked out again from the counts. Never trusted."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from narrate.model.grids import Grid
from narrate.model.layouts import DERIVED_ROLES, Layout, Table
from narrate.model.sampling import Sample
from narrate.reading.intake.finds import SheetFinds, mended
from narrate.reading.intake.said import Said
from narrate.reading.intake.stored_groups import Group, meant_words, same_words
from narrate.reading.intake.stored_ledger import At, Ledger, Litres, cells_said, shares_sorted, soil
from narrate.reading.intake.stored_lines import Line, Target, Worked, named, tell_line
from narrate.reading.intake.stored_long import LongLines
from narrate.reading.intake.stored_rates import per_litre, scaled, share
from narrate.reading.intake.told import Told
from narrate.reading.intake.written_names import NameReader

WHICH = "the sheet does not say which of the taxa it is of"
NO_VOLUME = "no volume of soil is known"
_WEIGHT = re.compile(r"\b(?:weights?|wt|mass|g|grams?|gewicht|poids|peso)\b", re.IGNORECASE)
_OF_TAXA = re.compile(r"\b(?:tax\w*|species|types?|genera)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadTable:
    """A table of a file and what was read in it."""

    grid: Grid
    table: Table
    finds: SheetFinds


def check_stored(
    tables: Sequence[ReadTable], layout: Layout, names: NameReader, told: Told, samples: Mapping[str, Sample]
) -> None:
    """Tells every stored result that the counts do not give; what is not worked out again is noted in the finds."""
    if not any(_has_results(one.table) for one in tables):
        return
    ledgers = [Ledger(one.grid, one.table, one.finds, mended(one.grid, layout)) for one in tables]
    facts: list[Mapping[str, Mapping[str, list[Said]]]] = [one.finds.facts for one in tables]
    litres, shares = soil(facts, samples), shares_sorted(facts)
    for ledger in ledgers:
        if not _has_results(ledger.table):
            continue
        lines: Iterable[Line]
        if ledger.table.shape == "crossed":
            lines = _Crossed(ledger, names, litres, shares, len(samples)).lines()
        else:
            lines = LongLines(ledger, ledgers, names, litres, shares).lines()
        for line in lines:
            why = tell_line(line, ledger.grid, ledger.cells, ledger.table.marks.decimal, told)
            if why:
                ledger.finds.not_checked[named(line)] = why


def _has_results(table: Table) -> bool:
    return any(role.name in (*DERIVED_ROLES, "quantity") for role in (*table.rows.values(), *table.columns.values()))


class _Crossed:
    """The lines of results of a table of taxa against samples."""

    def __init__(
        self, ledger: Ledger, names: NameReader, litres: Mapping[str, Litres], shares: Mapping[str, float], samples: int
    ) -> None:
        self.ledger, self.names, self.litres, self.shares, self.samples = ledger, names, litres, shares, samples
        self.taxa, self.lines_of_samples = ledger.taxon_lines, ledger.sample_lines
        self.first_find = {
            t: next((f for s in self.lines_of_samples for f in ledger.finds_at.get(ledger.at(t, s), ())), None)
            for t in self.taxa
        }
        self.groups: dict[str, Group] = {}

    def lines(self) -> Iterable[Line]:
        ledger = self.ledger
        for is_row, roles in ((True, ledger.table.rows), (False, ledger.table.columns)):
            for at, role in roles.items():
                kind = role.name
                if not is_row and kind == "counts" and ledger.small_heading(at) in ("percent", "density"):
                    kind = ledger.small_heading(at)
                if kind in DERIVED_ROLES:
                    yield self._line(kind, is_row, at)

    def _line(self, kind: str, is_row: bool, at: int) -> Line:
        over_taxa = is_row == self.ledger.across
        label = self.ledger.head(at, of_taxa=over_taxa)
        line = Line(kind=kind, is_row=is_row, at=at, label=label)
        if over_taxa:
            self._over_taxa(line)
        else:
            self._over_samples(line)
        return line

    # ---- one result a sample

    def _over_taxa(self, line: Line) -> None:
        ledger, kind, label = self.ledger, line.kind, line.label
        counts_taxa = bool(_OF_TAXA.search(label)) and kind in ("total", "derived")
        if kind == "ubiquity" or (kind == "derived" and not counts_taxa):
            line.why_not = "it is no total, share or density of a sample"
            line.targets = [Target(at=ledger.at(line.at, s), readings={}) for s in self.lines_of_samples]
            return
        choices = self._choices(line)
        sums = [n for n, role in ledger.roles(of_taxa=False).items() if role.name == "total"]
        for s in [*self.lines_of_samples, *(sums if kind == "total" else [])]:
            of = self._summed_by(s) if s in sums else [s]
            readings: dict[str, Worked | None] = {}
            if counts_taxa and not meant_words(re.sub(_OF_TAXA, "", label)):
                readings["taxa"] = self._number_of_taxa(of)
            elif kind == "total":
                readings = {name: self._sum(lines, of, group, line) for name, (lines, group) in choices.items()}
            else:
                readings = self._rates(line, s, choices)
            line.targets.append(Target(at=ledger.at(line.at, s), readings=readings))

    def _summed_by(self, total: int) -> list[int]:
        """The samples that a column (or row) of totals adds up: those of its own id, else all."""
        own = self.ledger.sample_of_line(total)
        same = [s for s in self.lines_of_samples if own and self.ledger.sample_of_line(s) == own]
        return same or self.lines_of_samples

    def _choices(self, line: Line) -> dict[str, tuple[list[int], Group | None]]:
        """Ways to read which taxa a line is of: name -> lines of taxa, and the group that they are narrowed to."""
        ledger, label, at = self.ledger, line.label, line.at
        before = ledger.run_before(at, of_taxa=True)
        behind = ledger.run_behind(at, of_taxa=True)
        above = [t for t in self.taxa if t < at]
        guessed = {"since": (before, None), "behind": (behind, None), "above": (above, None), "all": (self.taxa, None)}
        words = meant_words(re.sub(_OF_TAXA, "", label))
        if not words:
            plants = [t for t in self.taxa if self.first_find[t] is not None]
            first = "since" if re.search(r"sub", label, re.IGNORECASE) else "all"
            found = {first: guessed[first], **guessed, "plants": (plants, None)}
            if line.kind in ("percent", "density"):
                found = {"all": found["all"], "since": found["since"]}
            return {name: (lines, None) for name, (lines, _) in found.items() if lines}
        heads = {t: ledger.section_of(t) for t in self.taxa}
        own = [t for t in self.taxa if heads[t] and same_words(heads[t], label)]
        if not own and same_words(self._group_word(before), label):
            own = before
        if own:
            return {"section": (own, None)}
        by_word = [t for t in self.taxa if same_words(self._group_word([t]), label)]
        if by_word:
            return {"group": (by_word, None)}
        line.guesses = frozenset(guessed)
        line.why_not = WHICH
        group = Group(label, self.names)
        if group.is_known and any(self._answer(group, t, None) == "yes" for t in self.taxa):
            return {"kind": (self.taxa, group), **{n: c for n, c in guessed.items() if c[0]}}
        return {name: choice for name, choice in guessed.items() if choice[0]}

    def _group_word(self, lines: list[int]) -> str:
        """What a row or column of groups says of lines, where it says one thing."""
        ledger = self.ledger
        roles = ledger.roles(of_taxa=False)
        said = set()
        for other, role in roles.items():
            if "group" not in role.names:
                continue
            for t in lines:
                cell = ledger.cells.get(ledger.at(t, other))
                if cell is not None:
                    said.add(cell.text)
        return said.pop() if len(said) == 1 else ""

    def _answer(self, group: Group, t: int, s: int | None) -> str:
        found = self.ledger.finds_at.get(self.ledger.at(t, s), ()) if s is not None else ()
        first = next(iter(found), None) or self.first_find[t]
        return group.holds(first) if first is not None else "no"

    def _sum(self, taxa: list[int], of: list[int], group: Group | None, line: Line) -> Worked | None:
        """The sum of counts, or of weights where the line is of weights or nothing else is there."""
        ledger = self.ledger
        lane = self._lane(line, of)
        of = [s for s in of if (ledger.small_heading(self._column(line, s)) == "mass") == (lane == "mass")] or of
        total, cells, more, doubtful = 0.0, [], [], []
        for t in taxa:
            for s in of:
                at = ledger.at(t, s)
                answer = self._answer(group, t, s) if group is not None else "yes"
                if answer == "no":
                    continue
                value = ledger.mass.get(at, 0.0) if lane == "mass" else ledger.count.get(at, 0.0)
                if value is None:
                    return None
                if answer == "yes":
                    total += value
                    cells.append(at)
                elif value:
                    more.append(value)
                    doubtful.append(at)
        what = "weights" if lane == "mass" else "counts"
        return Worked(
            value=total, said=f"the {what} in {cells_said(cells)}" if cells else f"no {what}",
            perhaps=tuple(more), perhaps_said=cells_said(doubtful),
        )  # fmt: skip

    def _column(self, line: Line, s: int) -> int:
        """The column whose small heading says what is added: of a sample, or the line's own."""
        return s if self.ledger.across else line.at if not line.is_row else s

    def _lane(self, line: Line, of: list[int]) -> str:
        ledger = self.ledger
        columns = of if ledger.across and line.is_row else [line.at]
        own = {ledger.small_heading(column) for column in columns}
        if own == {"mass"} or (_WEIGHT.search(line.label) and ledger.mass):
            return "mass"
        counted = any(ledger.at(t, s) in ledger.count for t in self.taxa for s in of)
        return "count" if counted or not ledger.mass else "mass"

    def _number_of_taxa(self, of: list[int]) -> Worked:
        at = [ledger_at for t in self.taxa for s in of for ledger_at in [self.ledger.at(t, s)]]
        present = {cell for cell in at if self._is_there(cell)}
        lines = {cell[0] if self.ledger.across else cell[1] for cell in present}
        return Worked(value=float(len(lines)), said=f"the counts in {cells_said(at)}")

    def _is_there(self, at: At) -> bool:
        return bool(self.ledger.mass.get(at)) or self.ledger.count.get(at, 0.0) != 0

    def _rates(
        self, line: Line, s: int, choices: Mapping[str, tuple[list[int], Group | None]]
    ) -> dict[str, Worked | None]:
        """Shares of a sample and numbers per litre, by each way to read which taxa are meant."""
        found: dict[str, Worked | None] = {}
        id = self.ledger.sample_of_line(s)
        for name, (taxa, group) in choices.items():
            part = self._sum(taxa, [s], group, line)
            if line.kind == "density":
                line.why_not = line.why_not or NO_VOLUME
                own = [self.litres[id]] if id in self.litres else []
                found[name] = per_litre(part, own, line.label, self.ledger.grid)
                found[f"{name} scaled up"] = scaled(found[name], self.shares.get(id))
                continue
            base = self._sum(self.taxa, [s], None, line) if group is not None or taxa is not self.taxa else None
            base = base or self._sum(self.taxa, self.lines_of_samples, None, line)
            found[f"{name} %"], found[f"{name} share"] = share(part, base, 100), share(part, base, 1)
        if line.guesses:
            line.guesses |= {f"{n}{end}" for n in line.guesses for end in (" %", " share", " scaled up")}
        return found

    # ---- one result a taxon

    def _over_samples(self, line: Line) -> None:
        ledger = self.ledger
        block = self._block(line)
        for t in self.taxa:
            readings: dict[str, Worked | None] = {}
            match line.kind:
                case "total":
                    readings = self._totals_of_taxon(line, t, block)
                case "percent":
                    readings = self._shares_of_taxon(line, t, block)
                case "density":
                    readings = self._densities_of_taxon(line, t, block)
                case "ubiquity":
                    readings = self._ubiquity(t)
                case _:
                    line.why_not = "it is no total, share, density or ubiquity"
            line.targets.append(Target(at=ledger.at(t, line.at), readings=readings))

    def _block(self, line: Line) -> list[int]:
        """The lines of the sample that results stand beside, such as '%' beside each 'n'; empty for none."""
        own = self.ledger.sample_of_line(line.at)
        same = [s for s in self.lines_of_samples if own and self.ledger.sample_of_line(s) == own]
        before = [s for s in self.lines_of_samples if s < line.at]
        if not same and before and self.ledger.small_heading(line.at) in ("percent", "density"):
            return before[-1:]
        return same

    def _totals_of_taxon(self, line: Line, t: int, block: list[int]) -> dict[str, Worked | None]:
        if re.search(r"sample", line.label, re.IGNORECASE):
            found = self._ubiquity(t)
            return {"samples": found["number"], "all": self._sum([t], self.lines_of_samples, None, line)}
        before = self.ledger.run_before(line.at, of_taxa=False)
        said = [s for s in self.lines_of_samples if self._is_said_of(s, line.label)]
        choices = {"block": block, "said": said, "all": self.lines_of_samples, "since": before}
        return {name: self._sum([t], of, None, line) for name, of in choices.items() if of}

    def _is_said_of(self, s: int, label: str) -> bool:
        """Whether the records of a sample, such as its phase, are what a label names."""
        facts = self.ledger.finds.facts.get(self.ledger.sample_of_line(s), {})
        words = re.sub(r"\b(?:grand|sub)?totals?\b|\bsums?\b", " ", label, flags=re.IGNORECASE).lower().split()
        texts = [one.text for role in ("phase", "context", "feature", "kind", "site") for one in facts.get(role, ())]
        return bool(words) and any(text.lower().split() == words for text in texts)

    def _shares_of_taxon(self, line: Line, t: int, block: list[int]) -> dict[str, Worked | None]:
        of = block or self.lines_of_samples
        part = self._sum([t], of, None, line)
        head = self.ledger.section_of(t)
        section = [n for n in self.taxa if self.ledger.section_of(n) == head]
        bases = {"all": self.taxa, "section": section if head else []}
        if self.first_find[t] is not None:
            bases["plants"] = [n for n in self.taxa if self.first_find[n] is not None]
        words = meant_words(line.label)
        if words and head and same_words(head, line.label):
            bases = {"section": section, **bases}
        found: dict[str, Worked | None] = {}
        for name, lines in bases.items():
            if lines:
                base = self._sum(lines, of, None, line)
                found[f"{name} %"], found[f"{name} share"] = share(part, base, 100), share(part, base, 1)
        return found

    def _densities_of_taxon(self, line: Line, t: int, block: list[int]) -> dict[str, Worked | None]:
        line.why_not = NO_VOLUME
        ledger = self.ledger
        of = block or self.lines_of_samples
        ids = dict.fromkeys(self.ledger.sample_of_line(s) for s in of)
        if any(id not in self.litres for id in ids):
            return {}
        dense = per_litre(self._sum([t], of, None, line), [self.litres[id] for id in ids], line.label, ledger.grid)
        return {"all": dense, "scaled up": scaled(dense, self.shares.get(next(iter(ids)))) if len(ids) == 1 else None}

    def _ubiquity(self, t: int) -> dict[str, Worked | None]:
        ledger = self.ledger
        cells = [ledger.at(t, s) for s in self.lines_of_samples]
        ids = {at: ledger.sample_at(at) or str(at) for at in cells}
        unseen = {id for at, id in ids.items() if self._is_unseen(at)}
        present = {id for at, id in ids.items() if self._is_there(at)}
        samples = len(set(ids.values()) - (unseen - present))
        said = f"the counts in {cells_said(cells)}"
        n = float(len(present))
        if not samples:
            return {}
        found = {
            "percent": Worked(value=100 * n / samples, said=said), "number": Worked(value=n, said=said, of=samples),
            "share": Worked(value=n / samples, said=said),
        }  # fmt: skip
        if self.samples > samples:
            found["of all"] = Worked(value=100 * n / self.samples, said=said)
            found["n of all"] = Worked(value=n, said=said, of=self.samples)
        return dict(found)

    def _is_unseen(self, at: At) -> bool:
        """A cell that says that it was not looked for."""
        counts = [find.found.count for find in self.ledger.finds_at.get(at, ())]
        return bool(counts) and all(c is not None and c.amount == "not looked for" for c in counts)
