"""Text inside a block as runs: plain, Latin, strong, or a reference to a table or figure."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from narrate.documents.blocks import Block, Figure, Table, Unfit

NBSP = "\u00a0"


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    text: str
    style: str = ""
    """'', 'latin', 'strong' or 'title': of a book or journal."""
    anchor: str = ""
    """For references: where they lead."""
    is_whole: bool = False
    """A range such as '12–19', which must not be parted between lines."""


_PIECE = re.compile(
    r"\\([\\*{}|_`])|\*\*(.+?)\*\*|\*([^*]+?)\*|\{([a-z][a-z0-9_-]*)\}|__((?:\\.|[^_\\]|_(?!_))+?)__", re.DOTALL
)
_ESCAPED = re.compile(r"\\([\\*{}|_`])")
_RANGE = re.compile(r"(?<![\w.,/–-])[<>~]?\d+(?:[.,]\d+)*(?:[-–]\d+(?:[.,]\d+)*)+%?(?![\w–-])")
_UNIT = re.compile(
    r"(?<=\d) (?=(?:litres?|liters?|l|L|g|kg|mg|mm|ml|cm|m|items?|samples?|BC|BCE|CE|BP)\b|%|±)|(?<=±) (?=\d)"
)
_ERA = re.compile(r"\b(cal) (?=AD|BC|CE|BCE|BP)|\b(AD|Table|Figure|n =|p\.|pp\.|cf\.) (?=[\w−-])")


def labels(blocks: Iterable[Block]) -> Mapping[str, str]:
    """Anchor -> 'Table 3' or 'Figure 1', numbered in order of the section."""
    found: dict[str, str] = {}
    tables = figures = 0
    for block in blocks:
        if isinstance(block, Table):
            tables += 1
            found[block.anchor or f"table-{tables}"] = f"Table{NBSP}{tables}"
        elif isinstance(block, Figure):
            figures += 1
            found[block.anchor or f"figure-{figures}"] = f"Figure{NBSP}{figures}"
    return found


def runs(text: str, known: Mapping[str, str] | None = None) -> tuple[Run, ...]:
    """
    The runs of a text; spaces before units and after 'cal' and 'AD' do not break.

    >>> [(r.text, r.style) for r in runs("12 g of *Zea mays*, a\\\\*b")]
    [('12\\xa0g of ', ''), ('Zea mays', 'latin'), (', a', ''), ('*', ''), ('b', '')]
    >>> [r.text for r in runs("79–99% of VRL-0417, 0.5-1 mm, 1045 ± 20 BP, on 2026-11-28.") if r.is_whole]
    ['79–99%', '0.5-1', '2026-11-28']
    """
    text = tied(" ".join(text.split(" ")))
    found: list[Run] = []
    at = 0
    for piece in _PIECE.finditer(text):
        if piece.start() > at:
            found += _parted(text[at : piece.start()])
        escaped, strong, latin, anchor, title = piece.groups()
        if anchor is not None and known is not None:
            if anchor not in known:
                raise Unfit(f"the text refers to '{anchor}', which is no table or figure of the section")
            found.append(Run(text=known[anchor], anchor=anchor))
        elif anchor is not None:
            found.append(Run(text=piece.group()))
        elif escaped is not None:
            found.append(Run(text=escaped))
        else:
            style = "strong" if strong else "latin" if latin else "title"
            found.append(Run(text=_ESCAPED.sub(r"\1", strong or latin or title), style=style))
        at = piece.end()
    if at < len(text):
        found += _parted(text[at:])
    return tuple(found)


def _parted(text: str) -> Iterator[Run]:
    """Plain text, its ranges apart from the rest."""
    at = 0
    for piece in _RANGE.finditer(text):
        if piece.start() > at:
            yield Run(text=text[at : piece.start()])
        yield Run(text=piece.group(), is_whole=True)
        at = piece.end()
    if at < len(text):
        yield Run(text=text[at:])


def tied(text: str) -> str:
    """The text with spaces that do not break before units and after words that belong to a number."""
    text = _UNIT.sub(NBSP, text)
    return _ERA.sub(lambda found: (found[1] or found[2]) + NBSP, text)


def plain(text: str, known: Mapping[str, str] | None = None) -> str:
    return "".join(run.text for run in runs(text, known))


def anchor_of(name: str, *numbers: int) -> str:
    """
    An anchor of a block about a record, whatever its id holds; it is a file name and a label too.

    >>> anchor_of("photograph-C12", 1)
    'photograph-c12-1'
    >>> anchor_of("photograph-../C12", 1)
    'photograph-c12-85599b53-1'
    """
    bare = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:60]
    if bare != name.lower().replace("_", "-"):
        bare = f"{bare}-{hashlib.blake2b(name.encode(), digest_size=4).hexdigest()}"
    return "-".join((bare, *map(str, numbers)))


def literal(text: str) -> str:
    """A text of the records, in which no sign is markup."""
    return _SIGNS.sub(r"\\\1", text)


_SIGNS = re.compile(r"([\\*{}_])")
