"""What a rule looked at, for one unit: values, facts and the rows behind them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from operator import attrgetter
from typing import overload

import numpy as np

from narrate.judging.clauses import in_words
from narrate.judging.criteria import Look, leaves
from narrate.judging.facts import fact_text
from narrate.judging.weigh import VERDICTS
from narrate.measures.catalogue import MEASURES
from narrate.measures.shares import pieces_of
from narrate.model.claims import Evidence
from narrate.model.ids import RuleId
from narrate.model.rules import Bound, Fact, Rule, Selector
from narrate.problems import Place

RATIOS = frozenset({"ratio", "log_ratio"})
"""Measures that set items against items, which have to be like units for it."""


class PlacesInOrder:
    """Numbers of all rows and records in the order of the files; worked out when one is asked for."""

    def __init__(self, look: Look) -> None:
        self._look = look

    @property
    def of_rows(self) -> np.ndarray:
        """By the number of the row."""
        return self._numbers[0]

    @property
    def of_records(self) -> Mapping[Place, int]:
        return self._numbers[1]

    @cached_property
    def _numbers(self) -> tuple[np.ndarray, dict[Place, int]]:
        written, records = self._look.units.table.places, {record.place for record in self._look.records}
        order = sorted({*written, *records}, key=attrgetter("path", "line", "column", "sheet", "cell"))
        of_place = {place: number for number, place in enumerate(order)}
        return np.array([of_place[place] for place in written], np.intp), {one: of_place[one] for one in records}


class LookedAt:
    """What rules looked at in the units of one level, taken out of the columns for one unit when somebody asks."""

    def __init__(self, look: Look, order: PlacesInOrder) -> None:
        """order: of the places of the rows and records, which all levels share."""
        self.look = look
        self._order = order
        self._by_rule: dict[RuleId, tuple[Asked, ...]] = {}
        self._by_leaf: dict[Bound | Fact, Asked] = {}
        self._said: dict[Fact | str, dict[int, str]] = {}
        """What the records say, by fact and unit."""
        self._unit = -1
        self._numbers: dict[tuple[Selector, ...], frozenset[int]] = {}
        """Of one unit: rules ask for the same things again and again."""

    def of(self, rule: Rule, unit: int) -> tuple[Evidence, ...]:
        """One entry a leaf, needs first, each once."""
        return tuple(asked.evidence(self, unit) for asked in self.asked(rule))

    def asked(self, rule: Rule) -> tuple[Asked, ...]:
        """What the rule asks, in the order of `of`."""
        found = self._by_rule.get(rule.id)
        if found is None:
            leaves_once = dict.fromkeys(leaves((*rule.needs, rule.criteria)))
            found = self._by_rule[rule.id] = tuple(self._of_leaf(leaf) for leaf in leaves_once)
        return found

    def _of_leaf(self, leaf: Bound | Fact) -> Asked:
        if leaf not in self._by_leaf:
            self._by_leaf[leaf] = AskedValue(leaf, self.look) if isinstance(leaf, Bound) else self._asked_fact(leaf)
        return self._by_leaf[leaf]

    def _asked_fact(self, fact: Fact) -> AskedFact:
        """Only of notes it hangs on what a rule asks what is said of them: all other rules share what a record says."""
        return AskedFact(fact, self.look, self._said.setdefault(fact if fact.fact == "noted" else fact.fact, {}))

    def places(self, unit: int, selectors: Sequence[Selector]) -> tuple[Place, ...]:
        """Rows of the sheets that a measure summed; the records where there is no such row."""
        written = self.look.units.table.places
        rows = self.rows(unit, selectors)
        return tuple(written[row] for row in rows) if rows else self.records(unit)

    def rows(self, unit: int, selectors: Sequence[Selector]) -> list[int]:
        """Numbers of the rows that a measure summed, in the order of the sheets."""
        found = [self.look.units.rows_of(unit, selector) for selector in selectors]
        rows = found[0] if len(found) == 1 else np.unique(np.concatenate(found)) if found else np.zeros(0, np.intp)
        return rows[np.argsort(self._order.of_rows[rows], kind="stable")].tolist()  # type: ignore[no-any-return]

    def numbers(self, unit: int, selectors: tuple[Selector, ...]) -> frozenset[int]:
        """The places of `places` as numbers that rise with them; equal places have one number."""
        if unit != self._unit:
            self._unit, self._numbers = unit, {}
        found = self._numbers.get(selectors)
        if found is None:
            rows = self.rows(unit, selectors)
            of_records = self._order.of_records
            numbers = self._order.of_rows[rows].tolist() if rows else [of_records[one] for one in self.records(unit)]
            found = self._numbers[selectors] = frozenset(numbers)
        return found

    def records(self, unit: int) -> tuple[Place, ...]:
        """Where the records of the samples of a unit were written."""
        return tuple(sorted({self.look.records[sample].place for sample in self.look.units.samples_of(unit)}))


class AskedValue:
    """A measure that a rule asks for, with its figures for every unit."""

    def __init__(self, bound: Bound, look: Look) -> None:
        column = look.column(bound)
        self.bound = bound
        self.measure = bound.measure + (f".{bound.name}" if bound.name else "")
        self.unit_of = MEASURES[bound.measure].unit
        self.reason = column.reason
        self.selectors = _summed(bound)
        self.codes = look.leaf_verdicts(bound)[0]
        ends = (column.low, column.high) if column.has_interval else (None, None)
        self.figures = (column.value, *ends, column.n, column.of, column.to)

    def of_unit(self, unit: int) -> list[float | None]:
        """Value, low, high, n, of and to of one unit; None where there is none."""
        return [None if part is None else _finite(part.item(0, unit)) for part in self.figures]

    def holds_any(self, unit: int) -> bool:
        """Whether the unit has anything of what is asked for."""
        of = self.figures[4]
        return of is not None and bool(_finite(of.item(0, unit)))

    def evidence(self, looked_at: LookedAt, unit: int) -> Evidence:
        value, low, high, n, of, to = self.of_unit(unit)
        return Evidence(
            measure=self.measure,
            name=self.bound.name,
            value=value,
            low=low,
            high=high,
            unit=self.unit_of,
            n=None if n is None else int(round(n)),
            text=in_words(self.bound.measure, value),
            reason="" if value is not None else self.reason,
            verdict=VERDICTS[self.codes.item(unit)],
            of=of,
            to=to,
            pieces=self._pieces(looked_at, unit, of),
            places=RowsBehind(looked_at, unit, self.selectors),
        )

    def _pieces(self, looked_at: LookedAt, unit: int, of: float | None) -> int:
        """Fragments of the first of a ratio, where they are most of it."""
        if self.bound.measure not in RATIOS or self.bound.of is None or not of:
            return 0
        pieces = pieces_of(looked_at.look.units, unit, self.bound.of)
        return pieces if pieces * 2 > of else 0


class AskedFact:
    """What the records say to a fact that a rule asks for, of every unit."""

    def __init__(self, fact: Fact, look: Look, texts: dict[int, str]) -> None:
        """texts: what was said of units already; more is added to it."""
        self.fact = fact
        self.measure = f"record.{fact.fact}"
        self.codes = look.leaf_verdicts(fact)[0]
        self._texts = texts

    def text(self, look: Look, unit: int) -> str:
        found = self._texts.get(unit)
        if found is None:
            found = self._texts[unit] = fact_text(self.fact, look.units, unit, look.records)
        return found

    def evidence(self, looked_at: LookedAt, unit: int) -> Evidence:
        return Evidence(
            measure=self.measure,
            text=self.text(looked_at.look, unit),
            verdict=VERDICTS[self.codes.item(unit)],
            places=RowsBehind(looked_at, unit, None),
        )


Asked = AskedValue | AskedFact


class RowsBehind(Sequence[Place]):
    """The places behind one value, as a sequence that is worked out when it is read."""

    __slots__ = ("_looked_at", "_selectors", "_unit")

    def __init__(self, looked_at: LookedAt, unit: int, selectors: tuple[Selector, ...] | None) -> None:
        self._looked_at = looked_at
        self._unit = unit
        self._selectors = selectors
        """None: the value is what the records say."""

    @property
    def numbered(self) -> tuple[Sequence[Place], Sequence[int]]:
        """All places of the sheets, and which of them these are; none where they are those of records."""
        numbers = [] if self._selectors is None else self._looked_at.rows(self._unit, self._selectors)
        return self._looked_at.look.units.table.places, numbers

    def __iter__(self) -> Iterator[Place]:
        return iter(self._places())

    def __len__(self) -> int:
        return len(self._places())

    @overload
    def __getitem__(self, at: int) -> Place: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Place]: ...
    def __getitem__(self, at: int | slice) -> Place | Sequence[Place]:
        return self._places()[at]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and self._places() == tuple(other)

    def __hash__(self) -> int:
        return hash(self._places())

    def __repr__(self) -> str:
        return repr(self._places())

    def _places(self) -> tuple[Place, ...]:
        if self._selectors is None:
            return self._looked_at.records(self._unit)
        return self._looked_at.places(self._unit, self._selectors)


def _summed(bound: Bound) -> tuple[Selector, ...]:
    """What a measure sums."""
    measure = MEASURES[bound.measure]
    wanted = (bound.of or Selector(),) if measure.needs_of else ()
    return (*wanted, bound.to or Selector()) if measure.needs_to else wanted


def _finite(value: float) -> float | None:
    return float(value) if math.isfinite(value) else None


def named(evidence: tuple[Evidence, ...]) -> dict[str, Evidence]:
    """Evidence by the names that clauses quote."""
    return {entry.name: entry for entry in evidence if entry.name}
