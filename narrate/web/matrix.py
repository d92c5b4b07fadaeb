"""Which statements of one question hold where."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from narrate.web.claim_views import ClaimView
from narrate.web.lists import MOST_SHOWN
from narrate.web.views import ContextView
from narrate.web.wording import Wording


@dataclass(frozen=True, slots=True, kw_only=True)
class MatrixView:
    """Claims of one question over all contexts."""

    question: str
    asked: str
    columns: tuple[str, ...]
    """Titles of the statements that hold in at least one context."""
    rows: tuple[tuple[ContextView, tuple[ClaimView | None, ...]], ...]
    """Contexts where at least one holds, with the claim of each column; None where it does not hold."""


def matrix(question: str, contexts: Sequence[ContextView], wording: Wording) -> MatrixView:
    """Statements across, in the order of the packs, and the contexts where at least one holds down."""
    packs = wording.edition.packs
    holding = [
        (context, {c.statement: c for c in context.claims["holds"] if c.question == question}) for context in contexts
    ]
    held = {id for _, claims in holding for id in claims}
    columns = [id for id in packs.statements if id in held]
    if len(holding) > MOST_SHOWN["matrix"]:
        # A page shows the first of them: those that say most.
        holding.sort(key=lambda row: -max((float(claim.support) for claim in row[1].values()), default=0.0))
    return MatrixView(
        question=question,
        asked=packs.questions.get(question, question),
        columns=tuple(wording.statement(id) for id in columns),
        rows=tuple((context, tuple(claims.get(id) for id in columns)) for context, claims in holding if claims),
    )
