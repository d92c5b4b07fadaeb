"""What every context of the dig held, summed up once, so that each can be set against the others."""

from __future__ import annotations

import statistics
from collections.abc import Mapping
from dataclasses import dataclass

from narrate.model.findings import Findings, Tally
from narrate.model.ids import Subject
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.problems import Place

ENOUGH_OTHERS = 4
"""Other contexts below which none is said to outdo all (judgement of the makers)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OfKind:
    """The contexts of one kind in which kernels can be set against cupules."""

    contexts: tuple[Subject, ...] = ()
    lowest: float = 0.0
    highest: float = 0.0


Weight = tuple[Place, str, float]
"""The place of a row, its size class (empty where nobody wrote it), and its grams, the unsorted share included."""


class Surroundings:
    """
    The contexts that held remains, and where each stands among them.

    Every question is answered from what was summed up once, and its answer says no more than is asked: an account has
    to be told anew only where an answer is another.
    """

    def __init__(
        self, densities: Mapping[Subject, float], taxa: Mapping[Subject, float],
        holders: Mapping[str, set[Subject]], of_kinds: Mapping[str, OfKind], many: int,
        weights: Mapping[str, tuple[Weight, ...]] | None = None,
    ) -> None:  # fmt: skip
        self.many = many
        """How many they are."""
        self.measured = tuple(densities)
        """Those whose density is known, in the project's order."""
        self.highest_density = max(densities.values(), default=None)
        self.median_density = statistics.median(densities.values()) if densities else None
        self.behind_median = _behind_median(densities)
        """Those named where a context is set against the median: all of a small dig; of a large one the lowest,
        those in the middle and the highest."""
        self._values = {"density": densities, "taxa": taxa}
        # Sorting keeps the project's order among equals.
        self._first = {
            name: sorted(values.items(), key=lambda pair: -pair[1])[:2] for name, values in self._values.items()
        }
        self._holders = holders
        self._of_kinds = of_kinds
        self._weights = weights or {}

    def weights(self, *samples: str) -> tuple[Weight, ...]:
        """What was weighed in some samples: where it is written, its size class, and its grams scaled up."""
        return tuple(weight for sample in samples for weight in self._weights.get(sample, ()))

    def outdone(self, name: str, context: str) -> Subject | None:
        """The context that comes next, where one has more, by 'density' or 'taxa', than any of enough others."""
        values, subject = self._values[name], Subject(level="context", id=context)
        own = values.get(subject)
        others = [(other, value) for other, value in self._first[name] if other != subject]
        if own is None or len(values) - 1 < ENOUGH_OTHERS or own <= others[0][1]:
            return None
        return others[0][0]

    def is_found_once(self, genus: str) -> bool:
        """Whether a genus, or taxon where there is none, was found in one context alone."""
        return len(self._holders.get(genus, ())) == 1

    def of_kind(self, kind: str) -> OfKind:
        """The contexts of a kind with enough kernels and cupules, and their extremes."""
        return self._of_kinds.get(kind, OfKind())


ALL_NAMED = 30
"""Contexts up to which each is named where one is set against their median (judgement of the makers)."""


def _behind_median(densities: Mapping[Subject, float]) -> tuple[Subject, ...]:
    if len(densities) <= ALL_NAMED:
        return tuple(densities)
    ranked = sorted(densities, key=densities.__getitem__)
    middle = ranked[(len(ranked) - 1) // 2 : len(ranked) // 2 + 1]
    return tuple(dict.fromkeys((ranked[0], *middle, ranked[-1])))


COMPARED_FROM = 10
"""Items below which the ratio of a context is not set beside those of others (judgement of the makers)."""


def surroundings(project: Project, packs: Packs, findings: Findings, ancient: frozenset[str]) -> Surroundings:
    """The contexts with remains, their densities, and which of them hold which plants."""
    many = 0
    densities: dict[Subject, float] = {}
    taxa: dict[Subject, float] = {}
    holders: dict[str, set[Subject]] = {}
    ratios: dict[str, dict[Subject, float]] = {}
    for context in project.contexts:
        subject = Subject(level="context", id=context.id)
        found = findings.subjects.get(subject)
        if found is None or not found.samples_with_remains:
            continue
        many += 1
        density, kinds, ratio = (found.measurements.get(name) for name in ("density", "taxa", "kernels_per_cupule"))
        if density is not None and density.value is not None:
            densities[subject] = density.value
        if kinds is not None and kinds.value:
            taxa[subject] = kinds.value
        if ratio is not None and ratio.value is not None and (ratio.n or 0) >= COMPARED_FROM:
            ratios.setdefault(context.kind, {})[subject] = ratio.value
        for tally in found.tallies:
            if tally.condition in ancient and tally.taxon is not None:
                holders.setdefault(genus_of(tally, packs), set()).add(subject)
    of_kinds = {
        kind: OfKind(contexts=tuple(values), lowest=min(values.values()), highest=max(values.values()))
        for kind, values in ratios.items()
    }
    weights: dict[str, tuple[Weight, ...]] = {}
    for row in project.counts:
        if row.mass_g:
            weight = (row.place, row.size_class, row.mass_g / row.proportion_sorted)
            weights[row.sample] = (*weights.get(row.sample, ()), weight)
    return Surroundings(densities, taxa, holders, of_kinds, many, weights)


def genus_of(tally: Tally, packs: Packs) -> str:
    """The genus of a find; the taxon itself where it has none."""
    taxon = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return (taxon.genus or taxon.id) if taxon is not None else tally.written
