"""How claims fared on simulated digs, laid out for the track record page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from narrate.model.claims import GRADES
from narrate.model.packs import Packs
from narrate.model.track_record import Hits, Line, TrackRecord
from narrate.telling.track_record import TABLES

FEW = 20
"""Below so many claims a share says little; the line is kept and marked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LineView:
    name: str
    grade: str
    band: float | None
    """The share of right claims that the grade promises; None where grades are mixed."""
    hits: Hits
    anchor: str

    @property
    def is_short(self) -> bool:
        """Whether enough claims fell short of the grade's promise."""
        return self.band is not None and self.hits.claims >= FEW and self.hits.rate < self.band

    @property
    def is_few(self) -> bool:
        return self.hits.claims < FEW


class RecordView:
    def __init__(self, record: TrackRecord, packs: Packs) -> None:
        self.record = record
        self._packs = packs

    @property
    def false_a_context(self) -> float:
        return self.record.false_claims / max(self.record.contexts, 1)

    @cached_property
    def tables(self) -> tuple[tuple[str, tuple[LineView, ...]], ...]:
        """Title and lines of each table but that of statements."""
        return tuple((title, tuple(self._line(n) for n in self.record.of(table))) for table, title in TABLES)

    @cached_property
    def statements(self) -> tuple[LineView, ...]:
        return tuple(self._line(n) for n in self.record.of("statement") if n.name in self._packs.statements)

    @cached_property
    def of_claims(self) -> Mapping[tuple[str, str], LineView]:
        """Statement and grade -> the line of its claims."""
        return {(n.name, n.grade): self._line(n) for n in self.record.of("statement")}

    @cached_property
    def missed(self) -> tuple[tuple[str, int, int], ...]:
        """Title, contexts of which it is true and that show it, those of them without a claim."""
        return tuple((self._title(m.statement), m.there, m.without_claim) for m in self.record.missed if m.there >= FEW)

    def _title(self, statement: str) -> str:
        known = self._packs.statements.get(statement)  # type: ignore[call-overload]
        return known.title if known else statement

    def _line(self, line: Line) -> LineView:
        bands = dict(GRADES)
        is_statement = line.table == "statement"
        return LineView(
            name=self._title(line.name) if is_statement else line.name,
            grade=line.grade,
            band=bands.get(line.grade),  # type: ignore[call-overload]
            hits=line.hits,
            anchor=f"{line.name}-{line.grade}".replace(".", "-").replace(" ", "-") if is_statement else "",
        )
