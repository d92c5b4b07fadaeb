"""Readings in a language of its own: the clause, the reason and the rival of each."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Argument
from narrate.model.narrative import Sentence
from narrate.telling.contexts import NOT_NEWS
from narrate.telling.foods import lead_of_seeds
from narrate.telling.how_widely import word_of
from narrate.telling.page import Page
from narrate.telling.plan import UNSETTLED, Reading, competes, reading_whether_told, readings
from narrate.telling.rivals import may_both_be
from narrate.telling.sentences import without_seasons_told_twice
from narrate.telling.translated_words import grammar_of, say, say_fresh, worded


def theme_told(page: Page, questions: Sequence[str], *, at_most: int = 3) -> list[Sentence]:
    """The firmest readings of some questions, each with its heaviest reason that the pack can say."""
    sentences: list[Sentence] = []
    items = [r for r in told_readings(page) if r.claim.question in questions and r.rank > 1]
    for item in without_seasons_told_twice(page, items)[:at_most]:
        page.told.add(item.claim.id)
        lead = framed(page, item)
        said = [_reason(page, argument) for argument in item.claim.held("for")]
        reason = next((text for text in said if text and text not in page.reasons_told), "")
        page.reasons_told.add(reason)
        if reason:
            sentences += say(page, [item.claim.id], "because", lead=lead, reason=reason)
        else:
            sentences += page.say([item.claim.id], grammar_of(page).finished(lead))
        if item.claim.stability is not None and item.claim.stability < UNSETTLED:
            sentences += say_fresh(page, [item.claim.id], "close")
        sentences += _rival(page, item, items[:at_most])
    return sentences


def _reason(page: Page, argument: Argument) -> str:
    """What a rule saw, with the word for its share of the samples; empty where the pack has none."""
    text = grammar_of(page).language.reasons.get(argument.rule, "")
    if "{widely}" not in text:
        return text
    widely = worded(page, f"widely {word_of(argument.evidence)}")
    return text.replace("{widely}", widely[0]) if widely else ""


def _rival(page: Page, item: Reading, told_here: Sequence[Reading]) -> list[Sentence]:
    """The firmest rival of a reading: that it is one where it was told just before, else its clause as well."""
    known = grammar_of(page).language.statements
    names = dict.fromkeys((*item.claim.alternatives, *item.statement.rivals))
    claims = [page.dig.claims.find(page.subject, name) for name in names if name in known]
    found = [reading_whether_told(page, c) for c in claims if c is not None and c.verdict == "holds"]
    rivals = [r for r in found if r is not None and r.rank > 1 and competes(item, r)]
    rivals.sort(key=lambda r: (-r.rank, -r.claim.support))
    if not rivals or frozenset((item.claim.id, rivals[0].claim.id)) in page.rivals:
        return []
    rival, here = rivals[0], [r.claim.id for r in told_here]
    refs = [item.claim.id, rival.claim.id]
    both = " both" if may_both_be(item, rival) else ""
    if rival.claim.id in here:
        if here.index(rival.claim.id) != here.index(item.claim.id) - 1:
            return []  # it is said of the two behind the second
        page.rivals.add(frozenset(refs))
        return say(page, refs, f"rival again{both}")
    page.rivals.add(frozenset(refs))
    if rival.claim.id in page.told:
        return []
    page.told.add(rival.claim.id)
    return say(page, refs, f"rival{both}", lead=framed(page, rival))


def told_readings(page: Page) -> list[Reading]:
    known = grammar_of(page).language.statements
    held = readings(page, page.dig.claims.holding(page.subject))
    return [r for r in held if r.claim.statement in known and r.claim.statement not in NOT_NEWS]


def framed(page: Page, item: Reading) -> str:
    frames = page.audience.frames[item.claim.grade]
    clause = grammar_of(page).language.statements[item.claim.statement]  # type: ignore[index]
    turn = (page.position + len(page.said)) % len(frames)
    ordered = [*frames[turn:], *frames[:turn]]
    fresh = [text for text in ordered if not page.worn(text.replace("{clause}", clause))]
    return (fresh or ordered)[0].replace("{clause}", clause + _above_all(page, item))


def _above_all(page: Page, item: Reading) -> str:
    """', sobre todo las de quenopodio' where visitors are told so in English too."""
    lead = lead_of_seeds(page, item) if page.subject.level == "context" else None
    plant = grammar_of(page).language.plants.get(lead) if lead is not None else None
    said = worded(page, "above all", plant=plant.one) if plant is not None else []
    return said[0] if said else ""
