"""From the finds of a sheet to rows of counts: the same taxon twice in a sample is added, and that is said."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from narrate.model.counts import Count, CountRow
from narrate.model.grids import Grid
from narrate.model.ids import PartId, SampleId
from narrate.model.layouts import Layout
from narrate.model.plants import Identification
from narrate.model.sampling import Sample
from narrate.problems import Place, ProblemList
from narrate.reading.asking import near, offered
from narrate.reading.intake.finds import read_finds
from narrate.reading.intake.names_offered import name_offered
from narrate.reading.intake.said import Said
from narrate.reading.intake.sheet_finds import Find, SheetFinds
from narrate.reading.intake.stored_totals import ReadTable, check_stored
from narrate.reading.intake.told import Told
from narrate.reading.intake.written_names import NameReader
from narrate.reading.source_text import shown

NEAR_MATCHES = 200
"""Near matches looked for in one sheet."""

_COUNTED = re.compile(r"[\s,]+[(\[]?(?:cts?|counts?|n|no|nr|#)\.?[)\]]?(?=$| )")
"""Words for counts behind a name, beside a line of grams of the same name."""
SORTED_CLASS = "whole flot"
"""Name of the one size class of a drafted sample of which only a share was sorted."""


@dataclass(slots=True, kw_only=True)
class LaboratorySheet:
    """A laboratory's own file as read by its layout."""

    rows: list[CountRow] = field(default_factory=list)
    facts: dict[str, dict[str, list[Said]]] = field(default_factory=dict)
    tables: list[SheetFinds] = field(default_factory=list)
    read: list[ReadTable] = field(default_factory=list)
    """The same, each with its grid and its layout."""


def read_by_layout(
    grids: tuple[Grid, ...],
    layout: Layout,
    names: NameReader,
    problems: ProblemList,
    *,
    samples: Mapping[str, Sample] | None = None,
    sample_ids: frozenset[str] = frozenset(),
    told: Told | None = None,
    ready: Mapping[int, SheetFinds] | None = None,
) -> LaboratorySheet:
    """
    All rows of counts of a file, and what it says of its samples.

    samples:  records that the samples are held against; None: every sample is taken as it comes.
    ready:    finds that were read already, by the number of their table, and what was told of them in `told`.
    """
    told = told if told is not None else Told()
    sheet = LaboratorySheet()
    by_name = {grid.sheet: grid for grid in grids}
    for number, table in enumerate(layout.tables, start=1):
        grid = by_name.get(table.sheet) or (grids[0] if len(grids) == 1 and not table.sheet else None)
        if grid is None:
            told.error(
                "N311", f"sheet {number}", layout.place,
                f"table {number} is of the sheet '{table.sheet}', and the workbook has none of that name, expected "
                + " or ".join(f"'{name}'" for name in list(by_name)[:8]),
                "mend the name in the layout, or run 'narrate intake' again",
            )  # fmt: skip
            continue
        known_finds = (ready or {}).get(number - 1)
        finds = known_finds if known_finds is not None else read_finds(grid, table, layout, names, told)
        sheet.tables.append(finds)
        sheet.read.append(ReadTable(grid=grid, table=table, finds=finds))
        has_counts = any(role.name in ("counts", "count", "mass") for role in table.columns.values())
        if table.shape != "records" and has_counts and not finds.finds and not finds.set_aside:
            told.warning(
                "N311", f"nothing {number}", grid.place(min(table.rows, default=0), min(table.columns, default=0)),
                f"table {number} of the layout gives no finds, expected some",
                "look whether its rows and columns still fit the sheet",
            )  # fmt: skip
        for id, facts in finds.facts.items():
            known = sheet.facts.setdefault(id, {})
            for role, said in facts.items():
                known.setdefault(role, []).extend(said)
        _tell_set_aside(finds, told)
        _tell_parts(finds, told, layout, grid)
    check_stored(sheet.read, layout, names, told, samples or {})
    finds_of_all = [find for table in sheet.tables for find in table.finds]
    sheet.rows = _rows(finds_of_all, told, samples, sample_ids, problems)
    _tell_names(sheet.tables, names, told)
    told.into(problems)
    return sheet


def _rows(
    finds: list[Find],
    told: Told,
    samples: Mapping[str, Sample] | None,
    sample_ids: frozenset[str],
    problems: ProblemList,
) -> list[CountRow]:
    groups: dict[tuple[object, ...], list[Find]] = {}
    near_left = NEAR_MATCHES
    for find in finds:
        if samples is not None and find.sample not in samples:
            if find.sample not in sample_ids:
                meant = near(find.sample, samples, 0.75) if near_left > 0 else ""
                near_left -= 1
                told.error(
                    "N304", f"sample {find.sample}", find.place,
                    f"sample {shown(find.sample)} is described by no record{offered(meant)}",
                    "describe the sample in records/; 'narrate intake SHEET --project FOLDER' drafts what the "
                    "sheet says of it",
                )  # fmt: skip
            continue
        identification = _identification(find)
        key = (
            find.sample, identification.taxon or identification.written.lower(),
            "" if identification.qualifier in ("sp.", "spp.", "indet.") else identification.qualifier,
            find.part, find.condition, find.completeness, find.size_class, find.fraction,
            find.label,
        )  # fmt: skip
        groups.setdefault(key, []).append(find)
    _tell_unlike_names(groups, told)
    return [_row(members, told, samples) for members in groups.values()]


def _tell_unlike_names(groups: Mapping[tuple[object, ...], list[Find]], told: Told) -> None:
    """Names of a sheet that are read as one taxon and part: 'Hordeum internode' and 'Hordeum rachis'."""
    once: dict[tuple[object, ...], Find] = {}
    alike: dict[tuple[object, ...], list[Find]] = {}
    for key, members in groups.items():
        there = [m for m in members if not _is_absent(m)]
        known = once.setdefault(key[:-1], there[0]) if there else None
        if known is not None and known is not there[0]:
            alike.setdefault(key[:-1], [known]).append(there[0])
    for ones in alike.values():
        labels = list(dict.fromkeys(one.label for one in ones))
        if len({_COUNTED.sub("", label) for label in labels}) == 1:
            continue  # 'Wood ct' and 'Wood g' are of one thing
        first = ones[0]
        meant = first.name.identification.taxon or first.name.identification.written
        written = [one.name.identification.written for one in ones]
        named = " and ".join(f"'{words}'" for words in (written if len(set(written)) > 1 else labels))
        told.warning(
            "N316", f"unlike {sorted(labels)}", ones[1].place,
            f"{named} are both read as {meant}, {first.part}; the sheet parts them, so both rows are kept and they "
            "count together, expected one name for each thing",
            "nothing need be done if they are; else say under names in the layout what each stands for",
        )  # fmt: skip


def _is_absent(find: Find) -> bool:
    return find.found.count is not None and find.found.count.amount == "looked for and absent"


def _identification(find: Find) -> Identification:
    found = find.name.identification
    return replace(found, qualifier="cf.") if find.is_cf else found


def _row(members: list[Find], told: Told, samples: Mapping[str, Sample] | None) -> CountRow:
    first = members[0]
    count, mass, notes = _amounts(first) if len(members) == 1 else _added(members, told)
    size = first.size_class
    proportion = 1.0
    sample = samples.get(first.sample) if samples is not None else None
    if sample is not None and first.fraction == "light" and sample.size_classes:
        size = size or (SORTED_CLASS if any(c.name == SORTED_CLASS for c in sample.size_classes) else "")
        flat = {"".join(c.name.lower().split()): c for c in sample.size_classes}
        known = flat.get("".join(size.lower().split())) or flat.get("".join(SORTED_CLASS.split()))
        proportion = known.proportion_sorted if known is not None else 1.0
    return CountRow(
        sample=SampleId(first.sample),
        identification=_identification(first),
        part=PartId(first.part),
        count=count,
        mass_g=mass or None,
        condition=first.condition,
        completeness=first.completeness,  # type: ignore[arg-type]
        size_class=size,
        fraction=first.fraction,  # type: ignore[arg-type]
        proportion_sorted=proportion,
        note=notes,
        place=first.place,
    )


def _amounts(find: Find) -> tuple[Count, float | None, str]:
    """What one find comes to: its count, its grams, and its note."""
    return *_with_grams(find.found.count or Count(written="", amount="weighed only"), find.found.mass_g), find.note


def _with_grams(count: Count, mass: float | None) -> tuple[Count, float | None]:
    """A count and the grams beside it; what weighs something was there, whatever the count says."""
    mass = float(f"{mass:.12g}") if mass is not None else None
    if count.amount == "looked for and absent" and mass:
        count = Count(written="", amount="weighed only")
    return count, mass


def _added(members: list[Find], told: Told) -> tuple[Count, float | None, str]:
    """What several finds of one thing in one sample come to; what is added is told."""
    first = members[0]
    counted = [m for m in members if m.found.count is not None]
    weighed = [m for m in members if m.found.mass_g is not None]
    notes = [m.note for m in members if m.note]
    # '<0.01' under grams, and millilitres, beside a count say nothing more of how many there are.
    plain = [m for m in counted if not m.found.note.startswith(("weight written", "volume "))]
    counted = plain or counted
    count, mass = _with_grams(_sum(counted), sum(m.found.mass_g or 0.0 for m in weighed) if weighed else None)
    if len(counted) > 1 or len(weighed) > 1:
        several = counted if len(counted) > 1 else weighed
        cells = [m.place.cell or str(m.place) for m in several]
        shown_cells = ", ".join(cells[:4]) + (" and more" if len(cells) > 4 else "")
        if sum(not _is_absent(m) for m in several) > 1:
            notes.append(f"added from {shown_cells}")
            told.warning(
                "N316", "added", first.place,
                f"{first.name.identification.written}, {first.part}, stands {len(several)} times in sample "
                f"{first.sample} "
                f"({shown_cells}); the amounts are added, expected once",
                "tell them apart by part, condition or size class if they are not the same",
            )  # fmt: skip
    return count, mass, "; ".join(dict.fromkeys(notes))


def _sum(members: list[Find]) -> Count:
    """Counts added up; a presence beside counts adds nothing to them, and stays only where nothing was counted."""
    counts = [m.found.count for m in members if m.found.count is not None]
    if not counts:
        return Count(written="", amount="weighed only")
    if len(counts) == 1:
        return counts[0]
    written = " + ".join(c.written for c in counts)
    numbers = [c.number for c in counts if c.number is not None]
    if numbers:
        return Count(written=written, amount="counted", number=sum(numbers))
    for amount in ("noted as present", "looked for and absent"):
        same = [c for c in counts if c.amount == amount]
        if same:
            lows = [c.at_least for c in same if c.at_least is not None]
            return Count(written=written, amount=amount, at_least=sum(lows) or None)  # type: ignore[arg-type]
    return Count(written=written, amount="not looked for")


def _tell_set_aside(finds: SheetFinds, told: Told) -> None:
    for kind, places in finds.set_aside.items():
        for place in sorted(set(places)):
            told.warning(
                "N315", f"aside {kind}", place, f"{kind} is set aside: it is no plant, and is in no count, "
                "expected remains of plants",
                "nothing need be done; heavy_fraction, finds in the records can hold it",
            )  # fmt: skip


def _tell_parts(finds: SheetFinds, told: Told, layout: Layout, grid: Grid) -> None:
    if not finds.missing_parts:
        return
    words = ", ".join(f"{part} for {n}" for part, n in sorted(finds.missing_parts.items(), key=lambda item: -item[1]))
    total = sum(finds.missing_parts.values())
    first = finds.missing_at or Place(path=grid.path)
    told.warning(
        "N315", f"parts {grid.sheet}", first,
        f"{total} finds name no part; the layout takes them as {words}, expected a part for each",
        "mend 'parts' in the layout if something else was counted",
    )  # fmt: skip


def _tell_names(tables: list[SheetFinds], names: NameReader, told: Told) -> None:
    """One warning for each name that no pack knows, with the near match offered."""
    left = NEAR_MATCHES
    seen: dict[str, tuple[Place, int]] = {}
    under: dict[str, str] = {}
    for table in tables:
        for written, (name, place, n) in table.names.items():
            if not name.is_known:
                under[written] = name.code or written
                first = seen.get(written)
                seen[written] = (first[0] if first else place, (first[1] if first else 0) + n)
    for written, (place, n) in seen.items():
        known = name_offered(written, names) if left > 0 and len(written) < 80 else ""
        left -= 1
        told.warning(
            "N401", f"name {written}", place,
            f"taxon {shown(written)} is in no taxon pack in use; {n} finds are counted as written, and no rule "
            "can speak of it"
            + offered(known),
            f'to accept it, write under names in the layout: "{under[written]}": {known}' if known
            else "say under names in the layout what it stands for, or describe the plant in packs/taxa/ of the "
            "project",
        )  # fmt: skip
