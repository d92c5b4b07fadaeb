"""Units whose counts are varied one kind at a time: every sum is the sum as counted and what the change adds to it."""

from __future__ import annotations

from functools import cached_property

import numpy as np

from narrate.judging.variants import STEPS, Varied
from narrate.measures.units import Units
from narrate.model.rules import Selector

ANSWERED = frozenset(
    {"items", "density", "taxa", "share", "ratio", "chaff_ratio", "dominance", "times_median_density"}
)
"""Measures that are worked out of these sums alone; others need the varied table itself."""


class VariedUnits(Units):
    """
    The units of a table that has a row for every candidate, with each candidate changed by each step.

    Every sum has the shape (candidates · steps, units). A candidate is one kind, so a selector means all of what is
    changed in a unit or none of it.
    """

    @classmethod
    def of(cls, units: Units, changed: Varied) -> VariedUnits:
        other = cls.__new__(cls)
        other.__dict__.update(units.__dict__)
        other._worked = {}
        other.as_counted = units
        other.changed = changed
        return other

    as_counted: Units
    changed: Varied

    @property
    def shape(self) -> tuple[int, int]:
        return (len(self.changed.kinds) * len(STEPS), len(self.ids))

    def counted(self, selector: Selector) -> np.ndarray:
        return self.kept(("counted", selector), lambda: self._more(self.as_counted.counted(selector), selector))

    def weighted(self, selector: Selector) -> np.ndarray:
        parts = self.packs.words.parts
        worth = [parts[kind.part].stands_for if kind.part in parts else 1 for kind in self.table.kinds]
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
        """A taxon of which a row besides the changed kind is there stays; else it hangs on what is left of the kind."""
        rows = self.as_counted.rows(selector)
        there = self.as_counted.is_there(rows)[0]
        kinds, of_taxon = self.table.row_kind[rows], self.taxon_of_kind
        # A mark of presence stays, whatever is counted besides.
        kind_of = np.where(self.table.counted[0, rows] == 0, -2, kinds)
        taxa = int(of_taxon.max(initial=-1)) + 1
        rows_there = np.zeros((len(self.ids), taxa))
        np.add.at(rows_there, (self.as_counted.unit_of(rows)[there], of_taxon[kinds[there]]), 1)
        own = self._by_pair(self.as_counted.unit_of(rows)[there], kind_of[there])
        unit = np.arange(len(self.ids))[None, :]
        of_own = rows_there[unit, of_taxon[self.changed.kinds]]
        before, stays = of_own > 0, of_own - own > 0
        now = stays[:, None, :] | (self.changed.held[:, None, :] + self._steps > 0)
        more = now.astype(float) - before[:, None, :]
        return self._laid_out(self.as_counted.taxa(selector), self._is_meant(selector)[:, None, :] * more)

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

    def _by_pair(self, unit: np.ndarray, kind: np.ndarray) -> np.ndarray:
        """(candidates, units): how many of the rows are of the candidate's kind."""
        number = np.zeros((len(self.ids), len(self.table.kinds)))
        is_kind = kind >= 0
        np.add.at(number, (unit[is_kind], kind[is_kind]), 1)
        return number[np.arange(len(self.ids))[None, :], self.changed.kinds] * (self.changed.kinds >= 0)

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
