"""A subject in one sentence, for lists, cards and the summary of a report."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import PhaseId
from narrate.model.narrative import Sentence
from narrate.telling import english, setting
from narrate.telling.contexts import NOT_NEWS
from narrate.telling.frames import frame
from narrate.telling.lots import FOOD_GROUPS
from narrate.telling.page import Page
from narrate.telling.plan import TOO_FEW, Reading, standing
from narrate.telling.spread import name_of, out_of, presence
from narrate.telling.through_time import CHANGE_OF, sampled_phases


def summary_sentence(page: Page, name: str, held: Sequence[Reading]) -> Sentence | None:
    """
    One sentence for lists and cards: the firmest reading, else how much there was.

    Where the remains are too few to be read, that is what it says.
    """
    items = setting.items_text(page)
    refs = [page.ref("items"), page.record]
    too_few = [item.claim.id for item in held if item.claim.statement == TOO_FEW]
    if too_few and setting.items_counted(page):
        small = "too little to tell us much" if page.is_plain else f"{items}, too few to be read on their own"
        return Sentence(text=english.finished(f"{name}: {small}"), refs=(*refs, *too_few))
    held = [r for r in held if r.claim.statement not in NOT_NEWS and standing(r.claim) == "reading"]
    chosen = [item for item in held if item.claim.question not in ("integrity", "work", "deposit")]
    changes = [item for item in chosen if item.claim.question == "change"]
    if changes:
        # For the whole dig, what changed is the news.
        chosen = chief_changes(changes)
    else:
        chosen = _uses_first(chosen)
    if not chosen:
        chosen = [item for item in held if item.claim.question == "deposit"]
    if not chosen or setting.items_counted(page) == 0:
        text = f"{name}: {items}" if setting.items_counted(page) else f"{name}: nothing found"
        return Sentence(text=english.finished(text), refs=tuple(refs))
    known = page.audience.frames.get(chosen[0].claim.grade, ())
    lead = frame(page, _same(chosen), "lead")
    if not known or not lead:
        return Sentence(text=english.finished(f"{name}: {items}"), refs=tuple(refs))
    refs += [item.claim.id for item in _same(chosen)]
    if page.is_plain:
        return Sentence(text=english.finished(f"{name}: {lead}"), refs=tuple(refs[2:]))
    counts, behind = _counts(page, _same(chosen))
    return Sentence(text=english.finished(f"{name}, {items}: {lead}{counts}"), refs=(*refs, *behind))


def _uses_first(items: Sequence[Reading]) -> list[Reading]:
    """Among readings of one grade, what people did with a thing before where and when it grew."""
    alike = [r for r in items if r.claim.grade == items[0].claim.grade] if items else []
    return [*sorted(alike, key=lambda r: r.claim.question in ("season", "field")), *items[len(alike) :]]


def _counts(page: Page, chosen: Sequence[Reading]) -> tuple[str, list[str]]:
    """'; maize was in 6 of 23 samples and later in 24 of 27': what a phase or the dig rests on, and its refs."""
    known = {group.id: group for group in page.dig.packs.plant_groups}
    phases: list[PhaseId | None] = []
    if page.subject.level == "phase":
        phases = [PhaseId(page.subject.id)]
    elif page.subject.level == "site" and chosen[0].claim.question == "change":
        sampled = sampled_phases(page)
        phases = [sampled[0].id, sampled[-1].id] if len(sampled) > 1 else []
    texts: list[str] = []
    names: list[str] = []
    shares: set[str] = set()
    refs: list[str] = []
    for reading in chosen if phases else ():
        group = known.get(_group_of(reading.claim.statement))
        found = [presence(page.dig, group, phase) for phase in phases] if group is not None else []
        if group is None or not all(one.n for one in found):
            continue
        verb = "" if texts else "was " if group.is_singular else "were "
        parts = " (any part)" if group.is_singular and len(phases) == 1 else ""
        names.append(f"{name_of(page, group)}{parts}")
        shares.add(" ".join(out_of(one) for one in found))
        figures = [f"in {out_of(one)}{' samples' if not texts and i == 0 else ''}" for i, one in enumerate(found)]
        texts.append(f"{names[-1]} {verb}{' and later '.join(figures)}")
        refs += [ref for one in found for ref in one.refs[:1]]
    if len(phases) == 1 and len(names) > 1 and len(shares) == 1:
        return f"; {page.listed(names)} were each in {shares.pop()} samples", refs
    mark = ", " if len(phases) > 1 and len(texts) > 1 else ""
    return (f"; {mark.join(texts) if mark else page.listed(texts)}" if texts else ""), refs


def _group_of(statement: str) -> str:
    """The group of plants that a change or a food is about; empty where there is none."""
    changed = next((group for group, prefix in CHANGE_OF.items() if statement.startswith(prefix)), "")
    return changed or FOOD_GROUPS.get(statement, "")


CHIEF_CHANGES = (
    ("change.maize-rises", "change.maize-declines"),
    ("change.native-seeds-decline", "change.native-seeds-rise"),
)
"""Changes that are told before others."""


def chief_changes(changes: Sequence[Reading]) -> list[Reading]:
    """The firmest changes of one grade, two at most, those that the dig is dug for first."""
    alike = [item for item in changes if item.claim.grade == changes[0].claim.grade]
    chief = [next((r for r in alike if r.claim.statement in names), None) for names in CHIEF_CHANGES]
    return [r for r in chief if r is not None] or alike[:2]


def _same(items: Sequence[Reading]) -> list[Reading]:
    lead = items[0]
    if lead.claim.question == "change":
        return list(items)
    if lead.is_food:
        return [item for item in items if item.is_food and item.claim.grade == lead.claim.grade]
    return [lead]
