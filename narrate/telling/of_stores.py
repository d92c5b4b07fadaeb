"""Stores among the contexts of a season: what lay in them, which is news, and not that a store keeps food."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Argument, Claim, Claims
from narrate.model.ids import Subject
from narrate.telling import english
from narrate.telling.old_finds import is_wood
from narrate.telling.page import Page
from narrate.telling.places_named import places_named
from narrate.telling.spread import ids_listed

NAMED = 4
"""Contexts of which it is told what lay there."""


def only_keeping(page: Page, groups: Sequence[Sequence[tuple[str, Claim, Argument]]]) -> list[str]:
    """
    That contexts give no season for what lay in them: a store that keeps food is no surprise, its content is news.

    Empty where something else than a season is read, or speaks against it.
    """
    every = [(id, claim, argument) for group in groups for id, claim, argument in group]
    if any(claim.question != "season" or "no soft fruit" not in argument.says for _, claim, argument in every):
        return []
    told = [_chief_of(page, id) for id, _, _ in every[:NAMED]]
    if not all(plant for plant, _, _ in told):
        return []
    ids = ids_listed(page, [id for id, _, _ in every])
    if page.is_plain:
        plants = page.listed(list(dict.fromkeys(plant for plant, _, _ in told)))
        keeps = "which keeps for months" if len({plant for plant, _, _ in told}) == 1 else "which keep for months"
        ids = places_named(page, [id for id, _, _ in every])
        return [f"but what lay in {ids} may have burned in any season: most of it was {plants}, {keeps}"]
    parts = [
        f"{plant}, which keeps, makes up {number} of {items} items besides wood{f' of {id}' * (len(told) > 1)}"
        for (plant, number, items), (id, _, _) in zip(told, every, strict=False)
    ]
    held = english.agreed(len(every), "it held", "they held")
    one, many = "leaves open the season of its own deposit", "leave open the seasons of their own deposits"
    leaves = english.agreed(len(every), one, many)
    return [f"{ids} {leaves}: {page.listed(parts)}, and {held} no soft fruit"]


def _chief_of(page: Page, id: str) -> tuple[str, str, str]:
    """The plant that makes up most of a context, its items and all items there; empty where none does."""
    found = page.dig.findings.subjects.get(Subject(level="context", id=id))
    tallies = [t for t in found.tallies if t.condition in page.dig.ancient and t.counted] if found else []
    tallies = [t for t in tallies if not is_wood(page, t)]
    numbers_of: dict[str, int] = {}
    for tally in tallies:
        name = page.names.food(tally.taxon, tally.written)
        numbers_of[name] = numbers_of.get(name, 0) + tally.counted
    chief, items = max(numbers_of, key=lambda n: numbers_of[n], default=""), sum(numbers_of.values())
    if not chief or 2 * numbers_of[chief] <= items:
        return ("", "", "")
    return chief, page.names.figure(numbers_of[chief]), page.names.figure(items)


def is_burned_store(claims: Claims, subject: Subject) -> bool:
    """Whether a store was lost to fire where it lay: then what lies there is the store, and no later fill."""
    claim = claims.find(subject, "food.burned-store")
    return claim is not None and claim.verdict == "holds"
