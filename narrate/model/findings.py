"""What was found in each subject, summed up for those who tell and draw it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from narrate.model.ids import PartId, Subject, TaxonId
from narrate.model.measurement import Measurement
from narrate.model.plant_groups import GroupAmount, GroupSpread, PlantChange, SpreadChange
from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """One taxon and part, in one condition, in one subject."""

    taxon: TaxonId | None
    written: str
    """The name as written (the first writing, if several mean the same)."""
    part: PartId
    condition: str
    counted: int
    """Items as counted; 0 where only a mass or a presence was noted."""
    estimated: float
    """Items scaled up for the unsorted share. Never used in a test."""
    mass_g: float | None = None
    """Mass as weighed; None where none was weighed."""
    uncounted_g: float = 0.0
    """Of the mass, what was weighed and not counted: it is none of the items' own."""
    unweighed: int = 0
    """Of the counted items, those that were not weighed: the mass is none of theirs."""
    is_noted: bool = False
    """True where at least one row only notes presence."""
    fragments: int = 0
    """Of the counted items, those recorded as fragments."""
    doubtful: int = 0
    """Of the counted items, those named 'cf.' or 'A/B'."""
    doubtful_fragments: int = 0
    """Of the counted items, those that are both: fragments named 'cf.' or 'A/B'."""
    only_cf: bool = False
    """True where every row of it is a 'cf.'."""
    samples: int = 0
    """Samples of the subject that hold it."""
    of_samples: int = 0
    """Samples of the subject, sterile ones included."""
    ubiquity: Measurement | None = None
    """samples / of_samples with its Wilson interval."""
    ref: str = ""
    """What `narrate explain` takes: '<subject>/found.<taxon>.<part>'."""
    places: tuple[Place, ...] = ()
    """The rows of the count sheets."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SubjectFindings:
    """All tallies and measurements of one subject."""

    subject: Subject
    samples: int
    """Samples, sterile ones included."""
    samples_with_remains: int
    litres: float | None
    """Sum of the recorded volumes; None if none was recorded."""
    litres_missing_for: int = 0
    """Samples without a recorded volume."""
    samples_with_named_wood: int | None = None
    """Samples whose wood was looked at and named: what a share of samples with a wood is of. None: all of them."""
    tallies: tuple[Tally, ...] = ()
    """Most items first, then by name."""
    measurements: Mapping[str, Measurement] = field(default_factory=dict)
    """By name, such as 'items', 'density', 'kernels_per_cupule'."""
    places: Mapping[str, tuple[Place, ...]] = field(default_factory=dict)
    """Rows behind each measurement, by the same names; 'record' holds the subject's own records."""


CHANCE = 0.05
"""Chance of a difference, all plants that were tested allowed for, from which it is not told as one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """A group of plants or one plant that lies in more samples, or in fewer, of a later phase."""

    what: str
    first: str
    last: str
    kind: str = ""
    rises: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Findings:
    """Findings of every subject of a project, or of what may be disclosed of it."""

    subjects: Mapping[Subject, SubjectFindings]
    spreads: tuple[GroupSpread, ...] = ()
    """In how many samples the plant groups of the packs were found."""
    amounts: tuple[GroupAmount, ...] = ()
    """How many items of them there were per litre."""
    changes: tuple[SpreadChange, ...] = ()
    """How that differs between every two phases."""
    plants: tuple[PlantChange, ...] = ()
    """In how many samples of every two phases single plants were found, and whether that differs beyond chance."""
    woods: tuple[PlantChange, ...] = ()
    """The same for single woods, in the samples whose wood was looked at."""
    beside_others: Mapping[str, Measurement] = field(default_factory=dict)
    """Share of samples, with its interval, of what other digs of the region published, by the id of the comparison."""
    only_in_part: frozenset[Changed] = frozenset()
    """Of what may be disclosed: changes that it alone would show, and the whole does not."""

    def changed(self) -> frozenset[Changed]:
        """Groups and single plants whose share of samples differs between two phases beyond chance."""
        of_groups = (
            Changed(what=c.group, first=c.first, last=c.last, kind=c.kind, rises=(c.difference.value or 0) > 0)
            for c in self.changes
            if (c.difference.low or 0) > 0 or (c.difference.high or 0) < 0
        )
        of_plants = (
            Changed(what=c.taxon, first=c.first, last=c.last, rises=c.rises) for c in self.plants if c.p_holm < CHANCE
        )
        of_woods = (
            Changed(what=f"wood of {c.taxon}", first=c.first, last=c.last, rises=c.rises)
            for c in self.woods
            if c.p_holm < CHANCE
        )
        return frozenset((*of_groups, *of_plants, *of_woods))

    def of(self, subject: Subject) -> SubjectFindings:
        return self.subjects[subject]
