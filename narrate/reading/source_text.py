"""The text of one file, with the places and excerpts that problems show."""

from __future__ import annotations

import re

from narrate.problems import Place, ProblemList

LINE_END = re.compile(r"\r\n|\r|\n")
"""What ends a line for us; the same for editors, for YAML and for count sheets."""

FORBIDDEN = re.compile("[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")
"""Characters that no record may hold: controls, odd line ends, half characters, byte order marks inside a text."""

_EXCERPT_CHARACTERS = 160


class SourceText:
    """One file as text. Lines are split when the first problem asks for one."""

    __slots__ = ("_lines", "path", "text")

    def __init__(self, path: str, text: str) -> None:
        self.path = path
        """Relative to the project folder, with forward slashes."""
        self.text = text
        self._lines: list[str] | None = None

    def line(self, number: int) -> str:
        """Line `number`, counted from 1; empty where there is none."""
        if self._lines is None:
            self._lines = LINE_END.split(self.text)
        return self._lines[number - 1] if 0 < number <= len(self._lines) else ""

    def place(self, line: int = 0, column: int = 0) -> Place:
        return Place(path=self.path, line=line, column=column)


def tell(
    source: SourceText,
    problems: ProblemList,
    code: str,
    message: str,
    *,
    line: int = 0,
    column: int = 0,
    width: int = 1,
    help: str = "",
    severity: str = "error",
) -> None:
    """Adds a problem with the line as written and a pointer under what is meant."""
    excerpt = source.line(line).rstrip() if line else ""
    if len(excerpt) > _EXCERPT_CHARACTERS and column + width > _EXCERPT_CHARACTERS:
        excerpt = ""
    elif len(excerpt) > _EXCERPT_CHARACTERS:
        excerpt = excerpt[:_EXCERPT_CHARACTERS] + "…"
    room = len(excerpt) - column + 1
    add = problems.error if severity == "error" else problems.warning
    add(
        source.place(line, column),
        code,
        message,
        help=help,
        excerpt=excerpt,
        width=max(1, min(width, room)) if excerpt else 1,
    )


def shown(text: str) -> str:
    """
    What was read, as messages quote it: numbers bare, words in quotes, long texts cut.

    >>> shown("25"), shown("ten"), shown("")
    ('25', "'ten'", 'empty')
    """
    if not text:
        return "empty"
    if re.fullmatch(r"[+-]?\d+(?:\.\d+)?", text, re.ASCII) and len(text) <= 30:
        return text
    flat = " ".join(text.split()) or " "
    return f"'{flat if len(flat) <= 60 else flat[:57] + '…'}'"
