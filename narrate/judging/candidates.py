"""Which kinds of thing may be added to or taken from each unit, to see what turns a verdict."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from narrate.judging.variants import unit_of_rows
from narrate.measures.selection import earliest_years
from narrate.measures.units import Units
from narrate.model.rules import Selector


class Candidates:
    """Which kinds of thing may be added to or taken from each unit of a level, for a set of selectors."""

    def __init__(self, units: Units) -> None:
        self._units = units
        table = units.table
        self._of_dig = np.bincount(table.row_kind, table.counted[0], minlength=len(table.kinds))
        self._held = np.zeros((len(units.ids), len(table.kinds)))
        rows = np.flatnonzero(unit_of_rows(units) >= 0)
        np.add.at(self._held, (units.unit_of(rows), table.row_kind[rows]), table.counted[0, rows])
        names: dict[object, int] = {}
        of_plants = [names.setdefault(k.taxon or k.either or k.written, len(names)) for k in table.kinds]
        self._name = np.array(of_plants, int)
        self._is_firm = np.array([k.is_certain for k in table.kinds], bool)
        self._is_late = _is_too_late(units)

    def of(self, selectors: Sequence[Selector], *, each: bool) -> np.ndarray:
        """
        (candidates, units): kinds that stand for all that the selectors mean; −1 where a unit has no more.

        Kinds that every selector treats alike move every sum alike, so one stands for all of them: the commonest that
        the unit holds, else the commonest of the dig, firm names before doubtful ones. A kind that could not be there
        yet is no candidate where the unit lacks it, and one of its own where the unit holds it, only to be taken.

        each:  every kind that the unit holds is a candidate, and one that it does not hold, because it also matters
               how the items are spread over plants (taxa, dominance) or over size classes (density).
        """
        late = self.too_late(selectors)
        found = []
        for kinds in self._alike(selectors):
            held, is_late = self._held[:, kinds], late[:, kinds]
            found.extend(_most_held(kinds, np.where(is_late, 0, held), each))
            found.append(self._absent(kinds, np.where(is_late, 0, held), is_late, each))
            if (is_late & (held > 0)).any():
                found.extend(_most_held(kinds, np.where(is_late, held, 0), each))
        return compacted(found) if found else np.full((0, len(self._units.ids)), -1)

    def too_late(self, selectors: Sequence[Selector]) -> np.ndarray:
        """
        (units, kinds): plants whose first year in the region is later than the unit, so that no more can be looked for.

        Where the selectors ask for just such plants, none is too late.
        """
        if any(selector.later_than_phase for selector in selectors):
            return np.zeros_like(self._is_late)
        return self._is_late

    def _alike(self, selectors: Sequence[Selector]) -> list[np.ndarray]:
        """Kinds that are meant, in sets that no selector tells apart, those of the first selectors first."""
        meant = np.array([self._units.meant(selector) for selector in selectors], bool).reshape(len(selectors), -1)
        marks = meant.astype(float)
        if any(selector.later_than_phase for selector in selectors):
            years = earliest_years(self._units.table, self._units.packs)
            marks = np.vstack([marks, np.nan_to_num(years, neginf=-1e9, posinf=1e9)])
        asked = np.flatnonzero(meant.any(axis=0))
        sets: dict[bytes, list[int]] = {}
        for kind in asked.tolist():
            sets.setdefault(marks[:, kind].tobytes(), []).append(kind)
        ordered = sorted(sets.values(), key=lambda kinds: int(meant[:, kinds[0]].argmax()))
        return [self._commonest_first(np.array(kinds)) for kinds in ordered]

    def _commonest_first(self, kinds: np.ndarray) -> np.ndarray:
        """Firmly named ones first, the commonest of the dig first."""
        return kinds[np.lexsort((kinds, -self._of_dig[kinds], ~self._is_firm[kinds]))]

    def _absent(self, kinds: np.ndarray, held: np.ndarray, is_late: np.ndarray, each: bool) -> np.ndarray:
        """The commonest firm kind that a unit does not hold: of another plant than it holds, or where it holds none."""
        nothing = np.full(len(held), -1)
        is_firm = self._is_firm[kinds]
        firm, could_be = kinds[is_firm], ~is_late[:, is_firm]
        if not firm.size:
            return nothing
        if not each:
            missing = could_be & (held.max(axis=1, initial=0, keepdims=True) == 0)
            return np.where(missing.any(axis=1), firm[missing.argmax(axis=1)], -1)
        names = self._name[firm]
        there = np.zeros((len(held), int(self._name.max()) + 1), bool)
        unit, kind = np.nonzero(self._held)
        there[unit, self._name[kind]] = True
        missing = ~there[:, names] & could_be
        return np.where(missing.any(axis=1), firm[missing.argmax(axis=1)], -1)


def _is_too_late(units: Units) -> np.ndarray:
    """(units, kinds): the region has the plant only from later than the unit's phase, or than the dig's last phase."""
    ends = units.table.phase_end[units.level]
    last = ends[np.isfinite(ends)].max(initial=-np.inf)
    known = np.where(np.isfinite(ends), ends, last if np.isfinite(last) else np.inf)
    return np.asarray(earliest_years(units.table, units.packs)[None, :] > known[:, None])


def _most_held(kinds: np.ndarray, held: np.ndarray, each: bool) -> list[np.ndarray]:
    """By unit the kind that it holds most of, and with `each` all others that it holds, the commonest first."""
    order = np.argsort(-held, axis=1, kind="stable")
    most = int((held > 0).sum(axis=1).max(initial=0)) if each else 1
    found = []
    for rank in range(max(most, 1)):
        best = order[:, rank]
        is_held = np.take_along_axis(held, best[:, None], axis=1)[:, 0] > 0
        found.append(np.where(is_held, kinds[best], -1))
    return found


def compacted(candidates: list[np.ndarray]) -> np.ndarray:
    """(candidates, units): those of a unit first, without candidates that no unit has."""
    stacked = np.stack(candidates)
    order = np.argsort(stacked < 0, axis=0, kind="stable")
    stacked = np.take_along_axis(stacked, order, axis=0)
    return stacked[(stacked >= 0).any(axis=1)]
