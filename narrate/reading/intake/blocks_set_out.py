"""The tables of a text that is set out with blanks: pages and blocks of lines, and those that share their columns."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from narrate.reading.intake.columns_lined_up import Columns, columns_of
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.lines_set_out import Measure, is_rule, set_line

LEAST_LINES, LEAST_COLUMNS = 4, 3
_LEAST_FITTING = 11 / 12
_MOST_LINES = 4_000
"""Lines of numbers of a table by which its columns are known; the others are held against these."""
_MOST_TRIED = 50
"""Blocks whose columns are worked out anew together with those before them; later ones fit or stand alone."""


@dataclass(slots=True)
class Group:
    """Blocks of lines that share their columns; lines by their numbers in the text."""

    lines: list[int]
    heads: list[int]
    body: list[int]
    columns: Columns = field(default_factory=Columns)


class Kind(NamedTuple):
    """What kind of line one is, which no measure of letters changes."""

    pieces: int
    units: int
    amounts: tuple[int, int]


_NOTHING = Kind(0, 0, (0, 0))


def kind_of(text: str) -> Kind:
    if not text or text.isspace() or is_rule(text):
        return _NOTHING
    line = set_line(text)
    return Kind(len(line.pieces), len(line.units), line.amounts)


@dataclass(slots=True)
class Listing:
    """The lines of a text by the columns in which they stand."""

    texts: Sequence[str]
    measure: Measure
    groups: list[Group] = field(default_factory=list)
    cells: dict[int, list[str]] = field(default_factory=dict)
    """Lines of numbers that stand in their columns."""
    unfit: list[int] = field(default_factory=list)
    titles: set[int] = field(default_factory=set)
    is_doubtful: bool = False
    """Words of a table may be of one column or of another, so that nothing of the text is read."""

    kinds: list[Kind] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.kinds = [kind_of(text) for text in self.texts]

    def pieces(self, line: int) -> int:
        return self.kinds[line].pieces

    @property
    def quality(self) -> tuple[int, int, int]:
        """How many lines stand in columns, in how many cells, and, with a minus, how many columns that takes."""
        filled = sum(map(bool, (cell for cells in self.cells.values() for cell in cells)))
        return len(self.cells), filled, -sum(len(one.columns.spans) for one in self.groups)


def listing(texts: Sequence[str], measure: Measure) -> Listing:
    """The lines of a text with the columns of those that line up; a list without numbers has words in most lines."""
    found = Listing(texts, measure)
    for is_strict in (True, False):
        groups: list[Group] = []
        for page in _pages(found):
            blocks = _blocks(found, page)
            groups += _groups(found, blocks, is_strict)
            found.titles |= {one[0] for one in (*blocks[:1], *blocks[-1:]) if len(one) == 1}
        for group in groups:
            _keep(found, group)
        if found.is_doubtful:
            return Listing(texts, measure)
        lines = [n for n in range(len(texts)) if found.pieces(n)] if not found.groups else []
        if sum(found.pieces(n) >= LEAST_COLUMNS for n in lines) < max(0.5 * len(lines), 1):
            break
    return found


def _keep(found: Listing, group: Group) -> None:
    """Takes in a group whose lines line up."""
    lined = _lined(found, group)
    if len(group.body) > _MOST_LINES and (apart := [n for n, cells in lined.items() if cells is None]):
        likely = [*group.body[: _MOST_LINES // 2], *apart[: _MOST_LINES // 2]]
        group.columns = _columns(found, Group(group.lines, group.heads, likely))
        lined = _lined(found, group)
    cells = {n: one for n, one in lined.items() if one is not None}
    is_table = len(group.columns.spans) >= LEAST_COLUMNS and len(cells) > 1
    is_table = is_table and len(cells) >= _LEAST_FITTING * len(lined)
    found.is_doubtful = found.is_doubtful or (is_table and not _is_sure(found, group))
    if is_table:
        found.groups.append(group)
        found.cells.update(cells)
        found.unfit += [n for n in group.body if n not in cells]
        found.titles -= {*group.lines, *group.heads}


def _is_sure(found: Listing, group: Group) -> bool:
    """Whether the lines over and between the numbers leave no doubt of which column each word is."""
    body = set(group.body)
    heads = [set_line(found.texts[n], found.measure) for n in group.heads]
    others = [n for n in group.lines if n not in body and found.pieces(n) > 1]
    between = (set_line(found.texts[n], found.measure) for n in others if n > group.body[0])
    if any(group.columns.reaches_over(line) for line in between):
        return False
    return group.columns.are_headed_surely(heads, (set_line(found.texts[n], found.measure) for n in others))


def _lined(found: Listing, group: Group) -> dict[int, list[str] | None]:
    return {n: group.columns.cells(set_line(found.texts[n], found.measure)) for n in group.body}


def _columns(found: Listing, group: Group) -> Columns:
    body = set(group.body)
    others = [n for n in group.lines if n not in body][:_MOST_LINES]
    lines = (group.body[:_MOST_LINES], group.heads, others)
    body_texts, heads, between = ([found.texts[n] for n in one] for one in lines)
    return columns_of(body_texts, heads, between, found.measure)


def _pages(found: Listing) -> list[range]:
    """The lines of each page of a listing: each has a head with the same first words, over columns of its own."""
    heads: list[tuple[int, str]] = []
    for n, text in enumerate(found.texts):
        if found.pieces(n) >= LEAST_COLUMNS and not re.search(r"(?<![\w.])\d+(?:[.,]\d+)?(?![\w.])", text):
            heads.append((n, set_line(text, found.measure).pieces[0].text))
    again = [n for n, first in heads if first == heads[0][1]]
    starts = [0, *again[1:]] if len({found.texts[n] for n in again}) > 1 else [0]
    return [range(a, b) for a, b in zip(starts, [*starts[1:], len(found.texts)], strict=True)]


def _blocks(found: Listing, lines: Sequence[int]) -> list[list[int]]:
    """Lines that follow each other without a blank one between them, and without a title or a key about them."""
    blocks: list[list[int]] = [[]]
    for n in lines:
        if not found.texts[n].strip():
            blocks.append([])
            continue
        if _explains(found.texts[n]) and any(_has_numbers(found, line) for line in blocks[-1]):
            blocks.append([])
        blocks[-1].append(n)
    return [part for one in blocks if one for part in _without_title(found, one)]


def _has_numbers(found: Listing, line: int) -> bool:
    return found.kinds[line].amounts[0] > 0 and found.kinds[line].pieces >= LEAST_COLUMNS


def _without_title(found: Listing, block: list[int]) -> list[list[int]]:
    """A block, or the title over a rule and the table under it, which begins with a line of heads."""
    for at, line in enumerate(block[1:], 1):
        if _has_numbers(found, block[at - 1]):
            break
        if not is_rule(found.texts[line]):
            continue
        under = next((n for n in block[at + 1 :] if found.pieces(n)), None)
        is_headed = under is not None and found.pieces(under) >= LEAST_COLUMNS and not _has_numbers(found, under)
        return [block[:at], block[at:]] if is_headed else [block]
    return [block]


def _groups(found: Listing, blocks: Sequence[list[int]], is_strict: bool) -> list[Group]:
    """The blocks that hold numbers, those together that share their columns, each with the heads over it."""
    groups: list[Group] = []
    before: list[int] = []
    tried = 0
    for block in blocks:
        body = _body(found, block, is_strict)
        if not body and groups and _is_total(found, block, groups[-1]):
            body = block
        if not body:
            before = block if not _is_key(found, block) else []
            continue
        over = [n for n in block if n < body[0] and found.pieces(n)]
        heads = [n for n in over if found.pieces(n) > 1] or [n for n in before if found.pieces(n) > 2]
        width = 0.9 * len(found.texts[body[0]].expandtabs().rstrip())
        heads = heads or [n for n in over[-1:] if len(found.texts[n].expandtabs().rstrip()) >= width]
        own = Group(block, heads, body)
        last = groups[-1] if groups else None
        if last is None or not _joins(found, last, own, tried < _MOST_TRIED):
            own.columns = _columns(found, own)
            groups.append(own)
            tried += 1
        before = []
    return groups


def _body(found: Listing, block: Sequence[int], is_strict: bool) -> list[int]:
    """The lines of numbers of a block; where hardly one has two blanks between them, those with several numbers."""
    if _is_key(found, block):
        return []
    lines = [(n, found.kinds[n]) for n in block]
    if not is_strict:
        return [n for n, kind in lines if kind.pieces >= LEAST_COLUMNS]
    narrow = [n for n, kind in lines if kind.amounts[1] and kind.units >= LEAST_COLUMNS]
    wide = [n for n, kind in lines if kind.amounts[0] and kind.pieces >= LEAST_COLUMNS]
    if wide and 2 * len(wide) >= len(narrow):
        return [n for n, kind in lines if kind.amounts[0] and kind.pieces > 1]
    return narrow if len(narrow) >= LEAST_LINES else []


def _is_total(found: Listing, block: Sequence[int], group: Group) -> bool:
    """Whether a line that stands alone under a table is one of its totals."""
    line = set_line(found.texts[block[0]], found.measure)
    is_one = len(block) == 1 and line.amounts[0] > 0 and heading(line.pieces[0].text) == "total"
    return is_one and group.columns.holds(line)


def _joins(found: Listing, group: Group, own: Group, is_tried: bool) -> bool:
    """Takes a block into the group before it where its lines stand in the same columns."""
    fits = all(group.columns.holds(set_line(found.texts[n], found.measure)) for n in own.body)
    if not fits and not is_tried:
        return False
    if not fits:
        alone = _columns(found, own)
        pair = Group([*group.lines, *own.lines], [*group.heads, *own.heads], [*group.body, *own.body])
        both = _columns(found, pair)
        if len(both.spans) < max(len(group.columns.spans), len(alone.spans)) - 1:
            return False
        group.columns = both
    group.lines += own.lines
    group.heads += own.heads
    group.body += own.body
    return True


def _is_key(found: Listing, block: Sequence[int]) -> bool:
    """Whether most lines of a block say what something means."""
    return 2 * sum(_explains(found.texts[n]) for n in block) > len(block)


_SIGNED = re.compile(r"\s*(?:x{1,3}|[+*]{1,4}|[-–†‡])\s+[^\W\d_]{3}[^\d]*[^\W\d_]{3}\.?\s*")
"""'x  Present, not counted.   -  None.': a footnote of signs, without a number."""


def _explains(text: str) -> bool:
    return re.search(r"\s=\s", text) is not None or _SIGNED.fullmatch(text) is not None
