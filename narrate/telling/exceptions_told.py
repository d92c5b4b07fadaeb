"""The contexts that stand against a reading of their phase or dig: why, and what is read there instead."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES, Argument, Claim
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.telling import english
from narrate.telling.behind import remains_behind, remains_looked_at
from narrate.telling.borne import EXPECTED, NAMED, Borne
from narrate.telling.of_stores import only_keeping
from narrate.telling.page import Page
from narrate.telling.places_named import places_named
from narrate.telling.plan import FOODS, is_hint
from narrate.telling.reasons import page_text, without_figures
from narrate.telling.spread import ids_listed


def against_sentences(page: Page, one: Borne) -> list[Sentence]:
    """The contexts in which something speaks against a reading, why, and what is read there instead."""
    by_rule: dict[str, list[tuple[str, Claim, Argument]]] = {}
    for id, claim, argument in one.against:
        by_rule.setdefault(argument.rule, []).append((id, claim, argument))
    groups = sorted(by_rule.values(), key=lambda group: -len(group))[:2]
    if not groups:
        return []
    refs = [claim.id for group in groups for _, claim, _ in group]
    kept = only_keeping(page, groups)
    if kept:
        return page.say(refs, *kept)
    if page.is_plain:
        return _against_for_visitors(page, groups, refs)
    texts = []
    for group in groups:
        where = ids_listed(page, [id for id, _, _ in group], at_most=6)
        reason = page_text(page, group[0][2], contexts=[id for id, _, _ in group])
        comma = "," if where.endswith(" more") else ""
        texts.append(f"in {where}{comma} {reason if len(group) == 1 else without_figures(reason)}")
    everywhere = [id for group in groups for id, _, _ in group]
    joined = english.clauses_joined(texts, oxford=page.names.has_oxford)
    if len(everywhere) == 1:
        joined = page_text(page, groups[0][0][2], contexts=[groups[0][0][0]])
    many = ids_listed(page, everywhere) if len(everywhere) <= NAMED else f"{page.count(len(everywhere))} contexts"
    stand = "stands" if len(everywhere) == 1 else "stand"
    return page.say(
        refs,
        f"{many} {stand} apart: {joined}",
        f"this does not hold everywhere: {joined}" if len(everywhere) > 1 else "",
        f"there are exceptions: {joined}" if len(everywhere) > 1 else "",
    ) + _read_instead(page, groups)


def _against_for_visitors(
    page: Page, groups: Sequence[Sequence[tuple[str, Claim, Argument]]], refs: Sequence[str]
) -> list[Sentence]:
    """'Not every place agrees: in hearth C11, …; in smoke pit C13, …': every exception with its reason."""
    each = _each_instead(page, groups)
    if each:
        return each
    told: list[tuple[str, str]] = []
    for group in groups:
        ids = [id for id, _, _ in group]
        reason = without_figures(page_text(page, group[0][2], contexts=ids))
        if reason and len(group) <= NAMED:
            told.append((places_named(page, ids), reason))
    every = [id for group in groups for id, _, _ in group]
    if not told or len(told) < len(groups):
        return []
    if len(told) == 1:
        where, reason = told[0]
        are = english.agreed(len(every), "is", "are")
        return page.say(
            refs, f"but in {where}, {reason}", f"{where} {are} different: {reason}"
        ) + _read_instead(page, groups)
    (first, *rest) = (_LAY_THERE.sub(r"lay \1 that ", f"in {where} {reason}") for where, reason in told)
    sentences = page.say(refs, f"not every place agrees: {first}", f"but places differ: {first}")
    return sentences + [s for text in rest for s in page.say(refs, text)] + _read_instead(page, groups)


def _each_instead(page: Page, groups: Sequence[Sequence[tuple[str, Claim, Argument]]]) -> list[Sentence]:
    """
    'But hearth C11 speaks of fires fed with corn cobs: nearly all the corn was bits of cob.' Several places, a sentence
    each; none where something else is not read of every one of them.
    """
    each: list[tuple[list[str], str]] = []
    for group in groups:
        ids = [id for id, _, _ in group]
        best = [_instead(page, id, claim) for id, claim, _ in group]
        found = [claim for claim in best if claim is not None]
        reason = without_figures(page_text(page, group[0][2], contexts=ids))
        if len(found) < len(best) or len({claim.statement for claim in found}) > 1 or not reason or len(ids) > NAMED:
            return []
        noun = page.in_own_words(page.dig.packs.statements[found[0].statement].plain_noun)
        speak = f"{english.agreed(len(ids), 'speaks', 'speak')} of {noun} instead"
        where = places_named(page, ids)
        if reason.startswith("this ") or all(_is_reason_of(page, claim, group[0][2], ids) for claim in found):
            told = f"{where} {speak}: {reason}"
        else:
            it = english.agreed(len(ids), "it", "they")
            told = _LAY_THERE.sub(r"lay \1 that ", f"in {where} {reason}") + f", and {it} {speak}"
        each.append(([claim.id for _, claim, _ in group] + [claim.id for claim in found], told))
    if len(each) < SEVERAL:
        return []
    return [s for i, (refs, told) in enumerate(each) for s in page.say(refs, f"but {told}" if i == 0 else told)]


def _is_reason_of(page: Page, claim: Claim, argument: Argument, ids: Sequence[str]) -> bool:
    """Whether what stands against one reading is a reason of another, or says it and more."""
    reason = without_figures(page_text(page, argument, contexts=ids))
    own = [without_figures(page_text(page, argument, contexts=ids)) for argument in claim.held("for")]
    return any(text in reason for text in own if text)


SEVERAL = 2
"""Sorts of exceptions that take a sentence each."""

_LAY_THERE = re.compile(r"(?<=\d )([\w ]+?) lay there that ")
"""'In building C17 lay ears that nobody had shelled': that they lay there was said."""


def _read_instead(page: Page, groups: Sequence[Sequence[tuple[str, Claim, Argument]]]) -> list[Sentence]:
    """'What lay there is read as the burning of stored food (C17) instead': what the exceptions mean."""
    by_noun: dict[str, list[str]] = {}
    refs: list[str] = []
    for group in groups:
        for id, claim, _ in group:
            best = _instead(page, id, claim)
            if best is not None:
                statement = page.dig.packs.statements[best.statement]
                noun = page.in_own_words(statement.plain_noun if page.is_plain else statement.noun)
                by_noun.setdefault(noun, []).append(id)
                refs.append(best.id)
    if not by_noun:
        return []
    if page.is_plain and len(by_noun) > 1:
        nouns = [f"{noun} ({places_named(page, ids)})" for noun, ids in by_noun.items()]
        return page.say(refs, f"what lay there looks more like {page.listed(nouns)}")
    if page.is_plain:
        return page.say(refs, f"what lay there looks more like {next(iter(by_noun))}")
    texts = [f"{noun} ({ids_listed(page, ids)})" for noun, ids in by_noun.items()][:2]
    told = page.listed(texts)
    if page.has_told("is read as") or page.has_told("are read as"):
        return page.say(refs, f"in their place stands {told}" if len(texts) == 1 else f"in their place stand {told}")
    return page.say(refs, f"what lay there is read as {told} instead", f"the remains there are read as {told}")


_INSTEAD = ("food", "processing", "fuel")


def _instead(page: Page, context: str, claim: Claim) -> Claim | None:
    """The firmest other reading that a context makes of the plants that a claim looked at."""
    found = page.dig.found(Subject(level="context", id=context))
    if found is None or claim.question not in _INSTEAD:
        return None
    tallies = [t for t in found.tallies if t.condition in page.dig.ancient]
    looked_at = {t.taxon for t in remains_looked_at(claim, page.dig.packs, tallies)}
    best: Claim | None = None
    for other in page.dig.claims.holding(found.subject):
        if other.question not in _INSTEAD or other.verdict != "holds" or other.statement == claim.statement:
            continue
        rank = GRADE_NAMES.index(other.grade)
        if rank < 2 or is_hint(other) or other.statement in (*EXPECTED, *FOODS):
            continue
        behind = {t.taxon for t in remains_behind(other, page.dig.packs, tallies)}
        behind = behind or {t.taxon for t in remains_looked_at(other, page.dig.packs, tallies)}
        if behind & looked_at and (best is None or _firmness(page, other) > _firmness(page, best)):
            best = other
    return best


def _firmness(page: Page, claim: Claim) -> tuple[int, bool, float]:
    """How firm a claim is; for visitors what happened at a place goes before what was used there."""
    is_story = page.is_plain and claim.statement in STORIES
    return (GRADE_NAMES.index(claim.grade), is_story, claim.support)


STORIES = ("food.burned-store", "food.cooking-accident", "fuel.smudge")
"""Readings that tell what happened at a place."""
