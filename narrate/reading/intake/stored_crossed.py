"""Stored results of a crossed table: those of samples, and those that give one figure a taxon."""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.model.grids import address
from narrate.model.layouts import DERIVED_ROLES
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.stored_by_sample import NO_VOLUME, BySample
from narrate.reading.intake.stored_groups import Group, meant_words, same_words
from narrate.reading.intake.stored_lines import Line, Target, Worked, joint_reading, read_stored
from narrate.reading.intake.stored_means import is_of_means, mean, samples_of_means
from narrate.reading.intake.stored_places import At, cells_said
from narrate.reading.intake.stored_rates import per_litre, scaled, share
from narrate.reading.intake.stored_states import Belongs


class CrossedLines(BySample):
    """The lines of results of a table of taxa against samples."""

    def lines(self) -> Iterable[Line]:
        """All of them."""
        return self._lines(of_totals=False)

    def totals_of_samples(self) -> Iterable[Line]:
        """Those alone that give a total for each sample."""
        return self._lines(of_totals=True)

    def _lines(self, *, of_totals: bool) -> Iterable[Line]:
        ledger = self.ledger
        for is_row, roles in ((True, ledger.table.rows), (False, ledger.table.columns)):
            for at, role in roles.items():
                kind = self.kind_of(at, role.name, is_row)
                is_asked = not of_totals or (kind == "total" and is_row == ledger.across)
                if kind in DERIVED_ROLES and is_asked:
                    yield self._line(kind, is_row, at)

    def _line(self, kind: str, is_row: bool, at: int) -> Line:
        over_taxa = is_row == self.ledger.across
        label = self._label(at, is_row, over_taxa, kind)
        line = Line(kind=kind, is_row=is_row, at=at, label=label)
        if over_taxa:
            self._over_taxa(line)
        else:
            self._over_samples(line)
        return line

    def _label(self, at: int, is_row: bool, over_taxa: bool, kind: str) -> str:
        """The words of a line that say what it holds, else its first words: 'HaZt ges.' under 'Hallstattzeit'."""
        ledger = self.ledger
        cells = [(at, n) if is_row else (n, at) for n in sorted(ledger.table.columns if is_row else ledger.table.rows)]
        texts = [ledger.cells[cell].text for cell in cells if cell in ledger.cells]
        own = [text for text in texts if heading(text) == kind]
        said = own if not over_taxa and kind != "total" else []  # 'Rank' under 'All samples'
        said += [text for text in texts if heading(text) in DERIVED_ROLES]
        return said[0] if said else ledger.head(at, of_taxa=over_taxa)

    def _over_samples(self, line: Line) -> None:
        ledger = self.ledger
        block = self._block(line)
        everything = self._sum(self.taxa, self.lines_of_samples, None, line)
        for t in self.taxa:
            readings = self._readings_of_taxon(line, t, block, everything, None)
            for way, asked in self.states.items():
                group = self._of_state(None, way, asked)
                all_of = self._sum(self.taxa, self.lines_of_samples, group, line)
                more = self._readings_of_taxon(line, t, block, all_of, group)
                readings |= {f"{name}, {way}": worked for name, worked in more.items()}
                line.guesses |= {f"{name}, {way}" for name in more}
            line.targets.append(Target(at=ledger.at(t, line.at), readings=readings))
        if line.kind in ("percent", "density"):
            self._of_totals(line, block)

    def _readings_of_taxon(
        self, line: Line, t: int, block: list[int], everything: Worked | None, group: Belongs | None
    ) -> dict[str, Worked | None]:
        """What a result beside a taxon may be, of all finds or of those of a group."""
        match line.kind:
            case "total":
                return self._totals_of_taxon(line, t, block, group)
            case "percent":
                found = self._ubiquity(t, group)
                line.guesses |= {"samples"}
                shares = self._shares_of_taxon(line, t, block, group)
                return shares | {"samples": None if block else found.get("percent")}
            case "density":
                return self._densities_of_taxon(line, t, block, group)
            case "ubiquity" if not block and self._has_phases_for_samples():
                line.why_not = "the table does not show the samples that it is of"
            case "ubiquity":
                readings = self._ubiquity(t, group) if not block else {}
                line.guesses |= {"total", "share of all"}
                all_of = self._sum([t], self.lines_of_samples, group, line)
                line.why_not = "the table does not show the samples that it is of" if block else ""
                return readings | {"total": all_of, "share of all": share(all_of, everything, 100)}
            case "derived" if is_of_means(heads := self._heads(line.at)):
                return self._means(line, t, heads, group)
            case _:
                line.why_not = "it is no total, share, density or ubiquity"
        return {}

    def _heads(self, at: int) -> list[str]:
        """All that stands over, or before, a line of results of taxa."""
        ledger = self.ledger
        others = [n for n, role in ledger.roles(of_taxa=True).items() if role.name not in ("counts", "title", "notes")]
        cells = (ledger.cells.get(ledger.at(n, at)) for n in others)
        return [cell.text for cell in cells if cell is not None and cell.kind == "text"]

    def _means(self, line: Line, t: int, heads: list[str], group: Belongs | None) -> dict[str, Worked | None]:
        """Means of a taxon; guesses, because some are of those samples alone in which it is."""
        ways = samples_of_means(self.ledger, heads)
        line.guesses |= ways.keys()
        return {name: mean(self.ledger, self._sum([t], of, group, line), of) for name, of in ways.items()}

    def _has_phases_for_samples(self) -> bool:
        """Whether phases stand where samples do in other tables: the samples behind a ubiquity are elsewhere."""
        roles = (*self.ledger.table.rows.values(), *self.ledger.table.columns.values())
        return any({"sample", "phase"} <= set(role.names) for role in roles)

    def _of_totals(self, line: Line, block: list[int]) -> None:
        """Shares and densities that stand at a total of taxa: of what that total adds up."""
        ledger = self.ledger
        of = block or self.lines_of_samples
        for t, role in ledger.roles(of_taxa=True).items():
            if role.name != "total":
                continue
            total = self._line("total", ledger.across, t)
            choices = self._choices(total)
            best = joint_reading([(total, ledger.cells, ledger.table.marks.decimal)])
            said = [choice for name, choice in choices.items() if name not in total.guesses]
            readings: dict[str, Worked | None] = {}
            for taxa, group in [choices.get(best, said[0])] if said else []:
                part, base = self._sum(taxa, of, group, line), self._sum(self.taxa, of, None, line)
                heads = {ledger.section_of(n) for n in taxa}
                section = [n for n in self.taxa if ledger.section_of(n) in heads] if len(heads) == 1 else []
                within = self._sum(section, of, None, line) if section else None
                if line.kind == "density":
                    readings = self._densities(line, part, of)
                else:
                    readings = {
                        "all %": share(part, base, 100), "all share": share(part, base, 1),
                        "section %": share(part, within, 100), "section share": share(part, within, 1),
                    }  # fmt: skip
            line.targets.append(Target(at=ledger.at(t, line.at), readings=readings))

    def _block(self, line: Line) -> list[int]:
        """The lines of the sample that results stand beside, such as '%' beside each 'n'; empty for none."""
        own = self.ledger.sample_of_line(line.at)
        same = [s for s in self.lines_of_samples if own and self.ledger.sample_of_line(s) == own]
        before = [s for s in self.lines_of_samples if s < line.at]
        is_beside = bool(before) and before[-1] == line.at - 1
        small = self.ledger.small_heading(line.at)
        if not same and is_beside and (small in ("percent", "density") or self._is_one_of_several(line)):
            return before[-1:]
        return same

    def _is_one_of_several(self, line: Line) -> bool:
        """Whether each sample, or each group of them, has a line of such results of its own."""
        roles = self.ledger.roles(of_taxa=False)
        others = [n for n, role in roles.items() if line.kind == role.name != "total" and n != line.at]
        return any(min(n, line.at) < s < max(n, line.at) for n in others for s in self.lines_of_samples)

    def _totals_of_taxon(self, line: Line, t: int, block: list[int], group: Belongs | None) -> dict[str, Worked | None]:
        if re.search(r"sample", line.label, re.IGNORECASE):
            found = self._ubiquity(t, group)
            return {"samples": found.get("number"), "all": self._sum([t], self.lines_of_samples, group, line)}
        choices = {"block": block, **self._samples_of_total(line)}
        line.guesses |= {f"under {word}" for word in self.under_words}
        is_plain = heading(line.label) in DERIVED_ROLES
        by_numbers = self.summed_by_numbers(line.at) if not block and not is_plain else []
        if by_numbers and by_numbers not in choices.values():
            choices["by its numbers"] = by_numbers
            line.guesses |= {"by its numbers"}
        if not block and not is_plain:  # 'Pit 3' may be the sum of some samples alone
            line.guesses |= {"all", "since"}
            line.why_not = "the sheet does not say which of the samples it is of"
        return {name: self._sum([t], of, group, line) for name, of in choices.items() if of}

    def _samples_of_total(self, line: Line) -> dict[str, list[int]]:
        """Ways to read which samples a total beside the taxa is of -> the lines of those, but for its own block."""
        if line.at not in self._of_totals_of_taxa:
            said = [s for s in self.lines_of_samples if self._is_said_of(s, line.label)]
            self._of_totals_of_taxa[line.at] = {
                "said": said, "same heading": self.headed_alike(line.at), "all": self.lines_of_samples,
                "since": self.ledger.run_before(line.at, of_taxa=False),
                **{f"under {word}": of for word, of in self.under_words.items()},
            }  # fmt: skip
        return self._of_totals_of_taxa[line.at]

    def _is_said_of(self, s: int, label: str) -> bool:
        """Whether the records of a sample, such as its phase, are what a label names."""
        facts = self.ledger.finds.facts.get(self.ledger.sample_of_line(s), {})
        words = re.sub(r"\b(?:grand|sub)?totals?\b|\bsums?\b", " ", label, flags=re.IGNORECASE).lower().split()
        texts = [one.text for role in ("phase", "context", "feature", "kind", "site") for one in facts.get(role, ())]
        return bool(words) and any(text.lower().split() == words for text in texts)

    def _shares_of_taxon(
        self, line: Line, t: int, block: list[int], group: Belongs | None
    ) -> dict[str, Worked | None]:
        of = block or self.lines_of_samples
        part = self._sum([t], of, group, line)
        head = self.ledger.section_of(t)
        section = [n for n in self.taxa if self.ledger.section_of(n) == head]
        bases = {"all": self.taxa, "section": section if head else []}
        if self.first_find[t] is not None:
            bases["plants"] = [n for n in self.taxa if self.first_find[n] is not None]
        words = meant_words(line.label)
        if words and head and same_words(head, line.label):
            bases = {"section": section, **bases}
        found: dict[str, Worked | None] = {}
        if self._has_uncharred and group is None:
            charred = self._sum(self.taxa, of, Group("", self.names, ("charred",)), line)
            found = {"charred %": share(part, charred, 100), "charred share": share(part, charred, 1)}
            line.guesses |= frozenset(found)
        for name, lines in bases.items():
            if lines:
                base = self._sum(lines, of, group, line)
                found[f"{name} %"], found[f"{name} share"] = share(part, base, 100), share(part, base, 1)
        for name, base in self._stored_bases(line, block).items() if group is None else ():
            found[f"{name} %"], found[f"{name} share"] = share(part, base, 100), share(part, base, 1)
            line.guesses |= {f"{name} %", f"{name} share"}
        return found

    def _stored_bases(self, line: Line, block: list[int]) -> dict[str, Worked]:
        """
        The totals as they are stored, where shares may be of them: a total that is wrong is told once, by itself, and
        not again beside each share that was taken of it.
        """
        ledger = self.ledger
        sums = [n for n, role in ledger.roles(of_taxa=False).items() if role.name == "total"]
        found: dict[str, Worked] = {}
        for t, role in ledger.roles(of_taxa=True).items():
            for s in block or sums if role.name == "total" else ():
                stored = read_stored(ledger.cells.get(ledger.at(t, s)), ledger.table.marks.decimal)
                if stored is not None and stored.number:
                    found[f"of what {address(*ledger.at(t, s))} stores"] = Worked(
                        value=stored.number, said=f"the total in {address(*ledger.at(t, s))}"
                    )
        return found

    def _densities_of_taxon(
        self, line: Line, t: int, block: list[int], group: Belongs | None
    ) -> dict[str, Worked | None]:
        of = block or self.lines_of_samples
        return self._densities(line, self._sum([t], of, group, line), of)

    def _densities(self, line: Line, part: Worked | None, of: list[int]) -> dict[str, Worked | None]:
        line.why_not = NO_VOLUME
        ids = list(dict.fromkeys(self.ledger.sample_of_line(s) for s in of))
        if any(id not in self.litres for id in ids):
            return {}
        dense = per_litre(part, [self.litres[id] for id in ids], line.label, self.ledger.grid)
        return {"all": dense, "scaled up": scaled(dense, self.shares.get(ids[0])) if len(ids) == 1 else None}

    def _ubiquity(self, t: int, group: Belongs | None = None) -> dict[str, Worked | None]:
        ledger = self.ledger
        cells = [ledger.at(t, s) for s in self.lines_of_samples]
        ids = {at: ledger.sample_at(at) or str(at) for at in cells}
        unseen = {id for at, id in ids.items() if self._is_unseen(at)}
        # '?' may count or not: no sheet says so.
        doubted = {id for at, id in ids.items() if (cell := ledger.cells.get(at)) is not None and cell.text == "?"}
        present = {id for at, id in ids.items() if self._is_there(at, group)} - doubted
        samples = len(set(ids.values()) - (unseen - present))
        said = f"the counts in {cells_said(cells)}"
        n = float(len(present))
        if not samples:
            return {}
        found = {
            name: Worked(value=n * of, said=said, of=samples if name == "number" else 0, perhaps=(of,) * len(doubted))
            for name, of in (("percent", 100 / samples), ("number", 1.0), ("share", 1 / samples))
        }
        if self.samples > samples:
            found["of all"] = Worked(value=100 * n / self.samples, said=said)
            found["n of all"] = Worked(value=n, said=said, of=self.samples)
        return dict(found)

    def _is_unseen(self, at: At) -> bool:
        """A cell that says that it was not looked for."""
        counts = [find.found.count for find in self.ledger.finds_at.get(at, ())]
        return bool(counts) and all(c is not None and c.amount == "not looked for" for c in counts)
