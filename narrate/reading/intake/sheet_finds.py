"""What one table of a sheet holds: its finds, what it says of samples, and what is to be told of it."""

from __future__ import annotations

from dataclasses import dataclass, field

from narrate.problems import Place
from narrate.reading.intake.cell_marks import Found
from narrate.reading.intake.said import Said
from narrate.reading.intake.written_names import WrittenName


@dataclass(slots=True, kw_only=True)
class Find:
    """One amount of one thing in one sample. Never changed, and not frozen: a sheet makes tens of thousands."""

    sample: str
    name: WrittenName
    label: str
    """The name and the part in the words of the sheet: 'white oak' and 'red oak' are two finds of one genus."""
    is_cf: bool
    part: str
    condition: str
    completeness: str
    size_class: str
    fraction: str
    found: Found
    note: str
    place: Place


@dataclass(slots=True)
class SheetFinds:
    """What one table holds."""

    finds: list[Find] = field(default_factory=list)
    facts: dict[str, dict[str, list[Said]]] = field(default_factory=dict)
    """Sample -> role -> everything that is said of it."""
    set_aside: dict[str, list[Place]] = field(default_factory=dict)
    """Kind of thing that is no plant -> where."""
    names: dict[str, tuple[WrittenName, Place, int]] = field(default_factory=dict)
    """Name as written -> itself, its first place, how many finds."""
    missing_parts: dict[str, int] = field(default_factory=dict)
    """Part that was taken because the sheet names none -> finds."""
    missing_at: Place | None = None
    """The name of the first find for which a part was taken."""
    sample_ids: dict[tuple[str, int], str] = field(default_factory=dict)
    """'r' or 'c', and the row or column -> the sample that it is of."""
    not_checked: dict[str, str] = field(default_factory=dict)
    """Row or column of stored results -> why they were not worked out again."""


NOTHING_FOUND = "nothing found"
"""Beside the roles of samples: words such as 'No plant remains', in whatever column they stand."""
SORTED_OF_CLASS = "sorted of class"
"""Beside the roles of samples: the share sorted of one size class, whose name stands as the unit."""
