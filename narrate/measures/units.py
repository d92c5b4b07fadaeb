"""Units of one level over a count table, and sums over selections of their rows."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import TypeVar

import numpy as np

from narrate.measures.count_table import CountTable
from narrate.measures.runs import blank, in_order, into_groups, reduced, starts, taken
from narrate.measures.selection import earliest_years, in_contexts, kinds_meant
from narrate.model.ids import Level
from narrate.model.packs import Packs
from narrate.model.rules import Selector

Kept = TypeVar("Kept")


class Units:
    """
    The units of one level. Every sum is an array of shape (replicates, units).

    Selections are worked out once per selector and kept, so that many rules may ask for the same.
    """

    def __init__(self, table: CountTable, level: Level, packs: Packs, preservation: str) -> None:
        self.table = table
        self.level = level
        self.packs = packs
        self.preservation = preservation
        self.ids = table.unit_ids[level]
        self._unit_of_sample = table.unit_of_sample[level]
        unit_of_row = self._unit_of_sample[table.row_sample] if table.row_sample.size else table.row_sample
        self._unit_of_row = unit_of_row.astype(np.int32)
        # Within a unit rows lie by taxon and part, so that no sum over them needs to sort them again.
        within = np.flatnonzero(unit_of_row >= 0)
        self.taxon_of_kind, self.name_of_kind = _codes(table, packs)
        self._rows = within[in_order(unit_of_row[within], self.name_of_kind[table.row_kind[within]])]
        self._kind_of_rows = table.row_kind[self._rows]
        self._lasting: set[int] = set()
        self._chosen: dict[Selector, np.ndarray] = {}
        self._alike: dict[bytes, np.ndarray] = {}
        self._written = table.counted[0]
        self._weight: np.ndarray | None = None
        self._worked: dict[Hashable, object] = {}
        self._laid: dict[Hashable, object] = {}
        self._by_unit = np.argsort(self._unit_of_sample, kind="stable")
        self._ends = np.searchsorted(self._unit_of_sample[self._by_unit], np.arange(len(self.ids) + 1))

    @property
    def shape(self) -> tuple[int, int]:
        return (self.table.replicates, len(self.ids))

    @property
    def weight(self) -> np.ndarray | None:
        """(replicates, samples): how often each sample was drawn; None where samples were not drawn."""
        return self._weight

    def with_table(self, table: CountTable, weight: np.ndarray | None = None) -> Units:
        """
        The same units over the same rows with other numbers; selections are shared.

        weight:  (replicates, samples) how often each sample was drawn. Samples with a thing are then counted from what
                 was written, because their doubt is which samples were taken; without it, from the table's numbers.
        """
        other = Units.__new__(Units)
        other.__dict__.update(self.__dict__)
        many = table.replicates > 1
        other.table = (
            table.with_counts(np.asfortranarray(table.counted), np.asfortranarray(table.unsorted)) if many else table
        )
        other._weight = weight
        other._worked = {}
        return other

    def kept(self, key: Hashable, make: Callable[[], Kept]) -> Kept:
        """What `make` gives, worked out once for these units and kept, so that many measures may ask for the same."""
        if key not in self._worked:
            self._worked[key] = make()
        return self._worked[key]  # type: ignore[return-value]

    def laid(self, what: str, rows: np.ndarray, make: Callable[[], Kept]) -> Kept:
        """
        What `make` says of where rows lie, whatever their numbers are: shared with the same units over other numbers.
        """
        if id(rows) not in self._lasting:
            return make()
        key = (what, id(rows))
        if key not in self._laid:
            self._laid[key] = make()
        return self._laid[key]  # type: ignore[return-value]

    def _of_rows(self, what: str, rows: np.ndarray, make: Callable[[], Kept]) -> Kept:
        """What `make` gives; kept where the rows are those of a selector, which last as long as the units do."""
        return self.kept((what, id(rows)), make) if id(rows) in self._lasting else make()

    def rows(self, selector: Selector) -> np.ndarray:
        """Indices of the rows meant, sorted by unit."""
        found = self._chosen.get(selector)
        if found is None:
            found = self._chosen[selector] = self._choose(selector)
            self._lasting.add(id(found))
        return found

    def unit_of(self, rows: np.ndarray) -> np.ndarray:
        return self.laid("unit", rows, lambda: self._unit_of_row[rows])

    def kind_of(self, rows: np.ndarray) -> np.ndarray:
        """The kind of each row named."""
        return self.laid("kind", rows, lambda: self.table.row_kind[rows])

    def rows_of(self, unit: int, selector: Selector) -> np.ndarray:
        """Rows of one unit that the selector means."""
        rows = self.rows(selector)
        first, end = np.searchsorted(self.unit_of(rows), (unit, unit + 1))
        return rows[first:end]

    def samples_of(self, unit: int) -> np.ndarray:
        """Indices of the samples of one unit, in the order of the project."""
        return self._by_unit[self._ends[unit] : self._ends[unit + 1]]

    def agreed(self, codes: np.ndarray, otherwise: int) -> np.ndarray:
        """For a code of every sample: the code on which all samples of a unit agree, else `otherwise`."""
        low = self._over_samples(codes[None, :].astype(float), np.min, empty=np.nan)
        high = self._over_samples(codes[None, :].astype(float), np.max, empty=np.nan)
        return np.where(low == high, low, otherwise)

    def counted(self, selector: Selector) -> np.ndarray:
        """Items as counted."""
        rows = self.rows(selector)
        return self._of_rows("counted", rows, lambda: self._sum(self.counts(rows), rows))

    def weighted(self, selector: Selector) -> np.ndarray:
        """Items as counted, each times what its part stands for (a spikelet fork: two glume bases)."""
        rows = self.rows(selector)
        parts = self.packs.words.parts
        worth = [parts[kind.part].stands_for if kind.part in parts else 1 for kind in self.table.kinds]
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

    def partly_sorted(self, rows: np.ndarray) -> np.ndarray:
        """Those of the rows whose size class was not sorted whole."""
        return self._of_rows("partly sorted", rows, lambda: rows[self.table.share[rows] < 1])

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

    def samples_with(self, selector: Selector) -> np.ndarray:
        """Samples of the unit in which the thing was counted or noted."""
        rows = self.rows(selector)
        return self._of_rows("samples with", rows, lambda: self._samples_with(rows))

    def there_by_sample(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """(replicates, samples): how often each sample with the thing was drawn, and how often each sample was."""
        return self.kept(("there by sample", selector), lambda: self._there_by_sample(self.rows(selector)))

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
        """Number of different taxa counted or noted; names that nobody knows count by their writing."""
        there, first = self._by_name(selector, with_part=False, there=True)
        return self._sum(there, first) if first.size else np.zeros(self.shape)

    def counts_by_taxon(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items of each taxon, of shape (taxa, replicates, units), and items of all."""
        sums, first = self._by_name(selector, with_part=False, there=False)
        total = self.counted(selector)
        if not first.size:
            return np.zeros((0, *self.shape)), total
        names = self.taxon_of_kind[self.table.row_kind[first]]
        codes = np.unique(names, return_inverse=True)[1]
        out = np.zeros((int(codes.max()) + 1, *self.shape))
        out[codes, :, self.unit_of(first)] = sums.T
        return out, total

    def largest_share(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items of the commonest taxon and part, and items of all."""
        sums, first = self._by_name(selector, with_part=True, there=False)
        top = blank(*self.shape)
        into_groups(np.maximum, sums, self.unit_of(first), top)
        return top, self.counted(selector)

    def richest_sample(self, selector: Selector) -> tuple[np.ndarray, np.ndarray]:
        """Items of the sample that holds most, and items of all."""
        rows = self.rows(selector)
        per_sample = blank(self.table.replicates, len(self.table.sample_ids))
        into_groups(np.add, self.counts(rows), self.table.row_sample[rows], per_sample)
        return self._over_samples(per_sample, np.max), self.counted(selector)

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

    def summed(self, values: np.ndarray, rows: np.ndarray) -> np.ndarray:
        """Values of shape (replicates, all rows), summed by unit over the rows named."""
        return self._sum(taken(values, rows), rows)

    def counts(self, rows: np.ndarray) -> np.ndarray:
        """(replicates, rows named): items as counted."""
        if self.table.replicates > 1:
            return taken(self.table.counted, rows)
        return self._of_rows("counts", rows, lambda: taken(self.table.counted, rows))

    def is_there(self, rows: np.ndarray) -> np.ndarray:
        """(replicates, rows named): True where a row says that the thing was there."""
        return self._is_there(rows)

    def sum_of(self, values: np.ndarray, rows: np.ndarray) -> np.ndarray:
        """Values of shape (replicates or 1, rows named), one for each row named, summed by unit."""
        return self._sum(values, rows)

    def _weighed(self, rows: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        grams = (self.table.mass_g[rows] / self.table.share[rows])[None, :]
        return self._spread(self._sum(grams, rows)), self._spread(self._sum(np.ones((1, rows.size)), rows))

    def _choose(self, selector: Selector) -> np.ndarray:
        meant = kinds_meant(selector, self.table, self.packs, self.preservation)
        # Selectors that mean the same kinds share one array of rows, and so whatever is kept for it.
        alike = meant.tobytes()
        if alike not in self._alike:
            self._alike[alike] = self._rows[meant[self._kind_of_rows]] if self._rows.size else self._rows
        rows = self._alike[alike]
        if selector.asks_for_contexts and rows.size:
            rows = rows[in_contexts(self.table, selector, self.packs)[self.table.row_sample[rows]]]
        if selector.later_than_phase and rows.size:
            years = earliest_years(self.table, self.packs)[self.table.row_kind[rows]]
            ends = self.table.phase_end[self.level][self.unit_of(rows)]
            rows = rows[years > np.where(np.isfinite(ends), ends, np.inf)]
        return rows

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

    def _by_name(self, selector: Selector, *, with_part: bool, there: bool) -> tuple[np.ndarray, np.ndarray]:
        """Items (or 1 where there was any) summed by unit and name, and one row of each such group."""
        rows = self.rows(selector)
        if not rows.size:
            return np.zeros((self.table.replicates, 0)), rows
        names = self.name_of_kind if with_part else self.taxon_of_kind
        what = "runs of parts" if with_part else "runs of taxa"
        at = self.laid(what, rows, lambda: starts(self.unit_of(rows), names[self.kind_of(rows)]))
        if there:
            return reduced(np.logical_or, self._is_there(rows), at).astype(float), rows[at]
        return reduced(np.add, self.counts(rows), at), rows[at]

    def _is_there(self, rows: np.ndarray) -> np.ndarray:
        """True where a row says that the thing was there: a count above 0 in this replicate, a note or a mass."""
        if self.table.replicates > 1:
            return self._found_there(rows)
        return self._of_rows("there", rows, lambda: self._found_there(rows))

    def _found_there(self, rows: np.ndarray) -> np.ndarray:
        there = self.counts(rows) > 0
        only_noted = self.table.is_noted[rows] & (self._written[rows] == 0)
        if only_noted.any():
            there |= only_noted[None, :]
        return there

    def _sum(self, values: np.ndarray, rows: np.ndarray) -> np.ndarray:
        out = blank(values.shape[0], len(self.ids))
        into_groups(np.add, values, self.unit_of(rows), out)
        return out

    def _over_samples(
        self, per_sample: np.ndarray, function: Callable[..., np.ndarray], empty: float = 0.0
    ) -> np.ndarray:
        member = self._unit_of_sample
        order = np.argsort(member, kind="stable")
        order = order[member[order] >= 0]
        out = blank(per_sample.shape[0], len(self.ids), empty)
        ufunc = {np.sum: np.add, np.max: np.maximum, np.min: np.minimum}[function]
        into_groups(ufunc, taken(per_sample, order), member[order], out)
        return out

    def _spread(self, values: np.ndarray) -> np.ndarray:
        """One row of values for every replicate."""
        return np.broadcast_to(values, self.shape) if values.shape != self.shape else values


def _codes(table: CountTable, packs: Packs) -> tuple[np.ndarray, np.ndarray]:
    """
    For each kind a number for its taxon, and one for taxon and part that rises with it; parts that one counting rule
    takes together lie side by side. Names that nobody knows count by their writing.
    """
    rule_of = {part: i for i, rule in enumerate(packs.words.counting) for term in rule.terms() for part in term.part}
    taxa: dict[object, int] = {}
    taxon = np.array([taxa.setdefault(k.taxon or k.either or k.written, len(taxa)) for k in table.kinds], np.intp)
    keys = [(int(t), rule_of.get(k.part, -1), k.part) for t, k in zip(taxon, table.kinds, strict=True)]  # type: ignore[call-overload]
    place = {key: i for i, key in enumerate(sorted(set(keys)))}
    return taxon, np.array([place[key] for key in keys], np.intp)
