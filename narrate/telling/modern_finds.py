"""Fresh finds that are taken as modern intrusion, and what they were."""

from __future__ import annotations

from narrate.model.ids import ContextId
from narrate.model.narrative import Sentence
from narrate.model.signs import signs_in
from narrate.telling import english
from narrate.telling.old_finds import is_wood
from narrate.telling.page import Page
from narrate.telling.plant_names import UNKNOWN


def modern_sentences(page: Page) -> list[Sentence]:
    """Uncharred seeds, told as modern and set aside; nothing where there are none."""
    modern = page.measure("modern_seeds")
    number = int(modern.value) if modern is not None and modern.value else 0
    if not number or page.dig.project.preservation != "charred":
        return []
    claim = page.dig.claims.find(page.subject, "integrity.modern-seeds")
    refs = [page.ref("modern_seeds")] + ([claim.id] if claim is not None else [])
    if claim is not None:
        page.told.add(claim.id)
    if page.is_plain:
        seeds = f"{page.about(number)} {english.agreed(number, 'seed', 'seeds')}"
        return page.say(
            refs,
            f"{seeds} in this soil had never been burned: we take them to be modern and leave them out",
            f"we also found {seeds} that no fire had touched, and we set them aside as modern",
        )
    kinds, fresh = _modern_kinds(page, number), _fresh(page)
    seeds = "one further uncharred seed" if number == 1 else f"a further {page.count(number)} uncharred seeds"
    are = english.agreed(number, "is", "are")
    return page.say(
        refs,
        f"{seeds}{kinds} {are} taken as modern intrusion and left out of what follows{fresh}",
        f"not counted here {are} {page.count(number, 'uncharred seed', 'uncharred seeds')}{kinds}, taken as modern "
        f"intrusion{fresh}",
    )


FRESH = "fresh seeds"
"""Id of the observation that seeds were fresh or sprouted."""


def _fresh(page: Page) -> str:
    """': the laboratory notes “shiny, several sprouted” of lambsquarters', in the account of a context."""
    signs = page.dig.signs
    if page.subject.level != "context" or page.is_review or signs is None:
        return ""
    of_quote: dict[str, list[str]] = {}
    for sample in page.dig.project.samples_of(ContextId(page.subject.id)):
        for row in page.dig.notes.get(sample.id, ()):
            seen = {observation.id for observation, _, _ in signs_in(signs, row.note, "find")}
            if row.condition not in page.dig.ancient and FRESH in seen:
                name = page.names.plant(row.identification.taxon, row.identification.written)
                named = of_quote.setdefault(row.note, [])
                named += [] if name in named else [name]
    if not of_quote:
        return ""
    quoted = [f"“{english.literal(quote)}” of {page.listed(names)}" for quote, names in of_quote.items()]
    return f"; the laboratory notes {page.listed(quoted)}"


MODERN_NAMED = 3
"""Kinds of uncharred seeds that are all named; of more the two commonest (judgement of the makers)."""


def _modern_kinds(page: Page, number: int) -> str:
    """' (5 of elderberry and 3 of purslane)', of many kinds ' (chiefly 109 of goosefoot and 85 of chickweed)'."""
    found: dict[str, int] = {}
    for tally in page.found.tallies:
        is_late = tally.condition not in page.dig.ancient and not is_wood(page, tally)
        if tally.counted and is_late and tally.taxon in page.dig.packs.taxa:
            name = page.names.plant(tally.taxon, tally.written)
            found[name] = found.get(name, 0) + tally.counted
    named = sorted((name for name in found if name not in UNKNOWN), key=lambda name: (-found[name], name))
    if not named:
        return ""
    if number == 1:
        return f" (of {named[0]})"
    is_all = len(named) <= MODERN_NAMED and sum(found[name] for name in named) == number
    shown = named if is_all else named[:2]
    counted = page.listed([f"{page.names.figure(found[name])} of {name}" for name in shown])
    if is_all and len(named) == 1:
        return f" (all of {named[0]})"
    return f" ({'' if is_all else 'chiefly '}{counted})"
