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
    signed = sum(separator in line for line in apart)
    return len(apart) >= _LEAST_LINES and len(apart) >= _LEAST_SHARE * len(lines) and signed <= 0.3 * len(apart)


def rows_of_blanks(text: str) -> tuple[list[list[str]], list[int]]:
    """
    Rows as lists of cells, and the line of each. A column is what two blanks part from others in every line.

    >>> rows_of_blanks("Taxon        S1   S2\\nOats          1    -\\nWild oats     2   13\\nRye          10    1\\n")[0][2]
    ['Wild oats', '2', '13']
    """
    lines = [line.expandtabs(8).rstrip() for line in text.splitlines()]
    rows: list[list[str]] = []
    for page in _pages(lines):
        blocks = _blocks(page)
        widest = max((_pieces(line) for line in page), default=0)
        wide = [one for one in blocks if 2 * max(map(_pieces, one)) >= max(widest, 6) and not _is_key(one)] or blocks
        edges = _edges([line for one in wide for line in one if _pieces(line) >= 3])
        fitting = {id(line) for one in blocks if one in wide or _fits(one, edges) for line in one}
        titles = {id(line) for one in (*blocks[:1], *blocks[-1:]) for line in one if len(one) == 1 and one not in wide}
        for line in page:
            if not line.strip() or _RULE.fullmatch(line):
                cells = [""]
            elif _pieces(line) < 2 or id(line) in titles:
                cells = [" ".join(line.split())]
            else:
                cells = _cells(line, edges) if id(line) in fitting else _GAP.split(line.strip())
            rows.append(cells)
    return rows, list(range(1, len(rows) + 1))


def _pieces(line: str) -> int:
    return len(_GAP.split(line.strip())) if line.strip() and not _RULE.fullmatch(line) else 0


def _pages(lines: list[str]) -> list[list[str]]:
    """The lines of each page of a listing: each begins with a head, of the same first words, that parts other columns."""
    heads = [n for n, line in enumerate(lines) if _pieces(line) >= 3 and not re.search(r"(?<![\w.])\d+(?![\w.])", line)]
    again = [n for n in heads if _GAP.split(lines[n].strip())[0] == _GAP.split(lines[heads[0]].strip())[0]]
    starts = [0, *again[1:]] if len(again) > 1 and len({lines[n] for n in again}) > 1 else [0]
    return [lines[a:b] for a, b in zip(starts, [*starts[1:], len(lines)], strict=True)]


def _blocks(lines: list[str]) -> list[list[str]]:
    """Lines that follow each other without a blank one between them."""
    found: list[list[str]] = [[]]
    for line in lines:
        if line.strip():
            found[-1].append(line)
        elif found[-1]:
            found.append([])
    return [one for one in found if one]


def _is_key(block: list[str]) -> bool:
    """Whether most lines of a block say what something means."""
    return 2 * sum(bool(re.search(r"\s=\s", line)) for line in block) > len(block)


def _fits(block: list[str], edges: list[int]) -> bool:
    """Whether no piece of a block but a lone one reaches over the beginning of a column and goes on behind it."""
    for line in block:
        if _pieces(line) < 2:
            continue
        for match in re.finditer(r"\S+(?:\s\S+)*", line):
            if any(match.start() < edge - 1 and edge < match.end() - 1 for edge in edges):
                return False
    return True


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
