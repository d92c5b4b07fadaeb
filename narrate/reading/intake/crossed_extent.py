"""How far a crossed table reaches: its rows of names with counts, up to the head of another table. Taxa run down."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.grids import Area
from narrate.model.layouts import DERIVED_ROLES, SAMPLE_ROLES, Role
from narrate.reading.intake.evidence import Look, looks_like_id, plain_label
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.small_heads_again import repeats_small_heads


@dataclass(slots=True)
class Extent:
    """The rows and columns of one reading of an area, as far as they are worked out."""

    look: Look
    area: Area
    names: int
    """The column of names."""
    body: list[int] = field(default_factory=list)
    counts: list[int] = field(default_factory=list)
    labels: list[int] = field(default_factory=list)
    rows: dict[int, Role] = field(default_factory=dict)
    columns: dict[int, Role] = field(default_factory=dict)
    doubts: list[str] = field(default_factory=list)
    right: int = 0
    bottom: int = 0
    end: int | None = None
    """The last row before the head of another table; None where none follows."""

    # ---- where the names and the counts stand

    def _score(self, row: int) -> float:
        text = self.look.text(row, self.names)
        return max(self.look.name_score(row, self.names), plain_label(text)) if text else 0.0

    def _find_body(self) -> None:
        look, area = self.look, self.area
        right = self._right_end()
        self.right = right
        left = self._left_end()
        if left > area.left:
            self.area = area = Area(top=area.top, left=left, bottom=area.bottom, right=area.right)
        rows = []
        for row in range(area.top, area.bottom + 1):
            amounts = look.amounts_in(row, area.left, right) - look.amounts_in(row, self.names, self.names)
            given = look.cells_in(row, area.left, right) - look.cells_in(row, self.names, self.names)
            texts = given - amounts
            if amounts and self._score(row) > 0 and (amounts >= texts or self._score(row) >= 0.5):
                rows.append(row)
        self.body = rows
        if not rows:
            return
        # A second head inside the body begins another table.
        first = rows[0]
        heads = self._ids_above(first)
        for row in range(first + 1, rows[-1] + 1):
            if self._is_small_head_again(row, first):
                continue
            is_head = self._is_new_head(row, first) or self._says_ids_again(row, heads)
            if is_head and not self._stands_before_all_names(row, rows):
                self.body = [r for r in rows if r < row]
                self.end = self._top_of_heads(row, heads) - 1
                break
        self.bottom = self.body[-1]

    def _is_small_head_again(self, row: int, first: int) -> bool:
        columns = range(self.names + 1, self.right + 1)
        return repeats_small_heads(self.look, row, columns, range(self.area.top, first))

    def _stands_before_all_names(self, row: int, rows: list[int]) -> bool:
        """Whether plants are named below a row and none above it: the one head of the table, under unknown words."""
        named = [r for r in rows if self.look.name_score(r, self.names) >= 0.45]
        return bool(named) and named[0] > row

    def _ids_above(self, first: int) -> list[tuple[str, ...]]:
        """What each row over the body writes behind the names, where it is three words or more that differ."""
        look = self.look
        over = [
            tuple(look.text(row, c) for c in range(self.names + 1, self.right + 1))
            for row in range(self.area.top, first)
        ]
        return [texts for texts in over if len(set(texts) - {""}) >= 3]

    def _says_ids_again(self, row: int, heads: list[tuple[str, ...]]) -> bool:
        """Whether a row repeats a row over the body: the head of another table of the same samples."""
        if self.look.name_score(row, self.names) >= 0.45:
            return False
        own = tuple(self.look.text(row, c) for c in range(self.names + 1, self.right + 1))
        given = sum(bool(text) for text in own)
        if self._holds_ids_again(row, own, heads):
            return True
        return given >= 3 and any(
            sum(a == b for a, b in zip(own, known, strict=True) if a) >= 0.9 * given
            and given >= 0.7 * sum(bool(text) for text in known)
            for known in heads
        )

    def _holds_ids_again(self, row: int, own: tuple[str, ...], heads: list[tuple[str, ...]]) -> bool:
        """
        Whether a row without a name holds some of the ids over the body again, in other columns.

        Numbers alone may be counts that look like ids.
        """
        said = {text for text in own if text and heading(text) not in DERIVED_ROLES}
        label = self.look.text(row, self.names)
        if len(said) < 2 or (label and not heading(label)) or not any(re.search(r"[^\W\d_]", text) for text in said):
            return False
        return any(said <= set(known) for known in heads)

    def _top_of_heads(self, row: int, heads: list[tuple[str, ...]]) -> int:
        """The first of the rows over a repeated head that belong to it: titles, heads, others without an amount."""
        look = self.look
        labels = {look.text(r, self.names) for r in range(self.area.top, self.body[0])} - {""}
        while row - 1 > self.body[-1]:
            above = range(self.area.left, self.right + 1)
            if look.text(row - 1, self.names) in labels:
                row -= 1  # 'Locus' and its numbers, as over the first part
                continue
            if any(look.is_amount(row - 1, c) for c in above) or not any((row - 1, c) in look.cells for c in above):
                break
            row -= 1
        return row

    def _right_end(self) -> int:
        """Columns up to another column of names with counts on both sides of it, which begins another table."""
        look, area = self.look, self.area
        seen_counts = False
        counted, given = look.in_columns(range(area.top, area.bottom + 1))
        for column in range(self.names + 1, area.right + 1):
            words = given[column] - counted[column]
            if (not words or words < 0.6 * (given[column] - 2)) and not look.grid.merged:  # no names, or a few
                seen_counts = seen_counts or counted[column] >= max(1, 0.5 * (given[column] - 2))
                continue
            own = [row for row in range(area.top, area.bottom + 1) if (row, column) in look.own]
            if not own:
                continue
            named = sum(look.name_score(row, column) >= 0.45 for row in own)
            amounts = sum(look.is_amount(row, column) for row in own)
            enough = 1 if self._has_same_head(column) else 2
            if named >= enough and named >= 0.6 * (len(own) - 2) and seen_counts:
                behind = sum(
                    look.is_amount(row, c) for row in own for c in range(column + 1, min(area.right, column + 6) + 1)
                )
                if behind >= enough and self._has_gap_or_head(column):
                    return column - 1
            seen_counts = seen_counts or amounts >= max(1, 0.5 * (len(own) - 2))
        return area.right

    def _has_same_head(self, column: int) -> bool:
        """Whether 'Sample' or the like is written over it as it is over the names: the head of another table."""
        look = self.look
        return any(
            heading(look.text(row, column)) in ("sample", "taxon")
            and look.text(row, column) == look.text(row, self.names)
            for row in range(self.area.top, self.area.bottom + 1)
        )

    def _left_end(self) -> int:
        """The first column behind the counts of another table on the left."""
        look, area = self.look, self.area
        rows = range(area.top, area.bottom + 1)
        if not any(look.is_amount(r, c) for r in rows for c in range(self.names + 1, self.right + 1)):
            return area.left
        nearest: int | None = None
        for column in range(self.names - 1, area.left - 1, -1):
            own = [row for row in rows if (row, column) in look.own]
            if not own:
                continue
            amounts = sum(look.is_amount(row, column) for row in own)
            named = sum(look.name_score(row, column) >= 0.45 for row in own)
            enough = 1 if self._has_same_head(column) else 2
            if nearest is not None and named >= enough and named >= 0.6 * (len(own) - 2):
                return nearest + 1
            if nearest is None and amounts >= max(1, 0.5 * (len(own) - 2)):
                nearest = column
        return area.left

    def _has_gap_or_head(self, column: int) -> bool:
        before = any((row, column - 1) in self.look.own for row in range(self.area.top, self.area.bottom + 1))
        heads = {heading(self.look.text(row, column)) for row in range(self.area.top, self.area.bottom + 1)}
        return not before or "taxon" in heads or not (heads & {"part", "common name", "family", "authority"})

    def _is_new_head(self, row: int, first: int) -> bool:
        look = self.look
        labels = [look.text(row, c) for c in range(self.area.left, self.names + 1)]
        roles = {heading(text) for text in labels if text}
        if not roles & {"sample", "taxon"}:  # 'Feature' and 'Liters' once more, over other features
            return bool(roles & set(SAMPLE_ROLES)) and all(self._repeats_head(r, first) for r in (row, row + 1))
        own = [c for c in range(self.area.left, self.right + 1) if (row, c) in look.own]
        if len(own) == 1 and (row, own[0] + 1) in look.cells and row > first:
            return False  # 'Charred remains' in one cell merged over all columns
        others = [c for c in range(self.names + 1, self.right + 1) if (row, c) in look.cells]
        if "sample" in roles and len(others) >= 1:
            above = any(
                "sample" in {heading(look.text(r, c)) for c in range(self.area.left, self.names + 1)}
                for r in range(self.area.top, first)
            )
            return above or sum(look.is_text(row, c) or looks_like_id(look.text(row, c)) for c in others) >= 1
        texts = [c for c in others if look.is_text(row, c)]
        if self._repeats_head(row, first):
            return len(others) >= 1
        # 'Wild plants' before a lone remark heads a section; a head stands over most of the counts.
        width = max(sum(look.is_amount(r, c) for c in range(self.names + 1, self.right + 1)) for r in self.body)
        return len(others) >= max(1, 0.5 * width) and len(texts) * 2 >= len(others)

    def _repeats_head(self, row: int, first: int) -> bool:
        look = self.look
        own = look.text(row, self.names)
        return bool(own) and any(look.text(r, self.names) == own for r in range(self.area.top, first))
