"""The smallest of the changes that turn a verdict, on each side."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from narrate.judging.elsewhere import SpreadOut
from narrate.judging.facts import HOLDS
from narrate.judging.turning_words import said, where
from narrate.judging.variants import STEPS, Varied
from narrate.judging.weigh import VERDICTS
from narrate.measures.count_table import CountTable
from narrate.model.claims import Turning
from narrate.model.packs import Packs
from narrate.model.rules import Verdict


@dataclass(frozen=True, slots=True)
class End:
    """A smallest change of one side: up, down, or that which makes the claim hold."""

    step: int
    candidate: int
    turning: Turning


Ends = dict[int, tuple[End | None, ...]]
"""By unit: the ends of the three sides."""


def nearest(first: Ends, second: Ends) -> Ends:
    """The smaller change of each side; where both are as small, the first, which does not ask where."""
    found = dict(first)
    for unit, sides in second.items():
        before = found.get(unit, (None,) * len(sides))
        found[unit] = tuple(
            b if a is None or (b is not None and b.step < a.step) else a for a, b in zip(before, sides, strict=True)
        )
    return found


def in_order(sides: tuple[End | None, ...]) -> tuple[Turning, ...]:
    ends = sorted((end for end in sides if end is not None), key=lambda end: (end.step, end.candidate))
    return tuple(dict.fromkeys(end.turning for end in ends))


def smallest(
    outcome: np.ndarray,
    now: np.ndarray,
    changed: Varied,
    own: np.ndarray,
    turning: Callable[[int, int, int, Verdict], Turning],
) -> Ends:
    turned = changed.is_possible & (outcome != now[own])
    upwards = (STEPS > 0)[None, :, None]
    sides = [_first_steps(hits) for hits in (turned & upwards, turned & ~upwards, turned & (outcome == HOLDS))]
    found: Ends = {}
    for unit in np.flatnonzero(turned.any(axis=(0, 1))).tolist():
        ends: list[End | None] = []
        for steps, best in sides:
            step, candidate = int(steps[unit]), int(best[unit])
            if step == len(STEPS):
                ends.append(None)
                continue
            verdict = VERDICTS[int(outcome[candidate, step, unit])]
            ends.append(End(step, candidate, turning(candidate, step, unit, verdict)))
        found[int(own[unit])] = tuple(ends)
    return found


def _first_steps(hits: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """For each unit the first step that hits, and with which candidate; past the last step where none does."""
    step = np.where(hits.any(axis=1), hits.argmax(axis=1), len(STEPS))
    best = step.argmin(axis=0)
    return np.take_along_axis(step, best[None, :], axis=0)[0], best


def turning_in_place(
    table: CountTable, changed: Varied, packs: Packs, candidate: int, step: int, unit: int, verdict: Verdict
) -> Turning:
    kind = table.kinds[changed.kinds[candidate, unit]]
    return Turning(
        items=int(STEPS[step]),
        taxon=kind.taxon,
        part=kind.part,  # type: ignore[arg-type]
        condition=kind.condition,
        sample=table.sample_ids[changed.samples[candidate, unit]],
        verdict=verdict,
        says=said(kind, int(STEPS[step]), packs),
    )


def spread_turning(changed: SpreadOut, packs: Packs, candidate: int, step: int, unit: int, verdict: Verdict) -> Turning:
    kind = changed.as_counted.kinds[changed.varied.kinds[candidate, unit]]
    changes = changed.changes(candidate, step, unit)
    samples_with = int(changed.samples_with[candidate, unit])
    return Turning(
        items=int(STEPS[step]),
        taxon=kind.taxon,
        part=kind.part,  # type: ignore[arg-type]
        condition=kind.condition,
        sample=next(iter(changes)),
        verdict=verdict,
        says=said(kind, int(STEPS[step]), packs) + where(changes, samples_with),
        by_sample=tuple((sample, items) for sample, (items, _) in changes.items()),
    )
