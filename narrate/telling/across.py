"""What the contexts of a phase or of the dig say together of one theme, and phase against phase for the whole dig."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import setting
from narrate.telling.borne import Borne, readable, readings_borne
from narrate.telling.carried import (
    SUGGESTS,
    Verb,
    carried_sentences,
    clauses_in_row,
    firmer_sentences,
    in_brief,
    least_told,
    only_suggested,
    side,
    single_sentences,
)
from narrate.telling.carried_for_visitors import lone_foods
from narrate.telling.exceptions_told import against_sentences
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.spread import samples_of_phase

BY_PHASE = 5
"""Readings of a theme that are told phase beside phase."""


def across_sentences(
    page: Page, contexts: Sequence[Context], questions: Sequence[str], held: Sequence[Reading], *, at_most: int = 3
) -> list[Sentence]:
    """Of the readings of one theme: which contexts carry each, and which stand against it and what is read there."""
    read = readable(page, contexts)
    borne = readings_borne(page, read, questions, held)
    own = {reading.claim.statement for reading in held}
    is_of_food = page.is_plain and page.subject.level == "phase" and "food" in questions
    lone = lone_foods(page, [c.id for c in read], {*own, *(one.statement for one in borne)}) if is_of_food else []
    if not borne or len(read) < 2:
        return lone
    phases = [p for p in page.dig.project.phases if samples_of_phase(page.dig, p.id)]
    if page.subject.level == "site" and len(phases) == 2:
        # What many contexts merely suggest crowds out nothing that one of them supports.
        firmest = sorted(borne, key=only_suggested)[:BY_PHASE]
        return by_phase_sentences(page, read, firmest, phases) if not page.is_plain else []
    borne = borne[:at_most]
    sentences = carried_sentences(page, read, borne, own) + firmer_sentences(page, borne, held)
    against = next((told for one in borne if (told := against_sentences(page, one))), [])
    return sentences + against + single_sentences(page, read, borne, own) + lone


def by_phase_sentences(
    page: Page, read: Sequence[Context], borne: Sequence[Borne], phases: Sequence[Phase]
) -> list[Sentence]:
    """The contexts that speak for the readings of a theme, phase beside phase in one sentence."""
    first, last = sorted(phases, key=lambda p: (p.start is None, p.start or 0))
    of = {phase.id: [c.id for c in read if c.phase == phase.id] for phase in (first, last)}
    if not all(of.values()):
        return []
    carried = [one for one in borne if one.carried]
    if not carried:
        return []
    verb = least_told(page)
    held = {p.id: [one for one in carried if any(id in of[p.id] for id, _ in one.carried)] for p in (first, last)}
    lead, other = (last, first) if len(held[last.id]) > len(held[first.id]) else (first, last)
    refs = [ref for one in carried for ref in one.refs]
    said = _of_phase(page, held[lead.id], lead, of[lead.id], verb, is_lead=True)
    if not held[other.id]:
        return page.say(refs, f"{said}; no readable context of {setting.phase_name(other)} {verb[3]}")
    more = _of_phase(page, held[other.id], other, of[other.id], verb, is_lead=False)
    if not [one for one in held[lead.id] if one in held[other.id]]:
        return page.say(refs, f"{said}, and {more}, each in that phase alone")
    sides = [said, more]
    for i, phase in enumerate((lead, other)):
        lacking = [_brief(page, one, is_lead=False) for one in carried if one not in held[phase.id]]
        if lacking:
            sides[i] += f", and no readable context {verb[0]} {lacking[0] if len(lacking) == 1 else 'the others'}"
    told = sides if any("; " in text for text in sides) else ["; ".join(sides)]
    sentences = page.say(refs, told[0], f"context by context, {told[0]}", f"as for single contexts, {told[0]}")
    return sentences + [sentence for text in told[1:] for sentence in page.say(refs, text)]


def _of_phase(
    page: Page, borne: Sequence[Borne], phase: Phase, of: Sequence[str], verb: Verb, *, is_lead: bool
) -> str:
    """'in the Late hamlet C14 and C16 speak for nuts and fruit, and C17 for maize'."""
    by_place: dict[tuple[str, bool, str, bool], list[str]] = {}
    for one in borne:
        ids = sorted(id for id, _ in one.carried if id in of)
        key = (*side(page, one, ids, len(of)), only_suggested(one, ids))
        by_place.setdefault(key, []).append(_brief(page, one, is_lead=is_lead))
    parts: list[str] = []
    was_firm = False
    for (who, is_many, which, is_weak), nouns in sorted(by_place.items(), key=lambda pair: pair[0][3]):
        does = SUGGESTS if is_weak else verb
        said = verb[2].strip() if was_firm and not is_weak else does[1] if is_many else does[0]
        parts.append(f"{who} {said} {page.listed(nouns)}{which}")
        was_firm = not is_weak
    return f"in {setting.phase_name(phase)} {clauses_in_row(parts)}"


def _brief(page: Page, one: Borne, *, is_lead: bool) -> str:
    """In full where a reading of single contexts is named first, 'the use of' left out."""
    question = page.dig.packs.statements[one.statement].question  # type: ignore[index]
    if not is_lead or question == "fuel":
        return in_brief(one.noun, question)
    return one.noun.removeprefix("the use of ").removesuffix(f" as {question}")
