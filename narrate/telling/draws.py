"""Doubts by counts drawn anew: several of one page told in one sentence, and the draws named in full once."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from narrate.model.claims import DRAWS
from narrate.model.narrative import Section, Sentence
from narrate.telling import english
from narrate.telling.hints import hints_told
from narrate.telling.page import Draw, Page

OPEN = "open"
"""Section of what the remains leave open."""
IN_FULL, IN_SHORT = "drawn anew at random", "drawn anew"


def doubts_in_one(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """
    The sections with their several doubts by draws as one sentence, where the last of them stood.

    Hints of several themes belong to none of them: they open what stays open, where a page has a section of that.
    """
    told = [draw for draw in page.draws if any(draw.sentence in p for s in sections for p in s.paragraphs)]
    sections = _in_one(sections, [d for d in told if not d.is_hint], lambda pieces: _near(page, pieces))
    sections = _in_one(sections, [d for d in told if d.is_hint], lambda pieces: hints_told(page, pieces))
    return _named_in_full_once(sections, explained=page.subject.level == "site")


def _in_one(
    sections: tuple[Section, ...], doubts: Sequence[Draw], told_as: Callable[[Sequence[str]], str]
) -> tuple[Section, ...]:
    """The sections with some doubts put into one sentence, where there are several."""
    if len(doubts) < 2:
        return sections
    refs = tuple(dict.fromkeys(ref for draw in doubts for ref in draw.sentence.refs))
    text = told_as([piece for draw in doubts for piece in draw.pieces])
    together = Sentence(text=english.finished(text), refs=refs)
    gone = [draw.sentence for draw in doubts]
    is_of_several = sum(any(s in gone for p in section.paragraphs for s in p) for section in sections) > 1
    if is_of_several and doubts[0].is_hint and any(section.id == OPEN for section in sections):
        rest = _changed(sections, lambda s: None if s in gone else s)
        return tuple(_opened_with(together, one) if one.id == OPEN else one for one in rest)
    last = _last(sections, gone)
    return _changed(sections, lambda s: together if s is last else None if s in gone else s)


def _opened_with(sentence: Sentence, section: Section) -> Section:
    first, *others = section.paragraphs
    return replace(section, paragraphs=((sentence, *first), *others))


def _near(page: Page, pieces: Sequence[str]) -> str:
    return f"some of these readings stand near their edge, for counts {IN_FULL} uphold {_listed(page, pieces)}"


def _listed(page: Page, pieces: Sequence[str]) -> str:
    if len(pieces) == 2 and any(", " in piece for piece in pieces):
        return f"{pieces[0]}, and {pieces[1]}"
    if any(", " in piece for piece in pieces):
        return f"{'; '.join(pieces[:-1])}; and {pieces[-1]}"
    return page.listed(pieces)


def _last(sections: tuple[Section, ...], gone: Sequence[Sentence]) -> Sentence:
    return [s for section in sections for paragraph in section.paragraphs for s in paragraph if s in gone][-1]


def _changed(sections, change) -> tuple[Section, ...]:  # type: ignore[no-untyped-def]
    made = []
    for section in sections:
        paragraphs = [tuple(n for s in p if (n := change(s)) is not None) for p in section.paragraphs]
        kept = tuple(p for p in paragraphs if p)
        if kept:
            made.append(replace(section, paragraphs=kept))
    return tuple(made)


WHAT_IT_MEANS = f" ({DRAWS} times, each count anew about what was found)"
"""What is drawn and how often, said once of the dig; the account of the method says it in full."""


def _named_in_full_once(sections: tuple[Section, ...], *, explained: bool) -> tuple[Section, ...]:
    """What is drawn at random is said of the first draw; of any later one 'counts drawn anew' will do."""
    seen: list[bool] = []

    def once(sentence: Sentence) -> Sentence:
        if IN_FULL not in sentence.text:
            return sentence
        seen.append(True)
        if len(seen) > 1:
            return replace(sentence, text=sentence.text.replace(IN_FULL, IN_SHORT))
        meant = IN_FULL + WHAT_IT_MEANS if explained else IN_FULL
        return replace(sentence, text=sentence.text.replace(IN_FULL, meant))

    return _changed(sections, once)
