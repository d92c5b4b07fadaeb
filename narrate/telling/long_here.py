"""Plants that many take for newcomers: the works that had them in the region long before, and what grows today."""

from __future__ import annotations

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.telling import english
from narrate.telling.citations import works_cited
from narrate.telling.old_finds import is_wood
from narrate.telling.page import Page
from narrate.telling.spread import ids_listed


def long_here_sentences(page: Page) -> list[Sentence]:
    """
    'Purslane and carpetweed are taken for plants of their phases: works have them in the region before contact …'.

    Beside it stands where their uncharred seeds lay, since what grows on the spot today may have burned there too.
    """
    if page.is_plain or page.is_review:
        return []
    packs = page.dig.packs
    found = [t for t in page.found.tallies if t.taxon in packs.taxa and packs.taxa[t.taxon].long_here]  # type: ignore[index]
    old = _one_each([t for t in found if t.condition in page.dig.ancient and t.counted])
    if not old:
        return []
    keys = [key for t in old for key in packs.taxa[t.taxon].long_here]  # type: ignore[index]
    cited = works_cited(page, dict.fromkeys(keys))
    refs = [t.ref for t in found if t.ref]
    names = page.listed([page.names.plant(t.taxon, t.written) for t in old])
    is_one = len(old) == 1
    has, a_plant = ("has", "a plant of its phase") if is_one else ("have", "plants of their phases")
    newcomers, is_counted = ("a newcomer", "is counted") if is_one else ("newcomers", "are counted")
    told = (
        f"{names}, often taken for {newcomers}, {has} been in the region since long before contact and {is_counted} as "
        f"{a_plant}"
    )
    sentences = page.say(refs, english.in_last_brackets(told, cited))
    return sentences + _growing_today(page, [t.taxon for t in old if t.taxon])


def _growing_today(page: Page, taxa: list[str]) -> list[Sentence]:
    """How many of their uncharred seeds lay where, in the contexts of the dig."""
    number: dict[str, int] = {}
    where: list[str] = []
    refs: list[str] = []
    for context in page.dig.project.contexts:
        held = page.dig.found(Subject(level="context", id=context.id))
        for tally in held.tallies if held is not None else ():
            is_fresh = tally.condition not in page.dig.ancient and not is_wood(page, tally)
            if tally.taxon in taxa and is_fresh and tally.counted:
                name = page.names.plant(tally.taxon, tally.written)
                number[name] = number.get(name, 0) + tally.counted
                where += [] if context.id in where else [context.id]
                refs += [tally.ref] if tally.ref else []
    if not number:
        return []
    counted = page.listed([f"{page.names.figure(n)} of {name}" for name, n in number.items()])
    seeds = english.agreed(sum(number.values()), "uncharred seed", "uncharred seeds")
    they_grow = "it grows" if len(number) == 1 else "they grow"
    return page.say(
        refs or [page.record],
        f"{seeds} ({counted}) lay in {ids_listed(page, where, at_most=len(where))}: {they_grow} on the spot today, so "
        "that in deposits that are not sealed a charred seed may be younger than the rest",
    )


def _one_each(tallies: list[Tally]) -> list[Tally]:
    first: dict[str, Tally] = {}
    for tally in sorted(tallies, key=lambda t: -t.counted):
        first.setdefault(str(tally.taxon), tally)
    return list(first.values())
