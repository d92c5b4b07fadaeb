"""What stands under the counts in a row of a crossed table: litres, numbers with decimals, words. Taxa run down."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from narrate.reading.intake.cell_marks import SIGNS
from narrate.reading.intake.crossed_columns import Columns
from narrate.reading.intake.header_words import quantity, unit

_FRACTION = re.compile(r"\d*[.,]\d*[1-9]\d*")
_DAY = re.compile(r"\d{1,2}[/.]\d{1,2}(?:[/.](?:\d{2}|\d{4})?)?|\d{4}-\d\d-\d\d(?: 00:00:00)?")
_INITIALS = re.compile(r"(?:[A-ZÀ-Þ]\.?[a-z]{0,2}-?\.? ?){2,4}")
_LITRES = re.compile(r"\d+(?:[.,]\d+)? ?(?:l|lt|ltrs?|lit(?:re|er)s?)\.?", re.IGNORECASE)


@dataclass(slots=True)
class RowsOfCounts(Columns):
    """The same with what stands under the counts in each row."""

    fractions: dict[int, tuple[int, int]] = field(default_factory=dict)
    """For each row of the body: its numbers with decimals, and all that stands under the counts."""
    all_fractions: tuple[int, int] = (0, 0)
    """The same of all rows together."""

    def _is_of_litres(self, row: int) -> bool:
        """Whether two texts or more stand under the counts of a line, and all of them are litres."""
        texts = [text for c in self.counts if (text := self.look.text(row, c))]
        return len(texts) > 1 and all(_LITRES.fullmatch(text) for text in texts)

    def _is_of_words(self, row: int) -> bool:
        """Whether a line holds words of some letters and no amount: remarks on the samples."""
        texts = [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]
        amounts = any(self.look.is_amount(row, c) for c in self.counts)
        return bool(texts) and not amounts and all(len(re.findall(r"[^\W\d_]", text)) > 2 for text in texts)

    def _is_of_initials(self, row: int) -> bool:
        """Whether initials of people stand in a line, 'TJ' and 'MAB', where most lines hold amounts."""
        texts = {self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells}
        if not texts or not all(_INITIALS.fullmatch(text) for text in texts) or all(map(SIGNS.fullmatch, texts)):
            return False
        return 2 * sum(any(self.look.is_amount(r, c) for c in self.counts) for r in self.body) > len(self.body)

    def _is_of_days(self, row: int) -> bool:
        """Whether days and months stand in a line, as of work in a laboratory: '9/3', '14.2.', '2021-06-30'."""
        texts = [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]
        return len(texts) > 1 and all(_DAY.fullmatch(text) for text in texts)

    def _is_of_fractions(self, row: int) -> bool:
        """Whether most numbers of a line have decimals, in a table whose other lines hardly have any."""
        if not self.fractions:
            self.fractions = self._fractions_of(self.body)
            self.all_fractions = sum(n for n, _ in self.fractions.values()), sum(n for _, n in self.fractions.values())
        own, given = self.fractions.get(row) or self._fractions_of([row])[row]
        all_of, all_given = self.all_fractions
        is_in = row in self.fractions
        others, given_others = all_of - own * is_in, all_given - given * is_in
        return 2 * own > given and others <= 0.3 * given_others

    def _says_unit(self, row: int) -> bool:
        """Whether any word beside the counts of a line says what is given: g, %, wt."""
        beside = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if c not in self.counts]
        return not any(beside) or any(quantity(text) or unit(text) for text in beside)

    def _fractions_of(self, rows: Iterable[int]) -> dict[int, tuple[int, int]]:
        """For each row: how many texts under its counts are numbers with decimals, and how many there are."""
        weighed = {
            c for c in self.counts
            if any(quantity(self.look.text(r, c)) == "mass" for r in range(self.area.top, self.body[0]))
        }  # fmt: skip
        counted = [c for c in self.counts if c not in weighed]
        found = {}
        for row in rows:
            cells = [cell for c in counted if (cell := self.look.cells.get((row, c))) is not None]
            found[row] = (sum(bool(_FRACTION.fullmatch(cell.text)) for cell in cells), len(cells))
        return found
