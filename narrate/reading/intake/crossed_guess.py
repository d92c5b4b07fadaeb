"""Tables in which taxa stand against samples: worked out with taxa running down; turned sheets are turned first."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from narrate.model.grids import Area
from narrate.model.layouts import Role
from narrate.reading.intake.bulk_weights import without_bulk_weights
from narrate.reading.intake.columns_of_names import columns_of_names
from narrate.reading.intake.crossed_sums import Sums
from narrate.reading.intake.evidence import Look, looks_like_id
from narrate.reading.intake.header_words import heading, quantity, sample_rank
from narrate.reading.intake.heads_behind_samples import heads_behind_samples
from narrate.reading.intake.heads_by_content import content_role
from narrate.reading.intake.least_numbers import counted_by_least
from narrate.reading.intake.lists_of_presence import is_list_of_answers
from narrate.reading.intake.plant_words_abroad import has_east_asian_letters
from narrate.reading.intake.records_below import records_below
from narrate.reading.intake.results_behind_totals import results_behind_totals
from narrate.reading.intake.small_heads_again import with_first_section


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
    named: float = 0.0
    """How much the names of the lines with counts look like names of plants, from 0 to 1."""
    doubts: list[str] = field(default_factory=list)


def guess_crossed(look: Look, area: Area) -> Crossed | None:
    """The crossed table with taxa running down in an area; None where no such table can be seen."""
    best: Crossed | None = None
    best_score = 0.0
    for column in columns_of_names(look, area):
        found = _Guessing(look, area, column).guess()
        if found is None:
            continue
        own = [look.text(r, column) for r, role in found.rows.items() if role.name == "counts" and look.text(r, column)]
        parts = sum(bool(look.names.part_of(text) or quantity(text)) for text in own)  # 'grain', and 'g' of charcoal
        families = sum(bool(_FAMILY.fullmatch(text.strip())) for text in own)
        recurs = len(set(own)) < len(own) and families >= 0.6 * len(own)
        is_over_names = (recurs and _has_names_beside(found, column)) or _heads_groups(found, column)
        score = found.score * (0.3 if is_over_names or (own and parts >= 0.8 * len(own)) else 1.0)
        if best is None or score > best_score:
            best, best_score = found, score
    if best is not None:
        counts = [c for c, role in best.columns.items() if role.name == "counts"]
        more = records_below(look, area, best.rows, counts, best.area.bottom)
        best.rows.update(more)
        best.area = replace(best.area, bottom=max([best.area.bottom, *more]))
    return best


_LABELS = ("context", "contexts", "cxt", "ctx", "locus", "kontext", "contexte", "contesto", "contexto", "phase")
"""Heads that no sample is named by."""
_FAMILY = re.compile(r"[A-Z][a-z]+(?:aceae|idae|eae|iferae|inosae|minae|mineae|ositae)", re.ASCII)


def _has_names_beside(found: Crossed, column: int) -> bool:
    """Whether most lines carry another word beside the family that reads as a name."""
    lines = [row for row, role in found.rows.items() if role.name == "counts"]
    others = [c for c, role in found.columns.items() if c != column and role.name in ("common name", "taxon note")]
    return any(sum(bool(found.look.text(row, c)) for row in lines) >= 0.6 * len(lines) for c in others)


def _heads_groups(found: Crossed, column: int) -> bool:
    """Whether each name stands over several lines that all have names of their own beside it: 'Cereals' over emmer."""
    look = found.look
    lines = [row for row, role in found.rows.items() if role.name == "counts"]
    texts = [look.text(row, column) for row in lines]
    if len(lines) < 4 or len(set(texts)) > 0.6 * len(lines):
        return False
    for c, role in found.columns.items():
        own = [look.text(row, c) for row in lines]
        named = sum(look.name_score(row, c) >= 0.45 for row in lines)
        apart = [text for n, text in enumerate(own) if n == 0 or text != own[n - 1]]  # count and weight share a name
        is_of_names = named >= 0.6 * len(lines) and len(set(own)) >= 0.8 * len(apart) and len(apart) >= 0.5 * len(lines)
        is_everyday = all(map(has_east_asian_letters, own)) and not any(map(has_east_asian_letters, texts))
        if c != column and role.name in ("common name", "taxon note") and is_of_names and not is_everyday:
            return True
    return False


@dataclass(slots=True)
class _Guessing(Sums):
    """One reading of an area, with one column taken for the names."""

    def guess(self) -> Crossed | None:
        self._find_body()
        if not self.body:
            return None
        self._find_columns()
        if not self.counts:
            return None
        self._find_rows()
        self._sums_without_id()
        heads = self._head_rows()
        if not heads and self._begin_at_names():
            heads = self._head_rows()
        if not heads:
            return None
        sample_row = self._roles_of_heads(heads)
        if sample_row is None or self._is_a_find(sample_row):
            return None
        self._roles_of_columns(heads, sample_row)
        if not any(role.name == "counts" for role in self.columns.values()):
            return None
        self._label_roles(heads)
        self._unlabelled_totals()
        return self._made(sample_row)

    # ---- columns

    def _roles_of_columns(self, heads: list[int], sample_row: int) -> None:
        outer = [row for row in heads if self.rows[row].name != "quantity"]
        quantity_row = next((row for row in heads if self.rows[row].name == "quantity"), None)
        totals = {c for c in self.counts if quantity_row is not None and self._is_small_total(quantity_row, c)}
        smalls = {c: self.look.text(quantity_row, c) for c in self.counts} if quantity_row is not None else {}
        least = counted_by_least(smalls)
        for column in self.counts:
            derived = self._derived_role(column, outer)
            small = smalls.get(column, "")
            if column in least:
                self.columns[column] = Role(name="counts")
            elif quantity(small) in ("percent", "density") or heading(small) in ("ubiquity", "derived"):
                self.columns[column] = Role(name=quantity(small) or heading(small))
            elif column in totals and 2 * len(totals) < len(self.counts):
                self.columns[column] = Role(name="total")  # 'Total n' among 'n', under no id of its own
            elif derived is not None:
                self.columns[column] = derived
            else:
                self.columns[column] = Role(name="counts")
        for column, (text, role) in heads_behind_samples(self.look, self.rows, self.columns, sample_row).items():
            self.columns[column] = role
            self.doubts.append(f"'{text}' stands behind the samples, without an id under it, and is taken for a result")
        for column, text in results_behind_totals(self.look, self.rows, self.columns, sample_row).items():
            self.columns[column] = Role(name="derived")
            self.doubts.append(f"DOUBTFUL: '{text}' stands behind a total and is taken for a result, and no sample")

    def _is_small_total(self, row: int, column: int) -> bool:
        return heading(self.look.text(row, column)) == "total"

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
        of_samples = sum(
            heading(t) in ("sample", "context", "volume", "taxon") and len(t) > 2 and not looks_like_id(t)
            for t in (look.text(sample_row, c) for c in count_columns)
        )
        if of_samples >= 2 or of_samples == len(count_columns) or (of_samples and len(count_columns) <= 2):
            return None  # 'Locus', 'Sample', 'Volume' are heads of columns, and no ids
        if is_list_of_answers(look, sample_row, self.labels, count_rows, count_columns):
            return None
        self._drop_labels_for_ids(sample_row, count_columns)
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
            and not look.text(sample_row, self.names)
            and sample_row not in self._rows_headed_at_names(over_names & plain_roles)
        ):
            score *= 0.4
        # Names that come again and again, with nothing beside them that tells them apart, are phases or parts.
        score *= max(0.1, self._share_of_own_names(count_rows)) ** 2
        score -= 0.1 * claimed
        for column in range(self.area.left, self.right + 1):
            if column not in self.columns and any(
                (r, column) in look.cells for r in range(self.area.top, self.bottom + 1)
            ):
                self.columns[column] = Role(name="ignored", qualifiers=("nothing in it belongs to the counts",))
        first = self.body[0]
        bands = [row for row in sorted(self.rows) if row > first and self._is_small_head_again(row, first)]
        rows = with_first_section(look, dict(sorted(self.rows.items())), self.names, bands)
        rows, of_bulk = without_bulk_weights(look, rows, self.names)
        self.doubts.extend([] if look.is_turned else of_bulk)
        top = min(rows)
        return Crossed(
            look=look,
            rows=rows,
            columns=dict(sorted(self.columns.items())),
            area=Area(top=top, left=self.area.left, bottom=self.bottom, right=self.right),
            explained=explained,
            score=score,
            named=sum(look.name_score(row, self.names) for row in count_rows) / max(1, len(count_rows)),
            doubts=self.doubts,
        )

    def _drop_labels_for_ids(self, sample_row: int, count_columns: list[int]) -> None:
        """A label such as 'Vol (L)' among the ids heads something and is never a sample; 'Pit' or 'Fill' may be."""
        for column in count_columns:
            text = self.look.text(sample_row, column)
            role = heading(text)
            is_label = (
                role in ("volume", "flot volume", "flot mass", "sorted")
                or (role == "sample" and sample_rank(text) == 3)
                or text.lower().strip(" .:") in _LABELS
            )
            if is_label and len(text) > 2 and not looks_like_id(text):
                self.columns[column] = Role(name="ignored", qualifiers=("a label stands where its sample should",))
                self.doubts.append(
                    f"DOUBTFUL: '{text}' stands among the ids of samples and is a label of one; what is under it is "
                    "left out: write the id of the sample in its place, or give its row and column their roles"
                )

    def _share_of_own_names(self, lines: list[int]) -> float:
        """How many of the lines have labels of their own; lines of parts, sieve classes or weights share a name."""
        telling = ("taxon", "genus", "epithet", "part", "common name", "authority")
        beside = [c for c, role in self.columns.items() if c in self.labels and role.name in telling]
        kinds = {role.name for role in self.columns.values()}
        texts = [tuple(self.look.text(row, c) for c in beside) for row in lines]
        if not texts or kinds & {"quantity", "size class", "fraction", "condition", "completeness"}:
            return 1.0
        return len(set(texts)) / len(texts)

    def _rows_headed_at_names(self, roles: set[str]) -> list[int]:
        """Head rows whose label stands in the column of names: 'Sample' there is the label of the row of ids."""
        return [
            row for row in self.rows
            if heading(self.look.text(row, self.names)) in roles and self._content(row) >= 0.5 * len(self.counts)
        ]  # fmt: skip
