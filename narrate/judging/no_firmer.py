"""Claims of what may be shown, held down to what is claimed of the whole."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from narrate.judging.claims_by_subject import ClaimsBySubject, claims_of
from narrate.judging.columns import LevelJudged, StatementJudged
from narrate.judging.facts import CANNOT_TELL, HOLDS
from narrate.model.claims import GRADE_NAMES, Claims, LimitInForce
from narrate.model.packs import Packs

LIMIT = "disclosure.whole"
"""Id of the limit that holds down what the open part of a dig alone would say more firmly than the whole does."""
LIFTS = "nothing that may be shown here"


def no_firmer(part: Claims, whole: Claims, packs: Packs) -> Claims:
    """
    The claims of a part, each as firm as the part makes it and no firmer than the whole does.

    What does not hold of the whole does not hold of the part; a grade is the lower of the two; and the share of draws
    in which a verdict stays is the smaller one. What holds of the whole alone is not added: the part shows no ground.
    Claims that were not made of columns are given back as they are.
    """
    open_, all_ = part.columns, whole.columns
    if not isinstance(open_, ClaimsBySubject) or not isinstance(all_, ClaimsBySubject):
        return part
    keys = {subject: key for maker in open_.makers.values() for subject, key in maker.keys.items()}
    levels = {
        level: _held_down(maker.judged, all_.makers[level].judged) for level, maker in open_.makers.items()
    }
    return claims_of(levels, part.steps, packs, keys)


def _held_down(part: LevelJudged, whole: LevelJudged) -> LevelJudged:
    place = {id: unit for unit, id in enumerate(whole.look.units.ids)}
    at = np.array([place.get(id, -1) for id in part.look.units.ids], np.intp)
    statements = {
        id: _statement(one, whole.statements[id], at) if id in whole.statements else one
        for id, one in part.statements.items()
    }
    return replace(part, statements=statements)


def _statement(part: StatementJudged, whole: StatementJudged, at: np.ndarray) -> StatementJudged:
    known = np.flatnonzero((at >= 0) & (part.outcome == HOLDS))
    lost = known[whole.outcome[at[known]] != HOLDS]
    kept = known[whole.outcome[at[known]] == HOLDS]
    outcome, grade = part.outcome.copy(), part.grade.copy()
    outcome[lost], grade[lost] = CANNOT_TELL, 0
    grade[kept] = np.minimum(grade[kept], whole.grade[at[kept]])
    stays = part.stays
    if stays is not None and whole.stays is not None:
        stays = stays.copy()
        stays[kept] = np.minimum(stays[kept], whole.stays[at[kept]])
    fell = [unit for unit in (*lost.tolist(), *kept.tolist()) if grade[unit] < part.grade[unit]]
    return replace(
        part,
        outcome=outcome,
        grade=grade,
        stays=stays,
        limits={**part.limits, **_limits(part, grade, fell)},
        turnings={unit: found for unit, found in part.turnings.items() if unit not in lost},
    )


def _limits(part: StatementJudged, grade: np.ndarray, fell: list[int]) -> Mapping[int, tuple[LimitInForce, ...]]:
    """The limits of each claim that fell, this one first, as it is the lowest."""
    found = {}
    for unit in fell:
        name = GRADE_NAMES[int(grade[unit])]
        says = f"all that was found, with what is not shown here, says no more: grade held at '{name}'"
        held = LimitInForce(limit=LIMIT, says=says, lifts=LIFTS, grade=name)
        found[unit] = (held, *part.limits.get(unit, ()))
    return found
