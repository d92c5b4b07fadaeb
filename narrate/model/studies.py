"""What is worked out of a whole dig and not of one subject: for the pages that set its samples side by side."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.fields import Associations, FieldShare, TrianglePoint
from narrate.model.ids import Subject
from narrate.model.order import Ordination
from narrate.model.seasons import Seasons


@dataclass(frozen=True, slots=True, kw_only=True)
class RarefactionCurve:
    """Taxa to expect among fewer items than were counted."""

    subject: Subject
    items: int
    """All items counted."""
    taxa: int
    """Taxa among all of them."""
    points: tuple[tuple[int, float], ...]
    """Items drawn and taxa to expect, from 1 to all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Studies:
    rarefaction: tuple[RarefactionCurve, ...] = ()
    """Of every phase, and of the whole dig where there are no phases."""
    seasons: Seasons | None = None
    """Of the whole dig."""
    associations: Associations | None = None
    field_shares: tuple[FieldShare, ...] = ()
    """Of the phases, and of the whole dig."""
    triangle: tuple[TrianglePoint, ...] = ()
    """Contexts with enough grain, chaff and weed seeds."""
    ordination: Ordination | None = None
    """Of the samples."""
