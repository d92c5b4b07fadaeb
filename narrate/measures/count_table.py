"""
The count table: all rows of all count sheets as columns, and units laid over their samples.

A unit is a sample, a context, a feature, a phase or the whole site. Units of a level do not copy the rows: they say
which unit each sample belongs to. Replicates are one more axis: the values of the rows have the shape
(replicates, rows), and every sum over a selection of rows has the shape (replicates, units).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from narrate.model.counts import Count, CountRow
from narrate.model.ids import LEVELS, SITE, Level, TaxonId
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """What a row is of; rows of one kind differ only in number."""

    taxon: TaxonId | None
    either: tuple[TaxonId, ...]
    written: str
    is_certain: bool
    part: str
    condition: str
    completeness: str
    fraction: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CountTable:
    """Rows of count sheets as columns. Arrays of rows are sorted by sample."""

    sample_ids: tuple[str, ...]
    kinds: tuple[Kind, ...]
    row_sample: np.ndarray
    """Index of the sample of each row."""
    row_kind: np.ndarray
    counted: np.ndarray
    """(replicates, rows): items as counted; 0 where a row only notes presence or a mass."""
    unsorted: np.ndarray
    """(replicates, rows): items estimated for the share that was not sorted: counted·(1 − f)/f, or drawn around it."""
    share: np.ndarray
    """Share f of the row's size class that was sorted."""
    mass_g: np.ndarray
    """Grams as weighed; NaN where not weighed."""
    is_noted: np.ndarray
    """True where the row says that the thing was there: counted above 0, noted as present, or weighed."""
    class_low: np.ndarray
    """Lower end of an abundance class, 1 for a bare mark of presence; NaN where the row holds neither."""
    class_high: np.ndarray
    """Upper end of an abundance class; infinite where it is open; NaN where the row holds none."""
    places: tuple[Place, ...]
    written: tuple[str, ...]
    """Name of the plant in each row, as the analyst wrote it."""
    volume_l: np.ndarray
    """Litres of each sample; NaN where not recorded."""
    sorted_share: np.ndarray
    """Smallest share of a size class that was sorted, of each sample."""
    added: np.ndarray
    recovered: np.ndarray
    intrusions: np.ndarray
    """Worst modern intrusion noted: 0 none … 3 many; NaN where nothing was noted."""
    unit_of_sample: dict[Level, np.ndarray] = field(repr=False)
    unit_ids: dict[Level, tuple[str, ...]]
    phase_end: dict[Level, np.ndarray]
    """Last year of the phase of each unit; NaN where not known or mixed."""
    groups: Mapping[str, np.ndarray] = field(default_factory=dict, repr=False)
    """What samples are compared by: phase, kind (of context) and area -> a number for each sample; −1 where it has
    none."""
    context_kind: tuple[str, ...] = field(default=(), repr=False)
    """Kind of context of each sample."""
    recorded: tuple[tuple[str, str], ...] = field(default=(), repr=False)
    """Security and deposit of the context of each sample, 'unknown' where nobody recorded it."""

    @property
    def replicates(self) -> int:
        return self.counted.shape[0]

    def with_counts(self, counted: np.ndarray, unsorted: np.ndarray) -> CountTable:
        """The same table with other numbers in its rows: one or many replicates."""
        return replace(self, counted=counted, unsorted=unsorted)


_INTRUSION_SCALE = {"none": 0.0, "few": 1.0, "some": 2.0, "many": 3.0}


def count_table(project: Project, packs: Packs) -> CountTable:
    """
    The count table of a project, with units of every level.

    Rows of samples that the project does not have are a fault of the caller.
    """
    sample_ids = tuple(str(sample.id) for sample in project.samples)
    index_of = {id: i for i, id in enumerate(sample_ids)}
    rows = sorted(project.counts, key=lambda row: index_of[row.sample])
    kinds: dict[Kind, int] = {}
    row_kind = np.empty(len(rows), dtype=np.intp)
    for i, row in enumerate(rows):
        row_kind[i] = kinds.setdefault(kind_of(row), len(kinds))
    share = np.array([row.proportion_sorted for row in rows], float)
    counted = np.array([row.count.number or 0 for row in rows], float).reshape(1, -1)
    mass = np.array([np.nan if row.mass_g is None else row.mass_g for row in rows], float)
    present = ("counted", "noted as present", "weighed only")
    return CountTable(
        sample_ids=sample_ids,
        kinds=tuple(kinds),
        row_sample=np.array([index_of[row.sample] for row in rows], dtype=np.intp),
        row_kind=row_kind,
        counted=counted,
        unsorted=counted * (1 - share) / share if len(rows) else counted,
        share=share,
        mass_g=mass,
        is_noted=np.array([row.count.amount in present and row.count.number != 0 for row in rows], bool),
        class_low=np.array([_class_end(row.count, row.count.at_least, 1.0) for row in rows], float),
        class_high=np.array([_class_end(row.count, row.count.at_most, np.inf) for row in rows], float),
        places=tuple(row.place for row in rows),
        written=tuple(row.identification.written for row in rows),
        volume_l=np.array([np.nan if s.volume_l is None else s.volume_l for s in project.samples], float),
        sorted_share=np.array(
            [min((c.proportion_sorted for c in s.size_classes), default=1.0) for s in project.samples], float
        ),
        added=np.array([s.recovery_test.added if s.recovery_test else 0 for s in project.samples], float),
        recovered=np.array([s.recovery_test.recovered if s.recovery_test else 0 for s in project.samples], float),
        intrusions=np.array([_worst(s.modern_intrusions.values()) for s in project.samples], float),
        groups=_groups(project),
        context_kind=_context_kinds(project),
        recorded=_recorded(project),
        **_units(project),
    )


def kind_of(row: CountRow) -> Kind:
    """What a row of a count sheet is of."""
    name = row.identification
    return Kind(
        taxon=name.taxon,
        either=name.either,
        written="" if name.taxon is not None else name.written,
        is_certain=name.is_certain,
        part=row.part,
        condition=row.condition,
        completeness=row.completeness,
        fraction=row.fraction,
    )


def _class_end(count: Count, end: int | None, otherwise: float) -> float:
    """An end of what was noted without counting; never taken for a count."""
    if count.amount != "noted as present":
        return np.nan
    return otherwise if end is None else float(end)


def _worst(amounts) -> float:  # type: ignore[no-untyped-def]
    noted = [_INTRUSION_SCALE[a] for a in amounts if a in _INTRUSION_SCALE]
    return max(noted, default=np.nan)


def _groups(project: Project) -> dict[str, np.ndarray]:
    contexts = {context.id: context for context in project.contexts}
    own = [contexts[sample.context] for sample in project.samples]
    names: dict[str, list[str]] = {
        "phase": [str(context.phase or "") for context in own],
        "kind": [context.kind for context in own],
        "area": [str(context.location.get("area", "")) for context in own],
    }
    return {by: _numbered(labels) for by, labels in names.items()}


def _context_kinds(project: Project) -> tuple[str, ...]:
    kinds = {context.id: context.kind for context in project.contexts}
    return tuple(kinds[sample.context] for sample in project.samples)


def _recorded(project: Project) -> tuple[tuple[str, str], ...]:
    said = {context.id: (context.security, context.deposit) for context in project.contexts}
    return tuple(said[sample.context] for sample in project.samples)


def _numbered(labels: list[str]) -> np.ndarray:
    known = {label: i for i, label in enumerate(dict.fromkeys(label for label in labels if label))}
    return np.array([known.get(label, -1) for label in labels], np.intp)


def _units(project: Project) -> dict[str, dict]:
    """Which unit of each level every sample belongs to (−1: none)."""
    contexts = {context.id: context for context in project.contexts}
    ids: dict[Level, tuple[str, ...]] = {
        "sample": tuple(str(sample.id) for sample in project.samples),
        "context": tuple(str(context.id) for context in project.contexts),
        "feature": tuple(str(feature.id) for feature in project.features()),
        "phase": tuple(str(phase.id) for phase in project.phases),
        "site": (SITE,),
    }
    unit_of_sample: dict[Level, np.ndarray] = {}
    phase_end: dict[Level, np.ndarray] = {}
    ends = {phase.id: phase.end for phase in project.phases}
    for level in LEVELS:
        position = {id: i for i, id in enumerate(ids[level])}
        member = np.full(len(project.samples), -1, dtype=np.intp)
        latest: list[set[int | None]] = [set() for _ in ids[level]]
        for i, sample in enumerate(project.samples):
            context = contexts[sample.context]
            key = {
                "sample": sample.id,
                "context": context.id,
                "feature": context.feature,
                "phase": context.phase,
                "site": SITE,
            }[level]
            member[i] = position.get(str(key), -1) if key is not None else -1
            if member[i] >= 0:
                latest[member[i]].add(ends.get(context.phase) if context.phase else None)
        unit_of_sample[level] = member
        phase_end[level] = np.array([_the_one(years) for years in latest], float)
    return {"unit_of_sample": unit_of_sample, "unit_ids": ids, "phase_end": phase_end}


def _the_one(years: set[int | None]) -> float:
    """The year that all agree on; NaN where they do not, or one is not known."""
    only = next(iter(years)) if len(years) == 1 else None
    return np.nan if only is None else float(only)
