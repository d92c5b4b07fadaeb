"""Lines of numbers that are the sums of others: weighed by how little chance makes such sums, whatever words head them."""

# ruff: noqa: E501

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate

from narrate.reading.intake.sums_held import LOOSEST, Amounts, held_against

TAKEN = 16.0
"""Bits from which a line is held to be a sum: chance makes one so in some 65000 lines (judgement)."""
DOUBTED = 10.0
"""Bits from which a line is told to look like a sum (judgement)."""
_SURE = 30.0
"""Bits from which a line is a sum though only half of its cells agree (judgement): counts were mended after it was."""
_MOST_OF = 0.8
"""How much of what it leaves out a sum of all but a few must be at least (judgement)."""
_NEAR = 0.06
"""By so much sums may be off that are weighed."""
_MOST_APART = 150
"""Lines of a table in which runs are looked for that stand apart from their sum."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Summed:
    """A line and the lines that it adds up."""

    line: int
    of: tuple[int, ...]
    agreeing: int
    """Cells that agree with the sum of several amounts, or of one."""
    given: int
    """Cells in which it or what it adds up is not nought."""
    bits: float
    """How little chance makes such a line: the binary logarithm of 1 in so many."""

    @property
    def is_taken(self) -> bool:
        return self.bits >= TAKEN and (self.agreeing >= 0.74 * self.given or self.bits >= _SURE)


def sums_among(
    lines: Sequence[int],
    amounts: Mapping[int, Amounts],
    *,
    likelier: Mapping[int, float] | None = None,
    ends: frozenset[int] = frozenset(),
    runs: Mapping[str, Sequence[int]] | None = None,
    of: int | None = None,
    least: float = DOUBTED,
) -> list[Summed]:
    """
    The lines of a table that are sums of others in it, nearly always; those that add up sums too come last.

    lines:    in the order of the sheet; amounts has as many numbers for each.
    likelier: bits that words add or take off, by line.
    ends:     lines before which a head or a result stands, so that a run of them may well begin there.
    runs:     further groups of lines, by the words that say so, such as the samples of one context.
    of:       the one line that is asked about; None: all.
    least:    bits from which what is in doubt is given.

    >>> found = sums_among([1, 2, 3], {1: [40, 7, 31, 9, 20], 2: [12, 30, 5, 1, 8], 3: [52, 37, 36, 11, 28]})
    >>> [(one.line, one.of, one.agreeing, one.given, one.is_taken) for one in found]
    [(3, (1, 2), 4, 5, True)]
    """
    left, found = list(lines), list[Summed]()
    while len(left) > 2:
        table = _Table(left, amounts, likelier or {}, ends, runs or {}, min(least, TAKEN))
        asked = [n for n, line in enumerate(left) if of in (None, line)]
        near = [one for n in asked if (one := table.best(n)) is not None and one.bits >= least]
        taken: dict[int, Summed] = {}
        for one in sorted(near, key=lambda one: (-one.is_taken, -one.bits, one.line)):
            if not any(one.line in other.of or other.line in one.of for other in taken.values()):
                taken[one.line] = one
        sure = [one for one in taken.values() if one.is_taken]
        if not sure:  # what is in doubt is not taken from the sums of others
            return found + list(taken.values())
        found += sure
        left = [line for line in left if line not in {one.line for one in sure}]
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    """Lines and what they add up to, cell by cell."""

    of: tuple[int, ...]
    members: frozenset[int]
    sums: Sequence[float]


class _Table:
    """Lines that are left, and the sums of runs of them."""

    def __init__(
        self, lines: Sequence[int], amounts: Mapping[int, Amounts], likelier: Mapping[int, float],
        ends: frozenset[int], runs: Mapping[str, Sequence[int]], least: float,
    ) -> None:  # fmt: skip
        self.lines, self.amounts, self.likelier, self.ends, self.least = lines, amounts, likelier, ends, least
        here = set(lines)
        self.width = max(len(amounts[line]) for line in lines)
        self.runs = [self._run(line for line in run if line in here) for run in runs.values()]
        self.broken = {line for line in lines if any(value and value % 1 for value in amounts[line])}
        self.most: dict[int, float] = {}
        self.filled = {line: sum(bool(value) for value in amounts[line]) for line in lines}
        self.signed = [any(amounts[line][k] is None for line in lines) for k in range(self.width)]
        self.all = self._run(lines)
        self.whole = self._run(line for line in lines if line not in self.broken)

    def _run(self, lines: Iterable[int]) -> _Run:
        of = tuple(lines)
        sums = [sum(self.amounts[line][k] or 0.0 for line in of) for k in range(self.width)]
        return _Run(of=of, members=frozenset(of), sums=sums)

    def best(self, n: int) -> Summed | None:
        """The likeliest sum that a line is; None where it can be none."""
        own = self.amounts[self.lines[n]]
        order = sorted((k for k in range(self.width) if own[k]), key=lambda k: -(own[k] or 0.0))[:5]
        if not order:
            return None
        found = [self._all_but(n, order), *self._one_way(n, order, -1), *self._one_way(n, order, 1)]
        found += [*self._apart(n, order), self._all_under(n)]
        found += [self._others(n, order, run, 2.0) for run in self.runs]
        return self._fullest([one for one in found if one is not None])

    def _fullest(self, found: Sequence[Summed]) -> Summed | None:
        """The likeliest sum, with the lines that it leaves out for the one cell in which they hold a number: that is wrong."""
        if not found:
            return None
        likeliest = max(found, key=lambda one: one.bits)
        fuller = [one for one in found if one.bits >= TAKEN and self._adds_one_cell(likeliest.of, one.of)]
        return max(fuller, key=lambda one: (len(one.of), one.bits), default=likeliest)

    def _adds_one_cell(self, of: Sequence[int], more: Sequence[int]) -> bool:
        added = set(more) - set(of)
        cells = {k for line in added for k in range(self.width) if self.amounts[line][k]}
        return set(of) < set(more) and len(cells) == 1

    def _others(self, n: int, order: Sequence[int], run: _Run, cost: float) -> Summed | None:
        """A line as the sum of those of a run that are others, where its largest numbers do not gainsay it."""
        line = self.lines[n]
        own = self.amounts[line]
        twice = 2.0 if line in run.members else 1.0
        fits = sum(abs(run.sums[k] - twice * (own[k] or 0.0)) < 0.06 for k in order)
        if len(run.of) - (twice > 1) < 2 or fits < (1 if len(order) < 4 else 2):
            return None
        return self._weighed(n, [other for other in run.of if other != line], cost)

    def _all_but(self, n: int, order: Sequence[int]) -> Summed | None:
        """All others, all others of whole numbers, or all others but a few that make up the difference."""
        line = self.lines[n]
        options = [self._others(n, order, self.all, 0.0)]
        of_whole = line not in self.broken and len(self.whole.of) > 2
        if of_whole and len(self.whole.of) < len(self.lines):
            options.append(self._others(n, order, self.whole, 1.0))
        options.append(self._but_few(n, self.whole if of_whole else self.all))
        return max((one for one in options if one is not None), key=lambda one: one.bits, default=None)

    def _but_few(self, n: int, run: _Run) -> Summed | None:
        """All others but one or two."""
        line = self.lines[n]
        own = self.amounts[line]
        twice = 2.0 if line in run.members else 1.0
        rest = [run.sums[k] - twice * (own[k] or 0.0) for k in range(self.width)]
        short = [k for k, more in enumerate(rest) if more > 1e-6]
        is_most = sum(value or 0.0 for value in own) >= _MOST_OF * sum(rest)
        if not is_most or not short or sum(more < -1e-6 for more in rest) > 0.25 * self.width or len(run.of) < 5:
            return None
        others = [other for other in run.of if other != line]
        fits = [o for o in others if sum((self.amounts[o][k] or 0.0) <= rest[k] + 1e-6 for k in range(self.width)) >= 0.75 * self.width]
        fits = [o for o in fits if sum(bool(value) for value in self.amounts[o]) > 1]  # else one number is wrong
        best: Summed | None = None
        choices: Iterable[tuple[int, ...]] = [(o,) for o in fits]
        if len(fits) <= 60:
            choices = [*choices, *((a, b) for i, a in enumerate(fits) for b in fits[i + 1 :])]
        for left_out in choices:
            same = sum(abs(sum(self.amounts[o][k] or 0.0 for o in left_out) - rest[k]) < 1e-6 for k in short)
            if same < 0.7 * len(short):
                continue
            one = self._weighed(n, [o for o in others if o not in left_out], 2.0 + len(left_out) * math.log2(len(others)))
            if one is not None and (best is None or one.bits > best.bits):
                best = one
        return best

    def _one_way(self, n: int, order: Sequence[int], step: int) -> Iterable[Summed | None]:
        """Runs of lines that begin beside a line and go on to one side; only those with large numbers that fit are weighed."""
        own = self.amounts[self.lines[n]]
        sums = [0.0] * len(order)
        least = 1 if len(order) < 4 else 2
        free = 2.0 + math.log2(len(self.lines))
        if not self._may_weigh(n, 1.0):
            return
        k, run = n + step, list[int]()
        while 0 <= k < len(self.lines):
            line = self.lines[k]
            run.append(line)
            over = 0
            fits = 0
            for i, at in enumerate(order):
                sums[i] += self.amounts[line][at] or 0.0
                difference = sums[i] - (own[at] or 0.0)
                fits += abs(difference) <= 1e-6 or (line in self.broken and abs(difference) < 0.06)
                over += difference > 0.06
            if len(run) >= 2 and fits >= least:
                after = self.lines[k - 1] if step < 0 and k else self.lines[k + 1] if 0 < k + 1 < len(self.lines) else None
                edge = line if step < 0 else after
                is_end = after is None or edge in self.ends
                if self._may_add_up(n, *sorted((n + step, k))):
                    yield self._weighed(n, run, 1.0 if is_end else free)
            if over > len(order) - least:
                return
            k += step

    def _apart(self, n: int, order: Sequence[int]) -> Iterable[Summed | None]:
        """Runs of lines that stand apart from a line, as those of 'Phase 1' behind all samples do."""
        free = 2.0 + 2.0 * math.log2(len(self.lines))
        if len(self.lines) > _MOST_APART or not self._may_weigh(n, free):
            return
        own = self.amounts[self.lines[n]]
        least = 1 if len(order) < 4 else 2
        ups = [(self.ups[at], own[at] or 0.0) for at in order]
        for first in range(len(self.lines)):
            if first == n:
                continue
            end = n if first < n else len(self.lines)
            hits = sorted(last for up, mine in ups for last in _ends_at(up, first, mine, end))
            for last, times in Counter(hits).items():
                if times >= least and self._may_add_up(n, first, last):
                    yield self._weighed(n, self.lines[first : last + 1], free)

    @cached_property
    def ups(self) -> Sequence[Sequence[float]]:
        """What the cells of each place add up to, before each line and behind the last; no amount is below nought."""
        return [[0.0, *accumulate(self.amounts[line][at] or 0.0 for line in self.lines)] for at in range(self.width)]

    def _may_weigh(self, n: int, cost: float) -> bool:
        """Whether a line holds numbers enough to be told as a sum, were it one in every cell."""
        line = self.lines[n]
        if line not in self.most:
            self.most[line] = sum(math.log2(1.0 + value) for value in self.amounts[line] if value)
        return self.likelier.get(line, 0.0) - cost + self.most[line] >= self.least

    def _may_add_up(self, n: int, first: int, last: int) -> bool:
        """Whether half of a line's cells may agree with what a run adds up to; sooner known than what it weighs."""
        own = self.amounts[self.lines[n]]
        is_whole = not self.broken or self.broken.isdisjoint((self.lines[n], *self.lines[first : last + 1]))
        off = 1e-6 if is_whole else LOOSEST * (2 + last - first)
        # Cells that may agree less those that do not; of whole numbers nought agrees with nothing that was found.
        left = self.filled[self.lines[n]] if is_whole else len(own)
        for mine, up, is_signed in zip(own, self.ups, self.signed, strict=True):
            added = up[last + 1] - up[first]
            if mine is None or abs(mine - added) <= off:
                continue
            if not is_signed or mine < added:  # a sign that is no number may be in it
                left -= 2 if mine or not is_whole else 1
                if left < 0:
                    return False
        return True

    def _all_under(self, n: int) -> Summed | None:
        """All lines that are nowhere above a line, wherever they stand: those of one family, those of one phase."""
        if len(self.lines) > _MOST_APART:
            return None
        own = self.amounts[self.lines[n]]
        cells = [k for k in range(self.width) if own[k] is not None]
        under = [
            line for line in self.lines
            if line != self.lines[n] and any(self.amounts[line])
            and all((self.amounts[line][k] or 0.0) <= (own[k] or 0.0) for k in cells)
        ]  # fmt: skip
        if not 1 < len(under) < len(self.lines) - 1:
            return None
        return self._weighed(n, under, 2.0 + math.log2(math.comb(len(self.lines), len(under))))

    def _weighed(self, n: int, of: Sequence[int], cost: float) -> Summed | None:
        """A line held against a sum of others; None where less than half of its cells agree."""
        line = self.lines[n]
        found = held_against(self.amounts[line], [self.amounts[other] for other in of])
        if not found.given or found.agreeing < 0.5 * found.given:
            return None
        bits = self.likelier.get(line, 0.0) - cost + found.bits
        if found.several < 2:  # it may as well say again what another line says
            bits = min(bits, TAKEN - 1.0 if found.several else DOUBTED - 1.0)
        return Summed(line=line, of=tuple(sorted(of)), agreeing=found.agreeing, given=found.given, bits=bits)


def _ends_at(up: Sequence[float], first: int, mine: float, end: int) -> range:
    """The last lines of runs of two or more from a line on that add up to a number, and stand before an end."""
    target = up[first] + mine
    least = max(bisect_right(up, target - _NEAR), first + 2)
    return range(least - 1, min(bisect_left(up, target + _NEAR), end + 1) - 1)
