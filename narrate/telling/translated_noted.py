"""What diggers and the laboratory noted, in a language of its own: a few signs that bear on what was counted."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling.context_opening import of_one_thing
from narrate.telling.observations import DISTURBED, Noted, notes_of
from narrate.telling.page import Page
from narrate.telling.translated_words import grammar_of, kind_noun, places_told, say


def one_thing_told(page: Page, context: Context) -> list[Sentence]:
    """'C05 es nuestra clave para otra parte del mismo hoyo …': a reader takes each number for a place apart."""
    others, noun, grammar = of_one_thing(page, context), kind_noun(page, context), grammar_of(page)
    refs = [page.record, *(page.dig.record_ref(Subject(level="context", id=c.id)) for c in others)]
    name = f"same {noun.gender} one" if len(others) == 1 else f"same {noun.gender}"
    ids = grammar.listed(c.id for c in others)
    return say(page, refs, name, places=ids, kind=noun.one) if others else []


def noted_told(page: Page, context: Context) -> list[Sentence]:
    """
    Of a context: what the language has words for, named `noted <observation>`.

    Of signs that the soil was stirred one is told, and none where the record of the deposit has told as much.
    """
    sentences: list[Sentence] = []
    is_stirred = context.security == "disturbed"
    for note in _with_words(page, context, "noted"):
        is_of_mixing = DISTURBED in note.observation.agrees_with
        if is_of_mixing and is_stirred:
            continue
        sentences += say(page, [note.ref], f"noted {note.observation.id}")
        is_stirred = is_stirred or is_of_mixing
    return sentences


def noted_in_places(page: Page, contexts: Sequence[Context], questions: Sequence[str]) -> list[Sentence]:
    """Of a phase: where a note speaks against readings of some questions, named `noted in places <observation>`."""
    places: dict[str, list[tuple[Context, Noted]]] = {}
    for context in contexts:
        for note in _with_words(page, context, "noted in places"):
            against = {page.dig.packs.statements[name].question for name in note.observation.against}
            if against & set(questions):
                places.setdefault(note.observation.id, []).append((context, note))
    sentences: list[Sentence] = []
    for id, seen in places.items():
        refs = list(dict.fromkeys(note.ref for _, note in seen))
        where = places_told(page, dict.fromkeys(context.id for context, _ in seen))
        sentences += say(page, refs, f"noted in places {id}", places=where)
    return sentences


def _with_words(page: Page, context: Context, name: str) -> list[Noted]:
    known = grammar_of(page).language.sentences
    return [note for note in notes_of(page, context) if f"{name} {note.observation.id}" in known]
