"""Heads that may be a plant ('Date' among fruits is the palm), and what stands among the finds and is read as none."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from narrate.model.grids import column_name
from narrate.model.layouts import SAMPLE_ROLES, Role, Table
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.evidence import NAMED, Look
from narrate.reading.intake.header_words import heading

_LEAST_YEAR = 100
"""Whole numbers from here on may be years; finds of one line are seldom so many in every sample."""


def may_be_plant(label: str, look: Look) -> bool:
    """Whether a word of heads is a name of the taxa too."""
    return heading(label) == "phase" and look.names.read(label).is_known


def is_plant_among_finds(look: Look, row: int, column: int, counts: list[int], span: range) -> bool:
    """
    Whether a line under a word of heads holds counts of a plant. Taxa run down, with their names in a column.

    Between two lines of plants it does, unless all its cells are as large as years. At the end of them a nought, a
    dash or a sign has to stand in it, which no row of dates has.
    span:  rows that may be of the taxa.
    """
    if not may_be_plant(look.text(row, column), look):
        return False
    texts = [look.text(row, c) for c in counts if (row, c) in look.cells]
    if not texts or not all(look.is_amount(row, c) for c in counts if (row, c) in look.cells):
        return False
    numbers = [number for text in texts if (number := number_of(text, ".")) is not None]
    if len(numbers) == len(texts) and all(number >= _LEAST_YEAR for number in numbers):
        return False
    above = _is_plant(look, column, counts, range(row - 1, span.start - 1, -1))
    below = _is_plant(look, column, counts, range(row + 1, span.stop))
    says_none = any(re.fullmatch(r"0|[-–—+xX*•]+", text) for text in texts)
    return (above and below) or ((above or below) and says_none)


def _is_plant(look: Look, column: int, counts: list[int], rows: Iterable[int]) -> bool:
    """Whether the first line of some that holds an amount carries the name of a plant."""
    nearest = next((row for row in rows if any(look.is_amount(row, c) for c in counts)), None)
    return nearest is not None and look.name_score(nearest, column) >= NAMED


def heads_among_finds(look: Look, tables: list[Table]) -> list[str]:
    """Doubts about lines of amounts among counts, or under a word for a plant, that say something of samples."""
    found = []
    for table in tables:
        if table.shape != "crossed":
            continue
        across = table.has_samples_across
        taxa, others = (table.rows, table.columns) if across else (table.columns, table.rows)
        counted = [n for n, role in others.items() if role.name == "counts"]
        for at, role in taxa.items():
            cells = [(at, n) if across else (n, at) for n in counted]
            if role.name not in SAMPLE_ROLES or not any(look.is_amount(*cell) for cell in cells):
                continue
            labels = [look.text(*((at, n) if across else (n, at))) for n, one in others.items() if one.name != "counts"]
            label = next((text for text in labels if heading(text)), "")
            if _is_between_counts(taxa, at) or (may_be_plant(label, look) and _are_few(look, cells)):
                what = f"row {at + 1}" if across else f"column {column_name(at)}"
                found.append(
                    f"DOUBTFUL: {what} ('{label}') holds numbers, stands among finds and is read as {role.name}; "
                    "write counts for it in the layout if it is a find"
                )
    return found


def _is_between_counts(lines: Mapping[int, Role], at: int) -> bool:
    told = {n: role.name for n, role in lines.items() if role.name not in ("blank", "section", "notes")}
    before = max((n for n in told if n < at), default=None)
    after = min((n for n in told if n > at), default=None)
    return before is not None and after is not None and told[before] == told[after] == "counts"


def _are_few(look: Look, cells: list[tuple[int, int]]) -> bool:
    """Whether whole numbers too small for years, or nothing, stand in all cells."""
    texts = [look.text(*cell) for cell in cells if cell in look.cells]
    return all(re.fullmatch(r"\d{1,2}|[-–—]", text) for text in texts)
