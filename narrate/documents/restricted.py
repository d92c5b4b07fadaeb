"""What is restricted, marked wherever it stands in a copy that holds it: in sentences, heads, rows and captions."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from narrate.documents.blocks import Block, Contents, Figure, Foot, Heading, Paragraph, Table
from narrate.documents.inline import literal
from narrate.model.edition import Edition

MARK = "[restricted]"
FOOT = "Restricted copy, for the team alone. "
"""At the foot of every page of a copy that holds something restricted, before what stands there in any copy."""

COPY = (
    f"**This copy holds restricted contexts; each is marked {MARK} wherever it is named.** Their remains are also in "
    "the totals, shares and figures of their phase and of the whole dig. It is for the team alone. The open copy "
    "counts without them, and who holds both copies can subtract one from the other: let the open copy "
    "alone reach the public, and no total of this one."
)
BARE_NUMBERS = (
    " Where the id of such a context or sample is a number alone, it is marked in headings, heads and rows of tables "
    "and captions; in a sentence it may stand unmarked."
)


def cover(edition: Edition) -> str:
    """What the head of a copy says that holds restricted contexts."""
    ids = edition.project.restricted_ids()
    return COPY + (BARE_NUMBERS if any(_is_bare(id) for id in ids) else "")


def marked(blocks: Iterable[Block], ids: Sequence[str]) -> Iterable[Block]:
    """The blocks with each of the ids marked where it is named; as they are where there is none."""
    mark = _marker(ids)
    return blocks if mark is None else (_block(block, mark) for block in blocks)


def _block(block: Block, mark: Callable[[str, bool], str]) -> Block:
    if isinstance(block, Heading):
        return replace(block, text=mark(block.text, True))
    if isinstance(block, Paragraph):
        return replace(block, text=mark(block.text, False))
    if isinstance(block, Table):
        return replace(
            block,
            caption=mark(block.caption, False),
            columns=tuple(mark(head, True) for head in block.columns),
            # A number among numbers is a count and no id.
            rows=tuple(tuple(mark(cell, n not in block.numbers) for n, cell in enumerate(row)) for row in block.rows),
            note=mark(block.note, False),
        )
    if isinstance(block, Figure):
        caption = mark(block.caption, True)
        return replace(block, caption=caption, alt=mark(block.alt, False), note=mark(block.note, False))
    assert isinstance(block, Contents | Foot)
    return block


def _marker(ids: Sequence[str]) -> Callable[[str, bool], str] | None:
    """
    A function of a text and whether it is short, as heads and cells are, where a number at its beginning is an id.

    >>> mark = _marker(["C19", "12"])
    >>> mark("From C19 (2), C19b and {photograph-c19-1}", False)
    'From C19 [restricted] (2), C19b and {photograph-c19-1}'
    >>> mark("12 litres of pit 3", False), mark("12", True), mark("12, burial", True), mark("12.5", True)
    ('12 litres of pit 3', '12 [restricted]', '12 [restricted], burial', '12.5')
    >>> mark("C18, C19, 12, 13", True)
    'C18, C19 [restricted], 12 [restricted], 13'
    """
    named = [re.escape(literal(id)) for id in sorted(ids, key=len, reverse=True) if not _is_bare(id)]
    bare = [re.escape(id) for id in sorted(ids, key=len, reverse=True) if _is_bare(id)]
    if not named and not bare:
        return None
    # References such as {counts-late-1} are no words; a mark that a chart has set already is not set twice.
    words = re.compile(rf"\{{[a-z0-9_-]+\}}|(?<![\w.-])(?:{'|'.join(named)})(?![\w-])(?! \[)") if named else None
    first = re.compile(rf"(?:^|(?<=, ))(?:{'|'.join(bare)})(?=$|[,:]|\s>|\s\d+[-–.\d]*\s?mm|\sno\s)") if bare else None

    def mark(text: str, is_short: bool) -> str:
        if words is not None:
            text = words.sub(lambda m: m[0] if m[0].startswith("{") else f"{m[0]} {MARK}", text)
        if first is not None and is_short:
            text = first.sub(lambda m: f"{m[0]} {MARK}", text)
        return text

    return mark


def _is_bare(id: str) -> bool:
    return not re.search(r"[^\W\d_]", id)
