"""
The text of one narrative file: plain Markdown that is pleasant in any editor.

    ---
    approved: {by: A. Analyst, on: 2026-11-25}
    ---
    ## Fuel

    Cob parts outnumber kernels. <!-- 3fa2 -->
    Wood was burned too. <!-- 91bc -->

One line is one sentence (or several, if the analyst joins them); a blank line ends a paragraph. The mark at the end of
a line ties it to the draft sentence that it came from, and so to its claims; a line without a mark is hers alone. The
lines between '---' are hers too: with them she approves the file.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

_MARK = re.compile(r"<!--\s*([0-9a-f]{4,8}(?:\s+[0-9a-f]{4,8})*)\s*-->")
_COMMENT = re.compile(r"<!--.*?-->", re.DOTALL)
_FRONT = re.compile(r"\A---[ \t]*\n(.*?)^---[ \t]*(?:\n|\Z)", re.DOTALL | re.MULTILINE)
_APPROVED = re.compile(r"^approved:[ \t]*\{?(.*?)\}?[ \t]*$", re.MULTILINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a file: words, and the draft sentences that they came from."""

    text: str
    keys: tuple[str, ...] = ()
    number: int = 0
    """Line of the file, counted from 1; 0 for one that is not in a file yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A heading, or the lines of one paragraph."""

    heading: str = ""
    lines: tuple[Line, ...] = ()


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
        return tuple(line for block in self.blocks for line in block.lines)


def read_draft(text: str) -> DraftFile:
    """The blocks of a file. Anything can be read: what is not a mark is words."""
    text = text.replace("\r\n", "\n").replace("\r", "\n").lstrip("\ufeff")
    front = _FRONT.match(text)
    body = text[front.end() :] if front else text
    first = text[: front.end()].count("\n") if front else 0
    blocks: list[Block] = []
    lines: list[Line] = []
    for number, row in enumerate(body.split("\n"), start=first + 1):
        line = _line(row, number)
        if line is not None and not row.lstrip().startswith("#"):
            lines.append(line)
            continue
        if lines:
            blocks.append(Block(lines=tuple(lines)))
            lines = []
        if row.lstrip().startswith("#"):
            blocks.append(Block(heading=_COMMENT.sub("", row).strip().lstrip("#").strip()))
    if lines:
        blocks.append(Block(lines=tuple(lines)))
    said = front[1] if front else ""
    return DraftFile(blocks=tuple(blocks), front=said, approval=_approval(said))


def draft_text(file: DraftFile) -> str:
    """The file as it is written."""
    blocks = []
    for block in file.blocks:
        if block.heading:
            blocks.append(f"## {block.heading}")
        else:
            blocks.append("\n".join(_row(line) for line in block.lines))
    front = f"---\n{file.front}---\n" if file.front else ""
    return front + "\n\n".join(blocks) + "\n"


def _row(line: Line) -> str:
    return f"{line.text} <!-- {' '.join(line.keys)} -->" if line.keys else line.text


def _line(row: str, number: int) -> Line | None:
    keys = tuple(dict.fromkeys(key for mark in _MARK.findall(row) for key in mark.split()))
    words = " ".join(_COMMENT.sub(" ", row).split())
    return Line(text=words, keys=keys, number=number) if words else None


def _approval(front: str) -> Approval | None:
    found = _APPROVED.search(front)
    if not found:
        return None
    said = dict(part.split(":", 1) for part in found[1].split(",") if ":" in part)
    by, on = (next((v.strip(" '\"") for k, v in said.items() if k.strip() == name), "") for name in ("by", "on"))
    return Approval(by=by, on=on) if by else None
