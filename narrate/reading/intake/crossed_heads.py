"""The rows over a crossed table together: which of them tells the samples apart, and what becomes of the others."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import combinations

from narrate.model.layouts import SAMPLE_ROLES, Role
from narrate.reading.intake.crossed_head_roles import HeadRoles
from narrate.reading.intake.evidence import looks_like_id
from narrate.reading.intake.header_words import flat_heading, heading, sample_rank
from narrate.reading.intake.heads_in_pieces import roles_in_pieces
from narrate.reading.intake.kind_words_abroad import kind_of
from narrate.reading.intake.litres_in_heads import litres_in
from narrate.reading.intake.units_and_levels import kinds_for_contexts, naming_contexts


@dataclass(slots=True)
class Heads(HeadRoles):
    """The same with the row of ids chosen."""




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
                ids = [look.text(row, c) for c in plain]
                pieces, said = roles_in_pieces(ids)
                if not pieces and "volume" not in roles.values() and all(map(litres_in, ids)):
                    also = (*also, "volume")  # 'SU 12 (10 L)'
                self.rows[row] = Role(
                    name="sample", also=pieces or also, qualifiers=said,
                    filled=self._needs_fill(row, plain, bool(pairs)),
                )  # fmt: skip
            elif row in unread:
                texts = {look.text(row, c) for c in plain}
                is_of_parts = any(len(text) > 2 and look.names.part_of(text) for text in texts)
                self.rows[row] = Role(name="part" if is_of_parts else "note")
                words = ", ".join(dict.fromkeys(look.text(row, c) for c in plain))
                self.doubts.append(
                    f"DOUBTFUL: small headings recur over the columns ({words[:60]}) and are not all known; "
                    f"they are taken for {self.rows[row].name}s, and the amounts of a sample under them are added: "
                    "if they are states or the like, give their row that role and write under conditions what they mean"
                )
            elif row in heads and role == "sample" and distinct(chosen) == 1.0 and distinct(row) <= 0.5:
                self.rows[row] = Role(name="sample note")  # 'Bag 2 of 3' beside ids that tell all samples apart
            elif row in heads:
                self.rows[row] = self._named_head(row, role, word, plain)
        self._once_each(candidates)
        self._fill_scarce(chosen, plain)
        others = [row for row in candidates if row != chosen and self.rows[row].name in ("context", "site", "feature")]
        over = [row for row in others if self.rows[row].name in ("feature", "site")]
        if distinct(chosen) >= 0.95 and not labelled and over and self._is_of_levels(chosen):
            self._join_ids(chosen, over, plain)  # level 1 is of feature 12
        elif labelled and chosen in labelled and distinct(chosen) >= 0.75 and self._rank_of_label(chosen) == 3:
            pass  # a few ids that stand twice are told apart one by one, and leave the others as they are
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

    def _is_a_find(self, row: int) -> bool:
        """Whether a row of ids lies below the head of the names and fills their columns: it is the first find."""
        labels = [c for c in range(self.area.left, self.right + 1) if c not in self.counts]
        texts = [text for c in labels if (text := self.look.text(row, c))]
        above = {heading(self.look.text(r, c)) for r in range(self.area.top, row) for c in labels}
        return "taxon" in above and len(texts) >= 3 and len(texts) == len(labels) and not any(map(heading, texts))

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
        if (alone := self._site_ids(chosen, others, plain)) is not None:
            own, role = self.rows[chosen], self.rows[alone]
            self.rows[alone] = Role(name="sample", also=role.names, filled=role.filled)
            self.rows[chosen] = Role(name="sample note", qualifiers=(self._label(chosen),), filled=own.filled)
            return  # 'SiteNo' beside a 'SiteID' that tells all apart is a number of the site, and no sample
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

    def _site_ids(self, chosen: int, others: list[int], plain: list[int]) -> int | None:
        """The row of ids of sites that tells all columns apart, where numbers of sites are chosen; else None."""
        if not re.match(r"sites?\b", flat_heading(self._label(chosen))):
            return None
        for row in others:
            ids = [self.look.text(row, c) for c in plain]
            if re.match(r"sites?\b", flat_heading(self._label(row))) and all(ids) and len(set(ids)) == len(ids):
                return row
        return None

    def _fill_scarce(self, chosen: int, plain: list[int]) -> None:
        """Sites and contexts that are written once over several samples mean them all."""
        for row, role in list(self.rows.items()):
            if role.name in ("context", "site", "feature", "phase") and row != chosen and not role.filled:
                given = [(row, c) in self.look.cells for c in plain]
                if given and given[0] and not all(given) and not self._is_said_each_time(row, plain):
                    self.rows[row] = Role(name=role.name, also=role.also, qualifiers=role.qualifiers, filled=True)


    def _once_each(self, candidates: list[int]) -> None:
        """
        Of two rows that both speak of contexts ('Provenience', 'Level') one is the context, the other a note.

        The first is, but one that is mostly blank gives way, and so does 'Context' over words for kinds of context.
        """
        for wanted in ("context", "feature", "phase", "volume", "kind", "description"):
            rows = [row for row in candidates if self.rows[row].name == wanted]
            if len(rows) < 2:
                continue
            said = {row: [self.look.text(row, c) for c in self.counts] for row in rows}
            worded = kinds_for_contexts(said, False) if wanted == "context" else ()
            weak = [row for row in rows if self._is_of_kinds(row, wanted) or self._is_of_strata(row) or row in worded]
            kept = next((row for row in rows if self._is_full(row) and row not in weak), rows[0])
            has_kind = any(role.name == "kind" for role in self.rows.values())
            named = {row: self._label(row) for row in rows if row not in worded}
            together = naming_contexts(named) if wanted == "context" else ()
            for row in rows:
                if len(together) > 1 and row in together:
                    continue
                if row != kept and wanted == "context" and self._is_of_strata(row):
                    self.rows[row] = Role(name="phase", filled=self.rows[row].filled)
                elif row != kept:
                    is_kind = (self._is_of_kinds(row, wanted) or row in worded) and not has_kind
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










