"""A chart as the pages receive it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    id: str
    """Unique on a page; prefixes every id inside the svg."""
    svg: str
    """An <svg> element with real text, role="img", <title> and <desc>; valid inside HTML."""
    title: str
    """Says the finding."""
    alt: str
    note: str = ""
    """What n is, what bars and whiskers mean."""
    columns: tuple[str, ...]
    measures: tuple[str, ...] = ()
    """For each column the measure whose page of the manual explains it; '' for none."""
    rows: tuple[tuple[str, ...], ...]
    """The table behind the picture, as text with units in the column names."""
