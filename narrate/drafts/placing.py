"""Where drafted sentences stand in a file: the draft as a file, and new sentences in the analyst's."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.drafts.draft_file import Block, DraftFile, Line
from narrate.drafts.offered import Drafted


def drafted_file(now: Sequence[Drafted]) -> DraftFile:
    """The draft as a file."""
    blocks: list[Block] = []
    heading: str | None = None
    paragraph = -1
    for sentence in now:
        if sentence.heading != heading and sentence.heading:
            blocks.append(Block(heading=sentence.heading))
        line = Line(text=sentence.text, keys=(sentence.key,))
        if sentence.heading == heading and sentence.paragraph == paragraph:
            blocks[-1] = Block(lines=(*blocks[-1].lines, line))
        else:
            blocks.append(Block(lines=(line,)))
        heading, paragraph = sentence.heading, sentence.paragraph
    return DraftFile(blocks=tuple(blocks))


def with_offered(blocks: list[Block], offered: Sequence[Drafted], now: Sequence[Drafted]) -> list[Block]:
    """Each offered sentence goes behind the nearest sentence before it in the draft that stands in the file."""
    order = [sentence.key for sentence in now]
    by_key = {sentence.key: sentence for sentence in now}
    for sentence in offered:
        line = Line(text=sentence.text, keys=(sentence.key,))
        before = order[: order.index(sentence.key)]
        anchor = next((key for key in reversed(before) if _find(blocks, key) is not None), None)
        where = _find(blocks, anchor) if anchor is not None else None
        if anchor is None or where is None:
            _at_the_top(blocks, sentence, line)
        else:
            _behind(blocks, where, by_key[anchor], sentence, line)
    return blocks


def without_empty_sections(blocks: Sequence[Block], hers: DraftFile) -> list[Block]:
    """Headings under which withdrawn drafts left nothing; a heading that stood empty before is hers and stays."""
    stood_empty = {b.heading for b, after in _pairs(hers.blocks) if b.heading and (after is None or after.heading)}
    return [
        block
        for block, after in _pairs(blocks)
        if not block.heading or block.heading in stood_empty or (after is not None and not after.heading)
    ]


def _at_the_top(blocks: list[Block], sentence: Drafted, line: Line) -> None:
    start = 1 if blocks and blocks[0].heading == sentence.heading else 0
    fresh = [Block(lines=(line,))]
    if not start and sentence.heading:
        fresh.insert(0, Block(heading=sentence.heading))
    blocks[start:start] = fresh


def _behind(blocks: list[Block], where: tuple[int, int], previous: Drafted, sentence: Drafted, line: Line) -> None:
    block, index = where
    if (previous.heading, previous.paragraph) == (sentence.heading, sentence.paragraph):
        lines = list(blocks[block].lines)
        lines.insert(index + 1, line)
        blocks[block] = Block(lines=tuple(lines))
        return
    fresh = [Block(lines=(line,))]
    if sentence.heading and previous.heading != sentence.heading:
        at = next((i for i, b in enumerate(blocks) if b.heading == sentence.heading), None)
        if at is None:
            fresh.insert(0, Block(heading=sentence.heading))
        else:
            block = at
    blocks[block + 1 : block + 1] = fresh


def _find(blocks: Sequence[Block], key: str) -> tuple[int, int] | None:
    for number, block in enumerate(blocks):
        for index, line in enumerate(block.lines):
            if key in line.keys:
                return number, index
    return None


def _pairs(blocks: Sequence[Block]) -> list[tuple[Block, Block | None]]:
    return [(block, blocks[i + 1] if i + 1 < len(blocks) else None) for i, block in enumerate(blocks)]
