"""Notes that a reader may take to speak against a reading, and that leave it as it is."""

from __future__ import annotations

from narrate.model.narrative import Sentence
from narrate.model.observations import Observation
from narrate.telling.page import Page


def not_against_sentences(page: Page, seen: Observation, ref: str) -> list[Sentence]:
    """'That does not speak against burning in place, for a fire that smoulders … does not redden the ground'."""
    if page.is_plain or page.is_review or not seen.means:
        return []
    claims = [page.dig.claims.find(page.subject, statement) for statement in seen.not_against]
    told = [claim for claim in claims if claim is not None and claim.id in page.told]
    nouns = [page.dig.packs.statements[claim.statement].noun for claim in told]
    if not told:
        return []
    return page.say(
        [ref, *(claim.id for claim in told)], f"that does not speak against {page.listed(nouns)}, for {seen.means}"
    )
