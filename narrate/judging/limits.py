"""Circumstances that hold a grade down, whatever the arguments weigh."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

import numpy as np

from narrate.judging.criteria import Look, leaves, rule_verdicts
from narrate.judging.facts import FAILS, HOLDS, fact_verdicts
from narrate.judging.few_behind import FEW_BEHIND, few_behind
from narrate.measures.significance import holm
from narrate.model.claims import GRADE_NAMES, LimitInForce
from narrate.model.rules import Bound, Fact, Limit, Rule, Selector
from narrate.problems import Place

UNLIMITED_QUESTIONS = ("integrity", "work")
"""A doubt about a deposit is no reason to doubt that it is doubtful."""

_NOWHERE = Place(path="narrate")


UNSTEADY = "verdict is unsteady"
"""The circumstance that fewer of the resampled counts than a threshold uphold the verdict."""


def circumstances(limits: Sequence[Limit], look: Look) -> dict[str, np.ndarray]:
    """For each limit that depends on the unit alone: True where its circumstance is met."""
    return {limit.id: UNIT_TESTS[limit.when](look, limit) for limit in limits if limit.when in UNIT_TESTS}


def applicable(limits: Sequence[Limit], question: str, holding: Sequence[Rule]) -> tuple[tuple[int, Limit], ...]:
    """The limits that may hold down a statement of which these rules hold, each with the number of its grade."""
    return tuple(
        (GRADE_NAMES.index(limit.grade), limit)  # type: ignore[arg-type]
        for limit in limits
        if _applies(limit, question, holding)
    )


def limits_in_force(
    limits: Sequence[tuple[int, Limit]],
    met: Mapping[str, np.ndarray],
    look: Look,
    unit: int,
    holding: Sequence[Rule],
    grade: int,
    stability: float | None,
) -> tuple[LimitInForce, ...]:
    """
    The limits that hold a grade down, the lowest first.

    limits:  those that are `applicable`.
    grade:   its number among `GRADE_NAMES`.
    """
    found: list[tuple[int, LimitInForce]] = []
    for cap, limit in limits:
        if cap >= grade:
            continue
        if limit.when == UNSTEADY:
            is_met = stability is not None and stability < (limit.threshold or 0.5)
        else:
            is_met = met[limit.id][unit] if limit.id in met else CLAIM_TESTS[limit.when](look, unit, holding, limit)
        if is_met:
            held = LimitInForce(
                limit=limit.id,
                says=f"{limit.says}: grade held at '{limit.grade}'",
                lifts=limit.lifts,
                grade=GRADE_NAMES[cap],
            )
            found.append((cap, held))
    found.sort(key=lambda pair: pair[0])
    return tuple(held for _, held in found)


def _applies(limit: Limit, question: str, holding: Sequence[Rule]) -> bool:
    if any(rule.statement in limit.spares for rule in holding):
        return False
    return question in limit.questions if limit.questions else question not in UNLIMITED_QUESTIONS


# ---- circumstances of a unit


def _fact_is(fact: str, *values: str) -> Callable[[Look, Limit], np.ndarray]:
    def test(look: Look, limit: Limit) -> np.ndarray:
        asked = Fact(fact=fact, is_any_of=values, place=_NOWHERE)
        return fact_verdicts(asked, look.units, look.records)[0] == HOLDS

    return test


def _fact_unknown(fact: str) -> Callable[[Look, Limit], np.ndarray]:
    """Not recorded for any sample of the unit; mixed kinds are known, not unknown."""

    def test(look: Look, limit: Limit) -> np.ndarray:
        says = [
            any(look.records[sample].values[fact] for sample in look.units.samples_of(unit))
            for unit in range(len(look.units.ids))
        ]
        return ~np.array(says, bool)

    return test


def _few_items(look: Look, limit: Limit) -> np.ndarray:
    """Wood is left out: laboratories identify a set number of its pieces, whatever else there is."""
    return look.units.counted(Selector(not_role=("wood",)))[0] < (limit.threshold or 10)


def _few_items_with_wood(look: Look, limit: Limit) -> np.ndarray:
    return look.units.counted(Selector())[0] < (limit.threshold or 10)


def _one_sample(look: Look, limit: Limit) -> np.ndarray:
    if look.units.level == "sample":
        return np.zeros(len(look.units.ids), bool)
    return look.units.samples()[0] == 1


def _coarse_mesh(look: Look, limit: Limit) -> np.ndarray:
    """Every sample of the unit whose mesh is recorded was caught on a coarser one than the threshold, in mm."""
    finest = [
        min((m for s in look.units.samples_of(unit) if (m := look.records[s].light_mesh_mm) is not None), default=0.0)
        for unit in range(len(look.units.ids))
    ]
    return np.array(finest) > (limit.threshold or 0.5)


def _poor_recovery(look: Look, limit: Limit) -> np.ndarray:
    back, added = look.units.recovery()
    with np.errstate(invalid="ignore", divide="ignore"):
        return (added[0] > 0) & (back[0] / np.where(added[0] > 0, added[0], 1) < (limit.threshold or 0.5))


UNIT_TESTS: Mapping[str, Callable[[Look, Limit], np.ndarray]] = MappingProxyType(
    {
        "deposit is tertiary": _fact_is("deposit", "tertiary"),
        "deposit is unknown": _fact_unknown("deposit"),
        "security is disturbed": _fact_is("security", "disturbed"),
        "security is unknown": _fact_unknown("security"),
        "unsorted heavy fraction": _fact_is("heavy_fraction", "not sorted"),
        "few items": _few_items,
        "few items, wood counted": _few_items_with_wood,
        "one sample": _one_sample,
        "coarse mesh": _coarse_mesh,
        "poor recovery": _poor_recovery,
    }
)


# ---- circumstances of a claim


def _only_cf(look: Look, unit: int, holding: Sequence[Rule], limit: Limit) -> bool:
    """
    All plant remains that the holding arguments asked for are 'cf.' or 'A/B' names.

    Only selections that name plants count; 'all items' is no identification.
    """
    asked = [
        selector
        for rule in holding
        if rule.direction == "for"
        for leaf in leaves((rule.criteria,))
        if isinstance(leaf, Bound)
        for selector in (leaf.of,)
        if selector is not None and names_plants(selector)
    ]
    rows = {row for selector in asked for row in look.units.rows_of(unit, selector).tolist()}
    table = look.units.table
    there = [row for row in rows if table.is_noted[row]]
    return bool(there) and not any(table.kinds[table.row_kind[row]].is_certain for row in there)


def names_plants(selector: Selector) -> bool:
    """Whether rows are chosen by what the plant is, so that the choice hangs on its identification."""
    return bool(
        selector.taxon or selector.family or selector.tag or selector.status or selector.use or selector.field_weed
        or selector.ripens_within or selector.ripens_in or selector.keeping or selector.sow or selector.soil
        or selector.height or selector.seed or selector.life
    )  # fmt: skip


def _only_draft(look: Look, unit: int, holding: Sequence[Rule], limit: Limit) -> bool:
    supporting = [rule for rule in holding if rule.direction == "for"]
    return bool(supporting) and all(rule.status == "draft" for rule in supporting)


def _only_local_draft(look: Look, unit: int, holding: Sequence[Rule], limit: Limit) -> bool:
    supporting = [rule for rule in holding if rule.direction == "for"]
    return bool(supporting) and all(rule.status == "draft" and rule.is_local for rule in supporting)


def _may_be_chance(look: Look, unit: int, holding: Sequence[Rule], limit: Limit) -> bool:
    """
    Of all differences that rules test at this level, none of those that the claim rests on outlasts Holm's correction.

    One plant tested among twenty differs by chance at the level of one in twenty. A claim that rests on anything else
    than such a difference is not met.
    Source: Holm 1979, Scandinavian Journal of Statistics 6:65–70 (from memory).
    """
    for measure, p_of in P_OF.items():
        own = _differences([rule for rule in holding if rule.direction == "for"], measure)
        if own:
            family = _differences(_rules_at(look), measure)
            p = np.array([look.column(replace(bound, measure=p_of)).value[0, unit] for bound in family])
            corrected = holm(p)
            return all(not corrected[family.index(bound)] <= CHANCE for bound in own)
    return False


def _phases_disagree(look: Look, unit: int, holding: Sequence[Rule], limit: Limit) -> bool:
    """
    Of the whole dig, what speaks for the claim fails in some phase of which samples were taken.

    Pooled over phases, a reading of one of them would pass for one of all. Rules that are not about phases are left
    out; a phase of which too few samples were taken to tell does not disagree.
    """
    if look.units.level != "site":
        return False
    speaking = [rule for rule in holding if rule.direction == "for" and "phase" in rule.about]
    if not speaking:
        return False
    phases = Look(look.phases, look.phases, look.records)
    fails = np.array([rule_verdicts(rule, phases)[0] == FAILS for rule in speaking])
    return bool((fails.all(axis=0) & (look.phases.samples()[0] > 0)).any())


CHANCE = 0.05
"""Chance from which a difference may be one. Convention."""
P_OF: Mapping[str, str] = MappingProxyType({"ubiquity_change": "ubiquity_p", "ubiquity_apart": "ubiquity_apart_p"})
"""Measures of a difference between groups of samples, and the chance of each."""


def _rules_at(look: Look) -> list[Rule]:
    packs, level = look.units.packs, look.units.level
    return [rule for rule in packs.rules.values() if packs.in_force(rule) and level in rule.about]


def _differences(rules: Sequence[Rule], measure: str) -> list[Bound]:
    """What is compared, each once: a rise and a fall of the same plant are one test."""
    found: dict[tuple[Selector | None, Selector | None], Bound] = {}
    for rule in rules:
        for leaf in leaves((rule.criteria,)):
            if isinstance(leaf, Bound) and leaf.measure == measure:
                plain = Bound(measure=measure, of=leaf.of, to=leaf.to, place=_NOWHERE)
                found.setdefault((leaf.of, leaf.to), plain)
    return list(found.values())


CLAIM_TESTS: Mapping[str, Callable[[Look, int, Sequence[Rule], Limit], bool]] = MappingProxyType(
    {
        FEW_BEHIND: few_behind,
        "only cf. names": _only_cf,
        "only draft rules": _only_draft,
        "only local draft rules": _only_local_draft,
        "may be chance": _may_be_chance,
        "phases disagree": _phases_disagree,
    }
)

CIRCUMSTANCES: frozenset[str] = frozenset(UNIT_TESTS) | frozenset(CLAIM_TESTS) | {UNSTEADY}
"""What the `when` of a limit may say."""
