"""The ranking as plain data, in format 'narrate ranking 1'."""

from __future__ import annotations

from narrate.deposit.plain_claims import plain_step
from narrate.model.strength import Ranking, Strength

FORMAT = "narrate ranking 1"


def plain_ranking(ranking: Ranking) -> dict[str, object]:
    """Every part with its value, words and points, and their sum; a subject without a next step is best left."""
    return {
        "format": FORMAT,
        "parts": [{"id": part.id, "explained": part.explained} for part in ranking.meant],
        "points_at_most": ranking.most,
        "contexts": [_plain(strength) for strength in ranking.of("context")],
        "samples": [_plain(strength) for strength in ranking.of("sample")],
        "dig": [plain_step(step) for step in ranking.of_dig],
    }


def _plain(strength: Strength) -> dict[str, object]:
    return {
        "id": strength.subject.id,
        "kind": strength.kind,
        "points": strength.points,
        "parts": {part.id: {"value": part.value, "text": part.text, "points": part.points} for part in strength.parts},
        "firmest": strength.firmest_claim or None,
        "rarest": strength.rarest or None,
        "turned_by": strength.turned_by or None,
        "next_step": None if strength.next_step is None else plain_step(strength.next_step),
    }
