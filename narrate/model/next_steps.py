"""Work that would firm up what is said of a subject, with its rough cost."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.ids import Subject

COSTS = ("minutes", "an hour", "some hours", "a day", "an order to another laboratory")
"""What the steps of cost mean, from 1 to 5. Judgement of the makers: an order, not a measurement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextStep:
    """One piece of work on a sample, a context or the whole dig."""

    id: str
    """sort.class, sort.heavy, name.cf, wood.identify, record.volume, date.item …"""
    about: Subject
    says: str
    """What to do, as a clause: 'finish the 0.5–1 mm class of S014: about 3 more taxa expected'."""
    cost: int
    """1 to 5, see `COSTS`."""
    lifts: tuple[str, ...] = ()
    """Claims that a limit would no longer hold down."""
    turns: tuple[str, ...] = ()
    """Claims that cannot be told now and could be told then."""
    questions: tuple[str, ...] = ()
    """Questions of those claims, in the order of telling."""

    @property
    def pays(self) -> bool:
        return bool(self.questions)

    def in_order(self) -> tuple[float, int, str]:
        """Most questions for the cost first, then the cheaper, then by id."""
        return (-len(self.questions) / self.cost, self.cost, self.id)
