"""The narrative of the whole dig: phases compared, like with like, and what the contexts say together."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Section, Sentence
from narrate.model.work_left import own_dates
from narrate.telling import context_opening, english, openings, setting
from narrate.telling.alike import phases_compared
from narrate.telling.between_phases import times_sentences, unanswered_sentences
from narrate.telling.change_by_kind import alike_sentences
from narrate.telling.change_tested import amount_sentences, tested_sentences
from narrate.telling.contexts import DATABLE, OF_THE_DIG
from narrate.telling.dates_used import dates_sentences
from narrate.telling.exceptions_told import STORIES
from narrate.telling.frames import framed, noun_of, that_clauses
from narrate.telling.insecure import insecure_sentences
from narrate.telling.long_here import long_here_sentences
from narrate.telling.next_work import own_date_sentences, undone_sentences
from narrate.telling.page import Page
from narrate.telling.phases import headed, richest_sentences, spread_sentences, theme_blocks
from narrate.telling.places_named import places_named
from narrate.telling.plan import Reading, readings
from narrate.telling.recovery import lost_sentences
from narrate.telling.sentences import plainly_told
from narrate.telling.short_account import ID as SUMMARY
from narrate.telling.short_account import short_account
from narrate.telling.spread import (
    ids_listed,
    presences,
    statements_held,
)
from narrate.telling.through_time import change_sentences, elsewhere_sentences, sampled_phases
from narrate.telling.unmeasured import unmeasured_sentences
from narrate.telling.wood_notes import timber_sentences
from narrate.telling.woods_changed import wood_change_sentences


def site_sections(page: Page) -> tuple[Section, ...]:
    """Basis, change through time, each theme over the dig, and what stays open."""
    project = page.dig.project
    if not project.samples:
        return headed(page, [("basis", page.say([page.record], "no samples were taken from the dig"))])
    if not setting.items_counted(page):
        return headed(page, [("basis", context_opening.empty_sentences(page, "the dig"))])
    blocks = [("basis", _basis(page))]
    phases = sampled_phases(page)
    if len(phases) > 1:
        first, last = phases[0], phases[-1]
        blocks.append(("change", change_sentences(page, first, last)))
        blocks.append(("change", amount_sentences(page, first, last)))
        blocks.append(("change", alike_sentences(page, first, last) + phases_compared(page, first, last)))
        blocks.append(("change", tested_sentences(page, first, last)))
        blocks.append(("change", elsewhere_sentences(page)))
    else:
        found = [p for p in presences(page.dig) if p.k]
        blocks.append(("basis", [*spread_sentences(page, found), *elsewhere_sentences(page)]))
    without_the_same_change(page)
    blocks += theme_blocks(page, project.contexts)
    blocks.append(("food", unmeasured_sentences(page)))
    blocks.append(("field", long_here_sentences(page)))
    woods = wood_change_sentences(page, phases[0], phases[-1]) if len(phases) > 1 else []
    blocks.append(("change", [*woods, *timber_sentences(page)]))
    if "dates" in page.audience.headings:
        blocks.append(("dates", dates_sentences(page)))
    blocks.append(("firmest", _firmest(page)))
    blocks.append(("open", _open(page)))
    blocks.append(("next", _next(page)))
    blocks.append((SUMMARY, short_account(page)))
    return headed(page, blocks)


SAME_CHANGE = {
    "change.maize-cob-fuel-rises": "change.maize-rises", "change.maize-cob-fuel-declines": "change.maize-declines",
}  # fmt: skip
"""Changes that follow from another: cob parts are maize, and spread where it spreads."""


def without_the_same_change(page: Page) -> None:
    """Counts as told what says no more than a change that holds beside it."""
    for statement, chief in SAME_CHANGE.items():
        part, whole = (page.dig.claims.find(page.subject, name) for name in (statement, chief))
        if part is not None and whole is not None and whole.verdict == "holds":
            page.told.add(part.id)


def _basis(page: Page) -> list[Sentence]:
    project = page.dig.project
    contexts = {sample.context for sample in project.samples}
    refs = [page.record, page.ref("items")]
    samples, litres, items = setting.samples_text(page), setting.litres_text(page), setting.items_text(page)
    places = page.count(len(contexts), "context", "contexts")
    if page.is_plain:
        spots = page.count(len(contexts), "place", "places")
        soil = f"{litres} of soil" if page.found.litres is not None else "soil"
        sentences = times_sentences(page)
        sentences += page.say(refs, f"we washed {soil} from {spots} on the dig and picked out {items}")
    else:
        sentences = page.say(
            refs,
            f"the account rests on {samples} ({litres}) from {places}, which gave {items}",
        )
        empty = page.found.samples - page.found.samples_with_remains
        if empty:
            sentences += page.say(
                [page.record],
                f"{page.count(empty, 'sample', 'samples')} held nothing; "
                f"{english.agreed(empty, 'it is', 'they are')} kept, since shares are reckoned over all samples",
            )
    lost = lost_sentences(page, project.samples, with_places=True)
    insecure = insecure_sentences(page, project.contexts)
    return sentences + _outside_phases(page) + insecure + lost + richest_sentences(page)


def _outside_phases(page: Page) -> list[Sentence]:
    """How many samples belong to no phase, where phases are compared: so that their numbers add up for the reader."""
    project = page.dig.project
    outside = [s for s in project.samples if project.phase(project.context(s.context).phase) is None]
    if not outside or len(sampled_phases(page)) < 2 or page.is_plain:
        return []
    belong = english.agreed(len(outside), "belongs to no phase and stands", "belong to no phase and stand")
    return page.say(
        [page.record], f"{page.count(len(outside), 'sample', 'samples')} {belong} outside the comparison of phases"
    )


def _firmest(page: Page) -> list[Sentence]:
    """The contexts whose readings are firmest: where the dig's story is told best."""
    best: dict[str, Reading] = {}
    stories: dict[str, list[Reading]] = {}
    for context in page.dig.project.contexts:
        held = statements_held(page, context.id, ("fuel", "food", "processing", "season", "field")).values()
        firm = sorted((r for r in held if r.rank >= 3), key=lambda r: (-r.rank, -r.claim.support, r.claim.id))
        if firm:
            best[context.id] = firm[0]
            stories[context.id] = [r for r in firm if r.rank == firm[0].rank and r.claim.statement in STORIES]
    ordered = sorted(best.items(), key=lambda pair: (-pair[1].rank, -pair[1].claim.support, pair[0]))[:4]
    if len(ordered) < 2:
        return []
    contexts = {c.id: c for c in page.dig.project.contexts}
    places: dict[str, list[str]] = {}
    for id, reading in ordered:
        places.setdefault(noun_of(page, [reading], in_short=True), []).append(setting.context_name(page, contexts[id]))  # type: ignore[index]
    texts = [f"{noun} in {page.listed(at)}" for noun, at in places.items()]
    refs = [reading.claim.id for _, reading in ordered]
    told_as = f"{'; '.join(texts[:-1])}; and {texts[-1]}" if len(texts) > 2 else page.listed(texts)
    if page.is_plain:
        # Of readings alike in firmness, visitors are told what happened at a place and not what was used there.
        return _clearest(page, [(stories[id] or [reading])[0] for id, reading in ordered])
    return page.say(refs, f"the firmest single readings are of {told_as}")


def _clearest(page: Page, firm: Sequence[Reading]) -> list[Sentence]:
    """For visitors: the places that tell their story best, each story in the frame of its grade."""
    many = page.count(len(firm), "place tells", "places tell")
    sentences = page.say([r.claim.id for r in firm], f"{many} us {'its' if len(firm) == 1 else 'their'} story best")
    by_clause: dict[tuple[str, str], list[Reading]] = {}
    for reading in firm:
        by_clause.setdefault((reading.claim.grade, that_clauses(page, [reading])), []).append(reading)
    for (grade, clause), found in by_clause.items():
        where = places_named(page, [r.claim.about.id for r in found])
        # What is read of another place is no 'also' of this one.
        said = framed(page, grade, clause)
        comma = "" if said.startswith("our ") else ","
        sentences += page.say([r.claim.id for r in found], f"in {where}{comma} {said}")
    return sentences


def _datable(page: Page) -> list[Sentence]:
    """Contexts that hold short-lived material fit for dating, in one sentence."""
    found = []
    for context in page.dig.project.contexts:
        claim = page.dig.claims.find(Subject(level="context", id=context.id), DATABLE)
        if claim is not None and claim.verdict == "holds" and claim.grade != "not supported":
            found.append(claim)
    if not found:
        return []
    dated = page.dig.project.dated_contexts()
    rest = [claim for claim in found if claim.about.id not in dated]
    already = [claim.about.id for claim in found if claim.about.id in dated]
    refs = [claim.id for claim in found]
    if not rest:
        return page.say(refs, "whatever context holds short-lived material fit for radiocarbon dating has been dated")
    where = ids_listed(page, [claim.about.id for claim in rest], at_most=len(rest))
    many = page.count(len(rest), "context", "contexts")
    others = ids_listed(page, already, at_most=len(already)) if already else ""
    beside = f", beside {others}, from which dates were taken" if already else ""
    return page.say(refs, f"short-lived material fit for radiocarbon dating lies in {many} ({where}){beside}")


def _open(page: Page) -> list[Sentence]:
    held = readings(page, page.dig.claims.holding(page.subject))
    told_anywhere = {
        claim.question
        for context in page.dig.project.contexts
        for claim in page.dig.claims.holding(Subject(level="context", id=context.id))
    }
    questions = [q for q in ("fuel", "food", "field", "season") if q in page.audience.plan and q not in told_anywhere]
    about = page.dig.claims.about(page.subject) if questions else ()
    claims = [c for c in about if c.question in questions and c.verdict == "cannot tell"]
    asked = [q for q in questions if any(c.question == q for c in claims)]
    sentences: list[Sentence] = []
    if asked:
        matters = page.listed([openings.MATTERS[q][1 if page.is_plain else 0] for q in asked], word="or")
        sentences += page.say(
            [c.id for c in claims],
            f"nowhere on the dig do the remains say {matters}"
            if not page.is_plain
            else f"we still do not know {matters}",
        )
    sentences += unanswered_sentences(page)
    if page.is_plain:
        return sentences + page.say(
            [page.record, page.ref("items")],
            "what we found is only what fire kept, and plants that no fire touched are missing from this story",
        )
    return sentences + openings.limit_sentences(page, [r for r in held if r.claim.question != "work"])


def _next(page: Page) -> list[Sentence]:
    """What could be done: material to date, and work that would help."""
    if page.is_plain:
        return []
    held = readings(page, page.dig.claims.holding(page.subject))
    work = [item for item in held if item.claim.question == "work" and item.claim.statement not in OF_THE_DIG]
    sentences = _datable(page) + plainly_told(page, work)
    return sentences + own_date_sentences(page, own_dates(page.dig.claims)) + undone_sentences(page)
