"""A sieve class that the title of a table, or the name of its sheet, says of all that is in it: 'Wood >4 mm'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Role, Table
from narrate.reading.intake.titles_say import titles_of

_SIZE = re.compile(
    r"(?P<sign>[<>≥≤]|&gt;|(?:larger|greater|more|bigger|smaller|less) than|over|größer als|grösser als|plus de|supérieure?s? à|"
    r"mayor(?:es)? (?:de|que|a)|superior(?:es)? a|maggior[ei] di|groter dan|powyżej)\s*(?P<mm>\d+(?:[.,]\d+)?)\s*mm\b",
    re.IGNORECASE,
)
_OF_PIECES = re.compile(
    r"(?:all |only |solo |sólo |nur |alle |seuls? )?(?:(?:of|de|di) )?(?:fragments?|fragmentos|fragmente|fragmenten|frammenti|pieces|piezas|stücke|pièces|remains|restos|restes|reste|resti|"
    r"fraction|fracción|fraktion|frazione|fractie|frakcja|size|tamaño|taille|größe)[ :]*",
    re.IGNORECASE,
)
_SMALLER = ("<", "≤", "smaller than", "less than")


def size_in(text: str) -> str:
    """
    The one sieve class that a text names; empty where it names none, or several.

    >>> size_in("Charred wood, pieces > 4 mm"), size_in("flots >0.5 mm, residues >2 mm"), size_in("4 mm of rain")
    ('>4 mm', '', '')
    """
    found = {
        f"{'<' if match['sign'].lower() in _SMALLER else '≥' if match['sign'] == '≥' else '>'}{match['mm']} mm"
        for match in _SIZE.finditer(text)
    }
    return found.pop() if len(found) == 1 else ""


def size_in_note(text: str) -> str:
    """
    The sieve class that a sentence of a note says of all pieces, and says nothing else with.

    >>> size_in_note("UE: unidad. Fragmentos > 4 mm."), size_in_note("n = number. Charcoal <3 mm not counted.")
    ('>4 mm', '')
    """
    sentences = [one.strip() for one in re.split(r"(?<=\D)[.;](?:\s|$)", text)]
    found = {
        size for one in sentences
        if (size := size_in(one)) and _OF_PIECES.fullmatch(_SIZE.sub("", one).strip(" ()."))
    }  # fmt: skip
    return found.pop() if len(found) == 1 else ""


def with_sizes_of_titles(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> list[Table]:
    """
    The tables with the size class of their title at their counts, where nothing else says sizes; with what is told.

    Where shares were sorted of the samples, a class of its own would need a share of its own: it is told alone.
    """
    are_sorted = any("sorted" in role.names for table in tables for role in _roles(table))
    found = []
    for table in tables:
        is_alone = sum(one.sheet == table.sheet for one in tables) == 1
        is_counted = table.sheet in grids and table.shape != "records"
        size = _size_of(table, grids[table.sheet], is_alone=is_alone) if is_counted else ""
        if not size or any(set(role.names) & {"size class", "fraction"} for role in _roles(table)):
            found.append(table)
            continue
        where = f"sheet {table.sheet}: " if table.sheet else ""
        if are_sorted:
            doubts.append(
                f"{where}a title or note says {size}; it is not taken as the size class of the finds, since shares sorted of "
                "the samples are given; write it behind 'counts' in the layout if it is one"
            )
            found.append(table)
            continue
        doubts.append(
            f"{where}a title or note says {size}; finds whose size nothing else says are taken as of that size class; see "
            "'counts' in the layout"
        )
        found.append(replace(table, columns=_with_size(table.columns, size), rows=table.rows))
    return found


def _size_of(table: Table, grid: Grid, *, is_alone: bool) -> str:
    """The size of the title, or of a note below where the sheet holds no other table."""
    sizes = {size for text in (grid.sheet, *titles_of(grid, table)) if (size := size_in(text))}
    last = max(table.rows, default=0)
    below = [
        cell.text for (row, _), cell in sorted(grid.cells.items())
        if cell.kind == "text" and (row > last or getattr(table.rows.get(row), "name", "") == "notes")
    ]  # fmt: skip
    sizes |= {size for text in below if is_alone and (size := size_in_note(text))}
    return sizes.pop() if len(sizes) == 1 else ""


def _with_size(columns: Mapping[int, Role], size: str) -> dict[int, Role]:
    return {
        c: replace(role, qualifiers=(*role.qualifiers, size)) if role.name in ("counts", "count") else role
        for c, role in columns.items()
    }


def _roles(table: Table) -> list[Role]:
    return [*table.rows.values(), *table.columns.values()]
