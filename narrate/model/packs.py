"""All that packs know: words, taxa, statements, rules, audiences, sources."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from narrate.model.audiences import Audience
from narrate.model.counts import AbundanceClass
from narrate.model.ids import PartId, RuleId, SourceKey, StatementId, TaxonId
from narrate.model.languages import Language
from narrate.model.observations import Elsewhere, Observation
from narrate.model.pack_changes import PackChange
from narrate.model.plant_groups import PlantGroup
from narrate.model.plants import Condition, ContextKind, CountingRule, EarLine, Exchange, Part, Taxon
from narrate.model.rules import Limit, Rule, ShownMeasure, Statement
from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A work that packs cite, once."""

    key: SourceKey
    authors: str
    year: str
    title: str
    container: str = ""
    """Journal with volume, book with editors, series, address of a stored page's publisher."""
    pages: str = ""
    kind: str = "work"
    """work, practice (common practice, no single authority) or judgement (of the pack's makers)."""
    known: str = "memory-M"
    """How well it is known that the work says what it is cited for."""
    entry: str = ""
    """read: authors, year, title, container and pages were held against print; empty: as `known` says."""
    note: str = ""
    region: str = ""
    """Region whose remains or people it is about, a region pack or another such word (near-east); empty: of none."""
    place: Place

    def is_analogy(self, regions: Collection[str]) -> bool:
        """Whether it is about another region than those of a project, so that it bears on them by analogy alone."""
        return bool(self.region) and self.region not in regions

    @property
    def of_region(self) -> str:
        """
        The region as a text names it.

        >>> from narrate.problems import Place
        >>> place = Place(path="x")
        >>> [Source(key="k", authors="", year="", title="", region=r, place=place).of_region for r in
        ...  ("arid-southwest", "near-east", "temperate-europe", "andes", "")]
        ['the Southwest', 'the Near East', 'Europe', 'Andes', '']
        """
        return REGIONS.get(self.region) or self.region.replace("-", " ").title()


REGIONS = {
    "arid-southwest": "the Southwest", "eastern-north-america": "eastern North America",
    "temperate-europe": "Europe", "near-east": "the Near East",
}  # fmt: skip
"""Regions as texts name them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    parts: Mapping[PartId, Part]
    conditions: Mapping[str, Condition]
    context_kinds: Mapping[str, ContextKind]
    methods: Mapping[str, str]
    """Method -> one sentence that explains it."""
    preservations: Mapping[str, tuple[str, ...]]
    """Preservation of a project -> the conditions that are ancient under it."""
    part_lookup: Mapping[str, PartId] = field(default_factory=dict)
    """Any spelling in lower case -> part; the same for the next two."""
    condition_lookup: Mapping[str, str] = field(default_factory=dict)
    kind_lookup: Mapping[str, str] = field(default_factory=dict)
    method_lookup: Mapping[str, str] = field(default_factory=dict)
    counting: tuple[CountingRule, ...] = ()
    """What is one individual, by sort of piece."""
    ears: tuple[EarLine, ...] = ()
    exchanges: tuple[Exchange, ...] = ()
    abundance: Mapping[str, AbundanceClass] = field(default_factory=dict)
    """Sign of a scale in lower case -> what it means."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Packs:
    words: Words
    taxa: Mapping[TaxonId, Taxon]
    taxon_lookup: Mapping[str, TaxonId]
    """Any scientific name, synonym or shorthand in lower case -> taxon."""
    statements: Mapping[StatementId, Statement]
    rules: Mapping[RuleId, Rule]
    audiences: Mapping[str, Audience]
    sources: Mapping[SourceKey, Source]
    weights: Mapping[str, float]
    """weak, moderate, strong -> log-odds."""
    limits: tuple[Limit, ...]
    shown: tuple[ShownMeasure, ...]
    questions: Mapping[str, str]
    """Question id -> how it is asked, in the order of telling."""
    tabled: tuple[ShownMeasure, ...] = ()
    """Further measurements by name, for tables and notebooks alone."""
    plant_groups: tuple[PlantGroup, ...] = ()
    """Plants whose spread over the samples is told together, in the order of telling."""
    observations: tuple[Observation, ...] = ()
    """Signs that people note in words, and what they bear on."""
    elsewhere: tuple[Elsewhere, ...] = ()
    """What other digs of the region published, to be set beside this one."""
    regions: tuple[str, ...] = ()
    """Region packs in use, in the project's order."""
    languages: Mapping[str, Language] = field(default_factory=dict)
    """Languages by id: words that claim too much, and for all but English the words and tables of telling."""
    changes: tuple[PackChange, ...] = ()
    """What the project changed in the packs that come with narrate."""

    def in_force(self, rule: Rule) -> bool:
        """A retired rule and a rule of other regions are not in force."""
        return rule.status != "retired" and (not rule.regions or bool(set(rule.regions) & set(self.regions)))
