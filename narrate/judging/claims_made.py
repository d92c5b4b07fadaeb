"""Claims made out of columns when somebody asks for them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from narrate.judging.clauses import filled
from narrate.judging.columns import LevelJudged, StatementJudged
from narrate.judging.evidence import AskedValue, LookedAt, PlacesInOrder, named
from narrate.judging.facts import CANNOT_TELL, FAILS, HOLDS
from narrate.judging.rivals import balance, rivalry
from narrate.judging.weigh import VERDICTS
from narrate.model.claim_columns import CameOut, Outcome
from narrate.model.claims import GRADE_NAMES, Argument, Claim, LateArguments, Rival
from narrate.model.ids import RuleId, SourceKey, StatementId, Subject
from narrate.model.late import Late
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.rules import Verdict

_Said = tuple[tuple[int, ...], tuple[str, ...], tuple[SourceKey, ...]]
"""Order of the arguments, what misleads, and sources."""


class ClaimMaker:
    """The claims of one level."""

    def __init__(self, judged: LevelJudged, packs: Packs, keys: Mapping[Subject, str], order: PlacesInOrder) -> None:
        self.judged = judged
        self.packs = packs
        self.keys = keys
        self.looked_at = LookedAt(judged.look, order)
        pairs = rivalry(packs)
        self.rivals = {
            id: tuple(rival for rival in pairs.get(id, ()) if rival in judged.statements) for id in judged.statements
        }
        self._named = {
            id: tuple(dict.fromkeys((*self.rivals[id], *one.statement.rivals))) for id, one in judged.statements.items()
        }
        self._ids = list(judged.statements)
        # Laid by unit, so that all codes of a claim are one look-up.
        self._codes = {
            id: np.concatenate([[one.outcome, one.grade, one.unlimited], one.codes]).astype(np.int8).T.copy()
            for id, one in judged.statements.items()
        }
        # One more row for statements that were not judged here, which never hold.
        self._holds = np.zeros((len(self._ids) + 1, len(judged.look.units.ids)), bool)
        for i, one in enumerate(judged.statements.values()):
            self._holds[i] = one.outcome == HOLDS
        number = {id: i for i, id in enumerate(self._ids)}
        self._number_named = {
            id: np.array([number.get(other, -1) for other in named], np.intp) for id, named in self._named.items()
        }
        self._by_codes: dict[tuple[StatementId, tuple[int, ...]], _Said] = {}
        self._speak: dict[tuple[StatementId, bytes, str], tuple[RuleId, ...]] = {}
        self._by_rivals: dict[tuple[StatementId, bytes], tuple[tuple[StatementId, ...], tuple[StatementId, ...]]] = {}

    def claim(self, subject: Subject, unit: int, id: StatementId, step: NextStep | None) -> Claim:
        judged, key = self.judged.statements[id], self.keys[subject]
        outcome, grade, unlimited, *codes = self._codes[id][unit].tolist()
        order, misleads_when, sources = self._said(judged, tuple(codes))
        rivals, alternatives = self._others(judged, unit)
        return Claim(
            id=f"{key}/{id}",
            about=subject,
            question=judged.statement.question,
            statement=id,
            verdict=VERDICTS[outcome],
            support=_support(judged, unit),
            grade=GRADE_NAMES[grade],
            stability=None if judged.stays is None else round(judged.stays.item(unit), 4),
            arguments=LateArguments(
                len(order),
                codes.count(HOLDS),
                lambda direction: self._speaking(judged, unit, direction),
                lambda at: self._argument(judged, order[at], unit),
            ),
            limits=judged.limits.get(unit, ()),
            misleads_when=misleads_when,
            alternatives=alternatives,
            sources=sources,
            turnings=judged.turnings.get(unit, ()),
            unlimited=GRADE_NAMES[unlimited],
            rivals=Late(len(rivals), lambda at: self._rival(judged, rivals[at], unit, key)) if rivals else (),
            next_step=step,
        )

    def many_holding(self) -> int:
        """How many claims of the level hold."""
        return int(self._holds.sum())

    def tallied(self) -> Iterator[tuple[RuleId, dict[Verdict, int]]]:
        """How often each rule came out which way."""
        for judged in self.judged.statements.values():
            for rule, codes in zip(judged.rules, judged.codes, strict=True):
                if codes.size:
                    yield rule.id, {VERDICTS[c]: int((codes == c).sum()) for c in (HOLDS, FAILS, CANNOT_TELL)}

    def came_out(self, subject: Subject, unit: int) -> Iterator[CameOut]:
        """How the arguments of all claims of a subject came out."""
        for id, judged in self.judged.statements.items():
            codes = self._codes[id][unit].tolist()[3:]
            claim = f"{self.keys[subject]}/{id}"
            for i in self._said(judged, tuple(codes))[0]:
                rule = judged.rules[i]
                weight = self.packs.weights[rule.weight]
                yield CameOut(claim, subject, RuleId(rule.id), rule.direction, VERDICTS[codes[i]], weight)

    def rows_behind(self, id: StatementId, unit: int) -> list[frozenset[int]]:
        """Of each argument for a statement that holds, numbers of the rows with anything of what it looked at."""
        judged = self.judged.statements[id]
        found = []
        for number in judged.held(unit, "for"):
            asked = self.looked_at.asked(judged.rules[number])
            values = [one for one in asked if isinstance(one, AskedValue) and one.holds_any(unit)]
            found.append(frozenset().union(*(self.looked_at.numbers(unit, one.selectors) for one in values)))
        return found

    def holding(self, unit: int) -> list[StatementId]:
        """Statements that hold for a unit, in their order."""
        return [self._ids[i] for i in np.flatnonzero(self._holds[:-1, unit]).tolist()]

    def outcomes(self, unit: int) -> Iterator[Outcome]:
        """How all statements came out for a unit."""
        for id, codes in self._codes.items():
            outcome, _, _, *of_rules = codes[unit].tolist()
            yield Outcome(id, VERDICTS[outcome], HOLDS in of_rules)

    def rival_ids(self, id: StatementId, unit: int) -> tuple[StatementId, ...]:
        """The rivals of a claim in their order."""
        return self._others(self.judged.statements[id], unit)[0]

    def code_bytes(self, id: StatementId, unit: int) -> bytes:
        """How a statement and its rules came out for a unit; all else of a claim's standing follows from it."""
        return self._codes[id][unit].tobytes()

    def others_named(self, id: StatementId) -> list[StatementId]:
        """Rivals of a statement, and all others that it names, that were judged here."""
        return [other for other in self._named[id] if other in self.judged.statements]

    def order(self, judged: StatementJudged, unit: int) -> tuple[int, ...]:
        """Numbers of the rules in the order of the arguments of a claim."""
        return self._said(judged, tuple(self._codes[judged.statement.id][unit].tolist()[3:]))[0]

    def _said(self, judged: StatementJudged, codes: tuple[int, ...]) -> _Said:
        """What follows from the verdicts of the rules alone: few sets of them are found again and again."""
        id = judged.statement.id
        found = self._by_codes.get((id, codes))
        if found is None:
            holding = [rule for rule, code in zip(judged.rules, codes, strict=True) if code == HOLDS]
            found = self._by_codes[id, codes] = (
                tuple(i for code in (HOLDS, FAILS, CANNOT_TELL) for i in judged.heaviest_first if codes[i] == code),
                tuple(dict.fromkeys(text for rule in holding for text in rule.misleads_when)),
                tuple(dict.fromkeys(key for rule in holding or judged.rules for key in rule.sources)),
            )
        return found

    def _others(self, judged: StatementJudged, unit: int) -> tuple[tuple[StatementId, ...], tuple[StatementId, ...]]:
        """Rivals judged here and all that the statement names, those that hold for the unit first."""
        id = judged.statement.id
        named = self._named[id]
        if not named:
            return (), ()
        holds = self._holds[self._number_named[id], unit]
        found = self._by_rivals.get((id, holds.tobytes()))
        if found is None:
            does_hold = dict(zip(named, holds.tolist(), strict=True))
            found = self._by_rivals[id, holds.tobytes()] = (
                tuple(sorted(self.rivals[id], key=lambda rival: not does_hold[rival])),
                tuple(sorted(judged.statement.rivals, key=lambda rival: not does_hold[rival])),
            )
        return found

    def _argument(self, judged: StatementJudged, number: int, unit: int) -> Argument:
        rule = judged.rules[number]
        evidence = self.looked_at.of(rule, unit)
        values = named(evidence)
        return Argument(
            rule=RuleId(rule.id),
            direction=rule.direction,
            weight=self.packs.weights[rule.weight],
            verdict=VERDICTS[int(judged.codes[number, unit])],
            says=filled(rule.says, values),
            says_plain=filled(rule.says_plain, values),
            evidence=evidence,
            share_holding=None if judged.same is None else round(float(judged.same[number, unit]), 4),
            counted_with=judged.stands_for.get((number, unit)),
        )

    def _speaking(self, judged: StatementJudged, unit: int, direction: str) -> tuple[RuleId, ...]:
        key = (judged.statement.id, self._codes[judged.statement.id][unit].tobytes(), direction)
        if key not in self._speak:
            self._speak[key] = tuple(RuleId(judged.rules[i].id) for i in judged.held(unit, direction))
        return self._speak[key]

    def _rival(self, own: StatementJudged, id: StatementId, unit: int, key: str) -> Rival:
        rival = self.judged.statements[id]
        return Rival(
            claim=f"{key}/{id}",
            statement=id,
            verdict=VERDICTS[int(rival.outcome[unit])],
            support=_support(rival, unit),
            grade=GRADE_NAMES[rival.grade[unit]],
            balance=balance(_standing(own, unit), _standing(rival, unit), self.packs),
            speak_for=self._speaking(rival, unit, "for"),
            speak_against=self._speaking(rival, unit, "against"),
        )


def _support(judged: StatementJudged, unit: int) -> float:
    return round(judged.weighed.item(unit), 4)


def _standing(judged: StatementJudged, unit: int) -> tuple[Verdict, float]:
    return VERDICTS[int(judged.outcome[unit])], _support(judged, unit)
