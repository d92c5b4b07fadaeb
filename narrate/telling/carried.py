"""Which contexts carry the readings of a phase."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import english, shared_words
from narrate.telling.borne import NAMED, Borne
from narrate.telling.frames import clauses_joined
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.reasons import page_text, without_figures
from narrate.telling.spread import ids_listed

TRAITS = (("thermal", "features made for fire"), ("storage", "storage pits"), ("refuse", "deposits of refuse"))
"""Traits of kinds of context by which contexts are told together."""


def carried_sentences(page: Page, read: Sequence[Context], borne: Sequence[Borne]) -> list[Sentence]:
    refs = [ref for one in borne for ref in one.refs]
    if page.is_plain:
        return _carried_for_visitors(page, [one for one in borne if one.carried])
    parts = []
    is_borne = ("is borne out", "is backed")[len(page.said) % 2]
    last = ""
    for i, one in enumerate(borne):
        noun = one.noun if i == 0 else shared_words.after(borne[0].noun, one.noun)
        own = "is suggested" if only_suggested(one) else is_borne
        verb = f"{own} " if i == 0 or own != last else ""
        last = own
        parts.append(f"{noun} {verb}{_by(page, read, one)}")
    said = "; ".join(parts) if len(parts) < 3 else f"{'; '.join(parts[:-1])}; and {parts[-1]}"
    return page.say(refs, said, f"context by context, {said}", f"among the contexts, {said}")


def firmer_sentences(page: Page, borne: Sequence[Borne], held: Sequence[Reading]) -> list[Sentence]:
    """
    'In C22 alone it is supported, because …': seasons that a context bears out more firmly than the phase itself, and
    why, so that nobody takes the two grades for a slip.
    """
    rank_of = {reading.claim.statement: reading.rank for reading in held}
    for one in borne if not page.is_plain else ():
        own = rank_of.get(one.statement)
        firmer = [(id, c) for id, c in one.carried if own is not None and GRADE_NAMES.index(c.grade) > own]
        if not firmer or firmer[0][1].question != "season":
            continue
        ids = [id for id, _ in firmer]
        argument = next(iter(firmer[0][1].held("for")), None)
        if argument is None:
            continue
        why = page_text(page, argument, contexts=ids)
        why = why if len(ids) == 1 else without_figures(why)
        return page.say(
            [c.id for _, c in firmer],
            f"in {ids_listed(page, ids)} {one.noun} is firmer than over the phase, because {why}",
        )
    return []


NOT_CARRIED = "by no single context, only by its spread over the samples"


def _by(page: Page, read: Sequence[Context], one: Borne) -> str:
    """'by C12 and C14', 'by eight of nine contexts, all but C03', 'by no single context, and rests on its spread'."""
    ids = {id for id, _ in one.carried}
    n, of = len(ids), len(read)
    if not n:
        if one.hinted:
            return f"by {ids_listed(page, one.hinted)} as a hint alone"
        if one.weak:
            verb = english.agreed(len(one.weak), "is", "are")
            return f"firmly by no single context, though {ids_listed(page, one.weak)} {verb} consistent with it"
        return NOT_CARRIED
    if n == 1:
        return f"by {ids_listed(page, ids)} alone"
    if n == of and of > 2:
        return f"by every context that can be read ({page.count(of)})"
    kinds = page.dig.packs.words.context_kinds
    for trait, called in TRAITS:
        of_trait = {c.id for c in read if (kind := kinds.get(c.kind)) is not None and trait in kind.traits}
        if ids == of_trait:
            every = "both" if n == 2 else f"all {page.count(n)}"
            return f"by {every} {called} ({ids_listed(page, ids)}) and by nothing else"
    if of > NAMED and of - n <= 2 and n > 2 * (of - n):
        rest = ids_listed(page, [c.id for c in read if c.id not in ids])
        return f"by {page.count(n)} of the {page.count(of)} contexts that can be read, all but {rest}"
    if n <= NAMED:
        return f"by {by_firmness(page, one, sorted(ids))}"
    firm = [id for id, claim in one.carried if claim.grade == one.carried[0][1].grade]
    firmest = f", most firmly by {ids_listed(page, firm)}" if len(firm) <= NAMED else ""
    return f"by {page.count(n)} of the {page.count(of)} contexts that can be read{firmest}"


def _carried_for_visitors(page: Page, borne: Sequence[Borne]) -> list[Sentence]:
    if not borne:
        return []
    refs = [ref for one in borne for ref in one.refs]
    by_place: dict[tuple[str, ...], list[str]] = {}
    for one in borne:
        clause = page.in_own_words(page.dig.packs.statements[one.statement].plain)  # type: ignore[index]
        by_place.setdefault(tuple(sorted(id for id, _ in one.carried)), []).append(clause)
    clauses = [clauses_joined(page, texts) for texts in by_place.values()]
    places = []
    for held in by_place:
        many = "one place" if len(held) == 1 else f"{page.count(len(held))} places"
        places.append(f"{many} ({ids_listed(page, held)})" if len(held) <= 3 else many)
    rest = [f"in {where}, that {clause}" for where, clause in zip(places[1:], clauses[1:], strict=True)]
    more = "".join(f"; {'and ' if len(rest) > 1 and text is rest[-1] else ''}{text}" for text in rest)
    return page.say(
        refs,
        f"in {places[0]} we saw signs that {clauses[0]}{more}",
        f"in {places[0]} there were signs that {clauses[0]}{more}",
        f"we saw signs in {places[0]} that {clauses[0]}{more}",
    )


def side(page: Page, one: Borne, ids: Sequence[str], of: int) -> str:
    """'C11, C13, and C15'; of more than are named 'seven of the nine contexts'; of all 'every readable context'."""
    if len(ids) <= NAMED:
        return by_firmness(page, one, ids)
    many = page.count(of)
    return f"all {many} contexts" if len(ids) == of else f"{page.count(len(ids))} of the {many} contexts"


_SUGGESTS = GRADE_NAMES.index("suggests")


def only_suggested(one: Borne, ids: Sequence[str] = ()) -> bool:
    """Whether no context makes a reading more firmly than it suggests it; ids: of the contexts that are meant."""
    grades = [GRADE_NAMES.index(claim.grade) for id, claim in one.carried if not ids or id in ids]
    return bool(grades) and max(grades) <= _SUGGESTS


def by_firmness(page: Page, one: Borne, ids: Sequence[str]) -> str:
    """'C11 and C13 (C15 only suggests it)': contexts by name, those that only suggest it apart."""
    weak = [id for id, claim in one.carried if id in ids and GRADE_NAMES.index(claim.grade) <= _SUGGESTS]
    firm = [id for id in ids if id not in weak]
    suggest = english.agreed(len(weak), "suggests", "suggest")
    if weak and not firm and not only_suggested(one):
        # Contexts of another phase are firmer, and the sentence has a word for those.
        return f"{ids_listed(page, ids)} (which only {suggest} it)"
    if not weak or not firm:
        return ids_listed(page, ids)
    return f"{ids_listed(page, firm)} ({ids_listed(page, weak)} only {suggest} it)"
