"""The rows over a crossed table: which holds the ids of the samples, and what the others say of them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import combinations

from narrate.model.layouts import DERIVED_ROLES, SAMPLE_ROLES, Role
from narrate.reading.intake.crossed_body import ROW_META, Body, with_unit
from narrate.reading.intake.evidence import looks_like_id
from narrate.reading.intake.header_words import heading, quantity, sample_rank, unit
from narrate.reading.intake.heads_by_content import SIZES, content_role
from narrate.reading.intake.kind_words_abroad import kind_of
from narrate.reading.intake.units_and_levels import naming_contexts

_PER_LITRE = re.compile(r"\d\s*(?:/|per)\s*(?:10 ?)?l(?:it(?:re|er)s?)?\.?$", re.IGNORECASE)


@dataclass(slots=True)
class Heads(Body):
    """The same with the roles of the rows above."""

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
            if pairs and row not in pairs and plain and (row, plain[0]) in look.cells:
                return 1.0  # blanks over small headings mean as left
            return sum((row, c) in look.cells for c in plain) / len(plain) if plain else 0.0

        chosen: int | None = None
        labelled = [row for row in candidates if roles[row] == "sample"]
        pairs = [
            row
            for row in heads
            if roles[row] in ("quantity", "size class", "fraction", "part", "condition", "completeness", "cf")
            or (not roles[row] and self._recurs(row, plain))
        ]
        unread = [row for row in pairs if not roles[row]]
        if labelled:
            chosen = max(
                labelled,
                key=lambda row: (
                    distinct(row) > 0.5 and coverage(row) > 0.5,
                    self._rank_of_label(row),
                    distinct(row),
                    -abs(row - self.body[0]),
                ),
            )
        if chosen is None:
            unknown = [row for row in heads if roles[row] == "" and row not in unread and coverage(row) > 0.4]
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
                    if wanted in ("context", "feature", "phase", "site", "kind", "description"):
                        self.doubts.append(
                            f"the table names no samples; each {wanted} is taken as one, and ubiquity counts those"
                        )
                    break
        if chosen is None:
            return None
        for row in candidates:
            role, word = found.get(row, (roles[row], ""))
            if row == chosen:
                # Of 'Locus' and 'Basket', the finer one is the sample and the other one its context.
                has_coarser = any(
                    roles[other] == role and distinct(other) < distinct(row) and not self._is_of_units(other)
                    for other in candidates
                    if other != row and role == "context"
                )
                is_said = role in ("context", "feature", "site", "phase", "kind") and not has_coarser
                also = (role,) if is_said else ()
                self.rows[row] = Role(name="sample", also=also, filled=self._needs_fill(row, plain, bool(pairs)))
            elif row in unread:
                said = {look.text(row, c) for c in plain}
                is_of_parts = any(len(text) > 2 and look.names.part_of(text) for text in said)
                self.rows[row] = Role(name="part" if is_of_parts else "note")
                words = ", ".join(dict.fromkeys(look.text(row, c) for c in plain))
                self.doubts.append(
                    f"small headings recur over the columns ({words[:60]}) and are not all known; "
                    f"they are taken for {self.rows[row].name}s"
                )
            elif row in heads:
                self.rows[row] = self._named_head(row, role, word, plain)
        self._once_each(candidates)
        self._fill_scarce(chosen, plain)
        others = [row for row in candidates if row != chosen and self.rows[row].name in ("context", "site", "feature")]
        over = [row for row in others if self.rows[row].name in ("feature", "site")]
        if distinct(chosen) >= 0.95 and not labelled and over and self._is_of_levels(chosen):
            self._join_ids(chosen, over, plain)  # level 1 is of feature 12
        elif distinct(chosen) < 0.95 and not pairs and coverage(chosen) > 0.6:
            more = [r for r in candidates if self.rows[r].name in ("phase", "kind") and r != chosen]
            more += [r for r in heads if self.rows[r].name == "ignored" and coverage(r) > 0.6]
            if not others and not more:
                # 'Pit A' written once over 'Upper' and 'Lower'.
                more = [r for r in heads if self.rows[r].name == "ignored" and (r, plain[0]) in look.cells]
                for row in more:
                    self.rows[row] = Role(name="ignored", filled=True)
            self._join_ids(chosen, [*others, *more], plain)
        return chosen

    def _is_of_units(self, row: int) -> bool:
        """Whether a row is of excavation units, which are cut through contexts and are none."""
        labels = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if c not in self.counts]
        return any(re.match(r"(?:excavation |exc\.? )?(?:unit|square|sq)\b", text.strip().lower()) for text in labels)

    def _is_of_levels(self, row: int) -> bool:
        """Whether a row counts levels, spits or the like, which begin anew in each feature."""
        labels = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if c not in self.counts]
        pattern = r"(?:level|lev|lvl|spit|niveau|nivel|livello)s?(?: ?(?:no|#))?\.?"
        return any(re.fullmatch(pattern, text.strip().lower()) for text in labels)

    def _join_ids(self, chosen: int, others: list[int], plain: list[int]) -> None:
        """Where numbers begin anew in each context, or no row tells all columns apart, ids of several are joined."""
        for several in (1, 2, 3):
            for rows in combinations(others, several):
                texts = [self._filled_texts(row, plain) for row in (*rows, chosen)]
                if len(set(zip(*texts, strict=True))) == len(plain) and not (
                    several > 1 and self.rows[chosen].name != "sample"
                ):
                    for row in rows:
                        role = self.rows[row]
                        also = () if role.name == "ignored" else (role.name,)
                        self.rows[row] = Role(name="sample", also=also, filled=role.filled)
                    self.doubts.append("no row alone tells the samples apart; their ids are joined with /")
                    return
        if others:
            texts = [self._filled_texts(row, plain) for row in (*others, chosen)]
            if len(set(zip(*texts, strict=True))) > len(set(texts[-1])):
                for row in others:
                    role = self.rows[row]
                    also = () if role.name == "ignored" else (role.name,)
                    self.rows[row] = Role(name="sample", also=also, filled=role.filled)
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
        """
        Of two rows that both speak of contexts ('Provenience', 'Level') one is the context, the other a note.

        The first is, but one that is mostly blank gives way, and so does 'Context' over words for kinds of context.
        """
        for wanted in ("context", "feature", "phase", "volume", "kind", "description"):
            rows = [row for row in candidates if self.rows[row].name == wanted]
            if len(rows) < 2:
                continue
            weak = [row for row in rows if self._is_of_kinds(row, wanted) or self._is_of_strata(row)]
            kept = next((row for row in rows if self._is_full(row) and row not in weak), rows[0])
            has_kind = any(role.name == "kind" for role in self.rows.values())
            together = naming_contexts({row: self._label(row) for row in rows}) if wanted == "context" else ()
            for row in rows:
                if len(together) > 1 and row in together:
                    continue
                if row != kept and wanted == "context" and self._is_of_strata(row):
                    self.rows[row] = Role(name="phase", filled=self.rows[row].filled)
                elif row != kept:
                    is_kind = self._is_of_kinds(row, wanted) and not has_kind
                    name = "kind" if is_kind else "sample note"
                    has_kind = has_kind or is_kind
                    self.rows[row] = Role(name=name, filled=self.rows[row].filled)

        for row in candidates:
            role = self.rows[row]
            texts = [self.look.text(row, c) for c in self.counts]
            is_of_ids = any(re.search(r"\d", text) for text in texts)
            has_other = any(
                one.name in ("context", "feature") for other, one in self.rows.items() if other != row
            )
            if not (role.name in ("context", "feature") and self._is_of_kinds(row, role.name)) or is_of_ids:
                continue
            if has_other:
                # 'pit, ditch, pit' under 'Context' are no ids: two samples of two pits would be of one context.
                has_kind = any(other.name == "kind" for other in self.rows.values())
                self.rows[row] = Role(name="description" if has_kind else "kind", filled=role.filled)

    def _label(self, row: int) -> str:
        """The words before a row of the head."""
        labels = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if c not in self.counts]
        return next((text for text in labels if text), "")

    def _is_full(self, row: int) -> bool:
        return self.rows[row].filled or sum((row, c) in self.look.cells for c in self.counts) >= 0.5 * len(self.counts)

    def _is_of_strata(self, row: int) -> bool:
        """Whether a row of strata names each of a few again and again, as rows of phases do."""
        labels = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if c not in self.counts]
        texts = [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]
        is_stratum = any(re.fullmatch(r"strat(?:um|a)|building level", text.strip().lower()) for text in labels)
        has_phase = any(role.name == "phase" for role in self.rows.values())
        return is_stratum and not has_phase and len(set(texts)) <= 0.6 * len(texts)

    def _is_of_kinds(self, row: int, role: str) -> bool:
        """Whether words for kinds of context stand in a row of contexts or features, and no ids."""
        words = self.look.names.packs.words
        texts = [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]
        known = sum(bool(kind_of(text, words)) for text in texts)
        return role in ("context", "feature") and known >= 0.5 * len(texts) > 0

    def _rank_of_label(self, row: int) -> int:
        """How surely the label of a row of ids means samples; 0 where nothing labels it."""
        labels = [self.look.text(row, c) for c in range(self.area.left, self.right + 1) if c not in self.counts]
        return max((sample_rank(text) for text in labels if heading(text) == "sample"), default=0)

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
        made = with_unit(role, word)
        also = ("condition",) if role == "part" and self._says_conditions_too(row) else ()
        return Role(name=made.name, also=also, qualifiers=made.qualifiers, filled=filled)

    def _says_conditions_too(self, row: int) -> bool:
        """Whether most words of a row of parts carry a condition: 'seed (u)', 'grain, charred'."""
        texts = [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]
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
            is_behind = column > max(self.counts) and len(self.labels) > 1
            if role in ("note", "sample note", "site", "description") and is_behind:
                continue  # 'Remarks' behind the counts heads its own column
            if role == "note" and column != self.names and heading(look.text(row, self.names)) == "taxon":
                continue  # beside 'Taxon' it heads a column of remarks on the taxa
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

    def _is_of_sizes(self, row: int) -> bool:
        texts = [self.look.text(row, c) for c in self.counts if (row, c) in self.look.cells]
        return bool(texts) and all(SIZES.fullmatch(text) for text in texts)

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

    def _is_derived_column(self, column: int, heads: list[int]) -> bool:
        return self._derived_role(column, heads) is not None

    def _derived_role(self, column: int, heads: list[int]) -> Role | None:
        for row in heads:
            text = self.look.text(row, column)
            if text.lower() == "all" and heading(self._label(row)) == "sorted":
                continue
            if not text and row in self.rows and self.rows[row].filled and column in self.counts:
                text = self._filled_texts(row, [c for c in self.counts if c <= column])[-1]  # 'Total' over two columns
            if not text or (looks_like_id(text) and not _PER_LITRE.search(text)):
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
                and text.lower() not in ("n", "no")
                and sum(self.look.text(row, c) == text for c in self.counts) == 1
                and (row, column) in self.look.own
                and len(self.counts) > 1
            ):
                return Role(name="total")
        return None
