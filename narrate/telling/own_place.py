"""Reasons that a rule gives for several kinds of place, told of the one place that is meant."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.telling import english
from narrate.telling.page import Page

_WORDINGS: tuple[tuple[str, str], ...] = (
    (
        "the place is a store or burned building, and no soft fruit of autumn is among the plants",
        "it is {a kind}, where plants may have been kept, and no soft fruit that would give it a season was found",
    ),
    ("the place is a store or burned building", "the place is {a kind}"),
    ("in a store or building that burned", "in {a burned kind}"),
    ("in a store or a burned building", "in {a kind}"),
    ("in a store or building", "in {a kind}"),
    ("plants of autumn lay in a store", "plants of autumn lay in {a kind}"),
    ("left in a store that burned", "left in {a burned kind}"),
    ("left in a burned store", "left in {a burned kind}"),
)
"""What rules say of a store or a house, and the same of a kind of context."""

_IS_MEANT = re.compile("|".join(re.escape(text) for text, _ in _WORDINGS))


def of_its_place(page: Page, text: str, contexts: Sequence[str] = ()) -> str:
    """
    'The place is a storage pit' for 'the place is a store or burned building', where it is known which place is meant.

    contexts: the ids of those that a reason is of; left out, that of the page, and none where the page is of several.
    """
    if not _IS_MEANT.search(text):
        return text
    ids = contexts or ([page.subject.id] if page.subject.level == "context" else [])
    kinds = list(dict.fromkeys(c.kind for c in page.dig.project.contexts if c.id in ids))
    if not kinds or any(page.names.kind_known(kind) is None or kind == "other" for kind in kinds):
        return text
    if len(ids) > 1:
        one_kind = [page.names.kind(kind, plural=True) for kind in kinds]
        several = [english.with_article(page.names.kind(kind)) for kind in kinds]
        named = page.listed(one_kind if len(kinds) == 1 else several)
        return text.replace("the place is a store or burned building", f"the places are {named}")
    named = page.names.kind(kinds[0])
    is_burned = re.search(r"\bburn", named) is not None
    bare = re.sub(r"^burned structure$", "building", named) if not page.is_plain else named.removeprefix("burned ")
    burned = f"{english.with_article(bare)} that burned" if is_burned else english.with_article(named)
    for before, after in _WORDINGS:
        after = after.replace("{a burned kind}", burned).replace("{a kind}", english.with_article(named))
        text = text.replace(before, after)
    return text
