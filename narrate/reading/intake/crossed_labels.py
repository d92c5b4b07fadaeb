"""What the columns of words beside a crossed table say of its taxa: names, parts, families, codes, conditions."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from itertools import pairwise

from narrate.model.layouts import DERIVED_ROLES, Role
from narrate.reading.intake.crossed_body import ROW_META
from narrate.reading.intake.crossed_heads import Heads
from narrate.reading.intake.header_words import flat_heading, heading, quantity
from narrate.reading.intake.heads_by_content import (
    COMPLETE,
    SIZES,
    are_quantities_and_parts,
    are_quantities_and_states,
    condition_role,
    heading_over,
)
from narrate.reading.intake.states_under_heads import are_states

_OF_LABELS = (
    "taxon", "genus", "epithet", "family", "common name", "authority", "part", "condition", "completeness", "code",
    "group", "note", "cf", "size class", "fraction", "description", "count", "kind", *DERIVED_ROLES,
)  # fmt: skip
_BESIDE_RECORDS = ("taxon", "family", "common name", "part", "note", "authority")
"""What heads of columns say that no row of records is headed with."""


@dataclass(slots=True)
class Labels(Heads):
    """The same with the roles of the columns of words."""

    def _label_roles(self, heads: list[int]) -> None:
        """Roles of the columns of words, by their headings, then by what stands in them."""
        look = self.look
        # 'Feature type' before a row of kinds of context heads that row, and not the column that it stands in.
        heads_of_rows = (
            "title",
            "section",
            "condition",
            "completeness",
            *(role for role in ROW_META if role not in ("sample", *DERIVED_ROLES)),
        )
        head_rows = [
            row
            for row in range(self.area.top, self.body[0])
            if self.rows.get(row, Role(name="title")).name not in heads_of_rows and not self._is_row_of_results(row)
        ]
        for column in self.labels:
            texts = [look.text(row, column) for row in self.body if (row, column) in look.cells]
            roles = [heading(look.text(row, column)) for row in head_rows if look.text(row, column)]
            label_roles = [r for r in roles if r in _OF_LABELS]
            role = label_roles[-1] if label_roles else self._head_beside_records(column)
            if column == self.names:
                own = "genus" if role == "genus" else "taxon"
                self.columns[column] = Role(name=own, filled=self._names_need_fill(column))
                continue
            if not role and (one := self._in_one_cell(column)):
                self.columns[column] = Role(name=one)
                continue
            may_be_quantity = role in ("count", "description", "kind", "note", "group", "code")
            if may_be_quantity and self._is_of_quantities(column, texts):
                role = "quantity"
            if role in ("count", "description", "kind", "note"):
                role = "taxon note"
            if role in DERIVED_ROLES:
                self.columns[column] = Role(name=role)
                continue
            if role in ("", "condition", "taxon note") and are_quantities_and_states(texts, look):
                self.columns[column] = Role(name="quantity", also=("condition",))
                continue
            small = [look.text(row, column) for row in self.body if (row, column) in look.own]
            if not role and are_quantities_and_parts(small, look):  # names may be merged down beside them
                self.columns[column] = Role(name="quantity", also=("part",))
                continue
            if role == "condition" or any(are_states(look.text(row, column), texts, look) for row in head_rows):
                self.columns[column] = condition_role([look.text(row, column) for row in head_rows])
                continue
            if role == "taxon" and sum(bool(look.names.part_of(t)) for t in texts) >= 0.6 * len(texts) > 0:
                role = "part"
            if role == "taxon":
                is_epithet = self.columns.get(self.names, Role(name="")).name == "genus" or (
                    heading_over(look, head_rows, self.names) == "genus" and column > self.names
                )
                role = "epithet" if is_epithet else self._second_names(column, texts)
            if (
                not role
                and any(
                    (row, self.names) not in look.cells and look.name_score(row, column) >= 0.45
                    for row, r in self.rows.items()
                    if r.name == "counts"
                )
                and self._label_by_content(column, texts) == "taxon note"
            ):
                role = "common name"
            if role in ("", "taxon note") and look.is_turned and self._heads_runs(column, some_parts=True):
                self.columns[column] = Role(name="group", filled=True)  # 'Wood', 'Crops' and 'Seeds' over names
                continue
            if (
                role in ("group", "taxon note")
                and sum(bool(look.names.part_of(t)) for t in texts) >= 0.6 * len(texts) > 0
            ):
                role = "part"
            by_content = role or self._label_by_content(column, texts)
            if not role and by_content in ("taxon note", "common name") and self._heads_runs(column):
                self.columns[column] = Role(name="group", filled=True)
                continue
            is_over_names = look.is_turned and column < self.names and len(self.body) > 3
            if not role and by_content == "taxon note" and is_over_names and len(texts) == 1:
                # 'still to do: 33, 34' beside the title, over whatever plant stands in that column
                self.columns[column] = Role(name="ignored", qualifiers=("a note beside the table",))
                continue
            if by_content == "taxon note" and self._tells_names_apart(column):
                by_content = "part"
                words = ", ".join(dict.fromkeys(texts))
                self.doubts.append(f"a column tells lines of one name apart ({words[:60]}): taken for plant parts")
            states = sum(bool(re.search("[,(]", t) and look.names.condition_of(t)) for t in texts)
            also = ("condition",) if by_content == "part" and states >= 0.6 * len(texts) else ()
            self.columns[column] = Role(name=by_content, also=also, filled=self._label_needs_fill(column, role))
        self._groups_over_parts()
        self._results_among_lines()
        self._split_names()
        if any(role.name == "genus" for role in self.columns.values()) and not any(
            r.name == "epithet" for r in self.columns.values()
        ):
            self.columns[self.names] = Role(name="taxon", filled=self.columns[self.names].filled)

    def _groups_over_parts(self) -> None:
        """Of two columns of parts, one that is written once over many names heads groups: 'Seeds', 'Wood'."""
        own = {
            c: sum((row, c) in self.look.own for row in self.body) for c in self.labels if "part" in self.columns[c].names
        }
        for column, times in own.items():
            if len(own) == 2 and 2 * times <= max(own.values()) and self.columns[column].names == ("part",):
                self.columns[column] = Role(name="group", filled=True)

    def _in_one_cell(self, column: int) -> str:
        """'title' or 'notes' where one long text in a merged cell stands over, or under, all names side by side."""
        look = self.look
        own = [row for row in range(look.rows) if (row, column) in look.own]
        is_one = look.is_turned and len(own) == 1 and len(self.body) > 3 and (self.body[-1], column) in look.cells
        text = look.text(own[0], column) if is_one else ""
        if len(text.encode()) <= 30 or look.names.part_of(text) or look.names.condition_of(text):
            return ""
        return "title" if column < self.names else "notes"

    def _is_row_of_results(self, row: int) -> bool:
        """Whether a row over the names holds results or running numbers: its label is its own, and heads no column."""
        role = self.rows.get(row)
        is_own = role is not None and role.name in (*DERIVED_ROLES, "ignored")
        return is_own and sum(self.look.is_amount(row, c) for c in self.counts) >= 0.5 * len(self.counts)

    def _tells_names_apart(self, column: int) -> bool:
        """Whether names come again, each time with another of a few short words beside them, as names of parts do."""
        lines = [row for row, role in self.rows.items() if role.name == "counts" and self.look.text(row, self.names)]
        pairs = [(self.look.text(row, self.names), self.look.text(row, column)) for row in lines]
        times = Counter(name for name, _ in pairs)
        again = [pair for pair in pairs if times[pair[0]] > 1]
        words = {word for _, word in pairs if word}
        return (
            all(role.name != "part" for role in self.columns.values())
            and len(again) >= 2 and all(word for _, word in again)
            and len(set(again)) == len(again)
            and len(words) <= 0.7 * len(pairs)
            and all(len(word) <= 25 for word in words)
        )

    def _heads_runs(self, column: int, *, some_parts: bool = False) -> bool:
        """
        Whether a column before the names has a word of its own at the first of several lines, again and again.

        some_parts: any of them but not all may name parts; else less than half.
        """
        given = [(row, column) in self.look.own for row in self.body]
        texts = [self.look.text(row, column) for row, is_own in zip(self.body, given, strict=True) if is_own]
        runs = [n for n, is_own in enumerate(given) if is_own]
        return (
            column < self.names and len(texts) >= 2 and len(set(texts)) == len(texts)
            and (given[0] or (some_parts and bool(self.look.text(self.body[0], column))))
            and len(texts) <= 0.5 * len(given)
            and (1 if some_parts else 2) * sum(bool(self.look.names.part_of(t)) for t in texts) < len(texts)
            and any(b - a > 1 for a, b in pairwise(runs))
        )  # fmt: skip

    def _results_among_lines(self) -> None:
        """Lines that a column of 'n, g, %' calls shares or densities are results."""
        for column in [c for c, role in self.columns.items() if role.name == "quantity" and c in self.labels]:
            for row in [r for r, role in self.rows.items() if role.name == "counts"]:
                said = quantity(self.look.text(row, column))
                if said in ("percent", "density"):
                    self.rows[row] = Role(name=said)

    def _split_names(self) -> None:
        """Genera in one column and epithets in the next, without headings that say so."""
        if self.columns[self.names].name != "taxon":
            return
        for column in (
            c for c in self.labels if c > self.names and self.columns[c].name in ("taxon note", "common name")
        ):
            own = [(self.look.text(r, self.names), self.look.text(r, column)) for r in self.body]
            given = [(a, b) for a, b in own if a and b]
            if (
                len(given) >= 2
                and sum(
                    " " not in a
                    and a[:1].isupper()
                    and bool(re.fullmatch(r"(?:cf\. ?)?[a-z-]{3,}|spp?\.?|indet\.?", b))
                    for a, b in given
                )
                >= 0.7 * len(given)
                and not any(self.look.names.part_of(b) for _, b in given)
            ):
                filled = self.columns[self.names].filled or any(not a and b for a, b in own)
                self.columns[self.names] = Role(name="genus", filled=filled)
                self.columns[column] = Role(name="epithet")
                return

    def _head_beside_records(self, column: int) -> str:
        """The role of a column of words by a head that stands in a row of records: 'Remarks' behind '100, 50'."""
        found = ""
        for row in range(self.area.top, self.body[0]):
            role, own = heading(self.look.text(row, column)), self.rows.get(row, Role(name="title")).names
            if role in _BESIDE_RECORDS and role not in own and not {"note", "sample note"} & set(own):
                found = role
        return found

    def _names_need_fill(self, column: int) -> bool:
        """A blank under a name, in a row with counts that another column of words tells apart, is the name above."""
        others = [c for c in self.labels if c != column]
        blank = [
            row for row, role in self.rows.items() if role.name == "counts" and (row, column) not in self.look.cells
        ]
        part_of = self.look.names.part_of
        for other in others:
            texts = [self.look.text(row, other) for row in self.body if (row, other) in self.look.cells]
            is_of_parts = sum(bool(part_of(text)) for text in texts) >= 0.6 * len(texts)
            if not is_of_parts and any(self.look.name_score(row, other) >= 0.45 for row in blank):
                return False  # the name of that line stands in another column
        return any(
            role.name == "counts"
            and (row, column) not in self.look.cells
            and any(self.look.text(row, c) for c in others)
            for row, role in self.rows.items()
        )

    def _label_needs_fill(self, column: int, role: str) -> bool:
        if role not in ("family", "group", "part", "genus"):
            return False
        given = [(row, column) in self.look.own for row in self.body]
        return (
            bool(given) and given[0] and given.count(False) >= 0.3 * len(given) and role in ("family", "group", "genus")
        )

    def _second_names(self, column: int, texts: list[str]) -> str:
        names = self.look.names
        common = sum(names.read(t).is_known for t in texts)
        return "common name" if texts and common >= 0 else "taxon note"

    def _label_by_content(self, column: int, texts: list[str]) -> str:
        names = self.look.names
        if not texts:
            return "ignored"
        if all(t.strip(" ().") in names.short.conditions for t in texts):
            return "condition"  # 'n' is no number where the sheet says that it is uncharred
        if self._is_of_quantities(column, texts):
            return "quantity"
        if sum(bool(names.part_of(t)) for t in texts) >= 0.6 * len(texts):
            return "part"
        # Letters alone may be of habitats or uses: all of them must be of conditions.
        share = 1.0 if all(len(t) <= 2 for t in texts) else 0.6
        if sum(bool(names.condition_of(t)) for t in texts) >= share * len(texts):
            return "condition"
        if sum(t.lower().endswith("aceae") for t in texts) >= 0.5 * len(texts):
            return "family"
        if sum(flat_heading(t) in ("cf", "") for t in texts) >= 0.8 * len(texts):
            return "cf"
        if sum(flat_heading(t) in COMPLETE for t in texts) >= 0.6 * len(texts):
            return "completeness"
        if sum(bool(re.match(r"(?:\(?[A-Z][\w.&() -]*\.?\)?|L\.)$", t)) and ("." in t) for t in texts) >= 0.6 * len(
            texts
        ):
            return "authority"
        if sum(bool(SIZES.fullmatch(t)) for t in texts) >= 0.6 * len(texts):
            return "size class"
        if all(heading(t) == "" and t in "0123456789" for t in texts):
            return "code"
        if sum(self.look.name_score(row, column) >= 0.5 for row in self.body) >= 0.5 * len(texts):
            return "common name"
        return "taxon note"

    def _is_of_quantities(self, column: int, texts: list[str]) -> bool:
        """Whether a column says n, g or % of most lines."""
        all_texts = {self.look.text(row, column).lower() for row in self.rows}
        is_answer = not all_texts.isdisjoint(("y", "yes", "no"))  # 'N' beside 'Y' is no number
        kinds = [kind for kind in map(quantity, texts) if kind]
        is_telling = len(set(texts)) < len(texts) or len(kinds) == len(texts) >= 3
        weighs = any(len(t) > 2 and quantity(t) == "mass" for t in texts)
        least = 0.6 if weighs and len(set(kinds)) > 1 else 0.8  # 'n, peso (g), negra, frag.'
        return bool(texts) and len(kinds) >= least * len(texts) and is_telling and not is_answer
