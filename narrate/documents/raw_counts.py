"""The count sheets in print: plants down, samples and size classes across, some contexts of one phase at a time."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from narrate.documents.blocks import Block, Heading, Paragraph, Table
from narrate.documents.inline import anchor_of, literal
from narrate.documents.latin import genera_of, name_with_latin
from narrate.model.counts import CountRow
from narrate.model.edition import Edition
from narrate.model.ids import ContextId, SampleId

MOST_COLUMNS = 12
"""Columns of counts that stand side by side on a landscape page in letters of 8 points."""

NO_CLASS = "no\u00a0class"
Find = tuple[str, str, str, str, str]
"""Name as written, part, condition, completeness, fraction."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """What stands in one table: samples of contexts of one phase."""

    phase: str
    """Its name."""
    contexts: tuple[ContextId, ...]
    columns: tuple[tuple[SampleId, str], ...]
    """Sample and size class; '' for what has none."""
    anchor: str


def sheets(edition: Edition) -> tuple[Sheet, ...]:
    """The tables of counts as written, in the order of phases, contexts and samples; no context is torn that fits."""
    project = edition.project
    classes = _classes(project.counts)
    known = {phase.id for phase in project.phases}
    groups = [(p.id, p.name, [c for c in project.contexts if c.phase == p.id]) for p in project.phases]
    groups.append(("", "contexts without a phase", [c for c in project.contexts if c.phase not in known]))  # type: ignore[arg-type]
    found: list[Sheet] = []
    for id, name, contexts in groups:
        pieces = [
            (context.id, piece)
            for context in contexts
            for piece in _pieces([(s.id, classes[s.id]) for s in project.samples_of(context.id) if s.id in classes])
        ]
        for number, together in enumerate(_packed(pieces), start=1):
            found.append(
                Sheet(
                    phase=name,
                    contexts=tuple(dict.fromkeys(context for context, _ in together)),
                    columns=tuple(column for _, columns in together for column in columns),
                    anchor=anchor_of(f"raw-counts-{id}", number),
                )
            )
    return tuple(found)


def _classes(counts: Iterable[CountRow]) -> Mapping[SampleId, tuple[str, ...]]:
    """Size classes of each sample that has rows, largest first; those without a number, and none at all, come last."""
    found: dict[SampleId, dict[str, None]] = {}
    for row in counts:
        found.setdefault(row.sample, {})[row.size_class] = None

    def rank(size: str) -> tuple[float, str]:
        number = re.search(r"\d+(?:[.,]\d+)?", size)
        return (-float(number[0].replace(",", ".")) if number else 1.0, size)

    return {sample: tuple(sorted(sizes, key=rank)) for sample, sizes in found.items()}


Held = dict[Find, dict[str, list[CountRow]]]
"""The rows of a sample by find and size class."""
Columns = tuple[tuple[SampleId, str], ...]


def _pieces(samples: Sequence[tuple[SampleId, Sequence[str]]]) -> Iterator[Columns]:
    """The columns of one context, parted between samples where they are more than a page takes."""
    piece: Columns = ()
    for sample, sizes in samples:
        columns = tuple((sample, size) for size in sizes)
        if piece and len(piece) + len(columns) > MOST_COLUMNS:
            yield piece
            piece = ()
        piece += columns
    if piece:
        yield piece


def _packed(pieces: Sequence[tuple[ContextId, Columns]]) -> Iterator[list[tuple[ContextId, Columns]]]:
    """Neighbours share a table as long as it has room for the whole of each."""
    together: list[tuple[ContextId, Columns]] = []
    for context, columns in pieces:
        if together and sum(len(held) for _, held in together) + len(columns) > MOST_COLUMNS:
            yield together
            together = []
        together.append((context, columns))
    if together:
        yield together


def raw_counts(edition: Edition) -> Iterator[Block]:
    """The key, then the tables of each phase under its heading; a plant has a row only in tables that hold it."""
    project = edition.project
    planned = sheets(edition)
    told = [sheet.phase for sheet in planned]
    held: dict[SampleId, Held] = {}
    for row in project.counts:
        find = (row.identification.written, row.part, row.condition, row.completeness, row.fraction)
        held.setdefault(row.sample, {}).setdefault(find, {}).setdefault(row.size_class, []).append(row)
    names: dict[str, str] = {}
    genera = genera_of(edition.packs)
    for number, sheet in enumerate(planned):
        if number == 0:
            yield Paragraph(text=_key(edition, held), kind="pointer")
        if number == told.index(sheet.phase):
            yield Heading(level=3, text=literal(sheet.phase[:1].upper() + sheet.phase[1:]))
        for written in {find[0] for sample, _ in sheet.columns for find in held[sample]}:
            if written not in names:
                names[written] = name_with_latin(written, genera)
        yield _table(sheet, held, names)


def _key(edition: Edition, held: Mapping[SampleId, object]) -> str:
    empty = [sample.id for sample in edition.project.samples if sample.id not in held]
    none = f" {', '.join(map(literal, empty))}: no rows in the sheets, and no column here." if empty else ""
    return (
        "Counts as written, of the share that was sorted; nothing is scaled up. Each column is a size class of a "
        "sample, as the sheets name it. 'heavy' is said of the heavy fraction, all else is of the light one. A mass "
        "stands in brackets after its count, or alone where nothing was counted. Several entries of one kind are "
        "parted by semicolons. "
        f"–: no entry in the sheet. [1]: a note of the sheet, below the table.{none}"
    )


def _table(sheet: Sheet, held: Mapping[SampleId, Held], names: Mapping[str, str]) -> Table:
    finds = {find for sample, _ in sheet.columns for find in held[sample]}
    notes: dict[str, int] = {}
    rows = []
    for find in sorted(finds, key=_place):
        written, part, condition, completeness, fraction = find
        state = condition + ("" if completeness == "whole" else f", {completeness}")
        state += "" if fraction == "light" else f"; {fraction}"
        cells = []
        for sample, size in sheet.columns:
            entries = held[sample].get(find, {}).get(size, ())
            cells.append("; ".join(_entry(row, notes) for row in entries) or "–")
        rows.append((names[written], literal(part), literal(state), *map(literal, cells)))
    heads = [literal(f"{sample} {size or NO_CLASS}") for sample, size in sheet.columns]
    contexts = list(map(literal, sheet.contexts))
    named = " and ".join(part for part in (", ".join(contexts[:-1]), contexts[-1]) if part)
    noted = " ".join(f"[{number}] {literal(note.strip().rstrip('.'))}." for note, number in notes.items())
    return Table(
        caption=f"Counts by sample, as written: {literal(sheet.phase)}, {named}.",
        columns=("Name as written", "Part", "State", *heads),
        rows=tuple(rows),
        note=noted,
        anchor=sheet.anchor,
        numbers=tuple(range(3, 3 + len(sheet.columns))),
        is_dense=True,
        is_wide=True,
    )


def _place(find: Find) -> tuple[str, bool, Find]:
    """By name, what is in doubt right below what is not."""
    bare = re.sub(r"\bcf\. ", "", find[0])
    return bare.lower(), bare != find[0], find


def _entry(row: CountRow, notes: dict[str, int]) -> str:
    count, mass = row.count.written, "" if row.mass_g is None else f"{row.mass_g:g} g"
    text = f"{count} ({mass})" if count and mass else count or mass or "–"
    if not row.note.strip():
        return text
    return f"{text} [{notes.setdefault(' '.join(row.note.split()), len(notes) + 1)}]"


def led_to_sheets(found: Sequence[Sheet]) -> str:
    """'Table 8' or 'Table 8 to Table 12', as references; empty where there is none."""
    if not found:
        return ""
    first, last = found[0].anchor, found[-1].anchor
    return f"{{{first}}}" if first == last else f"{{{first}}} to {{{last}}}"
