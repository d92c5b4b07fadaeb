"""What rows and columns say of the cells in them, each with its place."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.problems import Place


@dataclass(frozen=True, slots=True)
class Said:
    """What a row or column says of the cells in it."""

    text: str
    place: Place
    unit: str = ""


Line = dict[str, list[Said]]
"""Role -> what the columns (or rows) of that role say of one row (or column)."""
