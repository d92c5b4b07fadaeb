"""What was found in every subject: tallies and the measurements that each subject is given by name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache

import numpy as np

from narrate.measures.catalogue import MEASURES, measured
from narrate.measures.column import Column
from narrate.measures.count_table import CountTable, Kind, count_table
from narrate.measures.intervals import wilson
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
    subjects: dict[Subject, SubjectFindings] = {}
    for level in LEVELS:
        units = levels[level]
        columns = {shown.name: (shown, _column(shown, units, levels["phase"])) for shown in packs.shown}
        with_remains = units.samples_with(Selector())[0]
        samples = units.samples()[0]
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
                tallies=_tallies(units, unit, keys[subject]),
                measurements={n: as_measurement(s.measure, c, unit) for n, (s, c) in columns.items()},
                places=_places(units, unit, columns, records[level][unit]),
            )
    of_samples = {id: subjects[Subject(level="sample", id=id)].tallies for id in levels["sample"].ids}
    spread = spreads(project, packs, levels["sample"], of_samples)
    return Findings(subjects=subjects, spreads=spread, changes=spread_changes(project, spread))


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


def _tallies(units: Units, unit: int, key: str) -> tuple[Tally, ...]:
    table = units.table
    rows = units.rows_of(unit, Selector(any_condition=True))
    groups: dict[tuple[object, str, str], list[int]] = {}
    for row in rows.tolist():
        kind = table.kinds[table.row_kind[row]]
        groups.setdefault((kind.taxon or kind.either or kind.written, kind.part, kind.condition), []).append(row)
    of_samples = int(units.samples()[0, unit])
    made = [_tally(table, members, of_samples, key) for members in groups.values()]
    kept = [tally for tally in made if tally.counted or tally.is_noted or tally.mass_g]
    return tuple(sorted(kept, key=lambda t: (-t.counted, t.written.lower(), t.part, t.condition)))


def _tally(table: CountTable, rows: list[int], of_samples: int, key: str) -> Tally:
    kind = table.kinds[table.row_kind[rows[0]]]
    index = np.array(rows, dtype=np.intp)
    counted = int(round(table.counted[0, index].sum()))
    weighed = table.mass_g[index][np.isfinite(table.mass_g[index])]
    there = index[table.is_noted[index]]
    samples = int(np.unique(table.row_sample[there]).size)
    low, high = _ends(samples, of_samples)
    name = kind.taxon or "/".join(kind.either) or kind.written
    return Tally(
        taxon=kind.taxon,
        written=table.written[rows[0]],
        part=PartId(kind.part),
        condition=kind.condition,
        counted=counted,
        estimated=float(table.counted[0, index].sum() + table.unsorted[0, index].sum()),
        mass_g=float(round(weighed.sum(), 6)) if weighed.size else None,
        is_noted=bool(
            np.any(table.is_noted[index] & (table.counted[0, index] == 0) & ~np.isfinite(table.mass_g[index]))
        ),
        fragments=_of_kinds(table, index, lambda k: k.completeness == "fragment"),
        doubtful=_of_kinds(table, index, lambda k: not k.is_certain),
        only_cf=all(not table.kinds[table.row_kind[row]].is_certain for row in rows),
        samples=samples,
        of_samples=of_samples,
        ubiquity=Measurement(
            measure="ubiquity",
            value=samples / of_samples if of_samples else None,
            low=low if of_samples else None,
            high=high if of_samples else None,
            n=of_samples,
        ),
        ref=found_ref(key, name, kind.part, kind.condition),
        places=tuple(sorted(table.places[row] for row in rows)),
    )


@cache
def _ends(samples: int, of_samples: int) -> tuple[float, float]:
    """Ends of the interval of a share of samples: thousands of tallies have one of a few."""
    low, high = wilson(np.array([samples]), np.array([of_samples]))
    return float(low[0]), float(high[0])


def _of_kinds(table: CountTable, rows: np.ndarray, is_meant: Callable[[Kind], bool]) -> int:
    """Counted items of the rows whose kind is meant."""
    meant = np.array([is_meant(table.kinds[table.row_kind[row]]) for row in rows], bool)
    return round(float(table.counted[0, rows[meant]].sum()))


def _places(
    units: Units, unit: int, columns: Mapping[str, tuple[ShownMeasure, Column]], record: tuple[Place, ...]
) -> dict[str, tuple[Place, ...]]:
    """Rows behind each measurement; the subject's records where there is no row, because absence is recorded there."""
    found: dict[str, tuple[Place, ...]] = {"record": record}
    for name, (shown, _) in columns.items():
        rows: set[int] = set()
        for selector in (shown.of, shown.to):
            if selector is not None:
                rows.update(units.rows_of(unit, selector).tolist())
        found[name] = tuple(sorted(units.table.places[row] for row in rows)) or record
    return found
