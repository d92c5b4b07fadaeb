"""How a page is said in a language of its own: its grammar, wordings, and the nouns that recur."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from narrate.model.languages import Noun
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, manner
from narrate.telling.grammar import Grammar
from narrate.telling.page import Page
from narrate.telling.spread import Presence


def group_name(page: Page, presence: Presence) -> str:
    return grammar_of(page).language.sentences.get(f"group {presence.group.id}", ("",))[0]


def k_of_n(page: Page, presence: Presence) -> str:
    return worded(page, "k of n", k=str(presence.k), n=str(presence.n))[0]


def unsure(page: Page, presence: Presence) -> str:
    """' (en una de ellas, con duda)': samples in which a group was named only as cf.; empty where there are none."""
    if not presence.only_cf:
        return ""
    name = "unsure all" if presence.only_cf == presence.k else "unsure one" if presence.only_cf == 1 else "unsure"
    said = worded(page, name, count=grammar_of(page).about(presence.only_cf, "f"))
    return f" ({said[0]})" if said else ""


def years_of(page: Page, phase: Phase) -> str:
    """'950–1050 d. C.'; the name of a phase that has no years."""
    return grammar_of(page).years(phase.start, phase.end, phase.dates) or english.literal(phase.name)


def places_told(page: Page, ids: Iterable[str]) -> str:
    """'el horno de tierra C03 y las fosas C04 y C05': contexts in the project's order, by what they were."""
    wanted, grammar = set(ids), grammar_of(page)
    kinds: dict[str, list[str]] = {}
    for context in page.dig.project.contexts:
        if context.id in wanted:
            kinds.setdefault(kind_noun(page, context).one, []).append(context.id)
    nouns = {noun.one: noun for noun in grammar.language.kinds.values()}
    return grammar.listed(
        f"{grammar.the(nouns[kind], plural=len(found) > 1)} {grammar.listed([english.literal(id) for id in found])}"
        for kind, found in kinds.items()
    )


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


def is_said(page: Page, name: str) -> bool:
    """Whether the page has told one of the pack's wordings that have no holes."""
    return any(grammar_of(page).finished(text) in page.said for text in worded(page, name))


def say_each(page: Page, refs: Sequence[str], name: str, **filled: str) -> list[Sentence]:
    """All of the pack's wordings as sentences, one after the other."""
    return [s for text in worded(page, name, **filled) for s in page.say(refs, grammar_of(page).finished(text))]


def paragraph(sentences: Sequence[Sentence]) -> tuple[Section, ...]:
    return (Section(id="all", heading="", paragraphs=(tuple(sentences),)),) if sentences else ()
