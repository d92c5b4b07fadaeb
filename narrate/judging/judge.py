"""All statements judged for all subjects."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from narrate.judging.criteria import Look, rule_verdicts
from narrate.judging.evidence import LookedAt, filled, named
from narrate.judging.facts import HOLDS, Recorded, recorded
from narrate.judging.limits import circumstances, limits_in_force
from narrate.judging.next_steps import next_steps, with_next_steps
from narrate.judging.resample import drawn_samples, resampled
from narrate.judging.rivals import rivalry, with_rivals
from narrate.judging.turning import LEVELS_TURNED, turnings
from narrate.judging.weigh import VERDICTS, claim_verdicts, counted_once, grade_of, support
from narrate.measures.count_table import CountTable, count_table
from narrate.measures.units import Units
from narrate.model.claims import Argument, Claim, Claims, Turning
from narrate.model.ids import LEVELS, Level, RuleId, StatementId, Subject
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.model.rules import Rule, Statement

REPLICATES = 200
SEED = 20260


def judge(project: Project, packs: Packs, *, replicates: int = REPLICATES, seed: int = SEED) -> Claims:
    """
    Claims of every sample, context, feature and phase, and of the site, in a fixed order.

    replicates:  draws of the counts for stability; 0 leaves stability out.
    seed:        the same seed gives the same stability.
    """
    table = count_table(project, packs)
    draws = resampled(table, replicates, seed) if replicates else None
    records = recorded(project, packs)
    keys = subject_keys(project)
    by_subject: dict[Subject, tuple[Claim, ...]] = {}
    as_counted: dict[Level, Look] = {}
    for level in LEVELS:
        looks = _looks(table, draws, level, packs, project.preservation, records, seed)
        as_counted[level] = looks[0]
        by_subject.update(_judged(level, looks, packs, keys))
    steps = next_steps(project, packs, as_counted, {level: rules_of(level, packs) for level in LEVELS}, by_subject)
    by_subject = with_next_steps(by_subject, steps)
    by_id = {claim.id: claim for claims in by_subject.values() for claim in claims}
    return Claims(by_id=by_id, by_subject=by_subject, steps=steps)


def rules_of(level: Level, packs: Packs) -> dict[StatementId, tuple[Rule, ...]]:
    """Rules in force at a level, by statement, in the order of the packs."""
    found: dict[StatementId, list[Rule]] = {}
    for rule in packs.rules.values():
        if packs.in_force(rule) and level in rule.about:
            found.setdefault(rule.statement, []).append(rule)
    order = {id: i for i, id in enumerate(packs.statements)}
    return {id: tuple(found[id]) for id in sorted(found, key=lambda id: order[id])}


def _looks(
    table: CountTable,
    draws: CountTable | None,
    level: Level,
    packs: Packs,
    preservation: str,
    records: tuple[Recorded, ...],
    seed: int,
) -> tuple[Look, Look | None]:
    units = Units(table, level, packs, preservation)
    phases = Units(table, "phase", packs, preservation)
    as_counted = Look(units, phases, records)
    if draws is None:
        return as_counted, None
    of_units, of_phases = (u.with_table(draws, drawn_samples(u, draws.replicates, seed)) for u in (units, phases))
    return as_counted, Look(of_units, of_phases, records)


def _judged(
    level: Level, looks: tuple[Look, Look | None], packs: Packs, keys: Mapping[Subject, str]
) -> dict[Subject, tuple[Claim, ...]]:
    look, redrawn = looks
    met = circumstances(packs.limits, look)
    rules_here = rules_of(level, packs)
    turned = turnings(look, rules_here, packs) if level in LEVELS_TURNED else {}
    looked_at = LookedAt(look)
    claims: dict[Subject, list[Claim]] = {Subject(level=level, id=id): [] for id in look.units.ids}
    for statement_id, rules in rules_here.items():
        statement = packs.statements[statement_id]
        weights = [packs.weights[r.weight] * (1 if r.direction == "for" else -1) for r in rules]
        codes = [rule_verdicts(rule, look) for rule in rules]
        shared = [rule.evidence for rule in rules]
        weighed = support(statement.prior, weights, [c == HOLDS for c in codes], shared)
        stands_for = _stand_ins(rules, weights, codes)
        outcome = claim_verdicts(rules, codes, weighed)
        stays, same = _stability(statement, rules, weights, codes, outcome, redrawn)
        for unit, subject in enumerate(claims):
            claims[subject].append(
                _claim(
                    statement=statement,
                    rules=rules,
                    codes=[int(c[0, unit]) for c in codes],
                    stands_for=[s.get(unit) for s in stands_for],
                    same=[s[unit] for s in same] if same else [None] * len(rules),
                    weighed=float(weighed[0, unit]),
                    outcome=int(outcome[0, unit]),
                    stability=None if stays is None else float(stays[unit]),
                    looked_at=looked_at,
                    unit=unit,
                    subject=subject,
                    key=keys[subject],
                    packs=packs,
                    met=met,
                    turns=turned.get(statement_id, {}).get(unit, ()),
                )
            )
    pairs = rivalry(packs)
    return {subject: with_rivals(_with_alternatives(found), packs, pairs) for subject, found in claims.items()}


def _stand_ins(
    rules: Sequence[Rule], weights: Sequence[float], codes: Sequence[np.ndarray]
) -> list[dict[int, RuleId]]:
    """For each rule, by unit: the rule of the same evidence that is added in its stead, where both hold."""
    held = [c == HOLDS for c in codes]
    counts = counted_once(weights, held, [rule.evidence for rule in rules])
    found: list[dict[int, RuleId]] = [{} for _ in rules]
    for i, rule in enumerate(rules):
        for unit in np.flatnonzero((held[i] & ~counts[i])[0]).tolist() if rule.evidence else ():
            found[i][unit] = next(
                other.id
                for other, counted in zip(rules, counts, strict=True)
                if other.evidence == rule.evidence and other.direction == rule.direction and counted[0, unit]
            )
    return found


def _stability(
    statement: Statement,
    rules: Sequence[Rule],
    weights: Sequence[float],
    codes: Sequence[np.ndarray],
    outcome: np.ndarray,
    redrawn: Look | None,
) -> tuple[np.ndarray | None, list[np.ndarray]]:
    """Share of draws in which the verdict stays, and in which each rule comes out the same."""
    if redrawn is None:
        return None, []
    drawn = [rule_verdicts(rule, redrawn) for rule in rules]
    weighed = support(statement.prior, weights, [d == HOLDS for d in drawn], [r.evidence for r in rules])
    stays = (claim_verdicts(rules, drawn, weighed) == outcome).mean(axis=0)
    return stays, [(d == c).mean(axis=0) for d, c in zip(drawn, codes, strict=True)]


def _claim(
    *,
    statement: Statement,
    rules: Sequence[Rule],
    codes: Sequence[int],
    stands_for: Sequence[RuleId | None],
    same: Sequence[float | None],
    weighed: float,
    outcome: int,
    stability: float | None,
    looked_at: LookedAt,
    unit: int,
    subject: Subject,
    key: str,
    packs: Packs,
    met: Mapping[str, np.ndarray],
    turns: tuple[Turning, ...],
) -> Claim:
    arguments = tuple(
        _argument(rule, code, share, other, looked_at, unit, packs)
        for rule, code, share, other in zip(rules, codes, same, stands_for, strict=True)
    )
    holding = [rule for rule, code in zip(rules, codes, strict=True) if code == HOLDS]
    unlimited = grade_of(weighed) if outcome == HOLDS else "not supported"
    grade, limits = limits_in_force(
        packs.limits, met, looked_at.look, unit, statement.question, holding, unlimited, stability
    )
    speaking = holding or list(rules)
    return Claim(
        id=f"{key}/{statement.id}",
        about=subject,
        question=statement.question,
        statement=statement.id,
        verdict=VERDICTS[outcome],
        support=round(weighed, 4),
        grade=grade,
        stability=None if stability is None else round(stability, 4),
        arguments=tuple(sorted(arguments, key=_heaviest_first)),
        limits=limits,
        misleads_when=tuple(dict.fromkeys(text for rule in holding for text in rule.misleads_when)),
        alternatives=statement.rivals,
        sources=tuple(dict.fromkeys(key for rule in speaking for key in rule.sources)),
        turnings=turns,
        unlimited=unlimited,
    )


def _argument(
    rule: Rule,
    code: int,
    same: float | None,
    counted_with: RuleId | None,
    looked_at: LookedAt,
    unit: int,
    packs: Packs,
) -> Argument:
    evidence = looked_at.of(rule, unit)
    values = named(evidence)
    return Argument(
        rule=RuleId(rule.id),
        direction=rule.direction,
        weight=packs.weights[rule.weight],
        verdict=VERDICTS[code],
        says=filled(rule.says, values),
        says_plain=filled(rule.says_plain, values),
        evidence=evidence,
        share_holding=None if same is None else round(float(same), 4),
        counted_with=counted_with,
    )


def _heaviest_first(argument: Argument) -> tuple[int, float, str]:
    order = ("holds", "fails", "cannot tell").index(argument.verdict)
    return (order, -argument.weight, argument.rule)


def _with_alternatives(claims: Sequence[Claim]) -> tuple[Claim, ...]:
    """Rivals that hold for the same subject come first; a rival that nothing defines is left to check_rules."""

    holding = {claim.statement for claim in claims if claim.verdict == "holds"}
    return tuple(
        replace(claim, alternatives=tuple(sorted(claim.alternatives, key=lambda id: id not in holding)))
        for claim in claims
    )
