"""The whole dig and its phases in a language of its own."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Claim
from narrate.model.ids import Subject
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, setting
from narrate.telling.contexts import sections_of
from narrate.telling.of_note import found_in_another_phase
from narrate.telling.page import Page
from narrate.telling.phase_by_phase import phase_readings
from narrate.telling.plan import Reading, ordered_themes
from narrate.telling.readings_of_phases import held_elsewhere
from narrate.telling.site import without_the_same_change
from narrate.telling.spread import Presence, presences
from narrate.telling.through_time import changed_groups, gaps_between, sampled_phases
from narrate.telling.translated_finds import SHOWN, living_told, with_caution
from narrate.telling.translated_readings import framed, theme_told
from narrate.telling.translated_words import (
    grammar_of,
    group_name,
    k_of_n,
    kind_named,
    litres_told,
    remains_noun,
    say,
    worded,
)


def dig_sections(page: Page) -> tuple[Section, ...]:
    grammar, project = grammar_of(page), page.dig.project
    contexts = {sample.context for sample in project.samples}
    places = grammar.quantity(len(contexts), kind_named(page, "other"), exactly=True)
    items = grammar.quantity(setting.items_counted(page), remains_noun(page))
    refs = [page.record, page.ref("items")]
    blocks = [("basis", say(page, refs, "washed dig", litres=litres_told(page), places=places, items=items))]
    phases = sampled_phases(page)
    is_parted = len(phases) > 1 and _tells_by_phase(page)
    if len(phases) > 1:
        blocks.append(("change", _change(page)))
    for theme, questions in ordered_themes(page):
        if theme not in ("deposit", "change"):
            living = living_told(page) if theme == "food" else []
            # What the counts of all phases say only when they are put together is of no time, and left to specialists.
            read = _by_phase(page, phases, questions) if is_parted else theme_told(page, questions)
            blocks.append((theme, [*read, *living]))
    sections = sections_of(page, blocks)
    # What stays open is a matter of its own, though it be one sentence.
    unanswered = [s for one in gaps_between(page) for s in _why_left(page, *one[:2])]
    said, heading = (*unanswered, *say(page, refs, "open")), page.audience.headings.get("open", "")
    closing = (Section(id="open", heading=heading, paragraphs=(said,)),) if said else ()
    return with_caution(page, (*sections, *closing))


def _why_left(page: Page, before: Phase, after: Phase) -> list[Sentence]:
    """That plants do not say why a place was left and lived in again, where the language has words for it."""
    grammar = grammar_of(page)
    if page.subject.level == "phase":
        return say(page, [page.record], "why ended" if page.subject.id == before.id else "why began")
    years, later = (grammar.years(p.start, p.end, p.dates) or english.literal(p.name) for p in (before, after))
    return say(page, [page.record], "why left", years=years, later=later)


def _tells_by_phase(page: Page) -> bool:
    return all(name in grammar_of(page).language.sentences for name in ("all phases", "one phase"))


SHARED, ALONE = 2, 2
"""Readings of a theme that are told of all phases, and of each phase alone."""


def _by_phase(page: Page, phases: Sequence[Phase], questions: Sequence[str]) -> list[Sentence]:
    """What all phases bear out, and what one of them alone does: counts pooled over centuries are of no time."""
    grammar = grammar_of(page)
    found = [r for r in phase_readings(page, phases, questions) if r.statement in grammar.language.statements]
    shared = [r for r in found if len(r.claims) == len(phases)]
    sentences: list[Sentence] = []
    for reading in shared[:SHARED]:
        refs = [claim.id for _, claim in reading.claims]
        sentences += say(page, refs, "all phases", lead=framed(page, _reading(page, reading.weakest)))
    for phase in phases:
        own = [c for r in found if len(r.claims) == 1 for p, c in r.claims if p.id == phase.id]
        firm = [claim for claim in own if claim.grade in _FIRM]
        for claim in sorted(firm, key=lambda claim: -claim.support)[:ALONE]:
            years = grammar.years(phase.start, phase.end, phase.dates) or english.literal(phase.name)
            is_alone = not held_elsewhere(page, phase, claim.statement)
            is_alone = is_alone and not found_in_another_phase(page, claim, phases)
            name = "one phase" if is_alone else "mainly one phase"
            sentences += say(page, [claim.id], name, years=years, lead=framed(page, _reading(page, claim)))
    return sentences


def _reading(page: Page, claim: Claim) -> Reading:
    return Reading(claim=claim, statement=page.dig.packs.statements[claim.statement], behind=())


def phase_sections(page: Page, phase: Phase) -> tuple[Section, ...]:
    """What was washed of a phase, what was widespread, and each reading with the contexts that make it too."""
    grammar = grammar_of(page)
    contexts = [c for c in page.dig.project.contexts if c.phase == phase.id and page.dig.project.samples_of(c.id)]
    if not contexts or not setting.items_counted(page):
        return ()
    years = grammar.years(phase.start, phase.end, phase.dates) or english.literal(phase.name)
    places = grammar.quantity(len(contexts), kind_named(page, "other"), exactly=True)
    items = grammar.quantity(setting.items_counted(page), remains_noun(page))
    refs = [page.record, page.ref("items")]
    basis = say(page, refs, "washed phase", years=years, litres=litres_told(page), places=places, items=items)
    found = sorted((p for p in presences(page.dig, phase.id) if p.k and group_name(page, p)), key=lambda p: -p.k)[
        :SHOWN
    ]
    texts = [
        worded(page, _group_wording(page, p, found[0]), group=group_name(page, p), k=str(p.k), n=str(p.n))[0]
        for p in found
    ]
    if texts:
        basis += say(page, [ref for p in found for ref in p.refs], "phase groups", list=grammar.listed(texts))
    blocks = [("basis", basis)]
    for theme, questions in ordered_themes(page):
        if theme not in ("deposit", "change"):
            lead = theme_told(page, questions, at_most=1)
            lead += _where(page, contexts, lead) if lead else []
            blocks.append((theme, lead + theme_told(page, questions, at_most=2)))
    blocks.append(("open", [s for one in gaps_between(page) if phase in one[:2] for s in _why_left(page, *one[:2])]))
    return with_caution(page, sections_of(page, blocks))


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
    held = [(c, own) for c, own in found if own is not None and own.verdict == "holds" and own.grade in _FIRM]
    if not held or len(held) > SHOWN:
        return []
    ids = grammar_of(page).listed([english.literal(c.id) for c, _ in held])
    return say(page, [own.id for _, own in held], "where one" if len(held) == 1 else "where", ids=ids)


_FIRM = ("suggests", "supports", "strongly supports")


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
                years=grammar.years(first.start, first.end, first.dates),
                later=grammar.years(last.start, last.end, last.dates),
            )  # fmt: skip
    groups = [group_name(page, a) for a, _ in steady if group_name(page, a)]
    if groups:
        refs = [ref for a, b in steady for ref in (*a.refs, *b.refs)] or [page.record]
        sentences += say(page, refs, "steady", groups=grammar.listed(groups))
    without_the_same_change(page)
    return sentences + theme_told(page, ("change",))
