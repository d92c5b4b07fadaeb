"""What each row of a crossed table is, within its ends. Taxa run down."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.layouts import DERIVED_ROLES, SAMPLE_ROLES, Role
from narrate.reading.intake.answers import are_answers, are_yes_and_no, asks_of_a_sample
from narrate.reading.intake.beside_no_plants import with_others_aside
from narrate.reading.intake.crossed_group_heads import GroupHeads
from narrate.reading.intake.evidence import NAMED, looks_like_id
from narrate.reading.intake.group_heads import names_a_group
from narrate.reading.intake.header_words import flat_heading, heading, quantity, unit
from narrate.reading.intake.not_plants import not_a_plant, says_no_plant
from narrate.reading.intake.plants_among_heads import is_plant_among_finds
from narrate.reading.intake.ratio_heads import may_be_ratio
from narrate.reading.intake.small_heads_again import band_role
from narrate.reading.intake.volumes_of_finds import volume_behind

ROW_META = frozenset((*SAMPLE_ROLES, *DERIVED_ROLES, "size class", "fraction", "location", "note"))
"""What a label may make of a row that is none of the taxa."""


@dataclass(slots=True)
class Body(GroupHeads):
    """The same with what each row between its ends is."""

    bands: list[bool] = field(default_factory=list)
    """Whether small headings come again in the body, once that is known."""

    # ---- rows of the body

    def _find_rows(self) -> None:
        first, last = self.body[0], self.body[-1]
        in_body = set(self.body)
        row = last + 1
        gap = 0
        # Rows below that go on: totals, volumes, names that nobody knows.
        end = self.area.bottom if self.end is None else self.end
        while row <= end and gap < 2:
            if not self._row_has(row):
                gap += 1
            elif self._is_new_head(row, first):
                break
            elif self._content(row) or self._row_label(row)[1] in ROW_META:
                gap = 0
                last = row
            elif not self._is_note(row):
                gap += 1
            else:
                break
            row += 1
        for row in range(first, last + 1):
            self.rows[row] = self._body_role(row, row in in_body)
        self.bottom = last
        self._drop_unnamed_before()
        self.rows, said = with_others_aside(self.look, self.rows, self.names, self.labels)
        self.doubts += said

    def _drop_unnamed_before(self) -> None:
        """Where most lines carry names of plants, numbers before the first of them under other words are no counts."""
        self._drop_among_records()
        self._drop_over_the_head()
        named = [row for row in self.body if self.look.name_score(row, self.names) >= 0.45]
        over = {heading(self.look.text(row, self.names)) for row in range(self.area.top, self.body[0])}
        if len(named) < 0.5 * len(self.body) or len(named) < 2 or over & {"taxon", "genus"}:
            return
        if self._ids_before(named[0]):
            self.body = [row for row in self.body if row >= named[0]]
            self.rows = {row: role for row, role in self.rows.items() if row >= named[0]}
            return
        for row in range(self.body[0], named[0]):
            is_latin = re.match(r"(?:cf\.? ?)?[A-Z][a-z]+[ _.](?:cf\.? ?)?[a-z]{3,}", self.look.text(row, self.names))
            if self.rows[row].name == "counts" and not is_latin:
                self.rows[row] = Role(name="ignored", qualifiers=("no name of a plant",))

    def _drop_over_the_head(self) -> None:
        """Numbers under words that no pack knows, over a line that heads the first names ('Taxa'), are no counts."""
        names = self.look.names
        labels = {row: self.look.text(row, self.names) for row in self.rows}
        heads = [row for row, role in self.rows.items() if role.name in ("section", "header")]
        head = next((row for row in heads if heading(labels[row]) == "taxon" and len(labels[row].split()) < 3), 0)
        over = [row for row in self.body if row < head and self.rows[row].name == "counts"]
        if any(names.read(labels[row]).is_known or names.part_of(labels[row]) for row in over) or len(over) > 2:
            return  # 'Seeds' over a group of them, with names before it
        before = min(over, default=0) - 1
        if self.look.text(before, self.names) and not any((before, c) in self.look.cells for c in self.counts):
            return  # a head of a group stands over them too: 'CEREALS', and then 'WILD PLANTS'
        for row in over:
            self.rows[row] = Role(name="ignored", qualifiers=("no name of a plant",))

    def _begin_at_names(self) -> bool:
        """Where nothing stands over the body, and its first lines name no plants: takes those for heads."""
        named = [row for row in self.body if self.look.name_score(row, self.names) >= 0.45]
        if len(named) < 3 or named[0] == self.body[0]:
            return False
        rest = [row for row in self.body if row >= named[0]]
        if len(named) < 0.6 * len(rest):
            return False
        self.body = rest
        self.rows = {row: role for row, role in self.rows.items() if row >= rest[0]}
        return True

    def _ids_before(self, first: int) -> bool:
        """Whether a line before the names tells all columns apart, as no head over them does: ids."""
        texts = {
            row: [self.look.text(row, c) for c in self.counts]
            for row in range(self.area.top, first)
            if self.rows.get(row) is None or self.rows[row].name != "total"
        }
        apart = [row for row, own in texts.items() if all(own) and len(set(own)) == len(own) > 2]
        return bool(apart) and all(row in self.body and all(map(looks_like_id, texts[row])) for row in apart)

    def _drop_among_records(self) -> None:
        """Numbers under words that nobody knows, before and between two or more lines of records, are no counts."""
        lines = [row for row in self.rows if self.rows[row].name in SAMPLE_ROLES]
        half = self.body[len(self.body) // 2]
        records = [row for row in lines if row < half]
        over = range(self.area.top, self.body[0])
        above = sum(heading(self.look.text(row, self.names)) in SAMPLE_ROLES for row in over)
        if not records or len(records) + above < 2:
            return
        before = [row for row in self.body if row < records[-1] and self.rows[row].name == "counts"]
        if sum(self.look.name_score(row, self.names) >= 0.45 for row in before) > len(records):
            return
        rest = [row for row in self.body if row > records[-1]]
        if rest and not any(self.look.name_score(row, self.names) >= 0.45 for row in before):
            # All of them are heads: which one tells the samples apart is seen there.
            self.body = rest
            self.rows = {row: role for row, role in self.rows.items() if row >= rest[0]}
            return
        for row in before:
            # A single word that ends as genera do is a name among names, and not between two lines of records.
            least = 0.6 if above or row > records[0] else 0.45
            if self.look.name_score(row, self.names) < least:
                self.rows[row] = Role(name="ignored", qualifiers=("it stands among the records and names no plant",))

    def _content(self, row: int) -> int:
        return sum((row, c) in self.look.cells for c in self.counts)

    def _is_note(self, row: int) -> bool:
        texts = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if (row, c) in self.look.own]
        return len(texts) == 1 and (
            len(texts[0]) > 40 or bool(re.match(r"(?:note|key|\*|source|abbrev|figures)", texts[0], re.I))
        )

    def _heads_what_follows(self, row: int, label: str) -> bool:
        """Whether a long label stands at once over a find, as shorter heads of sections do: no sentence, and no key."""
        is_said = re.search(r"[=;]|[.:] |[.:]$|^(?:note|key|\*|source|abbrev|figures)", label, re.IGNORECASE)
        has_others = any(role.name == "section" for role in self.rows.values())
        return len(label) <= 70 and not is_said and row + 1 in self.body and has_others

    def _row_label(self, row: int) -> tuple[str, str]:
        """(label, role): the first of the row's labels that speaks for a role, else the name."""
        for column in [
            self.names,
            *[c for c in self.labels if c != self.names],
            *[c for c in self.columns if c < self.names],
        ]:
            text = self.look.text(row, column)
            is_behind = bool(self.counts) and column > max(self.counts) and self.look.name_score(row, self.names) > 0
            if text and (row, column) in self.look.cells and not is_behind:  # 'half of it 60%' is a remark on a plant
                role = heading(text)
                if role in DERIVED_ROLES and column != self.names and text[:1].isdecimal():
                    continue  # '30 (subsample 50 %)' is a volume, and heads no line of shares
                if role in ROW_META and not (column != self.names and self._is_said_of_many(column, text)):
                    return text, role
        text = self.look.text(row, self.names) or next(
            (self.look.text(row, c) for c in self.labels if self.look.text(row, c)), ""
        )
        return text, heading(text)

    def _is_said_of_many(self, column: int, text: str) -> bool:
        """Whether a word beside the names says something of the finds: 'min' for mineralised, in this line and others."""
        if heading(text) in ("total", "percent", "density", "ubiquity"):
            return False
        names = self.look.names
        known = names.short.conditions.keys() | names.short.parts.keys()
        return text in known or sum(self.look.text(row, column) == text for row in self.body) > 2

    def _body_role(self, row: int, is_counted: bool) -> Role:
        look = self.look
        if not self._row_has(row):
            return Role(name="blank")
        if self._is_small_head_again(row, self.body[0]):
            return band_role(look, row, self.names)
        label, role = self._row_label(row)
        if sum(" = " in look.text(row, c) for c in self.counts) > 1:
            return Role(name="notes")  # 'K = Korn', 'S = Same': a key that the semicolons of its file took apart
        if self._is_of_answers(row, label):
            return Role(name="sample note", qualifiers=(label,))
        content = 0 if self._is_band(row) else self._content(row)
        if role in ("ubiquity", "percent", "density") and label != look.text(row, self.names):
            return Role(name=role)
        if role == "derived" and label != look.text(row, self.names) and not look.names.condition_of(label):
            return Role(name=role)  # 'No. of rows' beside 'Zea mays'
        is_said = content or (role in DERIVED_ROLES and not (role == "derived" and _is_large(label)))
        if role in ROW_META and is_said and look.name_score(row, self.names) == 0 and not (
            content > 0 and is_plant_among_finds(look, row, self.names, self.counts, self._span)
        ):
            return with_unit("sample note" if role == "phase" and self._is_of_days(row) else role, label)
        if not content or self._is_head_over_zeros(row, label):
            if not label or (self._is_note(row) and not self._heads_what_follows(row, label)):
                return Role(name="notes")
            if look.name_score(row, self.names) >= NAMED and any(
                look.names.part_of(look.text(row, c)) for c in self.labels if c != self.names and (row, c) in look.own
            ):
                return Role(name="counts")  # 'Capsicum sp. | seed': looked for, and found in no sample
            is_species = (
                bool(re.match(r"(?:cf\. ?)?[A-Z][a-z]+ (?:cf\.? ?)?[a-z]{3,}", label))
                and look.name_score(row, self.names) >= 0.9
            )
            # Over a column heads of sections are written large, or name a group.
            is_plant = (look.is_turned or self._has_bands(row)) and not names_a_group(label)
            is_species = is_species and not self._heads_a_group(row, label)
            is_species = is_species or self._is_genus_among_others(row, label)
            return Role(name="counts") if (is_species or is_plant) and not label.isupper() else Role(name="section")
        if flat_heading(label) in ("taxa", "species", "genera", "families") and row > self.body[0]:
            return Role(name="derived")  # 'Taxa' below the names: their number
        if look.name_score(row, self.names) < 0.45 and self._is_of_litres(row):
            return Role(name="volume", qualifiers=("l",))
        if label and (not_a_plant(label) or says_no_plant(label) or self._is_shell_of_animals(row, label)):
            return Role(name="not plants")
        if self._is_number_of_items(row, label):
            return Role(name="total")
        if not label:
            return Role(name="ignored", qualifiers=("no name stands before it",))
        if role == "count" and look.is_turned and look.name_score(row, self.names) == 0 and self._has_named_lines():
            return Role(name="ignored", qualifiers=("it says a number and not of what",))
        if look.name_score(row, self.names) <= NAMED and self._is_of_words(row):
            return Role(name="sample note")
        if look.name_score(row, self.names) < NAMED and self._is_of_initials(row):
            return Role(name="sample note", qualifiers=(label.replace(",", " "),))  # who sorted it
        if self._is_of_fractions(row):
            if may_be_ratio(label):
                return Role(name="derived")
            if look.name_score(row, self.names) == 0 and not self._says_unit(row):
                return Role(name="ignored", qualifiers=("its numbers are no whole ones, and it names no plant",))
        if unit(label) == "ml" or (volume_behind(label)[0] and look.names.read(label).quantity == "other"):
            return Role(name="sample note", qualifiers=(label.replace(",", " "),))  # no field of a find holds it
        if look.name_score(row, self.names) < NAMED and self._is_merged_by_sample(row):
            self.doubts.append(
                f"DOUBTFUL: '{label}' has one merged cell for several columns of counts, and is taken for a result and "
                "no find: write counts for it in the layout if it is one, with a cell for each count"
            )
            return Role(name="derived")
        return Role(name="counts")

    def _is_merged_by_sample(self, row: int) -> bool:
        """Whether each amount of a line of several stands in a cell that is merged over several columns of counts."""
        own = [c for c in self.counts if (row, c) in self.look.own]
        return len(own) > 1 and all(
            (row, c + 1) in self.look.cells and (row, c + 1) not in self.look.own and c + 1 in self.counts for c in own
        )

    def _is_number_of_items(self, row: int, label: str) -> bool:
        """Whether a line gives the 'No. of items', or the 'No. of items (ch)', once in the table."""
        state = re.fullmatch(r"(.+?)\s*[(\[]([^()\[\]]+)[)\]]", label)
        bare = state[1] if state and self.look.names.condition_of(state[2]) else label
        if self.look.name_score(row, self.names) > 0 or heading(bare) != "count" or quantity(bare):
            return False
        beside = next(c for c in (self.names, *self.labels) if self.look.text(row, c) == label)
        return sum(self.look.text(r, beside) == label for r in self.body) <= 1

    @property
    def _span(self) -> range:
        return range(self.area.top, (self.area.bottom if self.end is None else self.end) + 1)

    def _has_named_lines(self) -> bool:
        """Whether most other lines are headed with names."""
        return sum(self.look.name_score(r, self.names) >= 0.45 for r in self.body) > 2

    def _is_shell_of_animals(self, row: int, label: str) -> bool:
        """Whether 'Shell' stands at once behind or before what is no plant, as bones and beads are."""
        beside = (self.look.text(r, self.names) for r in (row - 1, row + 1))
        return label.strip().lower() in ("shell", "shells") and any(map(not_a_plant, beside))

    def _is_of_answers(self, row: int, label: str) -> bool:
        """Whether a line answers a question about its samples with yes and no, in a table of other amounts."""
        texts = [self.look.text(row, c) for c in self.counts if self.look.text(row, c)]
        if not are_answers(texts) or self.look.names.read(label).is_known or self.look.names.part_of(label):
            return False
        if asks_of_a_sample(label) or label.strip().endswith("?"):
            return True
        others = [[self.look.text(r, c) for c in self.counts if self.look.text(r, c)] for r in self.body if r != row]
        is_rare = sum(map(are_answers, others)) <= 0.2 * len(others)
        return are_yes_and_no(texts) and is_rare and not self.look.names.says(label)

    def _has_bands(self, row: int) -> bool:
        """Whether rows of small headings head the sections, so that a plant without counts in a line heads none."""
        if not self.bands:
            self.bands = [any(self._is_small_head_again(r, self.body[0]) for r in range(self.body[0], self.bottom + 1))]
        return self.bands[0] and self.look.name_score(row, self.names) >= NAMED

    def _is_band(self, row: int) -> bool:
        """Whether one merged cell goes over the names and the counts: the head of a section, written once."""
        own = [c for c in range(self.area.left, self.right + 1) if (row, c) in self.look.own]
        return len(own) == 1 and own[0] <= self.names and all((row, c) in self.look.cells for c in self.counts[:2])

    def _is_head_over_zeros(self, row: int, label: str) -> bool:
        """Whether nothing but noughts stands under a head of a group, or in capitals among names that are not."""
        texts = {self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells}
        if names_a_group(label) and not self.look.names.part_of(label) and row + 1 in self.body:
            return texts <= {"0", "-"}
        if not label.isupper() or len(label) < 5:
            return False
        others = [self.look.text(r, self.names) for r in self.body]
        return texts <= {"0", "-"} and sum(text.isupper() for text in others) < 0.4 * len(others)


def _is_large(label: str) -> bool:
    """Whether a head is written in capitals, whatever stands behind it in brackets: 'WILD TAXA (number)'."""
    return re.sub(r"[(\[].*?[)\]]", "", label).isupper()


def with_unit(role: str, words: str) -> Role:
    if role == "location":
        return Role(name="ignored", qualifiers=("locations are not taken into records",))
    if role == "note":
        has_head = asks_of_a_sample(words) or volume_behind(words)[0]
        return Role(name="sample note", qualifiers=(words.replace(",", " "),) if has_head else ())
    if role in ("volume", "flot volume", "flot mass"):
        found = unit(words)
        default = {"volume": "l", "flot volume": "ml", "flot mass": "g"}[role]
        return Role(name=role, qualifiers=(found if found not in ("", "%", "mm") else default,))
    if role == "sample note" and _KEEPS_HEAD.search(words):
        return Role(name=role, qualifiers=(words,))  # its head stays with it
    return Role(name=role)


_KEEPS_HEAD = re.compile(
    r"sorted|scanned|weight|\bwt\b|mass|gewicht|poids|peso|heavy|\bhf\b"
    r"|dat|year|jahr|año|anno\b|année|\brok\b|jaar|tpq|taq|terminus|start|\bend|from|\bto\b", re.IGNORECASE
)
