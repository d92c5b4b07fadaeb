"""Contexts of one feature: fills of one pit are no independent pits, wherever contexts of a kind are counted."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from narrate.model.stratigraphy import Context
from narrate.telling import english
from narrate.telling.page import Page
from narrate.telling.spread import ids_listed


def features_of(contexts: Iterable[Context]) -> list[list[Context]]:
    """Contexts put together by their feature, in the order given; one without a feature stands by itself."""
    parted: dict[str, list[Context]] = {}
    for context in contexts:
        parted.setdefault(f"feature {context.feature}" if context.feature else context.id, []).append(context)
    return list(parted.values())


def kinds_counted(page: Page, kind: str, members: Sequence[Context]) -> str:
    """'two hearths', and where some share a feature 'fills of two storage pits' or 'contexts of two middens'."""
    many, named = len(features_of(members)), page.names.kind(kind, plural=True)
    if many == len(members):
        return f"{page.count(many)} {named}"
    one = page.names.kind(kind)
    parts = "fills" if "pit" in one.split() else "places" if page.is_plain else "contexts"
    return f"{parts} of {f'{page.count(many)} {named}' if many > 1 else f'one {one}'}"


def places_listed(page: Page, ids: Sequence[str]) -> str:
    """'C06, and C04 with C05 of the same pit': contexts by id, those of one feature together and last."""
    known = {context.id: context for context in page.dig.project.contexts}
    parted = features_of(known[id] for id in ids if id in known)  # type: ignore[index]
    if len(parted) == len(ids) or len(parted) == 1:
        return ids_listed(page, ids)
    alone = [group[0].id for group in parted if len(group) == 1]
    together = [_of_the_same(page, group) for group in parted if len(group) > 1]
    return f"{ids_listed(page, alone)}, and {page.listed(together)}" if alone else "; and ".join(together)


def _of_the_same(page: Page, group: Sequence[Context]) -> str:
    """'C04 with C05 of the same pit'."""
    first, *rest = (english.literal(context.id) for context in group)
    kinds = {context.kind for context in group}
    called = page.names.kind(kinds.pop()).split()[-1] if len(kinds) == 1 else "feature"
    return f"{first} with {page.listed(rest)} of the same {called}"
