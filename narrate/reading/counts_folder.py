"""counts/: plain sheets, and laboratories' own sheets that have a layout beside them."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from narrate.model.counts import CountRow
from narrate.model.packs import Packs
from narrate.problems import Place, Problem, ProblemList
from narrate.reading.count_columns import Known
from narrate.reading.count_sheets import read_count_sheet
from narrate.reading.files import SHEET_BYTES, is_own_file, listed, read_text
from narrate.reading.layout_beside import WORKBOOK_ENDINGS, layout_path
from narrate.reading.sheet_problems import Unread
from narrate.reading.sheet_says import SheetSays
from narrate.reading.source_text import SourceText

FOLDER = "counts"
PLAIN = (".csv", ".tsv")
TEXT_BY_LAYOUT = (".txt", ".tab")
NOT_READ = (".xls", ".ods", ".numbers", ".xlsb")
_SAYS_INTAKE = ("the header has no column", "the columns are parted by", "is not UTF-8")


def read_counts(
    root: Path,
    packs: Packs,
    known: Known,
    sources: dict[str, SourceText],
    unread: Unread,
    problems: ProblemList,
    sheet_says: SheetSays,
) -> tuple[CountRow, ...]:
    """All rows of all sheets, in the order of their paths; what sheets say of samples goes into `sheet_says`."""
    rows: list[CountRow] = []
    paths = listed(root, FOLDER, (*PLAIN, *TEXT_BY_LAYOUT, *WORKBOOK_ENDINGS), problems)
    _tell_other_workbooks(root, problems)
    may_be_sterile = known.has_unread_records and bool(listed(root, "records", (".yaml", ".yml"), ProblemList()))
    may_be_without = may_be_sterile or any(sample.sterile for sample in known.samples.values())
    if not paths and not may_be_without:
        unread.samples.update(known.samples)
        problems.error(
            Place(path=FOLDER),
            "N101",
            f"there is no file {FOLDER}/*.csv in the folder and no sample is sterile, expected at least one of them",
            help="put a count sheet there, take a laboratory's own sheet in with 'narrate intake SHEET --project "
            "FOLDER', or add 'sterile: true' to samples in which nothing was found",
        )
    for path in paths:
        if layout_path(root / path) is not None:
            rows += _by_layout(root, path, packs, known, unread, problems, sheet_says)
        elif path.lower().endswith(PLAIN):
            rows += _plain(root, path, known, sources, unread, problems)
        elif path.lower().endswith(WORKBOOK_ENDINGS):
            unread.sheets.add(path)
            problems.error(
                Place(path=path),
                "N311",
                "the workbook has no layout beside it, and nothing in it is read; expected "
                f"{Path(path).name}.layout.yaml",
                help=f"run 'narrate intake {path}', which works out how the sheet is laid out",
            )
        else:
            unread.sheets.add(path)
            problems.error(
                Place(path=path),
                "N311",
                "the text file has no layout beside it, and nothing in it is read; expected "
                f"{Path(path).name}.layout.yaml",
                help=f"run 'narrate intake {path}', which works out how the sheet is laid out",
            )
    return tuple(rows)


def _by_layout(
    root: Path, path: str, packs: Packs, known: Known, unread: Unread, problems: ProblemList, sheet_says: SheetSays
) -> list[CountRow]:
    # Loaded when a sheet has a layout: it is a fifth of narrate, and most projects have none.
    from narrate.reading.intake.take_in import read_laboratory_sheet

    layout = layout_path(root / path)
    if not is_own_file(root, root / path, problems) or (
        layout is not None and not is_own_file(root, layout, problems)
    ):
        unread.sheets.add(path)
        return []
    before = len(problems.found)
    samples = {str(id): sample for id, sample in known.samples.items()}
    rows, sheet = read_laboratory_sheet(root, path, packs, known.identifier, samples, known.sample_ids, problems)
    problems.found[before:] = [p for p in problems.found[before:] if not _is_held_back(p, known, unread)]
    if sheet is not None:
        sheet_says.take(sheet.facts)
    if sheet is None or any(p.severity == "error" for p in problems.found[before:]):
        unread.sheets.add(path)
    return rows


def _is_held_back(problem: Problem, known: Known, unread: Unread) -> bool:
    """True for what would be told of a sample or a name that may be known in a file that could not be read."""
    kept: set[str] | None = None
    if known.has_unread_records and problem.code == "N304":
        kept = unread.undescribed
    elif known.has_unread_regions and problem.code == "N401":
        kept = unread.names
    named = re.search(r"\b(?:sample|taxon) (?:'(.*?)'|(\S+))", problem.message) if kept is not None else None
    if kept is None or named is None:
        return False
    kept.add(named[1] or named[2])
    return True


def _plain(
    root: Path, path: str, known: Known, sources: dict[str, SourceText], unread: Unread, problems: ProblemList
) -> list[CountRow]:
    before = len(problems.found)
    source = read_text(root, path, problems, at_most_bytes=SHEET_BYTES)
    rows: list[CountRow] = []
    if source is None:
        unread.sheets.add(path)
    else:
        sources[source.path] = source
        rows = read_count_sheet(source, known, problems, unread)
    for at in range(before, len(problems.found)):
        problem = problems.found[at]
        if problem.severity == "error" and any(words in problem.message for words in _SAYS_INTAKE):
            more = f"or run 'narrate intake {path}' if the sheet is a laboratory's own"
            problems.found[at] = replace(problem, help="; ".join(filter(None, [problem.help, more])))
    return rows


def _tell_other_workbooks(root: Path, problems: ProblemList) -> None:
    """A workbook of another kind beside the sheets is not read, and nobody should think that it was."""
    for path in listed(root, FOLDER, NOT_READ, problems):
        problems.warning(
            Place(path=path),
            "N102",
            "workbooks of this kind are not read, and nothing in it is in any figure; expected .xlsx, .csv or .tsv",
            help="save it as XLSX and run 'narrate intake' on that",
        )
