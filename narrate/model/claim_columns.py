"""What claims in columns answer without being made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, NamedTuple, Protocol

from narrate.model.ids import Level, RuleId, StatementId, Subject
from narrate.model.rules import Verdict

if TYPE_CHECKING:
    from narrate.model.claims import Claim, Evidence

MANY = 1_000_000
"""More than there are of anything that one argument looks at."""


class CameOut(NamedTuple):
    """How one argument of a claim came out, without what it looked at."""

    claim: str
    about: Subject
    rule: RuleId
    direction: str
    verdict: Verdict
    weight: float


class Outcome(NamedTuple):
    """How one statement came out for a subject, without the claim."""

    statement: StatementId
    verdict: Verdict
    is_argued: bool
    """Whether any argument for or against it holds."""


class Unmet(NamedTuple):
    """An argument that does not hold, with what was wanting."""

    rule: RuleId
    wanting: tuple[tuple[int, Evidence], ...]
    """Evidence that does not hold, and which of the argument's evidence it is, counted from 0."""
    of: int
    """How many the argument looked at."""


Tallied = Mapping[RuleId, Mapping[Level, Mapping[Verdict, int]]]
"""Rule -> level -> verdict -> how often."""


class ClaimColumns(Protocol):
    """Claims in columns, which answer some questions without making them."""

    def holding(self, subject: Subject) -> tuple[Claim, ...]: ...

    def find(self, subject: Subject, statement: str) -> Claim | None: ...

    def many_holding(self) -> int: ...

    def tallied(self) -> Tallied: ...

    def came_out(self) -> Iterator[CameOut]: ...

    def outcomes(self, subject: Subject) -> Iterator[Outcome]: ...

    def unmet(self, subject: Subject, statement: StatementId, verdict: Verdict, most: int) -> Iterator[Unmet]: ...


class SumsOfClaims(Protocol):
    """A sum over all that a claim says, made without making the claim."""

    def of(self, subject: Subject, statement: StatementId) -> bytes: ...

    def about(self, subject: Subject) -> bytes: ...
