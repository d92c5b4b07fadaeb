"""`claims.json`: every claim with its evidence down to the rows, in format 'narrate claims 1'."""

from __future__ import annotations

import json

from narrate.model.claims import Argument, Claim, Claims, Evidence, Rival, Turning
from narrate.model.next_steps import COSTS, NextStep

FORMAT = "narrate claims 1"


def claims_json(claims: Claims) -> str:
    """
    The text of `claims.json`: one claim a line, in the order of the claims, so that two states compare line by line.

    Missing values are null; an interval that is open above has a null high end. A claim that does not hold has no grade.
    Rows stand with the arguments that hold; `narrate explain` gives those of all others.
    """
    lines = [json.dumps(plain_claim(claim), ensure_ascii=False, separators=(", ", ": ")) for claim in claims]
    body = ",\n  ".join(lines)
    return (
        f'{{"format": "{FORMAT}",\n "claims": [\n  {body}\n ]}}\n'
        if lines
        else f'{{"format": "{FORMAT}", "claims": []}}\n'
    )


def plain_claim(claim: Claim) -> dict[str, object]:
    """One claim as `claims.json` and `explain --json` give it."""
    return {
        "id": claim.id,
        "about": {"level": claim.about.level, "id": claim.about.id},
        "question": claim.question,
        "statement": claim.statement,
        "verdict": claim.verdict,
        "support": claim.support,
        "grade": claim.grade if claim.verdict == "holds" else None,
        "stability": claim.stability,
        "arguments": [_argument(argument) for argument in claim.arguments],
        "limits": [limit.says for limit in claim.limits],
        "lifts": [limit.lifts for limit in claim.limits],
        "misleads_when": list(claim.misleads_when),
        "alternatives": list(claim.alternatives),
        "sources": list(claim.sources),
        "grade_without_limits": claim.unlimited,
        "rivals": [_rival(rival) for rival in claim.rivals],
        "turned_by": [_turning(turning) for turning in claim.turnings],
        "next_step": None if claim.next_step is None else _brief(claim.next_step),
    }


def _brief(step: NextStep) -> dict[str, object]:
    return {
        "step": step.id,
        "about": {"level": step.about.level, "id": step.about.id},
        "says": step.says,
        "cost": step.cost,
    }


def plain_step(step: NextStep) -> dict[str, object]:
    """One piece of work as `claims.json` and `rank --json` give it."""
    return {
        "step": step.id,
        "about": {"level": step.about.level, "id": step.about.id},
        "says": step.says,
        "cost": step.cost,
        "cost_in_words": COSTS[step.cost - 1],
        "questions": list(step.questions),
        "lifts": list(step.lifts),
        "turns": list(step.turns),
    }


def _rival(rival: Rival) -> dict[str, object]:
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


def _turning(turning: Turning) -> dict[str, object]:
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


def _argument(argument: Argument) -> dict[str, object]:
    return {
        "rule": argument.rule,
        "direction": argument.direction,
        "weight": argument.weight,
        "verdict": argument.verdict,
        "stability": argument.share_holding,
        "counted_with": argument.counted_with,
        "says": argument.says,
        "evidence": [_evidence(evidence, with_rows=argument.verdict == "holds") for evidence in argument.evidence],
    }


def _evidence(evidence: Evidence, *, with_rows: bool) -> dict[str, object]:
    return {
        "measure": evidence.measure,
        "value": _rounded(evidence.value),
        "low": _rounded(evidence.low),
        "high": _rounded(evidence.high),
        "unit": evidence.unit,
        "n": evidence.n,
        "text": evidence.text,
        "reason": evidence.reason,
        "verdict": evidence.verdict,
        "rows": list(dict.fromkeys(place.row for place in evidence.places)) if with_rows else [],
    }


def _rounded(value: float | None) -> float | None:
    """Six significant digits: enough for any reader, and the same on every machine."""
    return None if value is None else float(f"{value:.6g}")
