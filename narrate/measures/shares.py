"""Shares and ratios of counts, and what rules a total."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.intervals import ratio as ratio_ends
from narrate.measures.intervals import wilson
from narrate.measures.units import Units
from narrate.model.rules import Selector


def share(units: Units, of: Selector, to: Selector) -> Column:
    """
    Share of one selection among another, from raw counts.

        share = k / n;   n items of `to`, k those of them that `of` means too

    Unit: 0 to 1. Interval: Wilson. No value: where `to` holds nothing.
    Misleads: closed sums; a rise of one plant lowers all others.
    Source: Pearsall 2015, ch. 5; Wilson 1927 (from memory).
    """
    both = units.counted_in_both(of, to)
    whole = units.counted(to)
    low, high = wilson(both, whole)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = both / np.where(whole > 0, whole, np.nan)
    return Column(
        value=value,
        low=low,
        high=high,
        of=both,
        to=whole,
        n=whole,
        has_interval=True,
        reason="nothing to take a share of",
    )


def ratio(units: Units, of: Selector, to: Selector) -> Column:
    """
    Items of one thing per item of another, from raw counts.

        ratio = k / m;   k items of the one, m of the other

    Unit: items per item. Interval: exact, from Clopper and Pearson's of k/(k + m); where m is 0 the value is not
    defined but the lower end is a bound, where k is 0 the upper end is one. No value: where m is 0; no bounds either
    where both are.
    Misleads: the two may not char, break and survive alike; items that came together (a cob, a head of seeds) make the
    interval too narrow. Pieces are counted as items: where most of the first are pieces (`pieces_of`) the two are no
    like units, and the ratio says how many items there were and not how many came in together.
    Source: Miller 1988, in Hastorf & Popper (eds), pp. 72–85; Scarry & Steponaitis 1997 for maize (from memory).
    """
    first, second = units.counted(of), units.counted(to)
    low, high = ends_of_ratio(units, first, second)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = first / np.where(second > 0, second, np.nan)
    return Column(
        value=value,
        low=low,
        high=high,
        of=first,
        to=second,
        n=first + second,
        has_interval=True,
        reason="nothing of the second was found",
    )


def pieces_of(units: Units, unit: int, of: Selector) -> int:
    """
    Of the items of one unit that a selector means, those recorded as fragments; 0 where it asks for whole ones alone.

    Where they are most of the items, these are no like units of what they are set against in a ratio.
    Source: common practice, no source.
    """
    if of.completeness:
        return 0
    rows = units.rows_of(unit, replace(of, completeness=("fragment",)))
    return int(units.table.counted[0, rows].sum())


def chaff_ratio(units: Units, of: Selector, to: Selector) -> Column:
    """
    Pieces of chaff per grain, where a spikelet fork stands for the two glume bases that it is made of.

        chaff ratio = Σ wᵢ cᵢ / g;   cᵢ pieces of a part of `of` that each stand for wᵢ, g items of `to`

    Unit: pieces per grain. Interval: exact, from the share Σ wᵢ cᵢ / (Σ wᵢ cᵢ + g), with the n that was counted, not
    the weighted one. No value: where no grain was found; then the lower end is a bound. No bounds where both are 0.
    Misleads: chaff burns away before grain does, so a low ratio is weak evidence of cleaning.
    Source: Jones 1990, Circaea 6:91–96; Hillman 1984 for the two glume bases of a fork (from memory).
    """
    raw, weighted = units.counted(of), units.weighted(of)
    grains = units.counted(to)
    n = raw + grains
    with np.errstate(invalid="ignore", divide="ignore"):
        part = weighted / np.where(weighted + grains > 0, weighted + grains, np.nan)
        value = weighted / np.where(grains > 0, grains, np.nan)
    # Rounded, so that what is whole stays so: a share times n may miss its k by a hair.
    first = np.round(np.nan_to_num(part * n), 9)
    low, high = ends_of_ratio(units, first, np.where(n > 0, n - first, 0))
    return Column(
        value=value, low=low, high=high, of=weighted, to=grains, n=n, has_interval=True, reason="no grain was found"
    )


def ends_of_ratio(units: Units, of: np.ndarray, to: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """The ends of `intervals.ratio`; kept without replicates, because measures share them."""
    if units.table.replicates > 1:
        return ratio_ends(of, to)
    return units.kept(("ends of ratio", of.tobytes(), to.tobytes()), lambda: ratio_ends(of, to))


def dominance(units: Units, of: Selector) -> Column:
    """
    Largest share that one plant and part has among the items (Berger and Parker's index, by part).

        dominance = max kᵢ / Σ kᵢ

    Unit: 0 to 1. Interval: Wilson, which is a little too low for a maximum. No value: where nothing was counted.
    Misleads: fragments of one nut or log count one by one, so that what breaks most looks commonest.
    Source: Berger & Parker 1970, Science 168:1345–1347 (from memory).
    """
    return _of_the_largest(*units.largest_share(of))


def plant_dominance(units: Units, of: Selector) -> Column:
    """
    Largest share that one plant, all its parts together, has among the items (Berger and Parker's index, by plant).

        plant dominance = max kᵢ / Σ kᵢ

    Unit: 0 to 1. Interval: Wilson, which is a little too low for a maximum. No value: where nothing was counted.
    Misleads: a plant with many parts that char and break (kernels, cupules, cobs) looks commonest; `dominance` keeps
    parts apart.
    Source: Berger & Parker 1970, Science 168:1345–1347 (from memory).
    """
    return _of_the_largest(*units.largest_plant(of))


def _of_the_largest(top: np.ndarray, whole: np.ndarray) -> Column:
    """The share of the largest among all; of shape (replicates, units)."""
    low, high = wilson(top, whole)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = top / np.where(whole > 0, whole, np.nan)
    return Column(
        value=value, low=low, high=high, of=top, to=whole, n=whole, has_interval=True, reason="nothing was counted"
    )


def richest_share(units: Units, of: Selector) -> Column:
    """
    Share of the items that the richest sample of the unit holds.

        max over samples Σ kᵢ / Σ kᵢ

    Unit: 0 to 1. Interval: none. No value: where nothing was counted.
    Misleads: it is 1 where the unit has one sample, which then says nothing.
    Source: the caution of Gremillion, Excavating Occaneechi Town, that one rich context may not drive a total.
    """
    top, whole = units.richest_sample(of)
    with np.errstate(invalid="ignore", divide="ignore"):
        return exact(top / np.where(whole > 0, whole, np.nan), of=top, n=whole, reason="nothing was counted")


def richest_context_share(units: Units, of: Selector) -> Column:
    """
    Share of the items that the richest context of the unit holds, all samples of the context together.

        max over contexts Σ kᵢ / Σ kᵢ

    Unit: 0 to 1. Interval: none. No value: where nothing was counted.
    Misleads: it is 1 where the unit has one context, which then says nothing; contexts of one pit are one event more
    often than two.
    Source: the caution of Gremillion, Excavating Occaneechi Town, that one rich context may not drive a total.
    """
    top, whole = units.richest_context(of)
    with np.errstate(invalid="ignore", divide="ignore"):
        return exact(top / np.where(whole > 0, whole, np.nan), of=top, n=whole, reason="nothing was counted")


def recovery(units: Units) -> Column:
    """
    Share of marked charred seeds that flotation gave back.

        recovery = recovered / added

    Unit: 0 to 1. Interval: Wilson. No value: where no test was made.
    Misleads: it speaks of small robust seeds; counts are never corrected by it.
    Source: Wagner 1982, American Antiquity 47:127–132.
    """
    back, added = units.recovery()
    low, high = wilson(back, added)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = back / np.where(added > 0, added, np.nan)
    return Column(
        value=value,
        low=low,
        high=high,
        of=back,
        to=added,
        n=added,
        has_interval=True,
        reason="no recovery test was made",
    )


def intrusions(units: Units) -> Column:
    """
    Worst modern intrusion noted: 0 none, 1 few, 2 some, 3 many.

        the largest amount among rootlets, insects, worm casts, rodent signs … of all samples

    Unit: steps of a scale. Interval: none. No value: where the records note nothing about intrusions.
    Misleads: what few means differs between people; roots of the present need not have moved seeds.
    Source: common practice, no source.
    """
    return exact(units.worst_intrusion(), reason="the records do not speak of modern intrusions")


def sorted_share(units: Units) -> Column:
    """
    Smallest share of a size class of the light fraction that was sorted in any sample of the unit.

        min fⱼ

    Unit: above 0 to 1. Interval: none. Always has a value.
    Misleads: it is 1 where the records do not speak of a share.
    Source: common practice, no source.
    """
    return exact(units.smallest_share())
