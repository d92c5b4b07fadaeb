"""Readings in a language of its own: the clause, the reason and the rival of each."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Argument
from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling import setting
from narrate.telling.contexts import NOT_NEWS
from narrate.telling.finds import total
from narrate.telling.foods import lead_of_seeds
from narrate.telling.fruits import FEW as FEW_FRUITS
from narrate.telling.fruits import MANY_KINDS, chief_finds, least_fruits
from narrate.telling.hints import FEW, KINDS
from narrate.telling.how_widely import word_of
from narrate.telling.page import Page
from narrate.telling.plan import (
    POOR,
    STORED_ONLY,
    UNSETTLED,
    Reading,
    competes,
    is_hint,
    reading_whether_told,
    readings,
)
from narrate.telling.rivals import may_both_be
from narrate.telling.same_event import is_event_told
from narrate.telling.seasons_kept import chief_nuts, is_of_fresh, is_of_what_keeps, is_told_to_keep
from narrate.telling.sentences import without_seasons_told_twice
from narrate.telling.translated_finds import find_told
from narrate.telling.translated_words import grammar_of, is_said, say, say_fresh, worded


def theme_told(page: Page, questions: Sequence[str], *, at_most: int = 3) -> list[Sentence]:
    """The firmest readings of some questions, each with its heaviest reason that the pack can say; no hints."""
    sentences: list[Sentence] = []
    items = [r for r in told_readings(page) if r.claim.question in questions and r.rank > 1]
    items = [r for r in without_seasons_told_twice(page, items) if not is_hint(r.claim)][:at_most]
    kept = [r.claim.id for r in items if is_of_what_keeps(page, r.claim) and not is_told_to_keep(page)]
    for item in items:
        page.told.add(item.claim.id)
        lead = framed(page, item)
        said = [_reason(page, argument) for argument in item.claim.held("for")]
        fresh = [text for text in said if text and text not in page.reasons_told and not is_event_told(page, text)]
        reason = fresh[0] if fresh else ""
        page.reasons_told.add(reason)
        if reason:
            sentences += say(page, [item.claim.id], "because", lead=lead, reason=reason)
        else:
            sentences += page.say([item.claim.id], grammar_of(page).finished(lead))
        if item.claim.stability is not None and item.claim.stability < UNSETTLED:
            sentences += say_fresh(page, [item.claim.id], "close")
        sentences += say(page, kept, "keeps") if item.claim.id in kept[-1:] else _nuts_keep(page, item)
        sentences += _of_few_fruits(page, item)
        sentences += _rival(page, item, items)
    return sentences


def _of_few_fruits(page: Page, item: Reading) -> list[Sentence]:
    """Where seeds of soft fruit speak for a season or a food and may be of few fruits, that one holds many; once."""
    is_asked = item.claim.question == "season" or any(a.rule == MANY_KINDS for a in item.claim.held("for"))
    if not is_asked or page.subject.level in ("phase", "site") or is_said(page, "few fruits"):
        return []
    tallies = chief_finds(page, item.claim)
    fruits, seeds = least_fruits(page, tallies), total(tallies)
    is_few = any(a.rule == MANY_KINDS for a in item.claim.held("for")) or fruits < min(FEW_FRUITS, seeds)
    return say(page, [item.claim.id], "few fruits") if is_few and fruits < seeds else []


def hints_told(page: Page, questions: Sequence[str]) -> list[Sentence]:
    """What the remains suggest and another draw of the counts would undo, as no more than that, in one sentence."""
    hints = [r for r in told_readings(page) if r.claim.question in questions and is_hint(r.claim)]
    page.told.update(r.claim.id for r in hints)
    sentences = faint(page, hints, "faint") if hints else []
    kept = [r.claim.id for r in hints if is_of_what_keeps(page, r.claim)]
    has_said = any(is_said(page, name) for name in ("keeps", "nuts keep", "no season"))
    return sentences + (say(page, kept, "hint keeps") if kept and not has_said else [])


def faint(page: Page, hints: Sequence[Reading], name: str, **filled: str) -> list[Sentence]:
    """Hints in one of the pack's wordings, with what few finds they rest on where those are one or two kinds."""
    known = grammar_of(page).language.statements
    clauses = [worded(page, "faint that", clause=known[r.claim.statement]) for r in hints]
    listed = grammar_of(page).listed(said[0] for said in clauses if said)
    refs = [r.claim.id for r in hints]
    sentences = say(page, refs, name, clauses=listed, **filled) if listed else []
    behind = [t for r in hints for t in r.behind if t.counted]
    if not sentences or page.subject.level == "context" or len(hints) > 1 or not 0 < len(behind) <= KINDS:
        return sentences
    if sum(t.counted for t in behind) > FEW:
        return sentences
    found = [f"{find_told(page, t)}{_of_samples(page, t)}" for t in behind]
    return sentences + say(page, [*refs, *(t.ref for t in behind)], "faint rests", list=grammar_of(page).listed(found))



def _of_samples(page: Page, tally: Tally) -> str:
    name = "of one sample" if tally.samples == 1 else "of samples"
    said = worded(page, name, count=grammar_of(page).about(tally.samples, "f"))
    return f" {said[0]}" if said and tally.samples else ""


def no_season_told(page: Page) -> list[Sentence]:
    """Of a context: that all its plants keep, so that it has no season; of few finds beside a season alone."""
    kept = page.dig.claims.find(page.subject, STORED_ONLY)
    if kept is None or kept.verdict != "holds":
        return []
    seasons = [claim for claim in page.dig.claims.holding(page.subject) if claim.question == "season"]
    if setting.items_counted(page) < POOR and not any(claim.id in page.told for claim in seasons):
        return []
    return say(page, [kept.id], "no season")


def _nuts_keep(page: Page, item: Reading) -> list[Sentence]:
    """Where autumn is read from a few soft fruits beside many nuts, that nuts ripen then as well, and keep."""
    nuts = chief_nuts(page, item.claim) if page.subject.level == "context" and is_of_fresh(page, item.claim) else None
    return say(page, [item.claim.id, nuts.ref], "nuts keep") if nuts is not None else []


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
    rivals = [r for r in found if r is not None and r.rank > 1 and competes(item, r) and not is_hint(r.claim)]
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
    """What the pack has a clause for, firmest first, hints among it."""
    held = readings(page, page.dig.claims.holding(page.subject))
    return [r for r in held if r.claim.statement in known and r.claim.statement not in NOT_NEWS]


def framed(page: Page, item: Reading, clause: str = "") -> str:
    """The clause of a reading, or one that tells the same of what was found, in a frame of its grade."""
    frames = page.audience.frames[item.claim.grade]
    clause = clause or grammar_of(page).language.statements[item.claim.statement]  # type: ignore[index]
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
