"""In how many samples: presence, ubiquity and how it changes. The unit of doubt is the sample, not the seed."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.intervals import difference_of_shares, wilson
from narrate.measures.units import Units
from narrate.model.rules import Selector


def samples(units: Units) -> Column:
    """
    Samples of the unit, sterile ones included.

    Unit: samples. Always has a value.
    Source: Popper 1988, in Hastorf & Popper (eds), pp. 53–71 (from memory).
    """
    return exact(units.samples())


def samples_with(units: Units, of: Selector) -> Column:
    """
    Samples in which the thing was counted or noted as present.

    Unit: samples. Always has a value.
    Source: Popper 1988 (from memory).
    """
    number = units.samples_with(of)
    return exact(number, of=number, n=units.samples())


def presence(units: Units, of: Selector) -> Column:
    """
    1 where the thing was counted or noted as present, else 0.

    Unit: none. Always has a value. Absence is not non-use.
    Source: Popper 1988 (from memory).
    """
    number = units.samples_with(of)
    return exact((number > 0).astype(float), of=number, n=units.samples())


def ubiquity(units: Units, of: Selector) -> Column:
    """
    Share of the samples that hold the thing at least once.

        ubiquity = k / n;   n samples of the unit, sterile ones included, k those with it

    Unit: 0 to 1. Interval: Wilson. No value: where the unit has no sample.
    Misleads: with few samples one sample moves it far; samples of one context are not independent.
    Source: Hubbard 1975; Popper 1988, in Hastorf & Popper (eds), pp. 53–71 (from memory).
    """
    k, n = units.samples_with(of), units.samples()
    low, high = wilson(k, n)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = k / np.where(n > 0, n, np.nan)
    return Column(value=value, low=low, high=high, of=k, to=n, n=n, has_interval=True, reason="no samples were looked at")


def ubiquity_change(units: Units, phases: Units, of: Selector) -> Column:
    """
    Ubiquity in the last phase minus ubiquity in the first.

        change = k₂/n₂ − k₁/n₁

    Unit: −1 to 1. Interval: Newcombe's hybrid score. No value: where there are not two phases with samples.
    Misleads: when the phases were sampled from other kinds of context.
    Source: Newcombe 1998, Statistics in Medicine 17:873–890 (from memory).
    """
    k, n = phases.samples_with(of), phases.samples()
    shape = units.shape
    has_samples = np.flatnonzero(n[0] > 0) if n.size else np.array([], int)
    if has_samples.size < 2:
        nothing = np.full(shape, np.nan)
        return Column(value=nothing, low=nothing, high=nothing, has_interval=True, reason="there are not two phases with samples")
    first, last = has_samples[0], has_samples[-1]
    k1, n1, k2, n2 = k[:, first], n[:, first], k[:, last], n[:, last]
    low, high = difference_of_shares(k1, n1, k2, n2)
    spread = [np.broadcast_to(part[:, None], shape) for part in (k2 / n2 - k1 / n1, low, high, k1, k2, n1 + n2)]
    return Column(value=spread[0], low=spread[1], high=spread[2], of=spread[4], to=spread[3], n=spread[5], has_interval=True)
