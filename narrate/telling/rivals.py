"""Rival readings: set side by side where both hold, named where one is the chief doubt of the other."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.narrative import Sentence
from narrate.telling.behind import remains_looked_at
from narrate.telling.builds import added
from narrate.telling.frames import frame, noun_of
from narrate.telling.page import Page
from narrate.telling.plan import Reading, competes, reading_whether_told, rivals_of
from narrate.telling.reasons import page_text, reasons_for


def rival_sentences(page: Page, lead: Reading) -> list[Sentence]:
    """The rival of a reading: side by side where both hold, named where it is the chief doubt."""
    holding = rivals_of(page, lead)
    if holding:
        # Waste of work has no paragraph of its own beside the fire that it was put on; foods have theirs.
        waste = [r for r in holding[1:] if r.claim.question == "processing" and lead.claim.question == "fuel"][:1]
        page.rivals.update(frozenset((holding[0].claim.id, r.claim.id)) for r in waste)
        sentences: list[Sentence] = []
        for rival in [holding[0], *waste]:
            page.told.add(rival.claim.id)
            sentences += _side_by_side(page, lead, rival)
        return sentences + beside_sentences(page, [lead, holding[0], *waste])
    if page.is_plain:
        return beside_sentences(page, [lead])
    if lead.rank < 2:
        return []
    for name in lead.claim.alternatives:
        statement = page.dig.packs.statements.get(name)
        claim = page.dig.claims.find(page.subject, name)
        if statement is None or claim is None or claim.verdict == "holds" or claim.id in page.told:
            continue
        if not _is_doubt(page, lead, claim):
            continue
        page.told.add(claim.id)
        refs = [lead.claim.id, claim.id]
        if claim.verdict == "cannot tell":
            return page.say(
                refs,
                f"whether {statement.clause} instead, or as well, cannot be told from these counts",
                f"the counts leave open whether {statement.clause} as well",
            )
        reason = page_text(page, claim.held("for")[0])
        return page.say(refs, f"for the alternative, {statement.noun}, speaks only that {reason}")
    return []


def beside_sentences(page: Page, told: Sequence[Reading]) -> list[Sentence]:
    """For visitors the everyday account beside a reading, where no reading of the page says as much: `beside <id>`."""
    if not page.is_plain or any(item.is_food for item in told):
        return []
    lead = told[0]
    wordings = page.turns(f"beside {lead.claim.statement}")
    return page.say([lead.claim.id], *wordings) if any(wordings) else []


def told_rival_sentences(page: Page, items: Sequence[Reading], *, are_last: bool = False) -> list[Sentence]:
    """
    That a reading explains the same remains as a rival that was told under another theme of the page.

    are_last: the reading was told just before and needs no name.
    """
    if page.is_plain:
        return []
    here = {item.claim.id for item in items}
    for item in items:
        for rival in item.claim.rivals:
            claim = page.dig.claims.by_id.get(rival.claim)
            if claim is None or claim.verdict != "holds" or rival.claim in here or rival.claim not in page.told:
                continue
            other = reading_whether_told(page, claim)
            pair = frozenset((item.claim.id, rival.claim))
            if other is not None and pair not in page.rivals and competes(item, other):
                page.rivals.add(pair)
                one, against = noun_of(page, [item]), noun_of(page, [other])
                if may_both_be(item, other):
                    return page.say(
                        [item.claim.id, rival.claim],
                        f"the same remains were read above as {against}, and one may have followed the other",
                        f"{one} and {against} draw on the same remains, and both may be true of them"
                        if " and " not in f"{one}{against}"
                        else "",
                        f"{one} rests on the same remains as {against}, and neither rules out the other",
                    )
                return page.say(
                    [item.claim.id, rival.claim],
                    f"the same remains would follow from {against}" if are_last else "",
                    f"{against} would leave the same remains" if are_last else "",
                    f"{one} has a rival in {against}, which explains the same remains" if not are_last else "",
                    f"what is read here as {one} may as well be {against}" if not are_last else "",
                )
    return []


def rivals_within(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """Says of two readings in one sentence that they are rival accounts of the same remains, where they are."""
    if page.is_plain:
        return []
    for i, one in enumerate(group):
        for other in group[i + 1 :]:
            if other.claim.statement in one.statement.rivals and competes(one, other):
                pair = f"{noun_of(page, [one])} and {noun_of(page, [other])}"
                return page.say([one.claim.id, other.claim.id], f"{pair} are rival accounts of the same remains")
    return []


def _side_by_side(page: Page, lead: Reading, rival: Reading) -> list[Sentence]:
    refs = [lead.claim.id, rival.claim.id]
    page.rivals.add(frozenset(refs))
    is_weaker = rival.rank < lead.rank and any(
        r.statement == rival.claim.statement and r.balance == "this" for r in lead.claim.rivals
    )
    if page.is_plain:
        # The rival in the words of its own grade: what is read firmly is no 'perhaps'.
        said = frame(page, [rival], "also") or frame(page, [rival], "lead")
        if is_weaker:
            return page.say(refs, f"{said}, though less speaks for that", f"{said}, but that is the weaker reading")
        if may_both_be(lead, rival):
            return page.say(refs, f"{said}; both may be true", f"{said}: the two can go together")
        return page.say(
            refs,
            f"{said}, and the finds alone cannot settle it",
            f"{said}: the two leave much the same trace",
            f"{said}, for both look the same in the ground",
        )
    reasons = reasons_for(page, rival, most=1)
    sentences = added(page, [rival], reasons)
    one, other = noun_of(page, [lead]), noun_of(page, [rival])
    pair = f"{one} and {other}" if " and " not in f"{one}{other}" else f"{one}, and {other}"
    if is_weaker:
        return sentences + page.say(
            refs,
            f"of the two rival readings, {pair}, the second is the weaker",
            f"as an account of the same remains, {other} is weaker than {one}",
        )
    if lead.claim.question == rival.claim.question == "fuel":
        return sentences + page.say(refs, "one fire may have been both, and the counts do not part the two")
    if may_both_be(lead, rival):
        return sentences + page.say(
            refs,
            "neither rules out the other, for what was left of the one may have served the other",
            "both may be true of the same remains, one after the other, and the counts do not part them",
            f"neither rules out the other: the same remains may have served {one} after {other}"
            if lead.claim.question == "fuel"
            else f"neither rules out the other: the same remains may have served {other} after {one}",
        )
    return sentences + page.say(
        refs,
        "the counts do not decide between these two",
        f"{pair} are rival readings, and either would leave these remains",
        "either of the two would leave such remains",
    )


_SUPPORTS = GRADE_NAMES.index("supports")


def may_both_be(one: Reading, other: Reading) -> bool:
    """
    Whether two rival readings may be true of the same remains, one after the other.

    What was left of a meal or of shelling may have been burned as fuel; a smudge fire burns its cobs as well.
    """
    return (one.claim.question == "fuel") or (other.claim.question == "fuel")


def _is_doubt(page: Page, lead: Reading, claim: Claim) -> bool:
    """
    Whether a rival that does not hold is worth a word: it explains the same remains, and something speaks for it or
    nothing could be said of it.
    """
    behind = remains_looked_at(claim, page.dig.packs, page.found.tallies)
    same = {(t.taxon, t.part) for t in behind} & {(t.taxon, t.part) for t in lead.behind}
    if not same and (behind or lead.behind):
        return False
    if claim.question == "fuel" and claim.verdict == "cannot tell" and not _is_fire(page):
        return False
    if claim.statement == "food.burned-store" and page.subject.level == "context" and _is_fire(page):
        return False  # nobody keeps a store in a place made for fire
    return (claim.verdict == "cannot tell" and lead.rank >= _SUPPORTS) or bool(claim.held("for"))


def _is_fire(page: Page) -> bool:
    """Whether the subject is of a place made for fire; elsewhere nobody asks what kind of fire burned."""
    kinds = page.dig.packs.words.context_kinds
    if page.subject.level != "context":
        return True
    own = [c.kind for c in page.dig.project.contexts if c.id == page.subject.id]
    return any("thermal" in kinds[kind].traits for kind in own if kind in kinds)
