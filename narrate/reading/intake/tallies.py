"""Tally strokes as they are typed: 'IIII/ II', '||||', 'llll/', '卌 ||', '正'. Strokes are counted, and beside a number held against it."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections import Counter
from functools import lru_cache

from narrate.model.grids import Cell, Grid

TALLY = "tally"
"""Behind the role of a column: its strokes stand beside a number."""
_FIVES = "卌𝍸正"
_STROKES = re.compile(rf"[Il|¦ı/\\{_FIVES}]+(?:[\s.,;·-]+[Il|¦ı/\\{_FIVES}]+)*[\s.,;-]*")
_UPRIGHT = re.compile(rf"[Il|¦ı{_FIVES}]|//")
_SURE = re.compile(rf"[Il|¦ı]{{3,}}[/\\]|[|¦]{{2,}}|I{{4,}}|l{{2,}}|/{{2,}}|[{_FIVES}]")


@lru_cache(maxsize=4096)
def strokes(text: str) -> int:
    """
    The number that strokes stand for; 0 for other texts. A slash through four is the fifth.

    >>> [strokes(t) for t in ("IIII/ II", "||||", "llll/ l", "卌 ||", "正", "//// //", "I", "VII", "12")]
    [7, 4, 6, 7, 5, 6, 1, 0, 0]
    """
    flat = text.strip()
    if not _STROKES.fullmatch(flat) or not _UPRIGHT.search(flat):
        return 0
    return sum(5 if sign in _FIVES else 1 for sign in flat if sign in "Il|¦ı/\\" or sign in _FIVES)


def is_tally(text: str) -> bool:
    """
    Whether a text can be nothing but strokes; 'II' may be the number of a phase.

    >>> is_tally("IIII/"), is_tally("II"), is_tally("||"), is_tally("/")
    (True, False, True, False)
    """
    return bool(strokes(text)) and bool(_SURE.search(text))


def tally_texts(grid: Grid) -> frozenset[str]:
    """All strokes of a grid that is tallied in, the short ones with them; empty where no cell can be nothing else."""
    times = Counter(cell.text for cell in grid.cells.values() if cell.kind == "text")
    found = frozenset(text for text in times if strokes(text))
    return found if sum(times[text] for text in found if is_tally(text)) >= 2 else frozenset()


def is_column_of_strokes(texts: list[str]) -> bool:
    """Whether a column holds strokes and nothing else but a few words."""
    return sum(bool(strokes(text)) for text in texts) >= 0.8 * len(texts) > 0


def of_strokes(cell: Cell | None) -> int:
    return strokes(cell.text) if cell is not None and cell.kind == "text" else 0
