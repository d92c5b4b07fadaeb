"""Claims as plain values: as `explain --json` gives them, and `claims.json` line by line."""

from __future__ import annotations

import json
from collections.abc import Collection

from narrate.deposit.argument_texts import plain_argument
from narrate.model.claims import Claim, Rival, Turning
from narrate.model.next_steps import COSTS, NextStep


def dumped(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(", ", ": "))


def plain_claim(claim: Claim, cited: Collection[str] | None = None) -> dict[str, object]:
    """One claim with all evidence, as `explain --json` gives it; or, with the claims cited, as `claims.json` does."""
    arguments = _plain_arguments(claim, (claim.id,) if cited is None else cited)
    return {**_before_arguments(claim), "arguments": arguments, **_after_arguments(claim)}


def _plain_arguments(claim: Claim, cited: Collection[str]) -> list[dict[str, object]]:
    is_followed = claim.verdict == "holds" or claim.id in cited
    return [
        plain_argument(argument, with_evidence=is_followed or argument.verdict == "holds")
        for argument in claim.arguments
    ]


def _before_arguments(claim: Claim) -> dict[str, object]:
    return {
        "id": claim.id,
        "about": {"level": claim.about.level, "id": claim.about.id},
        "question": claim.question,
        "statement": claim.statement,
        "verdict": claim.verdict,
        "support": claim.support,
        "grade": claim.grade if claim.verdict == "holds" else None,
        "stability": claim.stability,
    }


def _after_arguments(claim: Claim) -> dict[str, object]:
    return {
        "limits": [limit.says for limit in claim.limits],
        "lifts": [limit.lifts for limit in claim.limits],
        "misleads_when": list(claim.misleads_when),
        "alternatives": list(claim.alternatives),
        "sources": list(claim.sources),
        "grade_without_limits": claim.unlimited,
        "rivals": [plain_rival(rival) for rival in claim.rivals],
        "turned_by": [plain_turning(turning) for turning in claim.turnings],
        "next_step": None if claim.next_step is None else brief_step(claim.next_step),
    }


def brief_step(step: NextStep) -> dict[str, object]:
    return {
        "step": step.id,
        "about": {"level": step.about.level, "id": step.about.id},
        "says": step.says,
        "cost": step.cost,
    }


def plain_step(step: NextStep) -> dict[str, object]:
    """One piece of work as `claims.json` and `rank --json` give it."""
    return {
        **brief_step(step),
        "cost_in_words": COSTS[step.cost - 1],
        "questions": list(step.questions),
        "lifts": list(step.lifts),
        "turns": list(step.turns),
    }


def plain_rival(rival: Rival) -> dict[str, object]:
    return {
        "claim": rival.claim,
        "statement": rival.statement,
        "verdict": rival.verdict,
        "support": rival.support,
        "grade": rival.grade,
        "balance": rival.balance,
        "for": list(rival.speak_for),
        "against": list(rival.speak_against),
    }


def plain_turning(turning: Turning) -> dict[str, object]:
    return {
        "says": turning.says,
        "items": turning.items,
        "taxon": turning.taxon,
        "part": turning.part,
        "condition": turning.condition,
        "sample": turning.sample,
        "verdict": turning.verdict,
        **({"by_sample": dict(turning.by_sample)} if turning.by_sample else {}),
    }
