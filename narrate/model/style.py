"""How a project writes years, numbers and units: its own choices, which go before those of an audience."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Era = Literal["AD", "CE", "BP"]
Dash = Literal["en dash", "hyphen"]
Thousands = Literal["comma", "space", "none"]
Litre = Literal["litre", "liter", "L", "l"]

THOUSANDS: dict[Thousands, str] = {"comma": ",", "space": "\u202f", "none": ""}
"""The mark itself. The space is narrow and does not break (ISO 80000-1 sets groups of three digits
apart by a space; from memory)."""
DASHES: dict[Dash, str] = {"en dash": "\u2013", "hyphen": "-"}

BP_COUNTS_FROM = 1950
"""Years before present are counted back from AD 1950 (Stuiver & Polach 1977; from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """What project.yaml says under `style`; None leaves the choice to the audience."""

    era: Era | None = None
    """AD with BC, CE with BCE, or years before 1950; 'cal' before it is the phase's own word (`Phase.dates`)."""
    thousands: Thousands | None = None
    litre: Litre | None = None
    """How a litre is written: a word, or its sign with L or l; key `units` of the file."""
    dash: Dash | None = None
    """Between the two ends of a range."""


def before_present(year: int) -> int:
    """
    Years before AD 1950 of a calendar year; below 0 for a later one.

        cal BP = 1950 - AD year;  cal BP = 1949 + BC year, because there is no year 0

    year:  negative for BC; 0 is no year.

    >>> before_present(950), before_present(1), before_present(-1), before_present(-500), before_present(1950)
    (1000, 1949, 1950, 2449, 0)
    """
    if year == 0:
        raise ValueError("there is no year 0: 1 BC is -1, and the year after it is 1")
    return BP_COUNTS_FROM - year - (1 if year < 0 else 0)
