"""A worked-out number with its unit and its doubt."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Measurement:
    """One value, or the reason why there is none."""

    measure: str
    """Id in the catalogue of measures, such as 'density'."""
    value: float | None
    low: float | None = None
    """Lower end of the 95 % interval; None where the value has no interval or no value."""
    high: float | None = None
    """Upper end; infinity is written as None with `is_open_above`."""
    is_open_above: bool = False
    unit: str = ""
    n: int | None = None
    """What the value rests on: raw items for ratios and shares, samples for ubiquity."""
    reason: str = ""
    """Why there is no value; empty where there is one."""
