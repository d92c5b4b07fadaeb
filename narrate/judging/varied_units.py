"""Units whose counts are varied one kind at a time: every sum is the sum as counted and what the change adds to it."""

from __future__ import annotations

from functools import cached_property

import numpy as np

from narrate.judging.variants import STEPS, VariedInPlace
from narrate.measures.units import Units
from narrate.model.ids import PartId
from narrate.model.rules import Selector

ANSWERED = frozenset({"items", "density", "taxa", "share", "ratio", "chaff_ratio", "dominance", "times_median_density"})
"""Measures that are worked out of these sums alone; others need the varied table itself."""


class VariedUnits(Units):
    """
    The units of a table that has a row for every candidate, with each candidate changed by each step.

    Every sum has the shape (candidates · steps, units). A candidate is one kind, so a selector means all of what is
    changed in a unit or none of it.
    """

    @classmethod
    def of(cls, units: Units, changed: VariedInPlace) -> VariedUnits:
        other = cls.__new__(cls)
        other.__dict__.update(units.__dict__)
        other._worked = {}
        other.as_counted = units
        other.changed = changed
        return other

    as_counted: Units
    changed: VariedInPlace

    @property
    def shape(self) -> tuple[int, int]:
        return (len(self.changed.kinds) * len(STEPS), len(self.ids))

    def counted(self, selector: Selector) -> np.ndarray:
        return self.kept(("counted", selector), lambda: self._more(self.as_counted.counted(selector), selector))

    def weighted(self, selector: Selector) -> np.ndarray:
        parts = self.packs.words.parts
        named = [parts.get(PartId(kind.part)) for kind in self.table.kinds]
        worth = [1 if part is None else part.stands_for for part in named]
        return self._more(self.as_counted.weighted(selector), selector, np.array(worth, float)[self.changed.kinds])

    def counted_in_both(self, first: Selector, second: Selector) -> np.ndarray:
        is_meant = self._is_meant(first) & self._is_meant(second)
        return self._laid_out(self.as_counted.counted_in_both(first, second), is_meant[:, None, :] * self._steps)

    def estimated_over_litres(self, selector: Selector) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        total, variance, litres = self.as_counted.estimated_over_litres(selector)
        is_meant = self._is_meant(selector)[:, None, :]
        scaled, squared = self._scaled_up
        return self._laid_out(total, is_meant * scaled), self._laid_out(variance, is_meant * squared), litres

    def heaviest(self, selector: Selector) -> np.ndarray:
        return self.as_counted.heaviest(selector)

    def taxa(self, selector: Selector) -> np.ndarray:
        """
        The taxa of every unit with each candidate there and with it gone: more or fewer items of a kind matter only
        where they bring the first or take the last, and a closer name that comes or goes may cover a wider one.
        """
        kinds = np.flatnonzero(self.meant(selector))
        if not kinds.size:
            return np.zeros(self.shape)
        rows = self.as_counted.rows(selector)
        # A mark of presence stays, whatever is counted besides.
        is_mark = self.table.counted[0, rows] == 0
        marked = self._kinds_there(rows[is_mark], kinds)
        there = marked | self._kinds_there(rows[~is_mark], kinds)
        everyone = np.arange(len(self.ids))
        more = np.zeros((len(self.changed.kinds), len(STEPS), len(self.ids)))
        before = self._different(there, kinds)
        is_meant = self._is_meant(selector)
        for candidate in np.flatnonzero(is_meant.any(axis=1)).tolist():
            place = np.clip(np.searchsorted(kinds, self.changed.kinds[candidate]), 0, kinds.size - 1)
            with_it, without = there.copy(), there.copy()
            with_it[everyone, place] = True
            without[everyone, place] = marked[everyone, place]
            left = self.changed.held[candidate] + self._steps[candidate] > 0
            now = np.where(left, self._different(with_it, kinds), self._different(without, kinds))
            more[candidate] = is_meant[candidate] * (now - before)
        return self._laid_out(self.as_counted.taxa(selector), more)

    def _kinds_there(self, rows: np.ndarray, kinds: np.ndarray) -> np.ndarray:
        """(units, kinds named): True where one of the rows says that the kind was there."""
        found = np.zeros((len(self.ids), kinds.size), bool)
        rows = rows[self.as_counted.is_there(rows)[0]] if rows.size else rows
        found[self.as_counted.unit_of(rows), np.searchsorted(kinds, self.table.row_kind[rows])] = True
        return found

    def _different(self, there: np.ndarray, kinds: np.ndarray) -> np.ndarray:
        """(units,): taxa of the kinds that are there, wider names that a closer one covers left out."""
        shown = there
        for place, kind in enumerate(kinds.tolist()):
            if kind in self.wider and (below := self.wider[kind][kinds]).any():
                shown = there.copy() if shown is there else shown
                shown[:, place] &= ~there[:, below].any(axis=1)
        taxon = self.taxon_of_kind[kinds]
        order = np.argsort(taxon, kind="stable")
        begins = np.flatnonzero(np.diff(taxon[order], prepend=-1))
        return np.logical_or.reduceat(shown[:, order], begins, axis=1).sum(axis=1).astype(float)

    def largest_share(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        rows = self.as_counted.rows(selector)
        unit = self.as_counted.unit_of(rows)
        names = int(self.name_of_kind.max(initial=-1)) + 1
        items = np.zeros((len(self.ids), names))
        np.add.at(items, (unit, self.name_of_kind[self.table.row_kind[rows]]), self.table.counted[0, rows])
        everyone = np.arange(len(self.ids))[None, :]
        name = self.name_of_kind[self.changed.kinds]
        own = items[everyone, name]
        first = items.argmax(axis=1)
        top = items[np.arange(len(items)), first]
        rest = items.copy()
        rest[np.arange(len(items)), first] = 0
        others = np.where(name == first[None, :], rest.max(axis=1)[None, :], top[None, :])
        is_meant = self._is_meant(selector)[:, None, :]
        changed = np.maximum(others[:, None, :], own[:, None, :] + self._steps)
        return np.where(is_meant, changed, top[None, None, :]).reshape(self.shape), self.counted(selector)

    def _spread(self, values: np.ndarray) -> np.ndarray:
        return np.broadcast_to(values, self.shape)

    @cached_property
    def _steps(self) -> np.ndarray:
        """(candidates, steps, units): items more or fewer, as far as there are any."""
        return np.maximum(STEPS[None, :, None], -self.changed.held[:, None, :])

    def _more(self, base: np.ndarray, selector: Selector, worth: np.ndarray | None = None) -> np.ndarray:
        is_meant = self._is_meant(selector)
        by_step = is_meant if worth is None else is_meant * worth
        return self._laid_out(base, by_step[:, None, :] * self._steps)

    def _laid_out(self, base: np.ndarray, more: np.ndarray) -> np.ndarray:
        return (base[:1][None, :, :] + more).reshape(self.shape)

    def _is_meant(self, selector: Selector) -> np.ndarray:
        """(candidates, units): whether the selector means the candidate there."""
        return self.kept(("meant", selector), lambda: self._find_meant(selector))

    def _find_meant(self, selector: Selector) -> np.ndarray:
        is_chosen = np.zeros(self.table.row_sample.size + 1, bool)
        is_chosen[self.as_counted.rows(selector)] = True
        return is_chosen[self.changed.first_row]

    @cached_property
    def _scaled_up(self) -> tuple[np.ndarray, np.ndarray]:
        """(candidates, steps, units): what a step adds to the items scaled up and to their variance, with a volume."""
        share = self.table.share
        has_volume = np.isfinite(self.table.volume_l)
        if (share == 1).all() and has_volume.all():
            return self._steps, self._steps
        weight = has_volume[self.table.row_sample] * 1.0
        return (
            self.changed.summed(weight * (1 + (1 - share) / share)),
            self.changed.summed(weight * (1 / np.square(share))),
        )
