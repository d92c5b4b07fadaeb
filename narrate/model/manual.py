"""What the manual says of one measure."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasurePage:
    id: str
    title: str
    """The id in words."""
    meaning: str
    """One sentence."""
    formula: str = ""
    """Lines of the formula, as written."""
    symbols: str = ""
    """What else is said of the formula."""
    unit: str = ""
    interval: str = ""
    no_value: str = ""
    misleads: str = ""
    source: str = ""
    levels: tuple[str, ...] = ()
    """Levels of subjects that can have it."""
    asks_of: bool = False
    asks_to: bool = False
