"""For visitors: finds that the laboratory noted as a crop's wild kin, in a phase that counts them with the crop."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling.lots import FOOD_GROUPS
from narrate.telling.observations import Noted, notes_of
from narrate.telling.page import Page
from narrate.telling.places_named import places_named
from narrate.telling.spread import name_of, presences


def wild_kin_sentences(page: Page, contexts: Sequence[Context]) -> list[Sentence]:
    """'In rubbish heap C16 at least one goosefoot seed had a thick coat, as the wild plant has, and we count …'."""
    if not page.is_plain or page.subject.level != "phase":
        return []
    places: dict[str, list[tuple[Context, Noted]]] = {}
    for context in contexts:
        for note in notes_of(page, context):
            if _is_of_wild_kin(page, note):
                places.setdefault(note.observation.plain, []).append((context, note))
    sentences: list[Sentence] = []
    for plain, seen in places.items():
        refs = list(dict.fromkeys(note.ref for _, note in seen))
        where = places_named(page, list(dict.fromkeys(context.id for context, _ in seen)))
        sentences += page.say(refs, f"in {where} {plain}, and we count it with the crops all the same")
    return sentences


def _is_of_wild_kin(page: Page, note: Noted) -> bool:
    """Whether a note on a find speaks against a food whose plants the page counts by samples."""
    counted = {found.group.id for found in presences(page.dig) if page.has_told(name_of(page, found.group))}
    groups = {FOOD_GROUPS.get(statement) for statement in note.observation.against}
    return note.observation.noted_of == "find" and bool(note.observation.plain) and bool(groups & counted)
