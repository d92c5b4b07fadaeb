"""Lines that repeat the head of a section are its sum; a 'total' that the grand total alone takes in is a find."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations

from narrate.model.layouts import Role
from narrate.reading.intake.stored_groups import meant_words

Values = Mapping[tuple[int, int], float]
_ENOUGH = 0.6
"""Share of the columns in which a sum has to agree, among those in which it says anything."""
_LEAST_COLUMNS = 2
_MOST_TOGETHER = 3
"""Lines called totals that may be finds together."""


def sums_of_sections(
    rows: Mapping[int, Role], labels: Mapping[int, str], columns: Sequence[int], value: Values
) -> dict[int, str]:
    """
    Lines of amounts under the words of a head of a section further up, each with what is told of it.

    The sum of that section is one, or of its first lines (behind them others may stand that have no head of their
    own), and so are most such lines below the grand total.

    >>> rows = {n: Role(name=name) for n, name in enumerate(("section", "counts", "counts", "total", "counts"))}
    >>> labels = {0: "Fruits/nuts", 1: "Corylus", 2: "Prunus", 3: "Total", 4: "fruits/nuts"}
    >>> value = {(1, 1): 4.0, (2, 1): 5.0, (4, 1): 9.0, (1, 2): 1.0, (2, 2): 6.0, (4, 2): 7.0}
    >>> sums_of_sections(rows, labels, [1, 2], value)
    {4: "'fruits/nuts' repeats the head of a section and is its sum: taken for a stored total"}
    """
    sections = [row for row in sorted(rows, reverse=True) if rows[row].name == "section" and labels.get(row)]
    heads = {_plain(labels[row]): row for row in sections}
    counted = [row for row in sorted(rows) if rows[row].name == "counts"]
    again = {row: heads[_plain(labels[row])] for row in counted if _plain(labels.get(row, "")) in heads}
    again = {row: head for row, head in again.items() if head < row}
    grand = [row for row, role in rows.items() if role.name == "total" and not meant_words(labels.get(row, ""))]
    found: dict[int, str] = {}
    for row, head in again.items():
        end = min((other for other in rows if other > head and rows[other].name == "section"), default=row)
        under = [other for other in counted if head < other < min(end, row) and other not in again]
        is_sum = _is_sum_of_first(row, under, columns, value)
        foot = [other for other in counted if any(under and under[-1] < total < other for total in grand)]
        if is_sum or (row in foot and sum(other in again for other in foot) > 0.5 * len(foot)):
            said = "is its sum" if is_sum else "stands below the total"
            found[row] = f"'{labels[row]}' repeats the head of a section and {said}: taken for a stored total"
    return found


def _plain(label: str) -> str:
    return " ".join(label.lower().split())


def _is_sum_of_first(row: int, under: Sequence[int], columns: Sequence[int], value: Values) -> bool:
    return any(_agree(row, under[:n], columns, value) for n in range(2, len(under) + 1))


def _agree(row: int, lines: Sequence[int], columns: Sequence[int], value: Values) -> bool:
    """Whether a line is the sum of others in most columns where either holds anything, and in two at least."""
    sums = [(value.get((row, c), 0.0), sum(value.get((r, c), 0.0) for r in lines)) for c in columns]
    given = [(own, added) for own, added in sums if own or added]
    agreeing = sum(abs(own - added) < 1e-9 for own, added in given)
    return agreeing >= _LEAST_COLUMNS and agreeing >= _ENOUGH * len(given)


def finds_called_total(
    rows: Mapping[int, Role], labels: Mapping[int, str], columns: Sequence[int], value: Values
) -> dict[int, str]:
    """
    Lines such as 'small legumes total' whose members the sheet does not list, each with what is told of it.

    They are no sum of any lines that follow each other, and the grand total agrees with the counts above it in most
    columns with them, and not without them.

    >>> rows = {n: Role(name=name) for n, name in enumerate(("counts", "counts", "total", "total"))}
    >>> labels = {0: "Hordeum", 1: "Rumex", 2: "small legumes total", 3: "Total"}
    >>> value = {(0, 1): 4.0, (1, 1): 5.0, (2, 1): 7.0, (3, 1): 16.0}
    >>> value |= {(0, 2): 1.0, (1, 2): 6.0, (2, 2): 3.0, (3, 2): 10.0}
    >>> list(finds_called_total(rows, labels, [1, 2], value))
    [2]
    """
    counted = [row for row in sorted(rows) if rows[row].name == "counts"]
    totals = [row for row in sorted(rows) if rows[row].name == "total"]
    for grand in [row for row in totals if not meant_words(labels.get(row, ""))]:
        above = [row for row in counted if row < grand]
        named = [row for row in totals if row < grand and meant_words(labels.get(row, ""))]
        named = [row for row in named if sum(value.get((row, c), 0.0) > 0 for c in columns) >= _LEAST_COLUMNS]
        if not above or not named or _agree(grand, above, columns, value):
            continue
        named = [row for row in named if not _is_sum_of_a_run(row, above, columns, value)]
        for several in range(1, min(_MOST_TOGETHER, len(named)) + 1):
            for rest in combinations(named, several):
                if _agree(grand, [*above, *rest], columns, value):
                    return {
                        row: f"'{labels[row]}' is the sum of no other lines, and '{labels[grand]}' agrees with the "
                        "counts only where it is added: read as a find; write total for it in the layout if it is none"
                        for row in rest
                    }
    return {}


def _is_sum_of_a_run(row: int, lines: Sequence[int], columns: Sequence[int], value: Values) -> bool:
    return any(
        _agree(row, lines[start:end], columns, value)
        for start in range(len(lines))
        for end in range(start + 1, len(lines) + 1)
    )
