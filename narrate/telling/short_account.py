"""The dig in a few sentences for the summary of a report: change otherwise counted, woods, fires, dates, open ends."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import CHANCE
from narrate.model.ids import TaxonId
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange, PlantGroup
from narrate.model.stratigraphy import Phase
from narrate.model.work_left import own_dates
from narrate.telling import dates_used, english, manner, numbers, setting
from narrate.telling.amounts_told import between
from narrate.telling.behind import is_meant
from narrate.telling.frames import framed, noun_of
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.spread import ids_listed, name_of, out_of_text, statements_held
from narrate.telling.through_time import Pair, changed_groups, gaps_between, sampled_phases

ID = "summary"
"""Of the section; audiences with a heading of that id are told it."""
CHANGES = 2
"""Groups of plants whose change is looked at again."""
EVERYWHERE = ("fuel.wood", "fuel.brush")
"""Readings that every fire bears out."""


def short_account(page: Page) -> list[Sentence]:
    """What stands beside the firmest readings in a summary; nothing for audiences that have no heading for it."""
    if ID not in page.audience.headings:
        return []
    phases = sampled_phases(page)
    sentences: list[Sentence] = []
    changed: list[Pair] = []
    if len(phases) > 1:
        changed = changed_groups(page, phases[0], phases[-1])[0][:CHANGES]
        sentences += _otherwise_counted(page, changed, phases[0], phases[-1])
        sentences += _woods(page, phases[0], phases[-1])
    left = _open(page, changed, phases[0], phases[-1]) if len(phases) > 1 else []
    return sentences + _fires(page) + _dates(page) + left


def _otherwise_counted(page: Page, changed: Sequence[Pair], first: Phase, last: Phase) -> list[Sentence]:
    """'Counted by context, maize was in 5 of 10 and later in 10 of 11; by number it went from nine items to 2,100'."""
    texts: list[str] = []
    numbered: list[str] = []
    soil, unit = "", manner.litre(page.audience, plural=True)
    for a, b in changed:
        was = "" if texts else "was " if a.group.is_singular else "were "
        beyond = _by_itself(page, a.group, first, last)
        if all(1 < one.contexts[1] < one.n for one in (a, b)):
            later = f"later in {out_of_text(*b.contexts)}"
            texts.append(f"{name_of(page, a.group)} {was}in {out_of_text(*a.contexts)} and {later}{beyond}")
        amounts = between(page, a.group.id, first, last)
        if amounts is not None:
            few = page.count(amounts.before.items, *(("item", "items") if not numbered else ()))
            went = "" if numbered else "went "
            numbered.append(f"{name_of(page, a.group)} {went}from {few} to {page.count(amounts.after.items)}")
            both = (amounts.before.litres, amounts.after.litres)
            soil = f" (in {' and '.join(numbers.figure(one, 0) for one in both)} {unit})"
    refs = [ref for pair in changed for one in pair for ref in one.refs]
    parts = [f"counted by context, {page.listed(texts)}"] if texts else []
    parts += [f"by number {page.listed(numbered)}{soil}"] if numbered else []
    return page.say(refs, "; ".join(parts)) if parts and refs else []


def _by_itself(page: Page, group: PlantGroup, first: Phase, last: Phase) -> str:
    """', which by itself may be chance (p 0.063)', where the group is one plant and that was tested."""
    taxa = _taxa(page, group)
    changes = [c for c in page.dig.findings.plants if (c.first, c.last) == (first.id, last.id)]
    tested = next((c for c in changes if [c.taxon] == taxa), None)
    if tested is None or tested.p_contexts_holm < CHANCE:
        return ""
    if tested.p_contexts < CHANCE:
        return f" (p {numbers.figure(tested.p_contexts, 3)}, not significant among all that were tested)"
    return f" (p {numbers.figure(tested.p_contexts, 3)}, not significant by itself)"


def _taxa(page: Page, group: PlantGroup) -> list[TaxonId]:
    tallies = [t for t in page.found.tallies if t.condition in page.dig.ancient and t.taxon]
    return list(dict.fromkeys(t.taxon for t in tallies if t.taxon and is_meant(group.of, t, page.dig.packs)))


def _woods(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """Woods in significantly more or fewer samples, and which of them are so counted by context."""
    alone = {one.what for one in page.dig.findings.only_in_part}
    tested = [c for c in page.dig.findings.woods if (c.first, c.last) == (first.id, last.id)]
    tested = [c for c in tested if f"wood of {c.taxon}" not in alone]
    sure = [c for c in tested if c.p_holm < CHANCE]
    if not sure:
        return []
    ways = [("rose" if rises else "fell", [c for c in sure if c.rises is rises]) for rises in (True, False)]
    told = [f"{page.listed(_wood(page, c, c is sure[0]) for c in found)} {way}" for way, found in ways if found]
    by_context = sorted((c for c in tested if c.p_contexts_holm < CHANCE), key=lambda c: (c.p_contexts, c.taxon))
    names = page.listed(_name(page, c) for c in by_context) if by_context else "none of them"
    refs = [ref for c in (*sure, *by_context) for ref in c.refs]
    differ = english.agreed(max(len(by_context), 1), "differs", "differ")
    lost = [_name(page, c) for c in sure if c not in by_context]
    but = f", and {page.listed(lost)} {english.agreed(len(lost), 'does', 'do')} not" if lost and by_context else ""
    told_again = f"counted by context, {names} {differ} significantly{but}"
    return page.say(refs, f"among the woods, {page.listed(told)} significantly; {told_again}")


def _wood(page: Page, change: PlantChange, is_first: bool) -> str:
    (k, m), (n, of) = change.with_it, change.of_samples
    before = f"{k if k else 'none'} of {n} samples" if is_first else f"{k if k else 'none'} of {n}"
    return f"{_name(page, change)} ({before}, then {m if m else 'none'} of {of})"


def _name(page: Page, change: PlantChange) -> str:
    return page.names.plant(change.taxon, change.taxon)


def _fires(page: Page) -> list[Sentence]:
    """Stores that burned, and fuels other than wood, each with the contexts that bear it out."""
    found: dict[tuple[str, str], list[Reading]] = {}
    for context in page.dig.project.contexts:
        for id, reading in statements_held(page, context.id, ("food", "fuel")).items():
            is_meant_here = id == "food.burned-store" or (reading.claim.question == "fuel" and id not in EVERYWHERE)
            if is_meant_here and reading.rank >= 3:
                found.setdefault((id, reading.claim.grade), []).append(reading)
    sentences: list[Sentence] = []
    by_grade: dict[str, list[list[Reading]]] = {}
    for (_, grade), readings in sorted(found.items()):
        by_grade.setdefault(grade, []).append(readings)
    for grade, groups in by_grade.items():
        nouns = [f"{noun_of(page, one[:1])} in {ids_listed(page, [r.claim.about.id for r in one])}" for one in groups]
        refs = [reading.claim.id for one in groups for reading in one]
        text = f"{'; '.join(nouns[:-1])}; and {nouns[-1]}" if len(nouns) > 2 else page.listed(nouns)
        sentences += page.say(refs, framed(page, grade, "").replace("{noun}", text))
    return sentences


def _dates(page: Page) -> list[Sentence]:
    """How many dates there are, and the crops of which a piece was itself dated."""
    dates = dates_used.given(page)
    if not dates:
        return []
    many = page.count(len(dates), "radiocarbon date was", "radiocarbon dates were")
    names = dict.fromkeys(
        page.names.plant(finds[0].find.taxon, finds[0].find.written) for finds in dates_used.crops_dated(page).values()
    )
    own = f"; of crops {page.listed(names)} {english.agreed(len(names), 'was', 'were')} dated by pieces of their own"
    own = own.replace("pieces of their own", "a piece of its own") if len(names) == 1 else own if names else ""
    return page.say([page.record, *dates_used.refs_of(page, dates)], f"{many} taken{own}")


def _open(page: Page, changed: Sequence[Pair], first: Phase, last: Phase) -> list[Sentence]:
    """What the plants leave open: why phases ended and began, and whether finds that are few are of their phase."""
    gaps = gaps_between(page)
    texts = [f"why {setting.phase_name(a)} ended or why {setting.phase_name(b)} began" for a, b, _ in gaps]
    refs = [page.record]
    asked = {step.about.id for step in own_dates(page.dig.claims)}
    for a, b in changed:
        few, phase = (a, first) if a.share < b.share else (b, last)
        in_doubt = [c.id for c in page.dig.project.contexts if c.phase == phase.id and c.id in asked]
        if few.k and in_doubt and dates_used.undated(page, _taxa(page, few.group), phase):
            finds = f"the finds of {name_of(page, few.group)} in {setting.phase_name(phase)}"
            texts.append(f"whether {finds}, of which none was dated, belong there")
            refs += few.refs
    return page.say(refs, f"what stays open is {page.listed(texts)}") if texts else []
