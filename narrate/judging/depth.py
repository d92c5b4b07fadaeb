"""How deep claims are judged: what is slow to work out is left out where nobody tells it."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import LEVELS, Level


@dataclass(frozen=True, slots=True, kw_only=True)
class Depth:
    """Of which claims stability is drawn, and of which the smallest changes are sought that would turn them."""

    drawn: tuple[Level, ...] = LEVELS
    """Levels whose counts are drawn anew; claims of others have no stability, and no grade is held down by it."""
    turned: tuple[Level, ...] = ("sample", "context")
    """Levels of which changes are sought. Of phases and the dig, samples decide and not items."""
    only_held: bool = False
    """Changes are sought of those claims alone that hold."""


WHOLE = Depth()
