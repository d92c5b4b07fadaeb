"""What leads a reader from the text to the tables and figures in which the numbers of it stand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from narrate.documents.blocks import Figure, Table
from narrate.documents.inline import literal
from narrate.documents.raw_counts import led_to_sheets, sheets
from narrate.model.edition import Edition
from narrate.model.ids import Subject
from narrate.model.narrative import Section
from narrate.model.report_blocks import arranged

MOST_NAMED = 12
"""Samples of one context that are named; of more the number is given."""


def is_shown(edition: Edition, block: str) -> bool:
    """Whether the block stands in the section, so that a text may lead to it."""
    return any(one.block == block for one in arranged(edition.project.report_blocks))


def is_section(edition: Edition, section: Section, id: str) -> bool:
    """Whether a section of a report's narrative is the one of an id: files of drafts keep its heading alone."""
    audience = edition.packs.audiences.get("report")
    heading = audience.headings.get(id) if audience is not None else None
    return section.id == id or (bool(section.heading) and section.heading == heading)


def leads_of(edition: Edition, drawn: Sequence[Figure], tables: Sequence[Table]) -> Mapping[str, str]:
    """Id of a context -> its samples, and the table and figure in which it stands; empty where nothing does."""
    table_of = {id: table.anchor for table in tables for id in table.columns[2:]}
    has_density = any(figure.anchor == "density" for figure in drawn)
    register = " ({register})" if is_shown(edition, "register") else ""
    planned = sheets(edition) if is_shown(edition, "raw_counts") else ()
    found: dict[str, str] = {}
    for context in edition.project.contexts:
        samples = [literal(sample.id) for sample in edition.project.samples_of(context.id)]
        listed = ", ".join(samples) if len(samples) <= MOST_NAMED else f"{len(samples):,} of them"
        parts = [f"{'Sample' if len(samples) == 1 else 'Samples'}: {listed}{register}."] if samples else []
        if literal(context.id) in table_of:
            parts.append(f"Counts: {{{table_of[literal(context.id)]}}}.")
        if written := [sheet for sheet in planned if context.id in sheet.contexts]:
            parts.append(f"As written: {led_to_sheets(written)}.")
        measured = edition.findings.subjects.get(Subject(level="context", id=context.id))
        density = measured.measurements.get("density") if measured else None
        if has_density and density is not None and density.value is not None:
            parts.append("Items per litre: {density}.")
        found[context.id] = " ".join(parts)
    return found


def led_to(drawn: Sequence[Figure], tables: Sequence[Table], wood: Table | None) -> str:
    """Sentences that say where the numbers of the results stand."""
    held = {figure.anchor for figure in drawn}
    parts: list[str] = []
    if "composition" in held:
        parts.append("{composition} shows what was found over the whole dig.")
    if "density" in held:
        parts.append("{density} sets the contexts side by side by items per litre.")
    if tables:
        first, last = tables[0].anchor, tables[-1].anchor
        where = f"{{{first}}}" if first == last else f"{{{first}}} to {{{last}}}"
        parts.append(f"The counts by context stand in {where}" + (", those of wood in {wood}." if wood else "."))
    elif wood:
        parts.append("The counts of wood stand in {wood}.")
    return " ".join(parts)


def seen_in(photographs: Sequence[Figure]) -> str:
    """'Pictures: Figure 3, Figure 4.'; empty where there is none."""
    where = ", ".join(f"{{{figure.anchor}}}" for figure in photographs)
    return f"{'Picture' if len(photographs) == 1 else 'Pictures'}: {where}." if where else ""
