"""Tables as the trade prints them: the sample register, and plants down with contexts across."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.documents.blocks import Table
from narrate.model.edition import Edition
from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.sampling import Sample

NOTED = "x"
"""Mark of a presence that was noted and not counted; its key stands in the note of the table."""


def sample_register(edition: Edition) -> Table:
    """One row a sample, sterile ones included."""
    contexts = {context.id: context for context in edition.project.contexts}
    rows = []
    for sample in edition.project.samples:
        context = contexts[sample.context]
        found = edition.findings.of(Subject(level="sample", id=sample.id))
        items = found.measurements["items"].value
        rows.append(
            (
                sample.id,
                context.id,
                context.kind,
                context.phase or "–",
                _litres(sample),
                sample.method or "not recorded",
                _shares(sample),
                "–" if items is None else f"{items:,.0f}",
            )
        )
    columns = ("Sample", "Context", "Kind", "Phase", "Litres", "Method", "Sorted in part", "Items counted")
    return Table(caption="Flotation samples.", columns=columns, rows=tuple(rows))


def counts_by_context(edition: Edition) -> Table:
    """
    Plants and parts down, contexts across, items as counted in the conditions that are ancient here.

    Pieces of wood, nutshell and rind are fragments: they stand in the table and are in no total.
    """
    project = edition.project
    ancient = edition.packs.words.preservations.get(project.preservation, ())
    contexts = [c.id for c in project.contexts]
    cells: dict[tuple[str, str], dict[str, str]] = {}
    for id in contexts:
        for tally in edition.findings.of(Subject(level="context", id=id)).tallies:
            if tally.condition in ancient:
                name = tally.taxon or tally.written
                cells.setdefault((name, tally.part), {})[id] = _cell(tally)
    rows = [
        (f"*{name}*", part, *(found.get(id, "–") for id in contexts)) for (name, part), found in sorted(cells.items())
    ]
    litres = ("Litres floated", "", *(_context_litres(edition, id) for id in contexts))
    note = f"Items as counted. {NOTED}: noted as present and not counted. –: none found. cf.: all of them are 'cf.'."
    return Table(
        caption="Charred plant remains by context.",
        columns=("Plant", "Part", *contexts),
        rows=(litres, *rows),
        note=note,
    )


def _cell(tally: Tally) -> str:
    number = f"{tally.counted:,}" if tally.counted else (NOTED if tally.is_noted else "")
    grams = f"{tally.mass_g:g} g" if tally.mass_g is not None and not tally.counted else ""
    return " ".join(part for part in (number or grams, "cf." if tally.only_cf else "") if part) or NOTED


def _context_litres(edition: Edition, id: str) -> str:
    litres = edition.findings.of(Subject(level="context", id=id)).litres
    return "not recorded" if litres is None else f"{litres:g}"


def _litres(sample: Sample) -> str:
    return "not recorded" if sample.volume_l is None else f"{sample.volume_l:g}"


def _shares(sample: Sample) -> str:
    parts: Sequence[str] = [f"{c.name}: {c.written}" for c in sample.size_classes if c.proportion_sorted < 1]
    return "; ".join(parts) or "no"
