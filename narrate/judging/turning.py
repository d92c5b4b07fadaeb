"""The smallest change in counts that turns a verdict: 'two more kernels', 'twelve fewer cupules'."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from narrate.judging.criteria import Look, leaves, rule_verdicts
from narrate.judging.elsewhere import OF_EACH_SAMPLE, SpreadOut, spread_out
from narrate.judging.facts import HOLDS
from narrate.judging.turning_words import said, where
from narrate.judging.variants import (
    OF_EACH_CLASS,
    OF_EACH_PLANT,
    STEPS,
    Candidates,
    Varied,
    VariedInPlace,
    compacted,
    part_of,
    varied,
    with_empty_rows,
)
from narrate.judging.varied_units import ANSWERED, VariedUnits
from narrate.judging.weigh import VERDICTS, claim_verdicts, support
from narrate.measures.catalogue import measured
from narrate.measures.column import Column
from narrate.measures.count_table import CountTable
from narrate.measures.units import Units
from narrate.model.claims import Turning
from narrate.model.ids import Level, StatementId
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Fact, Rule, Selector, Verdict

LEVELS_TURNED: tuple[Level, ...] = ("sample", "context")
"""Levels for which the smallest change is looked for. Of phases and the dig, samples decide and not items."""

OF_OWN_COUNTS = frozenset(
    {
        "items", "density", "taxa", "taxa_at_30", "presence", "share", "ratio", "chaff_ratio", "dominance",
        "samples_with", "ubiquity", "richest_share", "times_median_density",
    }
)  # fmt: skip
"""
Measures that the counts of the unit alone move. All others stay as they are: masses are what was weighed, and the
median density is that of the dig as it stands.
"""

_CELLS = 1_000_000
"""Numbers that one pass over a varied table may hold; larger digs are looked at in parts."""
_CELLS_OF_SUMS = 100_000
"""The same of a pass over sums, of which many are held at once."""


class VariedLook(Look):
    """Units with varied counts; what counts do not move is taken from the units as they are."""

    def __init__(self, units: Units, changed: Varied, as_counted: Look, own: np.ndarray) -> None:
        in_place = isinstance(changed, VariedInPlace)
        super().__init__(VariedUnits.of(units, changed) if in_place else _over_table(units, changed), units, ())
        self._whole = None if in_place else self.units
        self._changed = changed
        self._as_counted = as_counted
        self._own = own

    def _over_table(self) -> Units:
        """The units over the varied table itself, where sums do not do."""
        if self._whole is None:
            self._whole = _over_table(self.phases, self._changed)
        return self._whole

    def column(self, bound: Bound) -> Column:
        key = (bound.measure, bound.of, bound.to)
        found = self._columns.get(key)
        if found is None:
            found = self._columns[key] = self._varied(bound) if _is_moved(bound) else self._as_it_is(bound)
        return found

    def leaf_verdicts(self, leaf: Bound | Fact) -> np.ndarray:
        if isinstance(leaf, Bound) and _is_moved(leaf):
            return super().leaf_verdicts(leaf)
        codes = self._as_counted.leaf_verdicts(leaf)[:1, self._own]
        return np.broadcast_to(codes, self.units.shape)

    def _varied(self, bound: Bound) -> Column:
        if bound.measure not in ANSWERED:
            return measured(bound.measure, self._over_table(), of=bound.of, to=bound.to)
        if bound.measure != "times_median_density":
            return measured(bound.measure, self.units, of=bound.of, to=bound.to)
        density = measured("density", self.units, of=bound.of)
        of_dig = self._as_counted.column(replace(bound, measure="density", to=None)).value[0]
        median = np.nanmedian(of_dig) if np.isfinite(of_dig).any() else np.nan
        median = median if median > 0 else np.nan
        value, low, high = (part / median for part in (density.value, density.low, density.high))
        return replace(density, value=value, low=low, high=high)

    def _as_it_is(self, bound: Bound) -> Column:
        whole = self._as_counted.column(bound)
        value, low, high = (
            np.broadcast_to(part[:1, self._own], self.units.shape) for part in (whole.value, whole.low, whole.high)
        )
        return replace(whole, value=value, low=low, high=high, of=None, to=None, n=None)


def _over_table(units: Units, changed: Varied) -> Units:
    return units.with_table(changed.made())


Turnings = dict[StatementId, dict[int, tuple[Turning, ...]]]
"""By statement and unit: the smallest changes up and down that turn the verdict, and that which makes it hold."""


def turnings(look: Look, rules: Mapping[StatementId, tuple[Rule, ...]], packs: Packs) -> Turnings:
    """
    The smallest changes for all units of a level, for the statements that have rules there.

    One kind of thing is changed at a time, by at most `variants.MOST` items; every kind that some rule of the statement
    counts is tried, or one that all its rules treat alike. It is changed where the unit holds most of it; and where
    rules ask how many samples hold it, also where that makes or unmakes such a sample. Units are those of a single
    table, as they were counted. Of a plant that the region had only later than the unit, none is added.
    """
    units = look.units
    candidates = Candidates(units)
    is_sorted_in_part = bool((units.table.share < 1).any())
    found: Turnings = {}
    for statement, own in rules.items():
        asked = _asked(own)
        kinds = _kinds(asked, candidates, is_sorted_in_part)
        if kinds is None:
            continue
        verdicts = _Verdicts(look, statement, own, packs)
        spread = _of_each_sample(asked) if units.level != "sample" else ()
        late = candidates.too_late(_selectors(asked))
        ends = _where_it_lies(look, kinds, late, verdicts, spread)
        if spread:
            # The plant that keeps a sample from being one without the thing differs from sample to sample.
            each = candidates.of(_selectors(asked), each=True)
            each = np.where((each[:, None, :] == kinds[None, :, :]).any(axis=1), -1, each)
            ends = _nearest(ends, _elsewhere(look, compacted([*kinds, *each]), late, verdicts, spread))
        found[statement] = {unit: _in_order(sides) for unit, sides in sorted(ends.items())}
    return found


def _asked(rules: Sequence[Rule]) -> tuple[Bound, ...]:
    """Bounds of the rules that counts move."""
    return tuple(
        dict.fromkeys(
            leaf
            for rule in rules
            for leaf in leaves((*rule.needs, rule.criteria))
            if isinstance(leaf, Bound) and _is_moved(leaf)
        )
    )


def _of_each_sample(asked: Sequence[Bound]) -> tuple[Selector, ...]:
    """What is asked of each sample."""
    return tuple(dict.fromkeys(bound.of or Selector() for bound in asked if bound.measure in OF_EACH_SAMPLE))


def _kinds(asked: Sequence[Bound], candidates: Candidates, is_sorted_in_part: bool) -> np.ndarray | None:
    """(candidates, units): what the bounds count."""
    if not asked:
        return None
    measures = {bound.measure for bound in asked}
    matters = bool(measures & OF_EACH_PLANT) or (is_sorted_in_part and bool(measures & OF_EACH_CLASS))
    kinds = candidates.of(_selectors(asked), each=matters)
    return kinds if kinds.size else None


def _selectors(asked: Sequence[Bound]) -> tuple[Selector, ...]:
    return tuple(dict.fromkeys(s for bound in asked for s in (bound.of or Selector(), bound.to) if s is not None))


class _Verdicts:
    """Verdicts of one statement, as counted and with other counts."""

    def __init__(self, look: Look, statement: StatementId, rules: Sequence[Rule], packs: Packs) -> None:
        self.look, self.packs = look, packs
        asked = _asked(rules)
        self._selectors = _selectors(asked)
        self.hangs_on_sums = all(bound.measure in ANSWERED for bound in asked)
        """Whether sums tell the verdict, so that no varied table is made."""
        self._rules = rules
        self._prior = packs.statements[statement].prior
        self._weights = [packs.weights[rule.weight] * (1 if rule.direction == "for" else -1) for rule in rules]
        self.now = self._of([rule_verdicts(rule, look)[:1] for rule in rules])[0]

    def meant(self, units: Units) -> np.ndarray:
        """Mask over the kinds that some rule counts: rows of all others change no verdict."""
        return np.logical_or.reduce([units.meant(selector) for selector in self._selectors])

    def turned(self, units: Units, changed: Varied, own: np.ndarray) -> np.ndarray:
        """(candidates, steps, units): codes of the verdict with every change."""
        look = VariedLook(units, changed, self.look, own)
        return self._of([rule_verdicts(rule, look) for rule in self._rules]).reshape(changed.is_possible.shape)

    def _of(self, codes: Sequence[np.ndarray]) -> np.ndarray:
        shared = [rule.evidence for rule in self._rules]
        weighed = support(self._prior, self._weights, [c == HOLDS for c in codes], shared)
        return claim_verdicts(self._rules, codes, weighed)


@dataclass(frozen=True, slots=True)
class _End:
    """A smallest change of one side: up, down, or that which makes the claim hold."""

    step: int
    candidate: int
    turning: Turning


_Ends = dict[int, tuple[_End | None, ...]]
"""By unit: the ends of the three sides."""


def _where_it_lies(
    look: Look, kinds: np.ndarray, late: np.ndarray, verdicts: _Verdicts, spread: Sequence[Selector]
) -> _Ends:
    """Changes where the unit holds most of the thing."""
    units, packs = look.units, verdicts.packs
    found: _Ends = {}
    meant = verdicts.meant(units)
    for first, end in _parts(units, kinds, None if verdicts.hangs_on_sums else meant[units.table.row_kind].sum()):
        own = np.arange(first, end)
        part = units.over(part_of(units.table, units.level, own, meant)[0])
        extended = part.over(with_empty_rows(part, kinds[:, own], spread))
        changed = _without_late(varied(extended, kinds[:, own]), late[own])
        outcome = verdicts.turned(extended, changed, own)
        found.update(_smallest(outcome, verdicts.now, changed, own, partial(_turning, extended.table, changed, packs)))
    return found


def _elsewhere(
    look: Look, kinds: np.ndarray, late: np.ndarray, verdicts: _Verdicts, spread: Sequence[Selector]
) -> _Ends:
    """Changes where they make or unmake a sample with the thing, for units of several samples."""
    units, packs = look.units, verdicts.packs
    several = np.flatnonzero(units.samples()[0] > 1)
    meant = verdicts.meant(units)
    found: _Ends = {}
    for first, end in _parts(units, kinds, meant[units.table.row_kind].sum()):
        own = several[(several >= first) & (several < end)]
        if not own.size:
            continue
        part = units.over(part_of(units.table, units.level, own, meant)[0])
        changed = spread_out(part, kinds[:, own], spread)
        extended = part.over(changed.as_counted)
        tried = _without_late(changed.varied, late[own])
        outcome = verdicts.turned(extended, tried, own)
        found.update(_smallest(outcome, verdicts.now, tried, own, partial(_spread_turning, changed, packs)))
    return found


def _without_late(changed: Varied, late: np.ndarray) -> Varied:
    """The same without additions of plants that could not be there yet; late: (units, kinds)."""
    unit = np.arange(changed.kinds.shape[1])
    is_late = (changed.kinds >= 0) & late[unit[None, :], changed.kinds]
    upwards = (STEPS > 0)[None, :, None]
    return replace(changed, is_possible=changed.is_possible & ~(is_late[:, None, :] & upwards))


def _nearest(first: _Ends, second: _Ends) -> _Ends:
    """The smaller change of each side; where both are as small, the first, which does not ask where."""
    found = dict(first)
    for unit, sides in second.items():
        before = found.get(unit, (None,) * len(sides))
        found[unit] = tuple(
            b if a is None or (b is not None and b.step < a.step) else a for a, b in zip(before, sides, strict=True)
        )
    return found


def _in_order(sides: tuple[_End | None, ...]) -> tuple[Turning, ...]:
    ends = sorted((end for end in sides if end is not None), key=lambda end: (end.step, end.candidate))
    return tuple(dict.fromkeys(end.turning for end in ends))


def _smallest(
    outcome: np.ndarray,
    now: np.ndarray,
    changed: Varied,
    own: np.ndarray,
    turning: Callable[[int, int, int, Verdict], Turning],
) -> _Ends:
    turned = changed.is_possible & (outcome != now[own])
    upwards = (STEPS > 0)[None, :, None]
    sides = [_first_steps(hits) for hits in (turned & upwards, turned & ~upwards, turned & (outcome == HOLDS))]
    found: _Ends = {}
    for unit in np.flatnonzero(turned.any(axis=(0, 1))).tolist():
        ends: list[_End | None] = []
        for steps, best in sides:
            step, candidate = int(steps[unit]), int(best[unit])
            if step == len(STEPS):
                ends.append(None)
                continue
            verdict = VERDICTS[int(outcome[candidate, step, unit])]
            ends.append(_End(step, candidate, turning(candidate, step, unit, verdict)))
        found[int(own[unit])] = tuple(ends)
    return found


def _first_steps(hits: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """For each unit the first step that hits, and with which candidate; past the last step where none does."""
    step = np.where(hits.any(axis=1), hits.argmax(axis=1), len(STEPS))
    best = step.argmin(axis=0)
    return np.take_along_axis(step, best[None, :], axis=0)[0], best


def _turning(
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


def _spread_turning(
    changed: SpreadOut, packs: Packs, candidate: int, step: int, unit: int, verdict: Verdict
) -> Turning:
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


def _is_moved(bound: Bound) -> bool:
    return bound.measure in OF_OWN_COUNTS


def _parts(units: Units, kinds: np.ndarray, rows: int | None) -> list[tuple[int, int]]:
    """
    Stretches of units that fit into one pass.

    rows:   rows of all units that are summed anew with each change; None where none are.
    """
    width = len(units.ids)
    changes = len(kinds) * len(STEPS)
    of_each = changes if rows is None else changes * max(1.0, rows / max(1, width))
    at_once = max(1, int((_CELLS_OF_SUMS if rows is None else _CELLS) / of_each))
    return [(first, min(first + at_once, width)) for first in range(0, width, at_once)]
