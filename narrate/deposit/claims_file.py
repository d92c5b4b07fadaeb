"""`claims.json`: every claim with its evidence down to the rows, in format 'narrate claims 1'."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Iterator
from functools import partial

from narrate.deposit.argument_texts import ArgumentTexts, plain_argument
from narrate.judging.claims_made import ClaimsBySubject
from narrate.model.claims import Claim, Claims, Rival, Turning
from narrate.model.ids import Subject
from narrate.model.next_steps import COSTS, NextStep

FORMAT = "narrate claims 1"
LEFT_OUT = (
    "Evidence is empty for arguments that fail or cannot tell, of claims that do not hold and that no narrative cites; "
    "rows are empty for all arguments that do not hold. 'narrate explain FOLDER CLAIM' gives all of it."
)
"""Said at the head of the file."""
HEAD = f'{{"format": "{FORMAT}", "left_out": {json.dumps(LEFT_OUT)},\n "claims": [\n  '
SEPARATOR = ",\n  "
TAIL = "\n ]}\n"
NOTHING = f'{{"format": "{FORMAT}", "claims": []}}\n'
"""The file where there are no claims."""


def claims_json(claims: Claims, cited: Collection[str] = ()) -> str:
    """The text of `claims.json`, whole; see `claims_text`."""
    return "".join(claims_text(claims, cited))


def claims_text(claims: Claims, cited: Collection[str] = ()) -> Iterator[str]:
    """
    The text of `claims.json` in pieces: one claim a line, in the order of the claims, so that two states compare line
    by line.

    Missing values are null; an interval that is open above has a null high end. A claim that does not hold has no
    grade. Rows stand with the arguments that hold, and evidence with those and with all of claims that somebody may
    follow back: that hold, or that are cited; `narrate explain` gives those of all others. Nothing that was written is
    kept, so that the largest dig needs no more memory than the smallest.

    cited:  ids of claims that narratives rest on.
    """
    before = HEAD
    for _, text in subject_texts(claims, frozenset(cited)):
        written = text()
        if written:
            yield before
            yield written
            before = SEPARATOR
    yield NOTHING if before == HEAD else TAIL


def subject_texts(claims: Claims, cited: frozenset[str]) -> Iterator[tuple[Subject, Callable[[], str]]]:
    """What gives the claims of each subject, one a line, in the order of the claims."""
    columns = claims.columns
    if not isinstance(columns, ClaimsBySubject):
        for claim in claims:
            yield claim.about, partial(_line, claim, partial(_made_arguments, cited=cited))
        return
    arguments_of = ArgumentTexts(columns, cited).of
    for subject in columns:
        yield subject, lambda subject=subject: SEPARATOR.join(  # type: ignore[misc]
            _line(claim, arguments_of) for claim in columns[subject]
        )


def _line(claim: Claim, arguments_of: Callable[[Claim], str]) -> str:
    head, tail = _dumped(_before_arguments(claim)), _dumped(_after_arguments(claim))
    return f'{head[:-1]}, "arguments": [{arguments_of(claim)}], {tail[1:]}'


def _dumped(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(", ", ": "))


def _made_arguments(claim: Claim, cited: Collection[str]) -> str:
    return ", ".join(_dumped(argument) for argument in _plain_arguments(claim, cited))


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
