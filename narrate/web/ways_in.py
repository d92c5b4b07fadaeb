"""The findings with which the first page of a site begins."""

from __future__ import annotations

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.telling.borne import EXPECTED
from narrate.telling.plan import is_hint
from narrate.web.views import STORIES


def ways_in(edition: Edition, most: int) -> tuple[Claim, ...]:
    """
    The best signs of the story of the dig, two of them; the firmest claims that it tells of the dig or of phases, each
    of another question; then such as it does not tell. The firmest of all these leads.
    """
    claims = [
        claim
        for claim in edition.claims.all_holding(("phase", "site"))
        # What the story tells as a faint sign is no finding to begin with, nor is that wood burned in fires.
        if claim.question not in ("work", "integrity")
        and claim.statement not in EXPECTED
        and not _is_faint(edition, claim)
    ]
    story = edition.narrative(STORIES[edition.audience][-1], Subject(level="site", id=SITE))
    told = {ref for s in story.sentences() for ref in s.refs} if story is not None else set()
    ranked = sorted(claims, key=lambda c: (c.id not in told, c.about.level != "site", -c.support, c.id))
    # What changed is told of two things before anything else is: one rose, and most often another fell.
    changed = [claim for claim in ranked if claim.question == "change" and claim.id in told][:2]
    chosen: dict[str, Claim] = {claim.id: claim for claim in (*_best_signs(edition, story), *changed)}
    for claim in ranked:
        if claim.question != "change" or not changed:
            chosen.setdefault(claim.question, claim)
    for claim in ranked:
        if len(chosen) < most and claim.statement not in {c.statement for c in chosen.values()}:
            chosen[claim.id] = claim
    return tuple(sorted(list(chosen.values())[:most], key=lambda claim: -GRADE_NAMES.index(claim.grade)))


def _best_signs(edition: Edition, story: Narrative | None) -> list[Claim]:
    """What single places tell best, by the story: two statements at most, the firmest first."""
    refs = [
        ref
        for section in (story.sections if story is not None else ())
        for paragraph in (section.paragraphs if section.id == "firmest" else ())
        for sentence in paragraph
        for ref in sentence.refs
    ]
    claims = [claim for claim in map(edition.claims.by_id.get, dict.fromkeys(refs)) if claim is not None]
    of_places = [claim for claim in claims if claim.about.level == "context" and claim.verdict == "holds"]
    first = {claim.statement: claim for claim in reversed(of_places)}
    best = sorted(first.values(), key=lambda claim: (-GRADE_NAMES.index(claim.grade), refs.index(claim.id)))
    return best[:BEST]


BEST = 2
"""Findings of single places that a site begins with."""


def _is_faint(edition: Edition, claim: Claim) -> bool:
    """Whether a claim is a mere hint, or one of the whole dig is no more than that in every phase that holds it."""
    if is_hint(claim) or claim.about.level != "site":
        return is_hint(claim)
    phases = (Subject(level="phase", id=phase.id) for phase in edition.project.phases)
    found = [edition.claims.find(phase, claim.statement) for phase in phases]
    held = [of_phase for of_phase in found if of_phase is not None and of_phase.verdict == "holds"]
    return bool(held) and all(is_hint(of_phase) for of_phase in held)
