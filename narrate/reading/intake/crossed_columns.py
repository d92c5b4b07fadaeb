"""Which columns of a crossed table hold counts and which hold words, within its ends. Taxa run down."""

from __future__ import annotations

import re
from dataclasses import dataclass

from narrate.model.layouts import Role
from narrate.reading.intake.crossed_extent import Extent
from narrate.reading.intake.evidence import form_of_id, looks_like_id
from narrate.reading.intake.header_words import heading

_RANGE = re.compile(r"\d+(?:[.,]\d+)?\s*[-–]\s*\d+(?:[.,]\d+)?")
_LONGEST_ID = 40
_WITH_WORD = re.compile(r"\d{1,5} ?[^\W\d_][^\W\d_ -]*(?:[ -][^\W\d_]+){0,2}")
"""A number that carries a letter or up to three words."""


@dataclass(slots=True)
class Columns(Extent):
    """The same with what each column between its ends is."""

    def _find_columns(self) -> None:
        look = self.look
        found: dict[int, tuple[int, int]] = {}
        are_classes: bool | None = None
        counted, given = look.in_columns(self.body)
        for column in range(self.area.left, self.right + 1):
            if column == self.names:
                continue
            amounts = counted[column]
            texts = given[column] - amounts
            ranges = sum(bool(_RANGE.fullmatch(look.text(row, column))) for row in self.body) if amounts >= 3 else 0
            if amounts >= 3 and ranges >= 0.7 * amounts:
                are_classes = self._are_classes() if are_classes is None else are_classes
                if not are_classes:  # '30-100': what is said of the plant, and no count
                    amounts, texts = amounts - ranges, texts + ranges
            if texts and column > self.names and self._counts_with_words(column):
                amounts, texts = amounts + texts, 0
            found[column] = (amounts, texts)
        for column, (amounts, texts) in found.items():
            if amounts and self._marks_doubt(column):
                self.labels.append(column)
            elif amounts and amounts >= 2 * texts:
                self.counts.append(column)
            elif texts:
                self.labels.append(column)
        self._take_siblings()
        self.labels.append(self.names)
        self.labels.sort()
        self._drop_codes()
        if self.counts:
            # Columns without any find are sterile samples where a head stands over them.
            for column in range(min(self.counts), self.right + 1):
                if column not in self.counts and column not in self.labels and self._has_head(column):
                    self.counts.append(column)
            self.counts.sort()

    def _counts_with_words(self, column: int) -> bool:
        """Whether an id stands over a column of numbers, some of which carry a word or a letter: '3 eroded', '5b'."""
        look = self.look
        over = [look.text(row, column) for row in range(self.area.top, self.body[0]) if (row, column) in look.own]
        if not any(looks_like_id(text) and re.search(r"\d", text) and not heading(text) for text in over):
            return False
        return all(
            look.is_amount(row, column) or _WITH_WORD.fullmatch(look.text(row, column))
            for row in self.body if (row, column) in look.cells
        )  # fmt: skip

    def _are_classes(self) -> bool:
        """Whether many of all amounts are ranges: '1-5', '6-20' for counts."""
        look = self.look
        across = [c for c in range(self.area.left, self.right + 1) if c != self.names]
        amounts = [look.text(row, c) for row in self.body for c in across if look.is_amount(row, c)]
        return sum(bool(_RANGE.fullmatch(text)) for text in amounts) >= 0.4 * len(amounts)

    def _marks_doubt(self, column: int) -> bool:
        """Whether 'cf.' stands over a column of crosses: they doubt names, and are no finds."""
        over = [self.look.text(row, column) for row in range(self.area.top, self.body[0])]
        if "cf" not in map(heading, over):
            return False
        texts = {self.look.text(row, column).lower().rstrip(".") for row in self.body} - {""}
        return texts <= {"x", "cf", "?", "y", "yes", "1", "+"}

    def _take_siblings(self) -> None:
        """A column of marks or words that is headed as its neighbours with counts are is a sample, as they are."""
        for column in [c for c in self.labels if self.counts and c > min(min(self.counts), self.names)]:
            if any(self._is_sibling(row, column) for row in range(self.area.top, self.body[0])):
                self.labels.remove(column)
                self.counts.append(column)
        self.counts.sort()

    def _is_sibling(self, row: int, column: int) -> bool:
        """Whether a row over the body writes an id over a column of the same form as over most columns of counts."""
        own = self.look.text(row, column)
        if not own or (row, column) not in self.look.own or heading(own) or not re.search(r"\d", own):
            return False
        others = [self.look.text(row, c) for c in self.counts if self.look.text(row, c)]
        if len(others) < 2 or own in others or self.look.name_score(row, column) >= 0.45:
            return False
        return sum(form_of_id(text) == form_of_id(own) for text in others) > 0.5 * len(others)

    def _has_head(self, column: int) -> bool:
        own = [row for row in range(self.area.top, self.area.bottom + 1) if (row, column) in self.look.own]
        if len(own) == 1 and not self._may_be_id(own[0], column):
            return False  # a remark or a key in a line of its own, and no id
        return any((row, column) in self.look.cells for row in range(self.area.top, self.body[0])) and not any(
            (row, column) in self.look.cells and not self.look.is_amount(row, column) for row in self.body
        )

    def _may_be_id(self, row: int, column: int) -> bool:
        """Whether a word that stands alone may be the id of a sterile sample: short, and of the form of other ids."""
        text = self.look.text(row, column)
        if len(text) > _LONGEST_ID or re.search(r"[=;]|^\*", text):
            return False
        others = [self.look.text(row, c) for c in self.counts]
        are_ids = any(map(looks_like_id, others))
        return looks_like_id(text) or not are_ids or any(form_of_id(text) == form_of_id(other) for other in others)

    def _drop_codes(self) -> None:
        """Columns of running or code numbers before the names are no counts."""
        for column in [c for c in self.counts if c < self.names]:
            heads = [heading(self.look.text(row, column)) for row in range(self.area.top, self.body[0])]
            texts = [self.look.text(row, column) for row in self.body if (row, column) in self.look.cells]
            numbers = [int(t) for t in texts if t.isdecimal()]
            is_running = (
                len(numbers) == len(texts) > 2 and len(set(numbers)) == len(numbers) and numbers == sorted(numbers)
            )
            is_named = any(head in ("code", "count", "group") for head in heads)
            counts_behind = any(c > self.names for c in self.counts)
            if counts_behind and (is_running or is_named):
                self.counts.remove(column)
                self.columns[column] = Role(name="code")
