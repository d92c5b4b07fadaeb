"""All claims of a dig by their subjects, made when asked for, and those of a few subjects kept."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Iterator, Mapping
from typing import TypeVar

from narrate.judging.claim_sums import ClaimSums
from narrate.judging.claims_by_id import ClaimsById
from narrate.judging.claims_made import ClaimMaker
from narrate.judging.columns import LevelJudged
from narrate.judging.evidence import PlacesInOrder
from narrate.judging.next_steps import Steps, steps_by_claim
from narrate.judging.unmet import unmet
from narrate.model.claim_columns import CameOut, Outcome, Tallied, Unmet
from narrate.model.claims import Claim, Claims
from narrate.model.ids import Level, RuleId, StatementId, Subject
from narrate.model.packs import Packs
from narrate.model.rules import Verdict

KEPT = 16
"""Subjects whose claims are kept once they were made; those of others are made again."""

Kept = TypeVar("Kept")


class ClaimsBySubject(Mapping[Subject, tuple[Claim, ...]]):
    """All claims of each subject; made when asked for, and those of a few subjects kept."""

    def __init__(self, makers: Mapping[Level, ClaimMaker], steps: Steps) -> None:
        self.makers = makers
        self.place = {
            subject: (level, unit)
            for level, maker in makers.items()
            for unit, subject in enumerate(maker.judged.subjects())
        }
        self.step_of = steps_by_claim(steps)
        self._made: OrderedDict[Subject, dict[StatementId, Claim]] = OrderedDict()
        self._whole: OrderedDict[Subject, tuple[Claim, ...]] = OrderedDict()

    def __len__(self) -> int:
        return len(self.place)

    def __iter__(self) -> Iterator[Subject]:
        return iter(self.place)

    def __contains__(self, subject: object) -> bool:
        return subject in self.place

    def __getitem__(self, subject: Subject) -> tuple[Claim, ...]:
        found = self._whole.get(subject)
        if found is None:
            level, _ = self.place[subject]
            found = tuple(self.one(subject, id) for id in self.makers[level].judged.statements)
            _keep(self._whole, subject, found)
        return found

    def holding(self, subject: Subject) -> tuple[Claim, ...]:
        """The claims of a subject that hold; the others are not made."""
        place = self.place.get(subject)
        return () if place is None else tuple(self.one(subject, id) for id in self.makers[place[0]].holding(place[1]))

    def find(self, subject: Subject, statement: str) -> Claim | None:
        place = self.place.get(subject)
        is_judged = place is not None and statement in self.makers[place[0]].judged.statements
        return self.one(subject, StatementId(statement)) if is_judged else None

    def rows_behind(self, subject: Subject, statement: StatementId) -> list[frozenset[int]]:
        """Of each argument for a statement that holds, numbers of the rows behind it; equal rows, equal numbers."""
        level, unit = self.place[subject]
        return self.makers[level].rows_behind(statement, unit)

    def many_holding(self) -> int:
        return sum(maker.many_holding() for maker in self.makers.values())

    def tallied(self) -> Tallied:
        found: dict[RuleId, dict[Level, dict[Verdict, int]]] = {}
        for level, maker in self.makers.items():
            for rule, times in maker.tallied():
                found.setdefault(rule, {})[level] = times
        return found

    def came_out(self) -> Iterator[CameOut]:
        for subject, (level, unit) in self.place.items():
            yield from self.makers[level].came_out(subject, unit)

    def outcomes(self, subject: Subject) -> Iterator[Outcome]:
        place = self.place.get(subject)
        return iter(()) if place is None else self.makers[place[0]].outcomes(place[1])

    def unmet(self, subject: Subject, statement: StatementId, verdict: Verdict, most: int) -> Iterator[Unmet]:
        level, unit = self.place[subject]
        return unmet(self.makers[level], unit, statement, verdict, most)

    def one(self, subject: Subject, id: StatementId) -> Claim:
        """One claim; KeyError where the statement was not judged for the subject."""
        made = self._made.get(subject)
        if made is None:
            made = {}
            _keep(self._made, subject, made)
        claim = made.get(id)
        if claim is None:
            level, unit = self.place[subject]
            maker = self.makers[level]
            claim = made[id] = maker.claim(subject, unit, id, self.step_of.get(f"{maker.keys[subject]}/{id}"))
        return claim


def _keep(kept: OrderedDict[Subject, Kept], subject: Subject, made: Kept) -> None:
    kept[subject] = made
    if len(kept) > KEPT:
        kept.popitem(last=False)


def claims_of(levels: Mapping[Level, LevelJudged], steps: Steps, packs: Packs, keys: Mapping[Subject, str]) -> Claims:
    """All claims of what was judged, in the order of the levels, their units and the statements."""
    order = PlacesInOrder(levels["sample"].look)
    makers = {level: ClaimMaker(judged, packs, keys, order) for level, judged in levels.items()}
    by_subject = ClaimsBySubject(makers, steps)
    return Claims(
        by_id=ClaimsById(by_subject, keys),
        by_subject=by_subject,
        steps=steps,
        columns=by_subject,
        sums=ClaimSums(by_subject),
    )
