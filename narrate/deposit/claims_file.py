"""`claims.json`: every claim with its evidence down to the rows, in format 'narrate claims 1'."""

from __future__ import annotations

import json
from collections.abc import Iterator

from narrate.deposit.argument_texts import ArgumentTexts, plain_argument
from narrate.judging.claims_made import ClaimsBySubject
from narrate.model.claims import Claim, Claims, Rival, Turning
from narrate.model.next_steps import COSTS, NextStep

FORMAT = "narrate claims 1"


def claims_json(claims: Claims) -> str:
    """The text of `claims.json`, whole; see `claims_text`."""
    return "".join(claims_text(claims))


def claims_text(claims: Claims) -> Iterator[str]:
    """
    The text of `claims.json` in pieces: one claim a line, in the order of the claims, so that two states compare line
    by line.

    Missing values are null; an interval that is open above has a null high end. A claim that does not hold has no
    grade. Rows stand with the arguments that hold; `narrate explain` gives those of all others. Nothing that was
    written is kept, so that the largest dig needs no more memory than the smallest.
    """
    arguments_of = ArgumentTexts(claims.columns).of if isinstance(claims.columns, ClaimsBySubject) else _made_arguments
    before = f'{{"format": "{FORMAT}",\n "claims": [\n  '
    is_empty = True
    for claim in claims:
        is_empty = False
        head, tail = _dumped(_before_arguments(claim)), _dumped(_after_arguments(claim))
        yield f'{before}{head[:-1]}, "arguments": [{arguments_of(claim)}], {tail[1:]}'
        before = ",\n  "
    yield f'{{"format": "{FORMAT}", "claims": []}}\n' if is_empty else "\n ]}\n"


def _dumped(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(", ", ": "))


def _made_arguments(claim: Claim) -> str:
    return ", ".join(_dumped(plain_argument(argument)) for argument in claim.arguments)


def plain_claim(claim: Claim) -> dict[str, object]:
    """One claim as `claims.json` and `explain --json` give it."""
    arguments = [plain_argument(argument) for argument in claim.arguments]
    return {**_before_arguments(claim), "arguments": arguments, **_after_arguments(claim)}


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
