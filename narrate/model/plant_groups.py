"""Groups of plants, and in how many samples each was found."""

from __future__ import annotations

from dataclasses import dataclass
from math import comb

from narrate.model.ids import ContextId, PhaseId, TaxonId
from narrate.model.measurement import Measurement
from narrate.model.rules import Selector
from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantGroup:
    """Plants whose spread over the samples is told together."""

    id: str
    name: str
    plain: str
    """The same for visitors."""
    of: Selector
    """Which remains are meant."""
    is_singular: bool = False
    """True where a verb after the name stands in the singular."""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupSpread:
    """Samples that hold a group, of the samples of a phase, of a kind of context, of both, or of the dig."""

    group: str
    phase: PhaseId | None = None
    """None: of all phases, and of none."""
    kind: str = ""
    """Kind of context; empty: of all."""
    with_it: int
    of_samples: int
    ubiquity: Measurement
    """with_it / of_samples with its Wilson interval."""
    contexts: tuple[int, int] = (0, 0)
    """Contexts that hold the group, of those that were sampled: samples of one context are not independent."""
    only_cf: int = 0
    """Of the samples that hold it, those in which every find of it is named only as cf.: they are counted, and told."""
    refs: tuple[str, ...] = ()
    """What `narrate explain` takes: one find of each sample that holds the group."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupAmount:
    """Items of a group per litre: in a phase, a kind of context, both, or the dig."""

    group: str
    phase: PhaseId | None = None
    """None: of all phases, and of none."""
    kind: str = ""
    """Kind of context; empty: of all."""
    items: int
    """Counted in samples whose volume is known."""
    litres: float
    """Of the samples with a recorded volume."""
    per_litre: Measurement
    """Items scaled up for the unsorted share, with the interval of a weighted sum of counts; no value without litres."""
    richest: ContextId | None = None
    """Context that holds most of it."""
    without_richest: Measurement
    """The same without that context; no value where nothing else was floated."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadChange:
    """Ubiquity of a group in a later phase less that in an earlier one, over all samples or those of one kind."""

    group: str
    first: PhaseId
    last: PhaseId
    kind: str = ""
    difference: Measurement
    """With Newcombe's interval."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantChange:
    """Samples that hold one plant in two phases, tested together with all other plants found often enough."""

    taxon: TaxonId
    first: PhaseId
    last: PhaseId
    with_it: tuple[int, int]
    """Samples of the first and of the last phase that hold it."""
    of_samples: tuple[int, int]
    p: float
    """Fisher's exact test, two-sided."""
    p_holm: float
    """The same after Holm's correction for all plants tested between the two phases."""
    tested: int
    """Plants tested between the two phases."""
    hangs_on: tuple[ContextId, ...] = ()
    """Contexts without any one of which a difference that outlasts the correction would no longer do so."""
    contexts: tuple[tuple[int, int], tuple[int, int]] = ((0, 0), (0, 0))
    """Of the first and of the last phase: contexts that hold it, of those that were sampled."""
    p_contexts: float = 1.0
    """The same test with contexts for samples."""
    p_contexts_holm: float = 1.0
    """The same after Holm's correction for all plants tested."""
    refs: tuple[str, ...] = ()
    """One find of each sample that holds it."""

    @property
    def rises(self) -> bool:
        return self.with_it[1] * self.of_samples[0] > self.with_it[0] * self.of_samples[1]


def is_more_than_chance(near: int, tested: int, chance: float = 0.05) -> bool:
    """
    Whether so many plants under a chance of `chance` each are more than their number would bring where none changed.

        P(X >= near) < chance,  X binomial of `tested` trials

    near:      plants whose own test gives a p below `chance`.
    tested:    plants that were tested.
    Misleads:  plants that come together are not independent, so that chance brings several at a time; and the p of an
               exact test falls below `chance` less often than `chance` says, so that the reckoning is a cautious one.
    Source:    binomial distribution; that p values under no change are spread evenly: common practice, no source.

    >>> is_more_than_chance(4, 10), is_more_than_chance(1, 10), is_more_than_chance(2, 20)
    (True, False, False)
    """
    few = sum(comb(tested, i) * chance**i * (1 - chance) ** (tested - i) for i in range(near))
    return 1 - few < chance
