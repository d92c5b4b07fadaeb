"""`claims.json`: every claim with its evidence down to the rows, in format 'narrate claims 1'."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Iterator
from functools import partial

from narrate.deposit.claim_texts import ClaimTexts
from narrate.deposit.plain_claims import dumped, plain_claim
from narrate.judging.claims_by_subject import ClaimsBySubject
from narrate.model.claims import Claim, Claims
from narrate.model.ids import Subject

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
            yield claim.about, partial(_made_line, claim, cited)
        return
    line = ClaimTexts(columns, cited).line
    for subject in columns:
        yield subject, lambda subject=subject: SEPARATOR.join(map(line, columns[subject]))  # type: ignore[misc]


def _made_line(claim: Claim, cited: Collection[str]) -> str:
    return dumped(plain_claim(claim, cited))
