"""What is summed over units: items, grams, litres, samples and taxa, for selections of their rows."""

from __future__ import annotations

import numpy as np

from narrate.measures.runs import blank, into_groups
from narrate.measures.selection import NAMED_WOOD, asks_for_named_wood
from narrate.measures.unit_rows import UnitRows
from narrate.model.ids import PartId
from narrate.model.rules import Selector


class Units(UnitRows):
    """The units of one level. Every sum is an array of shape (replicates, units)."""

    def counted(self, selector: Selector) -> np.ndarray:
        """Items as counted."""
        rows = self.rows(selector)
        return self._of_rows("counted", rows, lambda: self._sum(self.counts(rows), rows))

    def weighted(self, selector: Selector) -> np.ndarray:
        """Items as counted, each times what its part stands for (a spikelet fork: two glume bases)."""
        rows = self.rows(selector)
        parts = self.packs.words.parts
        worth = [parts[PartId(kind.part)].stands_for if kind.part in parts else 1 for kind in self.table.kinds]
        return self._sum(self.counts(rows) * np.array(worth, float)[self.table.row_kind[rows]], rows)

    def phase_end(self) -> np.ndarray:
        """Last year of the phase of each unit; NaN where not known or mixed."""
        return self._spread(self.table.phase_end[self.level][None, :])

    def counted_in_both(self, first: Selector, second: Selector) -> np.ndarray:
        """Items as counted of the rows that both selectors mean."""
        return self.kept(("both", first, second), lambda: self._in_both(first, second))

    def estimated_over_litres(self, selector: Selector) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """
        For samples with a recorded volume: items scaled up for the unsorted share, the variance of that sum under
        Poisson counting, and the litres.
        """
        has_volume = np.isfinite(self.table.volume_l)
        if has_volume.all():
            return *self.estimated(selector), self.litres()
        rows = self.rows(selector)
        rows = rows[has_volume[self.table.row_sample[rows]]]
        return *self._estimated(rows, self.summed(self.table.counted, rows)), self.litres()

    def heaviest(self, selector: Selector) -> np.ndarray:
        """
        What the item that stands for most stands for: 1 / the smallest share sorted of the classes in which the thing
        was counted or looked for, or of any class of the unit where it was not.
        """
        return self.kept(("heaviest", selector), lambda: self._heaviest(self.rows(selector)))

    def estimated(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items scaled up for the unsorted share, and the variance of that sum under Poisson counting."""
        rows = self.rows(selector)
        return self._of_rows("estimated", rows, lambda: self._estimated(rows, self.counted(selector)))

    def unsorted(self, selector: Selector) -> np.ndarray:
        """Items estimated for the unsorted share."""
        rows = self.rows(selector)
        return self._of_rows("unsorted", rows, lambda: self.summed(self.table.unsorted, self.partly_sorted(rows)))

    def mass_g(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """
        Grams scaled up for the unsorted share, and the number of weighed rows.

        Masses are not resampled: they were weighed, not counted.
        """
        rows = self.rows(selector)
        return self._of_rows("mass", rows, lambda: self._weighed(rows[np.isfinite(self.table.mass_g[rows])]))

    def mass_over_litres(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """The same from samples with a recorded volume."""
        rows = self.rows(selector)
        has_volume = np.isfinite(self.table.volume_l[self.table.row_sample[rows]])
        return self._weighed(rows[np.isfinite(self.table.mass_g[rows]) & has_volume])

    def is_only_noted(self, selector: Selector) -> np.ndarray:
        """
        (1, units): True where the thing was noted as present, or weighed, in a sample with a volume, and no item of it
        was counted in any. It goes by what was written, whatever numbers are drawn or varied: a mark is no count.
        """
        return self.kept(("only noted", selector), lambda: self._only_noted(self.rows(selector)))

    def _only_noted(self, rows: np.ndarray) -> np.ndarray:
        rows = rows[np.isfinite(self.table.volume_l[self.table.row_sample[rows]])]
        written = self._written[rows]
        is_mark = self.table.is_noted[rows] & (written == 0)
        return (self._sum(is_mark[None, :] * 1.0, rows) > 0) & (self._sum(written[None, :], rows) == 0)

    def samples_with(self, selector: Selector) -> np.ndarray:
        """Samples of the unit in which the thing was counted or noted."""
        rows = self.rows(selector)
        return self._of_rows("samples with", rows, lambda: self._samples_with(rows))

    def there_by_sample(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """
        (replicates, samples): how often each sample with the thing was drawn, and how often each sample was, of those
        in which it could have been seen.
        """
        return self.kept(("there by sample", selector), lambda: self._there_and_drawn(selector))

    def _there_and_drawn(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        there, drawn = self._there_by_sample(self.rows(selector))
        looked = self.kept(("looked at", selector), lambda: self._looked_at(selector))
        return there, drawn if looked is None else drawn * looked

    def samples_looked_at(self, selector: Selector) -> np.ndarray:
        """Samples of the unit, sterile ones included; for wood that has a name, those whose wood was looked at."""
        looked = self.kept(("looked at", selector), lambda: self._looked_at(selector))
        if looked is None:
            return self.samples()
        weight = np.ones((1, looked.size)) if self._weight is None else self._weight
        return self._spread(self._over_samples(weight * looked, np.sum))

    def _looked_at(self, selector: Selector) -> np.ndarray | None:
        """(samples,): True where the thing could have been seen; None where that is everywhere."""
        wood = frozenset(id for id, part in self.packs.words.parts.items() if "wood" in part.roles)
        if not asks_for_named_wood(selector, wood):
            return None
        looked = np.zeros(len(self.table.sample_ids), bool)
        rows = self.rows(NAMED_WOOD)
        looked[self.table.row_sample[rows[self.table.is_noted[rows]]]] = True
        return looked

    def _samples_with(self, rows: np.ndarray) -> np.ndarray:
        return self._over_samples(self._there_by_sample(rows)[0], np.sum)

    def _there_by_sample(self, rows: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        there = self._is_there(rows) if self._weight is None else self.table.is_noted[rows][None, :]
        per_sample = blank(there.shape[0], len(self.table.sample_ids))
        into_groups(np.logical_or, there, self.table.row_sample[rows], per_sample)
        if self._weight is None:
            return per_sample, np.ones((1, len(self.table.sample_ids)))
        return per_sample * self._weight, self._weight

    def taxa(self, selector: Selector) -> np.ndarray:
        """
        Number of different taxa counted or noted; names that nobody knows count by their writing. A name that is wider
        than one that is there counts for nothing.
        """
        there, first = self._by_name(selector, with_part=False, there=True)
        return self._sum(there, first) if first.size else np.zeros(self.shape)

    def counts_by_taxon(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """
        Items of each taxon, of shape (taxa, replicates, units), and items of all; those of a name that is wider than
        one that is there are left out of both.
        """
        sums, first = self._by_name(selector, with_part=False, there=False)
        if not first.size:
            return np.zeros((0, *self.shape)), self.counted(selector)
        names = self.taxon_of_kind[self.table.row_kind[first]]
        codes = np.unique(names, return_inverse=True)[1]
        out = np.zeros((int(codes.max()) + 1, *self.shape))
        out[codes, :, self.unit_of(first)] = sums.T
        return out, self._sum(sums, first)

    def largest_share(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items of the commonest taxon and part, and items of all."""
        sums, first = self._by_name(selector, with_part=True, there=False)
        top = blank(*self.shape)
        into_groups(np.maximum, sums, self.unit_of(first), top)
        return top, self.counted(selector)

    def largest_plant(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items of the commonest taxon over all its parts, and items of all."""
        sums, first = self._by_name(selector, with_part=False, there=False)
        top = blank(*self.shape)
        into_groups(np.maximum, sums, self.unit_of(first), top)
        return top, self.counted(selector)

    def richest_sample(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items of the sample that holds most, and items of all."""
        rows = self.rows(selector)
        per_sample = blank(self.table.replicates, len(self.table.sample_ids))
        into_groups(np.add, self.counts(rows), self.table.row_sample[rows], per_sample)
        return self._over_samples(per_sample, np.max), self.counted(selector)

    def richest_context(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items of the context that holds most, its samples taken together, and items of all."""
        rows = self.rows(selector)
        context = self.table.unit_of_sample["context"][self.table.row_sample[rows]]
        pair, at = np.unique(self.unit_of(rows) * (int(context.max(initial=0)) + 1) + context, return_inverse=True)
        per_context = blank(self.table.replicates, pair.size)
        into_groups(np.add, self.counts(rows), at, per_context)
        top = blank(*self.shape)
        into_groups(np.maximum, per_context, pair // (int(context.max(initial=0)) + 1), top)
        return top, self.counted(selector)

    def samples(self) -> np.ndarray:
        """Samples of the unit, sterile ones included."""
        weight = np.ones((1, len(self.table.sample_ids))) if self._weight is None else self._weight
        return self._spread(self._over_samples(weight, np.sum))

    def litres(self) -> np.ndarray:
        """Litres recorded; 0 where none was."""
        return self._spread(self._over_samples(np.nan_to_num(self.table.volume_l)[None, :], np.sum))

    def smallest_share(self) -> np.ndarray:
        """Smallest share of a size class that was sorted in any sample of the unit."""
        return self._spread(self._over_samples(self.table.sorted_share[None, :], np.min, empty=1.0))

    def recovery(self) -> tuple[np.ndarray, np.ndarray]:
        """Marked seeds recovered and added."""
        back = self._over_samples(self.table.recovered[None, :], np.sum)
        return self._spread(back), self._spread(self._over_samples(self.table.added[None, :], np.sum))

    def worst_intrusion(self) -> np.ndarray:
        """0 none … 3 many; NaN where nothing was noted."""
        filled = np.where(np.isfinite(self.table.intrusions), self.table.intrusions, -1.0)
        worst = self._over_samples(filled[None, :], np.max, empty=-1.0)
        return self._spread(np.where(worst < 0, np.nan, worst))

    def _weighed(self, rows: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        grams = (self.table.mass_g[rows] / self.table.share[rows])[None, :]
        return self._spread(self._sum(grams, rows)), self._spread(self._sum(np.ones((1, rows.size)), rows))

    def _estimated(self, rows: np.ndarray, counted: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        part = self.partly_sorted(rows)
        more = self.counts(part) * (1 / np.square(self.table.share[part]) - 1)
        return counted + self.summed(self.table.unsorted, part), counted + self._sum(more, part)

    def _heaviest(self, rows: np.ndarray) -> np.ndarray:
        weight = blank(1, len(self.ids))
        into_groups(np.maximum, 1 / self.table.share[rows][None, :], self.unit_of(rows), weight)
        return np.where(weight > 0, weight, 1 / self.smallest_share()[:1])

    def _in_both(self, first: Selector, second: Selector) -> np.ndarray:
        is_second = np.zeros(self.table.row_sample.size, bool)
        is_second[self.rows(second)] = True
        rows = self.rows(first)
        rows = rows[is_second[rows]]
        return self._sum(self.counts(rows), rows)
