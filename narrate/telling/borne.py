"""Readings of a phase or dig with the contexts that make them too, and those that speak against them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES, Argument, Claim
from narrate.model.ids import Subject
from narrate.model.stratigraphy import Context
from narrate.telling.foods_once import is_told_with_another_food
from narrate.telling.harvest import in_word_of_season
from narrate.telling.page import Page
from narrate.telling.plan import Reading, is_hint, standing
from narrate.telling.spread import NOT_LISTED, is_too_few, placed_readings

EXPECTED = ("fuel.wood", "season.more-than-one")
"""Readings that nearly every deposit bears: where they were made is no news."""


NAMED = 4
"""Contexts that are all named in running text."""


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


def readings_borne(
    page: Page, read: Sequence[Context], questions: Sequence[str], held: Sequence[Reading]
) -> list[Borne]:
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
        carried = [(id, c) for id, c in firm if not is_hint(c)]
        carried.sort(key=lambda pair: (-GRADE_NAMES.index(pair[1].grade), -pair[1].support))
        against = [(id, c, a) for id, c in known if c.verdict != "holds" for a in c.held("against")[:1]]
        noun = page.in_own_words(statement.plain_noun if page.is_plain else statement.noun)
        hints = [(id, c) for id, c in firm if is_hint(c)]
        noun = in_word_of_season(page, noun, [c for _, c in carried or hints])
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
                    weak=tuple(
                        id for id, c in known
                        if c.verdict == "holds" and c.grade == "consistent with" and standing(c) == "reading"
                    ),
                )
            )
    return found
