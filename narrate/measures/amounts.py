"""How much there was: items, mass, and both per litre."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.intervals import weighted_poisson
from narrate.measures.units import Units
from narrate.model.rules import Selector


def items(units: Units, of: Selector) -> Column:
    """
    Items as counted, without scaling.

        items = Σ counts

    Unit: items. Interval: none, it is what was counted. Always has a value; rows that only note presence add nothing.
    Misleads: pieces of wood, nutshell and rind are fragments and not individuals.
    Source:   Pearsall 2015, Paleoethnobotany, 3rd ed., ch. 5 (from memory).
    """
    counted = units.counted(of)
    return exact(counted, of=counted, n=counted)


def phase_end(units: Units) -> Column:
    """
    Last calendar year of the unit's phase; years BC are below 0.

        the `end` of the phase in project.yaml

    Unit: year. Interval: none. No value: where the phase has no date, or samples of several phases are in the unit.
    Misleads: where the phase is dated loosely; it is an end of a range, not a date of the deposit.
    Source: the project's own records.
    """
    return exact(units.phase_end(), reason="the phase has no date")


def density(units: Units, of: Selector) -> Column:
    """
    Items per litre of sediment floated, scaled up for the unsorted share.

        density = Σ (kᵢ / fᵢ) / litres;   kᵢ items counted in a class of which the share fᵢ was sorted

    Unit: items per litre. Interval: that of Fay and Feuer for a weighted sum of Poisson counts, exact where one share
    alone was sorted; where nothing was found, the upper end for nought items over the smallest share sorted.
    No value: where no volume was recorded; where the thing was noted as present or weighed, and none of it counted.
    Items of samples without a volume are left out of both sides.
    Misleads: when recovery differed, or volumes were estimated after flotation.
    Source:   Miller 1988, in Hastorf & Popper (eds), Current Paleoethnobotany, pp. 72–85; Fay & Feuer 1997,
    Statistics in Medicine 16:791–801 (from memory).
    """
    total, variance, litres = units.estimated_over_litres(of)
    raw = units.counted(of)
    low, high = weighted_poisson(total, variance, units.heaviest(of))
    with np.errstate(invalid="ignore", divide="ignore"):
        per_l = np.where((litres > 0) & ~units.is_only_noted(of), 1 / litres, np.nan)
    return Column(
        value=total * per_l,
        low=low * per_l,
        high=high * per_l,
        of=raw,
        to=litres,
        n=raw,
        has_interval=True,
        reason="no volume was recorded, or it was noted and not counted",
    )


def mass(units: Units, of: Selector) -> Column:
    """
    Grams weighed, scaled up for the unsorted share of the class in which they were weighed.

        mass = Σ (gᵢ / fᵢ)

    Unit: grams. Interval: none. No value: where nothing of the kind was weighed although something was noted; where
    nothing was found at all it is 0.
    Misleads: when only the larger size classes were weighed; what fell through is not in it.
    Source: Pearsall 2015, Paleoethnobotany, 3rd ed., ch. 5 (from memory).
    """
    grams, weighed = units.mass_g(of)
    return exact(_where_weighed(units, of, grams, weighed), of=grams, n=weighed, reason="it was not weighed")


def mass_per_l(units: Units, of: Selector) -> Column:
    """
    Grams per litre of sediment floated.

        mass per litre = Σ (gᵢ / fᵢ) / litres

    Unit: grams per litre. Interval: none. No value: no volume recorded, or noted but not weighed.
    Misleads: when recovery differed, volumes were estimated, or only the larger size classes were weighed.
    Source: Miller 1988, in Hastorf & Popper (eds), Current Paleoethnobotany, pp. 72–85.
    """
    grams, weighed = units.mass_over_litres(of)
    litres = units.litres()
    with np.errstate(invalid="ignore", divide="ignore"):
        value = _where_weighed(units, of, grams, weighed) / np.where(litres > 0, litres, np.nan)
    return exact(value, of=grams, n=weighed, reason="no volume was recorded, or it was not weighed")


def mass_ratio(units: Units, of: Selector, to: Selector) -> Column:
    """
    Grams of one thing per gram of another.

        ratio = Σ gᵢ (of) / Σ gᵢ (to)

    Unit: grams per gram. Interval: none. No value: where the second was not weighed or weighs nothing.
    Misleads: thick shell and dense wood survive and weigh; what was eaten may have left nothing.
    Source: Miller 1988; Asch, Ford & Asch 1972 for nutshell to wood (from memory).
    """
    first, weighed_first = units.mass_g(of)
    second, weighed_second = units.mass_g(to)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = _where_weighed(units, of, first, weighed_first) / np.where(second > 0, second, np.nan)
    return Column(
        value=value,
        low=value,
        high=value,
        of=first,
        to=second,
        n=weighed_second,
        reason="one of the two was not weighed",
    )


def times_median_density(units: Units, of: Selector) -> Column:
    """
    Density against the median of all units of the level that have one.

        density / median(density over units)

    Unit: none. Interval: that of the density. No value: no volume, or a median of 0.
    Misleads: on a dig where only rich-looking deposits were sampled.
    Source: common practice, no source.
    """
    column = units.kept(("density", of), lambda: density(units, of))
    known = column.value[:1]
    median = np.nanmedian(known) if np.isfinite(known).any() else np.nan
    median = median if median > 0 else np.nan
    return Column(
        value=column.value / median,
        low=column.low / median,
        high=column.high / median,
        of=column.of,
        n=column.n,
        has_interval=True,
        reason="no volume was recorded, or most units of the dig hold nothing",
    )


def litres(units: Units) -> Column:
    """
    Litres of sediment floated, summed over the samples that record it.

        Σ litres

    Unit: litres. Interval: none. No value: where no sample of the unit records a volume.
    Misleads: samples without a volume are not in it, though their items are counted.
    Source: Wright 2005, Journal of Archaeological Science 32:19–26 (from memory).
    """
    volume = units.litres()
    return exact(np.where(volume > 0, volume, np.nan), reason="no volume was recorded")


def _where_weighed(units: Units, of: Selector, grams: np.ndarray, weighed: np.ndarray) -> np.ndarray:
    """0 where nothing was found, NaN where something was noted but never weighed."""
    found = units.samples_with(of) > 0
    return np.where((weighed > 0) | ~found, grams, np.nan)
