"""What would be judged if records or counts were other than they are: one supposition a piece of work."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

import numpy as np

from narrate.judging.criteria import Look, rule_verdicts
from narrate.judging.facts import CANNOT_TELL, HOLDS
from narrate.judging.weigh import claim_verdicts, support
from narrate.measures.narrowing import finished
from narrate.measures.units import Units
from narrate.model.ids import StatementId
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Fact, Rule, Selector

WOOD_ENOUGH = 20
"""Pieces of wood from which a sample's fuel is spoken of. Common practice, no source."""
DUST_G = 0.005
"""Grams to a fragment of charcoal below which it is dust (from memory: a cube of 2 mm weighs about that)."""
PLANTS = Selector(role=("edible", "byproduct", "propagule"))
"""Remains besides wood."""
WOOD = Selector(role=("wood",))

_OF_VOLUME = frozenset({"density", "mass_per_l", "times_median_density", "litres"})

Outcomes = Mapping[StatementId, np.ndarray]
"""Codes of each statement, one a unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Supposed:
    """A piece of work: where it can be done, and how the units would look after it."""

    step: str
    where: np.ndarray
    """True for the units on which it can be done."""
    look: Look


class Settled(Look):
    """Units of which some leaf that cannot be told for want of a record is taken to hold."""

    def __init__(self, look: Look, is_open: Callable[[Bound | Fact], bool], where: np.ndarray) -> None:
        super().__init__(look.units, look.phases, look.records)
        self._base = look
        self._is_open = is_open
        self._where = where

    def column(self, bound: Bound):  # type: ignore[no-untyped-def]
        return self._base.column(bound)

    def leaf_verdicts(self, leaf: Bound | Fact) -> np.ndarray:
        codes = self._base.leaf_verdicts(leaf)
        if not self._is_open(leaf):
            return codes
        return np.where((codes == CANNOT_TELL) & self._where, HOLDS, codes).astype(np.int8)


def outcomes(look: Look, rules: Mapping[StatementId, tuple[Rule, ...]], packs: Packs) -> Outcomes:
    """Codes of every statement for every unit of a look."""
    found = {}
    for statement, own in rules.items():
        weights = [packs.weights[rule.weight] * (1 if rule.direction == "for" else -1) for rule in own]
        codes = [rule_verdicts(rule, look) for rule in own]
        shared = [rule.evidence for rule in own]
        weighed = support(packs.statements[statement].prior, weights, [c == HOLDS for c in codes], shared)
        found[statement] = claim_verdicts(own, codes, weighed)[0]
    return found


def supposed(look: Look) -> tuple[Supposed, ...]:
    """Every piece of work that something is left of, for the units of one level."""
    return tuple(made for make in WORK for made in (make(look),) if made.where.any())


def _unrecorded(fact: str, step: str) -> Callable[[Look], Supposed]:
    def make(look: Look) -> Supposed:
        where = np.array(
            [
                samples.size > 0 and not any(look.records[s].values[fact] for s in samples)
                for samples in map(look.units.samples_of, range(len(look.units.ids)))
            ],
            bool,
        )
        settled = Settled(look, lambda leaf: isinstance(leaf, Fact) and leaf.fact == fact, where)
        return Supposed(step=step, where=where, look=settled)

    return make


def _volume(look: Look) -> Supposed:
    where = (look.units.litres()[0] == 0) & _has_samples(look.units)
    settled = Settled(look, lambda leaf: isinstance(leaf, Bound) and leaf.measure in _OF_VOLUME, where)
    return Supposed(step="record.volume", where=where, look=settled)


def _heavy_sorted(look: Look) -> Supposed:
    said = np.array([record.values["heavy_fraction"] == ("not sorted",) for record in look.records], bool)
    where = np.array([said[look.units.samples_of(unit)].any() for unit in range(len(look.units.ids))], bool)
    records = tuple(
        replace(record, values=record.values | {"heavy_fraction": ("sorted",)}) if is_left else record
        for record, is_left in zip(look.records, said, strict=True)
    )
    return Supposed(step="sort.heavy", where=where, look=Look(look.units, look.phases, records))


def _class_finished(look: Look) -> Supposed:
    """The rest of every class holds what the sorted share lets expect."""
    where = (look.units.smallest_share()[0] < 1) & _has_samples(look.units)
    return Supposed(step="sort.class", where=where, look=Look(finished(look.units), look.phases, look.records))


def _names_made_firm(look: Look) -> Supposed:
    units = look.units
    kinds = units.table.kinds
    is_cf = np.array([not kind.is_certain and not kind.either for kind in kinds], bool)
    where = np.zeros(len(units.ids), bool)
    rows = np.flatnonzero(is_cf[units.table.row_kind] & units.table.is_noted) if len(kinds) else np.array([], int)
    member = units.unit_of(rows)
    where[member[member >= 0]] = True
    firm = replace(units.table, kinds=tuple(replace(k, is_certain=k.is_certain or not k.either) for k in kinds))
    again = Units(firm, units.level, units.packs, units.preservation)
    return Supposed(step="name.cf", where=where, look=Look(again, look.phases, look.records))


def _wood_identified(look: Look) -> Supposed:
    """
    Few pieces named and more wood weighed that was not: as many of the same sorts as make up the number asked for.

    Where every piece was counted there are no more to name, nor where what is left would have to be dust to be so
    many. Where none was counted, that many pieces of what was weighed.
    """
    units, table = look.units, look.units.table
    pieces = units.counted(WOOD)[0]
    rows = units.rows(WOOD)
    is_left = np.isfinite(table.mass_g[rows]) & (table.counted[0, rows] == 0)
    left_g = np.zeros(len(units.ids))
    unnamed = rows[is_left & (units.unit_of(rows) >= 0)]
    np.add.at(left_g, units.unit_of(unnamed), table.mass_g[unnamed])
    where = (pieces < WOOD_ENOUGH) & (left_g > 0) & (left_g >= DUST_G * (WOOD_ENOUGH - pieces))
    factor = np.where(where, WOOD_ENOUGH / np.where(pieces > 0, pieces, 1), 1.0)[units.unit_of(rows)]
    counted, unsorted = table.counted[:1].copy(), table.unsorted[:1].copy()
    counted[:, rows] *= factor
    unsorted[:, rows] *= factor
    weighed = rows[is_left]
    none_named = (where & (pieces == 0))[units.unit_of(weighed)]
    first = weighed[none_named][np.unique(units.unit_of(weighed[none_named]), return_index=True)[1]]
    counted[:, first] = WOOD_ENOUGH
    more = units.with_table(table.with_counts(counted, unsorted))
    return Supposed(step="wood.identify", where=where, look=Look(more, look.phases, look.records))


def _floated_again(look: Look) -> Supposed:
    """A second sample of the same size and the same mix. Only for units of which one sample was taken."""
    units, table = look.units, look.units.table
    is_one = units.samples()[0] == 1
    where = is_one & (units.level != "sample")
    twice = replace(table.with_counts(table.counted[:1] * 2, table.unsorted[:1] * 2), volume_l=table.volume_l * 2)
    return Supposed(step="float.more", where=where, look=Look(units.with_table(twice), look.phases, look.records))


WORK: tuple[Callable[[Look], Supposed], ...] = (
    _unrecorded("deposit", "record.deposit"),
    _unrecorded("security", "record.security"),
    _unrecorded("heavy_fraction", "record.heavy"),
    _volume,
    _heavy_sorted,
    _class_finished,
    _names_made_firm,
    _wood_identified,
    _floated_again,
)
"""Every piece of work on samples and contexts that can be supposed done."""


def _has_samples(units: Units) -> np.ndarray:
    return units.samples()[0] > 0
