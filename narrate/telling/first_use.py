"""Plants explained where a page for visitors first names them, as far as it stays easy to read."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from narrate.model.narrative import Section, Sentence
from narrate.telling.page import Page

AT_MOST = 2
"""Plants that one sentence explains."""

COMMAS_AT_MOST = 3
"""A longer list is hard enough as it is."""

_PART = r"(?! (?:seeds?|grains?|nutshell|nuts?|charcoal|plants?|stems?|wood)\b)"
"""Behind a name: the part of the plant, which other words explain."""


def explained_at_first(
    page: Page, sections: tuple[Section, ...], is_easy: Callable[[tuple[Section, ...]], bool]
) -> tuple[Section, ...]:
    """
    The sections with the gloss of each plant behind its first name, where nothing has explained it.

    is_easy: whether a text with one gloss more is still easy to read; a gloss that is one too many is left out.
    """
    if not (page.names.is_plain and page.names.may_gloss):
        return sections
    for forms, gloss in _glosses(page):
        if gloss in _text(sections):
            continue
        changed = _with_gloss(sections, forms, gloss)
        sections = changed if changed is not None and is_easy(changed) else sections
    return sections


def terms_explained(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """
    The sections with each term that the audience has explained by a sentence of its own, behind its first use.

    Such words are named 'term <phrase>'; a page says each once, and a page that does not use the phrase says nothing.
    """
    for name in page.audience.words:
        if name.startswith("term "):
            phrase = name.removeprefix("term ")
            is_used = re.compile(rf"\b{re.escape(phrase)}\b", re.IGNORECASE)
            sections = _with_term(page, sections, is_used, name)
    return sections


def _with_term(page: Page, sections: tuple[Section, ...], is_used: re.Pattern[str], name: str) -> tuple[Section, ...]:
    for i, section in enumerate(sections):
        for j, paragraph in enumerate(section.paragraphs):
            k = next((k for k, sentence in enumerate(paragraph) if is_used.search(sentence.text)), None)
            if k is not None:
                said = page.say(paragraph[k].refs, *page.turns(name))
                # A reason that stands behind its reading stays there.
                while k + 1 < len(paragraph) and set(paragraph[k].refs) & set(paragraph[k + 1].refs):
                    k += 1
                told = (*paragraph[: k + 1], *said, *paragraph[k + 1 :])
                paragraphs = (*section.paragraphs[:j], told, *section.paragraphs[j + 1 :])
                return (*sections[:i], replace(section, paragraphs=paragraphs), *sections[i + 1 :])
    return sections


def _glosses(page: Page) -> Iterator[tuple[tuple[str, ...], str]]:
    """Names of each plant that was found, in the singular and the plural, with its gloss."""
    seen: set[str] = set()
    for tally in page.found.tallies:
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        gloss = page.names.gloss(taxon) if taxon is not None else ""
        if taxon is not None and taxon.id not in seen and gloss.startswith(("a ", "an ")):
            seen.add(taxon.id)
            named = (page.names.plant(taxon.id, plural=True), page.names.plant(taxon.id))
            yield tuple(dict.fromkeys(name for name in named if name)), gloss


def _with_gloss(sections: tuple[Section, ...], forms: Sequence[str], gloss: str) -> tuple[Section, ...] | None:
    """The sections with a gloss in the first sentence that names the plant; None where there is no room."""
    name = re.compile(rf"\b(?:{'|'.join(map(re.escape, forms))})\b{_PART}(?! \()", re.IGNORECASE)
    for i, section in enumerate(sections):
        for j, paragraph in enumerate(section.paragraphs):
            for k, sentence in enumerate(paragraph):
                match = name.search(sentence.text)
                if match is None or "charcoal" in sentence.text:
                    continue
                is_full = len(re.findall(r" \(an? |, an? ", sentence.text)) >= AT_MOST
                if is_full or sentence.text.count(",") > COMMAS_AT_MOST:
                    return None
                told = replace(sentence, text=_inserted(sentence.text, match.end(), gloss))
                return _replaced(sections, (i, j, k), told)
    return None


def _inserted(text: str, at: int, gloss: str) -> str:
    """
    The gloss behind a name: in brackets, or within brackets between commas.

    >>> _inserted("wild fruit (such as maypops and plums)", 27, "a wild vine")
    'wild fruit (such as maypops, a wild vine, and plums)'
    """
    before, after = text[:at], text[at:]
    if before.count("(") == before.count(")"):
        return f"{before} ({gloss}){after}"
    return f"{before}, {gloss}{'' if after[:1] in ('', ')', ',') else ','}{after}"


def _replaced(sections: tuple[Section, ...], at: tuple[int, int, int], sentence: Sentence) -> tuple[Section, ...]:
    i, j, k = at
    paragraph = sections[i].paragraphs[j]
    changed = (*paragraph[:k], sentence, *paragraph[k + 1 :])
    paragraphs = (*sections[i].paragraphs[:j], changed, *sections[i].paragraphs[j + 1 :])
    return (*sections[:i], replace(sections[i], paragraphs=paragraphs), *sections[i + 1 :])


def _text(sections: Sequence[Section]) -> str:
    return " ".join(s.text for section in sections for paragraph in section.paragraphs for s in paragraph)
