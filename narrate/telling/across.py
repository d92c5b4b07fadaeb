"""What the contexts of a phase or of the dig say together: what carries a reading, what stands against it, and why."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES, Argument, Claim
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, setting
from narrate.telling.behind import remains_behind, remains_looked_at
from narrate.telling.foods_once import is_told_with_another_food
from narrate.telling.frames import clauses_joined
from narrate.telling.harvest import in_word_of_season
from narrate.telling.of_stores import only_keeping
from narrate.telling.page import Page
from narrate.telling.plan import FOODS, Reading, is_hint
from narrate.telling.reasons import page_text, without_figures
from narrate.telling.spread import NOT_LISTED, ids_listed, is_too_few, placed_readings, samples_of_phase

EXPECTED = ("fuel.wood", "season.more-than-one")
"""Readings that nearly every deposit bears: where they were made is no news."""

NAMED = 4
"""Contexts that are all named in running text."""

TRAITS = (("thermal", "features made for fire"), ("storage", "storage pits"), ("refuse", "deposits of refuse"))
"""Traits of kinds of context by which contexts are told together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Borne:
    """A reading of a phase or dig, the contexts that make it too, and those that an argument speaks against."""

    statement: str
    noun: str
    carried: tuple[tuple[str, Claim], ...]
    """Context and claim, firmest first."""
    against: tuple[tuple[str, Claim, Argument], ...]
    refs: tuple[str, ...]
    hinted: tuple[str, ...] = ()
    """Contexts that hint at it and hold too little to carry it."""
    weak: tuple[str, ...] = ()
    """Contexts that are no more than consistent with it."""


def readable(page: Page, contexts: Iterable[Context]) -> list[Context]:
    """Contexts with remains enough to be read on their own."""
    chosen = []
    for context in contexts:
        found = page.dig.found(Subject(level="context", id=context.id))
        if found is not None and found.samples_with_remains and not is_too_few(page.dig, context.id):
            chosen.append(context)
    return chosen


def across_sentences(
    page: Page, contexts: Sequence[Context], questions: Sequence[str], held: Sequence[Reading], *, at_most: int = 3
) -> list[Sentence]:
    """Of the readings of one theme: which contexts carry each, and which stand against it and what is read there."""
    read = readable(page, contexts)
    borne = _borne(page, read, questions, held)[:at_most]
    if not borne or len(read) < 2:
        return []
    phases = [p for p in page.dig.project.phases if samples_of_phase(page.dig, p.id)]
    if page.subject.level == "site" and len(phases) == 2:
        return _by_phase(page, read, borne, phases) if not page.is_plain else []
    sentences = _carried(page, read, borne) + _firmer(page, borne, held)
    for one in borne:
        told = _against(page, one)
        if told:
            return sentences + told
    return sentences


def _borne(page: Page, read: Sequence[Context], questions: Sequence[str], held: Sequence[Reading]) -> list[Borne]:
    """Readings of the subject itself, firmest first, then those that two or more of its contexts make."""
    names: list[str] = [r.claim.statement for r in held if r.claim.question in questions and r.rank > 1]
    placed = [one.statement for one in placed_readings(page, [c.id for c in read], questions)]
    names = [*placed, *names] if page.subject.level == "site" else [*names, *placed]
    own: dict[str, str] = {r.claim.statement: r.claim.id for r in held}
    found = []
    for name in dict.fromkeys(names):
        statement = page.dig.packs.statements.get(name)  # type: ignore[call-overload]
        if statement is None or name in (*EXPECTED, *NOT_LISTED):
            continue
        claims = [(c.id, page.dig.claims.find(Subject(level="context", id=c.id), name)) for c in read]
        known = [(id, c) for id, c in claims if c is not None and not is_told_with_another_food(page.dig, c)]
        firm = [(id, c) for id, c in known if c.verdict == "holds" and GRADE_NAMES.index(c.grade) > 1]
        carried = [(id, c) for id, c in firm if not is_hint(page.dig, c)]
        carried.sort(key=lambda pair: (-GRADE_NAMES.index(pair[1].grade), -pair[1].support))
        against = [(id, c, a) for id, c in known if c.verdict != "holds" for a in c.held("against")[:1]]
        noun = page.in_own_words(statement.plain_noun if page.is_plain else statement.noun)
        noun = in_word_of_season(page, noun, [c for _, c in carried])
        hints = [(id, c) for id, c in firm if is_hint(page.dig, c)]
        refs = [claim.id for _, claim in carried or (hints if name in own else [])]
        refs = refs if carried or name not in own else [own[name], *refs]
        if refs:
            found.append(
                Borne(
                    statement=name,
                    noun=noun,
                    carried=tuple(carried),
                    against=tuple(against),
                    refs=tuple(refs),
                    hinted=tuple(id for id, _ in hints),
                    weak=tuple(id for id, c in known if c.verdict == "holds" and c.grade == "consistent with"),
                )
            )
    return found


# What carries a reading


def _carried(page: Page, read: Sequence[Context], borne: Sequence[Borne]) -> list[Sentence]:
    refs = [ref for one in borne for ref in one.refs]
    if page.is_plain:
        return _carried_for_visitors(page, [one for one in borne if one.carried])
    parts = []
    is_borne = ("is borne out", "is backed")[len(page.said) % 2]
    for i, one in enumerate(borne):
        noun = one.noun if i == 0 else english.after(borne[0].noun, one.noun)
        verb = f"{is_borne} " if i == 0 else ""
        parts.append(f"{noun} {verb}{_by(page, read, one)}")
    said = "; ".join(parts) if len(parts) < 3 else f"{'; '.join(parts[:-1])}; and {parts[-1]}"
    return page.say(refs, said, f"context by context, {said}", f"among the contexts, {said}")


def _firmer(page: Page, borne: Sequence[Borne], held: Sequence[Reading]) -> list[Sentence]:
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
        return f"by {ids_listed(page, ids)}"
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


def _by_phase(page: Page, read: Sequence[Context], borne: Sequence[Borne], phases: Sequence[Phase]) -> list[Sentence]:
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
            sides = [f"{_side(page, ids, len(of[p.id]))} of {setting.phase_name(p)}" for p, ids in both]
            # A noun of a reading is one thing ('the use of …', 'gathering in autumn') and takes the singular.
            verbs = ("borne out", "backed", "upheld")
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
    verbs = [english.agreed(len(ids), *verb) for verb in (("bears out", "bear out"), ("speaks for", "speak for"))]
    rest = [f"{_side(page, ids, own[1])} for {english.after(one.noun, more.noun)}" for more, ids in borne[1:]]
    does = "does so" if not rest else "does either" if len(rest) == 1 else "does so for any of them"
    none = f"none of the {page.count(other[1])} contexts of {setting.phase_name(other[0])} {does}"
    lead = f"{_side(page, ids, own[1])} of {setting.phase_name(own[0])}"
    more = f", and {page.listed(rest)}" if rest else ""
    refs = [ref for item, _ in borne for ref in item.refs]
    if rest:
        return page.say(refs, f"{lead} {verbs[1]} {one.noun}{more}; {none}")
    return page.say(refs, *(f"{lead} {verb} {one.noun}; {none}" for verb in verbs))


def _side(page: Page, ids: Sequence[str], of: int) -> str:
    """'C11, C13, and C15'; of more than are named 'seven of the nine contexts'; of all 'every readable context'."""
    if len(ids) <= NAMED:
        return ids_listed(page, ids)
    many = page.count(of)
    return f"all {many} contexts" if len(ids) == of else f"{page.count(len(ids))} of the {many} contexts"


# What stands against it


def _against(page: Page, one: Borne) -> list[Sentence]:
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
    """'C11 and C13 are different: in C11 …; in C13, …': every context that is an exception, with its reason."""
    told: list[tuple[str, str]] = []
    for group in groups:
        ids = [id for id, _, _ in group]
        reason = without_figures(page_text(page, group[0][2], contexts=ids))
        if reason and len(group) <= NAMED:
            told.append((ids_listed(page, ids), reason))
    every = [id for group in groups for id, _, _ in group]
    if not told or len(told) < len(groups):
        return []
    if len(told) == 1:
        where, reason = told[0]
        are = english.agreed(len(every), "is", "are")
        return page.say(
            refs, f"but in {where}, {reason}", f"{where} {are} different: {reason}"
        ) + _read_instead(page, groups)
    reasons = "; ".join(f"in {where}, {reason}" for where, reason in told)
    return page.say(refs, f"{ids_listed(page, every)} are different: {reasons}") + _read_instead(page, groups)


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
        return []
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
        if rank < 2 or other.statement in (*EXPECTED, *FOODS):
            continue
        behind = {t.taxon for t in remains_behind(other, page.dig.packs, tallies)}
        behind = behind or {t.taxon for t in remains_looked_at(other, page.dig.packs, tallies)}
        firmness = (rank, other.support)
        if behind & looked_at and (best is None or firmness > (GRADE_NAMES.index(best.grade), best.support)):
            best = other
    return best
