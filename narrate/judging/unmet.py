"""Arguments that do not hold, with what each was wanting: no more of them is made."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice
from typing import TYPE_CHECKING

from narrate.judging.facts import CANNOT_TELL, FAILS, HOLDS
from narrate.model.claim_columns import Unmet
from narrate.model.ids import RuleId, StatementId
from narrate.model.rules import Verdict

if TYPE_CHECKING:
    from narrate.judging.claims_made import ClaimMaker


def unmet(maker: ClaimMaker, unit: int, id: StatementId, verdict: Verdict, most: int) -> Iterator[Unmet]:
    """Arguments of a claim that cannot tell, or that fail, in the order of `Claim.arguments`."""
    judged, looked_at = maker.judged.statements[id], maker.looked_at
    code = CANNOT_TELL if verdict == "cannot tell" else FAILS
    for number in maker.order(judged, unit):
        if judged.codes.item(number, unit) == code:
            rule = judged.rules[number]
            asked = looked_at.asked(rule)
            wanting = (at for at, one in enumerate(asked) if one.codes.item(unit) != HOLDS)
            made = tuple((at, asked[at].evidence(looked_at, unit)) for at in islice(wanting, most))
            yield Unmet(RuleId(rule.id), made, len(asked))
