"""Tables of a sheet that say again what another table says: shares of its counts, or weights of the same things."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import unit

# Common practice, no source: words in the title of a table of results.
_SHARES = re.compile(
    r"\b(?:relative|percent(?:age)?s?|per ?cent|proportions?|ubiquit\w+|densit\w+|(?:per|par|por|je|pro) (?:\d+ )?lit\w+|standardi[sz]ed)\b"
    r"|%|/ ?l\b",
    re.I,
)
_WEIGHTS = re.compile(r"\b(?:weights?|wts?|mass(?:es)?)\b(?:.*\b(?:g|grams?|mg)\b)?|\((?:g|grams?|mg)\)", re.I)
_LEAST_NUMBERS, _MOST_BROKEN = 8, 0.6
"""Numbers of a table, and the share of them that are no whole ones and no halves, from which none are counts."""
_BROKEN = re.compile(r"[.,]\d|\de-\d", re.I)
_COUNTS = re.compile(r"\b(?:counts?|numbers? of|absolute|n =|nisp|mni)\b", re.I)


def told_apart(look: Look, tables: list[Table]) -> tuple[list[Table], list[str]]:
    """The tables of one sheet, those of shares as results and those of weights as weights; and what was doubtful."""
    made: list[Table] = []
    doubts: list[str] = []
    names = [_names(look, table) for table in tables] if len(tables) > 1 else [set[str]()]
    for n, table in enumerate(tables):
        words = _words_over(look, table)
        others = names[:n] + names[n + 1 :]
        if table.shape != "crossed" or (_COUNTS.search(words) and not _SHARES.search(words)):
            made.append(table)
        elif (_SHARES.search(words) or any(_same(names[n], o) for o in others)) and _adds_up_to_100(look, table):
            made.append(_as(table, Role(name="percent")))
            doubts.append(
                f"the table of {_rows(table)} adds up to 100 in each sample: shares, not counts; it is left out"
            )
        elif _SHARES.search(words) and any(_same(names[n], o) for o in others):
            made.append(_as(table, Role(name="derived")))
            doubts.append(
                f"the table of {_rows(table)} is headed '{words[:60].strip()}'; it is taken for results and left out"
            )
        elif _SHARES.search(words) and _is_of_fractions(look, table) and not _has_quantity(table):
            lines = {r: Role(name="percent") if role.name == "counts" else role for r, role in table.rows.items()}
            made.append(replace(_as(table, Role(name="percent")), rows=lines))
            doubts.append(
                f"the table of {_rows(table)} is headed '{words[:60].strip()}', and hardly a number of it is a whole "
                "one; it is taken for results and left out"
            )
        elif _WEIGHTS.search(words) and _has_fractions(look, _numbers(look, table)) and not _has_quantity(table):
            unit = "mg" if re.search(r"\bmg\b", words) else "g"
            made.append(_as(table, Role(name="mass", qualifiers=(unit,))))
            doubts.append(
                f"the table of {_rows(table)} is headed '{words[:60].strip()}'; its numbers are taken for {unit}"
            )
        else:
            kept, said = _without_densities(look, table)
            made.append(kept)
            doubts.extend(said)
    return made, doubts


def _without_densities(look: Look, table: Table) -> tuple[Table, list[str]]:
    """
    A table under no such words in which most numbers are no whole ones, and what is told of it.

    Whole numbers among densities or weights are none of items: '2' is then presence, as '1.5' is.
    """
    if not any(_BROKEN.search(text) for text in {cell.text for cell in look.cells.values()}):
        return table, []
    weighed = _lines_with_units(look, table)
    all_of = _numbers(look, table)
    counted = {at: n for at, n in all_of.items() if n}
    numbers = {(r, c): n for (r, c), n in counted.items() if ("row", r) not in weighed and ("column", c) not in weighed}
    broken = [at for at, n in numbers.items() if 2 * n != int(2 * n)]
    if len(numbers) < _LEAST_NUMBERS or len(broken) < _MOST_BROKEN * len(numbers) or _has_quantity(table):
        return table, []
    whole = {look.text(*at): "present" for at, n in numbers.items() if n == int(n)}
    doubt = (
        f"DOUBTFUL: of the {len(numbers)} numbers of {_rows(table)} that are not 0, {len(broken)} are no whole "
        "ones and no halves: densities (items or grams a litre), weights or shares, in all likelihood, and no "
        "counts. All are kept as presence; write 'mass, g' in place of counts in the layout if they are weights, "
        "or give the counts that they are of"
    )
    return replace(table, marks=replace(table.marks, key={**whole, **table.marks.key})), [doubt]


def _lines_with_units(look: Look, table: Table) -> set[tuple[str, int]]:
    """The rows and columns whose words say a unit of weight: 'Charcoal (g)'."""
    found = set()
    for what, roles, others in (("row", table.rows, table.columns), ("column", table.columns, table.rows)):
        for at in [n for n, role in roles.items() if role.name == "counts"]:
            cells = [(at, n) if what == "row" else (n, at) for n, role in others.items() if role.name != "counts"]
            texts = [look.text(*cell) for cell in cells if look.is_text(*cell)]
            if any(unit(text) in ("g", "mg", "kg") or look.names.read(text).quantity for text in texts):
                found.add((what, at))
    return found


def _rows(table: Table) -> str:
    return f"rows {min(table.rows) + 1} to {max(table.rows) + 1}"


def _as(table: Table, role: Role) -> Table:
    columns = {c: role if old.name == "counts" else old for c, old in table.columns.items()}
    return replace(table, columns=columns)


def _has_quantity(table: Table) -> bool:
    return any(role.name == "quantity" for role in (*table.rows.values(), *table.columns.values()))


def _words_over(look: Look, table: Table) -> str:
    """Title lines of a table and single cells between it and what stands above it."""
    counted = [r for r, role in table.rows.items() if role.name == "counts"]
    if not counted:
        return ""
    found: list[str] = []
    columns = range(min(table.columns), max(table.columns) + 1)
    for row in range(min(counted) - 1, max(-1, min(counted) - 8), -1):
        role = table.rows.get(row, Role(name="title"))
        texts = [look.text(row, c) for c in columns if (row, c) in look.own]
        if role.name in ("title", "ignored", "header") and len(texts) == 1:
            found.append(texts[0])
        elif role.name in ("counts", "total"):
            break
    return " ".join(reversed(found))


def _numbers(look: Look, table: Table) -> dict[tuple[int, int], float]:
    rows = [r for r, role in table.rows.items() if role.name == "counts"]
    columns = [c for c, role in table.columns.items() if role.name == "counts"]
    found = {}
    for r in rows:
        for c in columns:
            number = number_of(look.text(r, c).rstrip("% "), ".")
            if number is not None:
                found[r, c] = number
    return found


def _has_fractions(look: Look, numbers: Mapping[tuple[int, int], float]) -> bool:
    """Whether a third of the numbers are written with digits behind the point, or are no whole numbers."""
    broken = sum(value != int(value) or bool(re.search(r"[.,]\d", look.text(*at))) for at, value in numbers.items())
    return broken >= 0.3 * len(numbers) > 0


def _is_of_fractions(look: Look, table: Table) -> bool:
    """Whether most numbers are no whole ones, and no halves."""
    numbers = [value for value in _numbers(look, table).values() if value]
    return sum(2 * value != int(2 * value) for value in numbers) >= 0.6 * len(numbers) > 2


def _adds_up_to_100(look: Look, table: Table) -> bool:
    numbers = _numbers(look, table)
    if not _has_fractions(look, numbers):
        return False
    along: Callable[[tuple[int, int]], int] = (lambda at: at[1]) if table.has_samples_across else (lambda at: at[0])
    sums: dict[int, float] = {}
    for at, value in numbers.items():
        sums[along(at)] = sums.get(along(at), 0.0) + value
    whole = [value for value in sums.values() if value]
    return len(whole) >= 2 and sum(abs(value - 100) <= 2 for value in whole) >= 0.6 * len(whole)


def _same(own: set[str], known: set[str]) -> bool:
    """Whether most names of one table stand in the other too."""
    return bool(own) and len(own & known) >= 0.6 * len(own)


def _names(look: Look, table: Table) -> set[str]:
    across = table.has_samples_across
    roles, counted = (table.columns, table.rows) if across else (table.rows, table.columns)
    at = next((n for n, role in roles.items() if role.name in ("taxon", "genus")), None)
    if at is None:
        return set()
    lines = [n for n, role in counted.items() if role.name == "counts"]
    return {look.text(n, at) if across else look.text(at, n) for n in lines} - {""}
