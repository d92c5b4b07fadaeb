"""Months as a circle: what one gathering explains, and how few gatherings explain all."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.count_table import Kind
from narrate.measures.selection import earliest_years, windows_of
from narrate.measures.units import Units
from narrate.model.ids import Subject
from narrate.model.plants import Window
from narrate.model.rules import Selector
from narrate.model.seasons import FoundWindow, Gatherings, Seasons, SourceWindow

WHOLE_YEAR = 0b1111_1111_1111


def gatherings(units: Units, of: Selector) -> Column:
    """
    Fewest separate gatherings that explain what was found, as if each had been used fresh.

        the least size of a set of months that meets the window of every plant and part found

    Unit: gatherings. Interval: none; the number is exact for the windows given, by trying all sets of months. No value:
    where nothing with known months was found. Ask with `keeping: [perishable]` for what storage cannot explain away.
    Misleads: months of ripening are not months of burning. What keeps may have lain for months, so the number is of
    harvests at most, not of visits. Where sources disagree the months of all are allowed, which lowers it.
    Source: after Monks 1981 and Adams & Bohrer 1998, in Rocek & Bar-Yosef (eds), pp. 129–141, that remains give the
    season of availability (from memory); the counting is ours.
    """
    masks, present = _present(units, of)
    fewest = np.full(present.shape[:2], np.nan)
    open_ = present.any(axis=2)
    for size in range(1, 13):
        for_sets = np.array(_sets(size))
        if not open_.any():
            break
        missed = (np.array(masks)[:, None] & for_sets[None, :]) == 0
        met = (present[open_].astype(np.float32) @ missed.astype(np.float32) == 0).any(axis=1)
        where = np.argwhere(open_)[met]
        fewest[where[:, 0], where[:, 1]] = size
        open_ &= fewest != size
    return exact(
        fewest, of=units.counted(of), n=present.sum(axis=2).astype(float), reason="nothing with known months was found"
    )


def one_gathering_share(units: Units, of: Selector) -> Column:
    """
    Share of the plants and parts found that one gathering, in the month that suits most of them, could have given.

        max over months of (windows open) / (windows)

    Unit: 0 to 1. Interval: none. No value: where nothing with known months was found.
    Misleads: it counts plants, not seeds; plants whose months the packs do not know are left out.
    Source: after Adams & Bohrer 1998, pp. 129–141 (from memory), for whom several taxa agreeing is stronger evidence.
    """
    masks, present = _present(units, of)
    windows = present.sum(axis=2).astype(float)
    is_open = np.array([[bool(mask >> month & 1) for month in range(12)] for mask in masks], np.float32).reshape(-1, 12)
    best = (present.astype(np.float32) @ is_open).max(axis=2, initial=0).astype(float)
    with np.errstate(invalid="ignore", divide="ignore"):
        share = best / np.where(windows > 0, windows, np.nan)
    return exact(share, of=best, to=windows, n=windows, reason="nothing with known months was found")


def seasons(units: Units, of: Selector | None = None) -> tuple[Seasons, ...]:
    """
    Windows, support by month, fewest gatherings and disagreements of sources, for every unit of a level.

    Plants from overseas in deposits older than their coming got in later, and are left out.
    """
    return tuple(_seasons(units, unit, of or Selector()) for unit in range(len(units.ids)))


def fewest_gatherings(windows: Iterable[Iterable[int]]) -> Gatherings:
    """
    The fewest months that meet every window, and every set of so few, by trying all sets in order of size.

    windows:  months (1 to 12) of each; one without months can be met by nothing and is left out.
    Source:   the hitting-set problem; exact by exhaustion, for there are only 4,095 sets of months.

    >>> fewest_gatherings([(5, 6), (6, 7), (11, 12, 1)]).plans
    ((1, 6), (6, 11), (6, 12))
    """
    masks = {_mask(months) for months in windows} - {0}
    if not masks:
        return Gatherings(fewest=None, plans=())
    for size in range(1, 13):
        met = [chosen for chosen in _sets(size) if all(chosen & mask for mask in masks)]
        if met:
            return Gatherings(fewest=size, plans=tuple(sorted(_months(chosen) for chosen in met)))
    raise AssertionError("the whole year meets every window")


@cache
def _sets(size: int) -> tuple[int, ...]:
    """All sets of so many months, each as twelve bits."""
    return tuple(bits for bits in range(1, WHOLE_YEAR + 1) if bits.bit_count() == size)


def _mask(months: Iterable[int]) -> int:
    bits = 0
    for month in months:
        bits |= 1 << (month - 1)
    return bits


def _months(bits: int) -> tuple[int, ...]:
    return tuple(month for month in range(1, 13) if bits >> (month - 1) & 1)


def _windows(kind: Kind, units: Units) -> tuple[Window, ...]:
    """Windows of a kind; of a group or 'A/B' only where every member has one."""
    taxa = units.packs.taxa
    names = (kind.taxon,) if kind.taxon is not None else kind.either
    found: list[Window] = []
    for name in names:
        taxon = taxa.get(name)
        own = windows_of(taxon, kind.part) if taxon else ()
        if taxon and not own and taxon.members:
            members = [windows_of(taxa[m], kind.part) if m in taxa else () for m in taxon.members]
            own = tuple(w for windows in members for w in windows) if all(members) else ()
        if not own:
            return ()
        found.extend(own)
    return tuple(found)


def _present(units: Units, of: Selector) -> tuple[list[int], np.ndarray]:
    """The different plants and parts with known months: their months as bits, and where they are."""
    return units.kept(("windows", of), lambda: _looked_for(units, of))


def _looked_for(units: Units, of: Selector) -> tuple[list[int], np.ndarray]:
    table, rows = units.table, _of_their_time(units, units.rows(of))
    columns: dict[tuple[object, str], int] = {}
    masks: list[int] = []
    column_of_kind = np.full(len(table.kinds), -1, np.intp)
    for i, kind in enumerate(table.kinds):
        windows = _windows(kind, units)
        if windows:
            key = (kind.taxon or kind.either, kind.part)
            if key not in columns:
                columns[key] = len(masks)
                masks.append(_mask(month for window in windows for month in window.months))
            column_of_kind[i] = columns[key]
    column = column_of_kind[units.kind_of(rows)]
    has_months = np.flatnonzero(column >= 0)
    column, unit = column[has_months], units.unit_of(rows)[has_months]
    present = np.zeros((*units.shape, max(len(masks), 1)), bool)
    replicate, at = np.nonzero(units.is_there(rows)[:, has_months])
    present[replicate, unit[at], column[at]] = True
    return masks or [0], present


def _seasons(units: Units, unit: int, of: Selector) -> Seasons:
    windows, unknown = _found(units, unit, of)
    binding = [w for w in windows if w.binds]
    ripe = {month for window in binding for month in window.any_source}
    return Seasons(
        subject=Subject(level=units.level, id=units.ids[unit]),
        windows=windows,
        support=tuple(sum(month in w.any_source for w in windows) for month in range(1, 13)),
        all_fresh=fewest_gatherings(w.any_source for w in windows),
        agreed_only=fewest_gatherings(w.every_source for w in windows),
        binding=fewest_gatherings(w.any_source for w in binding),
        left_open=tuple(month for month in range(1, 13) if month not in ripe),
        disputed=tuple((w.taxon, w.part) for w in windows if w.is_disputed),
        unknown=unknown,
    )


def _found(units: Units, unit: int, of: Selector) -> tuple[tuple[FoundWindow, ...], tuple[tuple[str, str], ...]]:
    table = units.table
    items: dict[tuple[str, str], int] = {}
    kinds: dict[tuple[str, str], Kind] = {}
    for row in _of_their_time(units, units.rows_of(unit, of)).tolist():
        kind = table.kinds[table.row_kind[row]]
        if table.is_noted[row]:
            key = (str(kind.taxon or "/".join(kind.either) or kind.written), kind.part)
            items[key] = items.get(key, 0) + int(table.counted[0, row])
            kinds[key] = kind
    found, unknown = [], []
    for key in sorted(items):
        windows = _windows(kinds[key], units)
        if windows:
            found.append(_window(key, items[key], windows))
        else:
            unknown.append(key)
    return tuple(found), tuple(unknown)


def _of_their_time(units: Units, rows: np.ndarray) -> np.ndarray:
    """Rows without plants from overseas in deposits older than their coming: they are no finds of that time."""
    table = units.table
    later = units.kept("from overseas", lambda: _from_overseas(units))[table.row_kind[rows]]
    return rows[~(later > table.phase_end["sample"][table.row_sample[rows]])]


def _from_overseas(units: Units) -> np.ndarray:
    """Earliest year in the region of each kind of a plant from overseas; −infinity of all others."""
    taxa = (units.packs.taxa.get(kind.taxon) for kind in units.table.kinds)  # type: ignore[arg-type]
    is_brought = np.array([taxon is not None and "old-world" in taxon.tags for taxon in taxa], bool)
    return np.where(is_brought, earliest_years(units.table, units.packs), -np.inf)


def _window(key: tuple[str, str], items: int, windows: tuple[Window, ...]) -> FoundWindow:
    months = [set(window.months) for window in windows]
    return FoundWindow(
        taxon=key[0],
        part=key[1],
        items=items,
        by_source=tuple(
            SourceWindow(months=w.months, keeping=tuple(w.keeping), sources=w.sources, known=w.known) for w in windows
        ),
        any_source=tuple(sorted(set.union(*months))),
        every_source=tuple(sorted(set.intersection(*months))),
        keeping=tuple(dict.fromkeys(k for window in windows for k in window.keeping)),
    )
