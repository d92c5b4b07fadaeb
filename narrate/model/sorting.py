"""What sorting the rest of a size class would bring."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import SampleId


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
