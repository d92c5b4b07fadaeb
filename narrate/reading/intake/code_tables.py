"""A list of codes in a file of its own: what each code of a sheet means, and which of them the sheet uses."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

from narrate.model.grids import Grid
from narrate.problems import Place, ProblemList
from narrate.reading.intake.code_sheets import lists_of_codes
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.grids import grids_of_file
from narrate.reading.intake.written_names import NameReader


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeTable:
    """Codes with their names, and parts where the list gives them."""

    path: str
    names: dict[str, str] = field(default_factory=dict)

    def used_in(self, grids: Iterable[Grid]) -> dict[str, str]:
        """The codes that stand in a sheet."""
        texts = {cell.text for grid in grids for cell in grid.cells.values()}
        return {code: name for code, name in self.names.items() if code in texts and code != name}


def read_code_table(file: Path, names: NameReader, problems: ProblemList) -> CodeTable:
    """The codes of a file; one that stands for two names is told and explains nothing."""
    path = file.name
    found: dict[str, tuple[str, Place]] = {}
    doubtful = set()
    grids = grids_of_file(file, path, problems)
    for grid in grids:
        for code, name, row in lists_of_codes(Look.of(grid, names)):
            place = grid.place(row, 0)
            before = found.setdefault(code, (name, place))
            if before[0] != name:
                doubtful.add(code)
                problems.error(
                    place, "N401",
                    f"the code '{code}' stands for '{name}' here and for '{before[0]}' in row {before[1].line}; it is "
                    "not used, expected one name for each code",
                    help="take one of them out",
                )  # fmt: skip
    if grids and not found:
        problems.error(
            Place(path=path), "N401",
            "nothing in the file reads as a list of codes, expected a column of codes and a column of names of plants",
            help="head the columns 'code' and 'name', and give each code a row of its own",
        )  # fmt: skip
    return CodeTable(path=path, names={code: name for code, (name, _) in found.items() if code not in doubtful})
