"""Sums of counts in a table of taxa against samples, and which taxa a row or column of results is of."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cached_property

from narrate.model.ids import TaxonId
from narrate.model.layouts import DERIVED_ROLES
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.left_out_of_totals import left_out_of
from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.stored_added import Added
from narrate.reading.intake.stored_formulas import summed_by_formulas
from narrate.reading.intake.stored_groups import PLAIN_WORDS, Group, meant_words, same_words
from narrate.reading.intake.stored_ledger import Ledger, Litres
from narrate.reading.intake.stored_lines import Line
from narrate.reading.intake.stored_numbers import summed_by
from narrate.reading.intake.stored_states import SEEDS, Belongs, ButChaff, OfState, State, states_of
from narrate.reading.intake.words_in_names import SIZE
from narrate.reading.intake.written_names import NameReader

WHICH = "the sheet does not say which of the taxa it is of"
OF_TAXA = re.compile(
    r"\b(?:ta[xk]\w*|táx\w*|species|esp[eèé]c\w*|specie|types?|tipos|genera|(?:pflanzen)?arten|(?:planten)?soorten"
    r"|gatunk\w*)\b",
    re.IGNORECASE,
)


_SMALL = ("quantity", "completeness", "condition", "size class", "fraction", "part")
"""Roles of rows that part the columns of one sample."""

_IDENTIFIED = ("identified", "identifiable")
_LINKS = PLAIN_WORDS | {"and", "und", "et", "y", "e", "en", "i", "or"}


class Sums(Added):
    """A crossed table and what its cells add up to."""

    def __init__(
        self, ledger: Ledger, names: NameReader, litres: Mapping[str, Litres], shares: Mapping[str, float], samples: int
    ) -> None:
        super().__init__(ledger)
        self.names, self.litres, self.shares, self.samples = names, litres, shares, samples
        conditions = {find.condition for find in ledger.finds.finds}
        self._has_uncharred = "charred" in conditions and len(conditions) > 1
        self._finds_of: dict[int, list[Find]] = {}
        for t in self.taxa:
            own = [find for s in self.lines_of_samples for find in ledger.finds_at.get(ledger.at(t, s), ())]
            self._finds_of[t] = list({(find.condition, find.completeness): find for find in own}.values())
        self._but_chaff = ButChaff(names.packs)
        self.states = states_of(ledger.finds.finds)
        self._narrowed: dict[tuple[int, str], OfState] = {}
        self._of_totals_of_taxa: dict[int, dict[str, list[int]]] = {}
        """Line of totals beside the taxa -> the samples that it may be of, by each way to read it."""
        self._summed: dict[tuple[int, bool], list[int]] = {}
        """Line of totals of samples, and whether weights are asked for -> the samples that it adds up."""
        self._by_numbers: dict[int, list[int]] = {}
        """Line of totals of samples -> the samples that it adds up by its numbers."""

    def _choices(self, line: Line) -> dict[str, tuple[list[int], Belongs | None]]:
        """The ways to read which taxa a line is of; each also without what the totals of a sheet may leave out."""
        found: dict[str, tuple[list[int], Belongs | None]] = dict(self._plain_choices(line))
        words = re.findall(r"[^\W\d_]+", line.label)
        if any(map(SEEDS.fullmatch, words)) and all(w.lower() in _LINKS or SEEDS.fullmatch(w) for w in words):
            found["all but chaff"] = (self.taxa, self._but_chaff)
            line.guesses |= {"all but chaff"}
        for way, asked in self.states.items() if line.kind != "ubiquity" else ():
            for name, (taxa, group) in list(found.items()):
                if not name.endswith(" left out") and self._parts(taxa, OfState(None, **asked)):
                    found[f"{name}, {way}"] = (taxa, self._of_state(group, way, asked))
                    line.guesses |= {f"{name}, {way}"}
        return found

    def _parts(self, taxa: list[int], state: OfState) -> bool:
        """Whether some finds of these lines are in a state, and some are not: else there is nothing to leave out."""
        held = {state.holds(find) for t in taxa for find in self._finds_of.get(t, ())}
        return len(held) > 1

    def _of_state(self, group: Belongs | None, way: str, asked: State) -> OfState:
        """One object for each group and way, so that sums that were worked out are known again."""
        key = (id(group) if group is not None else 0, way)
        if key not in self._narrowed:
            self._narrowed[key] = OfState(group, **asked)
        return self._narrowed[key]

    def _plain_choices(self, line: Line) -> dict[str, tuple[list[int], Group | None]]:
        """Ways to read which taxa a line is of: name -> lines of taxa, and the group that they are narrowed to."""
        label, without = left_out_of(line.label)
        left_out = Group(without, self.names) if without else None
        if left_out is None or not left_out.is_known:
            return self._choices_of(line, line.label)
        kept = {t for t in self.taxa if self._answer(left_out, t, None) != "yes"}
        choices = self._choices_of(line, label)
        found = {name: ([t for t in of if t in kept], group) for name, (of, group) in choices.items()}
        return {name: choice for name, choice in found.items() if choice[0]}

    def _choices_of(self, line: Line, label: str) -> dict[str, tuple[list[int], Group | None]]:
        """The same of all taxa, by a label."""
        ledger, at = self.ledger, line.at
        before = ledger.run_before(at, of_taxa=True)
        behind = ledger.run_behind(at, of_taxa=True)
        above = [t for t in self.taxa if t < at]
        guessed = {"since": (before, None), "behind": (behind, None), "above": (above, None), "all": (self.taxa, None)}
        is_plain = heading(label) in DERIVED_ROLES  # what 'Total' leaves out by its numbers may be what is wrong in it
        by_numbers = summed_by(ledger, line, of_taxa=True) if line.kind == "total" and not is_plain else []
        if by_numbers and by_numbers not in (before, behind, above, self.taxa):
            guessed["by its numbers"] = (by_numbers, None)
        if len(plants_alone := [t for t in self.taxa if not self._is_fungus_or_dung(t)]) < len(self.taxa):
            guessed["all but fungi and dung"] = (plants_alone, None)
        words = meant_words(re.sub(OF_TAXA, "", label))
        named = tuple(word for word in words if word in _IDENTIFIED) if re.search(r"seeds?\b", label, re.I) else ()
        if named == words:  # 'Identifiable seeds' are seeds, and no others
            plants = [t for t in self.taxa if self.first_find[t] is not None]
            line.guesses, line.least = frozenset(guessed) - {"all"}, 1
            first = "since" if re.search(r"sub", label, re.IGNORECASE) else "all"
            found = {first: guessed[first], **guessed, "plants": (plants, None)}
            if first == "since":
                line.guesses -= {"since"}
            said = {t: (ledger.section_of(t) or self._group_word([t])).strip().lower() for t in self.taxa}
            if under := [t for t in self.taxa if said[t] in label.lower().split()]:
                found["under its head"] = (under, None)  # 'Total seeds' behind those under 'Seeds'
            charred: dict[str, tuple[list[int], Group | None]] = {}
            if self._has_uncharred:
                charred = {"charred": (self.taxa, Group("", self.names, ("charred",)))}
            if line.kind in ("percent", "density"):
                kept = ("all", "since", "plants", "all but fungi and dung")
                found = {way: found[way] for way in kept if way in found}
                found["by its formulas"] = (self._by_formulas(at), None)
                line.guesses |= {"by its formulas"}
                found["total before"] = (ledger.run_before(self._total_before(at), of_taxa=True), None)
                if self._total_before(at) != at:
                    found["above"] = guessed["above"]  # what a grand total adds up, and nothing that stands below it
            if under := self._under_one_word(before):
                found["under its word"] = (under, None)
                line.guesses |= {"under its word"}
            if re.search(r"seeds?\b", label, re.IGNORECASE):
                charred["seeds"] = (self.taxa, Group("", self.names, ("seed", *named)))
                finds = self.first_find
                for way, large in (("seeds but kernels", ("kernel", "grain")), ("seeds but maize", ("kernel",))):
                    small = [t for t in self.taxa if (find := finds[t]) is not None and find.part not in large]
                    if 0 < len(small) < len(self.taxa):
                        # Kernels of maize, or all large grains, are often counted apart from 'seeds'.
                        charred[way] = (small, Group("", self.names, ("seed", *named)))
                        line.guesses |= {way}
            return {name: (lines, None) for name, (lines, _) in found.items() if lines} | charred
        heads = {t: ledger.section_of(t) for t in self.taxa}
        own = [t for t in self.taxa if heads[t] and same_words(SIZE.sub(" ", heads[t]), label)]  # 'Nutshell (> 2 mm)'
        if not own and same_words(self._group_word(before), label):
            own = before
        if own:
            # Behind the lines of a section others may stand that have no head of their own.
            of_it: dict[str, tuple[list[int], Group | None]] = {"section": (own, None)}
            of_it |= {f"first {n} of it": (own[:n], None) for n in range(2, len(own))}
            line.guesses |= of_it.keys() - {"section"}
            kind = Group(label, self.names)
            # 'Aegilops glume bases are counted as chaff': those of the kind may stand in other sections too.
            others: list[int] = []
            if kind.is_known and not kind.is_either:
                others = [t for t in self.taxa if t not in own and self._answer(kind, t, None) == "yes"]
            if others:
                line.guesses |= {"section and its kind"}
                of_it["section and its kind"] = ([*own, *others], None)
            return of_it
        by_word = [t for t in self.taxa if same_words(self._group_word([t]), label)]
        if by_word:
            return {"group": (by_word, None)}
        if by_formulas := self._by_formulas(at):
            return {"by its formulas": (by_formulas, None)}
        line.guesses = frozenset(guessed)
        line.why_not = WHICH
        group = Group(label, self.names)
        if group.is_known and any(self._answer(group, t, None) == "yes" for t in self.taxa):
            return {"kind": (self.taxa, group), **{n: c for n, c in guessed.items() if c[0]}}
        return {name: choice for name, choice in guessed.items() if choice[0]}

    def _is_fungus_or_dung(self, t: int) -> bool:
        """Whether a line is of dung or of a fungus, such as Cenococcum, which totals of plants often leave out."""
        find = self.first_find[t]
        taxon = self.names.packs.taxa.get(find.name.identification.taxon or TaxonId("")) if find is not None else None
        return (find is not None and find.part == "dung") or (taxon is not None and taxon.habit == "fungus")

    def _by_formulas(self, at: int) -> list[int]:
        """The lines of taxa that the formulas of a line of results add up; none where it has none."""
        ledger = self.ledger
        targets = [ledger.at(at, s) for s in self.lines_of_samples]
        return summed_by_formulas(ledger.cells, targets, self.taxa, in_rows=ledger.across)

    def _total_before(self, at: int) -> int:
        """The line of totals that a line of densities or shares stands behind, at once; itself where there is none."""
        role = self.ledger.roles(of_taxa=True).get(at - 1)
        return at - 1 if role is not None and role.name == "total" else at

    def _under_one_word(self, before: list[int]) -> list[int]:
        """Those of the lines before a total that stand under the last word of a column of parts or groups, if not all."""
        cells, at = self.ledger.cells, self.ledger.at
        starts = [
            max((t for t in before if at(t, other) in cells), default=-1)
            for other, role in self.ledger.roles(of_taxa=False).items()
            if {"part", "group"} & set(role.names)
        ]
        under = [t for t in before if starts and t >= max(starts) >= 0]
        return under if 1 < len(under) < len(before) else []

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

    def kind_of(self, line: int, kind: str, is_row: bool) -> str:
        """What a line of results is, with its headings: 'Total (%)' is a share."""
        if not is_row and kind == "counts" and self.ledger.small_heading(line) in ("percent", "density"):
            return self.ledger.small_heading(line)
        head = self.ledger.head(line, of_taxa=is_row == self.ledger.across)
        return "percent" if kind == "total" and "%" in head else kind

    def summed_by_numbers(self, at: int) -> list[int]:
        """The lines of samples that a line of totals adds up by its numbers; none where chance may have made it so."""
        if at not in self._by_numbers:
            line = Line(kind="total", is_row=not self.ledger.across, at=at, label=self.ledger.head(at, of_taxa=False))
            self._by_numbers[at] = summed_by(self.ledger, line, of_taxa=False)
        return self._by_numbers[at]

    def headed_alike(self, line: int) -> list[int]:
        """The lines of samples under the small heading of a line of totals, where samples have several."""
        own = self.ledger.small_heading(line) if self.ledger.across else ""
        of = [s for s in self.lines_of_samples if own and self.ledger.small_heading(s) == own]
        of = of or self._under_the_same_word(line) or self._of_the_word(line)
        return of if len(of) < len(self.lines_of_samples) else []

    def _under_the_same_word(self, line: int) -> list[int]:
        """The lines of samples under the state, size or part that stands over a line of totals too: 'uvk' for each."""
        ledger = self.ledger
        for row in [r for r, role in ledger.table.rows.items() if role.name in _SMALL] if ledger.across else ():
            own = ledger.cells.get((row, line))
            cells = {s: ledger.cells.get((row, s)) for s in self.lines_of_samples} if own is not None else {}
            of = [s for s, cell in cells.items() if own is not None and cell is not None and cell.text == own.text]
            if of:
                return of
        return []

    def _of_the_word(self, line: int) -> list[int]:
        """The lines of samples under the word that a total is of: 'Total W', 'Suma W' of all columns headed W."""
        head = re.sub(r"\bof\b", " ", self.ledger.head(line, of_taxa=False), flags=re.IGNORECASE)
        for word, of in self.under_words.items():
            rest = re.sub(rf"(?<!\w){re.escape(word)}(?!\w)", " ", head, flags=re.IGNORECASE)
            if rest != head and heading(rest.strip(" .:()")) == "total":
                return of
        return []

    @cached_property
    def under_words(self) -> dict[str, list[int]]:
        """State, size class, fraction or part -> the lines of samples under it, where the samples have several."""
        ledger, found = self.ledger, dict[str, list[int]]()
        others = ledger.table.rows if ledger.across else ledger.table.columns
        for n in [n for n, role in others.items() if set(role.names) & set(_SMALL)]:
            for s in self.lines_of_samples:
                cell = ledger.cells.get((n, s) if ledger.across else (s, n))
                if cell is not None and (word := cell.text.strip(" .:()").lower()):
                    found.setdefault(word, []).append(s)
        return {word: of for word, of in found.items() if len(of) < len(self.lines_of_samples)}

    def _answer(self, group: Belongs, t: int, s: int | None) -> str:
        found = self.ledger.finds_at.get(self.ledger.at(t, s), ()) if s is not None else ()
        first = next(iter(found), None) or self.first_find[t]
        return group.holds(first) if first is not None else "no"
