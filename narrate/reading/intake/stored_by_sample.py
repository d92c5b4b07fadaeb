"""Stored results of a crossed table that give one figure a sample: sums over taxa, shares and densities of samples."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.remarks import conditions_in
from narrate.reading.intake.shares_drafted import share_sorted
from narrate.reading.intake.stored_added import WEIGHT
from narrate.reading.intake.stored_groups import Group, is_unnamed, meant_words
from narrate.reading.intake.stored_lines import Line, Target, Worked, read_stored
from narrate.reading.intake.stored_places import At, CellsSaid
from narrate.reading.intake.stored_rates import per_litre, scaled, share
from narrate.reading.intake.stored_states import Belongs
from narrate.reading.intake.stored_sums import OF_TAXA, Sums

NO_VOLUME = "no volume of soil is known"

_ESTIMATED = re.compile(r"estim|\best\b|scaled|extrapol|adjust|multipl|hochger", re.IGNORECASE)
_NOBODY_COULD_NAME = re.compile(
    r"\b(?:ind[eé]t|un(?:id|det|known|best)|nicht best|non (?:id|dét)|no ident|niet gedet|nieoznacz|neurč)",
    re.IGNORECASE,
)
"""'Feuillu indéterminé' is charcoal of any tree with leaves, and no taxon of its own."""


class BySample(Sums):
    """The same with the results of samples."""

    def _over_taxa(self, line: Line) -> None:
        ledger, kind, label = self.ledger, line.kind, line.label
        counts_taxa = bool(OF_TAXA.search(label)) and kind in ("total", "derived")
        if kind == "ubiquity" or (kind == "derived" and not counts_taxa):
            line.why_not = "it is no total, share or density of a sample"
            line.targets = [Target(at=ledger.at(line.at, s), readings={}) for s in self.lines_of_samples]
            return
        choices = self._choices(line)
        line.guesses |= {f"{n}{end}" for n in line.guesses for end in (" %", " share", " scaled", " scaled up")}
        if kind == "total":
            line.guesses |= {f"{n} of all its columns" for n in choices}
        is_of_some_taxa = counts_taxa and bool(meant_words(re.sub(OF_TAXA, "", label)))
        states = conditions_in(label) if counts_taxa and self._has_uncharred else ()
        if len(states) == 1:
            choices["state"] = (self.taxa, Group("", self.names, states))
        sums = [
            n
            for n, role in ledger.roles(of_taxa=False).items()
            if self.kind_of(n, role.name, not self.ledger.across) == "total"
        ]
        for s in [*self.lines_of_samples, *(sums if kind == "total" else [])]:
            of = self._summed_by(s, line) if s in sums else [s]
            readings: dict[str, Worked | None] = {}
            if counts_taxa and not is_of_some_taxa and not states:
                readings = self._numbers_of_taxa(of, self.taxa)
            elif states or (is_of_some_taxa and kind == "derived"):
                readings = self._numbers_of_groups(of, choices)
                line.guesses |= frozenset(readings)  # which names make one taxon no sheet says
            elif kind == "total":
                at = s if s in sums else None
                readings = {name: self._sum(lines, of, group, line, at) for name, (lines, group) in choices.items()}
                if len(block := self._columns_of_sample(s)) > 1 and at is None:  # 'charred' and 'dry' of one sample
                    readings |= {
                        f"{name} of all its columns": self._sum(lines, block, group, line)
                        for name, (lines, group) in choices.items()
                    }
                if _ESTIMATED.search(label):
                    readings |= self._scaled_up(line, s, readings)
            else:
                readings = self._rates(line, s, choices)
            line.targets.append(Target(at=ledger.at(line.at, s), readings=readings))

    def _scaled_up(self, line: Line, s: int, readings: Mapping[str, Worked | None]) -> dict[str, Worked | None]:
        """Sums of a sample scaled up for what was not sorted, by its share or by a number that stands beside them."""
        found = {f"{name} scaled": scaled(one, self._share_of_line(s)) or one for name, one in readings.items()}
        for n, role in self.ledger.roles(of_taxa=True).items():
            cell = self.ledger.cells.get(self.ledger.at(n, s)) if role.name in ("ignored", "derived") else None
            times = number_of(cell.text, self.ledger.table.marks.decimal) if cell is not None else None
            if times is None or times < 1:
                continue
            more = {f"{name} times {n}": scaled(one, 1 / times) for name, one in readings.items()}
            line.guesses |= more.keys()  # 'x' over 1, 2 and 4; or the depth of the sample
            found |= more
        return found

    def _share_of_line(self, s: int) -> float | None:
        """The share of a line of a sample that was sorted, as it says itself, else as its sample does; None for all."""
        ledger = self.ledger
        for n, role in ledger.roles(of_taxa=True).items():
            cell = ledger.cells.get(ledger.at(n, s)) if "sorted" in role.names else None
            scale = role.qualifiers[0] if role.qualifiers else ""
            own = share_sorted(cell.text, scale, ledger.table.marks.decimal) if cell is not None else None
            if own is not None:
                return own if own < 1 else None
        return self.shares.get(ledger.sample_of_line(s))

    def _summed_by(self, total: int, line: Line) -> list[int]:
        """The samples that a column (or row) of totals adds up: all, those of its own id, or those since the last."""
        key = (total, bool(WEIGHT.search(line.label)))
        if key not in self._summed:
            self._summed[key] = self._fitting(total, line)
        return self._summed[key]

    def _fitting(self, total: int, line: Line) -> list[int]:
        """Of the lines that a line of totals may add up, those whose counts, or weights, it fits best."""
        ledger = self.ledger
        own = ledger.sample_of_line(total)
        same = [s for s in self.lines_of_samples if own and ledger.sample_of_line(s) == own]
        before = ledger.run_before(total, of_taxa=False)
        named = [same, self.headed_alike(total), self.lines_of_samples, before, *self.under_words.values()]
        choices = [of for of in (*named, self.summed_by_numbers(total)) if of]
        stored = {t: read_stored(ledger.cells.get(ledger.at(t, total)), ledger.table.marks.decimal) for t in self.taxa}
        groups = [None, *(self._of_state(None, way, asked) for way, asked in self.states.items())]

        def fit(of: list[int], group: Belongs | None) -> int:
            worked = {t: self._sum([t], of, group, line, total) for t in self.taxa}
            return sum(s is not None and (w := worked[t]) is not None and s.agrees(w) for t, s in stored.items())

        return max(choices, key=lambda of: max(fit(of, group) for group in groups))

    def _columns_of_sample(self, s: int) -> list[int]:
        """All lines of the sample that one of its lines is of."""
        id = self.ledger.sample_of_line(s)
        return [other for other in self.lines_of_samples if id and self.ledger.sample_of_line(other) == id]

    def _numbers_of_groups(
        self, of: list[int], choices: Mapping[str, tuple[list[int], Belongs | None]]
    ) -> dict[str, Worked | None]:
        """How many taxa of one kind a sample holds ('Number of wild taxa'), by each way to read which are meant."""
        found: dict[str, Worked | None] = {}
        for name, (taxa, group) in choices.items():
            own = [t for t in taxa if group is None or any(self._answer(group, t, s) == "yes" for s in of)]
            found |= {f"{name}: {way}": worked for way, worked in self._numbers_of_taxa(of, own).items()}
        return found

    def _numbers_of_taxa(self, of: list[int], taxa: list[int]) -> dict[str, Worked | None]:
        """How many taxa a sample holds: lines, names of their own, and the same without what nobody could name."""
        cells = [self.ledger.at(t, s) for t in taxa for s in of]
        lines = {t for t in taxa if any(self._is_there(self.ledger.at(t, s)) for s in of)}
        finds = [find for t in lines if (find := self.first_find[t]) is not None]
        names = {f.name.identification.taxon or f.name.identification.written.lower() for f in finds}
        known = [f for f in finds if not is_unnamed(f)]
        known_names = {f.name.identification.taxon or f.name.identification.written.lower() for f in known}
        said = CellsSaid("counts", cells)
        asked = [t for t in lines if all(self._is_asked(self.ledger.at(t, s)) for s in of)]
        numbers = {"lines": len(lines), "names": len(names), "known": len(known), "known names": len(known_names)}
        counted = [t for t in lines if any(self.ledger.count.get(self.ledger.at(t, s)) for s in of)]
        plain = [f for t in counted if (f := self.first_find[t]) is not None and not is_unnamed(f)
                 and f.name.identification.taxon not in ("Indeterminate", "Unidentified")]  # fmt: skip
        own = {f.name.identification.taxon or f.name.identification.written.lower() for f in plain}
        written = {t: f.name.identification.written for t in counted if (f := self.first_find[t]) is not None}
        named = {t for t, text in written.items() if not _NOBODY_COULD_NAME.search(text)}
        numbers["named lines"] = len(named | set(asked))
        numbers["known and named lines"] = sum(
            not _NOBODY_COULD_NAME.search(f.name.identification.written) for f in plain
        ) + len(asked)
        numbers |= {"counted lines": len(plain) + len(asked), "counted names": len(own) + len(asked)}
        perhaps = (1.0,) * len(asked)
        return {name: Worked(value=float(n - len(asked)), said=said, perhaps=perhaps) for name, n in numbers.items()}

    def _is_asked(self, at: At) -> bool:
        """Whether a cell holds nothing but '?', which one sheet counts and another does not."""
        cell = self.ledger.cells.get(at)
        return cell is None or cell.text == "?"

    def _rates(
        self, line: Line, s: int, choices: Mapping[str, tuple[list[int], Belongs | None]]
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
                found[f"{name} scaled up"] = scaled(found[name], self._share_of_line(s)) or found[name]
                of = self._columns_of_sample(s)
                if len(of) > 1:  # 'whole' and 'frags' of one sample
                    both = self._sum(taxa, of, group, line)
                    found[f"{name} of all its columns"] = per_litre(both, own, line.label, self.ledger.grid)
                continue
            base = self._sum(self.taxa, [s], None, line) if group is not None or taxa is not self.taxa else None
            base = base or self._sum(self.taxa, self.lines_of_samples, None, line)
            found[f"{name} %"], found[f"{name} share"] = share(part, base, 100), share(part, base, 1)
            if len(of := self._columns_of_sample(s)) > 1:  # what one sieve class holds of all of its sample
                own_base = self._sum(taxa, of, group, line)
                of_columns = {"% of its columns": 100, "share of its columns": 1}
                found |= {f"{name} {way}": share(part, own_base, whole) for way, whole in of_columns.items()}
                line.guesses |= {f"{name} {way}" for way in of_columns}
        return found
