"""How many items of each group of plants there were per litre: by phase, by kind of context, and by both."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from narrate.measures.intervals import weighted_poisson
from narrate.measures.spread import Where, of_its_time, places_of_samples
from narrate.measures.units import Units
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs
from narrate.model.plant_groups import GroupAmount, PlantGroup
from narrate.model.project import Project

NO_LITRES = "no volume was recorded"


def group_amounts(project: Project, packs: Packs, samples: Units) -> tuple[GroupAmount, ...]:
    """
    Items per litre of every group of the packs: in the dig, each phase, each kind of context, each kind by phase.

        density = Σ (kᵢ / fᵢ) / litres;   kᵢ items counted in a class of which the share fᵢ was sorted

    samples:   units of the level 'sample'.
    Leaves:    samples without a recorded volume, on both sides; plants of the Old World that the region had only after
               the phase; marks of presence, which hold no number.
    Misleads:  where recovery differed, every density is a minimum. The interval is that of counts: items that came down
               together make it too narrow, so beside it stands what is left without the richest context.
    Source:    Miller 1988, in Hastorf & Popper (eds), Current Paleoethnobotany, pp. 72–85; Fay & Feuer 1997,
               Statistics in Medicine 16:791–801 (both from memory); that the richest is left out: common practice, no
               source.
    """
    places = places_of_samples(project)
    contexts = [sample.context for sample in project.samples]
    made = []
    for group in packs.plant_groups:
        found = _by_sample(samples, group)
        made += [_amount(group, where, of, found, contexts) for where, of in places.items()]
    return tuple(made)


_BySample = tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray, np.ndarray]
"""Of each sample: items counted, items scaled up, their variance, the largest weight of one, litres or NaN."""


def _by_sample(samples: Units, group: PlantGroup) -> _BySample:
    table = samples.table
    rows = of_its_time(samples, group)
    at, share = table.row_sample[rows], table.share[rows]
    counted, total, variance = (np.zeros(len(table.sample_ids)) for _ in range(3))
    np.add.at(counted, at, table.counted[0][rows])
    np.add.at(total, at, table.counted[0][rows] + table.unsorted[0][rows])
    np.add.at(variance, at, table.counted[0][rows] / np.square(share))
    weight = np.zeros(len(table.sample_ids))
    np.maximum.at(weight, at, 1 / share)
    weight = np.where(weight > 0, weight, 1 / table.sorted_share)
    return counted, total, variance, weight, table.volume_l


def _amount(
    group: PlantGroup, where: Where, of: Sequence[int], found: _BySample, contexts: Sequence[str]
) -> GroupAmount:
    volume = found[4]
    measured = [i for i in of if np.isfinite(volume[i]) and volume[i] > 0]
    by_context: dict[str, float] = {}
    for i in measured:
        by_context[contexts[i]] = by_context.get(contexts[i], 0.0) + float(found[1][i])
    richest = max(by_context, key=lambda id: (by_context[id], id), default=None)
    without = [i for i in measured if contexts[i] != richest]
    return GroupAmount(
        group=group.id,
        phase=where[0],
        kind=where[1],
        items=int(round(sum(float(found[0][i]) for i in measured))),
        litres=float(round(sum(float(volume[i]) for i in measured), 6)),
        per_litre=_density(measured, found),
        richest=richest,  # type: ignore[arg-type]
        without_richest=_density(without, found),
    )


def _density(of: Sequence[int], found: _BySample) -> Measurement:
    if not of:
        return Measurement(measure="density", value=None, unit="items per litre", reason=NO_LITRES)
    counted, total, variance, weight, volume = (part[list(of)] for part in found)
    litres = float(volume.sum())
    # With nothing found the next item could have had the weight of the least sorted sample; else that of those found.
    heaviest = float(weight[total > 0].max() if (total > 0).any() else weight.max())
    ends = weighted_poisson(*(np.array([value]) for value in (float(total.sum()), float(variance.sum()), heaviest)))
    low, high = (float(end[0]) / litres for end in ends)
    return Measurement(
        measure="density", value=float(total.sum()) / litres, low=low, high=high, unit="items per litre",
        n=int(round(float(counted.sum()))),
    )  # fmt: skip
