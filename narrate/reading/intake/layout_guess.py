"""Works out how a file is laid out: every sheet, every table in it, either way round; and says what it leaves out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from narrate.model.grids import Grid
from narrate.model.layouts import Layout, Marks
from narrate.problems import Place
from narrate.reading.intake.code_columns import conditions_unknown
from narrate.reading.intake.code_sheets import codes_beside, codes_in_prose, codes_in_use
from narrate.reading.intake.coded_names import coded_names
from narrate.reading.intake.columns_summed import with_columns_summed
from narrate.reading.intake.depths import depths_as_notes
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.finds_in_lists import with_finds_of_list
from narrate.reading.intake.fractions_of_flots import with_fractions_said
from narrate.reading.intake.ids_made_dates import mended_ids
from narrate.reading.intake.ids_of_sheets import ids_listed, with_known_ids
from narrate.reading.intake.joined_sheets import Joined, joined_sheets, without_key
from narrate.reading.intake.keys_of_file import Disagreement, keys_of_file, without_keys
from narrate.reading.intake.layout_told import (
    tell_hidden,
    tell_litres,
    tell_no_soil,
    tell_phase_codes,
    tell_two_volumes,
)
from narrate.reading.intake.left_over import left_over
from narrate.reading.intake.lists_of_presence import is_listed
from narrate.reading.intake.lone_numbers import without_lone_numbers
from narrate.reading.intake.notes_that_part import tell_notes_that_part
from narrate.reading.intake.phases_over_blanks import phases_over_blanks
from narrate.reading.intake.records_guess import guess_records
from narrate.reading.intake.scales_of_shares import with_scales_of_shares
from narrate.reading.intake.sections_of_samples import with_sections_of_samples
from narrate.reading.intake.sheets_again import without_repeats
from narrate.reading.intake.short_words import said_under, short_words, states_said, with_pieces_said
from narrate.reading.intake.sizes_in_titles import with_sizes_of_titles
from narrate.reading.intake.states_by_key import names_by_key, parts_by_key
from narrate.reading.intake.subsets import with_subsets
from narrate.reading.intake.tables_by_formulas import without_worked_out
from narrate.reading.intake.tables_of_sheet import Found, table_of, tables_of, whole
from narrate.reading.intake.tables_summed import with_tables_summed
from narrate.reading.intake.tallies import tally_texts
from narrate.reading.intake.titles_say_phase import tell_phases_of_titles
from narrate.reading.intake.values_by_field import is_list_of_values, values_by_field
from narrate.reading.intake.volume_units import with_units_said
from narrate.reading.intake.volumes_apart import tell_volumes_of_finds, with_volumes_of_finds
from narrate.reading.intake.weight_units import tell_grams
from narrate.reading.intake.written_names import NameReader


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """A layout as worked out, with what an analyst should know of it."""

    layout: Layout
    doubts: tuple[str, ...] = ()
    explained: int = 0
    """Cells of counts that the layout gives a name and a sample."""
    disagreements: tuple[Disagreement, ...] = ()
    """Signs that the file explains in two ways, and sums that are none."""




def guess_layout(grids: Iterable[Grid], names: NameReader) -> Proposal:
    """The layout of a file; without tables where nothing reads as one."""
    found = Found()
    grids = tuple(grids)
    keys = keys_of_file(grids)
    grids = tuple(without_keys(grid, keys) for grid in grids)
    names = names.knowing(short=short_words(grids, names))
    signs = {id(g): frozenset(keys.marks[g.sheet].key) | yes_and_no(g) | tally_texts(g) for g in grids}
    pairs = [(grid, Look.of(grid, names, signs[id(grid)])) for grid in grids]
    codes, sheets_of_codes = codes_in_use(look for _, look in pairs)
    codes = {**codes_in_prose(look for _, look in pairs), **codes}
    for n, (grid, look) in enumerate(pairs):
        beside, rows = codes_beside(look) if grid.sheet not in sheets_of_codes else ({}, set())
        if beside:
            codes = {**beside, **codes}
            kept = replace(grid, cells={at: cell for at, cell in grid.cells.items() if at[0] not in rows})
            pairs[n] = (kept, Look.of(kept, names, look.signs))
            first, last = min(rows) + 1, max(rows) + 1
            found.doubts.append(f"rows {first} to {last} say what {len(beside)} codes mean; see 'names' in the layout")
    codes = {**coded_names(look for _, look in pairs), **codes}
    if codes:
        names = names.knowing(given={**codes, **names.given})
        pairs = [(grid, Look.of(grid, names, look.signs)) for grid, look in pairs]
    joined = joined_sheets([look for _, look in pairs]) or Joined()
    if joined.grid is not None:
        codes = {**{code: name for code, name in codes.items() if code not in joined.parts}, **joined.names}
        looks = [_of_joined(look, joined) for _, look in pairs if look.grid.sheet not in joined.lists]
        pairs = [(look.grid, look) for look in looks]
        found.doubts += joined.doubts
    counted: dict[int, int] = {}
    kept_back: set[int] = set()
    of_sheets: list[tuple[Grid, Found]] = []
    of_values = {grid.sheet for grid in grids if is_list_of_values(grid, values_by_field(grid, grids), grids)}
    for grid, look in sorted(pairs, key=lambda pair: pair[0].is_hidden):
        own = Found()
        counted[id(grid)] = 0 if grid.sheet in of_values else tables_of(look, keys.marks[grid.sheet], own)
        if grid.sheet in sheets_of_codes and own.tables and all(map(is_listed, own.tables)):
            own, counted[id(grid)] = Found(), 0
        is_beside_others = any(counted.get(id(other)) for other, _ in pairs if not other.is_hidden)
        if grid.is_hidden and counted[id(grid)] and is_beside_others:
            kept_back.add(id(grid))
        else:
            of_sheets.append((grid, own))
    for own in without_worked_out(of_sheets):
        found.take(own)
    has_counts = any(counted.values())
    for grid, look in pairs:
        where = f"sheet {grid.sheet}" if grid.sheet else grid.path
        if counted[id(grid)]:
            if id(grid) in kept_back:
                found.doubts.append(
                    f"{where} is hidden in the workbook and holds counts, which are not read beside those of the "
                    "sheets that are shown; show it in the spreadsheet and work the layout out anew if it counts"
                )
                found.left_out.append(f"{where}: it is hidden in the workbook")
            elif grid.is_hidden:
                found.doubts.append(f"{where} is hidden in the workbook, and its counts are read")
            continue
        if grid.sheet in sheets_of_codes:
            found.doubts.append(f"{where} says what {len(codes)} codes mean; they stand under 'names' in the layout")
            if unknown := conditions_unknown(look):
                said = ", ".join(map(repr, unknown[:6]))
                found.doubts.append(
                    f"DOUBTFUL: {where} says {said} of the condition of codes, which nobody knows; their finds are "
                    "taken as the table says: mend the names in the layout"
                )
            continue
        if grid.sheet in of_values:
            found.left_out.append(f"{where}: it says what is meant by the values in other sheets")
            continue
        records = guess_records(look, whole(look))
        if records is not None:
            of_samples = with_sections_of_samples(look, table_of(grid, records, Marks(), "records"))
            found.tables.append(with_finds_of_list(look, of_samples, keys.marks[grid.sheet]))
            found.doubts.extend(left_over(look, found.tables[-1:]))
            continue
        if has_counts or grid.sheet:
            found.left_out.append(f"{where}: nothing in it reads as counts or as records of samples")
    summed = with_tables_summed(found.tables, {grid.sheet: grid for grid in grids})
    found.tables = summed.tables
    found.doubts.extend(summed.doubts)
    found.left_out.extend(summed.left_out)
    found.tables = with_columns_summed(found.tables, {grid.sheet: grid for grid in grids}, found.doubts, summed.wrong)
    found.tables = without_repeats(found.tables, {grid.sheet: grid for grid in grids}, found.doubts, found.left_out)
    found.tables = without_lone_numbers(
        found.tables, {grid.sheet: grid for grid in grids}, found.doubts, found.left_out
    )
    listed = ids_listed(found.tables, {grid.sheet: grid for grid in grids})
    for table in found.tables:
        mend, doubts = mended_ids({look.grid.sheet: look for _, look in pairs}[table.sheet], table, listed)
        found.mend.update(mend)
        found.doubts.extend(doubts)
    found.tables = with_known_ids(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    tell_hidden(found.tables, found.doubts, [grid for grid, _ in pairs])
    tell_litres(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    tell_no_soil(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    depths_as_notes(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    phases_over_blanks(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    tell_two_volumes(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    tell_phase_codes(found.tables, found.doubts, [grid for grid, _ in pairs])
    tell_phases_of_titles(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    found.tables = with_sizes_of_titles(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    with_subsets(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    with_volumes_of_finds(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    tell_volumes_of_finds(found.tables, found.doubts)
    with_units_said(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    tell_notes_that_part(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    tell_grams(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    with_scales_of_shares(found.tables, {grid.sheet: grid for grid in grids}, found.doubts)
    by_sheet = {grid.sheet: grid for grid, _ in pairs}
    order = {grid.sheet: n for n, (grid, _) in enumerate(pairs)}
    found.tables.sort(key=lambda table: (order[table.sheet], min(table.rows, default=0), min(table.columns, default=0)))
    tables = [replace(t, parts=said_under("part", [t], names.short.parts, by_sheet)) for t in found.tables]
    tables = with_fractions_said(tables, by_sheet, names.short.fractions)
    tables = with_pieces_said(tables, by_sheet, names.short.completeness)
    if joined.grid is not None:
        of_finds = [t for t in tables if t.sheet == joined.finds]
        known = {id(t): replace(t, parts={**t.parts, **joined.parts}, ids=joined.ids) for t in of_finds}
        tables = [known.get(id(t), t) for t in tables]
    by_key = [parts_by_key(table, by_sheet[table.sheet], names) for table in tables]
    tables = [table for table, _ in by_key]
    of_parts = {text: state for _, said in by_key for text, state in said.items()}
    codes = {**names_by_key(tables, by_sheet, names), **codes}
    layout = Layout(
        tables=tuple(tables),
        left_out=tuple(found.left_out),
        names=codes,
        conditions={**of_parts, **states_said(found.tables, names.short.conditions, by_sheet, found.doubts)},
        mend=found.mend,
        place=Place(path=pairs[0][0].path if pairs else ""),
    )
    return Proposal(
        layout=layout,
        doubts=tuple(dict.fromkeys(found.doubts)),
        explained=found.explained,
        disagreements=(*keys.disagreements, *summed.wrong),
    )


def _of_joined(look: Look, joined: Joined) -> Look:
    """A sheet of joined ones as it is guessed at: the finds with words for keys, the samples by their ids."""
    if look.grid.sheet == joined.finds and joined.grid is not None:
        return Look.of(joined.grid, look.names, look.signs)
    return without_key(look, joined)


def yes_and_no(grid: Grid) -> frozenset[str]:
    """The words 'yes' and 'no' as this grid writes them, where a good part of its cells holds them."""
    given = [cell.text for cell in grid.cells.values() if cell.text.lower() in ("yes", "no")]
    is_answer = {"yes", "no"} <= {text.lower() for text in given}
    return frozenset(given) if is_answer and len(given) >= 6 and len(given) >= 0.3 * len(grid.cells) else frozenset()
























