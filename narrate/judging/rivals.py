"""Rival readings set beside each other: what speaks for and against both, and whether the remains decide."""

from __future__ import annotations

import math
from collections.abc import Mapping

from narrate.model.claims import Balance
from narrate.model.ids import StatementId
from narrate.model.packs import Packs
from narrate.model.rules import Verdict

ROUNDED = 0.02
"""Log-odds by which the rounding of support may move a difference."""


def rivalry(packs: Packs) -> Mapping[StatementId, tuple[StatementId, ...]]:
    """The rivals of each statement: those it names, then those that name it."""
    found: dict[StatementId, dict[StatementId, None]] = {
        id: dict.fromkeys(rival for rival in statement.rivals if rival in packs.statements)
        for id, statement in packs.statements.items()
    }
    for id, statement in packs.statements.items():
        for rival in statement.rivals:
            if rival in found:
                found[rival].setdefault(id)
    return {id: tuple(rivals) for id, rivals in found.items()}


def balance(own: tuple[Verdict, float], rival: tuple[Verdict, float], packs: Packs) -> Balance:
    """
    Which of two rivals the remains favour, from the verdict and the support of both.

    Where both hold, one must be ahead by at least what one weak argument weighs; less than that decides nothing.
    """
    if own[0] != "holds" and rival[0] != "holds":
        return "neither holds"
    if own[0] != rival[0]:
        return "this" if own[0] == "holds" else "rival"
    ahead = _log_odds(own[1]) - _log_odds(rival[1])
    if abs(ahead) < packs.weights["weak"] - ROUNDED:
        return "undecided"
    return "this" if ahead > 0 else "rival"


def _log_odds(support: float) -> float:
    bounded = min(max(support, 1e-4), 1 - 1e-4)
    return math.log(bounded / (1 - bounded))
