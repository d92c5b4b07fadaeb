"""Tables as the trade prints them: the sample register, and plants down with contexts across."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from narrate.documents.abundance import key_of_classes, key_of_signs, signs_of_classes
from narrate.documents.blocks import Table
from narrate.documents.inline import anchor_of, literal
from narrate.documents.latin import name_with_latin
from narrate.documents.leads import is_shown
from narrate.documents.raw_counts import Sheet, led_to_sheets, sheets
from narrate.model.counts import CountRow
from narrate.model.edition import Edition
from narrate.model.findings import Tally
from narrate.model.ids import SITE, PartId, Subject
from narrate.model.plants import UNNAMED
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context

NOTED = "x"
"""Mark of a presence that was noted and not counted, in no class; its key stands in the note of the table."""
MOST_CONTEXTS = 10
"""Contexts that stand side by side on a landscape page; more go into a further table."""


def sample_register(edition: Edition) -> Table:
    """One row a sample, sterile ones included."""
    contexts = {context.id: context for context in edition.project.contexts}
    phases: dict[str | None, str | None] = {phase.id: phase.name for phase in edition.project.phases}
    rows = []
    for sample in edition.project.samples:
        context = contexts[sample.context]
        found = edition.findings.of(Subject(level="sample", id=sample.id))
        items = found.measurements["items"].value
        light = sample.light_fraction
        rows.append(
            (
                sample.id,
                context.id,
                context.kind,
                phases.get(context.phase, context.phase) or "–",
                _litres(sample),
                sample.method or "not recorded",
                "; ".join(f"{name} {mesh:g}" for name, mesh in sorted(sample.mesh_mm.items())) or "not recorded",
                "–" if light is None or light.mass_g is None else f"{light.mass_g:g}",
                shares(sample),
                _heavy(sample),
                "none" if sample.sterile else "–" if items is None else f"{items:,.0f}",
            )
        )
    columns = (
        "Sample", "Context", "Kind", "Phase", "Litres", "Method", "Mesh (mm)", "Light fraction\u00a0(g)",
        "Sorted in part", "Heavy fraction sorted", "Items counted",
    )  # fmt: skip
    note = "'none': looked through and nothing found; such samples count in every ubiquity. –: not recorded."
    return Table(
        caption="Flotation samples.",
        columns=columns,
        rows=tuple(tuple(map(literal, row)) for row in rows),
        note=note,
        anchor="register",
        numbers=(4, 7, 10),
        is_wide=True,
    )


def counts_by_context(edition: Edition) -> Iterator[Table]:
    """
    Plants and parts down, contexts across with totals and ubiquity, items as counted in the ancient conditions.

    One table a phase, in parts where the phase has many contexts; the total of the phase stands in its last part. The
    key of the signs stands below the first table, and the others lead to it.
    """
    project = edition.project
    known = {phase.id for phase in project.phases}
    groups: list[tuple[str, str, list[Context]]] = [
        (p.id, p.name, [c for c in project.contexts if c.phase == p.id]) for p in project.phases
    ]
    groups.append(("", "contexts without a phase", [c for c in project.contexts if c.phase not in known]))
    planned = sheets(edition) if is_shown(edition, "raw_counts") else ()
    sampled_of = {id: [c for c in contexts if project.samples_of(c.id)] for id, _, contexts in groups}
    tallied = {id: _tallied(edition, sampled) for id, sampled in sampled_of.items()}
    cells = (cell for lines in tallied.values() for line in lines.values() for cell in line.cells.values())
    has_states = any("; " in cell for cell in cells)
    first = next((anchor_of(f"counts-{id}", 1) for id, sampled in sampled_of.items() if sampled), "")
    for id, name, _ in groups:
        sampled, whole = sampled_of[id], tallied[id]
        tables = -(-len(sampled) // MOST_CONTEXTS)
        size = -(-len(sampled) // max(1, tables))
        chunks = [sampled[i : i + size] for i in range(0, len(sampled), size or 1)]
        for number, chunk in enumerate(chunks, start=1):
            part = f" ({number} of {len(chunks)})" if len(chunks) > 1 else ""
            anchor = anchor_of(f"counts-{id}", number)
            key = key_of_signs(NOTED, has_states=has_states) if anchor == first else f"Signs as in {{{first}}}. "
            yield _phase_table(edition, chunk, whole, number == len(chunks), f"{name}{part}", anchor, planned, key)


@dataclass(slots=True)
class _Line:
    """One plant and part over the contexts of a phase."""

    cells: dict[str, str]
    counted: int = 0
    is_noted: bool = False
    holders: set[str] = field(default_factory=set)
    """Samples that hold it, each once, whatever states of preservation it is in there."""
    mass_g: float = 0.0
    """Of what was weighed and not counted."""


def _tallied(edition: Edition, contexts: Sequence[Context]) -> dict[tuple[str, str], _Line]:
    ancient = edition.packs.words.preservations.get(edition.project.preservation, ())
    found: dict[tuple[str, str], _Line] = {}
    signs = signs_of_classes(edition)
    holders, names = _holders(edition)
    for context in contexts:
        for tally in edition.findings.of(Subject(level="context", id=context.id)).tallies:
            if tally.condition not in ancient:
                continue
            line = found.setdefault((tally.taxon or tally.written, tally.part), _Line(cells={}))
            cell = _cell(tally, signs.get((context.id, tally.taxon or tally.written, tally.part, tally.condition), ()))
            line.cells[context.id] = f"{line.cells[context.id]}; {cell}" if context.id in line.cells else cell
            line.counted += tally.counted
            line.is_noted |= tally.is_noted
            line.mass_g += tally.mass_g if tally.mass_g is not None and not tally.counted else 0.0
            name = tally.taxon or names.get(tally.written, tally.written)
            line.holders |= holders.get((context.id, name, tally.part, tally.condition), set())
    return found


def _holders(edition: Edition) -> tuple[dict[tuple[object, ...], set[str]], dict[str, object]]:
    """Samples by context, name, part and condition; and what each name as written stands for."""
    context_of = {sample.id: sample.context for sample in edition.project.samples}
    found: dict[tuple[object, ...], set[str]] = {}
    names: dict[str, object] = {}
    for row in edition.project.counts:
        said = row.identification
        name = names.setdefault(said.written, said.taxon or said.either or said.written)
        if _is_there(row):
            found.setdefault((context_of[row.sample], name, row.part, row.condition), set()).add(row.sample)
    return found, names


def _is_there(row: CountRow) -> bool:
    return row.count.amount == "noted as present" or bool(row.count.number) or bool(row.mass_g)


def _phase_table(
    edition: Edition,
    contexts: Sequence[Context],
    lines: dict[tuple[str, str], _Line],
    is_last: bool,
    name: str,
    anchor: str,
    planned: Sequence[Sheet],
    key: str,
) -> Table:
    ids: list[str] = [c.id for c in contexts]
    all_ids = {id for line in lines.values() for id in line.cells}
    every = all_ids | set(ids)
    of = len([sample for sample in edition.project.samples if sample.context in every])
    looked = [edition.findings.of(Subject(level="context", id=id)).samples_with_named_wood for id in sorted(every)]
    of_wood = sum(number or 0 for number in looked)
    rows: list[tuple[str, ...]] = []
    for (taxon, part), line in sorted(lines.items()):
        if not is_last and not any(id in line.cells for id in ids):
            continue
        total = f"{line.counted:,}" if line.counted else ""
        total += (f" and {NOTED}" if total else NOTED) if line.is_noted else ""
        total = "; ".join(part for part in (total, f"{line.mass_g:.6g} g" if line.mass_g else "") if part)
        is_wood = "wood" in edition.packs.words.parts[PartId(part)].roles and taxon not in UNNAMED
        last = (total or "–", f"{len(line.holders)} of {of_wood if is_wood else of}") if is_last else ()
        rows.append((_name(taxon, edition), part, *(line.cells.get(id, "–") for id in ids), *last))
    found = [edition.findings.of(Subject(level="context", id=id)) for id in ids]
    phase = edition.findings.subjects.get(Subject(level="phase", id=contexts[0].phase or ""))
    found += [phase] if is_last and phase else []
    foot = [
        ("Litres floated", *("not recorded" if f.litres is None else f"{f.litres:g}" for f in found)),
        ("Items without wood", *(_value(f.measurements["items"].value, "{:,.0f}") for f in found)),
        ("Items per litre", *(_value(f.measurements["density"].value, "{:.1f}") for f in found)),
    ]
    blank = ("",) if is_last and phase else ("", "") if is_last else ()
    rows += [(f"**{head}**", "", *cells, *blank) for head, *cells in foot]
    written = [s for s in planned if {c.id for c in contexts}.intersection(s.contexts)]
    apart = f" They stand apart in {led_to_sheets(written)}." if written else ""
    note = f"{key}{key_of_classes(edition, ids)}Whole and broken items of a kind are joined.{apart}"
    return Table(
        caption=f"Charred plant remains by context: {literal(name)}."
        if edition.project.preservation == "charred"
        else f"Plant remains by context: {literal(name)}.",
        columns=("Plant", "Part", *map(literal, ids), *(("Total", "Ubiquity") if is_last else ())),
        rows=tuple(rows),
        note=note,
        anchor=anchor.lower().replace(" ", "-"),
        numbers=tuple(range(2, 2 + len(ids) + 2 * is_last)),
        is_wide=True,
    )


def _name(taxon: str, edition: Edition) -> str:
    """Latin names of genera and species in italics; those of families and of what could not be named are not."""
    known = edition.packs.taxa.get(taxon)  # type: ignore[call-overload]
    if known is None:
        return name_with_latin(taxon, ())
    return f"*{literal(taxon)}*" if known.rank in ("species", "genus") or "/" in taxon else literal(taxon)


def _value(value: float | None, form: str) -> str:
    return "–" if value is None else form.format(value)


def _cell(tally: Tally, signs: Sequence[str] = ()) -> str:
    """signs: the classes of abundance in which it was noted, as written."""
    number = f"{tally.counted:,}" if tally.counted else ""
    number += "‡" if tally.counted and tally.doubtful and not tally.only_cf else ""
    number += "†" if tally.counted and tally.estimated > tally.counted + 1e-9 else ""
    noted = literal(", ".join(signs)) or (NOTED if tally.is_noted else "")
    number = " and ".join(part for part in (number, noted) if part)
    grams = f"{tally.mass_g:g} g" if tally.mass_g is not None and not tally.counted else ""
    return " ".join(part for part in (number or grams, "cf." if tally.only_cf else "") if part) or NOTED


def wood_by_phase(edition: Edition) -> Table | None:
    """Identified wood fragments of each phase as counts and percentages; None where no wood was identified."""
    project = edition.project
    subjects = [(p.name, Subject(level="phase", id=p.id)) for p in project.phases]
    subjects = [(n, s) for n, s in subjects if s in edition.findings.subjects] or [
        ("all samples", Subject(level="site", id=SITE))
    ]
    counts: dict[str, dict[str, int]] = {}
    for name, subject in subjects:
        for tally in edition.findings.of(subject).tallies:
            if _is_wood(tally, edition):
                line = counts.setdefault(tally.taxon or tally.written, {})
                line[name] = line.get(name, 0) + tally.counted
    if not counts:
        return None
    sums = {name: sum(line.get(name, 0) for line in counts.values()) for name, _ in subjects}
    printed = dict.fromkeys(sums, 0.0)
    rows = []
    for taxon, line in sorted(counts.items()):
        cells: list[str] = []
        for name, total in sums.items():
            share = round(100 * line.get(name, 0) / total, 1) if total else 0.0
            printed[name] += share
            cells += [f"{line.get(name, 0):,}", f"{share:.1f}" if total else "–"]
        rows.append((_name(taxon, edition), *cells))
    foot = [c for name, total in sums.items() for c in (f"{total:,}", f"{printed[name]:.1f}" if total else "–")]
    rows.append(("**Sum**", *foot))
    off = [name for name, total in sums.items() if total and f"{printed[name]:.1f}" != "100.0"]
    note = "Percentages of the identified fragments; fragments are pieces, not trees."
    whole = sum(t.counted for t in edition.findings.of(Subject(level="site", id=SITE)).tallies if _is_wood(t, edition))
    out = whole - sum(sums.values())
    note += (
        f" Of the {whole:,} identified fragments, {out:,} from contexts without a phase are left out." if out else ""
    )
    note += f" As printed those of {', '.join(off)} do not sum to 100.0, because each is rounded." if off else ""
    return Table(
        caption="Wood charcoal by phase.",
        columns=("Wood", *(c for n in sums for c in (f"{literal(n)}, n", "%"))),
        rows=tuple(rows),
        note=note,
        anchor="wood",
        numbers=tuple(range(1, 1 + 2 * len(sums))),
    )


def _is_wood(tally: Tally, edition: Edition) -> bool:
    part = edition.packs.words.parts.get(tally.part)
    return part is not None and "wood" in part.roles and tally.counted > 0


def _litres(sample: Sample) -> str:
    return "not recorded" if sample.volume_l is None else f"{sample.volume_l:g}"


def shares(sample: Sample) -> str:
    if not sample.size_classes:
        return "not recorded"
    parts: Sequence[str] = [f"{c.name}: {c.written}" for c in sample.size_classes if c.proportion_sorted < 1]
    return "; ".join(parts) or "no"


def _heavy(sample: Sample) -> str:
    is_sorted = sample.heavy_fraction.sorted if sample.heavy_fraction else None
    return "not recorded" if is_sorted is None else "yes" if is_sorted else "no"
