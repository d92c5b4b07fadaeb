"""Places of the dig for visitors: by what they were and by their number, never by a bare number."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.telling import english
from narrate.telling.page import Page

AT_MOST = 4
"""Places that one sentence names; more are counted."""


def places_named(page: Page, ids: Iterable[str]) -> str:
    """'hearth C11', 'storage pits C04 and C05, and floor C08': contexts in the project's order, by their kind."""
    wanted = set(ids)
    kinds: dict[str, list[str]] = {}
    for context in page.dig.project.contexts:
        if context.id in wanted:
            kinds.setdefault(context.kind, []).append(english.literal(context.id))
    return page.listed([_of_kind(page, kind, found) for kind, found in kinds.items()])


def places_or_number(page: Page, ids: Iterable[str]) -> str:
    """The places by name, and of more than a few how many they are: 'seven places'."""
    found = list(dict.fromkeys(ids))
    if len(found) > AT_MOST:
        return f"{page.count(len(found))} places"
    named = places_named(page, found)
    if len(found) > 2 and named == page.places_last:
        return f"the same {page.count(len(found))} places"
    page.places_last = named if len(found) > 2 else page.places_last
    return named


def _of_kind(page: Page, kind: str, ids: list[str]) -> str:
    is_many = len(ids) > 1
    called = page.names.kind(kind, plural=is_many) if kind not in ("", "other") else ""
    called = called or ("places" if is_many else "place")
    the = "the " if " of " in called else ""
    return f"{the}{called} {page.listed(ids)}"
