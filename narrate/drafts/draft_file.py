"""
The text of one narrative file: plain Markdown that is pleasant in any editor.

    ---
    approved: {by: A. Analyst, on: 2026-11-25}
    ---
    ## Fuel

    Cob parts outnumber kernels. <!-- 3fa2 -->
    Wood was burned too. <!-- 91bc -->

One line is one sentence (or several, if the analyst joins them); a blank line ends a paragraph. The mark at the end of
a line ties it to the draft sentence that it came from, and so to its claims; a line without a mark is hers alone. A
sentence that an editor broke over several lines is one line still. The lines between '---' are hers too: with them she
approves the file. Other remarks (<!-- ask the dating laboratory -->) are hers; they are kept and shown nowhere.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

MARK = re.compile(r"<!--\s*([0-9a-f]{4,8}(?:\s+[0-9a-f]{4,8})*)\s*-->")
_COMMENT = re.compile(r"<!--.*?(?:-->|\Z)", re.DOTALL)
_BY_AND_ON = re.compile(
    r"(?:\A|[,{\n])\s*(by|on)\s*:[ \t]*(\"[^\"]*\"|'[^']*'|.*?)[ \t]*(?=,\s*(?:by|on)\s*:|\}|\n|\Z)"
)
_FRONT = re.compile(r"\A---[ \t]*\n(.*?)^---[ \t]*(?:\n|\Z)", re.DOTALL | re.MULTILINE)
_HEADING = re.compile(r" {0,3}#{1,6}[ \t]+(.*?)[ \t]*#*[ \t]*\Z")
_LEAD = re.compile(r"\s*(?:(?:[-*+]|\d{1,3}[.)])[ \t]+|>[ \t]*)+")
"""What makes a list item or a quotation of a line."""
_RULE = re.compile(r"\s*(?:#{1,6}|={2,}|-{3,}|\*{3,}|_{3,}|`{3,}.*|~{3,}.*)\s*")
"""A row without words: a rule, a fence, the line under a heading."""
_ENDS = re.compile(r"(?:[.!?:…][\"'”’)\]*_]*|-->)\s*\Z")
"""A row that ends a sentence; any other goes on in the next row of its paragraph."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a file: words, and the draft sentences that they came from."""

    text: str
    """Its words, one space between them, without marks and remarks; empty where it holds none."""
    keys: tuple[str, ...] = ()
    number: int = 0
    """Line of the file, counted from 1; 0 for one that is not in a file yet."""
    lead: str = ""
    """'- ', '> ' or '1. ' before the words."""
    remarks: str = ""
    row: str = ""
    """As it stands in the file, marks and all; empty for one that is written anew."""

    def renewed(self, text: str, keys: tuple[str, ...]) -> Line:
        """Other words in its place; what stood before and behind them stays."""
        return replace(self, text=text, keys=keys, row="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A heading, or the lines of one paragraph."""

    heading: str = ""
    lines: tuple[Line, ...] = ()
    row: str = ""
    """A heading as it stands in the file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Approval:
    by: str
    on: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftFile:
    blocks: tuple[Block, ...]
    front: str = ""
    """The lines between '---', as they stand."""
    approval: Approval | None = None

    def lines(self) -> tuple[Line, ...]:
        """Lines with words."""
        return tuple(line for block in self.blocks for line in block.lines if line.text)

    def keys(self) -> frozenset[str]:
        return frozenset(key for line in self.lines() for key in line.keys)


def read_draft(text: str) -> DraftFile:
    """The blocks of a file. Anything can be read: what is not a mark is words."""
    text = text.replace("\r\n", "\n").replace("\r", "\n").lstrip("\ufeff")
    front = _FRONT.match(text)
    body = text[front.end() :] if front else text
    first = text[: front.end()].count("\n") if front else 0
    blocks: list[Block] = []
    lines: list[Line] = []
    for number, rows in _whole_rows(body):
        heading = _HEADING.fullmatch(_COMMENT.sub("", rows))
        if rows.strip() and not (heading and heading[1]):
            lines.append(_line(rows, first + number))
            continue
        if lines:
            blocks.append(Block(lines=tuple(lines)))
            lines = []
        if heading and heading[1]:
            blocks.append(Block(heading=heading[1], row=rows))
    if lines:
        blocks.append(Block(lines=tuple(lines)))
    said = front[1] if front else ""
    return DraftFile(blocks=tuple(blocks), front=said, approval=approval_in(said))


def draft_text(file: DraftFile) -> str:
    """The file as it is written."""
    return _written(file, lambda line: line.row or _row(line), lambda block: block.row or f"## {block.heading}")


def plain_text(file: DraftFile) -> str:
    """The same without what only the look of it makes: two files that say the same are alike."""
    return _written(file, _row, lambda block: f"## {block.heading}")


def approval_in(front: str) -> Approval | None:
    """
    Who approved and when, in one line or several.

    >>> approval_in("approved: {by: Analyst, A., on: 2026-11-25}")
    Approval(by='Analyst, A.', on='2026-11-25')
    """
    found = re.search(r"^approved:(.*(?:\n[ \t]+.*)*)", front, re.MULTILINE)
    if not found:
        return None
    said: dict[str, str] = {}
    for name, value in _BY_AND_ON.findall(found[1].strip()):
        said.setdefault(name, value.strip(" '\""))
    return Approval(by=said["by"], on=said.get("on", "")) if said.get("by") else None


def unread_approval(file: DraftFile) -> str:
    """A line between '---' that seems to approve and does not; empty where there is none."""
    if file.approval is not None:
        return ""
    found = re.search(r"^[ \t]*ap+ro(?:v|f)\w*[ \t]*:?.*$", file.front, re.MULTILINE | re.IGNORECASE)
    return found[0].strip() if found else ""


def _written(file: DraftFile, row: Callable[[Line], str], head: Callable[[Block], str]) -> str:
    blocks = [head(block) if block.heading else "\n".join(row(line) for line in block.lines) for block in file.blocks]
    body = "\n\n".join(blocks) + "\n"
    if file.front:
        return f"---\n{file.front}---\n{body}"
    return f"\n{body}" if body.startswith("---") else body


def _whole_rows(body: str) -> Iterator[tuple[int, str]]:
    """Rows with their numbers; a remark or a sentence that goes over several rows is one."""
    rows = body.split("\n")
    at = 0
    while at < len(rows):
        start = at
        whole = rows[at]
        while at + 1 < len(rows) and _goes_on(whole, rows[at + 1]):
            at += 1
            whole += "\n" + rows[at]
        yield start + 1, whole
        at += 1


def _goes_on(whole: str, below: str) -> bool:
    if whole.rfind("<!--") > whole.rfind("-->"):
        return True
    if not whole.strip() or not below.strip() or _ENDS.search(whole):
        return False
    begins = _HEADING.match(below) or _LEAD.match(below) or _RULE.fullmatch(below)
    return not (begins or _HEADING.match(whole) or _RULE.fullmatch(whole))


def _row(line: Line) -> str:
    marks = f"<!-- {' '.join(line.keys)} -->" if line.keys else ""
    return line.lead + " ".join(part for part in (line.text, marks, line.remarks) if part)


def _line(rows: str, number: int) -> Line:
    keys = tuple(dict.fromkeys(key for mark in MARK.findall(rows) for key in mark.split()))
    remarks = " ".join(found for found in _COMMENT.findall(rows) if not MARK.fullmatch(found))
    bare = _COMMENT.sub(" ", rows)
    lead = _LEAD.match(bare)
    words = " ".join((bare[lead.end() :] if lead else bare).split())
    if not words or _RULE.fullmatch(bare):
        return Line(text="", number=number, row=rows)
    return Line(text=words, keys=keys, number=number, lead=lead[0] if lead else "", remarks=remarks, row=rows)
