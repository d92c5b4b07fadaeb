"""How strong a story each sample and context tells, in parts that are all shown."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import Level, Subject
from narrate.model.next_steps import NextStep

MOST_POINTS = 3
"""Points that one part may give."""
LEAVE_IT = "leave it"
"""What is said where no work pays."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of the strength of a story: its value as it is, and the points that it gives."""

    id: str
    """items, density, lines, firmness, security or rarity."""
    value: float | None
    text: str
    """The value in words: '1,204', 'supports', '1 in 22'."""
    points: int
    """0 to `MOST_POINTS`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartMeant:
    """What a part is and what its points mean; shown wherever strengths are."""

    id: str
    title: str
    explained: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Strength:
    """One sample or context."""

    subject: Subject
    kind: str
    """Kind of the context."""
    parts: tuple[Part, ...]
    """In the order of `Ranking.meant`."""
    firmest: str = ""
    """Title of the firmest reading; empty where none holds."""
    firmest_claim: str = ""
    rarest: str = ""
    """Title of the reading that fewest others of the level share."""
    next_step: NextStep | None = None
    """The work that serves most questions for its cost; None: leave it."""
    turned_by: str = ""
    """The smallest change in counts that would turn the firmest reading."""

    @property
    def points(self) -> int:
        """The sum of the points of the parts, which are shown beside it."""
        return sum(part.points for part in self.parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranking:
    """Samples and contexts, the strongest stories of each level first."""

    meant: tuple[PartMeant, ...]
    by_level: tuple[tuple[Level, tuple[Strength, ...]], ...]
    of_dig: tuple[NextStep, ...] = ()
    """Work that the whole dig would gain by."""

    @property
    def most(self) -> int:
        return MOST_POINTS * len(self.meant)

    def of(self, level: Level) -> tuple[Strength, ...]:
        return dict(self.by_level).get(level, ())
