"""Claims made out of columns, by their ids."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from narrate.model.claims import Claim
from narrate.model.ids import StatementId, Subject

if TYPE_CHECKING:
    from narrate.judging.claims_by_subject import ClaimsBySubject


class ClaimsById(Mapping[str, Claim]):
    """All claims by id, in the order of the subjects and of the statements."""

    def __init__(self, by_subject: ClaimsBySubject, keys: Mapping[Subject, str]) -> None:
        self._by_subject = by_subject
        self._subject_of = {key: subject for subject, key in keys.items()}
        self._key_of = keys

    def __len__(self) -> int:
        makers = self._by_subject.makers.values()
        return sum(len(maker.judged.statements) * len(maker.judged.look.units.ids) for maker in makers)

    def __iter__(self) -> Iterator[str]:
        for subject, (level, _) in self._by_subject.place.items():
            key = self._key_of[subject]
            yield from (f"{key}/{id}" for id in self._by_subject.makers[level].judged.statements)

    def __contains__(self, id: object) -> bool:
        return isinstance(id, str) and self._found(id) is not None

    def __getitem__(self, id: str) -> Claim:
        found = self._found(id)
        if found is None:
            raise KeyError(id)
        return self._by_subject.one(*found)

    def _found(self, id: str) -> tuple[Subject, StatementId] | None:
        key, _, statement = id.rpartition("/")
        subject = self._subject_of.get(key)
        if subject is None:
            return None
        judged = self._by_subject.makers[self._by_subject.place[subject][0]].judged
        return (subject, StatementId(statement)) if statement in judged.statements else None
