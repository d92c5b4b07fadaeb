"""Seasons read from plants whose uncharred, modern seeds lie in the same soil: a charred one may be as young."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import english
from narrate.telling.behind import remains_counted
from narrate.telling.page import Page
from narrate.telling.plan import Reading

CHIEF = 0.2
"""Share of the items behind a season from which a plant of it is spoken of (judgement of the makers)."""


def fresh_beside_sentences(page: Page, held: Iterable[Reading]) -> list[Sentence]:
    """
    'Uncharred, modern seeds of elderberry (5) lay in C16 too': of seasons that rest on the same plant.

    Nothing where the deposits that hold both are recorded as sealed.
    """
    if page.is_plain or page.dig.project.preservation != "charred":
        return []
    seasons = [r.claim for r in held if r.claim.question == "season" and r.claim.verdict == "holds"]
    fresh, where, refs = dict[str, int](), dict[str, None](), list[str]()
    for claim in seasons:
        for argument in claim.held("for"):
            counted = [t for t in remains_counted(argument, page.dig.packs, page.found.tallies)
                       if t.condition in page.dig.ancient and t.counted]  # fmt: skip
            items = sum(t.counted for t in counted)
            plants = {t.taxon for t in counted if t.taxon is not None and t.counted >= CHIEF * items}
            for taxon in sorted(plants):
                number, at = _fresh_beside(page, taxon)
                if number:
                    fresh[page.names.food(taxon)] = number
                    where |= dict.fromkeys(at)
                    refs.append(claim.id)
    if not fresh:
        return []
    plants_told = page.listed(f"{name} ({number})" for name, number in fresh.items())
    here = "here" if page.subject.level == "context" else f"in {page.listed(map(english.literal, where))}"
    return page.say(
        refs,
        f"uncharred seeds of {plants_told}, taken as modern, lay {here} as well, where the soil was not sealed: "
        "charred ones may be younger than the rest, and with them this season",
    )


def _fresh_beside(page: Page, taxon: str) -> tuple[int, list[str]]:
    """Uncharred seeds of a plant in unsealed contexts that hold it charred as well, and those contexts."""
    number = 0
    where: list[str] = []
    for context in _contexts(page):
        found = page.dig.found(Subject(level="context", id=context.id))
        if context.security == "sealed" or found is None:
            continue
        own = [t for t in found.tallies if t.taxon == taxon and t.counted]
        late = sum(t.counted for t in own if t.condition not in page.dig.ancient)
        if late and any(t.condition in page.dig.ancient for t in own):
            number, where = number + late, [*where, context.id]
    return number, where


def _contexts(page: Page) -> Iterable[Context]:
    """Those that the subject is made of; of a sample none."""
    project, subject = page.dig.project, page.subject
    if subject.level == "context":
        own = project.find_context(subject.id)
        return () if own is None else (own,)
    if subject.level == "feature":
        return project.contexts_of(subject.id)
    if subject.level == "phase":
        return [context for context in project.contexts if context.phase == subject.id]
    return project.contexts if subject.level == "site" else ()
