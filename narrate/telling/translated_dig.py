"""The whole dig and its phases in a language of its own."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import setting
from narrate.telling.contexts import sections_of
from narrate.telling.of_note import finds_astray
from narrate.telling.page import Page
from narrate.telling.plan import Reading, is_hint, ordered_themes
from narrate.telling.site import without_the_same_change
from narrate.telling.spread import Presence, presences
from narrate.telling.through_time import changed_groups, gaps_between, sampled_phases
from narrate.telling.translated_by_phase import FIRM, tells_by_phase, told_by_phase
from narrate.telling.translated_finds import SHOWN, finds_summed
from narrate.telling.translated_noted import noted_in_places
from narrate.telling.translated_owed import closed, living_told
from narrate.telling.translated_readings import framed, hints_told, theme_told
from narrate.telling.translated_recovery import stirred_told
from narrate.telling.translated_words import (
    grammar_of,
    group_name,
    k_of_n,
    kind_named,
    litres_told,
    places_told,
    remains_noun,
    say,
    unsure,
    worded,
    years_of,
)


def dig_sections(page: Page) -> tuple[Section, ...]:
    grammar, project = grammar_of(page), page.dig.project
    contexts = {sample.context for sample in project.samples}
    places = grammar.quantity(len(contexts), kind_named(page, "other"), exactly=True)
    items = grammar.quantity(setting.items_counted(page), remains_noun(page))
    refs = [page.record, page.ref("items")]
    phases = sampled_phases(page)
    basis = _times(page, phases) if len(phases) > 1 else []
    basis += say(page, refs, "washed dig", litres=litres_told(page), places=places, items=items)
    blocks = [("basis", [*basis, *stirred_told(page, project.contexts)])]
    is_parted = len(phases) > 1 and tells_by_phase(page)
    if len(phases) > 1:
        blocks.append(("change", _change(page)))
    for theme, questions in ordered_themes(page):
        if theme not in ("deposit", "change"):
            living = living_told(page) if theme == "food" else []
            # What the counts of all phases say only when they are put together is of no time, and left to specialists.
            pooled = [] if is_parted else theme_told(page, questions) + hints_told(page, questions)
            read = told_by_phase(page, phases, questions) if is_parted else pooled
            blocks.append((theme, [*read, *best_signs(page, questions), *living]))
    sections = sections_of(page, blocks)
    # What stays open is a matter of its own, though it be one sentence.
    unanswered = [s for one in gaps_between(page) for s in _why_left(page, *one[:2])]
    said, heading = (*unanswered, *say(page, refs, "open")), page.audience.headings.get("open", "")
    closing = (Section(id="open", heading=heading, paragraphs=(said,)),) if said else ()
    return closed(page, (*sections, *closing))


def _times(page: Page, phases: Sequence[Phase]) -> list[Sentence]:
    """The times of the dig, and how long lies between each and the next of which nothing is known."""
    grammar = grammar_of(page)
    times = [worded(page, "time", years=years_of(page, phase)) for phase in phases]
    listed = grammar.listed(said[0] for said in times if said)
    sentences = say(page, [page.record], "times", count=grammar.about(len(phases), "f"), list=listed)
    for before, after, years in gaps_between(page):
        ends = {"before": years_of(page, before), "after": years_of(page, after), "count": grammar.figure(years)}
        sentences += say(page, [page.record], "gap" if len(phases) == 2 else "gap of several", **ends)
    return sentences


def _why_left(page: Page, before: Phase, after: Phase) -> list[Sentence]:
    """That plants do not say why a place was left and lived in again, where the language has words for it."""
    if page.subject.level == "phase":
        return say(page, [page.record], "why ended" if page.subject.id == before.id else "why began")
    years, later = (years_of(page, phase) for phase in (before, after))
    return say(page, [page.record], "why left", years=years, later=later)


def phase_sections(page: Page, phase: Phase) -> tuple[Section, ...]:
    """What was washed of a phase, what was widespread, and each reading with the contexts that make it too."""
    grammar = grammar_of(page)
    contexts = [c for c in page.dig.project.contexts if c.phase == phase.id and page.dig.project.samples_of(c.id)]
    if not contexts or not setting.items_counted(page):
        return ()
    years = years_of(page, phase)
    places = grammar.quantity(len(contexts), kind_named(page, "other"), exactly=True)
    items = grammar.quantity(setting.items_counted(page), remains_noun(page))
    refs = [page.record, page.ref("items")]
    basis = say(page, refs, "washed phase", years=years, litres=litres_told(page), places=places, items=items)
    found = sorted((p for p in presences(page.dig, phase.id) if p.k and group_name(page, p)), key=lambda p: -p.k)[
        :SHOWN
    ]
    texts = [
        worded(page, _group_wording(page, p, found[0]), group=group_name(page, p), k=str(p.k), n=str(p.n))[0]
        + unsure(page, p)
        for p in found
    ]
    if texts:
        basis += say(page, [ref for p in found for ref in p.refs], "phase groups", list=grammar.listed(texts))
    basis += stirred_told(page, contexts) + noted_in_places(page, contexts, ("food",))
    blocks = [("basis", basis)]
    for theme, questions in ordered_themes(page):
        if theme not in ("deposit", "change"):
            lead = theme_told(page, questions, at_most=1)
            lead += _where(page, contexts, lead) if lead else []
            more = theme_told(page, questions, at_most=2)
            more += _firmer(page, contexts, more) + hints_told(page, questions)
            more += noted_in_places(page, contexts, ("fuel",)) if "fuel" in questions and lead else []
            blocks.append((theme, lead + more + _astray(page, phase, questions)))
    blocks.append(("open", [s for one in gaps_between(page) if phase in one[:2] for s in _why_left(page, *one[:2])]))
    return closed(page, sections_of(page, blocks))


def _astray(page: Page, phase: Phase, questions: Sequence[str]) -> list[Sentence]:
    """Finds of a plant that carries a reading in another phase, and too few here to carry one."""
    sentences: list[Sentence] = []
    for places in finds_astray(page, phase, questions).values():
        refs = [tally.ref for _, tally in places if tally.ref]
        name = "astray one" if sum(tally.counted for _, tally in places) == 1 else "astray"
        where = places_told(page, [context for (context, _), _ in places])
        sentences += say(page, refs, name, find=finds_summed(page, [t for _, t in places]), places=where)
    return sentences


def _group_wording(page: Page, one: Presence, first: Presence) -> str:
    """How a group is told: of how many samples is said once, where the language has words for that."""
    is_again = one is not first and one.n == first.n and "group in again" in grammar_of(page).language.sentences
    return "group in again" if is_again else "group in"


def _where(page: Page, contexts: Sequence[Context], told: Sequence[Sentence]) -> list[Sentence]:
    """The contexts that make the first reading of a theme too, where they are few enough to be named."""
    claim = page.dig.claims.by_id.get(told[0].refs[0])
    if claim is None:
        return []
    found = [(c, page.dig.claims.find(Subject(level="context", id=c.id), claim.statement)) for c in contexts]
    held = [(c, own) for c, own in found if own is not None and own.verdict == "holds" and own.grade in FIRM]
    held = [(c, own) for c, own in held if not is_hint(own)]
    if not held or len(held) > SHOWN:
        return []
    places = places_told(page, [c.id for c, _ in held])
    return say(page, [own.id for _, own in held], "where one" if len(held) == 1 else "where", places=places)


def _firmer(page: Page, contexts: Sequence[Context], told: Sequence[Sentence]) -> list[Sentence]:
    """The contexts that make a reading just told more firmly than their phase: the best signs of it, and good ones."""
    sentences: list[Sentence] = []
    for id in dict.fromkeys(sentence.refs[0] for sentence in told):
        claim = page.dig.claims.by_id.get(id)
        if claim is None:
            continue
        for grade in reversed(FIRM[1:]):
            found = [(c, page.dig.claims.find(Subject(level="context", id=c.id), claim.statement)) for c in contexts]
            held = [(c, own) for c, own in found if own is not None and own.verdict == "holds" and own.grade == grade]
            if held and FIRM.index(grade) > FIRM.index(claim.grade):
                places = places_told(page, [c.id for c, _ in held])
                name = f"firmer {grade}{' one' if len(held) == 1 else ''}"
                sentences += say(page, [own.id for _, own in held], name, places=places)
    return sentences


def best_signs(page: Page, questions: Sequence[str]) -> list[Sentence]:
    """Of the dig: the places that make readings of some questions as firmly as anything is read."""
    sentences: list[Sentence] = []
    for context in page.dig.project.contexts:
        subject = Subject(level="context", id=context.id)
        for claim in page.dig.claims.holding(subject):
            known = claim.statement in grammar_of(page).language.statements
            if claim.question in questions and claim.grade == FIRM[-1] and known:
                reading = Reading(claim=claim, statement=page.dig.packs.statements[claim.statement], behind=())
                places = places_told(page, [context.id])
                sentences += say(page, [claim.id], "at place", places=places, lead=framed(page, reading))
    return sentences


def _change(page: Page) -> list[Sentence]:
    grammar = grammar_of(page)
    phases = sampled_phases(page)
    first, last = phases[0], phases[-1]
    changed, steady = changed_groups(page, first, last)
    sentences: list[Sentence] = []
    for a, b in changed:
        group = group_name(page, a)
        if group:
            sentences += say(
                page, [*a.refs, *b.refs], "change", group=group, before=k_of_n(page, a), after=k_of_n(page, b),
                years=years_of(page, first) + unsure(page, a), later=years_of(page, last) + unsure(page, b),
            )  # fmt: skip
    groups = [group_name(page, a) for a, _ in steady if group_name(page, a)]
    if groups:
        refs = [ref for a, b in steady for ref in (*a.refs, *b.refs)] or [page.record]
        sentences += say(page, refs, "steady", groups=grammar.listed(groups))
    without_the_same_change(page)
    return sentences + theme_told(page, ("change",))
