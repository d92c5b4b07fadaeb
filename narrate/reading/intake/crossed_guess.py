"""Tables in which taxa stand against samples: worked out with taxa running down; turned sheets are turned first."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.grids import Area
from narrate.model.layouts import DERIVED_ROLES, Role
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.crossed_body import ROW_META
from narrate.reading.intake.crossed_heads import COMPLETE, SIZES, Heads, condition_role, content_role, heading_over
from narrate.reading.intake.evidence import Look, looks_like_id, plain_label
from narrate.reading.intake.header_words import flat_heading, heading, quantity


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
class _Guessing(Heads):
    """One reading of an area, with one column taken for the names."""

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

    # ---- columns

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
            *(role for role in ROW_META if role not in ("sample", *DERIVED_ROLES)),
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


def _value(look: Look, row: int, column: int) -> float:
    cell = look.cells.get((row, column))
    if cell is None:
        return 0.0
    if cell.number is not None:
        return cell.number
    return number_of(cell.text, ".") or 0.0
