"""The rows over a crossed table, one by one: titles, sections, and what a row says of the columns under it."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from narrate.model.layouts import DERIVED_ROLES, Role
from narrate.reading.intake.crossed_body import ROW_META, Body, with_unit
from narrate.reading.intake.evidence import form_of_id, looks_like_id
from narrate.reading.intake.fractions_of_flots import are_fractions
from narrate.reading.intake.header_words import heading, quantity, unit
from narrate.reading.intake.heads_by_content import SIZES, are_quantities_and_states, content_role
from narrate.reading.intake.parts_of_finds import without_weight
from narrate.reading.intake.states_under_heads import are_states

_PER_LITRE = re.compile(r"\d\s*(?:/|per)\s*(?:10 ?)?l(?:it(?:re|er)s?)?\.?$", re.IGNORECASE)

_SO_MANY = re.compile(r"\(?\s*n\s*=\s*\d+\s*\)?", re.IGNORECASE)
"""'(n = 12)' says of how many samples, and not what."""
_ANSWERS = frozenset(("y", "n", "yes", "no", "j", "ja", "nein", "nee", "s", "si", "sí", "sì", "oui", "non"))
_MEASURED = ("volume", "flot volume", "flot mass", "sorted")
_LETTERED_ID = re.compile(r"[^\W\d_]{1,12}[\s./_#-]{0,3}\d[\w./-]{0,12}")
"""'TS-40', 'FS 97': a number alone may be anything, such as litres."""


@lru_cache(maxsize=256)
def _ids_among(texts: tuple[str, ...]) -> frozenset[int]:
    """
    Which of the texts over columns are ids of one form, where most are and no text stands twice.

    >>> sorted(_ids_among(("TS-03", "TS-04", "TS-16", "Total", "Ubiquity")))
    [0, 1, 2]
    """
    given = [text for text in texts if text]
    forms = [form_of_id(text) if _LETTERED_ID.fullmatch(text) else "" for text in texts]
    form, times = Counter(filter(None, forms)).most_common(1)[0] if any(forms) else ("", 0)
    if times < max(3, 0.6 * len(given)) or len(set(given)) < len(given):
        return frozenset()
    return frozenset(n for n, own in enumerate(forms) if own == form)


@dataclass(slots=True)
class HeadRoles(Body):
    """The same with what each row above says."""

    def _head_rows(self) -> list[int]:
        """Rows outside the body that say something of the columns; titles and sections above are given their roles."""
        first = self.body[0]
        top = self.area.top
        heads: list[int] = []
        for row in range(first - 1, top - 1, -1):
            own = [c for c in range(self.area.left, self.right + 1) if (row, c) in self.look.own]
            if not own:
                self.rows[row] = Role(name="blank")
                continue
            in_counts = [c for c in self.counts if (row, c) in self.look.cells]
            label = self.look.text(row, self.names)
            only_label = all(c in self.labels or c in self.columns for c in own)
            if len(own) == 1 and not only_label and len(self.counts) > 1 and in_counts and not self._spans(row, own[0]):
                if own[0] == min(self.counts) and content_role([self.look.text(row, own[0])], self.look) == "phase":
                    heads.append(row)  # 'Period 2', once over all samples of it
                    continue
                is_title = len(self.look.text(row, own[0])) > 25
                self.rows[row] = Role(
                    name="title" if is_title else "ignored", qualifiers=() if is_title else ("a single cell",)
                )
                continue
            if in_counts and not (
                len(own) == 1 and self._spans(row, own[0]) and (own[0] <= self.names or self._is_title(row, own[0]))
            ):
                heads.append(row)
            elif only_label and not heads and label and len(own) == 1 and self._heads_section(label):
                self.rows[row] = Role(name="section")
            elif only_label and any(heading(self.look.text(row, c)) for c in own):
                self.rows[row] = Role(name="header")
            else:
                self.rows[row] = Role(name="title")
        return sorted(heads)

    def _heads_section(self, label: str) -> bool:
        """Whether words alone in their line at once over the names head a section: 'Cereals', 'CHARRED', 'Verkohlt'."""
        return len(label) < 50 and (not heading(label) or bool(self.look.names.condition_of(label)))

    def _spans(self, row: int, column: int) -> bool:
        return (row, column + 1) in self.look.cells and (row, column + 1) not in self.look.own

    def _is_title(self, row: int, column: int) -> bool:
        text = self.look.text(row, column)
        return len(text) > 30 or (row == self.area.top and not heading(text))

    def _filled_texts(self, row: int, plain: list[int]) -> list[str]:
        found: list[str] = []
        for column in plain:
            text = self.look.text(row, column)
            found.append(text or (found[-1] if found and self.rows[row].filled else ""))
        return found

    def _label(self, row: int) -> str:
        """The words before a row of the head."""
        labels = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if c not in self.counts]
        return next((text for text in labels if text), "")

    def _recurs(self, row: int, plain: list[int]) -> bool:
        """Whether a few small headings follow each other again and again, under a row that names each group once."""
        texts = [self.look.text(row, c) for c in plain]
        several = len(set(texts))
        if not all(texts) or not 2 <= several <= 6 or len(texts) < 2 * several:
            return False
        if any(re.search(r"\d", text) for text in texts):
            return False
        above = [r for r in range(self.area.top, row) if (r, plain[0]) in self.look.cells]
        groups = [[(r, c) in self.look.own for c in plain] for r in above]
        if not any(sum(given) * several == len(plain) and all(given[::several]) for given in groups):
            return False
        return all(texts[n] == texts[n - several] for n in range(several, len(texts)))

    def _needs_fill(self, row: int, plain: list[int], has_pairs: bool) -> bool:
        blanks = sum((row, c) not in self.look.cells for c in plain)
        return bool(blanks) and has_pairs and (row, plain[0]) in self.look.cells and blanks >= len(plain) / 4

    def _named_head(self, row: int, role: str, word: str, plain: list[int]) -> Role:
        if not role and self._is_charcoal_in_grams(row):
            return Role(name="counts")
        if not role:
            return Role(name="ignored", qualifiers=("its heading says nothing known",))
        if role in ("taxon", "count", "mass", "code", "group", "note", "family", "common name", "header"):
            return Role(name="header")
        blanks = sum((row, c) not in self.look.cells for c in plain)
        is_scarce = (
            blanks > 0
            and (row, plain[0]) in self.look.cells
            and role not in ("volume", "flot volume", "flot mass", "sorted", "sample note")
        )
        filled = is_scarce and blanks >= 0.3 * len(plain) and not self._is_said_each_time(row, plain)
        made = with_unit(role, word)
        also = ("condition",) if role in ("part", "quantity") and self._says_conditions_too(row) else ()
        return Role(name=made.name, also=also, qualifiers=made.qualifiers, filled=filled)

    def _is_charcoal_in_grams(self, row: int) -> bool:
        """Whether a row over the names weighs the charcoal of each sample: 'Holzkohle > 4 mm (g)' below the litres."""
        bare, unit_of_mass = without_weight(self._label(row))
        read = self.look.names.read(bare) if unit_of_mass else None
        return read is not None and read.part in ("charcoal", "wood") and all(
            self.look.is_amount(row, c) for c in self.counts if (row, c) in self.look.cells
        )

    def _is_said_each_time(self, row: int, plain: list[int]) -> bool:
        """Whether a row says the same for neighbours again and again, so that a blank in it says nothing."""
        own = [self.look.text(row, c) if (row, c) in self.look.own else "" for c in plain]
        return sum(a == b != "" for a, b in pairwise(own)) > own.count("")

    def _says_conditions_too(self, row: int) -> bool:
        """Whether most words of a row of parts carry a condition: 'seed (u)', 'grain, charred'."""
        texts = [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]
        if any(map(quantity, texts)):
            return are_quantities_and_states(texts, self.look)
        states = sum(bool(re.search("[,(]", text) and self.look.names.condition_of(text)) for text in texts)
        return states >= 0.6 * len(texts) > 0

    def _head_role(self, row: int) -> tuple[str, str]:
        """(role, the words it was read from) of a row above the body; an empty role for ids without a label."""
        look = self.look
        label_columns = [c for c in range(self.area.left, self.right + 1) if c not in self.counts]
        for column in sorted(label_columns, key=lambda c: (c != self.names, -c)):
            text = look.text(row, column)
            role = self._heading_in_context(row, column, label_columns) if text else ""
            may_be_parts = role == "kind" or (role == "phase" and re.match(r"comp[oó]", text.strip(), re.IGNORECASE))
            if may_be_parts and self._stands_over_parts(column):
                continue  # 'Component' over grain and chaff
            if role == "site" and are_states(text, (look.text(r, column) for r in self.body), look):
                continue  # 'State' over 'C' and 'U'
            if role == "context" and column != self.names and self._stands_over_units(column):
                continue  # 'Birim' over 'adet' and 'g'
            is_behind = column > max(self.counts) and len(self.labels) > 1
            if role in ("note", "sample note", "site", "description") and is_behind:
                continue  # 'Remarks' behind the counts heads its own column
            if role == "note" and column != self.names and heading(look.text(row, self.names)) == "taxon":
                continue  # beside 'Taxon' it heads a column of remarks on the taxa
            if not role and are_fractions(text, self._texts_over_counts(row), look.names.short.fractions):
                return "fraction", text
            if role == "fraction" and self._is_of_sizes(row):
                return "size class", text  # 'Fraction' before '>1 mm'
            if role in ROW_META and role not in DERIVED_ROLES:
                return role, text
        texts = [look.text(row, c) for c in self.counts if (row, c) in look.cells]
        if (
            any(heading(look.text(row, c)) == "condition" for c in label_columns)
            and texts
            and all(look.names.condition_of(t) for t in texts)
        ):
            return "condition", ""
        # 'Total' behind 'D, C, D, C' is a head of its own.
        small = [t for t in texts if heading(t) not in DERIVED_ROLES or self._is_state_under_each(row, t)]
        by_content = content_role(texts, look) or (content_role(small, look) if len(small) > 1 else "")
        if by_content:
            return by_content, ""
        # 'Samples' or 'Contexts' written once over all columns.
        if len(set(texts)) == 1 and heading(texts[0]) and len(texts) > 1:
            return "header", texts[0]
        for column in label_columns:
            role = heading(look.text(row, column))
            if role in DERIVED_ROLES:
                return role, look.text(row, column)
        label = self._label(row)
        if label and not heading(label) and all(t.lower() in _ANSWERS for t in texts):
            return "", label  # 'Intramural' before 'Y, N, N': an answer, and no small heading 'n'
        if texts and sum(bool(heading(t)) and not looks_like_id(t) for t in texts) > 0.6 * len(texts):
            return "header", ""
        return "", ""

    def _texts_over_counts(self, row: int) -> list[str]:
        return [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]

    def _is_of_sizes(self, row: int) -> bool:
        """Whether a row is of sieve classes, whatever totals stand among them."""
        sizes = [text for text in self._texts_over_counts(row) if heading(text) != "total"]
        return bool(sizes) and all(SIZES.fullmatch(text) for text in sizes)

    def _heading_in_context(self, row: int, column: int, beside: list[int]) -> str:
        """What a heading says together with a unit or a heading of several lines beside it: 'Flot' and 'ml'."""
        text = self.look.text(row, column)
        role = heading(text)
        for other in beside:
            said = self.look.text(row, other) if other != column else ""
            if said and role in ("sample", "count", "") and unit(said) == said.strip().lower():
                role = heading(f"{text} ({said})") or role
            elif said and role == "count" and heading(said.split(" ")[0]) == "sample":
                role = "sample"  # 'Sample register' over 'No.'
        return role

    def _stands_over_parts(self, column: int) -> bool:
        texts = [self.look.text(row, column) for row in self.body if self.look.text(row, column)]
        return column != self.names and sum(bool(self.look.names.part_of(t)) for t in texts) >= 0.6 * len(texts) > 0

    def _stands_over_units(self, column: int) -> bool:
        texts = [self.look.text(row, column) for row in self.body if self.look.text(row, column)]
        return bool(texts) and all(map(quantity, texts))

    def _is_derived_column(self, column: int, heads: list[int]) -> bool:
        return self._derived_role(column, heads) is not None

    def _is_state_under_each(self, row: int, text: str) -> bool:
        """Whether a short word that may be a state comes again and again in a row, beside other states."""
        states = [self.look.text(row, c) for c in self.counts if self.look.names.condition_of(self.look.text(row, c))]
        return states.count(text) > 1 and len(set(states)) > 1

    def _said_below(self, row: int, column: int, heads: list[int]) -> str:
        """What a head of this column alone says that it is, below one of a group: 'Rank' under 'All samples'."""
        for below in [r for r in heads if r > row and (r, column) in self.look.own]:
            text = self.look.text(below, column)
            role = quantity(text) if quantity(text) in ("percent", "density") else heading(text)
            if role in DERIVED_ROLES and not _SO_MANY.fullmatch(text.strip()):
                return role
        return ""

    def _head_of_block(self, row: int, column: int, heads: list[int]) -> str:
        """
        The head over a block of columns that comes again with the same ids: 'Raw counts' and 'Items per litre'.

        Each is written once, over the first column of its block; empty where a row heads no such blocks.
        """
        starts = [c for c in self.counts if (row, c) in self.look.own and self.look.text(row, c)]
        if not 2 <= len(starts) <= len(self.counts) / 2 or column < starts[0]:
            return ""
        ends = [*starts[1:], max(self.counts) + 1]
        blocks = [[c for c in self.counts if start <= c < end] for start, end in zip(starts, ends, strict=True)]
        for below in (r for r in heads if r > row):
            first, *others = [{self.look.text(below, c) for c in block} - {""} for block in blocks]
            if all(len(first & other) > 1 and len(first & other) >= 0.6 * min(len(first), len(other)) for other in others):
                return self.look.text(row, max(c for c in starts if c <= column))
        return ""

    def _has_own_id(self, column: int, heads: list[int]) -> bool:
        """Whether an id of its own stands over a column, such as most have: words beside it are said of that sample."""
        if column not in self.counts:
            return False
        at = self.counts.index(column)
        return any(at in _ids_among(self._heads_of_counts(row)) for row in heads if (row, column) in self.look.own)

    def _heads_of_counts(self, row: int) -> tuple[str, ...]:
        first = min(self.counts)
        texts = self.look.texts(row, first, max(self.counts))
        return tuple(texts[c - first] for c in self.counts)

    def _derived_role(self, column: int, heads: list[int]) -> Role | None:
        if self._has_own_id(column, heads):
            return None  # 'n.r.' of its volume is no number of remains, and 'all' of its feature no total
        for row in heads:
            of_block = self._head_of_block(row, column, heads)
            if of_block and heading(of_block) == "count":
                continue
            text = of_block or self.look.text(row, column)
            own = heading(self._label(row))
            if (text.lower() == "all" and own == "sorted") or (heading(text) == "count" and own in _MEASURED):
                continue  # 'n.r.' under 'Litres' is not recorded, and no number of remains
            if not text and row in self.rows and self.rows[row].filled and column in self.counts:
                text = self._filled_texts(row, [c for c in self.counts if c <= column])[-1]  # 'Total' over two columns
            if not text or (looks_like_id(text) and not _PER_LITRE.search(text)):
                continue
            role = quantity(text) if quantity(text) in ("percent", "density") else heading(text)
            if role == "percent" and text[:1].isdecimal():
                continue  # '30 (subsample 50 %)' is what a sample holds, and heads no shares
            if role in DERIVED_ROLES and self._is_state_under_each(row, text):
                continue  # 'Min.' beside 'Carb.' is mineralised, and no least number
            if role in DERIVED_ROLES:
                return Role(name=self._said_below(row, column, heads) or role)
            if (
                role in ("note", "common name", "authority", "code", "family", "part", "group")
                and (row, column) in self.look.own
            ):
                return Role(name={"note": "taxon note"}.get(role, role))
            if (
                role == "count"
                and text.lower() not in ("n", "no")
                and sum(self.look.text(row, c) == text for c in self.counts) == 1
                and (row, column) in self.look.own
                and len(self.counts) > 1
            ):
                return Role(name="total")
        return None
