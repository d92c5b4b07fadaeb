"""Text that is set out with blanks, two or more between its columns, as rows of cells."""

# ruff: noqa: E501

from __future__ import annotations

import re

_GAP = re.compile(r"\s{2,}")
_RULE = re.compile(r"[\s|+]*(?:[-=_*.]{3,}[\s|+]*)+")
_LEAST_LINES = 4
_LEAST_SHARE = 0.5


def is_set_out(text: str, separator: str) -> bool:
    """
    Whether columns are parted by blanks and by no sign: most lines hold several pieces, and hardly one the sign.

    >>> is_set_out("Taxon      S1   S2\\nOats        1    -\\nRye         2    3\\nBarley     10    1\\n", ",")
    True
    >>> is_set_out("Taxon,S1,S2\\nOats,1,\\nRye,2,3\\nBarley,10,1\\n", ",")
    False
    """
    lines = [line for line in text[:200_000].splitlines() if line.strip() and not _RULE.fullmatch(line)][:300]
    apart = [line for line in lines if len(_GAP.split(line.strip())) >= 3 and "\t" not in line.strip()]
    signed = sum(separator in line for line in lines)
    return len(apart) >= _LEAST_LINES and len(apart) >= _LEAST_SHARE * len(lines) and signed <= 0.3 * len(lines)


def rows_of_blanks(text: str) -> tuple[list[list[str]], list[int]]:
    """
    Rows as lists of cells, and the line of each. A column is what two blanks part from others in every line.

    >>> rows_of_blanks("Taxon        S1   S2\\nOats          1    -\\nWild oats     2   13\\nRye          10    1\\n")[0][2]
    ['Wild oats', '2', '13']
    """
    lines = [line.expandtabs(8).rstrip() for line in text.splitlines()]
    apart = [line for line in lines if len(_GAP.split(line.strip())) >= 3 and not _RULE.fullmatch(line)]
    edges = _edges(apart)
    rows: list[list[str]] = []
    numbers: list[int] = []
    for number, line in enumerate(lines, start=1):
        if not line.strip() or _RULE.fullmatch(line):
            cells = [""]
        elif len(_GAP.split(line.strip())) < 2:
            cells = [line.strip()]
        else:
            cells = _cells(line, edges)
        rows.append(cells)
        numbers.append(number)
    return rows, numbers


def _edges(lines: list[str]) -> list[int]:
    """Where each column begins: behind two or more places that are blank in every line."""
    width = max((len(line) for line in lines), default=0)
    used = [any(n < len(line) and line[n] != " " for line in lines) for n in range(width)]
    edges, gap = [0], 0
    for n, is_used in enumerate(used):
        if is_used and gap >= 2 and n > gap:
            edges.append(n)
        gap = 0 if is_used else gap + 1
    return edges


def _cells(line: str, edges: list[int]) -> list[str]:
    """The pieces of a line in the columns in which they end, so that wide ones reach into the gap before them."""
    cells = [""] * len(edges)
    for match in re.finditer(r"\S+(?:\s\S+)*", line):
        at = max(n for n, edge in enumerate(edges) if edge < match.end())
        cells[at] = f"{cells[at]} {match[0]}".strip()
    return cells
