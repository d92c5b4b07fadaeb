"""How a page is said in a language of its own: its grammar, wordings, and the nouns that recur."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.languages import Noun
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import manner
from narrate.telling.grammar import Grammar
from narrate.telling.page import Page
from narrate.telling.spread import Presence


def group_name(page: Page, presence: Presence) -> str:
    return grammar_of(page).language.sentences.get(f"group {presence.group.id}", ("",))[0]


def k_of_n(page: Page, presence: Presence) -> str:
    return worded(page, "k of n", k=str(presence.k), n=str(presence.n))[0]


def litres_told(page: Page) -> str:
    litres = page.found.litres
    return worded(page, "litres", figure=grammar_of(page).figure(litres))[0] if litres is not None else ""


def remains_noun(page: Page) -> Noun:
    """Remains of plants as a noun; where they are expected charred, charred remains."""
    parts = grammar_of(page).language.parts
    charred = parts.get("remains charred") if page.dig.project.preservation == "charred" else None  # type: ignore[call-overload]
    return charred or parts["remains"]  # type: ignore[index]


def kind_noun(page: Page, context: Context) -> Noun:
    return kind_named(page, context.kind)


def kind_named(page: Page, kind: str) -> Noun:
    kinds = grammar_of(page).language.kinds
    return kinds.get(kind) or kinds["other"]


def grammar_of(page: Page) -> Grammar:
    style = page.dig.project.style
    era, dash = style.era or "", manner.dash(page.audience)
    return Grammar(language=page.dig.packs.languages[page.audience.language], era=era, dash=dash)


def worded(page: Page, name: str, **filled: str) -> list[str]:
    wordings = list(grammar_of(page).language.sentences.get(name, ()))
    for hole, text in filled.items():
        wordings = [wording.replace(f"{{{hole}}}", text) for wording in wordings]
    return wordings


def say(page: Page, refs: Sequence[str], name: str, **filled: str) -> list[Sentence]:
    """One of the pack's wordings, that with the least worn opening."""
    wordings = [grammar_of(page).finished(wording) for wording in worded(page, name, **filled)]
    return page.say(refs, *wordings) if wordings else []


def say_fresh(page: Page, refs: Sequence[str], name: str) -> list[Sentence]:
    wordings = page.fresh(*(grammar_of(page).finished(wording) for wording in worded(page, name)))
    return page.say(refs, *wordings) if wordings else []


def say_each(page: Page, refs: Sequence[str], name: str, **filled: str) -> list[Sentence]:
    """All of the pack's wordings as sentences, one after the other."""
    return [s for text in worded(page, name, **filled) for s in page.say(refs, grammar_of(page).finished(text))]


def paragraph(sentences: Sequence[Sentence]) -> tuple[Section, ...]:
    return (Section(id="all", heading="", paragraphs=(tuple(sentences),)),) if sentences else ()
