"""Claims made out of columns when somebody asks for them."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Iterator, Mapping

from narrate.judging.columns import LevelJudged, StatementJudged
from narrate.judging.evidence import LookedAt, filled, named
from narrate.judging.facts import CANNOT_TELL, FAILS, HOLDS
from narrate.judging.next_steps import Steps, steps_by_claim
from narrate.judging.rivals import balance, rivalry
from narrate.judging.weigh import VERDICTS
from narrate.model.claims import GRADE_NAMES, Argument, Claim, Claims, Rival
from narrate.model.ids import Level, RuleId, StatementId, Subject
from narrate.model.late import Late
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.rules import Verdict

KEPT = 64
"""Subjects whose claims are kept once they were made; those of others are made again."""


class ClaimMaker:
    """The claims of one level."""

    def __init__(self, judged: LevelJudged, packs: Packs, keys: Mapping[Subject, str]) -> None:
        self.judged = judged
        self.packs = packs
        self.keys = keys
        self.looked_at = LookedAt(judged.look)
        pairs = rivalry(packs)
        self.rivals = {
            id: tuple(rival for rival in pairs.get(id, ()) if rival in judged.statements) for id in judged.statements
        }

    def claim(self, subject: Subject, unit: int, id: StatementId, step: NextStep | None) -> Claim:
        judged = self.judged.statements[id]
        codes = judged.codes[:, unit].tolist()
        holding = [rule for rule, code in zip(judged.rules, codes, strict=True) if code == HOLDS]
        order = [i for code in (HOLDS, FAILS, CANNOT_TELL) for i in judged.heaviest_first if codes[i] == code]
        rivals = sorted(self.rivals[id], key=lambda rival: not self.judged.holds(rival, unit))
        return Claim(
            id=f"{self.keys[subject]}/{id}",
            about=subject,
            question=judged.statement.question,
            statement=id,
            verdict=VERDICTS[int(judged.outcome[unit])],
            support=_support(judged, unit),
            grade=GRADE_NAMES[judged.grade[unit]],
            stability=None if judged.stays is None else round(float(judged.stays[unit]), 4),
            arguments=Late(len(order), lambda at: self._argument(judged, order[at], unit)),
            limits=judged.limits.get(unit, ()),
            misleads_when=tuple(dict.fromkeys(text for rule in holding for text in rule.misleads_when)),
            alternatives=tuple(
                sorted(judged.statement.rivals, key=lambda rival: not self.judged.holds(rival, unit))
            ),
            sources=tuple(dict.fromkeys(key for rule in holding or judged.rules for key in rule.sources)),
            turnings=judged.turnings.get(unit, ()),
            unlimited=GRADE_NAMES[judged.unlimited[unit]],
            rivals=Late(len(rivals), lambda at: self._rival(judged, rivals[at], unit, self.keys[subject])),
            next_step=step,
        )

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

    def _rival(self, own: StatementJudged, id: StatementId, unit: int, key: str) -> Rival:
        rival = self.judged.statements[id]
        return Rival(
            claim=f"{key}/{id}",
            statement=id,
            verdict=VERDICTS[int(rival.outcome[unit])],
            support=_support(rival, unit),
            grade=GRADE_NAMES[rival.grade[unit]],
            balance=balance(_standing(own, unit), _standing(rival, unit), self.packs),
            speak_for=tuple(RuleId(rival.rules[i].id) for i in rival.held(unit, "for")),
            speak_against=tuple(RuleId(rival.rules[i].id) for i in rival.held(unit, "against")),
        )


def _support(judged: StatementJudged, unit: int) -> float:
    return round(float(judged.weighed[unit]), 4)


def _standing(judged: StatementJudged, unit: int) -> tuple[Verdict, float]:
    return VERDICTS[int(judged.outcome[unit])], _support(judged, unit)


class ClaimsBySubject(Mapping[Subject, tuple[Claim, ...]]):
    """All claims of each subject; made when asked for, and those of a few subjects kept."""

    def __init__(self, makers: Mapping[Level, ClaimMaker], steps: Steps) -> None:
        self.makers = makers
        self.place = {
            subject: (level, unit)
            for level, maker in makers.items()
            for unit, subject in enumerate(maker.judged.subjects())
        }
        self._step = steps_by_claim(steps)
        self._made: OrderedDict[Subject, dict[StatementId, Claim]] = OrderedDict()

    def __len__(self) -> int:
        return len(self.place)

    def __iter__(self) -> Iterator[Subject]:
        return iter(self.place)

    def __contains__(self, subject: object) -> bool:
        return subject in self.place

    def __getitem__(self, subject: Subject) -> tuple[Claim, ...]:
        level, _ = self.place[subject]
        return tuple(self.one(subject, id) for id in self.makers[level].judged.statements)

    def one(self, subject: Subject, id: StatementId) -> Claim:
        """One claim; KeyError where the statement was not judged for the subject."""
        made = self._made.get(subject)
        if made is None:
            made = self._made[subject] = {}
            if len(self._made) > KEPT:
                self._made.popitem(last=False)
        claim = made.get(id)
        if claim is None:
            level, unit = self.place[subject]
            maker = self.makers[level]
            claim = made[id] = maker.claim(subject, unit, id, self._step.get(f"{maker.keys[subject]}/{id}"))
        return claim


class ClaimsById(Mapping[str, Claim]):
    """The same by id, in the order of the subjects and of the statements."""

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


def claims_of(
    levels: Mapping[Level, LevelJudged], steps: Steps, packs: Packs, keys: Mapping[Subject, str]
) -> Claims:
    """All claims of what was judged, in the order of the levels, their units and the statements."""
    by_subject = ClaimsBySubject({level: ClaimMaker(judged, packs, keys) for level, judged in levels.items()}, steps)
    return Claims(by_id=ClaimsById(by_subject, keys), by_subject=by_subject, steps=steps)
