"""Statements that may be true of the past, and rules that argue for or against them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from narrate.model.ids import Level, PartId, RuleId, SourceKey, StatementId
from narrate.problems import Place

Verdict = Literal["holds", "fails", "cannot tell"]
Weight = Literal["weak", "moderate", "strong"]
WEIGHTS: tuple[Weight, ...] = ("weak", "moderate", "strong")
RuleStatus = Literal["draft", "reviewed", "retired"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """Something that may be true of a sample, a context, a phase or the whole dig."""

    id: StatementId
    question: str
    title: str
    """Short heading, such as 'Maize cobs as fuel'."""
    clause: str
    """For specialists, past tense, without a full stop: 'maize cobs were burned as fuel'."""
    noun: str
    """The same as a noun phrase: 'the use of maize cobs as fuel'."""
    plain: str
    """For visitors: 'people burned corn cobs in their fires'."""
    plain_noun: str
    """For visitors, as a noun phrase: 'fires fed with corn cobs'."""
    means: str = ""
    """What it would mean if it were true."""
    does_not_mean: str = ""
    """What readers must not take from it."""
    rivals: tuple[StatementId, ...] = ()
    after: tuple[StatementId, ...] = ()
    """Work that was done before wherever this is true, as it burns or uses the waste of it."""
    prior: float = -0.9
    """Log-odds before any argument."""
    sources: tuple[SourceKey, ...] = ()
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Selector:
    """Which rows of the count sheets are meant. An empty field does not narrow."""

    taxon: tuple[str, ...] = ()
    """Taxa; each also means everything below it."""
    not_taxon: tuple[str, ...] = ()
    family: tuple[str, ...] = ()
    part: tuple[PartId, ...] = ()
    role: tuple[str, ...] = ()
    """Roles of parts: edible, byproduct, wood …"""
    not_role: tuple[str, ...] = ()
    tag: tuple[str, ...] = ()
    """Tags of taxa; a row is meant if its taxon has any of them."""
    not_tag: tuple[str, ...] = ()
    use: tuple[str, ...] = ()
    """Uses that the taxon pack records for that part (or for no part in particular)."""
    status: tuple[str, ...] = ()
    """crop, native, introduced, either."""
    field_weed: tuple[str, ...] = ()
    """strong, moderate, weak, none."""
    ripens_within: tuple[int, ...] = ()
    """Months: the whole window of that taxon and part lies inside them."""
    ripens_in: tuple[int, ...] = ()
    """Months: the window touches at least one of them."""
    keeping: tuple[str, ...] = ()
    condition: tuple[str, ...] = ()
    """Conditions; empty means those expected to survive under the project's preservation."""
    any_condition: bool = False
    completeness: tuple[str, ...] = ()
    fraction: tuple[str, ...] = ()
    is_certain: bool = False
    """True leaves out 'cf.' and 'A/B' names."""
    later_than_phase: bool = False
    """True keeps only taxa whose earliest date in the region is later than the end of the subject's phase."""
    sow: tuple[str, ...] = ()
    """autumn, spring, both: when crops are sown among which the taxon thrives."""
    soil: tuple[str, ...] = ()
    """Soils of the taxon: acid, clay, lime-rich, wet, rich, poor …"""
    height: tuple[str, ...] = ()
    """low, medium, tall, twining."""
    seed: tuple[str, ...] = ()
    """Sorts of seed: 'small', 'headed', or several words that must all be true of it: 'small free heavy'."""
    life: tuple[str, ...] = ()
    """annual, biennial, perennial."""
    habit: tuple[str, ...] = ()
    """grass, herb, vine, shrub, tree, aquatic, fungus."""
    context_kind: tuple[str, ...] = ()
    """Kinds of context: only what lay in samples from them."""
    context_trait: tuple[str, ...] = ()
    """Traits of kinds of context: thermal, storage, refuse …; only what lay in samples from such kinds."""
    not_context_trait: tuple[str, ...] = ()
    not_security: tuple[str, ...] = ()
    """Securities of contexts: leaves out what lay in disturbed ones, say."""
    not_deposit: tuple[str, ...] = ()
    """Deposits of contexts: leaves out what lay in those of unknown deposit, say."""

    @property
    def asks_for_contexts(self) -> bool:
        return bool(
            self.context_kind or self.context_trait or self.not_context_trait or self.not_security or self.not_deposit
        )


JudgedOn = Literal["interval", "value"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """A leaf: a measure held against a bound, judged on the interval."""

    measure: str
    of: Selector | None = None
    to: Selector | None = None
    at_least: float | None = None
    at_most: float | None = None
    name: str = ""
    """Name under which texts of the rule may quote the value."""
    judged_on: JudgedOn = "interval"
    """'value' for bands of convention that are read off the figure itself; never alone, but beside an interval."""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A leaf: what the records say of the subject."""

    fact: str
    """context_kind, trait, deposit, security, preservation, heavy_fraction_sorted …"""
    is_any_of: tuple[str, ...] = ()
    is_none_of: tuple[str, ...] = ()
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """'all' fails if any fails, else cannot tell if any cannot tell; 'any' the other way round; 'none' is not any."""

    kind: Literal["all", "any", "none"]
    criteria: tuple[Criterion, ...]
    place: Place


Criterion = Bound | Fact | Group


@dataclass(frozen=True, slots=True, kw_only=True)
class Remains:
    """One row of an example inside a rule."""

    taxon: str
    part: PartId
    count: int = 0
    mass_g: float | None = None
    condition: str = "charred"
    completeness: str = "whole"
    sample: int = 1
    """Which of the example's samples holds it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A case inside a rule: remains, what the records say, and what the rule must answer."""

    name: str
    remains: tuple[Remains, ...]
    context_kind: str = "pit"
    deposit: str = "secondary"
    security: str = "sealed"
    volume_l: float | None = 10.0
    samples: int = 1
    preservation: str = "charred"
    phases: tuple[str, ...] = ()
    """One phase name a sample, in order of time; empty: all of one phase."""
    kinds: tuple[str, ...] = ()
    """One kind of context a sample, each in a context of its own; empty: all of `context_kind`."""
    heavy_fraction: str = "sorted"
    """sorted, not sorted or unknown."""
    phase_start: int | None = None
    phase_end: int | None = None
    intrusions: str = "none"
    recovery: tuple[int, int] | None = None
    """Seeds added and recovered."""
    proportion_sorted: float = 1.0
    noted: tuple[str, ...] = ()
    """Ids of observations that its notes have."""
    expect: Verdict
    region: str = ""
    """Region pack whose plants it names; empty: the first of the rule's regions, or any."""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One argument for or against a statement."""

    id: RuleId
    title: str
    status: RuleStatus
    direction: Literal["for", "against"]
    statement: StatementId
    about: tuple[Level, ...]
    says: str
    """What was seen, as a clause for specialists; may quote named values: '{kernels_per_cupule}'."""
    says_plain: str
    """The same for visitors."""
    why: str
    misleads_when: tuple[str, ...]
    sources: tuple[SourceKey, ...]
    known: str
    """How well its basis is known (see `plants.Known`)."""
    needs: tuple[Criterion, ...] = ()
    criteria: Criterion
    weight: Weight
    examples: tuple[Example, ...]
    is_local: bool = False
    """True for a rule of the project's own packs."""
    regions: tuple[str, ...] = ()
    """Region packs under which it is in force; empty: under all."""
    evidence: str = ""
    """Key that rules share which rest on the same remains: of those that hold, only the heaviest of a side is added."""
    changed: str = ""
    """Why the project set one of its bounds or its weight otherwise; empty where it is as it came."""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownMeasure:
    """A measurement that every subject is given by name, for tables, charts and narratives."""

    name: str
    """Such as 'kernels_per_cupule'; key of `SubjectFindings.measurements`."""
    title: str
    """Such as 'Kernels per cupule'."""
    measure: str
    of: Selector | None = None
    to: Selector | None = None
    explained: str = ""
    """One sentence for the method page: what it misleads on."""
    plain: str = ""
    """The title for visitors; empty: the title."""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """What some circumstance lets a claim at most support."""

    id: str
    when: str
    """Name of a circumstance that judging knows: 'deposit is tertiary', 'few items' …"""
    grade: str
    """The strongest grade allowed."""
    questions: tuple[str, ...] = ()
    """Questions it applies to; empty means all but work and integrity."""
    spares: tuple[StatementId, ...] = ()
    """Statements that the circumstance itself speaks for, so that it is no reason to doubt them."""
    says: str
    """'deposit is tertiary'."""
    lifts: str
    """What would lift it."""
    plain: str = ""
    """What it says to visitors; empty: `says`."""
    known: str = "convention"
    sources: tuple[SourceKey, ...] = ()
    threshold: float | None = None
