"""Sums over all that claims say, made straight from the columns for all units of a level at once."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

import numpy as np

from narrate.judging.columns import StatementJudged
from narrate.judging.evidence import Asked, AskedFact, AskedValue
from narrate.model.ids import Level, StatementId, Subject
from narrate.model.next_steps import NextStep

if TYPE_CHECKING:
    from narrate.judging.claims_by_subject import ClaimsBySubject
    from narrate.judging.claims_made import ClaimMaker

SIZE = 16
"""Bytes of one sum."""


class ClaimSums:
    """
    A sum for each claim: the same claim, the same sum, as long as program and packs stay the same.

    What follows from the packs alone, such as weights and clauses, is not in it, nor are the rows behind a claim: they
    follow from its verdicts and the rows of its subject.
    """

    def __init__(self, claims: ClaimsBySubject) -> None:
        self._claims = claims
        self._levels: dict[Level, _OfLevel] = {}

    def of(self, subject: Subject, statement: StatementId) -> bytes:
        """The sum of one claim; KeyError where the statement was not judged for the subject."""
        level, unit = self._claims.place[subject]
        return self._of_level(level).of(unit, statement)

    def about(self, subject: Subject) -> bytes:
        """The sum of all claims about a subject; empty where nothing was judged of it."""
        place = self._claims.place.get(subject)
        return b"" if place is None else self._of_level(place[0]).about(place[1])

    def _of_level(self, level: Level) -> _OfLevel:
        if level not in self._levels:
            self._levels[level] = _OfLevel(self._claims.makers[level], self._claims.step_of)
        return self._levels[level]


class _OfLevel:
    """The sums of the claims of one level: of each statement one after the other, as they are many and small."""

    def __init__(self, maker: ClaimMaker, steps: Mapping[str, NextStep]) -> None:
        judged = maker.judged
        self._maker = maker
        self._width = len(judged.look.units.ids)
        self._asked: dict[Asked, np.ndarray] = {}
        self._keys = [maker.keys[subject] for subject in judged.subjects()]
        cores = {id: _core(one) for id, one in judged.statements.items()}
        self._sums = {
            id: b"".join(self._summed(one, [cores[other] for other in (id, *maker.others_named(id))], steps))
            for id, one in judged.statements.items()
        }
        self._asked.clear()

    def of(self, unit: int, statement: StatementId) -> bytes:
        return self._sums[statement][unit * SIZE : (unit + 1) * SIZE]

    def about(self, unit: int) -> bytes:
        own = slice(unit * SIZE, (unit + 1) * SIZE)
        return _sum(b"".join(sums[own] for sums in self._sums.values()))

    def _summed(
        self, judged: StatementJudged, cores: Sequence[np.ndarray], steps: Mapping[str, NextStep]
    ) -> Iterator[bytes]:
        asked = dict.fromkeys(one for rule in judged.rules for one in self._maker.looked_at.asked(rule))
        parts = [*cores, *(self._looked_at(one) for one in asked)]
        if judged.stays is not None:
            parts.append(_bytes(judged.stays))
        laid = np.ascontiguousarray(np.concatenate(parts, axis=1))
        reasons = repr([one.reason for one in asked if isinstance(one, AskedValue)]).encode("utf-8", "surrogatepass")
        facts = [one for one in asked if isinstance(one, AskedFact)]
        look, id = self._maker.judged.look, judged.statement.id
        for unit in range(self._width):
            said = [one.text(look, unit) for one in facts]
            said += [one.limit for one in judged.limits.get(unit, ())]
            if unit in judged.turnings:
                said.append(repr(judged.turnings[unit]))
            step = steps.get(f"{self._keys[unit]}/{id}")
            if step is not None:
                said += [step.id, str(step.cost), step.says]
            yield _sum(laid[unit].tobytes() + reasons + repr(said).encode("utf-8", "surrogatepass"))

    def _looked_at(self, asked: Asked) -> np.ndarray:
        """Codes and figures of one thing that is looked at, as bytes, a row a unit."""
        found = self._asked.get(asked)
        if found is None:
            parts = [_bytes(asked.codes)]
            if isinstance(asked, AskedValue):
                parts += [_bytes(part[0].astype(float)) for part in asked.figures if part is not None]
            found = self._asked[asked] = np.concatenate(parts, axis=1)
        return found


def _core(judged: StatementJudged) -> np.ndarray:
    """Verdicts, grades and support of one statement, as bytes, a row a unit."""
    columns = (judged.outcome, judged.grade, judged.unlimited, *judged.codes)
    codes = [_bytes(np.asarray(column).astype(np.int8)) for column in columns]
    return np.concatenate([*codes, _bytes(judged.weighed)], axis=1)


def _bytes(column: np.ndarray) -> np.ndarray:
    return np.ascontiguousarray(column).view(np.uint8).reshape(column.size, -1)


def _sum(said: bytes) -> bytes:
    return hashlib.blake2b(said, digest_size=SIZE).digest()
