"""How far an interval would narrow if the rest of size classes were sorted."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.count_table import CountTable
from narrate.measures.units import Units
from narrate.model.rules import Selector

WITHOUT_WIDTH = "there is no interval, or one that is open above"


def sorted_whole(table: CountTable, rows: np.ndarray | None = None) -> CountTable:
    """
    The table as it would be if the rest of size classes were sorted and held what the sorted share foretells.

        k′ = k + unsorted = k / f;   f′ = 1

    rows:   True for the rows whose classes are finished; left out: all.
    Gives:  counts that need not be whole, because they are expected and not found.
    """
    done = np.ones(table.share.shape, bool) if rows is None else rows
    smallest = np.ones_like(table.sorted_share)
    if rows is not None:
        smallest = _smallest_left(table, done)
    return replace(
        table.with_counts(table.counted + np.where(done, table.unsorted, 0), np.where(done, 0, table.unsorted)),
        share=np.where(done, 1.0, table.share),
        mass_g=np.where(done, table.mass_g / table.share, table.mass_g),
        sorted_share=smallest,
    )


def width_left(now: Column, then: Column) -> np.ndarray:
    """
    Of the width of an interval, the share that is left: 1 is no gain.

    Gives:  NaN where either interval is missing or open above, or has no width.
    """
    with np.errstate(invalid="ignore", divide="ignore"):
        widths = [np.where(np.isfinite(c.high) & np.isfinite(c.low), c.high - c.low, np.nan) for c in (now, then)]
        return np.where(widths[0] > 0, widths[1] / widths[0], np.nan)


def finished(units: Units, rows: np.ndarray | None = None) -> Units:
    """The same units with size classes sorted whole: all of them, or those of the rows."""
    if rows is not None:
        return units.with_table(sorted_whole(units.table, rows), units.weight)
    return units.kept("sorted whole", lambda: units.with_table(sorted_whole(units.table), units.weight))


def worked_once(function: Callable[..., Column], units: Units, *selectors: Selector) -> Column:
    """A measure, kept where there are no replicates, because its narrowing asks for it again."""
    if units.table.replicates > 1:
        return function(units, *selectors)
    return units.kept((function, selectors), lambda: function(units, *selectors))


def narrowing_of(function: Callable[..., Column], name: str) -> Callable[..., Column]:
    """
    A measure of its own: the width that is left of another measure's interval.

    function:  the other measure.
    name:      what it is called on the page of the new one.
    """

    def narrowing(units: Units, *selectors: Selector) -> Column:
        now = worked_once(function, units, *selectors)
        then = function(finished(units), *selectors)
        return exact(width_left(now, then), of=now.n, to=then.n, n=now.n, reason=WITHOUT_WIDTH)

    narrowing.__doc__ = _PAGE.format(name=name)
    return narrowing


_PAGE = """
    Of the width of the interval of {name}, the share that would be left if the unsorted rest of all size classes were
    sorted and held what the sorted share foretells.

        left = width(k / f) / width(k);   k items counted in a class of which the share f was sorted

    Unit: 0 to 1; 1 is no gain. Interval: none. No value: where the interval is missing, has no width, or is open above.
    Misleads: the rest is taken to be like what was sorted: it holds no new taxon and every rare one oftener, so that
    for measures that count rare taxa it is too hopeful.
    Source: that of the interval; worked out.
    """


def _smallest_left(table: CountTable, done: np.ndarray) -> np.ndarray:
    """Smallest share sorted of a sample, by its rows, once some of its classes are finished; none is made smaller."""
    share = np.ones_like(table.sorted_share)
    np.minimum.at(share, table.row_sample[~done], table.share[~done])
    return np.maximum(share, table.sorted_share)
