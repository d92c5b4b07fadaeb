"""The columns of lines that are set out with blanks: places that are blank in nearly all lines, and heads over them."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import chain, pairwise

from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.lines_set_out import Measure, SetLine, Words, set_line

_ONE_IN = 12
"""One line in so many may reach over the blanks that part the columns of all others; it is told and not read."""
_FEW = 4
Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Columns:
    """The columns of a table, from the left."""

    spans: tuple[Span, ...] = ()
    """The places that numbers and names take in each of them."""
    starts: tuple[int, ...] = ()
    """Where the field of each begins; blanks may stand on either side of what is in it."""
    is_narrow: bool = False
    """Single blanks part columns, so that nothing but its place says of which column a word is."""

    def cells(self, line: SetLine) -> list[str] | None:
        """The cells of a line of numbers; None where it does not stand in these columns."""
        cells = [""] * len(self.spans)
        last: tuple[int, Words] | None = None
        for piece in line.pieces:
            parts = [piece] if self._field(piece) is not None else [u for u in line.units if within(u, piece)]
            for n, part in enumerate(parts):
                at = self._field(part)
                is_amount = looks_like_amount(part.text)
                if at is None or (n and not is_amount and last is not None and last[0] != at):
                    return None
                if last is not None and last[0] == at and part.start - last[1].end > 1:
                    if is_amount or looks_like_amount(last[1].text):
                        return None
                cells[at] = f"{cells[at]} {part.text}".strip()
                last = (at, part)
        return cells

    def holds(self, line: SetLine) -> bool:
        """Whether each piece of a line stands in the field of a column of its own, and where others stand in it."""
        fields = [self._field(piece) for piece in line.pieces]
        if None in fields or len(set(fields)) < len(fields):
            return False
        spans = [self.spans[at] for at in fields if at is not None]
        return all(a < piece.end and piece.start < b for (a, b), piece in zip(spans, line.pieces, strict=True))

    def line(self, line: SetLine) -> list[str]:
        """The cells of any other line: a name or title in one, a head over each column, an amount behind a name."""
        if len(line.pieces) < 2:
            cells = (self.cells(line) if line.amounts[1] else None) or []
            is_apart = sum(map(bool, cells)) > 1
            return cells if is_apart else [" ".join(word.text for word in line.words)]
        cells = [""] * len(self.spans)
        for piece in line.pieces:
            for part in self._apart(piece, line):
                at = self._field(part)
                at = at if at is not None else self._over(part)
                cells[at] = f"{cells[at]} {part.text}".strip()
        return cells

    def _field(self, words: Words) -> int | None:
        """The column in whose field all of the words stand; None for words that reach into another."""
        at = max(bisect_right(self.starts, words.start) - 1, 0)
        return at if at + 1 == len(self.starts) or words.end <= self.starts[at + 1] else None

    def _over(self, words: Words) -> int:
        """The first column that a head of several is over, else the one over most of which it is."""
        over = [at for at, span in enumerate(self.spans) if span[0] < words.end and words.start < span[1]]
        whole = [at for at in over if words.start <= self.spans[at][0] and self.spans[at][1] <= words.end]
        return (whole or over or [max(bisect_right(self.starts, words.start) - 1, 0)])[0]

    def _apart(self, piece: Words, line: SetLine) -> list[Words]:
        """A piece that reaches over several columns as its words where each stands over one of them, else as it is."""
        if self._field(piece) is not None:
            return [piece]
        words = [word for word in line.words if within(word, piece)]
        fields = [self._field(word) for word in words]
        over = [at for at, span in enumerate(self.spans) if span[0] < piece.end and piece.start < span[1]]
        return words if fields == over or (self.is_narrow and None not in fields) else [piece]

    def are_headed_surely(self, heads: Sequence[SetLine], others: Iterable[SetLine]) -> bool:
        """
        Whether the lines of heads leave no doubt of which column each word is.

        Single blanks may part columns where each has one word over it, and no word of another line reaches from one
        into the next.
        """
        if not self.is_narrow:
            return True
        fields = [self._field(word) for word in heads[-1].words] if heads else []
        words = (word for line in chain(heads, others) if len(line.pieces) > 1 for word in line.words)
        return fields == [*range(len(self.spans))] and all(self._field(word) is not None for word in words)

    def reaches_over(self, line: SetLine) -> bool:
        """Whether some words with single blanks between them stand over several columns."""
        return any(self._field(piece) is None for piece in line.pieces)


def within(part: Words, whole: Words) -> bool:
    """Whether words are some of others."""
    return whole.start <= part.start and part.end <= whole.end


def columns_of(body: Sequence[str], heads: Sequence[str], others: Sequence[str], measure: Measure) -> Columns:
    """The columns of lines of numbers, with the lines of heads over them and those of words between them."""
    lines = [set_line(line, measure) for line in body]
    over = [set_line(line, measure) for line in heads]
    around = [*over, *(line for line in (set_line(text, measure) for text in others) if len(line.pieces) > 1)]
    most = max(len(body) // _ONE_IN, 1 if len(body) >= _FEW else 0)
    spans = _spans_of([line.pieces for line in lines], most)
    bridging = sum(any(len(_under(spans, piece)) > 1 for piece in line.pieces) for line in lines)
    is_narrow = bridging > len(body) // _ONE_IN
    is_narrow = is_narrow or sum(map(_has_amounts_in_one, lines)) > len(body) // _ONE_IN
    if is_narrow:
        spans = _spans_of([line.units for line in lines], 0)
    spans = _with_heads(_parted(spans, over), over)
    found = Columns(tuple(spans), tuple(_starts(spans, lines, around, is_narrow)), is_narrow)
    if not is_narrow and over and found.reaches_over(over[-1]):
        found = Columns(tuple(spans), tuple(_starts(spans, lines, around, True)), True)
    return found


def _has_amounts_in_one(line: SetLine) -> bool:
    """Whether a single blank stands between two amounts."""
    pairs = pairwise(unit for unit in line.units)
    return any(b.start - a.end == 1 and looks_like_amount(a.text) and looks_like_amount(b.text) for a, b in pairs)


def _spans_of(lines: Sequence[Sequence[Words]], most: int) -> list[Span]:
    """The places of each column: those of most lines, and those in which a few lines alone have something."""
    core = _spans((words for line in lines for words in line), most)
    seldom = _spans((words for line in lines for words in line if not _under(core, words)), 0)
    return sorted([*core, *seldom])


def _under(spans: Sequence[Span], words: Words) -> list[int]:
    last = bisect_right(spans, (words.end, 0)) - 1
    found = []
    while last >= 0 and words.start < spans[last][1]:
        if spans[last][0] < words.end:
            found.append(last)
        last -= 1
    return found


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


def _starts(spans: Sequence[Span], body: Sequence[SetLine], heads: Sequence[SetLine], is_narrow: bool) -> list[int]:
    """
    Where the field of each column begins: in the gap before it, at a place that words of other lines leave blank.

    Numbers end at the end of their field and names begin at its beginning, so a gap is parted behind numbers, else
    before names, and else where most lines of words have no piece, and the widest gap.
    """
    inside = _inside([one for line in (*body, *heads) for one in (line.words if is_narrow else line.pieces)])
    ends = Counter(unit.end for line in body for unit in (line.units if is_narrow else line.pieces))
    begins = Counter(unit.start for line in body for unit in (line.units if is_narrow else line.pieces))
    starts = [0]
    for left, right in pairwise(spans):
        places = range(left[1], right[0] + 1)
        least = min(inside(p) for p in places)
        free = [p for p in places if inside(p) == least]
        if left[1] in free and ends[left[1]] >= 0.9 * sum(ends[p] for p in range(left[0] + 1, right[0] + 1)):
            starts.append(left[1])
        elif right[0] in free and begins[right[0]] >= 0.9 * sum(begins[p] for p in range(left[1], right[1])):
            starts.append(right[0])
        else:
            starts.append(free[len(free) // 2])
    return starts


def _inside(pieces: Sequence[Words]) -> Callable[[int], int]:
    """In how many pieces a place lies between two letters."""
    begins, ends = sorted(piece.start for piece in pieces), sorted(piece.end for piece in pieces)
    return lambda place: bisect_left(begins, place) - bisect_right(ends, place)


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
    pieces = [piece for line in heads if len(line.pieces) > 2 for piece in line.pieces]
    headed = {at for piece in pieces for at in _under(spans, piece)}
    found = list(spans)
    for start, end in _spans((piece for piece in pieces if not _under(spans, piece)), 0):
        right = next((at for at, span in enumerate(spans) if span[0] >= end), None)
        if right is not None and right not in headed:
            headed.add(right)
            found[right] = (start, spans[right][1])
        else:
            found.append((start, end))
    return sorted(found)
