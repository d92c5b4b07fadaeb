"""The smallest change in counts that turns a verdict: 'two more kernels', 'twelve fewer cupules'."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from narrate.judging.criteria import Look, leaves, rule_verdicts
from narrate.judging.facts import HOLDS
from narrate.judging.variants import (
    OF_EACH_CLASS,
    OF_EACH_PLANT,
    STEPS,
    Candidates,
    Varied,
    part_of,
    varied,
    with_empty_rows,
)
from narrate.judging.weigh import VERDICTS, claim_verdicts, support
from narrate.measures.catalogue import measured
from narrate.measures.column import Column
from narrate.measures.count_table import CountTable, Kind
from narrate.measures.units import Units
from narrate.model.claims import Turning
from narrate.model.ids import Level, StatementId
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Fact, Rule, Selector

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

_CELLS = 6_000_000
"""Numbers that one pass may hold; larger digs are looked at in parts."""


class VariedLook(Look):
    """Units with varied counts; what counts do not move is taken from the units as they are."""

    def __init__(self, units: Units, as_counted: Look, first: int) -> None:
        super().__init__(units, units, ())
        self._as_counted = as_counted
        self._own = slice(first, first + len(units.ids))

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


Turnings = dict[StatementId, dict[int, tuple[Turning, ...]]]
"""By statement and unit: the smallest changes up and down that turn the verdict, and that which makes it hold."""


def turnings(look: Look, rules: Mapping[StatementId, tuple[Rule, ...]], packs: Packs) -> Turnings:
    """
    The smallest changes for all units of a level, for the statements that have rules there.

    One kind of thing is changed at a time, by at most `variants.MOST` items; every kind that some rule of the statement
    counts is tried, or one that all its rules treat alike. Units are those of a single table, as they were counted.
    """
    units = look.units
    candidates = Candidates(units)
    is_sorted_in_part = bool((units.table.share < 1).any())
    found: Turnings = {}
    for statement, own in rules.items():
        kinds = _kinds(own, candidates, is_sorted_in_part)
        if kinds is not None:
            found[statement] = _of_statement(look, statement, own, kinds, packs)
    return found


def _kinds(rules: Sequence[Rule], candidates: Candidates, is_sorted_in_part: bool) -> np.ndarray | None:
    """(candidates, units): what the bounds of the rules count."""
    asked = dict.fromkeys(
        leaf
        for rule in rules
        for leaf in leaves((*rule.needs, rule.criteria))
        if isinstance(leaf, Bound) and _is_moved(leaf)
    )
    if not asked:
        return None
    selectors = dict.fromkeys(s for bound in asked for s in (bound.of or Selector(), bound.to) if s is not None)
    measures = {bound.measure for bound in asked}
    matters = bool(measures & OF_EACH_PLANT) or (is_sorted_in_part and bool(measures & OF_EACH_CLASS))
    kinds = candidates.of(tuple(selectors), each=matters)
    return kinds if kinds.size else None


def _of_statement(
    look: Look, statement: StatementId, rules: Sequence[Rule], kinds: np.ndarray, packs: Packs
) -> dict[int, tuple[Turning, ...]]:
    units = look.units
    prior = packs.statements[statement].prior
    weights = [packs.weights[rule.weight] * (1 if rule.direction == "for" else -1) for rule in rules]
    shared = [rule.evidence for rule in rules]
    found: dict[int, tuple[Turning, ...]] = {}
    for first, end in _parts(units, len(kinds) * len(STEPS)):
        table, _ = part_of(units.table, units.level, first, end)
        part = Units(table, units.level, packs, units.preservation)
        extended = Units(with_empty_rows(part, kinds[:, first:end]), units.level, packs, units.preservation)
        changed = varied(extended, kinds[:, first:end])
        varied_look = VariedLook(extended.with_table(changed.table), look, first)
        codes = [rule_verdicts(rule, varied_look) for rule in rules]
        outcome = claim_verdicts(rules, codes, support(prior, weights, [c == HOLDS for c in codes], shared))
        as_counted = [rule_verdicts(rule, look)[:1, first:end] for rule in rules]
        now = claim_verdicts(rules, as_counted, support(prior, weights, [c == HOLDS for c in as_counted], shared))
        outcome = outcome.reshape(changed.is_possible.shape)
        for unit, turns in _smallest(outcome, now[0], changed, extended.table, packs).items():
            found[first + unit] = turns
    return found


def _smallest(
    outcome: np.ndarray, now: np.ndarray, changed: Varied, table: CountTable, packs: Packs
) -> dict[int, tuple[Turning, ...]]:
    turned = changed.is_possible & (outcome != now)
    upwards = (STEPS > 0)[None, :, None]
    wanted = (turned & upwards, turned & ~upwards, turned & (outcome == HOLDS))
    sides = [_first_steps(hits) for hits in wanted]
    found: dict[int, tuple[Turning, ...]] = {}
    for unit in np.flatnonzero(turned.any(axis=(0, 1))).tolist():
        ends = {(int(step[unit]), int(best[unit])) for step, best in sides if step[unit] < len(STEPS)}
        found[unit] = tuple(
            _turning(
                table.kinds[changed.kinds[candidate, unit]],
                int(STEPS[step]),
                int(outcome[candidate, step, unit]),
                table.sample_ids[changed.samples[candidate, unit]],
                packs,
            )
            for step, candidate in sorted(ends)
        )
    return found


def _first_steps(hits: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """For each unit the first step that hits, and with which candidate; past the last step where none does."""
    step = np.where(hits.any(axis=1), hits.argmax(axis=1), len(STEPS))
    best = step.argmin(axis=0)
    return np.take_along_axis(step, best[None, :], axis=0)[0], best


def _turning(kind: Kind, items: int, code: int, sample: str, packs: Packs) -> Turning:
    return Turning(
        items=items,
        taxon=kind.taxon,
        part=kind.part,  # type: ignore[arg-type]
        condition=kind.condition,
        sample=sample,
        verdict=VERDICTS[code],
        says=said(kind, items, packs),
    )


def said(kind: Kind, items: int, packs: Packs) -> str:
    """
    The change in words: 'two more maize kernels', 'one fewer cf. goosefoot seed', 'six more pieces of oak wood'.

    Plants without a name of their own are called as the analyst wrote them.
    """
    taxon = packs.taxa.get(kind.taxon) if kind.taxon is not None else None
    name = (taxon.trade_name or taxon.name or taxon.id) if taxon is not None else "/".join(kind.either) or kind.written
    doubt = "" if kind.is_certain or kind.either else "cf. "
    state = "" if kind.condition == "charred" else f"{kind.condition} "
    count = abs(items)
    part = packs.words.parts.get(kind.part)  # type: ignore[call-overload]
    noun = kind.part if count == 1 or part is None else part.plural
    pieces = ""
    if part is not None and part.plural == part.id:
        pieces = "piece of " if count == 1 else "pieces of "
    return f"{number_word(count)} {'more' if items > 0 else 'fewer'} {pieces}{state}{doubt}{name} {noun}"


_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def number_word(items: int) -> str:
    """
    >>> number_word(2), number_word(12), number_word(13)
    ('two', 'twelve', '13')
    """
    return _WORDS[items] if items < len(_WORDS) else str(items)


def _is_moved(bound: Bound) -> bool:
    return bound.measure in OF_OWN_COUNTS


def _parts(units: Units, replicates: int) -> list[tuple[int, int]]:
    """Stretches of units that fit into one pass."""
    rows = max(1, units.table.row_sample.size)
    at_once = max(1, int(_CELLS / (replicates * rows / max(1, len(units.ids)))))
    return [(first, min(first + at_once, len(units.ids))) for first in range(0, len(units.ids), at_once)]
