"""The columns of lines that are set out with blanks: places that are blank in nearly all lines, and heads over them."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.lines_set_out import Measure, SetLine, Words, set_line

_ONE_IN = 12
"""One line in so many may reach over the blanks that part the columns of all others; it is told and not read."""
Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Columns:
    """The places that each column takes, from the left."""

    spans: tuple[Span, ...] = ()

    def cells(self, line: SetLine) -> list[str] | None:
        """The cells of a line of numbers; None where it does not stand in these columns."""
        cells = [""] * len(self.spans)
        last: tuple[int, Words] | None = None
        for unit in line.units:
            over = self.under(unit)
            if len(over) != 1:
                return None
            at = over[0]
            if last is not None and last[0] == at and unit.start - last[1].end > 1:
                if looks_like_amount(unit.text) or looks_like_amount(last[1].text):
                    return None
            cells[at] = f"{cells[at]} {unit.text}".strip()
            last = (at, unit)
        return cells

    def line(self, line: SetLine) -> list[str]:
        """The cells of any other line: a name or title in one, a head over each column, an amount behind a name."""
        if len(line.pieces) < 2:
            cells = (self.cells(line) if line.amounts[1] else None) or []
            is_apart = sum(map(bool, cells)) > 1
            return cells if is_apart else [" ".join(word.text for word in line.words)]
        cells = [""] * len(self.spans)
        for word in line.words:
            at = self._headed(word)
            cells[at] = f"{cells[at]} {word.text}".strip()
        return cells

    def under(self, unit: Words) -> range:
        """The columns into which words reach."""
        last = first = bisect_left(self.spans, (unit.end,)) - 1
        if last < 0 or self.spans[last][1] <= unit.start:
            return range(0)
        while first and unit.start < self.spans[first - 1][1]:
            first -= 1
        return range(first, last + 1)

    def _headed(self, word: Words) -> int:
        """A head that reaches over several columns stands at the side of its own, or heads all from the first on."""
        over = self.under(word)
        if not over:
            return min(range(len(self.spans)), key=lambda at: _apart(self.spans[at], word))
        is_left, is_right = self.spans[over[0]][0] == word.start, self.spans[over[-1]][1] == word.end
        if len(over) == 1 or is_left:
            return over[0]
        if is_right:
            return over[-1]
        return max(over, key=lambda at: min(self.spans[at][1], word.end) - max(self.spans[at][0], word.start))


def _apart(span: Span, word: Words) -> int:
    return max(span[0] - word.end, word.start - span[1])


def columns_of(body: Sequence[str], heads: Sequence[str], measure: Measure) -> Columns:
    """The columns of lines of numbers, with the lines over them that may be heads."""

    def units(lines: Iterable[str]) -> Iterator[Words]:
        return (unit for line in lines for unit in set_line(line, measure).units)

    over = [set_line(line, measure) for line in heads]
    most = len(body) // _ONE_IN
    core = Columns(tuple(_parted(_spans(units(body), most), over)))
    fitting = [line for line in body if all(len(core.under(unit)) < 2 for unit in set_line(line, measure).units)]
    if len(fitting) < len(body) - most:
        core, fitting = Columns(tuple(_parted(_spans(units(body), 0), over))), [*body]
    seldom = _spans((unit for unit in units(fitting) if not core.under(unit)), 0)
    return Columns(tuple(_with_heads(sorted([*core.spans, *seldom]), over)))


def _spans(units: Iterable[Words], least: int) -> list[Span]:
    """The runs of places in which more lines than `least` have something."""
    steps: dict[int, int] = {}
    for unit in units:
        steps[unit.start] = steps.get(unit.start, 0) + 1
        steps[unit.end] = steps.get(unit.end, 0) - 1
    spans: list[Span] = []
    lines, start = 0, 0
    for place in sorted(steps):
        before, lines = lines, lines + steps[place]
        if before <= least < lines:
            start = place
        elif lines <= least < before:
            spans.append((start, place))
    return spans


def _parted(spans: list[Span], heads: Sequence[SetLine]) -> list[Span]:
    """The spans; a single blank parts two only where words of a line of heads stand over each of them."""
    found: list[Span] = []
    for span in spans:
        if found and span[0] - found[-1][1] < 2 and not _is_headed_apart(found[-1], span, heads):
            span = (found.pop()[0], span[1])
        found.append(span)
    return found


def _is_headed_apart(left: Span, right: Span, heads: Sequence[SetLine]) -> bool:
    for line in heads:
        words = [word for word in line.words if word.end > left[0] and word.start < right[1]]
        if len(words) > 1 and not any(word.start <= left[1] < word.end for word in words):
            return any(word.start < left[1] for word in words) and any(word.end > right[0] for word in words)
    return False


def _with_heads(spans: list[Span], heads: Sequence[SetLine]) -> list[Span]:
    """The spans with heads that stand over none: the beginning of a column without another head, or one alone."""
    columns = Columns(tuple(spans))
    pieces = [piece for line in heads if len(line.pieces) > 2 for piece in line.pieces]
    headed = {at for piece in pieces for at in columns.under(piece)}
    found = list(spans)
    for start, end in _spans((piece for piece in pieces if not columns.under(piece)), 0):
        right = next((at for at, span in enumerate(spans) if span[0] >= end), None)
        if right is not None and right not in headed:
            headed.add(right)
            found[right] = (start, spans[right][1])
        else:
            found.append((start, end))
    return sorted(found)
