"""What was judged of the units of one level, in columns: codes, support and grade for all units at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from narrate.judging.at_once import shares_of
from narrate.judging.criteria import Look, rule_verdicts
from narrate.judging.depth import WHOLE, Depth
from narrate.judging.facts import HOLDS
from narrate.judging.kept_units import KeptUnits, columns_found
from narrate.judging.limits import applicable, circumstances, limits_in_force
from narrate.judging.redrawn import Redrawn
from narrate.judging.turning import turnings
from narrate.judging.unit_keys import UnitKeys
from narrate.judging.weigh import claim_verdicts, counted_once, support
from narrate.model.at_once import AtOnce, in_turn
from narrate.model.claims import GRADE_NAMES, GRADES, LimitInForce, Turning
from narrate.model.ids import Level, RuleId, StatementId, Subject
from narrate.model.packs import Packs
from narrate.model.rules import Limit, Rule, Statement


@dataclass(frozen=True, slots=True, kw_only=True)
class StatementJudged:
    """One statement judged for all units of a level."""

    statement: Statement
    rules: tuple[Rule, ...]
    heaviest_first: tuple[int, ...]
    """Numbers of the rules by weight, equal ones by id."""
    codes: np.ndarray
    """(rules, units): verdict of each rule."""
    outcome: np.ndarray
    """(units,): verdict of the statement."""
    weighed: np.ndarray
    """(units,): support."""
    stays: np.ndarray | None
    """(units,): share of draws in which the verdict stays."""
    same: np.ndarray | None
    """(rules, units): share of draws in which each rule comes out the same."""
    stands_for: Mapping[tuple[int, int], RuleId]
    """By rule and unit: the rule of the same evidence that is added in its stead, where both hold."""
    unlimited: np.ndarray
    """(units,): number of the grade among `GRADE_NAMES` before limits."""
    grade: np.ndarray
    """(units,): number of the grade after limits."""
    limits: Mapping[int, tuple[LimitInForce, ...]]
    """By unit, where there are any."""
    turnings: Mapping[int, tuple[Turning, ...]]

    def held(self, unit: int, direction: str) -> tuple[int, ...]:
        """Numbers of the rules of one direction that hold, heaviest first."""
        return tuple(
            i for i in self.heaviest_first if self.codes[i, unit] == HOLDS and self.rules[i].direction == direction
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelJudged:
    """All statements judged for the units of one level."""

    look: Look
    packs: Packs
    statements: Mapping[StatementId, StatementJudged]
    keys: UnitKeys

    @property
    def level(self) -> Level:
        return self.look.units.level

    def subjects(self) -> Iterator[Subject]:
        for id in self.look.units.ids:
            yield Subject(level=self.level, id=id)

    def holds(self, statement: StatementId, unit: int) -> bool:
        """Whether the statement was judged here and holds for the unit."""
        judged = self.statements.get(statement)
        return judged is not None and judged.outcome.item(unit) == HOLDS


def rules_of(level: Level, packs: Packs) -> dict[StatementId, tuple[Rule, ...]]:
    """Rules in force at a level, by statement, in the order of the packs."""
    found: dict[StatementId, list[Rule]] = {}
    for rule in packs.rules.values():
        if packs.in_force(rule) and level in rule.about:
            found.setdefault(rule.statement, []).append(rule)
    order = {id: i for i, id in enumerate(packs.statements)}
    return {id: tuple(found[id]) for id in sorted(found, key=lambda id: order[id])}


def level_judged(
    look: Look,
    redrawn: Redrawn | None,
    packs: Packs,
    kept: KeptUnits | None = None,
    *,
    depth: Depth = WHOLE,
    at_once: AtOnce = in_turn,
) -> LevelJudged:
    """Every statement that has rules at the level of the look, as deep as is asked for."""
    level = look.units.level
    rules_here = rules_of(level, packs)
    met = circumstances(packs.limits, look)
    weighings = {id: _Weighing(packs.statements[id], rules, packs) for id, rules in rules_here.items()}
    codes = {id: [rule_verdicts(rule, look)[:1] for rule in rules] for id, rules in rules_here.items()}
    outcomes = {id: weighing.outcome(codes[id]) for id, weighing in weighings.items()}
    keys = UnitKeys(look, rules_here.values(), codes.values())
    verdicts = {id: found[0] for id, found in outcomes.items()}
    draws = redrawn if level in depth.drawn else None
    stability = _stability(draws, weighings, codes, verdicts, keys, kept, at_once)
    changes = (
        turnings(look, rules_here, packs, keys, kept, at_once, only_held=depth.only_held)
        if level in depth.turned
        else {}
    )
    statements = {}
    for id, rules in rules_here.items():
        outcome, weighed = (part[0] for part in outcomes[id])
        stays, same = stability.get(id, (None, None))
        unlimited = np.where(outcome == HOLDS, _grades(weighed), 0).astype(np.int8)
        limits = _limits(look, met, packs, packs.statements[id], rules, codes[id], unlimited, stays)
        grade = unlimited.copy()
        for unit, held in limits.items():
            grade[unit] = GRADE_NAMES.index(held[0].grade)
        statements[id] = StatementJudged(
            statement=packs.statements[id],
            rules=rules,
            heaviest_first=_heaviest_first(rules, packs),
            codes=np.concatenate(codes[id]) if rules else np.zeros((0, outcome.size), np.int8),
            outcome=outcome,
            weighed=weighed,
            stays=stays,
            same=same,
            stands_for=_stand_ins(rules, weighings[id].weights, codes[id]),
            unlimited=unlimited,
            grade=grade,
            limits=limits,
            turnings=changes.get(id, {}),
        )
    look.forget()
    return LevelJudged(look=look, packs=packs, statements=statements, keys=keys)


class _Weighing:
    """How the rules of one statement are weighed."""

    def __init__(self, statement: Statement, rules: Sequence[Rule], packs: Packs) -> None:
        self.rules = rules
        self.weights = [packs.weights[rule.weight] * (1 if rule.direction == "for" else -1) for rule in rules]
        self._prior = statement.prior
        self._shared = [rule.evidence for rule in rules]

    def outcome(self, codes: Sequence[np.ndarray]) -> tuple[np.ndarray, np.ndarray]:
        """(replicates, units): verdicts of the statement, and its support."""
        weighed = support(self._prior, self.weights, [c == HOLDS for c in codes], self._shared)
        return claim_verdicts(self.rules, codes, weighed), weighed


Stability = dict[StatementId, tuple[np.ndarray, np.ndarray]]
"""Share of draws in which the verdict stays, (units,), and in which each rule comes out the same, (rules, units)."""


def _stability(
    redrawn: Redrawn | None,
    weighings: Mapping[StatementId, _Weighing],
    codes: Mapping[StatementId, Sequence[np.ndarray]],
    outcomes: Mapping[StatementId, np.ndarray],
    keys: UnitKeys,
    kept: KeptUnits | None,
    at_once: AtOnce,
) -> Stability:
    """Draws are looked at only of units of which it is not known already what comes of them."""
    if redrawn is None:
        return {}
    width = len(redrawn.as_counted.units.ids)
    small = np.min_scalar_type(redrawn.replicates)
    counts = np.zeros((sum(1 + len(w.rules) for w in weighings.values()), width), small)
    missing, own_keys = np.arange(width), []
    if kept is not None:
        own_keys = keys.drawn(replicates=redrawn.replicates, seed=redrawn.seed, is_across=redrawn.looks_at_all)
        missing = columns_found(kept, own_keys, counts)
    if redrawn.looks_at_all and missing.size:
        counts[:] = 0
        missing = np.arange(width)
    parts = [missing] if redrawn.looks_at_all else shares_of(missing)
    drawn = at_once([partial(_drawn_alike, redrawn, weighings, codes, outcomes, part, small) for part in parts])
    for part, alike in zip(parts, drawn, strict=True):
        counts[:, part] = alike
    if kept is not None:
        for unit in missing.tolist():
            kept.add(own_keys[unit], counts[:, unit].tobytes())
    shares, found, row = counts / redrawn.replicates, {}, 0
    for id, weighing in weighings.items():
        found[id] = (shares[row], shares[row + 1 : row + 1 + len(weighing.rules)])
        row += 1 + len(weighing.rules)
    return found


def _drawn_alike(
    redrawn: Redrawn,
    weighings: Mapping[StatementId, _Weighing],
    codes: Mapping[StatementId, Sequence[np.ndarray]],
    outcomes: Mapping[StatementId, np.ndarray],
    wanted: np.ndarray,
    small: np.dtype,
) -> np.ndarray:
    """One row a statement and one a rule, a column a unit wanted: in how many draws it comes out as the counts do."""
    width = len(redrawn.as_counted.units.ids)
    counts = np.zeros((sum(1 + len(w.rules) for w in weighings.values()), width), small)
    for own, look in redrawn.looks(wanted):
        row = 0
        for id, weighing in weighings.items():
            drawn = [rule_verdicts(rule, look) for rule in weighing.rules]
            counts[row, own] += _same(weighing.outcome(drawn)[0], outcomes[id][:, own], small)
            for i, (d, c) in enumerate(zip(drawn, codes[id], strict=True)):
                counts[row + 1 + i, own] += _same(d, c[:, own], small)
            row += 1 + len(weighing.rules)
    return counts[:, wanted]


def _same(drawn: np.ndarray, as_counted: np.ndarray, small: np.dtype) -> np.ndarray:
    """(units,): draws that come out as the counts do."""
    return (drawn == as_counted).sum(axis=0, dtype=small)


def _heaviest_first(rules: Sequence[Rule], packs: Packs) -> tuple[int, ...]:
    return tuple(sorted(range(len(rules)), key=lambda i: (-packs.weights[rules[i].weight], rules[i].id)))


def _grades(weighed: np.ndarray) -> np.ndarray:
    """Number among `GRADE_NAMES` of the grade whose band each support reaches."""
    return np.searchsorted([least - 1e-12 for _, least in GRADES], weighed, side="right")


def _limits(
    look: Look,
    met: Mapping[str, np.ndarray],
    packs: Packs,
    statement: Statement,
    rules: Sequence[Rule],
    codes: Sequence[np.ndarray],
    unlimited: np.ndarray,
    stays: np.ndarray | None,
) -> dict[int, tuple[LimitInForce, ...]]:
    found = {}
    known: dict[bytes, tuple[list[Rule], tuple[tuple[int, Limit], ...]]] = {}
    held_by = np.concatenate([code[:1] == HOLDS for code in codes]).T.copy() if codes else np.zeros((0, 0), bool)
    for unit in np.flatnonzero(unlimited).tolist():
        held = held_by[unit].tobytes()
        if held not in known:
            holding = [rule for rule, does_hold in zip(rules, held_by[unit], strict=True) if does_hold]
            known[held] = holding, applicable(packs.limits, statement.question, holding)
        stability = None if stays is None else float(stays[unit])
        in_force = limits_in_force(known[held][1], met, look, unit, known[held][0], int(unlimited[unit]), stability)
        if in_force:
            found[unit] = in_force
    return found


def _stand_ins(
    rules: Sequence[Rule], weights: Sequence[float], codes: Sequence[np.ndarray]
) -> dict[tuple[int, int], RuleId]:
    held = [c == HOLDS for c in codes]
    counts = counted_once(weights, held, [rule.evidence for rule in rules])
    found: dict[tuple[int, int], RuleId] = {}
    for i, rule in enumerate(rules):
        for unit in np.flatnonzero((held[i] & ~counts[i])[0]).tolist() if rule.evidence else ():
            found[i, unit] = next(
                other.id
                for other, counted in zip(rules, counts, strict=True)
                if other.evidence == rule.evidence and other.direction == rule.direction and counted[0, unit]
            )
    return found
