"""All contexts of simulated digs judged at once: the verdicts and grades that `judge` gives each, as columns."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from narrate.judging.criteria import Look, leaves, rule_verdicts
from narrate.judging.facts import HOLDS, Recorded
from narrate.judging.few_behind import FEW_BEHIND, hangs_on_few, items_behind, least_of
from narrate.judging.judge import rules_of
from narrate.judging.limits import UNLIMITED_QUESTIONS, UNSTEADY, circumstances, names_plants
from narrate.judging.resample import drawn_samples, resampled
from narrate.judging.weigh import claim_verdicts, counted_once, support
from narrate.measures.count_table import CountTable
from narrate.measures.units import Units
from narrate.model.claims import GRADE_NAMES, GRADES
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Limit, Rule, Statement


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """One statement judged for every context."""

    statement: Statement
    rules: tuple[Rule, ...]
    held: np.ndarray
    """(rules, contexts): where each argument holds."""
    counted: np.ndarray
    """(rules, contexts): the same without those whose evidence a heavier one already gave."""
    holds: np.ndarray
    weighed: np.ndarray
    stays: np.ndarray
    """Share of draws that uphold the verdict."""
    cap: np.ndarray
    """Index in GRADE_NAMES of the most that limits allow."""
    grade: np.ndarray
    """Index in GRADE_NAMES; 0 where the claim is not in force."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """What judging looks at, worked out once, so that weights and limits can be tried on it again and again."""

    look: Look
    met: Mapping[str, np.ndarray]
    codes: Mapping[str, np.ndarray]
    """Rule -> codes of every context."""
    drawn: Mapping[str, np.ndarray]
    """Rule -> codes of every draw and context."""


def evidence_of(
    table: CountTable, records: tuple[Recorded, ...], packs: Packs, preservation: str, *, replicates: int, seed: int
) -> Evidence:
    """Every rule about contexts looked at, as counted and in `replicates` draws of the counts."""
    units, phases = (Units(table, level, packs, preservation) for level in ("context", "phase"))  # type: ignore[arg-type]
    draws = resampled(table, replicates, seed)
    redrawn = [u.with_table(draws, drawn_samples(u, replicates, seed)) for u in (units, phases)]
    look = Look(units, phases, records)
    other = Look(redrawn[0], redrawn[1], records)
    rules = [rule for rules in rules_of("context", packs).values() for rule in rules]
    return Evidence(
        look=look,
        met=circumstances(packs.limits, look),
        codes={rule.id: rule_verdicts(rule, look)[0] for rule in rules},
        drawn={rule.id: rule_verdicts(rule, other) for rule in rules},
    )


def outcomes(evidence: Evidence, packs: Packs) -> dict[str, Outcome]:
    """Statement -> how it comes out for every context, with the weights and limits of the packs given."""
    return {
        str(id): _outcome(packs.statements[id], rules, evidence, packs)
        for id, rules in rules_of("context", packs).items()
    }


def _outcome(statement: Statement, rules: Sequence[Rule], evidence: Evidence, packs: Packs) -> Outcome:
    weights = [packs.weights[r.weight] * (1 if r.direction == "for" else -1) for r in rules]
    codes = [evidence.codes[rule.id][None, :] for rule in rules]
    drawn = [evidence.drawn[rule.id] for rule in rules]
    weighed = support(statement.prior, weights, [c == HOLDS for c in codes], [r.evidence for r in rules])
    outcome = claim_verdicts(rules, codes, weighed)
    again = claim_verdicts(
        rules, drawn, support(statement.prior, weights, [c == HOLDS for c in drawn], [r.evidence for r in rules])
    )
    stays = (again == outcome).mean(axis=0)
    held = np.array([c[0] == HOLDS for c in codes])
    holds = outcome[0] == HOLDS
    cap = _cap(statement, rules, held, stays, evidence, packs.limits)
    unlimited = np.searchsorted([least - 1e-12 for _, least in GRADES], weighed[0], side="right")
    return Outcome(
        statement=statement,
        rules=tuple(rules),
        held=held,
        counted=np.array(
            [c[0] for c in counted_once(weights, [c == HOLDS for c in codes], [r.evidence for r in rules])]
        ),
        holds=holds,
        weighed=weighed[0],
        stays=stays,
        cap=cap,
        grade=np.where(holds, np.minimum(unlimited, cap), 0),
    )


def _cap(
    statement: Statement,
    rules: Sequence[Rule],
    held: np.ndarray,
    stays: np.ndarray,
    evidence: Evidence,
    limits: Sequence[Limit],
) -> np.ndarray:
    cap = np.full(stays.size, len(GRADE_NAMES) - 1)
    for limit in limits:
        applies = (
            statement.question in limit.questions if limit.questions else statement.question not in UNLIMITED_QUESTIONS
        )
        if not applies or statement.id in limit.spares or limit.when in _OF_WHOLE_DIG:
            continue
        if limit.id in evidence.met:
            met = evidence.met[limit.id]
        elif limit.when == UNSTEADY:
            met = stays < (limit.threshold or 0.5)
        elif limit.when == FEW_BEHIND:
            met = _few_behind(rules, held, evidence, limit)
        else:
            met = _OF_CLAIM[limit.when](rules, held, evidence)
        cap = np.where(met, np.minimum(cap, GRADE_NAMES.index(limit.grade)), cap)  # type: ignore[arg-type]
    return cap


def _few_behind(rules: Sequence[Rule], held: np.ndarray, evidence: Evidence, limit: Limit) -> np.ndarray:
    """As the limit of one claim says it, asked once of those in which the same rules hold on as much or as little."""
    thin = np.array([items_behind(evidence.look, rule) < least_of(limit) for rule in rules])
    alike, which = np.unique(np.concatenate([held, thin]), axis=1, return_inverse=True)
    met = []
    for column in alike.T:
        holding = [i for i in range(len(rules)) if column[i]]
        few = [bool(column[len(rules) + i]) for i in holding]
        met.append(hangs_on_few([rules[i] for i in holding], few, limit, evidence.look.units.packs))
    return np.array(met, bool)[which.ravel()]


def _only(is_weak: Callable[[Rule], bool]) -> Callable[[Sequence[Rule], np.ndarray, Evidence], np.ndarray]:
    """True where arguments for hold and all of them are of that sort."""

    def test(rules: Sequence[Rule], held: np.ndarray, evidence: Evidence) -> np.ndarray:
        for_ = np.array([r.direction == "for" for r in rules])
        weak = np.array([is_weak(r) for r in rules])
        return held[for_].any(axis=0) & ~held[for_ & ~weak].any(axis=0)

    return test


def _only_cf(rules: Sequence[Rule], held: np.ndarray, evidence: Evidence) -> np.ndarray:
    """As the limit of one claim says it: all plants that the holding arguments asked for are uncertain."""
    units = evidence.look.units
    certain_kind = np.array([kind.is_certain for kind in units.table.kinds], bool)
    there, certain = np.zeros(held.shape[1], bool), np.zeros(held.shape[1], bool)
    for rule, holding in zip(rules, held, strict=True):
        if rule.direction != "for" or not holding.any():
            continue
        for leaf in leaves((rule.criteria,)):
            if isinstance(leaf, Bound) and leaf.of is not None and names_plants(leaf.of):
                rows = units.rows(leaf.of)
                rows = rows[units.table.is_noted[rows]]
                firm = rows[certain_kind[units.table.row_kind[rows]]]
                number = held.shape[1]
                there |= holding & (np.bincount(units.unit_of(rows), minlength=number) > 0)
                certain |= holding & (np.bincount(units.unit_of(firm), minlength=number) > 0)
    return there & ~certain


_OF_WHOLE_DIG = ("phases disagree", "may be chance")
"""Circumstances that no context meets."""
_OF_CLAIM = {
    "only cf. names": _only_cf,
    "only draft rules": _only(lambda rule: rule.status == "draft"),
    "only local draft rules": _only(lambda rule: rule.status == "draft" and rule.is_local),
}
