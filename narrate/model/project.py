"""All that was read from one project folder."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from narrate.model.counts import CountRow
from narrate.model.ids import ContextId, PhaseId, SampleId
from narrate.model.report_blocks import ChecklistItem, ReportBlock
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context, Feature, Phase
from narrate.model.style import Style
from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Author:
    name: str
    role: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Disclosure:
    """What may never reach a public output."""

    restricted_contexts: frozenset[ContextId] = frozenset()
    restricted_fields: frozenset[str] = frozenset({"location"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Project:
    title: str
    summary: str = ""
    region_packs: tuple[str, ...] = ()
    preservation: str = "charred"
    authors: tuple[Author, ...] = ()
    report: Mapping[str, str] = field(default_factory=dict)
    phases: tuple[Phase, ...] = ()
    contexts: tuple[Context, ...] = ()
    """In natural order of their ids, as are samples."""
    samples: tuple[Sample, ...] = ()
    counts: tuple[CountRow, ...] = ()
    disclosure: Disclosure = Disclosure()
    style: Style = field(default_factory=Style)
    """How years, numbers and units are written, where the project says so."""
    approved_only: frozenset[str] = frozenset()
    """What is built from approved words alone: 'public' (the site for visitors), 'report'."""
    audiences: tuple[str, ...] = ()
    """Audiences that come with narrate and are told beside the usual four, such as 'public-es'."""
    address: str = ""
    """Where the public site will stand, such as 'https://example.org/dig/'; empty where that is not known."""
    contact: str = ""
    """Whom readers, and above all descendants, may write to; stands at the foot of each public page."""
    report_blocks: tuple[ReportBlock, ...] = ()
    """What the project says of the blocks of its section: order, headings, own words, what is left out."""
    report_checklist: tuple[ChecklistItem, ...] = ()
    """What the project itself asks of its section."""
    is_withheld_in_part: bool = False
    """True once something restricted was taken out."""
    place: Place
    _contexts: Mapping[ContextId, Context] = field(init=False, repr=False, compare=False)
    """By id; the first of each, as long as nobody has mended that there are two."""
    _samples: Mapping[SampleId, Sample] = field(init=False, repr=False, compare=False)
    _samples_of: Mapping[ContextId, tuple[Sample, ...]] = field(init=False, repr=False, compare=False)
    _contexts_of: Mapping[str, tuple[Context, ...]] = field(init=False, repr=False, compare=False)
    """By feature."""

    def __post_init__(self) -> None:
        samples_of: dict[ContextId, list[Sample]] = {}
        for sample in self.samples:
            samples_of.setdefault(sample.context, []).append(sample)
        contexts_of: dict[str, list[Context]] = {}
        for context in self.contexts:
            if context.feature:
                contexts_of.setdefault(context.feature, []).append(context)
        object.__setattr__(self, "_contexts_of", {id: tuple(contexts) for id, contexts in contexts_of.items()})
        object.__setattr__(self, "_contexts", {context.id: context for context in reversed(self.contexts)})
        object.__setattr__(self, "_samples", {sample.id: sample for sample in reversed(self.samples)})
        object.__setattr__(self, "_samples_of", {id: tuple(samples) for id, samples in samples_of.items()})

    def context(self, id: ContextId) -> Context:
        return self._contexts[id]

    def samples_of(self, context: ContextId) -> tuple[Sample, ...]:
        return self._samples_of.get(context, ())

    def contexts_of(self, feature: str | None) -> tuple[Context, ...]:
        """Contexts of one feature, in their order; none of None."""
        return () if feature is None else self._contexts_of.get(feature, ())

    def find_context(self, id: str) -> Context | None:
        return self._contexts.get(ContextId(id))

    @property
    def licence(self) -> str:
        """As the project states it under `report`, in either spelling; empty where it does not."""
        return " ".join((self.report.get("licence") or self.report.get("license") or "").split())

    def dated_contexts(self) -> frozenset[ContextId]:
        """Contexts that the account of radiocarbon dates (`report: radiocarbon`) names by their ids."""
        words = set(re.findall(r"[\w.-]*\w", self.report.get("radiocarbon", "")))
        return frozenset(ContextId(word) for word in words if word in self._contexts)

    def restricted_ids(self) -> tuple[str, ...]:
        """Ids of restricted contexts, of their samples, and of features that only restricted contexts make."""
        hidden = self.disclosure.restricted_contexts
        samples = [sample.id for sample in self.samples if sample.context in hidden]
        open_features = {context.feature for context in self.contexts if context.id not in hidden}
        features = {c.feature for c in self.contexts if c.feature and c.feature not in open_features}
        return (*sorted(hidden), *samples, *sorted(features))

    def phase(self, id: PhaseId | None) -> Phase | None:
        return next((phase for phase in self.phases if phase.id == id), None)

    def features(self) -> tuple[Feature, ...]:
        """Features in natural order, each with its contexts."""
        members: dict[str, list[ContextId]] = {}
        for context in self.contexts:
            if context.feature is not None:
                members.setdefault(context.feature, []).append(context.id)
        return tuple(Feature(id=id, contexts=tuple(ids)) for id, ids in members.items())  # type: ignore[arg-type]

    def sample(self, id: SampleId) -> Sample:
        return self._samples[id]
