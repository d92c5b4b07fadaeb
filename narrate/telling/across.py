"""What the contexts of a phase or of the dig say together of one theme, and phase against phase for the whole dig."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, setting, shared_words
from narrate.telling.borne import Borne, readable, readings_borne
from narrate.telling.carried import carried_sentences, firmer_sentences, only_suggested, side
from narrate.telling.exceptions_told import against_sentences
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.spread import samples_of_phase


def across_sentences(
    page: Page, contexts: Sequence[Context], questions: Sequence[str], held: Sequence[Reading], *, at_most: int = 3
) -> list[Sentence]:
    """Of the readings of one theme: which contexts carry each, and which stand against it and what is read there."""
    read = readable(page, contexts)
    borne = readings_borne(page, read, questions, held)[:at_most]
    if not borne or len(read) < 2:
        return []
    phases = [p for p in page.dig.project.phases if samples_of_phase(page.dig, p.id)]
    if page.subject.level == "site" and len(phases) == 2:
        return by_phase_sentences(page, read, borne, phases) if not page.is_plain else []
    sentences = carried_sentences(page, read, borne) + firmer_sentences(page, borne, held)
    for one in borne:
        told = against_sentences(page, one)
        if told:
            return sentences + told
    return sentences


def by_phase_sentences(
    page: Page, read: Sequence[Context], borne: Sequence[Borne], phases: Sequence[Phase]
) -> list[Sentence]:
    """'… is borne out by C11 and C13 of the Late hamlet, and by no context of the Early hamlet': one at a time."""
    first, last = sorted(phases, key=lambda p: (p.start is None, p.start or 0))
    of = {phase.id: [c.id for c in read if c.phase == phase.id] for phase in (first, last)}
    if not all(of.values()):
        return []
    sentences: list[Sentence] = []
    alone: dict[str, list[tuple[Borne, list[str]]]] = {first.id: [], last.id: []}
    for one in borne:
        early, late = ([id for id, _ in one.carried if id in of[phase.id]] for phase in (first, last))
        if early and late:
            both = ((first, early), (last, late))
            sides = [f"{side(page, one, ids, len(of[p.id]))} of {setting.phase_name(p)}" for p, ids in both]
            # A noun of a reading is one thing ('the use of …', 'gathering in autumn') and takes the singular.
            verbs = ("suggested",) if only_suggested(one) else ("borne out", "backed", "upheld")
            sentences += page.say(one.refs, *(f"{one.noun} is {v} by {sides[0]} and by {sides[1]}" for v in verbs))
        elif early or late:
            alone[(first if early else last).id].append((one, early or late))
    for phase, other in ((first, last), (last, first)):
        sentences += _of_one_phase(page, alone[phase.id], (phase, len(of[phase.id])), (other, len(of[other.id])))
    return sentences


def _of_one_phase(
    page: Page, borne: Sequence[tuple[Borne, list[str]]], own: tuple[Phase, int], other: tuple[Phase, int]
) -> list[Sentence]:
    """'C11 and C13 of the Late hamlet bear out …, and C14 …; none of the nine contexts of the Early hamlet does'."""
    if not borne:
        return []
    one, ids = borne[0]
    verbs = (("suggests", "suggest"),) if only_suggested(one, ids) else (("bears out", "bear out"), ("backs", "back"))
    rest = [
        f"{side(page, more, at, own[1])} {_verb(more, at)} {shared_words.after(one.noun, more.noun)}"
        for more, at in borne[1:]
    ]
    does = "does so" if not rest else "does either" if len(rest) == 1 else "does so for any of them"
    none = f"none of the {page.count(other[1])} contexts of {setting.phase_name(other[0])} {does}"
    lead = f"{side(page, one, ids, own[1])} of {setting.phase_name(own[0])}"
    more = f", and {page.listed(rest)}" if rest else ""
    refs = [ref for item, _ in borne for ref in item.refs]
    wordings = [f"{lead} {english.agreed(len(ids), *verb)} {one.noun}{more}; {none}" for verb in verbs]
    return page.say(refs, *wordings)


def _verb(one: Borne, ids: Sequence[str]) -> str:
    words = ("suggests", "suggest") if only_suggested(one, ids) else ("bears out", "bear out")
    return english.agreed(len(ids), *words)


# What stands against it
