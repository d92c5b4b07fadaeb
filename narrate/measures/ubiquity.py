"""In how many samples: presence and ubiquity. The unit of doubt is the sample, not the seed."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.intervals import wilson
from narrate.measures.units import Units
from narrate.model.rules import Selector


def samples(units: Units) -> Column:
    """
    Samples of the unit, sterile ones included.

        n

    Unit: samples. Interval: none. Always has a value.
    Misleads: samples of different litres count alike.
    Source: Popper 1988, in Hastorf & Popper (eds), pp. 53–71 (from memory).
    """
    return exact(units.samples())


def samples_with(units: Units, of: Selector) -> Column:
    """
    Samples in which the thing was counted or noted as present.

        k

    Unit: samples. Interval: none. Always has a value.
    Misleads: larger and richer samples hold more kinds of things, whatever people did.
    Source: Popper 1988 (from memory).
    """
    number = units.samples_with(of)
    return exact(number, of=number, n=units.samples())


def presence(units: Units, of: Selector) -> Column:
    """
    1 where the thing was counted or noted as present, else 0.

        1 if k > 0, else 0;   k samples of the unit with it

    Unit: none. Interval: none. Always has a value.
    Misleads: absence is not non-use; what does not char, or was not looked for, is absent too.
    Source: Popper 1988 (from memory).
    """
    number = units.samples_with(of)
    return exact((number > 0).astype(float), of=number, n=units.samples())


def ubiquity(units: Units, of: Selector) -> Column:
    """
    Share of the samples that hold the thing at least once.

        ubiquity = k / n;   n samples of the unit, sterile ones included, k those with it

    Of wood that has a name n are the samples whose wood was looked at: charcoal that nobody identified is no absence.
    Unit: 0 to 1. Interval: Wilson. No value: where the unit has no such sample.
    Misleads: with few samples one sample moves it far; samples of one context are not independent.
    Source: Hubbard 1975; Popper 1988, in Hastorf & Popper (eds), pp. 53–71 (from memory).
    """
    k, n = units.samples_with(of), units.samples_looked_at(of)
    low, high = wilson(k, n)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = k / np.where(n > 0, n, np.nan)
    return Column(
        value=value, low=low, high=high, of=k, to=n, n=n, has_interval=True, reason="no samples were looked at"
    )
