"""A laboratory's own file taken in: its grids, its layout (proposed, or as an analyst left it), and what it holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from narrate.model.counts import CountRow
from narrate.model.grids import Grid
from narrate.model.layouts import Layout, Table
from narrate.model.packs import Packs
from narrate.model.sampling import Sample
from narrate.problems import Place, Problem, ProblemList
from narrate.reading.files import decoded
from narrate.reading.intake.brackets_by_totals import with_brackets_by_totals
from narrate.reading.intake.code_tables import read_code_table
from narrate.reading.intake.default_parts import parts_taken
from narrate.reading.intake.finds import read_finds
from narrate.reading.intake.grids import grids_of_file
from narrate.reading.intake.layout_file import read_layout
from narrate.reading.intake.layout_guess import guess_layout
from narrate.reading.intake.layout_picture import picture
from narrate.reading.intake.layout_read import LaboratorySheet, read_by_layout
from narrate.reading.intake.layout_written import layout_text
from narrate.reading.intake.left_out_checked import tell_left_out
from narrate.reading.intake.nothing_read import what_is_wanting
from narrate.reading.intake.said import Said
from narrate.reading.intake.sheet_finds import SheetFinds
from narrate.reading.intake.told import Told
from narrate.reading.intake.words_left_out import left_out_of
from narrate.reading.intake.written_names import NameReader
from narrate.reading.layout_beside import LAYOUT_ENDING, layout_path
from narrate.reading.taxa import Identifier


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenIn:
    """What intake made of one file."""

    layout: Layout | None = None
    text: str = ""
    """The layout as YAML, to be written beside the sheet."""
    is_given: bool = False
    """The layout was there already, and was obeyed."""
    pictures: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()
    """What of the tables and beside them is not read, with its words and the reason."""
    rows: tuple[CountRow, ...] = ()
    facts: Mapping[str, Mapping[str, list[Said]]] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()


def name_reader(
    packs: Packs, given: Mapping[str, str] | None = None, identifier: Identifier | None = None
) -> NameReader:
    return NameReader(
        packs=packs, identifier=identifier or Identifier(packs.taxa, packs.taxon_lookup), given=given or {}
    )


def take_in(sheet: Path, packs: Packs, *, shown_path: str = "", codes: Path | None = None) -> TakenIn:
    """
    Reads a sheet, with the layout beside it or with one that is worked out. Writes nothing.

    codes:  a list of what its codes mean; those in use are explained in a layout that is worked out.
    """
    problems = ProblemList()
    path = shown_path or sheet.name
    grids = grids_of_file(sheet, path, problems)
    if not grids:
        return TakenIn(problems=problems.sorted())
    beside = layout_path(sheet)
    doubts: tuple[str, ...] = ()
    told = Told()
    ready: dict[int, SheetFinds] = {}
    explained = _explained(codes, grids, packs, problems) if codes is not None else {}
    if beside is not None:
        layout = layout_beside(beside, str(Path(path).with_name(beside.name)), problems)
        text = ""
        if layout is None:
            return TakenIn(problems=problems.sorted(), is_given=True)
        missing = [f"{code}: {name}" for code, name in explained.items() if code not in layout.names]
        if missing:
            listed = "; ".join(missing)
            doubts = (f"the layout is yours and was left as it is; add the codes under 'names' in it: {listed}",)
    else:
        proposal = guess_layout(grids, name_reader(packs, explained))
        layout, doubts = proposal.layout, proposal.doubts
        if explained and codes is not None:
            layout = replace(layout, names={**explained, **layout.names})
            said = f"{codes.name} says what {len(explained)} codes mean; they stand under 'names' in the layout"
            doubts = (said, *doubts)
        for one in proposal.disagreements:
            problems.warning(one.place, one.code, one.message, help=one.help)
        if not layout.tables:
            wanting = what_is_wanting(grids, name_reader(packs, explained))
            of_sheets = (*filter(None, [wanting]), *(one for one in layout.left_out if "nothing in it" not in one))
            _tell_nothing_read(Place(path=path), of_sheets, is_nearly=bool(wanting), problems=problems)
            return TakenIn(problems=problems.sorted())
        layout, of_brackets = with_brackets_by_totals(
            layout, grids, lambda one, of_it: read_by_layout(grids, one, name_reader(packs, one.names), of_it)
        )
        doubts = (*doubts, *of_brackets)
        layout, ready = with_parts(layout, grids, packs, told)
        text = layout_text(layout, sheet.name)
    names = name_reader(packs, layout.names)
    read = read_by_layout(grids, layout, names, problems, told=told, ready=ready)
    by_sheet = {grid.sheet: grid for grid in grids}
    unchecked = {id(one.table): one.finds.not_checked for one in read.read}
    pictures = tuple(
        picture(by_sheet.get(table.sheet, grids[0]), table, unchecked.get(id(table)))
        for table in layout.tables
        if table.sheet in by_sheet or len(grids) == 1
    )
    return TakenIn(
        layout=layout,
        text=text,
        is_given=beside is not None,
        pictures=pictures,
        doubts=doubts,
        left_out=left_out_of(grids, layout),
        rows=tuple(read.rows),
        facts=read.facts,
        problems=problems.sorted(),
    )


def _tell_nothing_read(place: Place, said: tuple[str, ...], *, is_nearly: bool, problems: ProblemList) -> None:
    by_hand = f"write a layout by hand as {Path(place.path).name}{LAYOUT_ENDING}; DEVELOPERS.md has the form, with an example"
    problems.error(
        place,
        "N311",
        "nothing in the file reads as a table of counts or of samples, expected names of plants beside or above "
        "counts, and the samples that these are of" + "".join(f"; {one}" for one in said),
        help=f"write what is wanting into a copy of the sheet and take that in, or {by_hand}" if is_nearly else by_hand,
    )


def _explained(codes: Path, grids: tuple[Grid, ...], packs: Packs, problems: ProblemList) -> dict[str, str]:
    """The codes of a list that the sheet uses."""
    table = read_code_table(codes, name_reader(packs), problems)
    used = table.used_in(grids)
    if table.names and not used:
        problems.error(
            Place(path=table.path),
            "N401",
            f"none of the {len(table.names)} codes stands in the sheet, expected some of "
            f"{', '.join(list(table.names)[:4])}",
            help="look whether the list belongs to this sheet",
        )
    return used


def layout_beside(path: Path, shown_path: str, problems: ProblemList) -> Layout | None:
    """A layout as it lies beside its sheet; None, with problems, where it cannot be obeyed."""
    try:
        content = path.read_bytes()
    except OSError as fault:
        problems.error(
            Place(path=shown_path), "N311", f"the layout cannot be opened ({fault.strerror}), expected a text file"
        )
        return None
    source = decoded(shown_path, content[:5_000_000], problems)
    return read_layout(source, problems) if source is not None else None


def with_parts(
    layout: Layout, grids: tuple[Grid, ...], packs: Packs, told: Told
) -> tuple[Layout, dict[int, SheetFinds]]:
    """
    The layout with the parts that are taken where the sheet names none, so that the analyst sees and can change them.

    Gives also the finds that were read to see it, by the number of the table: a large sheet is read once.

    Grain of cereals, kernels of maize, shell of nuts, wood of trees in sheets of charcoal, seed of all else: common
    practice in lists that name no part, no source.
    """
    names = name_reader(packs, layout.names)
    by_sheet = {grid.sheet: grid for grid in grids}
    tables: list[Table] = []
    ready: dict[int, SheetFinds] = {}
    for table in layout.tables:
        grid = by_sheet.get(table.sheet)
        if grid is None or table.shape == "records":
            tables.append(table)
            continue
        parts = parts_taken(grid, table)
        probe = replace(table, parts={**{key: f"?{key}" for key in parts}, **table.parts})
        finds = read_finds(grid, probe, layout, names, told)
        asked = {part.removeprefix("?") for part in finds.missing_parts}
        ready[len(tables)] = _with_parts_taken(finds, parts)
        needed = {key: part for key, part in parts.items() if key in asked}
        tables.append(replace(table, parts={**table.parts, **needed}))
    return replace(layout, tables=tuple(tables)), ready


def _with_parts_taken(finds: SheetFinds, parts: Mapping[str, str]) -> SheetFinds:
    """The same with the parts for which keys such as '?any' stand."""
    missing: dict[str, int] = {}
    for key, number in finds.missing_parts.items():
        part = parts.get(key.removeprefix("?"), key)
        missing[part] = missing.get(part, 0) + number
    taken = {f"?{key}": part for key, part in parts.items()}
    known = [replace(find, part=taken[find.part]) if find.part in taken else find for find in finds.finds]
    return replace(finds, finds=known, missing_parts=missing)


def read_laboratory_sheet(
    root: Path, path: str, packs: Packs, identifier: Identifier, samples: Mapping[str, Sample],
    sample_ids: frozenset[str], problems: ProblemList,
) -> tuple[list[CountRow], LaboratorySheet | None]:  # fmt: skip
    """Rows of a sheet of a project that has a layout beside it."""
    sheet = root / path
    beside = layout_path(sheet)
    if beside is None:
        return [], None
    shown_layout = str(Path(path).with_name(beside.name).as_posix())
    layout = layout_beside(beside, shown_layout, problems)
    grids = grids_of_file(sheet, path, problems) if layout is not None else ()
    if layout is None or not grids:
        return [], None
    names = name_reader(packs, layout.names, identifier)
    read = read_by_layout(grids, layout, names, problems, samples=samples, sample_ids=sample_ids)
    tell_left_out(grids, layout, names, problems)
    return read.rows, read
