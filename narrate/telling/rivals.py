"""Rival readings: set side by side where both hold, named where one is the chief doubt of the other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

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
            sentences += side_by_side(page, lead, rival, are_two=not waste and not _beside(page, [lead, rival]))
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
    wordings = _beside(page, told)
    return page.say([told[0].claim.id], *wordings) if wordings else []


def _beside(page: Page, told: Sequence[Reading]) -> list[str]:
    """The audience's wordings of the everyday account beside a reading; none where it has none to give."""
    if not page.is_plain or any(item.is_food for item in told):
        return []
    rivals = [page.dig.claims.find(page.subject, name) for name in told[0].statement.rivals]
    if any(rival is not None and rival.verdict == "holds" and rival.id in page.told for rival in rivals):
        return []
    return [wording for wording in page.turns(f"beside {told[0].claim.statement}") if wording]


def told_rival_sentences(page: Page, items: Sequence[Reading], *, are_last: bool = False) -> list[Sentence]:
    """
    That a reading explains the same remains as a rival that was told under another theme of the page.

    are_last: the reading was told just before and needs no name.
    """
    if page.is_plain:
        return []
    pairs = list(_told_elsewhere(page, items))
    if not pairs:
        return []
    # That work comes before the fuel made of its waste is said before anything that may merely be true as well.
    item, other = min(pairs, key=lambda pair: pair[0].claim.statement not in pair[1].statement.after)
    page.rivals.add(frozenset((item.claim.id, other.claim.id)))
    refs, one, against = [item.claim.id, other.claim.id], noun_of(page, [item]), noun_of(page, [other])
    if item.claim.statement in other.statement.after:
        unknown = "whether its waste burned for heat or to be rid of it the counts do not tell"
        return page.say(refs, f"{one} comes before {against}, and {unknown}")
    if may_both_be(item, other):
        return page.say(
            refs,
            f"the same remains were read above as {against}, and both may be true of them",
            f"{one} and {against} draw on the same remains, and both may be true of them"
            if " and " not in f"{one}{against}"
            else "",
            f"{one} rests on the same remains as {against}, and both may be true of them",
        )
    return page.say(
        refs,
        f"{against} is its rival, and either would leave these remains" if are_last else "",
        f"{one} has a rival in {against}, and either would leave these remains" if not are_last else "",
    )


def _told_elsewhere(page: Page, items: Sequence[Reading]) -> Iterator[tuple[Reading, Reading]]:
    """Readings with a rival that holds, was told under another theme and has not been set beside them yet."""
    here = {item.claim.id for item in items}
    for item in items:
        for rival in item.claim.rivals:
            claim = page.dig.claims.by_id.get(rival.claim)
            if claim is None or claim.verdict != "holds" or rival.claim in here or rival.claim not in page.told:
                continue
            other = reading_whether_told(page, claim)
            if other is not None and frozenset((item.claim.id, rival.claim)) not in page.rivals:
                if competes(item, other):
                    yield item, other


def rivals_within(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """Says of two readings in one sentence that they are rival accounts of the same remains, where they are."""
    if page.is_plain:
        return []
    for i, one in enumerate(group):
        for other in group[i + 1 :]:
            if other.claim.statement in one.statement.rivals and competes(one, other):
                refs = [one.claim.id, other.claim.id]
                first, second = noun_of(page, [one]), noun_of(page, [other])
                if relation(one, other) in ("both", "before"):
                    return page.say(refs, f"both may be true of the same remains, {first} and {second}")
                part = _one_part(page, one, other)
                if part:
                    first, second = (noun.removeprefix("the use of ") for noun in (first, second))
                    return page.say(refs, f"{part} not tell {first} from {second}: either would leave these remains")
                return page.say(refs, f"{first} and {second} are rivals, and either would leave these remains")
    return []


def _one_part(page: Page, one: Reading, other: Reading) -> str:
    """'Rind alone does', where two readings rest on one part of plants and no other; else nothing."""
    parts = {tally.part for reading in (one, other) for tally in reading.behind}
    known = page.dig.packs.words.parts.get(next(iter(parts))) if len(parts) == 1 else None
    if known is None:
        return ""
    return f"{known.plural} alone {'does' if known.plural == known.id else 'do'}"


Relation = Literal["before", "weaker", "both", "either"]
"""
How a rival stands to a firmer reading or one as firm: work that came before it, the weaker, one that may be true too,
or one of two.
"""


def relation(lead: Reading, rival: Reading) -> Relation:
    """
    The relation of two rivals, worded for every audience by one word: 'before', 'weaker', 'both may be true', 'either'.

    Nobody has shell to burn who has not cracked nuts: what leaves the waste that a reading burns is no weaker than it.
    """
    if rival.claim.statement in lead.statement.after:
        return "before"
    stands = {r.balance for r in lead.claim.rivals if r.statement == rival.claim.statement}
    if rival.rank < lead.rank and "this" in stands:
        return "weaker"
    return "both" if may_both_be(lead, rival) else "either"


def side_by_side(page: Page, lead: Reading, rival: Reading, *, are_two: bool) -> list[Sentence]:
    """are_two: nothing but these two is told of the same remains, so that one may be 'the weaker of the two'."""
    refs = [lead.claim.id, rival.claim.id]
    page.rivals.add(frozenset(refs))
    stands = relation(lead, rival)
    if page.is_plain:
        # The rival in the words of its own grade: what is read firmly is no 'perhaps'.
        said = frame(page, [rival], "also") or frame(page, [rival], "lead")
        if stands == "before":
            first = "such work came first"
            return page.say(refs, f"{said}; {first} in any case", f"{said}: either way, {first}")
        if stands == "weaker":
            if not are_two:
                return page.say(refs, f"{said}, but that is a weaker reading", f"{said}: a weaker reading")
            return page.say(refs, f"{said}, but that is the weaker reading", f"{said}: the weaker reading of the two")
        if stands == "both":
            return page.say(refs, f"{said}; both may be true", f"{said}: both may be true")
        return page.say(refs, f"{said}: these finds fit both", f"{said}, for these finds fit both")
    reasons = reasons_for(page, rival, most=2)
    sentences = added(page, [rival], reasons)
    one, other = noun_of(page, [lead]), noun_of(page, [rival])
    pair = f"{one} and {other}" if " and " not in f"{one}{other}" else f"{one}, and {other}"
    if stands == "before":
        return sentences + page.say(refs, *_of_waste(lead, rival))
    if stands == "weaker":
        return sentences + page.say(
            refs,
            f"of the two rival readings, {pair}, the second is the weaker",
            f"as an account of the same remains, {other} is weaker than {one}",
        )
    if lead.claim.question == rival.claim.question == "fuel":
        return sentences + page.say(refs, "both may be true of one fire, and the counts do not part the two")
    if stands == "both":
        return sentences + page.say(
            refs,
            "both may be true, for what was left of the one may have served the other",
            "both may be true of the same remains, one after the other, and the counts do not part them",
            f"both may be true: the same remains may have served {one} after {other}"
            if lead.claim.question == "fuel"
            else f"both may be true: the same remains may have served {other} after {one}",
        )
    return sentences + page.say(
        refs,
        f"{pair} are rival readings, and either would leave these remains",
        "either of the two would leave these remains",
    )


def _of_waste(lead: Reading, rival: Reading) -> tuple[str, ...]:
    """That what was burned is waste of work, and whether the counts tell why it was burned."""
    waste = "what burned is the waste of such work, done there or elsewhere"
    if lead.rank > rival.rank:
        return (waste, "the fuel is the waste of such work, done there or elsewhere")
    return (
        f"{waste}, and the counts do not tell whether it was burned for its heat or to be rid of it",
        f"{waste}; whether for its heat or to be rid of it, the counts do not tell",
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
    own = page.dig.project.find_context(page.subject.id)
    return own is not None and own.kind in kinds and "thermal" in kinds[own.kind].traits
