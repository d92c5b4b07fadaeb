"""What was found in every subject: tallies and the measurements that each subject is given by name."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from functools import cache
from math import isfinite

import numpy as np

from narrate.measures.catalogue import MEASURES, measured
from narrate.measures.column import Column
from narrate.measures.count_table import CountTable, Kind, count_table
from narrate.measures.group_amounts import group_amounts
from narrate.measures.intervals import wilson
from narrate.measures.plant_changes import plant_changes, wood_changes
from narrate.measures.selection import NAMED_WOOD
from narrate.measures.spread import spread_changes, spreads
from narrate.measures.units import Units
from narrate.model.findings import Findings, SubjectFindings, Tally
from narrate.model.ids import LEVELS, Level, PartId, Subject
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import found_ref, subject_keys
from narrate.model.rules import Selector, ShownMeasure
from narrate.problems import Place


def find(project: Project, packs: Packs) -> Findings:
    """Findings of every sample, context, feature and phase, and of the site."""
    table = count_table(project, packs)
    keys = subject_keys(project)
    levels: dict[Level, Units] = {level: Units(table, level, packs, project.preservation) for level in LEVELS}
    records = _record_places(project, table)
    rows = _Rows(table, levels["sample"].meant(NAMED_WOOD))
    subjects: dict[Subject, SubjectFindings] = {}
    for level in LEVELS:
        units = levels[level]
        columns = {shown.name: (shown, _column(shown, units, levels["phase"])) for shown in packs.shown}
        with_remains = units.samples_with(Selector())[0]
        samples = units.samples()[0]
        with_wood = units.samples_with(NAMED_WOOD)[0]
        litres = units.litres()[0]
        for unit, id in enumerate(units.ids):
            subject = Subject(level=level, id=id)
            own_samples = units.samples_of(unit)
            missing = int(np.sum(~np.isfinite(table.volume_l[own_samples])))
            subjects[subject] = SubjectFindings(
                subject=subject,
                samples=int(samples[unit]),
                samples_with_remains=int(with_remains[unit]),
                litres=float(round(litres[unit], 6)) if litres[unit] > 0 else None,
                litres_missing_for=missing,
                samples_with_named_wood=int(with_wood[unit]),
                tallies=_tallies(units, unit, keys[subject], (int(samples[unit]), int(with_wood[unit])), rows),
                measurements={n: as_measurement(s.measure, c, unit) for n, (s, c) in columns.items()},
                places=_places(units, unit, packs.shown, records[level][unit], rows),
            )
    of_samples = {id: subjects[Subject(level="sample", id=id)].tallies for id in levels["sample"].ids}
    spread = spreads(project, packs, levels["sample"], of_samples)
    return Findings(
        subjects=subjects,
        spreads=spread,
        amounts=group_amounts(project, packs, levels["sample"]),
        changes=spread_changes(project, spread),
        plants=plant_changes(project, packs, of_samples),
        woods=wood_changes(project, packs, of_samples, _with_named_wood(levels["sample"])),
        beside_others={
            known.id: as_measurement("ubiquity", measured("ubiquity", levels["site"], of=known.of), 0)
            for known in packs.elsewhere
        },
    )


def _with_named_wood(samples: Units) -> list[str]:
    """Samples whose wood was looked at and named."""
    held = samples.samples_with(NAMED_WOOD)[0]
    return [id for id, number in zip(samples.ids, held, strict=True) if number]


def as_measurement(measure: str, column: Column, unit: int) -> Measurement:
    """The value of one unit, without NaN or infinity."""
    value, low, high = (float(part[0, unit]) for part in (column.value, column.low, column.high))
    has_value = np.isfinite(value)
    n = None if column.n is None else int(round(float(column.n[0, unit])))
    return Measurement(
        measure=measure,
        value=value if has_value else None,
        low=low if column.has_interval and np.isfinite(low) else None,
        high=high if column.has_interval and np.isfinite(high) else None,
        is_open_above=bool(column.has_interval and np.isinf(high)),
        unit=MEASURES[measure].unit,
        n=n,
        reason="" if has_value else column.reason,
    )


def _column(shown: ShownMeasure, units: Units, phases: Units) -> Column:
    return measured(shown.measure, units, of=shown.of, to=shown.to, phases=phases)


def _record_places(project: Project, table: CountTable) -> dict[Level, list[tuple[Place, ...]]]:
    """Records behind each unit: its own, and those of its contexts and samples."""
    contexts = {context.id: context.place for context in project.contexts}
    phases = {str(phase.id): phase.place for phase in project.phases}
    places: dict[Level, list[tuple[Place, ...]]] = {}
    for level in LEVELS:
        found: list[dict[Place, None]] = [{} for _ in table.unit_ids[level]]
        if level == "phase":
            for unit, name in enumerate(table.unit_ids[level]):
                found[unit][phases[name]] = None
        if level == "context":
            for unit, context in enumerate(project.contexts):
                found[unit][context.place] = None
        if level == "site":
            found[0][project.place] = None
        for sample, unit in zip(project.samples, table.unit_of_sample[level], strict=True):
            if unit >= 0:
                found[unit].update(dict.fromkeys((contexts[sample.context], sample.place)))
        places[level] = [tuple(p) for p in found]
    return places


class _Rows:
    """Columns of rows as plain numbers: most tallies are of one row, for which arrays are slow."""

    def __init__(self, table: CountTable, is_named_wood: np.ndarray) -> None:
        """is_named_wood: mask over the kinds of the table."""
        self.table = table
        self.is_named_wood: list[bool] = is_named_wood[table.row_kind].tolist() if table.row_kind.size else []
        self.counted: list[float] = table.counted[0].tolist()
        self.unsorted: list[float] = table.unsorted[0].tolist()
        self.mass_g: list[float] = table.mass_g.tolist()
        self.is_noted: list[bool] = table.is_noted.tolist()
        self.sample: list[int] = table.row_sample.tolist()
        self.kind: list[Kind] = [table.kinds[kind] for kind in table.row_kind.tolist()]
        self.order = [0] * len(table.places)
        """Number of each row in the order of the sheets."""
        for number, row in enumerate(sorted(range(len(table.places)), key=table.places.__getitem__)):
            self.order[row] = number

    def in_order(self, rows: Collection[int]) -> tuple[Place, ...]:
        """Where the rows are written, in the order of the sheets."""
        return tuple([self.table.places[row] for row in sorted(rows, key=self.order.__getitem__)])


def _tallies(units: Units, unit: int, key: str, samples: tuple[int, int], columns: _Rows) -> tuple[Tally, ...]:
    """samples: of the unit, and those of them whose wood was looked at."""
    rows = units.rows_of(unit, Selector(any_condition=True))
    groups: dict[tuple[object, str, str], list[int]] = {}
    for row in rows.tolist():
        kind = columns.kind[row]
        groups.setdefault((kind.taxon or kind.either or kind.written, kind.part, kind.condition), []).append(row)
    made = [_tally(columns, members, samples[columns.is_named_wood[members[0]]], key) for members in groups.values()]
    kept = [tally for tally in made if tally.counted or tally.is_noted or tally.mass_g]
    return tuple(sorted(kept, key=lambda t: (-t.counted, t.written.lower(), t.part, t.condition)))


def _tally(columns: _Rows, rows: list[int], of_samples: int, key: str) -> Tally:
    kinds = [columns.kind[row] for row in rows]
    kind, counted = kinds[0], [columns.counted[row] for row in rows]
    mass = [columns.mass_g[row] for row in rows]
    weighed = [grams for grams in mass if isfinite(grams)]
    samples = len({columns.sample[row] for row in rows if columns.is_noted[row]})
    return Tally(
        taxon=kind.taxon,
        written=columns.table.written[rows[0]],
        part=PartId(kind.part),
        condition=kind.condition,
        counted=int(round(_sum(counted))),
        estimated=_sum(counted) + _sum([columns.unsorted[row] for row in rows]),
        mass_g=float(round(np.float64(_sum(weighed)), 6)) if weighed else None,
        uncounted_g=float(
            round(np.float64(_sum([g for g, n in zip(mass, counted, strict=True) if isfinite(g) and not n])), 6)
        ),
        unweighed=int(round(_sum([n for g, n in zip(mass, counted, strict=True) if not isfinite(g)]))),
        is_noted=any(
            columns.is_noted[row] and items == 0 and not isfinite(grams)
            for row, items, grams in zip(rows, counted, mass, strict=True)
        ),
        fragments=_of_kinds(kinds, counted, lambda k: k.completeness == "fragment"),
        doubtful=_of_kinds(kinds, counted, lambda k: not k.is_certain),
        doubtful_fragments=_of_kinds(
            kinds, counted, lambda k: k.completeness == "fragment" and not k.is_certain
        ),
        only_cf=not any(k.is_certain for k in kinds),
        samples=samples,
        of_samples=of_samples,
        ubiquity=_ubiquity(samples, of_samples),
        ref=found_ref(key, kind.taxon or "/".join(kind.either) or kind.written, kind.part, kind.condition),
        places=columns.in_order(rows),
    )


def _sum(values: list[float]) -> float:
    """As numpy sums them, so that no digit hangs on how many there are."""
    return values[0] if len(values) == 1 else float(np.sum(values))


@cache
def _ubiquity(samples: int, of_samples: int) -> Measurement:
    """The share of samples with its interval: thousands of tallies have one of a few, and share it."""
    low, high = wilson(np.array([samples]), np.array([of_samples]))
    return Measurement(
        measure="ubiquity",
        value=samples / of_samples if of_samples else None,
        low=float(low[0]) if of_samples else None,
        high=float(high[0]) if of_samples else None,
        n=of_samples,
    )


def _of_kinds(kinds: list[Kind], counted: list[float], is_meant: Callable[[Kind], bool]) -> int:
    """Counted items of the rows whose kind is meant."""
    return round(sum(items for kind, items in zip(kinds, counted, strict=True) if is_meant(kind)))


def _places(
    units: Units,
    unit: int,
    shown: Iterable[ShownMeasure],
    record: tuple[Place, ...],
    columns: _Rows,
) -> dict[str, tuple[Place, ...]]:
    """Rows behind each measurement; the subject's records where there is no row, because absence is recorded there."""
    found: dict[str, tuple[Place, ...]] = {"record": record}
    meant: dict[Selector, list[int]] = {}
    placed: dict[tuple[Selector | None, Selector | None], tuple[Place, ...]] = {}
    for one in shown:
        asked = (one.of, one.to)
        if asked not in placed:
            rows: set[int] = set()
            for selector in asked:
                if selector is not None:
                    if selector not in meant:
                        meant[selector] = units.rows_of(unit, selector).tolist()
                    rows.update(meant[selector])
            placed[asked] = columns.in_order(rows) or record
        found[one.name] = placed[asked]
    return found
