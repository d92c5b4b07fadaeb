"""Keys of single units: sums over all that stability and turnings read of a unit, whatever the rest of the dig is."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import NamedTuple

import numpy as np

from narrate.judging.criteria import Look, leaves
from narrate.judging.kept_units import KEY_BYTES
from narrate.measures.wider_names import either_found
from narrate.model.rules import Bound, Fact, Rule

_ROW = np.dtype(
    [
        ("kind", f"V{KEY_BYTES}"), ("sample", "<i4"), ("place", "<i4"), ("counted", "<f8"), ("unsorted", "<f8"),
        ("share", "<f8"), ("mass_g", "<f8"), ("class_low", "<f8"), ("class_high", "<f8"), ("is_noted", "?"),
    ]
)  # fmt: skip
_SAMPLE = np.dtype(
    [
        ("volume_l", "<f8"), ("sorted_share", "<f8"), ("added", "<f8"), ("recovered", "<f8"), ("intrusions", "<f8"),
    ]
)  # fmt: skip
_CANDIDATE = np.dtype(
    [("set", "<i4"), ("kind", f"V{KEY_BYTES}"), ("place", "<i4"), ("place_of_name", "<i4"), ("is_late", "?")]
)


class CandidateSet(NamedTuple):
    """Kinds that may be more or fewer, for one statement."""

    number: int
    """Which statement and sort of change they are tried for."""
    kinds: np.ndarray
    """(candidates, units); −1 for none."""
    late: np.ndarray
    """(units, kinds): whether each came too late to be added."""


class UnitKeys:
    """
    Keys of the units of one level.

    What a unit reads of the whole dig stands in its key by the value that is read: which kinds are tried on it, what a
    measure gave, in which order its rows are summed. So a unit keeps its key while that stays, whatever else changes.
    """

    def __init__(self, look: Look, rules: Iterable[Sequence[Rule]], codes: Iterable[Sequence[np.ndarray]]) -> None:
        """
        rules:  of each statement judged at the level.
        codes:  how each of them came out, (1, units).
        """
        self._look = look
        self._rules = [rule for of_statement in rules for rule in of_statement]
        self._leaves = list(
            dict.fromkeys(leaf for rule in self._rules for leaf in leaves((*rule.needs, rule.criteria)))
        )
        self._codes = [code for of_statement in codes for code in of_statement]

    def drawn(self, *, replicates: int, seed: int, is_across: bool) -> list[bytes]:
        """
        Keys of what comes of draws of each unit's counts.

        is_across:  units are held against each other or against phases, so that each reads all.
        """
        facts = [self._look.leaf_verdicts(leaf)[:1] for leaf in self._leaves if isinstance(leaf, Fact)]
        judged = _by_unit([*self._codes, *facts], len(self.contents))
        every = self._dig() if is_across else b""
        ground = self._ground("drawn", replicates, seed)
        return [_sum(ground, every, *unit) for unit in zip(self.contents, judged, strict=True)]

    def turned(self, sets: Sequence[CandidateSet], stays: Iterable[Bound], medians: Iterable[float]) -> list[bytes]:
        """
        Keys of the smallest changes that turn what each unit is judged to be.

        sets:     the kinds that are tried, in their order.
        stays:    measures that no change of counts moves.
        medians:  values of the whole dig that a unit is held against.
        """
        facts = [self._look.leaf_verdicts(leaf)[:1] for leaf in self._leaves if isinstance(leaf, Fact)]
        judged = _by_unit([*self._codes, *facts], len(self.contents))
        columns = [self._look.column(bound) for bound in stays]
        measured = _by_unit(
            [part[:1].astype("<f8") for c in columns for part in (c.value, c.low, c.high)], len(self.contents)
        )
        ground = self._ground("turned", *medians)
        tried = self._tried(sets)
        return [_sum(ground, *unit) for unit in zip(self.contents, judged, measured, tried, strict=True)]

    def _dig(self) -> bytes:
        """A sum over all units, and over the phases that samples lie in."""
        table = self._look.units.table
        phases = repr((table.sample_ids, table.unit_ids["phase"], table.phase_end["phase"].tolist()))
        member = table.unit_of_sample["phase"].astype("<i8").tobytes()
        return _sum(*self.contents, _sum(phases.encode("utf-8", "backslashreplace")), member)

    def _ground(self, what: str, *numbers: float) -> bytes:
        units = self._look.units
        said = (
            *(what, numbers, units.level, units.preservation, units.packs.regions),
            [rule.id for rule in self._rules],
            # Whether a name for either of two plants is meant hangs on what else the dig holds.
            either_found(units.table.kinds, units.packs),
        )
        return _sum(repr(said).encode("utf-8", "backslashreplace"))

    @cached_property
    def _kinds(self) -> np.ndarray:
        kinds = [_sum(repr(kind).encode("utf-8", "backslashreplace")) for kind in self._look.units.table.kinds]
        return np.array(kinds, f"V{KEY_BYTES}")

    @cached_property
    def contents(self) -> list[bytes]:
        """By unit: its rows in the order of the sheets, where each lies when it is summed, and what its samples say."""
        units, table = self._look.units, self._look.units.table
        ends, by_unit = _runs(table.unit_of_sample[units.level], len(units.ids))
        number = np.zeros(len(table.sample_ids), np.intp)
        number[by_unit] = np.arange(by_unit.size) - np.repeat(ends[:-1], np.diff(ends))
        samples = np.zeros(by_unit.size, _SAMPLE)
        for name in ("volume_l", "sorted_share", "added", "recovered", "intrusions"):
            samples[name] = getattr(table, name)[by_unit]
        groups = np.array([table.groups[by][by_unit] for by in sorted(table.groups)], "<i8").T
        row_ends, own = _runs(units.unit_of(np.arange(table.row_sample.size)), len(units.ids))
        place = np.zeros(table.row_sample.size, np.intp)
        place[units.in_order_of_sums()] = np.arange(own.size) - np.repeat(row_ends[:-1], np.diff(row_ends))
        rows = np.zeros(own.size, _ROW)
        rows["kind"], rows["sample"], rows["place"] = (
            self._kinds[table.row_kind[own]], number[table.row_sample[own]], place[own],
        )  # fmt: skip
        for name in ("share", "mass_g", "class_low", "class_high", "is_noted"):
            rows[name] = getattr(table, name)[own]
        rows["counted"], rows["unsorted"] = table.counted[0, own], table.unsorted[0, own]
        found = []
        for unit, id in enumerate(units.ids):
            own_samples = by_unit[ends[unit] : ends[unit + 1]].tolist()
            said = (
                id,
                float(table.phase_end[units.level][unit]),
                [table.sample_ids[sample] for sample in own_samples],
                [table.context_kind[sample] for sample in own_samples] if table.context_kind else (),
                [table.recorded[sample] for sample in own_samples] if table.recorded else (),
            )
            found.append(
                _sum(
                    _sum(repr(said).encode("utf-8", "backslashreplace")),
                    _sum(samples[ends[unit] : ends[unit + 1]].tobytes(), groups[ends[unit] : ends[unit + 1]].tobytes()),
                    _sum(rows[row_ends[unit] : row_ends[unit + 1]].tobytes()),
                )
            )
        return found

    def _tried(self, sets: Sequence[CandidateSet]) -> list[bytes]:
        """By unit: the kinds of each set, whether each came too late, and where each lies among the others."""
        units = self._look.units
        summed = units.in_order_of_sums()
        names = int(units.name_of_kind.max(initial=0)) + 1
        laid = units.unit_of(summed) * names + units.name_of_kind[units.table.row_kind[summed]]
        begins = np.searchsorted(laid, np.arange(len(units.ids)) * names)
        parts = []
        for number, kinds, late in sets:
            place = np.argsort(np.argsort(kinds, axis=0, kind="stable"), axis=0, kind="stable")
            candidate, unit = np.nonzero(kinds >= 0)
            kind = kinds[candidate, unit]
            entries = np.zeros(kind.size, _CANDIDATE)
            entries["set"], entries["kind"], entries["is_late"] = number, self._kinds[kind], late[unit, kind]
            # Counted from the last, because how many units have no candidate there is nothing of this unit's.
            entries["place"] = len(kinds) - place[candidate, unit]
            entries["place_of_name"] = np.searchsorted(laid, unit * names + units.name_of_kind[kind]) - begins[unit]
            parts.append((unit, entries))
        everyone = len(self.contents)
        if not parts:
            return [b""] * everyone
        unit, entries = (np.concatenate(part) for part in zip(*parts, strict=True))
        ends, order = _runs(unit, everyone)
        entries = entries[order]
        return [_sum(entries[ends[u] : ends[u + 1]].tobytes()) for u in range(everyone)]


def _runs(unit: np.ndarray, count: int) -> tuple[np.ndarray, np.ndarray]:
    """Where each unit's entries begin and end, and the entries by unit; those of no unit are left out."""
    order = np.argsort(unit, kind="stable")
    order = order[unit[order] >= 0]
    return np.searchsorted(unit[order], np.arange(count + 1)), order


def _by_unit(columns: Sequence[np.ndarray], units: int) -> list[bytes]:
    """Columns of shape (1, units) as one run of bytes a unit."""
    if not columns:
        return [b""] * units
    laid = np.ascontiguousarray(np.concatenate(columns).T)
    return [_sum(row.tobytes()) for row in laid]


def _sum(*parts: bytes) -> bytes:
    """A sum over parts that are each of one length for a kind of key, or the last."""
    return hashlib.blake2b(b"".join(parts), digest_size=KEY_BYTES).digest()
