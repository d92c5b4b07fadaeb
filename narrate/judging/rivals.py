"""Rival readings set beside each other: what speaks for and against both, and whether the remains decide."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from narrate.model.claims import Balance, Claim, Rival
from narrate.model.ids import StatementId
from narrate.model.packs import Packs

ROUNDED = 0.02
"""Log-odds by which the rounding of support may move a difference."""


def with_rivals(
    claims: Sequence[Claim], packs: Packs, pairs: Mapping[StatementId, tuple[StatementId, ...]]
) -> tuple[Claim, ...]:
    """
    Claims of one subject, each with its rivals. Rivalry is mutual, whichever of the two names the other.

    pairs:  `rivalry` of the packs.
    """
    by_statement = {claim.statement: claim for claim in claims}
    return tuple(
        replace(
            claim,
            rivals=_in_order(
                _rival(claim, by_statement[id], packs) for id in pairs.get(claim.statement, ()) if id in by_statement
            ),
        )
        for claim in claims
    )


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


def balance(claim: Claim, rival: Claim, packs: Packs) -> Balance:
    """
    Which of two rivals the remains favour.

    Where both hold, one must be ahead by at least what one weak argument weighs; less than that decides nothing.
    """
    if claim.verdict != "holds" and rival.verdict != "holds":
        return "neither holds"
    if claim.verdict != rival.verdict and "holds" in (claim.verdict, rival.verdict):
        return "this" if claim.verdict == "holds" else "rival"
    ahead = _log_odds(claim.support) - _log_odds(rival.support)
    if abs(ahead) < packs.weights["weak"] - ROUNDED:
        return "undecided"
    return "this" if ahead > 0 else "rival"


def _rival(claim: Claim, rival: Claim, packs: Packs) -> Rival:
    return Rival(
        claim=rival.id,
        statement=rival.statement,
        verdict=rival.verdict,
        support=rival.support,
        grade=rival.grade,
        balance=balance(claim, rival, packs),
        speak_for=tuple(a.rule for a in rival.held("for")),
        speak_against=tuple(a.rule for a in rival.held("against")),
    )


def _in_order(rivals) -> tuple[Rival, ...]:  # type: ignore[no-untyped-def]
    return tuple(sorted(rivals, key=lambda rival: rival.verdict != "holds"))


def _log_odds(support: float) -> float:
    bounded = min(max(support, 1e-4), 1 - 1e-4)
    return math.log(bounded / (1 - bounded))
