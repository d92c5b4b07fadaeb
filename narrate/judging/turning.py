"""The smallest change in counts that turns a verdict: 'two more kernels', 'twelve fewer cupules'."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from narrate.judging.at_once import shares_of
from narrate.judging.candidates import Candidates, compacted
from narrate.judging.criteria import Look, leaves, rule_verdicts
from narrate.judging.elsewhere import OF_EACH_SAMPLE, spread_out
from narrate.judging.facts import HOLDS
from narrate.judging.kept_units import KeptUnits, turnings_read, turnings_written
from narrate.judging.turning_ends import Ends, in_order, nearest, smallest, spread_turning, turning_in_place
from narrate.judging.unit_keys import CandidateSet, UnitKeys
from narrate.judging.variants import (
    OF_EACH_CLASS,
    OF_EACH_PLANT,
    STEPS,
    Varied,
    part_of,
    varied,
    with_empty_rows,
)
from narrate.judging.varied_look import VariedLook, is_moved, median_density
from narrate.judging.varied_units import ANSWERED
from narrate.judging.weigh import claim_verdicts, support
from narrate.measures.units import Units
from narrate.model.at_once import AtOnce, in_turn
from narrate.model.claims import Turning
from narrate.model.ids import StatementId
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Fact, Rule, Selector

_CELLS = 1_000_000
"""Numbers that one pass over a varied table may hold; larger digs are looked at in parts."""
_CELLS_OF_SUMS = 100_000
"""The same of a pass over sums, of which many are held at once."""


Turnings = dict[StatementId, dict[int, tuple[Turning, ...]]]
"""By statement and unit: the smallest changes up and down that turn the verdict, and that which makes it hold."""


def turnings(
    look: Look,
    rules: Mapping[StatementId, tuple[Rule, ...]],
    packs: Packs,
    keys: UnitKeys,
    kept: KeptUnits | None,
    at_once: AtOnce = in_turn,
    *,
    only_held: bool = False,
) -> Turnings:
    """
    The smallest changes for all units of a level, for the statements that have rules there.

    One kind of thing is changed at a time, by at most `variants.MOST` items; every kind that some rule of the statement
    counts is tried, or one that all its rules treat alike. It is changed where the unit holds most of it; and where
    rules ask how many samples hold it, also where that makes or unmakes such a sample. Units are those of a single
    table, as they were counted. Of a plant that the region had only later than the unit, none is added.

    kept:       changes that were found before, by the keys of units; only those of other units are looked for.
    only_held:  of those units alone for which a statement holds, and nothing is added to `kept`.
    """
    candidates = Candidates(look.units)
    is_sorted_in_part = bool((look.units.table.share < 1).any())
    sought = {
        statement: made
        for statement, own in rules.items()
        if (made := _sought(look, statement, own, packs, candidates, is_sorted_in_part)) is not None
    }
    if kept is None:
        return _found(sought, np.arange(len(look.units.ids)), at_once, only_held)
    own_keys = _keys(look, rules, sought, keys)
    by_unit = [kept.found(key) for key in own_keys]
    missing = np.array([unit for unit, raw in enumerate(by_unit) if raw is None], np.intp)
    found = _found(sought, missing, at_once, only_held)
    for unit in () if only_held else missing.tolist():
        own = {statement: of_unit[unit] for statement, of_unit in found.items() if unit in of_unit}
        kept.add(own_keys[unit], turnings_written(own))
    for unit, raw in enumerate(by_unit):
        for statement, changes in turnings_read(raw).items() if raw is not None else ():
            found[statement][unit] = changes
    return found


def _found(
    sought: Mapping[StatementId, _Sought], wanted: np.ndarray, at_once: AtOnce, only_held: bool
) -> Turnings:
    """By statement and unit wanted."""
    found: Turnings = {statement: {} for statement in sought}
    jobs = [partial(_found_of, sought, share, only_held) for share in shares_of(wanted)]
    for part in at_once(jobs) if wanted.size else ():
        for statement, of_unit in part.items():
            found[statement].update(of_unit)
    return found


def _found_of(sought: Mapping[StatementId, _Sought], wanted: np.ndarray, only_held: bool) -> Turnings:
    return {statement: one.found(one.held(wanted) if only_held else wanted) for statement, one in sought.items()}


@dataclass(frozen=True, slots=True)
class _Sought:
    """What is tried to turn one statement."""

    look: Look
    verdicts: _Verdicts
    kinds: np.ndarray
    """(candidates, units): changed where the unit holds most of it."""
    late: np.ndarray
    spread: tuple[Selector, ...]
    each: np.ndarray | None
    """(candidates, units): changed where that makes or unmakes a sample with the thing."""

    def held(self, wanted: np.ndarray) -> np.ndarray:
        """The units wanted for which the statement holds."""
        return wanted[self.verdicts.now[wanted] == HOLDS]

    def found(self, wanted: np.ndarray) -> dict[int, tuple[Turning, ...]]:
        """By unit wanted."""
        ends = _where_it_lies(self.look, self.kinds, self.late, self.verdicts, self.spread, wanted)
        if self.each is not None:
            ends = nearest(ends, _elsewhere(self.look, self.each, self.late, self.verdicts, self.spread, wanted))
        return {unit: in_order(sides) for unit, sides in sorted(ends.items())}


def _sought(
    look: Look,
    statement: StatementId,
    rules: Sequence[Rule],
    packs: Packs,
    candidates: Candidates,
    is_sorted_in_part: bool,
) -> _Sought | None:
    asked = _asked(rules)
    kinds = _kinds(asked, candidates, is_sorted_in_part)
    if kinds is None:
        return None
    each = None
    spread = _of_each_sample(asked) if look.units.level != "sample" else ()
    if spread:
        # The plant that keeps a sample from being one without the thing differs from sample to sample.
        each = candidates.of(_selectors(asked), each=True)
        each = np.where((each[:, None, :] == kinds[None, :, :]).any(axis=1), -1, each)
        each = compacted([*kinds, *each])
    late = candidates.too_late(_selectors(asked))
    return _Sought(look, _Verdicts(look, statement, rules, packs), kinds, late, spread, each)


def _keys(
    look: Look, rules: Mapping[StatementId, tuple[Rule, ...]], sought: Mapping[StatementId, _Sought], keys: UnitKeys
) -> list[bytes]:
    """Keys of what is found of each unit."""
    every = [rule for own in rules.values() for rule in own]
    bounds = [leaf for leaf in _leaves(every) if isinstance(leaf, Bound)]
    sets = [
        CandidateSet(2 * number + more, kinds, one.late)
        for number, statement in enumerate(rules)
        if (one := sought.get(statement)) is not None
        for more, kinds in enumerate((one.kinds, one.each))
        if kinds is not None
    ]
    medians = [median_density(look, bound) for bound in bounds if bound.measure == "times_median_density"]
    return keys.turned(sets, [bound for bound in bounds if not is_moved(bound)], medians)


def _asked(rules: Sequence[Rule]) -> tuple[Bound, ...]:
    """Bounds of the rules that counts move."""
    return tuple(leaf for leaf in _leaves(rules) if isinstance(leaf, Bound) and is_moved(leaf))


def _leaves(rules: Sequence[Rule]) -> list[Bound | Fact]:
    """What the rules ask, each once."""
    return list(dict.fromkeys(leaf for rule in rules for leaf in leaves((*rule.needs, rule.criteria))))


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


def _where_it_lies(
    look: Look,
    kinds: np.ndarray,
    late: np.ndarray,
    verdicts: _Verdicts,
    spread: Sequence[Selector],
    wanted: np.ndarray,
) -> Ends:
    """Changes where the unit holds most of the thing."""
    units, packs = look.units, verdicts.packs
    found: Ends = {}
    meant = verdicts.meant(units)
    for own in _parts(units, kinds, None if verdicts.hangs_on_sums else meant[units.table.row_kind].sum(), wanted):
        part = units.over(part_of(units.table, units.level, own, meant)[0])
        extended = part.over(with_empty_rows(part, kinds[:, own], spread))
        changed = _without_late(varied(extended, kinds[:, own]), late[own])
        outcome = verdicts.turned(extended, changed, own)
        found.update(
            smallest(outcome, verdicts.now, changed, own, partial(turning_in_place, extended.table, changed, packs))
        )
    return found


def _elsewhere(
    look: Look,
    kinds: np.ndarray,
    late: np.ndarray,
    verdicts: _Verdicts,
    spread: Sequence[Selector],
    wanted: np.ndarray,
) -> Ends:
    """Changes where they make or unmake a sample with the thing, for units of several samples."""
    units, packs = look.units, verdicts.packs
    several = wanted[units.samples()[0, wanted] > 1]
    meant = verdicts.meant(units)
    found: Ends = {}
    for own in _parts(units, kinds, meant[units.table.row_kind].sum(), several):
        part = units.over(part_of(units.table, units.level, own, meant)[0])
        changed = spread_out(part, kinds[:, own], spread)
        extended = part.over(changed.as_counted)
        tried = _without_late(changed.varied, late[own])
        outcome = verdicts.turned(extended, tried, own)
        found.update(smallest(outcome, verdicts.now, tried, own, partial(spread_turning, changed, packs)))
    return found


def _without_late(changed: Varied, late: np.ndarray) -> Varied:
    """The same without additions of plants that could not be there yet; late: (units, kinds)."""
    unit = np.arange(changed.kinds.shape[1])
    is_late = (changed.kinds >= 0) & late[unit[None, :], changed.kinds]
    upwards = (STEPS > 0)[None, :, None]
    return replace(changed, is_possible=changed.is_possible & ~(is_late[:, None, :] & upwards))


def _parts(units: Units, kinds: np.ndarray, rows: int | None, wanted: np.ndarray) -> list[np.ndarray]:
    """
    The units wanted, so many at a time as fit into one pass.

    rows:   rows of all units that are summed anew with each change; None where none are.
    """
    changes = len(kinds) * len(STEPS)
    of_each = changes if rows is None else changes * max(1.0, rows / max(1, len(units.ids)))
    at_once = max(1, int((_CELLS_OF_SUMS if rows is None else _CELLS) / of_each))
    return [wanted[first : first + at_once] for first in range(0, wanted.size, at_once)]
