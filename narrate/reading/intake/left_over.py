"""What no table of a sheet takes in although it holds numbers, and heads that nobody knows: told, never lost."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import pairwise

from narrate.model.grids import column_name
from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look, looks_like_id
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.plants_among_heads import heads_among_finds

_UNKNOWN = (
    "its heading says nothing known",
    "no heading",
    "no name of a plant",
    "no name stands before it",
    "it stands among the records and names no plant",
    "nothing in it belongs to the counts",
    "its cells are no amounts",
    "no field of a record holds it",
    "its numbers are no whole ones, and it names no plant",
)
"""Reasons for leaving a row or column out that may hide finds."""
_SHOWN = 6


def left_over(look: Look, tables: list[Table]) -> list[str]:
    """Doubts about numbers of a sheet that no table takes in, and about rows and columns that nobody knows."""
    where = f"sheet {look.grid.sheet}: " if look.grid.sheet else ""
    kinds = (_outside, _unknown, _headings_as_ids, _same_again, _lines_twice, _words_of_numbers, heads_among_finds)
    doubts = [doubt for kind in kinds for doubt in kind(look, tables)]
    return [f"{'DOUBTFUL: ' if _is_loud(one) else ''}{where}{one.removeprefix('DOUBTFUL: ')}" for one in doubts]


def _is_loud(doubt: str) -> bool:
    return doubt.startswith("DOUBTFUL: ")


def _outside(look: Look, tables: list[Table]) -> list[str]:
    """Rows with a label and numbers in the columns of counts that belong to no table."""
    if not tables:
        return []
    known = {row for table in tables for row in table.rows}
    counted = {column for table in tables for column in table.columns}
    rows = [
        row
        for row in range(look.rows)
        if row not in known
        and sum(look.is_amount(row, c) for c in counted) >= 1
        and any(look.is_text(row, c) and not heading(look.text(row, c)) for c in range(look.columns))
    ]
    return [
        f"DOUBTFUL: {lines_named('row', span)} (from '{_first_text(look, span[0])}') hold numbers and belong to no "
        "table; add them under rows of a table in the layout if they are finds"
        for span in _runs(rows)
    ]


Unknown = dict[tuple[str, str], list[tuple[int, str]]]
"""(row or column, why it is left out) -> the lines, each with its words."""


def lines_unknown(look: Look, tables: list[Table]) -> tuple[Unknown, Unknown]:
    """The lines that are left out because nobody knows what they are: those that hold numbers, and those of words."""
    found: Unknown = {}
    words: Unknown = {}
    for table in tables:
        for what, roles, others in (("row", table.rows, table.columns), ("column", table.columns, table.rows)):
            for at, role in roles.items():
                reason = next((one for one in _UNKNOWN if one in role.qualifiers), "")
                if role.name != "ignored" or not reason:
                    continue
                cells = [(at, n) if what == "row" else (n, at) for n in others]
                texts = [look.text(*cell) for cell in cells if look.is_text(*cell)]
                label = next((text for text in texts if len(text) <= 40), texts[0] if texts else "")
                if _is_empty_line(look, cells, {cell: others.get(cell[what == "row"]) for cell in cells}):
                    continue
                if _runs_on(look, [cell for cell in cells if _is_body(others.get(cell[what == "row"]))]):
                    continue
                if any(look.is_amount(*cell) for cell in cells if _is_body(others.get(cell[what == "row"]))):
                    found.setdefault((what, reason), []).append((at, label))
                elif reason == _UNKNOWN[0]:
                    words.setdefault((what, reason), []).append((at, label))
    return found, words


def _unknown(look: Look, tables: list[Table]) -> list[str]:
    found, words = lines_unknown(look, tables)
    texts = [
        f"{lines_named(what, [at for at, _ in ones])} ({_labels(label for _, label in ones)}): {reason}; "
        "give it a role in the layout if it says something of the samples or the finds"
        for (what, reason), ones in words.items()
    ]
    return texts + [
        f"DOUBTFUL: {lines_named(what, [at for at, _ in ones])} ({_labels(label for _, label in ones)}) "
        f"{'hold' if len(ones) > 1 else 'holds'} numbers and {'are' if len(ones) > 1 else 'is'} left out: {reason}"
        for (what, reason), ones in found.items()
    ]


def _runs_on(look: Look, cells: list[tuple[int, int]]) -> bool:
    """Whether the cells of a line count the lines that cross it: 1, 2, 3."""
    texts = [look.text(*cell) for cell in cells if cell in look.cells]
    return len(texts) > 3 and all(map(str.isdecimal, texts)) and all(int(b) == int(a) + 1 for a, b in pairwise(texts))


def _is_empty_line(look: Look, cells: list[tuple[int, int]], roles: Mapping[tuple[int, int], Role | None]) -> bool:
    """Whether nothing is counted in a line of a table, with a worked-out 0 at its end: an empty sieve class."""
    names = {cell: role.name for cell in cells if (role := roles[cell]) is not None}
    totals = [look.text(*cell) for cell, name in names.items() if name == "total" and cell in look.cells]
    counted = [cell for cell, name in names.items() if name in ("counts", "finds", "count")]
    is_sample = any(name == "sample" for name in names.values()) and bool(counted)
    return is_sample and not any(cell in look.cells for cell in counted) and set(totals) == {"0"}


def _headings_as_ids(look: Look, tables: list[Table]) -> list[str]:
    """Words such as 'Volume' or 'Layer' that stand where the ids of samples are read."""
    found = []
    for table in tables:
        if table.shape != "crossed":
            continue
        across = table.has_samples_across
        ids, lines = (table.rows, table.columns) if across else (table.columns, table.rows)
        at = [n for n, role in ids.items() if "sample" in role.names]
        texts = [
            look.text(n, line) if across else look.text(line, n)
            for n in at
            for line, role in lines.items()
            if role.name == "counts"
        ]
        telling = ("sample", "context", "volume", "taxon", "part", "count", "mass", "note")
        words = [t for t in dict.fromkeys(texts) if len(t) > 2 and heading(t) in telling and not looks_like_id(t)]
        if words and len(at) == 1:
            found.append(
                f"DOUBTFUL: {_labels(words)} read as {'ids of samples' if len(words) > 1 else 'the id of a sample'}, "
                "and are words of headings; look whether the sheet is read the right way round"
            )
    return found


def _words_of_numbers(look: Look, tables: list[Table]) -> list[str]:
    """Rows and columns under an id of a sample that are read as words of the names, and hold numbers."""
    found = []
    for table in tables:
        if table.shape != "crossed":
            continue
        across = table.has_samples_across
        ids, lines = (table.rows, table.columns) if across else (table.columns, table.rows)
        counted = [n for n, role in ids.items() if role.name == "counts"]
        for line, role in lines.items():
            if role.name not in ("taxon note", "common name", "group", "part"):
                continue
            said = [n for n, one in ids.items() if "sample" in one.names]
            texts = [look.text(n, line) if across else look.text(line, n) for n in said]
            amounts = sum(look.is_amount(*((n, line) if across else (line, n))) for n in counted)
            if any(text and not heading(text) for text in texts) and amounts >= max(2, 0.3 * len(counted)):
                what = "column" if across else "row"
                found.append(
                    f"DOUBTFUL: {lines_named(what, [line])} ({_labels(texts)}) holds numbers and is read as words "
                    f"({role.name}); write counts for it in the layout if it is a sample"
                )
    return found


def _lines_twice(look: Look, tables: list[Table]) -> list[str]:
    """Lines of a list that are the same in every cell, a number of their own with them: written out twice."""
    found = []
    for table in tables:
        if table.shape != "long":
            continue
        lines = [row for row, role in table.rows.items() if role.name == "finds"]
        apart = [c for c in table.columns if _tells_lines_apart(look, lines, c)]
        before: dict[tuple[str, ...], int] = {}
        for row in lines:
            texts = tuple(look.text(row, c) for c in table.columns)
            first = before.setdefault(texts, row)
            if apart and first != row:
                found.append((first, row))
    return [
        f"DOUBTFUL: row {row + 1} is row {first + 1} again in every cell, its own number with them; both are added; "
        "write 'ignored' for one of them under rows in the layout if it was written out twice"
        for first, row in found[:5]
    ]


def _tells_lines_apart(look: Look, lines: list[int], column: int) -> bool:
    """Whether hardly a text of a column comes twice, as with running numbers of records."""
    texts = [look.text(row, column) for row in lines if look.text(row, column)]
    return len(texts) >= 0.9 * len(lines) and len(lines) > 3 and len(set(texts)) >= 0.9 * len(texts)


def _same_again(look: Look, tables: list[Table]) -> list[str]:
    """Tables of one sheet that carry the same ids and the same names: other samples, as like as not."""
    said = [(table, *_ids_and_names(look, table)) for table in tables if table.shape == "crossed"]
    for n, (table, ids, names) in enumerate(said):
        for other, other_ids, other_names in said[:n]:
            is_another = _titles(look, table) != _titles(look, other)
            if len(ids) > 1 and ids == other_ids and names & other_names and not is_another:
                return [
                    f"DOUBTFUL: the tables from rows {min(other.rows) + 1} and {min(table.rows) + 1}, columns "
                    f"{column_name(min(other.columns))} and {column_name(min(table.columns))}, carry the same ids and "
                    "share names; their counts are added; if they are other samples, "
                    "write their ids under mend in the layout"
                ]
    return []


def _titles(look: Look, table: Table) -> set[str]:
    """Titles that are part of the ids."""
    rows = [row for row, role in table.rows.items() if role.filled and "sample" in role.names]
    return {look.text(row, column) for row in rows for column in table.columns} - {""}


def _ids_and_names(look: Look, table: Table) -> tuple[set[str], set[str]]:
    found: dict[str, set[str]] = {"sample": set(), "taxon": set()}
    for roles, others, across in ((table.rows, table.columns, True), (table.columns, table.rows, False)):
        for at, role in roles.items():
            for name in {"sample", "taxon"} & set(role.names):
                lines = [n for n, other in others.items() if other.name == "counts"]
                found[name] |= {look.text(at, n) if across else look.text(n, at) for n in lines} - {""}
    return found["sample"], found["taxon"]


def _is_body(role: Role | None) -> bool:
    return role is not None and role.name in ("counts", "finds", "count", "sample")


def _first_text(look: Look, row: int) -> str:
    return next(look.text(row, c) for c in range(look.columns) if look.is_text(row, c))[:40]


def _labels(labels: Iterable[str]) -> str:
    given = [label[:30] for label in labels if label]
    more = ", …" if len(given) > _SHOWN else ""
    return ", ".join(f"'{label}'" for label in given[:_SHOWN]) + more if given else "no heading"


def lines_named(what: str, numbers: list[int]) -> str:
    """Rows or columns by number and letter: 'rows 3 to 5', 'columns B, D'."""
    names = [str(n + 1) if what == "row" else column_name(n) for n in numbers]
    if len(names) == 1:
        return f"{what} {names[0]}"
    if len(numbers) > 2 and numbers == list(range(numbers[0], numbers[-1] + 1)):
        return f"{what}s {names[0]} to {names[-1]}"
    return f"{what}s {', '.join(names[:20])}" + (" …" if len(names) > 20 else "")


def _runs(rows: list[int]) -> list[list[int]]:
    """Rows that follow each other, together; one blank row does not part them."""
    found: list[list[int]] = []
    for row in rows:
        if found and row - found[-1][-1] <= 2:
            found[-1].append(row)
        else:
            found.append([row])
    return found
