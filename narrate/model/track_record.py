"""How often claims were right on simulated digs whose truth is known."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Hits:
    """Right claims among claims of one sort."""

    claims: int
    right: int
    low: float
    """Lower end of the exact 95 % interval of the share; NaN without claims."""
    high: float

    @property
    def rate(self) -> float:
        return self.right / self.claims if self.claims else float("nan")


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of the record: a table, the name of what was counted together, and how it fared."""

    table: str
    """grade, statement, items, litres, deposit, sorted, support, elsewhere, broken."""
    name: str
    grade: str
    """Grade of the claims; empty: of all grades."""
    hits: Hits


@dataclass(frozen=True, slots=True, kw_only=True)
class Missed:
    """Contexts of which a statement is true and that hold five counted items of it or more, and those with no claim."""

    statement: str
    there: int
    without_claim: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackRecord:
    """
    The record of a run of simulated digs.

    It says how well the rules agree with a model of how plants come to be found, not how well they agree with the past.
    """

    contexts: int
    claims: int
    false_claims: int
    seed: int
    lines: tuple[Line, ...]
    missed: tuple[Missed, ...]

    def of(self, table: str) -> tuple[Line, ...]:
        return tuple(line for line in self.lines if line.table == table)

    def line(self, statement: str, grade: str) -> Line | None:
        """The line of a claim: its statement at its grade; None where the trials made no such claim."""
        return next((n for n in self.of("statement") if n.name == statement and n.grade == grade), None)
