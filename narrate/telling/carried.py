"""Which contexts carry the readings of a phase."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from narrate.model.claims import GRADE_NAMES
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import english
from narrate.telling.borne import NAMED, Borne
from narrate.telling.carried_for_visitors import carried_for_visitors, is_own
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.reasons import page_text, without_figures
from narrate.telling.spread import ids_listed

TRAITS = (("thermal", "features made for fire"), ("storage", "storage pits"), ("refuse", "deposits of refuse"))
"""Traits of kinds of context by which contexts are told together."""


Verb = tuple[str, str, str, str]

VERBS: tuple[Verb, ...] = (
    ("speaks for", "speak for", "for ", "does"),
    ("argues for", "argue for", "for ", "does"),
    ("is evidence for", "are evidence for", "for ", "is"),
)
"""What a context and what several do to a reading, what stands before the next one, and the verb in short."""


def carried_sentences(
    page: Page, read: Sequence[Context], borne: Sequence[Borne], own: Collection[str]
) -> list[Sentence]:
    """
    Which contexts speak for what their phase reads.

    own: statements that the phase itself makes.
    """
    if page.is_plain:
        return carried_for_visitors(page, [one for one in borne if one.carried], own)
    told = sorted((one for one in borne if is_own(page, one, own)), key=lambda one: not one.carried)
    if not told:
        return []
    verb = least_told(page)
    parts = [
        _part(page, read, one, verb, is_first=i == 0 or only_suggested(told[i - 1])) for i, one in enumerate(told)
    ]
    pairs = list(zip(parts, told, strict=True))
    carried = [part for part, one in pairs if one.carried]
    said = "; ".join(([clauses_in_row(carried)] if carried else []) + [part for part, one in pairs if not one.carried])
    return page.say([ref for one in told for ref in one.refs], said, f"taken one by one, {said}")


def single_sentences(
    page: Page, read: Sequence[Context], borne: Sequence[Borne], own: Collection[str]
) -> list[Sentence]:
    """What is read of single contexts and not of their phase: 'C01, though not the phase as a whole, speaks for …'."""
    single = [one for one in borne if not is_own(page, one, own)]
    if page.is_plain or not single:
        return []
    whole = "the phase" if page.subject.level == "phase" else "the dig"
    verb = least_told(page)
    parts = [
        _part(page, read, one, verb, is_first=i == 0 or only_suggested(single[i - 1]), in_full=True)
        for i, one in enumerate(single)
    ]
    who, is_many, which = _who(page, read, single[0])
    noun = single[0].noun.removeprefix("the use of ")
    does = SUGGESTS if only_suggested(single[0]) else verb
    parts[0] = f"{who}, though not {whole} as a whole, {does[1] if is_many else does[0]} {noun}{which}"
    return page.say([ref for one in single for ref in one.refs], clauses_in_row(parts))


def clauses_in_row(parts: Sequence[str]) -> str:
    """
    What contexts speak for, one after the other: lists of contexts have commas of their own.

    >>> clauses_in_row(["C03 speaks for nuts", "C06 for fruit"])
    'C03 speaks for nuts, and C06 for fruit'
    """
    if len(parts) < 3:
        return ", and ".join(parts)
    return f"{'; '.join(parts[:-1])}; and {parts[-1]}"


SUGGESTS: Verb = ("suggests", "suggest", "", "does")
"""What contexts do to a reading that none of them makes more firmly."""


def only_suggested(one: Borne, ids: Sequence[str] = ()) -> bool:
    """Whether no context makes a reading more firmly than it suggests it; ids: of the contexts that are meant."""
    grades = [GRADE_NAMES.index(claim.grade) for id, claim in one.carried if not ids or id in ids]
    return bool(grades) and max(grades) <= _SUGGESTED


_SUGGESTED = GRADE_NAMES.index("suggests")


def parted(one: Borne, ids: Sequence[str]) -> tuple[list[str], list[str]]:
    """Contexts that speak for a reading and those that only suggest it; all are first where they are of one kind."""
    weak = [id for id, claim in one.carried if id in ids and GRADE_NAMES.index(claim.grade) <= _SUGGESTED]
    firm = [id for id in ids if id not in weak]
    return (firm, weak) if firm else (list(ids), [])


def which_suggest(page: Page, weak: Sequence[str]) -> str:
    """', which C04 and C08 only suggest': behind a reading that others speak for."""
    who = ids_listed(page, weak) if len(weak) <= LISTED else page.count(len(weak), "other", "others")
    return f", which {who} only {english.agreed(len(weak), 'suggests', 'suggest')}" if weak else ""


LISTED = 6
"""Contexts that are all named where some speak for a reading and some only suggest it."""


def least_told(page: Page) -> Verb:
    """The verb that the page has used least, so that no page says the same of every theme."""
    said = " ".join(page.said)
    return min(VERBS, key=lambda verb: len(re.findall(rf"\b(?:{verb[0]}|{verb[1]})\b", said)))


def _part(
    page: Page, read: Sequence[Context], one: Borne, verb: Verb, *, is_first: bool, in_full: bool = False
) -> str:
    """'C03 and C08 speak for nuts'; behind another such part 'C06 for fruit'."""
    noun = in_brief(one.noun, page.dig.packs.statements[one.statement].question)  # type: ignore[index]
    noun = one.noun.removeprefix("the use of ") if in_full else noun
    if not one.carried:
        if one.hinted:
            hint = english.agreed(len(one.hinted), "hints", "hint")
            return f"{ids_listed(page, one.hinted)} no more than {hint} at {noun}"
        if one.weak:
            are = english.agreed(len(one.weak), "is", "are")
            weak = f"{ids_listed(page, one.weak)} {are} consistent with it"
            return f"no single context speaks firmly for {noun}, though {weak}"
        return f"no single context speaks for {noun}, which is read of the phase as a whole"
    who, is_many, which = _who(page, read, one)
    if only_suggested(one):
        return f"{who} {SUGGESTS[1] if is_many else SUGGESTS[0]} {noun}"
    if is_first:
        return f"{who} {verb[1] if is_many else verb[0]} {noun}{which}"
    return f"{who} {verb[2]}{noun}{which}"


def in_brief(noun: str, question: str) -> str:
    """
    A reading that was told in full before, under the heading of its theme.

    >>> in_brief("the use of nuts as food", "food"), in_brief("the use of wood as fuel", "fuel")
    ('nuts', 'wood as fuel')
    >>> in_brief("gathering in autumn", "season"), in_brief("open, disturbed ground near the place", "field")
    ('gathering in autumn', 'open, disturbed ground')
    """
    noun = noun.removeprefix("the use of ") if noun.endswith((" as food", " as fuel")) else noun
    noun = noun.removesuffix(" as food") if question == "food" else noun
    return noun if question == "season" else re.split(r" (?:from|near|on|with) ", noun)[0]


def firmer_sentences(page: Page, borne: Sequence[Borne], held: Sequence[Reading]) -> list[Sentence]:
    """
    'In C22 alone it is supported, because …': seasons that a context bears out more firmly than the phase itself, and
    why, so that nobody takes the two grades for a slip.
    """
    rank_of: dict[str, int] = {reading.claim.statement: reading.rank for reading in held}
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
        # The phase holds the same finds and more: what makes the place firmer is that they lie together in it.
        deposits = "one deposit by itself" if len(ids) == 1 else "each a deposit by itself"
        there = "there" if len(ids) == 1 else "in each"
        judged = f"{there} {one.noun} is firmer than over the phase, which is judged by the number of samples"
        return page.say([c.id for _, c in firmer], f"in {ids_listed(page, ids)}, {deposits}, {why}: {judged}")
    return []


def _who(page: Page, read: Sequence[Context], one: Borne) -> tuple[str, bool, str]:
    """
    'C12 and C14', or 'eight of the nine contexts that can be read (all but C03)'; whether they are many; and behind the
    reading the contexts that only suggest it.
    """
    ids = {id for id, _ in one.carried}
    n, of = len(ids), len(read)
    if n == 1:
        return f"{ids_listed(page, ids)} alone", False, ""
    firm, weak = parted(one, sorted(ids))
    if weak:
        # Words for what is supported do not cover places that only suggest it.
        many = f"{page.count(len(firm))} of the {page.count(of)} contexts that can be read"
        who = ids_listed(page, firm) if len(firm) <= LISTED else many
        return who, len(firm) > 1, which_suggest(page, weak)
    if n == of and of > 2:
        return f"every context that can be read ({page.count(of)})", False, ""
    kinds = page.dig.packs.words.context_kinds
    for trait, called in TRAITS:
        of_trait = {c.id for c in read if (kind := kinds.get(c.kind)) is not None and trait in kind.traits}
        if ids == of_trait:
            every = "both" if n == 2 else f"all {page.count(n)}"
            return f"{every} {called} ({ids_listed(page, ids)}) and nothing else", True, ""
    if of > NAMED and of - n <= 2 and n > 2 * (of - n):
        rest = ids_listed(page, [c.id for c in read if c.id not in ids])
        return f"{page.count(n)} of the {page.count(of)} contexts that can be read (all but {rest})", True, ""
    if n <= NAMED:
        return ids_listed(page, ids), True, ""
    firmest = [id for id, claim in one.carried if claim.grade == one.carried[0][1].grade]
    most = f" (most firmly {ids_listed(page, firmest)})" if len(firmest) <= NAMED else ""
    return f"{page.count(n)} of the {page.count(of)} contexts that can be read{most}", True, ""


def side(page: Page, one: Borne, ids: Sequence[str], of: int) -> tuple[str, bool, str]:
    """
    'C11, C13, and C15'; of more than are named 'seven of the nine contexts'; of all 'all nine contexts'; whether they
    are many; and behind the reading the contexts that only suggest it.
    """
    firm, weak = parted(one, ids)
    which = which_suggest(page, weak)
    if len(firm) <= (LISTED if weak else NAMED):
        return ids_listed(page, firm), len(firm) > 1, which
    every = f"all {page.count(of)} contexts"
    return every if len(firm) == of else f"{page.count(len(firm))} of the {page.count(of)} contexts", True, which
