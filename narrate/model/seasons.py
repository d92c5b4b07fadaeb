"""When what was found can have been gathered."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import SourceKey, Subject


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceWindow:
    """One source's months for one plant and part."""

    months: tuple[int, ...]
    keeping: tuple[str, ...]
    sources: tuple[SourceKey, ...]
    known: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundWindow:
    """The months of one plant and part that was found, as all sources give them."""

    taxon: str
    part: str
    items: int
    by_source: tuple[SourceWindow, ...]
    any_source: tuple[int, ...]
    """Months that at least one source gives, in the order of the year."""
    every_source: tuple[int, ...]
    """Months on which all sources agree."""
    keeping: tuple[str, ...]

    @property
    def is_disputed(self) -> bool:
        return self.any_source != self.every_source

    @property
    def binds(self) -> bool:
        """
        True where what was found cannot have waited for its fire: perishable, as every source has it.

        Weed seeds that came in with a harvest lie in store with it, and do not speak of the month of the fire.
        """
        return set(self.keeping) == {"perishable"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Gatherings:
    """The fewest separate gatherings that explain a set of windows."""

    fewest: int | None
    """None where there is no window to explain."""
    plans: tuple[tuple[int, ...], ...]
    """Every set of so many months that meets all windows, in order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seasons:
    subject: Subject
    windows: tuple[FoundWindow, ...]
    support: tuple[int, ...]
    """For each month from January on: plants and parts that one gathering in it could have given."""
    all_fresh: Gatherings
    """As if nothing had been stored, with the months of any source."""
    agreed_only: Gatherings
    """The same with the months on which all sources agree; windows without any are left out and stay disputed."""
    binding: Gatherings
    """Of what does not keep alone: what storage cannot explain away."""
    left_open: tuple[int, ...]
    """Months in which nothing that binds was ripe, so that only storage, or nothing, speaks of them."""
    disputed: tuple[tuple[str, str], ...]
    """Plants and parts on whose months sources disagree."""
    unknown: tuple[tuple[str, str], ...]
    """Plants and parts found for which the packs give no months."""
