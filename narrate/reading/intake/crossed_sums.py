"""Rows and columns of a crossed table that are the sums of others, whether a word betrays them or not."""

# ruff: noqa: E501

from __future__ import annotations

import re
from dataclasses import dataclass

from narrate.model.layouts import DERIVED_ROLES, Role
from narrate.reading.intake.crossed_labels import Labels
from narrate.reading.intake.evidence import Numbers
from narrate.reading.intake.group_heads import names_a_group
from narrate.reading.intake.groups_over_groups import groups_over_groups
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.sums_by_sections import finds_called_total, sums_of_sections

_LATIN = re.compile(r"(?:cf\.? ?)?[A-Z][a-z]+[ _.](?:cf\.? ?)?(?:[a-z]{3,}|sp\b|spp\b|type\b|agg\b)")
_OF_SO_MANY = re.compile(r"(\d+)\s*/\s*(\d+)")
_PRIME = 1_000_003
_MODULUS = (1 << 89) - 1
_LEAST_SUMMED = 3
"""Columns in which a sum must be more than the number that it is made of, before it is taken for a sum."""


@dataclass(slots=True)
class Sums(Labels):
    """The same with the sums that no word betrays."""

    def _unlabelled_totals(self) -> None:
        """Rows and columns without a label that are the sum of the others."""
        columns = [c for c, role in self.columns.items() if role.name == "counts"]
        rows = [r for r, role in self.rows.items() if role.name == "counts"]
        self._numbers_of_samples(rows)
        columns = [c for c in columns if self.columns[c].name == "counts"]
        rows = self._sums_and_finds_by_words(rows, columns)
        if len(columns) < 3 or len(rows) < 3:
            return
        value = self.look.values()
        self._totals_below(rows, columns)
        columns = self._sums_at_the_end(rows, columns, value)
        columns = self._sums_of_blocks(rows, columns, value)
        self._totals_beside(rows, columns, value)
        self._sums_of_neighbours(rows, columns, value)
        labels = {r: self.look.text(r, self.names) for r in rows}
        for row, doubt in groups_over_groups(self.rows, labels, columns, value).items():
            self.rows[row] = Role(name="total")
            self.doubts.append(doubt)
        self._sum_of_all_lines(columns, value)

    def _sums_and_finds_by_words(self, rows: list[int], columns: list[int]) -> list[int]:
        """The lines of counts without sums of sections, and with what is called a total and is a find."""
        labels = {r: self.look.text(r, self.names) for r in self.rows}
        value = self.look.values()
        sums = sums_of_sections(self.rows, labels, columns, value)
        self.rows.update(dict.fromkeys(sums, Role(name="total")))
        finds = finds_called_total(self.rows, labels, columns, value)
        self.rows.update(dict.fromkeys(finds, Role(name="counts")))
        self.doubts += [*sums.values(), *finds.values()]
        return sorted({*rows, *finds} - set(sums))

    def _numbers_of_samples(self, rows: list[int]) -> None:
        """Columns of '4/5' under whatever word, with the same number of samples behind each stroke: ubiquities."""
        for column, role in list(self.columns.items()):
            if role.name not in ("counts", "total", "derived"):
                continue
            texts = [text for r in rows if (text := self.look.text(r, column))]
            shared = [match for text in texts if "/" in text and (match := _OF_SO_MANY.fullmatch(text))]
            of = {int(match[2]) for match in shared}
            if len(of) != 1 or max(of) <= 2 or len(shared) < max(3, 0.8 * len(texts)):
                continue
            others = sum(one.name == "counts" for at, one in self.columns.items() if at != column)
            is_of_all = role.name != "counts" or max(of) == others
            if is_of_all and all(int(match[1]) <= int(match[2]) for match in shared):
                self.columns[column] = Role(name="ubiquity")

    def _sums_without_id(self) -> None:
        """Columns at the end with no word over them, which stand over all others, and the sums of those: totals."""
        look = self.look
        over = range(self.area.top, self.body[0])
        rows = [r for r in self.body if self.rows[r].name == "counts"]
        for column in sorted(self.counts, reverse=True):
            others = [c for c in self.counts if c < column]
            if len(others) < 2 or any(look.is_text(r, column) for r in over):
                return
            is_headed = all(any(look.is_text(r, c) for r in over) or self._has_id(c, over) for c in others)
            if not is_headed or self._has_id(column, over):
                return
            sums = [(look.value(r, column), sum(look.value(r, c) for c in others)) for r in rows]
            given = [(own, of_others) for own, of_others in sums if own or of_others]
            if len(given) < 3 or sum(abs(a - b) < 1e-9 for a, b in given) < 0.7 * len(given):
                return
            self.counts.remove(column)
            self.columns[column] = Role(name="total")

    def _has_id(self, column: int, over: range) -> bool:
        """Whether a row over the body in which most columns carry something different carries something over a column."""
        look = self.look
        for row in over:
            texts = [look.text(row, c) for c in self.counts if (row, c) in look.own]
            if len(texts) >= len(self.counts) - 1 and len(set(texts)) > 0.9 * len(texts) and (row, column) in look.own:
                return True
        return False

    def _totals_below(self, rows: list[int], columns: list[int]) -> None:
        for row, role in list(self.rows.items()):
            if role.name == "ignored" and row > rows[-1]:
                sums = [(self.look.value(row, c), sum(self.look.value(r, c) for r in rows)) for c in columns]
                if sum(abs(a - b) < 1e-9 for a, b in sums if a or b) >= 0.8 * len(columns):
                    self.rows[row] = Role(name="total")

    def _sums_at_the_end(self, rows: list[int], columns: list[int], value: Numbers) -> list[int]:
        """
        The columns without a last one that is the sum of all before it, under whatever word, and shares of it behind.

        Chance makes no sum of several samples in line after line.
        """
        lines = {r: [value[r, c] for c in columns] for r in rows}
        for behind in (0, 1, 2):
            *others, last = columns[: len(columns) - behind]
            if len(others) < 2:
                break
            before = {r: lines[r][: len(others)] for r in rows}
            sums = [(value[r, last], sum(before[r]), sum(v > 0 for v in before[r])) for r in rows]
            given = [(own, of_others, several) for own, of_others, several in sums if own or of_others]
            agreeing = [several for own, of_others, several in given if abs(own - of_others) < 1e-9]
            telling = sum(several >= 2 for several in agreeing)
            if telling < 3 or len(agreeing) < 0.8 * len(given):
                continue
            shares = columns[len(columns) - behind :]
            ratios = {c: [value[r, c] / value[r, last] for r in rows if value[r, last]] for c in shares}
            if not all(_is_steady(found) for found in ratios.values()):
                continue
            self.columns[last] = Role(name="total")
            for column in shares:
                self.columns[column] = Role(name="percent")
            return others
        return columns

    def _sums_of_blocks(self, rows: list[int], columns: list[int], value: Numbers) -> list[int]:
        """The columns without those that are, in nearly every line, the sum of all since the last such column."""
        kept: list[int] = []
        sums = {r: (0.0, 0) for r in rows}
        """Of each line since the last sum: what it adds up to, and how many amounts that are."""
        several = 0
        for column in columns:
            own = {r: value[r, column] for r in rows}
            given = [(own[r], *sums[r]) for r in rows if own[r] or sums[r][1]]
            agreeing = [n for amount, added, n in given if abs(amount - added) < 1e-9]
            if several > 1 and sum(n > 1 for n in agreeing) >= 3 and len(agreeing) >= 0.8 * len(given):
                self.columns[column] = Role(name="total")
                sums = {r: (0.0, 0) for r in rows}
                several = 0
                continue
            kept.append(column)
            several += 1
            sums = {r: (added + own[r], n + (own[r] != 0)) for r, (added, n) in sums.items()}
        return kept

    def _totals_beside(self, rows: list[int], columns: list[int], value: Numbers) -> None:
        look = self.look
        sample_rows = [r for r, role in self.rows.items() if role.name == "sample"]
        for column in (columns[-1], columns[0]):
            ids = [look.text(r, column) for r in sample_rows if look.text(r, column)]
            if any(heading(id) not in ("count", "total") for id in ids):
                continue
            others = [c for c in columns if c != column]
            present = [
                (value[r, column], sum((r, c) in look.cells and look.text(r, c) not in ("0", "-") for c in others))
                for r in rows
            ]
            asked = [sum(look.text(r, c) == "?" for c in others) for r in rows]
            if ids and sum(a in (b, b - n) for (a, b), n in zip(present, asked, strict=True)) >= 0.8 * len(rows):
                self.columns[column] = Role(name="ubiquity")
                continue
            sums = [(value[r, column], sum(value[r, c] for c in others)) for r in rows]
            given = [(a, b) for a, b in sums if a or b]
            if len(given) >= 3 and sum(abs(a - b) < 1e-9 for a, b in given) >= 0.8 * len(given):
                self.columns[column] = Role(name="total")

    def _sums_of_neighbours(self, rows: list[int], columns: list[int], value: Numbers) -> None:
        """
        Lines such as 'Millets' or 'Cereals' that are, in every sample, the sum of a run of other lines.

        A name of a species or genus is never taken for a sum, and no sum is seen in a few small numbers.
        """
        columns = [c for c in columns if self.columns[c].name == "counts"]
        lines = {r: tuple(value[r, c] for c in columns) for r in rows}
        # Each line as one number, so that sums of runs are compared at once; equal numbers are looked at cell by cell.
        weights = [pow(_PRIME, n + 1, _MODULUS) for n in range(len(columns))]
        codes = [sum(round(v * 1000) * w for v, w in zip(lines[r], weights, strict=True)) % _MODULUS for r in rows]
        before = [0]
        for code in codes:
            before.append((before[-1] + code) % _MODULUS)
        at = {sums: n for n, sums in enumerate(before)}
        found: dict[int, tuple[int, int]] = {}
        waiting = list(range(len(rows)))
        while waiting:
            n = waiting.pop(0)
            own, label = lines[rows[n]], self.look.text(rows[n], self.names)
            beside_sum = n - 1 in found or n + 1 in found
            is_name = bool(_LATIN.match(label)) and self.look.name_score(rows[n], self.names) >= 0.8
            is_group = names_a_group(label)
            if n in found or is_name or not (any(own) if beside_sum or is_group else _is_large(own)):
                continue
            for start in range(len(rows)):
                end = at.get((before[start] + codes[n]) % _MODULUS)
                if end is None or end - start < 2 or start <= n < end:
                    continue
                used = [lines[rows[k]] for k in range(start, end) if any(lines[rows[k]])]
                if any(abs(sum(cells) - v) > 1e-6 for *cells, v in zip(*used, own, strict=True)):
                    continue
                shared = sum(sum(line[k] > 0 for line in used) >= 2 for k in range(len(columns)))
                least = 1 if is_group and start == n + 1 else min(_LEAST_SUMMED, len(columns))  # 'Wild plants' over its own
                if beside_sum or (len(used) >= 2 and shared >= least):
                    found[n] = (start, end)
                    waiting += [k for k in (n - 1, n + 1) if 0 <= k < len(rows)]
                    break
        for n in [n for n in range(1, len(rows)) if n - 1 in found and n not in found]:
            behind = self.rows.get(rows[n] + 1)
            label = self.look.text(rows[n], self.names)
            if behind is not None and behind.name in DERIVED_ROLES and self._has_share(label):
                self.rows[rows[n]] = Role(name="total")
                self.doubts.append(f"'{label}' stands beside sums, and its share with theirs: taken for a stored total")
            elif behind is not None and behind.name in DERIVED_ROLES:
                self.doubts.append(
                    f"DOUBTFUL: '{label}' stands beside sums and is read as a count; if it sums up others, write total"
                )
        for n, (start, end) in sorted(found.items()):
            self.rows[rows[n]] = Role(name="total")
            added = [k for k in range(start, end) if not self._is_of_signs(rows[k], columns)]
            summed, first, last = (self.look.text(rows[k], self.names) for k in (n, added[0], added[-1]))
            self.doubts.append(
                f"'{summed}' is in every sample the sum of '{first}' to '{last}': taken for a stored total"
            )

    def _is_of_signs(self, row: int, columns: list[int]) -> bool:
        """Whether a line holds signs and no number, so that no sum takes it in."""
        texts = [text for c in columns if (text := self.look.text(row, c))]
        return bool(texts) and not any(re.search(r"\d", text) for text in texts)

    def _sum_of_all_lines(self, columns: list[int], value: Numbers) -> None:
        """The first or last line, where it is the sum of all others in nearly every sample: 'n_items'."""
        columns = [c for c in columns if self.columns[c].name == "counts"]
        rows = [r for r, role in self.rows.items() if role.name == "counts"]
        for row in (rows[-1:] + rows[:1]) if len(rows) > 3 else []:
            label = self.look.text(row, self.names)
            if _LATIN.match(label) or heading(label) not in ("count", "total", ""):
                continue
            others = [r for r in rows if r != row]
            sums = [
                (value[row, c], sum(max(value[r, c], 0.0) for r in others), sum(value[r, c] > 0 for r in others))
                for c in columns
            ]
            given = [(own, added, several) for own, added, several in sums if own or added]
            agreeing = [several for own, added, several in given if abs(own - added) < 1e-9]
            if sum(several > 1 for several in agreeing) >= _LEAST_SUMMED and len(agreeing) >= 0.8 * len(given):
                self.rows[row] = Role(name="total")
                self.doubts.append(f"'{label}' is in nearly every sample the sum of all others: taken for a stored total")
                return

    def _has_share(self, label: str) -> bool:
        """Whether another line is headed with the same word and a percent sign: 'Bean' and 'Bean %'."""
        shares = (self.look.text(row, self.names) for row, role in self.rows.items() if role.name == "percent")
        return any(re.sub(r"\s*%\s*", "", text) == label for text in shares if "%" in text)


def _is_steady(ratios: list[float]) -> bool:
    """Whether numbers stand in one ratio to a total, as far as they are rounded."""
    middle = sorted(ratios)[len(ratios) // 2]
    return middle > 0 and sum(abs(ratio - middle) <= 0.1 * middle for ratio in ratios) >= 0.7 * len(ratios)


def _is_large(line: tuple[float, ...]) -> bool:
    return sum(line) >= 10 and sum(value > 0 for value in line) >= 2
