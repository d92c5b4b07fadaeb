"""A project in a notebook: pandas frames with the unit of every number in the name of its column."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, fields
from functools import cached_property
from typing import Any

import numpy as np
import pandas as pd

from narrate.measures.association import association
from narrate.measures.catalogue import MEASURES, measured
from narrate.measures.column import Column
from narrate.measures.compared import compare
from narrate.measures.count_table import CountTable, count_table
from narrate.measures.dating import dating_candidates
from narrate.measures.fields import field_shares, triangle_points
from narrate.measures.order import likeness, ordination
from narrate.measures.seasons import seasons
from narrate.measures.sorting import narrowings, sorting_gains
from narrate.measures.units import Units
from narrate.model.ids import LEVELS, Level
from narrate.model.order import Ordination
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Selector, ShownMeasure
from narrate.model.seasons import Seasons
from narrate.problems import Problem

Wanted = Selector | Mapping[str, Any] | None
"""Which rows are meant: a selector, or its words as rules write them: {'taxon': 'Zea mays', 'part': 'kernel'}."""


class OpenProject:
    """All counts, measures and analyses of a project folder. Nothing is written, and nothing is printed."""

    def __init__(self, project: Project, packs: Packs, problems: tuple[Problem, ...] = ()) -> None:
        self.project = project
        self.packs = packs
        self.problems = problems
        self._table: CountTable = count_table(project, packs)
        self._levels: dict[Level, Units] = {}

    def __repr__(self) -> str:
        return f"<{self.project.title}: {len(self.project.samples)} samples, {len(self.project.counts)} rows>"

    @cached_property
    def counts(self) -> pd.DataFrame:
        """One row a row of the count sheets, with what the records say of its sample; nothing scaled."""
        contexts = {context.id: context for context in self.project.contexts}
        samples = {sample.id: sample for sample in self.project.samples}
        rows = []
        for row in self.project.counts:
            sample = samples[row.sample]
            context = contexts[sample.context]
            name = row.identification
            rows.append(
                {
                    "sample": row.sample,
                    "context": context.id,
                    "kind of context": context.kind,
                    "phase": context.phase,
                    "volume (litres)": sample.volume_l,
                    "name as written": name.written,
                    "taxon": name.taxon or "/".join(name.either) or None,
                    "certain": name.is_certain,
                    "part": row.part,
                    "condition": row.condition,
                    "completeness": row.completeness,
                    "fraction": row.fraction,
                    "size class": row.size_class,
                    "share sorted (0-1)": row.proportion_sorted,
                    "amount": row.count.amount,
                    "count (items)": row.count.number,
                    "at least (items)": row.count.at_least,
                    "at most (items)": row.count.at_most,
                    "scale": row.count.scale,
                    "mass (g)": row.mass_g,
                    "row": row.place.row,
                }
            )
        return pd.DataFrame(rows).astype({"count (items)": "Int64"}) if rows else pd.DataFrame(rows)

    def measures(self, level: Level = "context") -> pd.DataFrame:
        """Every measurement that has a name, one row a subject: its value, both ends where it has them, and n."""
        units = self._units(level)
        parts: dict[str, np.ndarray] = {}
        for shown in (*self.packs.shown, *self.packs.tabled):
            if level in MEASURES[shown.measure].levels:
                column = measured(shown.measure, units, of=shown.of, to=shown.to, phases=self._units("phase"))
                parts.update(_named(shown, column, units.shape[1]))
        return pd.DataFrame(parts, index=pd.Index(units.ids, name=level))

    def measure(self, id: str, level: Level = "context", of: Wanted = None, to: Wanted = None) -> pd.DataFrame:
        """
        One measure of the catalogue, of any selection.

        id:      a name of `narrate.measures.catalogue.MEASURES`.
        of, to:  a Selector, or a mapping of its keys as rules write them.
        Raises ValueError where there is no such measure or the level cannot have it.
        """
        if id not in MEASURES:
            raise ValueError(f"'{id}' is no measure; known are {', '.join(MEASURES)}")
        if level not in MEASURES[id].levels:
            raise ValueError(f"measure '{id}' is for {', '.join(MEASURES[id].levels)}, not for {level}")
        units = self._units(level)
        column = measured(id, units, of=selector(of), to=selector(to), phases=self._units("phase"))
        shown = ShownMeasure(name=id, title=id, measure=id, place=self.project.place)
        frame = pd.DataFrame(_named(shown, column, units.shape[1]), index=pd.Index(units.ids, name=level))
        value = frame.columns[0]
        frame["reason"] = np.where(frame[value].isna(), column.reason, "")
        return frame

    def compared(self, by: str = "phase", of: Wanted = None, **options: Any) -> pd.DataFrame:
        """Samples compared by phase, kind, feature or area; `attrs` holds what was compared with what."""
        found = compare(self._units("sample"), self.project, by, of=selector(of), **options)
        rows = []
        for row in found.rows:
            known = asdict(row)
            for name, unit in (
                ("with_it", "samples with it"),
                ("of_samples", "samples"),
                ("richest_share", "richest share"),
            ):
                known |= {f"{unit}, {g}": v for g, v in zip(found.groups, known.pop(name), strict=True)}
            rows.append(known)
        frame = pd.DataFrame(rows)
        frame.attrs = {f.name: getattr(found, f.name) for f in fields(found) if f.name != "rows"}
        return frame

    def associations(self, **options: Any) -> pd.DataFrame:
        """Crop parts and weeds over samples; see `narrate.measures.association.association`."""
        found = association(self._units("sample"), **options)
        frame = pd.DataFrame([asdict(row) for row in found.rows])
        frame.attrs = {f.name: getattr(found, f.name) for f in fields(found) if f.name != "rows"}
        return frame

    def seasons(self, level: Level = "context") -> tuple[Seasons, ...]:
        return seasons(self._units(level))

    def fields(self, level: Level = "context") -> pd.DataFrame:
        """Shares of wild seeds by sort."""
        return pd.DataFrame(
            [
                {
                    level: f.subject.id,
                    "attribute": f.attribute,
                    "value": f.value,
                    "seeds": f.of,
                    "seeds known": f.share.n,
                    "seeds unknown": f.unknown,
                    "share (0-1)": f.share.value,
                    "share low (0-1)": f.share.low,
                    "share high (0-1)": f.share.high,
                }
                for f in field_shares(self._units(level))
            ]
        )

    def triangle(self, level: Level = "sample") -> pd.DataFrame:
        """Coordinates in a triangle of grain, chaff and weeds."""
        points = triangle_points(self._units(level))
        return pd.DataFrame(
            [{level: p.subject.id, **{k: v for k, v in asdict(p).items() if k != "subject"}} for p in points]
        )

    def ordination(self, level: Level = "sample", of: Wanted = None, **options: Any) -> Ordination:
        return ordination(self._units(level), selector(of), **options)

    def likeness(self, level: Level = "context", of: Wanted = None) -> tuple[pd.DataFrame, pd.DataFrame]:
        """Brainerd–Robinson (0 to 200) and Sørensen (0 to 1) of every two units."""
        found = likeness(self._units(level), selector(of))
        names = list(found.names)
        return (
            pd.DataFrame(found.brainerd_robinson, index=names, columns=names, dtype=float),
            pd.DataFrame(found.sorensen, index=names, columns=names, dtype=float),
        )

    def sorting(self) -> pd.DataFrame:
        """What sorting the rest of each size class would bring; see `narrate.measures.sorting.sorting_gains`."""
        found = sorting_gains(self._units("sample"), self.project)
        return pd.DataFrame([asdict(g) for g in found]).rename(
            columns={"total": "total (items)", "share": "share sorted"}
        )

    def narrowing(self, level: Level = "sample") -> pd.DataFrame:
        """How far each interval would narrow if the rest of a size class were sorted."""
        found = narrowings(self._units(level), self.project, (*self.packs.shown, *self.packs.tabled))
        return pd.DataFrame(
            [
                {
                    level: n.subject.id,
                    "size class": n.size_class,
                    "measurement": n.measurement,
                    "width": n.width,
                    "width if sorted": n.width_then,
                    "width left (0-1)": n.left,
                }
                for n in found
            ]
        )

    def to_date(self) -> pd.DataFrame:
        """Candidates for radiocarbon dating, best first."""
        found = dating_candidates(self.project, self.packs)
        frame = pd.DataFrame([asdict(c) for c in found.candidates]).rename(columns={"mass_g": "mass (g)"})
        frame.attrs = {"refused": found.refused}
        return frame.drop(columns="places", errors="ignore")

    def _units(self, level: Level) -> Units:
        if level not in LEVELS:
            raise ValueError(f"'{level}' is no level; known are {', '.join(LEVELS)}")
        if level not in self._levels:
            self._levels[level] = Units(self._table, level, self.packs, self.project.preservation)
        return self._levels[level]


def selector(wanted: Wanted) -> Selector | None:
    """
    A selector from the words of one.

    >>> selector({"taxon": "Zea mays", "part": ["kernel", "cupule"]}).part
    ('kernel', 'cupule')
    """
    if wanted is None or isinstance(wanted, Selector):
        return wanted
    known = {f.name: f for f in fields(Selector)}
    unknown = [key for key in wanted if key not in known and key != "certain"]
    if unknown:
        raise ValueError(f"a selector has no '{unknown[0]}'; known are {', '.join(known)}")
    made: dict[str, Any] = {}
    for key, value in wanted.items():
        if isinstance(value, bool):
            made["is_certain" if key == "certain" else key] = value
        else:
            made[key] = (value,) if isinstance(value, str | int) else tuple(value)
    return Selector(**made)


@dataclass(frozen=True, slots=True)
class _Part:
    name: str
    values: np.ndarray | None
    has_unit: bool = True


def _named(shown: ShownMeasure, column: Column, units: int) -> dict[str, np.ndarray]:
    unit = MEASURES[shown.measure].unit
    parts = [_Part(shown.name, column.value)]
    if column.has_interval:
        parts += [_Part(f"{shown.name} low", column.low), _Part(f"{shown.name} high", column.high)]
    parts.append(_Part(f"{shown.name} n", column.n, has_unit=False))
    return {
        f"{part.name} ({unit})" if part.has_unit and unit else part.name: np.broadcast_to(part.values, (1, units))[
            0
        ].copy()
        for part in parts
        if part.values is not None
    }
