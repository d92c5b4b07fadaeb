"""What sorting the rest of a size class would bring."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import SampleId, Subject


@dataclass(frozen=True, slots=True, kw_only=True)
class SortingGain:
    """One size class of one sample that was sorted in part."""

    sample: SampleId
    size_class: str
    share: float
    """Share that was sorted."""
    items: int
    """Seeds and other counted items found in it."""
    total: float
    """Estimated number in the whole class."""
    total_low: float
    total_high: float
    new_taxa: float
    """Taxa that the sample as a whole may be expected to gain; a lower bound."""
    density_width_left: float | None
    """Width of the interval of the sample's density then, as a share of what it is now; None without a volume."""
    share_width_left: float | None
    """The same for the share of crops among seeds; None where the sample holds no seed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Narrowing:
    """One measurement of one subject: what sorting the rest of a size class would leave of its interval."""

    subject: Subject
    size_class: str
    """As the records name it; the classes of that name of all its samples."""
    measurement: str
    """Name of the shown or tabled measurement."""
    title: str
    width: float
    """Of the interval as it is."""
    width_then: float
    left: float
    """width_then / width; 1 is no gain."""
