"""Units of one level over a count table: which rows a selector means in them, and how rows are summed by unit."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import Self, TypeVar

import numpy as np

from narrate.measures.count_table import CountTable
from narrate.measures.runs import blank, in_order, into_groups, reduced, starts, taken
from narrate.measures.selection import earliest_years, in_contexts, kinds_meant
from narrate.measures.wider_names import WiderNames, covered, wider_names
from narrate.model.ids import Level
from narrate.model.packs import Packs
from narrate.model.rules import Selector

Kept = TypeVar("Kept")


class UnitRows:
    """
    The rows of the units of one level.

    Selections are worked out once per selector and kept, so that many rules may ask for the same.
    """

    def __init__(self, table: CountTable, level: Level, packs: Packs, preservation: str) -> None:
        self.level = level
        self.packs = packs
        self.preservation = preservation
        self._meant: dict[Selector, np.ndarray] = {}
        self._wider: list[WiderNames] = []
        self.taxon_of_kind, self.name_of_kind = _codes(table, packs)
        self._lay(table)

    def _lay(self, table: CountTable) -> None:
        """Lays the units over a table; what depends on its kinds alone is there already."""
        self.table = table
        level = self.level
        self.ids = table.unit_ids[level]
        self._unit_of_sample = table.unit_of_sample[level]
        unit_of_row = self._unit_of_sample[table.row_sample] if table.row_sample.size else table.row_sample
        self._unit_of_row = unit_of_row.astype(np.int32)
        # Within a unit rows lie by taxon and part, so that no sum over them needs to sort them again.
        within = np.flatnonzero(unit_of_row >= 0)
        self._rows = within[in_order(unit_of_row[within], self.name_of_kind[table.row_kind[within]])]
        self._kind_of_rows = table.row_kind[self._rows]
        self._row_ends = np.searchsorted(unit_of_row[self._rows], np.arange(len(self.ids) + 1))
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

    def with_table(self, table: CountTable, weight: np.ndarray | None = None) -> Self:
        """
        The same units over the same rows with other numbers; selections are shared.

        weight:  (replicates, samples) how often each sample was drawn. Samples with a thing are then counted from what
                 was written, because their doubt is which samples were taken; without it, from the table's numbers.
        """
        other = type(self).__new__(type(self))
        other.__dict__.update(self.__dict__)
        many = table.replicates > 1
        other.table = (
            table.with_counts(np.asfortranarray(table.counted), np.asfortranarray(table.unsorted)) if many else table
        )
        other._weight = weight
        other._worked = {}
        return other

    def over(self, table: CountTable) -> Self:
        """The units of another table of the same kinds; what depends on the kinds alone is shared."""
        other = type(self).__new__(type(self))
        for name in ("level", "packs", "preservation", "_meant", "_wider", "taxon_of_kind", "name_of_kind"):
            setattr(other, name, getattr(self, name))
        other._lay(table)
        return other

    def forget(self) -> None:
        """Drops what was worked out and kept; it is worked out again when it is asked for."""
        self._lasting, self._chosen, self._alike, self._worked, self._laid = set(), {}, {}, {}, {}

    def meant(self, selector: Selector) -> np.ndarray:
        """Mask over the kinds of the table: True where the selector means the kind."""
        found = self._meant.get(selector)
        if found is None:
            found = self._meant[selector] = kinds_meant(selector, self.table, self.packs, self.preservation)
        return found

    @property
    def wider(self) -> WiderNames:
        """Kinds with a name that others of the table lie below; worked out once for its kinds."""
        if not self._wider:
            self._wider.append(wider_names(self.table.kinds, self.packs))
        return self._wider[0]

    def covered(self, rows: np.ndarray, *, anywhere: bool = False) -> np.ndarray | None:
        """
        (replicates, rows named): True where a closer name among these rows is there in the same unit, so that the
        row is no further kind; None where that is so of none.

        anywhere:  in any unit, for what sets units against all of them together.
        """
        if not self.wider or not rows.size:
            return None
        unit = self.unit_of(rows)
        where = np.zeros_like(unit) if anywhere else unit
        return covered(self.kind_of(rows), where, self._is_there(rows), len(self.ids), self.wider)

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

    def in_order_of_sums(self) -> np.ndarray:
        """All rows of the units, those of each unit in the order in which they are summed."""
        return self._rows

    def unit_of(self, rows: np.ndarray) -> np.ndarray:
        return self.laid("unit", rows, lambda: self._unit_of_row[rows])

    def kind_of(self, rows: np.ndarray) -> np.ndarray:
        """The kind of each row named."""
        return self.laid("kind", rows, lambda: self.table.row_kind[rows])

    def rows_of(self, unit: int, selector: Selector) -> np.ndarray:
        """Rows of one unit that the selector means."""
        own = slice(self._row_ends[unit], self._row_ends[unit + 1])
        return self._narrowed(self._rows[own][self.meant(selector)[self._kind_of_rows[own]]], selector)

    def samples_of(self, unit: int) -> np.ndarray:
        """Indices of the samples of one unit, in the order of the project."""
        return self._by_unit[self._ends[unit] : self._ends[unit + 1]]

    def agreed(self, codes: np.ndarray, otherwise: int) -> np.ndarray:
        """For a code of every sample: the code on which all samples of a unit agree, else `otherwise`."""
        low = self._over_samples(codes[None, :].astype(float), np.min, empty=np.nan)
        high = self._over_samples(codes[None, :].astype(float), np.max, empty=np.nan)
        return np.where(low == high, low, otherwise)

    def partly_sorted(self, rows: np.ndarray) -> np.ndarray:
        """Those of the rows whose size class was not sorted whole."""
        return self._of_rows("partly sorted", rows, lambda: rows[self.table.share[rows] < 1])

    def counts(self, rows: np.ndarray) -> np.ndarray:
        """(replicates, rows named): items as counted."""
        if self.table.replicates > 1:
            return taken(self.table.counted, rows)
        return self._of_rows("counts", rows, lambda: taken(self.table.counted, rows))

    def is_there(self, rows: np.ndarray) -> np.ndarray:
        """(replicates, rows named): True where a row says that the thing was there."""
        return self._is_there(rows)

    def summed(self, values: np.ndarray, rows: np.ndarray) -> np.ndarray:
        """Values of shape (replicates, all rows), summed by unit over the rows named."""
        return self._sum(taken(values, rows), rows)

    def sum_of(self, values: np.ndarray, rows: np.ndarray) -> np.ndarray:
        """Values of shape (replicates or 1, rows named), one for each row named, summed by unit."""
        return self._sum(values, rows)

    def _choose(self, selector: Selector) -> np.ndarray:
        meant = self.meant(selector)
        # Selectors that mean the same kinds share one array of rows, and so whatever is kept for it.
        alike = meant.tobytes()
        if alike not in self._alike:
            self._alike[alike] = self._rows[meant[self._kind_of_rows]] if self._rows.size else self._rows
        rows = self._alike[alike]
        return self._narrowed(rows, selector)

    def _narrowed(self, rows: np.ndarray, selector: Selector) -> np.ndarray:
        """Those of the rows that lie where and when the selector asks for."""
        if selector.asks_for_contexts and rows.size:
            is_there = self.kept(("contexts", selector), lambda: in_contexts(self.table, selector, self.packs))
            rows = rows[is_there[self.table.row_sample[rows]]]
        if selector.later_than_phase and rows.size:
            years = self.kept("earliest", lambda: earliest_years(self.table, self.packs))[self.table.row_kind[rows]]
            ends = self.table.phase_end[self.level][self._unit_of_row[rows]]
            rows = rows[years > np.where(np.isfinite(ends), ends, np.inf)]
        return rows

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
        order = self._by_unit[self._ends[0] :]
        out = blank(per_sample.shape[0], len(self.ids), empty)
        ufunc = {np.sum: np.add, np.max: np.maximum, np.min: np.minimum}[function]
        into_groups(ufunc, taken(per_sample, order), member[order], out)
        return out

    def _spread(self, values: np.ndarray) -> np.ndarray:
        """One row of values for every replicate."""
        return np.broadcast_to(values, self.shape) if values.shape != self.shape else values

    def _by_name(self, selector: Selector, *, with_part: bool, there: bool) -> tuple[np.ndarray, np.ndarray]:
        """Items (or 1 where there was any) summed by unit and name, and one row of each such group."""
        rows = self.rows(selector)
        if not rows.size:
            return np.zeros((self.table.replicates, 0)), rows
        names = self.name_of_kind if with_part else self.taxon_of_kind
        what = "runs of parts" if with_part else "runs of taxa"
        at = self.laid(what, rows, lambda: starts(self.unit_of(rows), names[self.kind_of(rows)]))
        hidden = None if with_part else self.covered(rows)
        if there:
            is_there = self._is_there(rows) if hidden is None else self._is_there(rows) & ~hidden
            return reduced(np.logical_or, is_there, at).astype(float), rows[at]
        counts = self.counts(rows) if hidden is None else self.counts(rows) * ~hidden
        return reduced(np.add, counts, at), rows[at]


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
