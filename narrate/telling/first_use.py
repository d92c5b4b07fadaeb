"""Plants explained where a page for visitors first names them, as far as it stays easy to read."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from narrate.model.narrative import Section, Sentence
from narrate.telling import english
from narrate.telling.glossary import of_many
from narrate.telling.page import Page

AT_MOST = 2
"""Plants that one sentence explains."""

COMMAS_AT_MOST = 4
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
    # That a plant is poisonous is told before there is no more room.
    for forms, gloss in sorted(_glosses(page), key=lambda pair: "poison" not in pair[1]):
        if gloss in _text(sections) or of_many(gloss) in _text(sections):
            continue
        changed = _with_gloss(sections, forms, gloss)
        sections = changed if changed is not None and is_easy(changed) else sections
    return sections


def terms_explained(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """
    The sections with each term that the audience has explained by a sentence of its own, behind its first use.

    Such words are named 'term <phrase>', and 'wide term <phrase>' where only phases and the dig explain it; a page says
    each once, and a page that does not use the phrase says nothing.
    """
    is_wide = page.subject.level in ("phase", "site")
    for name in page.audience.words:
        if name.startswith("term ") or (is_wide and name.startswith("wide term ")):
            phrase = name.removeprefix("wide ").removeprefix("term ")
            is_used = re.compile(rf"\b{re.escape(phrase)}\b", re.IGNORECASE)
            is_plain = f"soil {phrase}" in _text(sections)  # 'soil samples' says what a sample is
            sections = sections if is_plain else _with_term(page, sections, is_used, name)
    sections = _debated(page, _glossed(page, sections))
    return _numbers_explained(page, sections) if is_wide else sections


def _glossed(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """The sections with words of parts and woods, named 'gloss of <phrase>', explained at their first use."""
    for name, gloss in page.audience.words.items():
        phrase = name.removeprefix("gloss of ")
        if phrase != name and page.names.may_gloss:
            is_used = re.compile(rf"\b{re.escape(phrase)}(?: charcoal)?\b", re.IGNORECASE)
            sections = _with_words(sections, is_used, gloss)
    return sections


def _with_words(sections: tuple[Section, ...], is_used: re.Pattern[str], gloss: str) -> tuple[Section, ...]:
    for i, section in enumerate(sections):
        for j, paragraph in enumerate(section.paragraphs):
            for k, sentence in enumerate(paragraph):
                match = is_used.search(sentence.text)
                if match is not None:
                    told = replace(sentence, text=_inserted(sentence.text, match.end(), gloss))
                    return _replaced(sections, (i, j, k), told)
    return sections


CONTACT = 1492
"""Calendar year before which a plant that may have come from overseas is worth a word."""


def _debated(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """The story of a dig with what is still debated of a plant of times before contact, behind its first name."""
    if "long here" not in page.audience.words or page.subject.level != "site":
        return sections
    ends = [p.end for p in page.dig.project.phases if p.end is not None and page.found.samples]
    if not ends or max(ends) > CONTACT:
        return sections
    for tally in page.found.tallies:
        is_old = tally.counted and not tally.only_cf and tally.condition in page.dig.ancient
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        if is_old and taxon is not None and taxon.long_here and not page.has_told("still debate"):
            plant = page.names.plant(tally.taxon, tally.written)
            is_used = re.compile(rf"\b{re.escape(plant)}\b", re.IGNORECASE)
            sections = _with_term(page, sections, is_used, "long here", plant=plant)
    return sections


def _numbers_explained(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """The sections with what the numbers of places are, behind the first sentence that has one."""
    name = "numbers of places"
    if name not in page.audience.words:
        return sections
    ids = "|".join(re.escape(english.literal(c.id)) for c in page.dig.project.contexts)
    is_used = re.compile(rf"\b(?:{ids})\b" if ids else r"(?!)")
    text = next((s.text for section in sections for p in section.paragraphs for s in p if is_used.search(s.text)), "")
    match = is_used.search(text)
    return _with_term(page, sections, is_used, name, id=match[0]) if match else sections


def _with_term(
    page: Page, sections: tuple[Section, ...], is_used: re.Pattern[str], name: str, **filled: str
) -> tuple[Section, ...]:
    for i, section in enumerate(sections):
        for j, paragraph in enumerate(section.paragraphs):
            k = next((k for k, sentence in enumerate(paragraph) if is_used.search(sentence.text)), None)
            if k is not None:
                said = page.say(paragraph[k].refs, *page.turns(name, **filled))
                # A reason that stands behind its reading stays there, and figures behind what they bear out.
                first = paragraph[k].refs
                while k + 1 < len(paragraph) and _are_of_one({*first, *paragraph[k].refs}, paragraph[k + 1]):
                    k += 1
                told = (*paragraph[: k + 1], *said, *paragraph[k + 1 :])
                paragraphs = (*section.paragraphs[:j], told, *section.paragraphs[j + 1 :])
                return (*sections[:i], replace(section, paragraphs=paragraphs), *sections[i + 1 :])
    return sections


GOES_ON = re.compile(r"Also from [\w ]+: ")
"""How a sentence begins that goes on with a list of finds."""


def _are_of_one(refs: set[str], sentence: Sentence) -> bool:
    """Whether a sentence rests on what those before it rest on; that all are of one record makes them no one."""
    own = [ref for ref in sentence.refs if not ref.endswith("/record")]
    return bool(GOES_ON.match(sentence.text)) or any(ref in refs for ref in own)


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
    """
    The sections with a gloss in the first sentence that names the plant, or behind it where that bears no more.

    None where there is no room: a plant that is counted one by one has no sentence of its own.
    """
    name = re.compile(rf"\b(?:{'|'.join(map(re.escape, forms))})\b{_PART}(?! \()", re.IGNORECASE)
    for i, section in enumerate(sections):
        for j, paragraph in enumerate(section.paragraphs):
            for k, sentence in enumerate(paragraph):
                match = name.search(sentence.text)
                if match is None or "charcoal" in sentence.text:
                    continue
                is_full = len(re.findall(r" \(an? |, an? ", sentence.text)) >= AT_MOST
                if is_full and len(forms) == 1:
                    own = Sentence(text=english.finished(f"{forms[0]} is {gloss}"), refs=sentence.refs)
                    longer = (*paragraph[: k + 1], own, *paragraph[k + 1 :])
                    paragraphs = (*section.paragraphs[:j], longer, *section.paragraphs[j + 1 :])
                    return (*sections[:i], replace(section, paragraphs=paragraphs), *sections[i + 1 :])
                if is_full or sentence.text.count(",") > COMMAS_AT_MOST:
                    return None
                said = of_many(gloss) if match[0].lower() != forms[-1].lower() else gloss
                told = replace(sentence, text=_inserted(sentence.text, match.end(), said))
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
