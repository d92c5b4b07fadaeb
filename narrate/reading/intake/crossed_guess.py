"""Tables in which taxa stand against samples: worked out with taxa running down; turned sheets are turned first."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field
from itertools import combinations

from narrate.model.grids import Area
from narrate.model.layouts import DERIVED_ROLES, SAMPLE_ROLES, Role
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.evidence import Look, looks_like_id, plain_label
from narrate.reading.intake.header_words import flat_heading, heading, quantity, unit
from narrate.reading.intake.written_names import not_a_plant
from narrate.reading.values import find_word


@dataclass(slots=True, kw_only=True)
class Crossed:
    """A crossed table as worked out, in the coordinates of its look."""

    look: Look
    rows: dict[int, Role] = field(default_factory=dict)
    columns: dict[int, Role] = field(default_factory=dict)
    area: Area
    explained: int = 0
    """Cells of counts that have a name and a sample."""
    score: float = 0.0
    doubts: list[str] = field(default_factory=list)


_ROW_META = frozenset((*SAMPLE_ROLES, *DERIVED_ROLES, "size class", "fraction", "location", "note"))
"""What a label may make of a row that is none of the taxa."""
_PHASE_WORDS = re.compile(
    r"\b(?:phase|period|century|cent|early|middle|late|bc|ad|bce|ce|bp|roman|medieval|saxon|norman|modern|neolithic|bronze|iron|mesolithic|"
    r"prehistoric|woodland|mississippian|archaic|historic|viking|byzantine|islamic|c\d\d?|\d+(?:st|nd|rd|th))\b",
    re.IGNORECASE,
)


def guess_crossed(look: Look, area: Area) -> Crossed | None:
    """The crossed table with taxa running down in an area; None where no such table can be seen."""
    best: Crossed | None = None
    best_score = 0.0
    for column in _name_columns(look, area):
        found = _Guessing(look, area, column).guess()
        if found is None:
            continue
        own = [look.text(r, column) for r, role in found.rows.items() if role.name == "counts" and look.text(r, column)]
        parts = sum(bool(look.names.part_of(text)) for text in own)
        score = found.score * (0.3 if own and parts >= 0.8 * len(own) else 1.0)
        if best is None or score > best_score:
            best, best_score = found, score
    return best


def _name_columns(look: Look, area: Area) -> list[int]:
    """The most likely columns of names, best first; words that nobody knows are taken only where no names are seen."""
    scores: dict[int, float] = {}
    plain: dict[int, float] = {}
    rows_with_amounts = {
        row for row in range(area.top, area.bottom + 1)
        if any(look.is_amount(row, c) for c in range(area.left, area.right + 1))
    }  # fmt: skip
    for column in range(area.left, min(area.right, area.left + 400) + 1):
        for row in range(area.top, area.bottom + 1):
            if (row, column) in look.own:
                weight = 1.0 if row in rows_with_amounts else 0.1
                scores[column] = scores.get(column, 0.0) + look.name_score(row, column) * weight
                plain[column] = plain.get(column, 0.0) + plain_label(look.text(row, column)) * weight
    for column in scores:
        heads = {
            heading(look.text(row, column)) for row in range(area.top, area.bottom + 1) if (row, column) in look.own
        }
        texts = [look.text(row, column) for row in range(area.top, area.bottom + 1) if (row, column) in look.own]
        parts = sum(bool(look.names.part_of(text)) for text in texts)
        # 'seed' and 'grain' down a column are parts beside names; 'Taxon' over it says names.
        if heads & {"taxon", "genus"}:
            scores[column] *= 1.5
        elif "part" in heads or parts >= 0.8 * len(texts):
            scores[column] *= 0.3
    # A few stray words are no list of names.
    named = [c for c, score in sorted(scores.items(), key=lambda item: (-item[1], item[0])) if score >= 0.9][:3]
    unknown = [c for c, score in sorted(plain.items(), key=lambda item: (-item[1], item[0])) if score >= 0.4][:2]
    return named + [c for c in unknown if c not in named]


@dataclass(slots=True)
class _Guessing:
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

    def guess(self) -> Crossed | None:
        self._find_body()
        if not self.body:
            return None
        self._find_columns()
        if not self.counts:
            return None
        self._find_rows()
        heads = self._head_rows()
        if not heads:
            return None
        sample_row = self._roles_of_heads(heads)
        if sample_row is None:
            return None
        self._roles_of_columns(heads, sample_row)
        if not any(role.name == "counts" for role in self.columns.values()):
            return None
        self._label_roles(heads)
        self._unlabelled_totals()
        return self._made(sample_row)

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
            amounts = sum(look.is_amount(row, c) for c in range(area.left, right + 1) if c != self.names)
            texts = sum(look.is_text(row, c) for c in range(area.left, right + 1) if c != self.names)
            if amounts and self._score(row) > 0 and (amounts >= texts or self._score(row) >= 0.5):
                rows.append(row)
        self.body = rows
        if not rows:
            return
        # A second head inside the body begins another table.
        first = rows[0]
        for row in range(first + 1, rows[-1] + 1):
            if self._is_new_head(row, first):
                self.body = [r for r in rows if r < row]
                break
        self.bottom = self.body[-1]

    def _right_end(self) -> int:
        """Columns up to another column of names with counts on both sides of it, which begins another table."""
        look, area = self.look, self.area
        seen_counts = False
        for column in range(self.names + 1, area.right + 1):
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
        if not roles & {"sample", "taxon"}:
            return False
        others = [c for c in range(self.names + 1, self.right + 1) if (row, c) in look.cells]
        if "sample" in roles and len(others) >= 1:
            above = any(
                "sample" in {heading(look.text(r, c)) for c in range(self.area.left, self.names + 1)}
                for r in range(self.area.top, first)
            )
            return above or sum(look.is_text(row, c) or looks_like_id(look.text(row, c)) for c in others) >= 1
        texts = [c for c in others if look.is_text(row, c)]
        return len(others) >= 1 and (len(texts) * 2 >= len(others) or self._repeats_head(row, first))

    def _repeats_head(self, row: int, first: int) -> bool:
        look = self.look
        own = look.text(row, self.names)
        return any(look.text(r, self.names) == own for r in range(self.area.top, first))

    def _find_columns(self) -> None:
        look = self.look
        found: dict[int, tuple[int, int]] = {}
        for column in range(self.area.left, self.right + 1):
            if column == self.names:
                continue
            amounts = sum(look.is_amount(row, column) for row in self.body)
            texts = sum(look.is_text(row, column) for row in self.body)
            found[column] = (amounts, texts)
        for column, (amounts, texts) in found.items():
            if amounts and amounts >= 2 * texts:
                self.counts.append(column)
            elif texts:
                self.labels.append(column)
        self.labels.append(self.names)
        self.labels.sort()
        self._drop_codes()
        if self.counts:
            # Columns without any find are sterile samples where a head stands over them.
            for column in range(min(self.counts), self.right + 1):
                if column not in self.counts and column not in self.labels and self._has_head(column):
                    self.counts.append(column)
            self.counts.sort()

    def _has_head(self, column: int) -> bool:
        return any((row, column) in self.look.cells for row in range(self.area.top, self.body[0])) and not any(
            (row, column) in self.look.cells and not self.look.is_amount(row, column) for row in self.body
        )

    def _drop_codes(self) -> None:
        """Columns of running or code numbers before the names are no counts."""
        for column in [c for c in self.counts if c < self.names]:
            heads = [heading(self.look.text(row, column)) for row in range(self.area.top, self.body[0])]
            texts = [self.look.text(row, column) for row in self.body if (row, column) in self.look.cells]
            numbers = [int(t) for t in texts if t.isdigit()]
            is_running = (
                len(numbers) == len(texts) > 2 and len(set(numbers)) == len(numbers) and numbers == sorted(numbers)
            )
            is_named = any(head in ("code", "count", "group") for head in heads)
            counts_behind = any(c > self.names for c in self.counts)
            if counts_behind and (is_running or is_named):
                self.counts.remove(column)
                self.columns[column] = Role(name="code")

    # ---- rows of the body

    def _find_rows(self) -> None:
        first, last = self.body[0], self.body[-1]
        in_body = set(self.body)
        row = last + 1
        gap = 0
        # Rows below that go on: totals, volumes, names that nobody knows.
        while row <= self.area.bottom and gap < 2:
            if not self._row_has(row):
                gap += 1
            elif self._is_new_head(row, first):
                break
            elif self._content(row) or self._row_label(row)[1] in _ROW_META:
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

    def _drop_unnamed_before(self) -> None:
        """Where most lines carry names of plants, numbers before the first of them under other words are no counts."""
        named = [row for row in self.body if self.look.name_score(row, self.names) >= 0.45]
        over = {heading(self.look.text(row, self.names)) for row in range(self.area.top, self.body[0])}
        if len(named) < 0.5 * len(self.body) or len(named) < 2 or over & {"taxon", "genus"}:
            return
        for row in range(self.body[0], named[0]):
            is_latin = re.match(r"(?:cf\.? ?)?[A-Z][a-z]+[ _.](?:cf\.? ?)?[a-z]{3,}", self.look.text(row, self.names))
            if self.rows[row].name == "counts" and not is_latin:
                self.rows[row] = Role(name="ignored", qualifiers=("no name of a plant",))

    def _row_has(self, row: int) -> bool:
        return any((row, c) in self.look.cells for c in range(self.area.left, self.right + 1))

    def _content(self, row: int) -> int:
        return sum((row, c) in self.look.cells for c in self.counts)

    def _is_note(self, row: int) -> bool:
        texts = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if (row, c) in self.look.own]
        return len(texts) == 1 and (
            len(texts[0]) > 40 or bool(re.match(r"(?:note|key|\*|source|abbrev|figures)", texts[0], re.I))
        )

    def _row_label(self, row: int) -> tuple[str, str]:
        """(label, role): the first of the row's labels that speaks for a role, else the name."""
        for column in [
            self.names,
            *[c for c in self.labels if c != self.names],
            *[c for c in self.columns if c < self.names],
        ]:
            text = self.look.text(row, column)
            if text and (row, column) in self.look.cells:
                role = heading(text)
                if role in _ROW_META:
                    return text, role
        text = self.look.text(row, self.names) or next(
            (self.look.text(row, c) for c in self.labels if self.look.text(row, c)), ""
        )
        return text, heading(text)

    def _body_role(self, row: int, is_counted: bool) -> Role:
        look = self.look
        if not self._row_has(row):
            return Role(name="blank")
        label, role = self._row_label(row)
        content = self._content(row)
        if role in _ROW_META and look.name_score(row, self.names) == 0 and (content or role in DERIVED_ROLES):
            return _with_unit(role, label)
        if not content:
            if not label or self._is_note(row):
                return Role(name="notes")
            is_species = (
                bool(re.match(r"(?:cf\. ?)?[A-Z][a-z]+ (?:cf\.? ?)?[a-z]{3,}", label))
                and look.name_score(row, self.names) >= 0.9
            )
            return Role(name="counts") if is_species and not label.isupper() else Role(name="section")
        if label and not_a_plant(label):
            return Role(name="not plants")
        if not label:
            return Role(name="ignored", qualifiers=("no name stands before it",))
        return Role(name="counts")

    # ---- rows above

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
                is_title = len(self.look.text(row, own[0])) > 25
                self.rows[row] = Role(
                    name="title" if is_title else "ignored", qualifiers=() if is_title else ("a single cell",)
                )
                continue
            if in_counts and not (
                len(own) == 1 and self._spans(row, own[0]) and (own[0] <= self.names or self._is_title(row, own[0]))
            ):
                heads.append(row)
            elif only_label and not heads and label and len(own) == 1 and not heading(label) and len(label) < 50:
                self.rows[row] = Role(name="section")
            elif only_label and any(heading(self.look.text(row, c)) for c in own):
                self.rows[row] = Role(name="header")
            else:
                self.rows[row] = Role(name="title")
        return sorted(heads)

    def _spans(self, row: int, column: int) -> bool:
        return (row, column + 1) in self.look.cells and (row, column + 1) not in self.look.own

    def _is_title(self, row: int, column: int) -> bool:
        text = self.look.text(row, column)
        return len(text) > 30 or (row == self.area.top and not heading(text))

    def _roles_of_heads(self, heads: list[int]) -> int | None:
        """Gives each head row its role and finds the row of sample ids."""
        look = self.look
        found: dict[int, tuple[str, str]] = {}
        for row in heads:
            found[row] = self._head_role(row)
        meta_below = [r for r, role in self.rows.items() if role.name in SAMPLE_ROLES and r > self.body[0]]
        candidates = heads + meta_below
        roles = {**{row: found[row][0] for row in heads}, **{row: self.rows[row].name for row in meta_below}}
        plain = [c for c in self.counts if not self._is_derived_column(c, candidates)]
        plain = plain or self.counts

        def distinct(row: int) -> float:
            texts = [look.text(row, c) for c in plain]
            given = [text for text in texts if text]
            return len(set(given)) / len(plain) if plain else 0.0

        def coverage(row: int) -> float:
            return sum((row, c) in look.cells for c in plain) / len(plain) if plain else 0.0

        chosen: int | None = None
        labelled = [row for row in candidates if roles[row] == "sample"]
        pairs = [
            row
            for row in heads
            if roles[row] in ("quantity", "size class", "fraction", "part", "condition", "completeness")
        ]
        if labelled:
            chosen = max(labelled, key=lambda row: (distinct(row), -abs(row - self.body[0])))
        if chosen is None:
            unknown = [row for row in heads if roles[row] == "" and coverage(row) > 0.4]
            if unknown:
                chosen = max(
                    unknown,
                    key=lambda row: (
                        round(distinct(row), 2),
                        sum(looks_like_id(look.text(row, c)) for c in plain),
                        row,
                    ),
                )
                if distinct(chosen) < 0.6 and not pairs:
                    others = [
                        r
                        for r in candidates
                        if roles[r] in ("context", "feature", "site") and distinct(r) > distinct(chosen)
                    ]
                    chosen = max(others, key=distinct) if others else chosen
        if chosen is None:
            for wanted in ("context", "feature", "site", "kind", "description", "phase", "count", "taxon"):
                rows = [row for row in candidates if roles[row] == wanted]
                if rows:
                    chosen = max(rows, key=distinct)
                    if wanted in ("phase", "site", "kind", "description"):
                        self.doubts.append(
                            f"the table names no samples; each column is a {wanted}, and ubiquity counts those"
                        )
                    break
        if chosen is None:
            return None
        for row in candidates:
            role, word = found.get(row, (roles[row], ""))
            if row == chosen:
                also = (
                    ("context",)
                    if role == "context"
                    else (role,)
                    if role in ("feature", "site", "phase", "kind")
                    else ()
                )
                self.rows[row] = Role(name="sample", also=also, filled=self._needs_fill(row, plain, bool(pairs)))
            elif row in heads:
                self.rows[row] = self._named_head(row, role, word, plain)
        self._once_each(candidates)
        self._fill_scarce(chosen, plain)
        others = [row for row in candidates if row != chosen and self.rows[row].name in ("context", "site", "feature")]
        if distinct(chosen) < 0.95 and not pairs and coverage(chosen) > 0.6:
            self._join_ids(
                chosen,
                [*others, *(r for r in candidates if self.rows[r].name in ("phase", "kind") and r != chosen)],
                plain,
            )
        return chosen

    def _join_ids(self, chosen: int, others: list[int], plain: list[int]) -> None:
        """Where numbers begin anew in each context, or no row tells all columns apart, ids are joined from two or three rows."""
        for several in (1, 2, 3):
            for rows in combinations(others, several):
                texts = [self._filled_texts(row, plain) for row in (*rows, chosen)]
                if len(set(zip(*texts, strict=True))) == len(plain) and not (
                    several > 1 and self.rows[chosen].name != "sample"
                ):
                    for row in rows:
                        role = self.rows[row]
                        self.rows[row] = Role(name="sample", also=(role.name,), filled=role.filled)
                    self.doubts.append("no row alone tells the samples apart; their ids are joined with /")
                    return
        if others:
            texts = [self._filled_texts(row, plain) for row in (*others, chosen)]
            if len(set(zip(*texts, strict=True))) > len(set(texts[-1])):
                for row in others:
                    role = self.rows[row]
                    self.rows[row] = Role(name="sample", also=(role.name,), filled=role.filled)
                self.doubts.append(
                    "nothing tells all samples apart; their ids are joined with /, and some are still the same"
                )

    def _fill_scarce(self, chosen: int, plain: list[int]) -> None:
        """Sites and contexts that are written once over several samples mean them all."""
        for row, role in list(self.rows.items()):
            if role.name in ("context", "site", "feature", "phase") and row != chosen and not role.filled:
                given = [(row, c) in self.look.cells for c in plain]
                if given and given[0] and not all(given):
                    self.rows[row] = Role(name=role.name, also=role.also, qualifiers=role.qualifiers, filled=True)

    def _filled_texts(self, row: int, plain: list[int]) -> list[str]:
        found: list[str] = []
        for column in plain:
            text = self.look.text(row, column)
            found.append(text or (found[-1] if found and self.rows[row].filled else ""))
        return found

    def _once_each(self, candidates: list[int]) -> None:
        """Of two rows that both speak of contexts ('Provenience', 'Level') the first is the context, the other a note."""
        seen: set[str] = set()
        for row in candidates:
            role = self.rows[row]
            if role.name in ("context", "feature", "phase", "volume", "kind", "description"):
                if role.name in seen:
                    self.rows[row] = Role(name="sample note", filled=role.filled)
                seen.add(role.name)

    def _needs_fill(self, row: int, plain: list[int], has_pairs: bool) -> bool:
        blanks = sum((row, c) not in self.look.cells for c in plain)
        return bool(blanks) and has_pairs and (row, plain[0]) in self.look.cells and blanks >= len(plain) / 4

    def _named_head(self, row: int, role: str, word: str, plain: list[int]) -> Role:
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
        filled = is_scarce and blanks >= 0.3 * len(plain)
        made = _with_unit(role, word)
        return Role(name=made.name, qualifiers=made.qualifiers, filled=filled)

    def _head_role(self, row: int) -> tuple[str, str]:
        """(role, the words it was read from) of a row above the body; an empty role for ids without a label."""
        look = self.look
        label_columns = [c for c in range(self.area.left, self.right + 1) if c not in self.counts]
        for column in sorted(label_columns, key=lambda c: (c != self.names, -c)):
            text = look.text(row, column)
            role = heading(text) if text else ""
            if role in _ROW_META and role not in DERIVED_ROLES:
                return role, text
        texts = [look.text(row, c) for c in self.counts if (row, c) in look.cells]
        if (
            any(heading(look.text(row, c)) == "condition" for c in label_columns)
            and texts
            and all(look.names.condition_of(t) for t in texts)
        ):
            return "condition", ""
        by_content = content_role(texts, look)
        if by_content:
            return by_content, ""
        # 'Samples' or 'Contexts' written once over all columns.
        if len(set(texts)) == 1 and heading(texts[0]) and len(texts) > 1:
            return "header", texts[0]
        for column in label_columns:
            role = heading(look.text(row, column))
            if role in DERIVED_ROLES:
                return role, look.text(row, column)
        if texts and sum(bool(heading(t)) and not looks_like_id(t) for t in texts) > 0.6 * len(texts):
            return "header", ""
        return "", ""

    # ---- columns

    def _is_derived_column(self, column: int, heads: list[int]) -> bool:
        return self._derived_role(column, heads) is not None

    def _derived_role(self, column: int, heads: list[int]) -> Role | None:
        for row in heads:
            text = self.look.text(row, column)
            if not text or looks_like_id(text):
                continue
            role = quantity(text) if quantity(text) in ("percent", "density") else heading(text)
            if role in DERIVED_ROLES:
                return Role(name=role)
            if (
                role in ("note", "common name", "authority", "code", "family", "part", "group")
                and (row, column) in self.look.own
            ):
                return Role(name={"note": "taxon note"}.get(role, role))
            if (
                role == "count"
                and text.lower() not in ("n",)
                and (row, column) in self.look.own
                and len(self.counts) > 1
            ):
                return Role(name="total")
        return None

    def _roles_of_columns(self, heads: list[int], sample_row: int) -> None:
        outer = [row for row in heads if self.rows[row].name != "quantity"]
        quantity_row = next((row for row in heads if self.rows[row].name == "quantity"), None)
        for column in self.counts:
            derived = self._derived_role(column, outer)
            small = self.look.text(quantity_row, column) if quantity_row is not None else ""
            if derived is not None:
                self.columns[column] = derived
            elif quantity(small) in ("percent", "density") or heading(small) in ("ubiquity", "derived"):
                self.columns[column] = Role(name=quantity(small) or heading(small))
            else:
                self.columns[column] = Role(name="counts")

    def _label_roles(self, heads: list[int]) -> None:
        """Roles of the columns of words, by their headings, then by what stands in them."""
        look = self.look
        # 'Feature type' before a row of kinds of context heads that row, and not the column that it stands in.
        heads_of_rows = (
            "title",
            "condition",
            "completeness",
            *(role for role in _ROW_META if role not in ("sample", *DERIVED_ROLES)),
        )
        head_rows = [
            row
            for row in range(self.area.top, self.body[0])
            if self.rows.get(row, Role(name="title")).name not in heads_of_rows
        ]
        for column in self.labels:
            texts = [look.text(row, column) for row in self.body if (row, column) in look.cells]
            roles = [heading(look.text(row, column)) for row in head_rows if look.text(row, column)]
            label_roles = [
                r
                for r in roles
                if r
                in (
                    "taxon",
                    "genus",
                    "epithet",
                    "family",
                    "common name",
                    "authority",
                    "part",
                    "condition",
                    "completeness",
                    "code",
                    "group",
                    "note",
                    "cf",
                    "size class",
                    "fraction",
                    "description",
                    "count",
                    "kind",
                    *DERIVED_ROLES,
                )
            ]
            role = label_roles[-1] if label_roles else ""
            if column == self.names:
                own = "genus" if role == "genus" else "taxon"
                self.columns[column] = Role(name=own, filled=self._names_need_fill(column))
                continue
            if role in ("count", "description", "kind", "note"):
                role = "taxon note"
            if role in DERIVED_ROLES:
                self.columns[column] = Role(name=role)
                continue
            if role == "condition":
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
            if (
                role in ("group", "taxon note")
                and sum(bool(look.names.part_of(t)) for t in texts) >= 0.6 * len(texts) > 0
            ):
                role = "part"
            self.columns[column] = Role(
                name=role or self._label_by_content(column, texts), filled=self._label_needs_fill(column, role)
            )
        self._split_names()
        if any(role.name == "genus" for role in self.columns.values()) and not any(
            r.name == "epithet" for r in self.columns.values()
        ):
            self.columns[self.names] = Role(name="taxon", filled=self.columns[self.names].filled)

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

    def _names_need_fill(self, column: int) -> bool:
        """A blank under a name, in a row with counts that another column of words tells apart, stands for the name above."""
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
        if sum(bool(names.part_of(t)) for t in texts) >= 0.6 * len(texts):
            return "part"
        if sum(bool(names.condition_of(t)) for t in texts) >= 0.6 * len(texts):
            return "condition"
        if sum(t.lower().endswith("aceae") for t in texts) >= 0.5 * len(texts):
            return "family"
        if sum(flat_heading(t) in ("cf", "") for t in texts) >= 0.8 * len(texts):
            return "cf"
        if sum(flat_heading(t) in _COMPLETE for t in texts) >= 0.6 * len(texts):
            return "completeness"
        if sum(bool(re.match(r"(?:\(?[A-Z][\w.&() -]*\.?\)?|L\.)$", t)) and ("." in t) for t in texts) >= 0.6 * len(
            texts
        ):
            return "authority"
        if sum(bool(_SIZES.fullmatch(t)) for t in texts) >= 0.6 * len(texts):
            return "size class"
        if all(heading(t) == "" and t in "0123456789" for t in texts):
            return "code"
        if sum(self.look.name_score(row, column) >= 0.5 for row in self.body) >= 0.5 * len(texts):
            return "common name"
        return "taxon note"

    def _unlabelled_totals(self) -> None:
        """Rows and columns without a label that are the sum of the others."""
        columns = [c for c, role in self.columns.items() if role.name == "counts"]
        rows = [r for r, role in self.rows.items() if role.name == "counts"]
        if len(columns) < 3 or len(rows) < 3:
            return
        for row, role in list(self.rows.items()):
            if role.name == "ignored" and row > rows[-1]:
                sums = [(_value(self.look, row, c), sum(_value(self.look, r, c) for r in rows)) for c in columns]
                if sum(abs(a - b) < 1e-9 for a, b in sums if a or b) >= 0.8 * len(columns):
                    self.rows[row] = Role(name="total")
        value = {(r, c): _value(self.look, r, c) for r in rows for c in columns}
        sample_rows = [r for r, role in self.rows.items() if role.name == "sample"]
        for column in (columns[-1], columns[0]):
            ids = [self.look.text(r, column) for r in sample_rows if self.look.text(r, column)]
            if any(heading(id) not in ("count", "total") for id in ids):
                continue
            present = [
                (
                    value[r, column],
                    sum(
                        (r, c) in self.look.cells and self.look.text(r, c) not in ("0", "-")
                        for c in columns
                        if c != column
                    ),
                )
                for r in rows
            ]
            if ids and sum(a == b for a, b in present) >= 0.8 * len(rows):
                self.columns[column] = Role(name="ubiquity")
                continue
            sums = [(value[r, column], sum(value[r, c] for c in columns if c != column)) for r in rows]
            given = [(a, b) for a, b in sums if a or b]
            if len(given) >= 3 and sum(abs(a - b) < 1e-9 for a, b in given) >= 0.8 * len(given):
                self.columns[column] = Role(name="total")

    def _made(self, sample_row: int) -> Crossed | None:
        look = self.look
        count_columns = [c for c, role in self.columns.items() if role.name == "counts"]
        count_rows = [r for r, role in self.rows.items() if role.name == "counts"]
        explained = 0
        score = 0.0
        for row in count_rows:
            amounts = sum(look.is_amount(row, c) for c in count_columns)
            explained += amounts
            score += amounts * max(self._score(row), 0.1)
        claimed = sum(
            look.is_amount(r, c)
            for r in range(self.area.top, self.area.bottom + 1)
            for c in range(self.area.left, self.right + 1)
            if r not in self.rows and c not in self.columns
        )
        names_across = sum(look.name_score(sample_row, c) for c in count_columns) / max(1, len(count_columns))
        # A sample that is a word of plants is a sign that the sheet is read the wrong way round.
        score *= 1.0 - 0.8 * min(1.0, names_across)
        headings = sum(
            bool(heading(t)) and not looks_like_id(t) for t in (look.text(sample_row, c) for c in count_columns)
        )
        if len(count_columns) > 1 and headings >= 0.6 * len(count_columns):
            return None
        score *= 1.0 - 0.8 * headings / max(1, len(count_columns))
        if content_role([look.text(sample_row, c) for c in count_columns], look) in (
            "size class",
            "condition",
            "fraction",
        ):
            score *= 0.3
        label_texts = [
            look.text(sample_row, c) for c in range(self.area.left, self.right + 1) if c not in count_columns
        ]
        if any(heading(text) == "sample" for text in label_texts):
            score *= 1.3
        over_names = {heading(look.text(row, self.names)) for row in range(self.area.top, self.body[0])}
        if over_names & {"taxon", "genus", "common name"}:
            score *= 1.3
        plain_roles = {"sample", "context", "feature", "phase", "site"}
        if (
            over_names & plain_roles
            and not over_names & {"taxon"}
            and sample_row not in self._rows_headed_at_names(over_names & plain_roles)
        ):
            score *= 0.4
        score -= 0.1 * claimed
        for column in range(self.area.left, self.right + 1):
            if column not in self.columns and any(
                (r, column) in look.cells for r in range(self.area.top, self.bottom + 1)
            ):
                self.columns[column] = Role(name="ignored", qualifiers=("nothing in it belongs to the counts",))
        rows = {row: role for row, role in sorted(self.rows.items())}
        top = min(rows)
        return Crossed(
            look=look,
            rows=rows,
            columns=dict(sorted(self.columns.items())),
            area=Area(top=top, left=self.area.left, bottom=self.bottom, right=self.right),
            explained=explained,
            score=score,
            doubts=self.doubts,
        )

    def _rows_headed_at_names(self, roles: set[str]) -> list[int]:
        """Head rows whose label stands in the column of names: 'Sample' there is the label of the row of ids."""
        return [
            row for row in self.rows
            if heading(self.look.text(row, self.names)) in roles and self._content(row) >= 0.5 * len(self.counts)
        ]  # fmt: skip


_COMPLETE = ("whole", "fragment", "fragments", "frag", "frags", "w", "f", "complete", "broken")
_SIZES = re.compile(
    r"[<>≤≥]?\s*\d+(?:\.\d+)?\s*(?:[-–]\s*\d+(?:\.\d+)?)?\s*(?:mm|µm|um)|[<>≤≥]\s*\d+(?:\.\d+)?", re.IGNORECASE
)
_FRACTIONS = (
    "light",
    "heavy",
    "light fraction",
    "heavy fraction",
    "lf",
    "hf",
    "flot",
    "residue",
    "float",
    "light fr",
    "heavy fr",
)


def content_role(texts: list[str], look: Look) -> str:
    """What a row of headings is by the words in it: sizes, parts, conditions, n and g; empty for none of them."""
    if not texts:
        return ""
    names = look.names
    kinds = names.packs.words.kind_lookup
    n = len(texts)
    tests = (
        (
            "volume",
            1.0,
            lambda t: bool(re.fullmatch(r"\d+(?:[.,]\d+)? ?(?:l|lt|ltrs?|lit(?:re|er)s?)\.?", t, re.IGNORECASE)),
        ),
        ("quantity", 0.6, lambda t: bool(quantity(t)) and t not in ("w", "f")),
        ("size class", 0.6, lambda t: bool(_SIZES.fullmatch(t))),
        ("completeness", 0.6, lambda t: flat_heading(t) in _COMPLETE),
        ("fraction", 0.6, lambda t: flat_heading(t) in _FRACTIONS),
        ("condition", 0.6, lambda t: len(t) > 2 and bool(names.condition_of(t))),
        ("part", 0.6, lambda t: len(t) > 2 and bool(names.part_of(t))),
        ("kind", 0.5, lambda t: find_word(kinds, t) is not None),
    )
    for role, share, is_one in tests:
        if sum(is_one(t) for t in texts) >= share * n:
            return role
    lettered = [re.sub(r"[\s.#]*(?:\d+|[IVX]+|[A-Z])[a-z]?$", "", t) for t in texts]
    if n > 1 and sum(heading(t) == "site" for t in lettered) >= 0.6 * n:
        return "site"
    worded = Counter(
        heading(re.sub(r"[\s.#]*(?:\d+|[IVX]+)[a-z]?$", "", t)) for t in texts if re.search(r"(?:\d+|[IVX]+)[a-z]?$", t)
    )
    for role in ("phase", "site", "feature", "context"):
        if worded[role] >= 0.6 * n:
            return role
    if n > 1 and all(_PHASE_WORDS.search(t) for t in texts):
        return "phase"
    repeated = Counter(texts).most_common(1)[0][1]
    if repeated > 1 and sum(bool(_PHASE_WORDS.search(t)) for t in texts) >= 0.6 * n and len(set(texts)) < 0.7 * n:
        return "phase"
    return ""


def condition_role(heads: list[str]) -> Role:
    """A column of conditions; under 'Charred?' a yes means charred, and the layout says so."""
    asks = any(re.match(r"(?:charred|carboni[sz]ed|burn(?:t|ed))\b", text, re.IGNORECASE) for text in heads)
    return Role(name="condition", qualifiers=("yes is charred",) if asks else ())


def heading_over(look: Look, rows: list[int], column: int) -> str:
    return next((heading(look.text(row, column)) for row in reversed(rows) if heading(look.text(row, column))), "")


def _with_unit(role: str, words: str) -> Role:
    if role == "location":
        return Role(name="ignored", qualifiers=("locations are not taken into records",))
    if role == "note":
        return Role(name="sample note")
    if role in ("volume", "flot volume", "flot mass"):
        found = unit(words)
        default = {"volume": "l", "flot volume": "ml", "flot mass": "g"}[role]
        return Role(name=role, qualifiers=(found if found not in ("", "%", "mm") else default,))
    return Role(name=role)


def _value(look: Look, row: int, column: int) -> float:
    cell = look.cells.get((row, column))
    if cell is None:
        return 0.0
    if cell.number is not None:
        return cell.number
    return number_of(cell.text, ".") or 0.0
