"""The header of a plain count sheet: which column is which."""

from __future__ import annotations

from dataclasses import dataclass, field

from narrate.problems import ProblemList
from narrate.reading.asking import near, offered
from narrate.reading.source_text import SourceText, shown, tell

NEEDED = ("sample", "taxon", "part", "count")
COLUMNS = (*NEEDED, "mass_g", "condition", "completeness", "size_class", "fraction", "note")

_OFTEN_MEANT = {
    "sample_no": "sample", "sample_id": "sample", "sample_number": "sample", "id": "sample",
    "species": "taxon", "name": "taxon", "identification": "taxon", "genus": "taxon", "plant": "taxon",
    "taxa": "taxon",
    "plant_part": "part", "element": "part", "bit": "part",
    "n": "count", "no": "count", "number": "count", "nisp": "count", "quantity": "count", "qty": "count",
    "counts": "count",
    "weight": "mass_g", "weight_g": "mass_g", "wt": "mass_g", "wt_g": "mass_g", "mass": "mass_g", "g": "mass_g",
    "preservation": "condition", "state": "condition",
    "fragmentation": "completeness", "size": "size_class", "mesh": "size_class", "sieve": "size_class",
    "comments": "note", "comment": "note", "notes": "note", "remarks": "note",
}  # fmt: skip
"""Other names that sheets give their columns. Offered, not taken: a weight may be in mg."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Header:
    at: dict[str, int]
    """Column -> its position."""
    width: int
    nameless: tuple[int, ...] = ()
    """Positions of columns without a name."""
    cells: list[str] = field(default_factory=list)
    """As written."""


def read_header(cells: list[str], source: SourceText, line: int, problems: ProblemList) -> Header | None:
    """None, with a problem, where the sheet cannot be read in the plain long form."""
    if len(cells) == 1 and any(mark in cells[0] for mark in ";\t,|"):
        _other_separator(cells[0], source, line, problems)
        return None
    at: dict[str, int] = {}
    is_sound = True
    strange = [cell.strip() for cell in cells if cell.strip() and _is_strange(_flat(cell))]
    missing = [c for c in NEEDED if c not in {_flat(cell) for cell in cells}]
    for position, cell in enumerate(cells):
        name = _flat(cell)
        if not name:
            continue
        if name in at:
            is_sound = False
            _tell(
                source,
                problems,
                line,
                cells,
                position,
                f"the column '{name}' stands in the header twice, expected once",
            )
        elif name in COLUMNS:
            at[name] = position
        else:
            meant = _OFTEN_MEANT.get(name, "") or near(name, COLUMNS)
            is_sound &= not meant
            if missing and not meant:
                continue
            _unknown_column(cell, meant, source, problems, line, cells, position)
    if missing:
        is_sound = False
        tell(
            source,
            problems,
            "N301",
            f"the header has no column {_quoted(missing)}, expected {', '.join(NEEDED)}"
            + (f"; not known are {', '.join(shown(cell) for cell in strange)}" if strange else ""),
            line=line,
            column=1,
            width=len(source.line(line)),
            help="name the columns in the first line: sample,taxon,part,count",
        )
    nameless = tuple(position for position, cell in enumerate(cells) if not cell.strip())
    return Header(at=at, width=len(cells), nameless=nameless, cells=cells) if is_sound else None


def _is_strange(name: str) -> bool:
    """True for a column that is neither known nor likely to be meant for a known one."""
    return name not in COLUMNS and name not in _OFTEN_MEANT and not near(name, COLUMNS)


def _unknown_column(
    cell: str, meant: str, source: SourceText, problems: ProblemList, line: int, cells: list[str], position: int
) -> None:
    """A column that may be meant for a known one is an error; of any other it is said that it is not read."""
    _tell(
        source,
        problems,
        line,
        cells,
        position,
        f"the column '{cell.strip()}' is not known"
        + (offered(meant) if meant else f" and is not read; known are {', '.join(COLUMNS)}"),
        help=f"write '{meant}'" if meant else "delete the column, or put what it says under 'note'",
        severity="error" if meant else "warning",
    )


def _other_separator(header: str, source: SourceText, line: int, problems: ProblemList) -> None:
    mark, name = next(
        (m, n) for m, n in ((";", "semicolons"), ("\t", "tabs"), (",", "commas"), ("|", "bars")) if m in header
    )
    wanted = "tabs" if source.path.lower().endswith(".tsv") else "commas"
    tell(
        source,
        problems,
        "N301",
        f"the columns are parted by {name}, expected {wanted}",
        line=line,
        column=header.index(mark) + 1,
        help="give the file the ending .tsv"
        if mark == "\t"
        else f"save the sheet again with {wanted} between the columns",
    )


def _tell(
    source: SourceText,
    problems: ProblemList,
    line: int,
    cells: list[str],
    position: int,
    message: str,
    *,
    help: str = "delete or rename one of them",
    severity: str = "error",
) -> None:
    text = source.line(line)
    column = text.find(cells[position], sum(len(cell) + 1 for cell in cells[:position])) + 1
    tell(
        source,
        problems,
        "N301",
        message,
        line=line,
        column=max(0, column),
        width=len(cells[position]),
        help=help,
        severity=severity,
    )


def _flat(cell: str) -> str:
    return "_".join(cell.lower().split())


def _quoted(words: list[str]) -> str:
    return " or ".join(f"'{word}'" for word in words)
